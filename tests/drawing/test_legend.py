"""The legend: what occurs in the picture, nothing else, and last what a square is."""

import pytest

from conewright.drawing.legend import legend, legend_of, strip_legend, with_legend
from conewright.drawing.letters import width_of
from conewright.drawing.options import PictureOptions
from conewright.drawing.picture import exercise_picture
from conewright.drawing.svg import svg
from conewright.model.scene import Group, Text, named, walk, words_in
from conewright.store.shelf import load_shelf
from tests.drawing.evening import shelved
from tests.drawing.looking import GATE, exercise_of

SHELF = load_shelf()


def test_the_legend_of_a_pattern() -> None:
    entries = legend(exercise_picture(exercise_of(GATE), 6))
    assert [entry.words for entry in entries] == [
        "ball",
        "run",
        "with the ball",
        "waiting, in line",
        "place",
        "ball on the ground",
        "one square is 1 m",
    ]
    assert [entry.sample is None for entry in entries] == [False] * 6 + [True]


@pytest.mark.parametrize("exercise", SHELF, ids=lambda exercise: exercise.name)
def test_only_what_occurs(exercise: object) -> None:
    assert exercise in SHELF
    scene = exercise_picture(exercise, exercise.numbers.least)  # type: ignore[attr-defined, arg-type]
    found = words_in(scene)
    said = {entry.words for entry in legend(scene)}
    for class_word, entry in (
        ("shot", "shot"),
        ("back", "way back"),
        ("gate-mark", "gate"),
        ("mini", "mini goal"),
        ("cone", "cone"),
        ("contest", "contest: left to them"),
        ("open-play", "open play"),
        ("ad", "adult"),
        ("wn", "paths meet"),
        ("spot", "place"),
    ):
        assert (class_word in found) is (entry in said), entry


def test_samples_are_in_the_tradition_of_the_picture() -> None:
    for tradition, broken in (("A", "run"), ("B", "ball")):
        scene = exercise_picture(exercise_of(GATE), 6, options=PictureOptions(tradition=tradition))
        samples = {entry.words: entry.sample for entry in legend(scene)}
        for words in ("ball", "run"):
            sample = samples[words]
            assert sample is not None
            assert ("broken" in words_in(sample)) is (words == broken)


@pytest.mark.parametrize("width", [200, 328, 594])
def test_a_picture_that_stands_alone_carries_its_legend(width: float) -> None:
    scene = exercise_picture(shelved("Gate house"), 9, options=PictureOptions(width=width))
    whole = with_legend(scene)
    texts = [(shape, at) for shape, at in walk(whole.shapes) if isinstance(shape, Text) and "lg" in shape.name.split()]
    assert [shape.words for shape, _ in texts] == ["Legend", *(entry.words for entry in legend(scene))]
    for shape, at in texts:
        assert scene.height < at.y + shape.at.y < whole.height
        assert at.x + shape.at.x + 0.95 * width_of(shape.words, shape.size) <= scene.width + 1
    assert "one square is 1 m" in svg(whole, style="screen")


def test_one_legend_for_several_pictures() -> None:
    scenes = tuple(exercise_picture(shelved(name), 8) for name in ("Mill wheel", "Borrowed bibs"))
    said = [entry.words for entry in legend_of(scenes)]
    assert "open play" in said
    assert "run" in said
    assert said == list(dict.fromkeys(said))
    assert legend_of(()) == ()


def test_the_strip_has_three_forms() -> None:
    assert [entry.words for entry in strip_legend()] == ["waiting", "moving", "on the ball"]
    samples = [entry.sample for entry in strip_legend()]
    assert all(sample is not None and sample.shapes for sample in samples)
    assert not any(
        isinstance(shape, Group) and not shape.shapes for sample in samples if sample for shape in sample.shapes
    )
    assert samples[2] is not None
    assert named(samples[2], "on-ball")
