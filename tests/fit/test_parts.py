"""Each part of what makes a good evening grades from 0 to 1 and prefers what it is named after."""

from dataclasses import replace

import pytest

from conewright.fit.clock import Slot
from conewright.fit.options import Option, choice_for
from conewright.fit.parts import PARTS, Chosen, Evening, cones_of, grades, worth
from conewright.model.exercise import Exercise
from conewright.model.session import Job, Tonight
from tests.fit.evenings import USUAL, bench_for, written

OWN = """exercise: Own ball
kind: warm-up
for 4 to 20 players, under 7 to under 14

Open play in 12 by 12 m: everyone has a ball.
"""
GAME = """exercise: Game
kind: small-sided game
for 4 to 20 players, under 7 to under 14
aim: scoring

Open play in 25 by 18 m: Yellow against Blue.
"""
SHARED = OWN.replace("has a ball.", "has a ball. One over shares a ball.")
QUEUE = """exercise: Queue
for 4 to 20 players, under 7 to under 14
aim: turning
Near at 0, 0 is a line with the ball.
Far at 0, 8 holds one.
Start with one at Far, the rest at Near.

Each round:
1. Near passes to Far, then jogs to Far.
2. Far dribbles to the end of Near round the outside.
"""


def option(exercise: Exercise, asked: Tonight = USUAL) -> Option:
    found = choice_for(exercise, bench_for(asked)).option
    assert found is not None
    return found


def evening(*texts: str, asked: Tonight = USUAL, jobs: tuple[Job, ...] = (Job.WARM_UP, Job.MAIN, Job.GAME)) -> Evening:
    chosen = []
    for at, text in enumerate(texts):
        one = option(written(text), asked)
        slot = Slot(job=jobs[at], start_min=12 * at, minutes=10)
        chosen.append(Chosen(slot=slot, option=one, cones=cones_of(one)))
    return Evening(chosen=tuple(chosen), cones=asked.cones, explain_min=1.0)


def grade(name: str, graded: Evening) -> float:
    return dict(grades(graded))[name]


def test_grades_lie_between_nought_and_one() -> None:
    for graded in (evening(), evening(OWN), evening(OWN, QUEUE, GAME), evening(OWN, OWN, OWN)):
        assert all(0.0 <= value <= 1.0 for _, value in grades(graded))


@pytest.mark.parametrize(
    ("name", "better", "worse"),
    [
        ("ball rolling", evening(OWN), evening(GAME)),
        ("contacts", evening(OWN), evening(SHARED, asked=replace(USUAL, here=20))),
        ("waiting", evening(OWN), evening(QUEUE)),
        ("aim", evening(QUEUE, asked=replace(USUAL, aim="turns")), evening(GAME, asked=replace(USUAL, aim="turns"))),
        ("opposed", evening(GAME), evening(OWN)),
        ("game", evening(GAME), evening(QUEUE)),
        ("changeover", evening(OWN, OWN), evening(OWN, GAME)),
        ("variety", evening(OWN, GAME), evening(OWN, OWN)),
        ("fits its part", evening(OWN), evening(GAME)),
        ("as written", evening(QUEUE), evening(QUEUE, asked=replace(USUAL, cones=1))),
        ("ground for each", evening(QUEUE), evening(GAME)),
    ],
)
def test_a_part_prefers_what_it_is_named_after(name: str, better: Evening, worse: Evening) -> None:
    assert grade(name, better) > grade(name, worse)


def test_one_adult_has_one_place_to_watch() -> None:
    text = OWN.replace("4 to 20", "4 to 6")
    one, two = (evening(text, asked=replace(USUAL, adults=adults)) for adults in (1, 2))
    assert grade("one place to watch", one) == 0.5
    assert grade("one place to watch", two) == 1.0


def test_everybody_in_is_graded_lower_where_somebody_rests() -> None:
    text = OWN.replace("4 to 20", "6 to 6")
    assert grade("everybody in", evening(text, asked=replace(USUAL, here=13))) < 0.5
    assert grade("everybody in", evening(text)) == 1.0


def test_worth_is_the_weighed_mean_of_the_grades() -> None:
    graded = evening(OWN, QUEUE, GAME)
    whole = sum(part.weight * part.measure(graded) for part in PARTS) / sum(part.weight for part in PARTS)
    assert worth(graded) == pytest.approx(whole)
    assert 0 < worth(graded) < 1
