"""The way of one written movement: feints, ways home, round and through things."""

from math import pi

import pytest

from conewright.model.exercise import Exercise, Verb
from conewright.model.geometry import Point, distance_m, path_length_m
from conewright.model.round import Played
from conewright.model.unroll import unroll
from conewright.model.ways import CHECK_M, ROUND_M, SHOW_M, Walker, spot_of
from conewright.notation.reader import read

HEAD = """exercise: Case
kind: dribbling
for 2 to 12 players, under 8 to under 16
Base at 0, 0 is a line, a ball each, facing Far.
Far at 0, 12 is a line, a ball each.
Mast at 0, 6 is a cone.
Pole at 0, 9 is a cone.
Door at 3, 4 is a gate 2 m wide.
Each round:
"""


def read_case(steps: str) -> Exercise:
    exercise, problems = read(HEAD + steps)
    assert exercise is not None
    assert not problems, problems
    return exercise


def acts(steps: str) -> list[Played]:
    """The written acts of a round."""
    return [act for act in unroll(read_case(steps))[0].acts if not act.implied]


def ways(steps: str) -> list[tuple[tuple[float, float], ...]]:
    return [tuple((round(x, 6), round(y, 6)) for x, y in act.path) for act in acts(steps)]


def test_a_check_goes_away_from_what_is_faced_and_a_show_comes_back() -> None:
    away, back = ways("1. Base checks away, then shows.\n")
    assert away == ((0, 0), (0, -CHECK_M))
    assert back == ((0, -CHECK_M), (0, 0))


def test_a_check_as_long_as_it_says() -> None:
    (away,) = ways("1. Base checks away 3 m.\n")
    assert away == ((0, 0), (0, -3))


def test_a_show_without_a_check_comes_forward() -> None:
    (forward,) = ways("1. Base shows.\n")
    assert forward == ((0, 0), (0, SHOW_M))


def test_through_a_gate_and_on() -> None:
    (way,) = ways("1. Base dribbles through Door to 3, 8.\n")
    assert way == ((0, 0), (3, 4), (3, 8))


def test_round_a_cone_and_back_keeps_beside_it_all_the_way() -> None:
    (way,) = ways("1. Base dribbles round Mast home.\n")
    assert (way[0], way[-1]) == ((0, 0), (0, 0))
    bow = [Point(*spot) for spot in way[1:-1]]
    assert all(distance_m(spot, Point(0, 6)) == pytest.approx(ROUND_M) for spot in bow)
    assert max(spot.y_m for spot in bow) > 6
    assert path_length_m(tuple(Point(*spot) for spot in way)) > 12


def test_cones_on_a_straight_way_are_a_slalom() -> None:
    (way,) = ways("1. Base dribbles round Mast round Pole to Far.\n")
    beside = way[1:-1]
    first = [x for x, y in beside if y < 7.5]
    second = [x for x, y in beside if y >= 7.5]
    assert all(x > 0 for x in first)
    assert all(x < 0 for x in second)
    assert max(first) == pytest.approx(ROUND_M, abs=0.1)
    assert min(second) == pytest.approx(-ROUND_M, abs=0.1)


def test_the_way_home_swings_out_and_the_way_to_a_place_is_straight() -> None:
    straight, home = ways("1. Base dribbles to 2, 9, then dribbles home.\n")
    assert len(straight) == 2
    assert len(home) > 2
    outside = ways("1. Base dribbles to Far round the outside.\n")[0]
    assert len(outside) > 2


def test_so_many_metres_towards_a_place() -> None:
    assert ways("1. Base dribbles 3 m towards Far.\n") == [((0, 0), (0, 3))]


def test_a_fetch_goes_to_where_the_ball_lies() -> None:
    steps = "1. Base passes to 5, 5.\n2. Base fetches the ball, then dribbles home.\n"
    fetch = next(act for act in acts(steps) if act.verb is Verb.FETCH)
    assert fetch.path == (Point(0, 0), Point(5, 5))


def test_a_target_that_is_nothing_means_no_spot() -> None:
    exercise = read_case("1. Base dribbles home.\n")
    walker = Walker(number=0, role="Base", place="Base", at=Point(0, 0), heading=pi / 2)
    assert spot_of(exercise, walker, None, {}) is None


def test_a_walker_that_moved_and_joined_nothing_ends_nowhere() -> None:
    exercise = read_case("1. Base dribbles home.\n")
    lost = Walker(number=0, role="Base", place="Base", at=Point(3, 3), heading=0, moved=True)
    stood = Walker(number=1, role="Base", place="Base", at=Point(0, 0), heading=0)
    assert (lost.bearer(exercise).ends_at, lost.bearer(exercise).stays) == ("", False)
    assert (stood.bearer(exercise).ends_at, stood.bearer(exercise).stays) == ("Base", True)
