"""Turns on sides that take turns: who is locked to one, and a start or a change that shares them."""

import re

import pytest

from conewright.checks.check import check_copy
from conewright.checks.turns import is_locked
from conewright.model.problem import Problem
from conewright.notation.reader import read
from conewright.store.figures import load_figures

FIGURES = load_figures()
TEXT = """exercise: Case
kind: passing pattern
for 4 to 12 players, under 8 to under 16
Base at 0, 0 is a line with 6 balls.
Stem at 0, 8 holds one.
Left at -6, 14 and Right at 6, 14 are lines.
{start}Each round, Left and Right in turn (call it Side):
1. Base passes to Stem, then runs to Stem.
2. Stem turns, passes to Side, then runs to Side.
3. Side dribbles to Base.
{more}"""


def told(size: int, start: str = "", more: str = "") -> Problem | None:
    exercise, problems = read(TEXT.format(start=start, more=more))
    assert exercise is not None
    assert not problems, problems
    found = check_copy(exercise, size, figures=FIGURES, age=11, surface="grass_club")
    return next((problem for problem in found if problem.code == "one-side-only"), None)


def test_locked_is_often_here_and_never_there() -> None:
    assert is_locked({"Left": 4}, ("Left", "Right"))
    assert not is_locked({"Left": 3}, ("Left", "Right"))
    assert not is_locked({"Left": 9, "Right": 1}, ("Left", "Right"))
    assert not is_locked({}, ("Left", "Right"))


@pytest.mark.parametrize("size", range(4, 13))
def test_what_is_proposed_shares_the_sides(size: int) -> None:
    problem = told(size)
    if problem is None:
        return
    (proposal,) = re.findall(r'"([^"]+)"', problem.hint)
    mended = told(size, start=f"{proposal}\n") if proposal.startswith("Start") else told(size, more=f"{proposal}\n")
    assert mended is None


def test_some_number_is_locked_and_some_is_not() -> None:
    locked = {size for size in range(4, 13) if told(size)}
    assert locked
    assert locked != set(range(4, 13))
    assert "children always come" in (told(4) or pytest.fail("four are all locked")).message


def test_sides_from_half_time_are_for_everybody() -> None:
    exercise, _ = read(
        TEXT.format(start="", more="").replace("Left and Right in turn", "Left, then Right from half time")
    )
    assert exercise is not None
    found = check_copy(exercise, 6, figures=FIGURES, age=11, surface="grass_club")
    assert "one-side-only" not in {problem.code for problem in found}
