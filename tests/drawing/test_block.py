"""Blocks on the coach's ground: everybody, in the right place, in the right colour, and the adults beside them."""

from dataclasses import replace

import pytest

from conewright.drawing.block import block_picture
from conewright.drawing.options import PictureOptions
from conewright.model.scene import Dot, Group, Scene, walk
from conewright.model.session import Block, Job
from tests.drawing.evening import TONIGHT, gate_block, open_block
from tests.drawing.looking import ground, lines, marks, steps, touching, words


def children(scene: Scene) -> list[str]:
    """Letters of the marks that are no adults'."""
    return [mark.words for mark in marks(scene) if mark.words not in ("C", "P")]


def heads(scene: Scene, place: str) -> list[Dot]:
    """Where the heads of the places of a name stand, one for each copy."""
    return [
        shape.at
        for shape, _ in walk(scene.shapes)
        if isinstance(shape, Group) and dict(shape.data).get("place") == place and "w" not in shape.name.split()
    ]


def test_all_copies_lie_where_the_session_says() -> None:
    scene = block_picture(gate_block(), TONIGHT)
    sheet = ground(scene)
    metre = sheet.width / 30
    assert sheet.height == pytest.approx(22 * metre)
    (yellow, blue), bottom = heads(scene, "Base"), sheet.at.y + sheet.height
    assert yellow == pytest.approx((sheet.at.x + 7 * metre, bottom - 4 * metre))
    assert blue == pytest.approx((sheet.at.x + 23 * metre, bottom - 4 * metre))


def test_a_mirrored_copy_is_the_mirror_image() -> None:
    scene = block_picture(gate_block(), TONIGHT)
    middle = ground(scene).at.x + ground(scene).width / 2
    for place in ("Base", "Stem", "Post"):
        one, other = heads(scene, place)
        assert one.x + other.x == pytest.approx(2 * middle)
        assert one.y == pytest.approx(other.y)
    assert len(lines(scene, "ball")) == 4


def test_copies_wear_their_colours_and_are_named() -> None:
    scene = block_picture(gate_block(), TONIGHT)
    assert sorted(letters[0] for letters in children(scene)) == ["B"] * 5 + ["Y"] * 6
    assert {blot.words for blot in words(scene, "bx")} == {"Yellow copy, six", "Blue copy, five"}


def test_nothing_lies_on_anything() -> None:
    for width in (328, 560, 786):
        scene = block_picture(gate_block(), TONIGHT, options=PictureOptions(width=width))
        persons, numbers, labels = marks(scene), steps(scene), words(scene)
        assert not [1 for one in numbers for other in (*persons, *labels) if touching(one, other)]
        assert not [1 for one in labels for other in persons if touching(one, other)]
        shrunk = [replace(mark, radius=0.95 * mark.radius) for mark in persons]  # those in line may just touch
        assert not [1 for one in shrunk for other in shrunk if one is not other and touching(one, other)]


@pytest.mark.parametrize(("adults", "letters"), [(0, []), (1, ["C"]), (2, ["C", "P"]), (5, ["C", "P"])])
def test_the_coach_and_a_parent_stand_in_corners(adults: int, letters: list[str]) -> None:
    scene = block_picture(gate_block(), replace(TONIGHT, adults=adults))
    assert sorted(mark.words for mark in marks(scene) if mark.words in ("C", "P")) == letters


def test_everybody_plays_or_rests() -> None:
    block = open_block("Borrowed bibs", 8, start=0, minutes=10, job=Job.OPPOSED)
    scene = block_picture(block, TONIGHT)
    assert len(children(scene)) == 11
    box = next(shape for shape, _ in walk(scene.shapes) if shape.name == "box")
    inside = [mark for mark in marks(scene) if within(mark.at, box)]
    assert len(inside) == 8


def within(at: Dot, box: object) -> bool:
    low, high = box.at, Dot(box.at.x + box.width, box.at.y + box.height)  # type: ignore[attr-defined]
    return bool(low.x < at.x < high.x and low.y < at.y < high.y)


def test_one_copy_can_be_shown_alone() -> None:
    block = gate_block()
    scene = block_picture(block, TONIGHT, options=PictureOptions(only=1, cropped=True))
    assert len(children(scene)) == 5
    assert {letters[0] for letters in children(scene)} == {"B"}
    assert not [mark for mark in marks(scene) if mark.words in ("C", "P")]


def test_cropped_ground_keeps_everybody() -> None:
    def count(block: Block, **choice: bool) -> int:
        return len(children(block_picture(block, TONIGHT, options=PictureOptions(**choice))))

    for block in (gate_block(), open_block("Weather vane", 11, start=0, minutes=10, job=Job.ARRIVAL)):
        assert count(block, cropped=True) == count(block) == 11
        whole, cropped = (block_picture(block, TONIGHT, options=PictureOptions(cropped=crop)) for crop in (False, True))
        assert ground(cropped).height / ground(cropped).width != ground(whole).height / ground(whole).width


def test_a_turned_and_scaled_copy_keeps_its_people_apart() -> None:
    block = gate_block()
    turned = replace(block, copies=tuple(replace(copy, turned=True, scale=0.8) for copy in block.copies))
    scene = block_picture(turned, TONIGHT)
    one, other = heads(scene, "Base")[0], heads(scene, "Stem")[0]
    metre = ground(scene).width / 30
    assert one.y == pytest.approx(other.y)
    assert abs(one.x - other.x) == pytest.approx(10 * 0.8 * metre)
