"""Two copies are proposed only where halves are allowed and run."""

import pytest

from conewright.checks.case import case_of
from conewright.checks.smaller import two_copies
from conewright.notation.reader import read
from conewright.store.figures import load_figures

FIGURES = load_figures()
SQUARE = """exercise: Case
kind: passing pattern
for {least} to 12 players, under 8 to under 16
South at 0, 0 is a line with the ball.
West at -5, 6 is a line.
North at 0, 12 is a line.
East at 5, 6 is a line.
Each round:
1. South passes to West.
2. West passes to North.
3. North passes to East.
4. East passes to South.
"""


def proposed(size: int, least: int) -> str:
    exercise, _ = read(SQUARE.format(least=least))
    assert exercise is not None
    return two_copies(case_of(exercise, size, figures=FIGURES, age=11, surface="grass_club"))


@pytest.mark.parametrize("size", [10, 11, 12])
def test_halves_that_run_are_proposed(size: int) -> None:
    assert proposed(size, 5) == f'"With {size}: two copies, 5 m apart."'


def test_halves_below_the_numbers_are_not() -> None:
    assert proposed(9, 5) == ""


def test_halves_that_stop_are_not_whatever_the_numbers_say() -> None:
    """With four in a square nobody stands at South for the last pass."""
    assert proposed(8, 2) == ""
    assert proposed(1, 2) == ""
