"""Copies lie on the ground, apart from one another, turned or smaller only where they must be."""

from dataclasses import replace
from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conewright.fit.arrangement import Arrangement
from conewright.fit.bench import Bench
from conewright.fit.placing import LEAST_SCALE, Placing, place
from conewright.fit.scaling import scaled
from conewright.model.exercise import Exercise
from conewright.model.geometry import Box, Point, box_round
from conewright.model.ground import ground_used
from conewright.model.session import Copy
from tests.fit.evenings import USUAL, bench_for, written

WAY = """exercise: Way
for 2 to 9 players, under 7 to under 16
Near at 0, 0 holds one, with the ball.
Far at 0, {far} holds one.

Each round:
1. Near passes to Far.
2. Far passes to Near.
"""
SHOTS = """exercise: Shots
for 2 to 9 players, under 7 to under 16
Line at 0, 0 holds one, with the ball.
Goal at 0, 5 is a mini goal.

Each round:
1. Line shoots at Goal, then fetches the ball, then dribbles to Line.
"""


def lying(exercise: Exercise, size: int, placing: Placing, spot: int) -> Box:
    """The ground a copy uses, from its corners laid on the ground one by one."""
    used = ground_used(scaled(exercise, placing.scale), size)
    at = placing.spots[spot]
    copy = Copy(size=size, origin=at.origin, turned=placing.turned, mirrored=at.mirrored)
    corners = (Point(x, y) for x in (used.left_m, used.right_m) for y in (used.bottom_m, used.top_m))
    return box_round(tuple(copy.on_ground(corner) for corner in corners))


def gap_m(first: Box, second: Box) -> float:
    across = max(first.left_m - second.right_m, second.left_m - first.right_m)
    return max(across, first.bottom_m - second.top_m, second.bottom_m - first.top_m)


def placed(exercise: Exercise, bench: Bench, *sizes: int, apart_m: float = 5.0) -> Placing | None:
    return place(exercise, Arrangement(sizes=sizes, apart_m=apart_m), bench)


def test_one_copy_stands_in_the_middle_as_written() -> None:
    placing = placed(written(WAY.format(far=8)), bench_for(), 2)
    assert placing is not None
    assert (placing.scale, placing.turned, placing.spots[0].origin) == (1.0, False, Point(15.0, 6.0))


def test_what_is_too_deep_is_turned_before_it_is_made_smaller() -> None:
    placing = placed(written(WAY.format(far=20)), bench_for(), 2)
    assert placing is not None
    assert (placing.scale, placing.turned) == (1.0, True)


def test_what_does_not_fit_either_way_is_made_smaller_no_more_than_needed() -> None:
    placing = placed(written(WAY.format(far=30)), bench_for(), 2)
    assert placing is not None
    assert (placing.scale, placing.turned) == (0.9, True)


def test_too_much_for_the_ground_finds_no_place() -> None:
    assert placed(written(WAY.format(far=50)), bench_for(), 2) is None
    assert placed(written(WAY.format(far=8)), bench_for(replace(USUAL, width_m=3.0, depth_m=3.0)), 2) is None


def test_neighbours_are_mirrored_and_stand_apart() -> None:
    exercise = written(WAY.format(far=8))
    placing = placed(exercise, bench_for(), 2, 2, 2, apart_m=4.0)
    assert placing is not None
    assert [spot.mirrored for spot in placing.spots] == [False, True, False]
    boxes = [lying(exercise, 2, placing, at) for at in range(3)]
    assert min(gap_m(one, other) for one, other in combinations(boxes, 2)) == pytest.approx(4.0)


def test_copies_in_each_others_line_of_shooting_stand_fifteen_metres_apart() -> None:
    exercise = written(SHOTS)
    side_by_side = placed(exercise, bench_for(), 1, 1, apart_m=2.0)
    assert side_by_side is not None
    assert side_by_side.spots[0].origin.y_m == side_by_side.spots[1].origin.y_m
    narrow = placed(exercise, bench_for(replace(USUAL, width_m=3.0, depth_m=30.0)), 1, 1, apart_m=2.0)
    assert narrow is not None
    boxes = [lying(exercise, 1, narrow, at) for at in range(2)]
    assert gap_m(*boxes) >= 15.0 - 1e-9
    assert placed(exercise, bench_for(replace(USUAL, width_m=3.0, depth_m=18.0)), 1, 1, apart_m=2.0) is None


def test_a_game_is_made_larger_where_there_is_ground_for_it() -> None:
    game = written(
        "exercise: Game\nfor 2 to 9 players, under 7 to under 16\n\nOpen play in 10 by 10 m: Yellow against Blue.\n"
    )
    placing = placed(game, bench_for(), 4)
    assert placing is not None
    assert placing.scale == 1.3
    assert placed(game, bench_for(replace(USUAL, width_m=10.0, depth_m=10.0)), 4) is not None


@given(
    width=st.floats(2, 60),
    depth=st.floats(2, 60),
    far=st.integers(3, 30),
    copies=st.integers(1, 6),
    size=st.integers(2, 9),
    apart=st.floats(0, 8),
)
def test_wherever_copies_are_put_they_lie_on_the_ground_and_apart(
    width: float, depth: float, far: int, copies: int, size: int, apart: float
) -> None:
    exercise = written(WAY.format(far=far))
    bench = bench_for(replace(USUAL, width_m=width, depth_m=depth))
    placing = placed(exercise, bench, *(size,) * copies, apart_m=apart)
    if placing is None:
        return
    assert LEAST_SCALE <= placing.scale <= 1.0
    boxes = [lying(exercise, size, placing, at) for at in range(copies)]
    for box in boxes:
        assert box.left_m >= -1e-6
        assert box.bottom_m >= -1e-6
        assert box.right_m <= width + 1e-6
        assert box.top_m <= depth + 1e-6
    assert all(gap_m(one, other) >= apart - 1e-6 for one, other in combinations(boxes, 2))
