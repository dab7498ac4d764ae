"""Checking as a whole: many numbers at once, the order of what is told, and what is kept quiet."""

import pytest

from conewright.checks.check import ORDER, check, check_copy, check_every
from conewright.model.exercise import Exercise
from conewright.model.layout import layout_for
from conewright.model.problem import Severity
from conewright.notation.reader import read
from conewright.rehearsal.rehearse import rehearse, rehearse_sizes
from conewright.store.figures import load_figures
from conewright.store.shelf import load_shelf

FIGURES = load_figures()
SHELF = load_shelf()


@pytest.mark.parametrize("exercise", SHELF, ids=lambda exercise: exercise.name)
def test_every_number_at_once_is_each_number_on_its_own(exercise: Exercise) -> None:
    counts = range(exercise.numbers.least, exercise.numbers.least + 5)
    at_once = check_every(exercise, counts, figures=FIGURES, age=11, surface="turf")
    assert list(at_once) == list(counts)
    for n in counts:
        layout = layout_for(exercise, n)
        sizes = layout.sizes if layout else (n,)
        each = {
            problem for size in sizes for problem in check_copy(exercise, size, figures=FIGURES, age=11, surface="turf")
        }
        assert set(at_once[n]) == each


@pytest.mark.parametrize("exercise", SHELF[:12], ids=lambda exercise: exercise.name)
def test_many_sizes_at_once_are_each_size_on_its_own(exercise: Exercise) -> None:
    sizes = [exercise.numbers.least, exercise.numbers.most, exercise.numbers.least]
    at_once = rehearse_sizes(exercise, sizes, figures=FIGURES, age=9, surface="hall")
    for size in sizes:
        assert at_once[size] == rehearse(exercise, size, figures=FIGURES, age=9, surface="hall")


def test_a_rehearsal_at_hand_is_not_made_again() -> None:
    exercise = next(one for one in SHELF if one.name == "Stem and branch")
    known = rehearse(exercise, 6, figures=FIGURES, age=11, surface="hall")
    assert check_copy(exercise, 6, figures=FIGURES, age=11, surface="hall", rehearsed=known) == check_copy(
        exercise, 6, figures=FIGURES, age=11, surface="hall"
    )


HEAD = "exercise: Case\nkind: passing pattern\nfor 4 to 8 players, under 8 to under 16\nspace: 3 by 9 m\n"
OPEN = """Base at 0, 0 is a line with the ball.
Far at 0, 14 is a line.
Each round:
1. Base passes to Far, then runs to Far.
2. Far passes to Base, then runs to Far.
"""


def test_the_heaviest_comes_first_and_nothing_twice() -> None:
    exercise, _ = read(HEAD + OPEN)
    assert exercise is not None
    found = check(exercise, 6, figures=FIGURES, age=11, surface="turf")
    weights = [ORDER[problem.severity] for problem in found]
    assert weights == sorted(weights)
    assert len(set(found)) == len(found)
    assert found[0].severity is Severity.MEND


def test_after_a_stop_no_figures_are_told_and_the_cause_not_its_follow() -> None:
    exercise, _ = read(HEAD + OPEN)
    assert exercise is not None
    codes = {problem.code for problem in check(exercise, 6, figures=FIGURES, age=11, surface="turf")}
    assert "flow-open" in codes
    assert not codes & {"nobody-there", "waiting-long", "contacts-few", "line-long"}
