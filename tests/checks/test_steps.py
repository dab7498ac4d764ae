"""What a step up or down asks anew, and when that is more than one thing."""

import pytest

from conewright.checks.steps import demands, stands_on, steps_change_one_demand
from conewright.model.exercise import Exercise
from conewright.model.problem import Severity
from conewright.notation.reader import read
from conewright.store.shelf import load_shelf

PATTERN = """\
exercise: Stem and branch
kind: passing pattern
for 5 to 9 players

Base at 0, 0 is a line, a ball each.
Stem at 0, 8 holds one.
Left at -6, 15 and Right at 6, 15 are lines.
Mast at 3, 10 is a cone.

Each round, Left and Right in turn (call it Side):
1. Stem checks away, then shows.
2. Base passes firmly to Stem, then runs to Stem.
3. Stem turns in two touches, passes ahead of Side, then runs to Side.
4. Side dribbles to the end of Base round the outside.

{step}
"""
GAME = """\
exercise: Four two
kind: rondo
for 6 players

South at 0, -5 is a gate.
North at 0, 5 is a gate.
Open play in 12 by 12 m: four Yellow keep it from two Red.

{step}
"""


def exercise_with(step: str, text: str = PATTERN) -> Exercise:
    exercise, problems = read(text.format(step=step))
    assert problems == ()
    assert exercise is not None
    return exercise


def asked_by(step: str, text: str = PATTERN) -> int:
    """How many demands the last of the steps changes."""
    exercise = exercise_with(step, text)
    variant = exercise.variants[-1]
    return len(set(demands(stands_on(exercise, variant), variant)))


@pytest.mark.parametrize(
    ("count", "step"),
    [
        (1, 'harder "x": as before, but in 3 Stem turns first time.'),
        (2, 'harder "x": as before, but in 3 Stem turns first time with the left foot.'),
        (1, 'harder "x": as before, but in 3 Stem turns first time; in 3 Stem passes first time.'),
        (2, 'harder "x": as before, but in 3 Stem turns first time; in 3 Stem passes softly.'),
        (0, 'harder "x": as before, but in 2 Base passes firmly.'),
        (1, 'harder "x": as before, but instead of 1: Stem runs to Mast, then shows.'),
        (2, 'harder "x": as before, but instead of 1: Stem runs to Mast, then shows; Left shows.'),
        (1, 'harder "x": as before, but instead of 4: Side dribbles round Mast to the end of Base round the outside.'),
        (
            1,
            'harder "x": as before, but instead of 4: Side dribbles walking to the end of Base round the outside.',
        ),
        (0, 'harder "x": as before, but instead of 1: Stem checks away, then shows.'),
        (1, 'harder "x": as before, but after 2: Left runs to 3, 10.'),
        (2, 'harder "x": as before, but after 2: Left runs to 3, 10; Right checks away.'),
        (1, 'easier "x": as before, but leave out 1.'),
        (
            1,
            'harder "x": as written, but one more: Shadow at 0, 9 is passive; Shadow changes with Left every 6 rounds.',
        ),
        (1, 'harder "x": as before, but Left stands at -7, 16; Right stands at 7, 16.'),
        (2, 'harder "x": as before, but Left stands at -7, 16; in 3 Stem turns first time.'),
        (1, 'harder "a": as before, but in 2 Base passes softly.\nharder "x": as before, but in 2 Base passes firmly.'),
        (0, 'harder "a": as before, but in 2 Base passes softly.\nharder "x": as before, but in 2 Base passes softly.'),
        (
            1,
            'harder "a": as before, but in 2 Base passes softly.\nharder "x": as written, but in 2 Base passes softly.',
        ),
    ],
)
def test_what_a_pattern_asks_anew(count: int, step: str) -> None:
    assert asked_by(step) == count


@pytest.mark.parametrize(
    ("count", "step"),
    [
        (1, 'harder "x": as before, but in 9 by 9 m.'),
        (1, 'harder "x": as before, but four Yellow keep it from three Red.'),
        (2, 'harder "x": as before, but in 9 by 9 m; four Yellow keep it from three Red.'),
        (1, 'half the space "x": as before, but in 9 by 9 m; South stands at 0, -4; North stands at 0, 4.'),
    ],
)
def test_what_a_game_asks_anew(count: int, step: str) -> None:
    assert asked_by(step, GAME) == count


def test_two_demands_at_once_are_told_with_what_they_are() -> None:
    exercise = exercise_with('harder "both": as before, but in 2 Base passes softly; in 3 Stem turns first time.')
    (problem,) = steps_change_one_demand(exercise)
    assert (problem.code, problem.severity) == ("step-two-demands", Severity.LOOK)
    assert problem.message == (
        'Harder "both" changes 2 demands at once: "in 2 Base passes softly" and "in 3 Stem turns first time".'
    )
    assert problem.hint.startswith('Keep "in 2 Base passes softly" and put the rest into a step of its own below it')
    assert problem.where is not None
    assert problem.where.line == 16


def test_one_sentence_with_two_demands_cannot_be_halved_by_leaving_a_change_out() -> None:
    exercise = exercise_with('harder "both": as before, but in 3 Stem turns first time with the left foot.')
    (problem,) = steps_change_one_demand(exercise)
    assert problem.code == "step-two-demands"
    assert problem.hint.startswith("Change what one child does first")


def test_one_demand_is_good_to_know() -> None:
    exercise = exercise_with('easier "soft": as before, but in 2 Base passes softly.')
    (problem,) = steps_change_one_demand(exercise)
    assert (problem.code, problem.severity) == ("step-changes", Severity.KNOW)
    assert problem.message == 'Easier "soft" changes "in 2 Base passes softly".'


def test_a_step_that_asks_for_nothing_new_says_so() -> None:
    exercise = exercise_with('harder "same": as before, but in 2 Base passes firmly.')
    (problem,) = steps_change_one_demand(exercise)
    assert problem.message == 'Harder "same" changes nothing that is asked of anybody.'


def test_what_answers_to_what_is_lacking_may_change_what_it_must() -> None:
    exercise = exercise_with('few balls "x": as before, but Stem stands at 0, 7; in 3 Stem turns first time.')
    (problem,) = steps_change_one_demand(exercise)
    assert problem.severity is Severity.KNOW


def test_without_steps_there_is_nothing_to_say() -> None:
    assert steps_change_one_demand(exercise_with("")) == ()


@pytest.mark.parametrize("exercise", load_shelf(), ids=lambda exercise: exercise.name)
def test_every_step_on_the_shelf_is_told_once(exercise: Exercise) -> None:
    assert len(steps_change_one_demand(exercise)) == len(exercise.variants)
