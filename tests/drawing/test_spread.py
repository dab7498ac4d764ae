"""Players spread in a box: inside it, apart, the same every time, and sides among each other."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conewright.drawing.spread import spread
from conewright.model.exercise import OpenPlay, PlayKind, Team
from conewright.model.layout import Side


def sides(*counts: int) -> tuple[Side, ...]:
    return tuple(Side(team=Team(name=f"team {index}"), count=count) for index, count in enumerate(counts))


@given(
    kind=st.sampled_from(list(PlayKind)),
    counts=st.lists(st.integers(0, 8), min_size=1, max_size=3),
    width=st.floats(6, 40),
    depth=st.floats(6, 40),
)
def test_everybody_is_inside_and_nobody_on_anybody(
    kind: PlayKind, counts: list[int], width: float, depth: float
) -> None:
    play = OpenPlay(width_m=width, depth_m=depth, kind=kind)
    found = spread(play, sides(*counts), 0.8)
    assert [len(side) for side in found] == counts
    spots = [spot for side in found for spot in side]
    assert all(abs(x) <= width / 2 - 0.5 and abs(y) <= depth / 2 - 0.5 for x, y in spots)
    gaps = [math.dist(one, other) for index, one in enumerate(spots) for other in spots[:index]]
    assert min(gaps, default=9) > 0.25
    assert found == spread(play, sides(*counts), 0.8)


@pytest.mark.parametrize("count", [3, 4, 5, 8])
def test_those_who_keep_it_stand_round_those_who_chase(count: int) -> None:
    play = OpenPlay(width_m=14, depth_m=14, kind=PlayKind.KEEP)
    outer, inner = spread(play, sides(count, 2), 0.8)
    assert min(math.hypot(*spot) for spot in outer) > max(math.hypot(*spot) for spot in inner)


def test_two_sides_of_a_game_stand_among_each_other() -> None:
    play = OpenPlay(width_m=20, depth_m=30, kind=PlayKind.GAME)
    first, second = spread(play, sides(6, 6), 0.8)
    assert max(spot.y_m for spot in first) > min(spot.y_m for spot in second)
    assert sum(spot.y_m for spot in first) / 6 < sum(spot.y_m for spot in second) / 6
