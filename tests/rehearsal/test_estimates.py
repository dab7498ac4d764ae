"""Open play and contests: a range with its source and grade, or the reason why there is none."""

import pytest

from conewright.model.rehearsed import Estimate, NotRehearsed
from conewright.rehearsal.estimates import CONTACTS, estimate
from tests.rehearsal.played import FIGURES, exercise_of


def estimated(text: str, size: int, age: int = 11) -> Estimate | NotRehearsed:
    return estimate(exercise_of(text, size), size, figures=FIGURES, age=age)


def range_of(text: str, size: int, age: int = 11) -> tuple[float, float]:
    found = estimated(text, size, age)
    assert isinstance(found, Estimate)
    assert found.what == CONTACTS
    assert 0 < found.low <= found.high
    return found.low, found.high


RONDO = "Open play in 12 by 12 m: four Yellow keep it from two Red.\n"
GAME = "Open play in 30 by 20 m: Yellow against Blue.\n"
EACH = "Open play in 15 by 20 m: everyone has a ball.\n"


def test_a_rondo_shares_the_touches_on_its_ball() -> None:
    low = FIGURES.value("possession_ball_touches_low_per_min")
    high = FIGURES.value("possession_ball_touches_high_per_min")
    assert range_of(RONDO, 6) == (pytest.approx(low / 6), pytest.approx(high / 6))
    two = range_of("Open play in 12 by 12 m: four Yellow keep it from two Red. With 2 balls.\n", 6)
    assert two == (pytest.approx(low / 3), pytest.approx(high / 3))


def test_a_game_goes_by_its_format() -> None:
    for size, a_side in ((8, 4.0), (14, 7.0), (10, 5.0)):
        low = FIGURES.in_format("game_touches_low_per_min", a_side=a_side)
        high = FIGURES.in_format("game_touches_high_per_min", a_side=a_side)
        assert range_of(GAME, size) == (low, high)
    assert range_of(GAME, 6)[0] > range_of(GAME, 14)[0]


def test_a_ball_each_is_at_least_the_mark_of_the_age() -> None:
    assert range_of(EACH, 8)[0] == FIGURES.at("contacts_ball_each_mark_per_min", age=11)
    assert range_of(EACH, 8, age=7)[0] < range_of(EACH, 8, age=13)[0]


def test_where_some_have_a_ball_the_range_is_their_share() -> None:
    chase = "Open play in 18 by 18 m: two Red chase the others, who have a ball each.\n"
    assert range_of(chase, 12)[0] == pytest.approx(range_of(EACH, 12)[0] * 10 / 12)


def test_every_estimate_says_where_it_comes_from() -> None:
    for text, size in ((RONDO, 6), (GAME, 8), (EACH, 8)):
        found = estimated(text, size)
        assert isinstance(found, Estimate)
        assert found.source
        assert found.grade
        assert (found.exercise, found.size) == ("Case", size)


def test_a_contest_is_not_rehearsed_and_says_why() -> None:
    text = """Hub at 0, 0 is a line with 4 balls.
Gate House at 4, 14 is a line.
Goal at 0, 16 is a mini goal.
Each round:
1. Hub dribbles to 0, 4.
2. Contest in 10 by 12 m, middle at 0, 10: Hub against Gate House, on Goal, at most 8 s.
Scored, won, out or time up: Hub joins Gate House, Gate House takes the ball to Hub and joins Hub.
"""
    found = estimated(text, 6)
    assert isinstance(found, NotRehearsed)
    assert "left to the children" in found.why


@pytest.mark.parametrize("size", [0, 1, 2, 30])
def test_any_size_gives_an_answer(size: int) -> None:
    for text in (RONDO, GAME, EACH):
        found = estimated(text, size)
        if isinstance(found, Estimate):
            assert 0 <= found.low <= found.high
