"""Scenes as SVG: valid, escaped, with class words alone for a page and with every attribute for a picture alone."""

import xml.etree.ElementTree as ET

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conewright.drawing.options import PictureOptions
from conewright.drawing.picture import exercise_picture
from conewright.drawing.style import PAPER_TOKENS, RULES, SCREEN_TOKENS, look_of, stylesheet
from conewright.drawing.svg import svg
from conewright.model.scene import Circle, Dot, Group, Path, Rect, Scene, Text, walk
from conewright.store.shelf import load_shelf

STYLES = ("page", "screen", "paper")
SMALL = Scene(
    width=40,
    height=20,
    title="Small",
    shapes=(
        Rect(at=Dot(0, 0), width=40, height=20, name="ground"),
        Group(
            at=Dot(10, 10),
            name="p y",
            data=(("person", "0"),),
            shapes=(
                Path(pieces=((Dot(0, 0), Dot(4, 0), Dot(4, 3.25)),), name="beak", closed=True, turn=90),
                Circle(at=Dot(0, 0), radius=6, name="disc y"),
                Text(at=Dot(0, 2), words="Y", size=9, name="letter y"),
            ),
        ),
    ),
)


def test_a_small_picture_for_a_page() -> None:
    assert svg(SMALL) == (
        '<svg xmlns="http://www.w3.org/2000/svg" class="pic" viewBox="0 0 40 20" width="40" height="20" role="img"'
        ' aria-label="Small"><rect class="ground" x="0" y="0" width="40" height="20"/>'
        '<g class="p y" data-person="0" transform="translate(10 10)">'
        '<path class="beak" transform="rotate(90)" d="M0 0H4V3.2Z"/>'
        '<circle class="disc y" cx="0" cy="0" r="6"/>'
        '<text class="letter y" x="0" y="2" text-anchor="middle" font-size="9">Y</text></g></svg>'
    )


def test_a_small_picture_that_stands_alone() -> None:
    assert svg(SMALL, style="screen") == (
        '<svg xmlns="http://www.w3.org/2000/svg" class="pic" viewBox="0 0 40 20" width="40" height="20" role="img"'
        ' font-family="Atkinson Hyperlegible Next"><title>Small</title>'
        '<rect fill="#fbf8f0" stroke="#7d7463" stroke-width="1" x="0" y="0" width="40" height="20"/>'
        '<g transform="translate(10 10)">'
        '<path fill="#1f2328" stroke="none" transform="rotate(90)" d="M0 0H4V3.2Z"/>'
        '<circle fill="#f0b400" stroke="#1f2328" stroke-width="1.5" cx="0" cy="0" r="6"/>'
        '<text fill="#1f2328" stroke="none" font-weight="750" x="0" y="2" text-anchor="middle" font-size="9">Y</text>'
        "</g></svg>"
    )


@pytest.mark.parametrize("style", STYLES)
@given(words=st.text(min_size=1, max_size=30))
def test_whatever_is_written_the_picture_stays_valid(style: str, words: str) -> None:
    shapes = (Text(at=Dot(1, 1), words=words, size=10, name="lb nm"),)
    group = Group(shapes=shapes, name="act", data=(("place", words),))
    scene = Scene(width=10, height=10, shapes=(group,), title=words, description=words)
    root = ET.fromstring(svg(scene, style=style))
    shown = root.find(".//{http://www.w3.org/2000/svg}text")
    assert shown is not None
    kept = "".join(letter for letter in words if letter in "\t\n\r" or ord(letter) >= 32)
    plain = (shown.text or "").replace("\n", "").replace("\r", "")
    assert plain == kept.replace("\n", "").replace("\r", "").replace("\ufffe", "").replace("\uffff", "")


@pytest.mark.parametrize("style", STYLES)
def test_every_picture_of_the_shelf_is_valid(style: str) -> None:
    options = PictureOptions(paper=style == "paper", width=90 if style == "paper" else 594)
    for exercise in load_shelf():
        text = svg(exercise_picture(exercise, exercise.numbers.least, options=options), style=style)
        root = ET.fromstring(text)
        assert root.get("role") == "img"
        assert ("class=" in text.split(">", 1)[1]) is (style == "page"), exercise.name
        assert "var(" not in text
        assert ("fill=" in text) is (style != "page")


def test_every_shape_of_every_picture_has_ink() -> None:
    for exercise in load_shelf():
        scene = exercise_picture(exercise, exercise.numbers.least)
        for shape, _ in walk(scene.shapes):
            if not isinstance(shape, Group):
                assert look_of(shape.name.split(), SCREEN_TOKENS), shape.name


def test_every_token_has_a_value_on_screen_and_on_paper() -> None:
    assert set(SCREEN_TOKENS) == set(PAPER_TOKENS)
    used = {value[1:].split("*")[0] for rule in RULES for _, value in rule.look if value.startswith("@")}
    assert used <= set(SCREEN_TOKENS)


def test_the_style_sheet_speaks_in_the_tokens_of_the_page() -> None:
    sheet = stylesheet()
    assert ".pic .disc.y{fill:var(--bib-y)}" in sheet
    assert ".pic .ln.lit,.pic .lit .ln{stroke-width:var(--w-lit)}" in sheet
    assert "@" not in sheet
    assert "#" not in sheet


def test_paper_is_black_white_and_grey() -> None:
    colours = [value for value in PAPER_TOKENS.values() if value.startswith("#")]
    assert all(value[1:3] == value[3:5] == value[5:7] for value in colours)
