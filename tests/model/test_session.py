"""The evening as data: where a copy lies on the ground, and how many a block holds."""

from math import hypot

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conewright.model.exercise import Ages, Exercise, Numbers
from conewright.model.geometry import Point
from conewright.model.session import Block, Copy, Job, Kit

NOTHING = Exercise(name="Case", kind="warm-up", numbers=Numbers(least=2, most=20), ages=Ages(youngest=7, oldest=12))
METRES = st.floats(-40, 40)
POINTS = st.builds(Point, METRES, METRES)
COPIES = st.builds(
    Copy,
    size=st.just(6),
    origin=POINTS,
    turned=st.booleans(),
    mirrored=st.booleans(),
    scale=st.floats(0.7, 1.3),
)


@pytest.mark.parametrize(
    ("turned", "mirrored", "expected"),
    [
        (False, False, Point(14, 23)),
        (True, False, Point(7, 24)),  # a quarter anticlockwise: 4, 3 to -3, 4
        (False, True, Point(6, 23)),
        (True, True, Point(13, 24)),  # turned first, then flipped
    ],
)
def test_turned_then_flipped_then_moved(turned: bool, mirrored: bool, expected: Point) -> None:
    copy = Copy(size=6, origin=Point(10, 20), turned=turned, mirrored=mirrored)
    assert copy.on_ground(Point(4, 3)) == expected


def test_scaled_before_it_is_moved() -> None:
    assert Copy(size=6, origin=Point(10, 20), scale=0.5).on_ground(Point(4, 2)) == Point(12, 21)


@given(copy=COPIES, first=POINTS, second=POINTS)
def test_distances_on_the_ground_are_those_of_the_exercise_scaled(copy: Copy, first: Point, second: Point) -> None:
    there, other = copy.on_ground(first), copy.on_ground(second)
    on_ground = hypot(there.x_m - other.x_m, there.y_m - other.y_m)
    written = hypot(first.x_m - second.x_m, first.y_m - second.y_m)
    assert on_ground == pytest.approx(copy.scale * written, abs=1e-6)


def test_a_block_holds_its_copies_its_keepers_and_those_who_rest() -> None:
    block = Block(
        job=Job.MAIN,
        exercise=NOTHING,
        start_min=12,
        minutes=15,
        copies=(Copy(size=6, origin=Point(0, 0)), Copy(size=5, origin=Point(9, 0))),
        kit=Kit(),
        groups="",
        why="",
        findings=(),
        resting=1,
        keepers=2,
    )
    assert block.players == 14
