"""Plays of texts, for the tests of the rehearsal."""

from conewright.model.exercise import Exercise
from conewright.model.layout import one_copy
from conewright.model.rehearsed import Rehearsal
from conewright.model.unroll import rounds_of
from conewright.notation.reader import read
from conewright.rehearsal.durations import Pupil, TimedRound, pupil, time_round
from conewright.rehearsal.recursion import Play, played_out
from conewright.rehearsal.rehearse import rehearse
from conewright.store.figures import load_figures

FIGURES = load_figures()
AGE, SURFACE = 11, "grass_club"
CHILD: Pupil = pupil(FIGURES, age=AGE, surface=SURFACE)
HEAD = """exercise: Case
kind: passing pattern
for 1 to 20 players, under 6 to under 19
"""

FACING = """Base at 0, 0 is a line with the ball.
Far at 0, 10 is a line.
Start with the same number in each line.
Each round:
1. Base passes to Far, then runs to Far.
2. Far passes to Base, then runs to Base.
"""


def exercise_of(text: str, size: int = 6) -> Exercise:
    """The exercise of a text without its head, as a copy of `size` children sees it."""
    exercise, problems = read(HEAD + text)
    assert exercise is not None
    assert not problems, problems
    return one_copy(exercise, size)


def timed(text: str, child: Pupil = CHILD) -> TimedRound:
    """The first round of a text with the seconds of its acts."""
    exercise = exercise_of(text)
    rounds, _ = rounds_of(exercise)
    return time_round(exercise, rounds[0], child)


def play_of(text: str, size: int, bout_s: float = 240.0, age: int = AGE) -> Play:
    """A text played out."""
    exercise = exercise_of(text, size)
    child = pupil(FIGURES, age=age, surface=SURFACE)
    play = played_out(exercise, rounds_of(exercise)[0], child, size=size, bout_s=bout_s)
    assert play is not None
    return play


def rehearsal_of(text: str, size: int, age: int = AGE) -> Rehearsal:
    """A text rehearsed, with nothing to mend in it."""
    result, problems = rehearse(exercise_of(text, size), size, figures=FIGURES, age=age, surface=SURFACE)
    assert not problems, problems
    assert isinstance(result, Rehearsal)
    return result
