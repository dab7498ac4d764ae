"""The bag gives what it has, and what stands in is said."""

from conewright.fit.bag import MOST_BOTTLES, take
from conewright.fit.needs import Needs
from conewright.model.session import Kit, Tonight


def tonight(**said: int) -> Tonight:
    return Tonight(here=12, minutes=60, width_m=30, depth_m=20, **said)


def test_what_is_there_is_taken_and_nothing_stands_in() -> None:
    taken = take(Needs(balls=4, least_balls=4, cones=10, mini_goals=2), tonight())
    assert taken.kit == Kit(balls=4, cones=10, mini_goals=2)
    assert (taken.balls_short, taken.cones_short, taken.stand_ins) == (0, 0, ())


def test_nothing_stands_in_for_a_ball() -> None:
    assert take(Needs(balls=5, least_balls=5), tonight(balls=3)).balls_short == 2


def test_some_share_where_they_may() -> None:
    taken = take(Needs(balls=14, least_balls=7), tonight(balls=12))
    assert taken.balls_short == 0
    assert taken.kit.balls == 12
    assert taken.stand_ins == ("12 balls for 14: some share, two to a ball",)


def test_two_cones_stand_in_for_a_mini_goal() -> None:
    taken = take(Needs(cones=4, mini_goals=2), tonight(mini_goals=0))
    assert taken.kit == Kit(cones=8)
    assert "2 goals short" in taken.stand_ins[0]


def test_a_mini_goal_that_is_free_stands_in_for_a_full_one() -> None:
    taken = take(Needs(goals=1, mini_goals=1), tonight(mini_goals=2, goals=0))
    assert taken.kit == Kit(mini_goals=2)
    assert taken.stand_ins == ("1 full goal short: a mini goal instead",)


def test_a_few_bottles_stand_in_for_cones_and_the_rest_is_short() -> None:
    enough = take(Needs(cones=24 + MOST_BOTTLES), tonight(cones=24))
    assert (enough.kit.cones, enough.cones_short) == (24, 0)
    assert "bottle" in enough.stand_ins[0]
    assert take(Needs(cones=25 + MOST_BOTTLES), tonight(cones=24)).cones_short == 1
