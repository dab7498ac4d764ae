"""The caution about adults is always a look, names the figure, and leaves the last word to local rules."""

from dataclasses import replace

import pytest

from conewright.fit.adults import adult_cautions, adults_needed
from conewright.model.problem import Severity
from tests.fit.evenings import FIGURES, USUAL


@pytest.mark.parametrize(
    ("age", "here", "needed"),
    [(7, 6, 2), (7, 13, 3), (9, 13, 3), (10, 13, 2), (11, 16, 2), (11, 17, 3), (14, 20, 2), (16, 31, 4), (11, 1, 2)],
)
def test_adults_needed_by_age_and_never_fewer_than_two(age: int, here: int, needed: int) -> None:
    assert adults_needed(replace(USUAL, age=age, here=here), FIGURES)[0] == needed


@pytest.mark.parametrize(
    ("adults", "code"), [(0, "adults-few"), (1, "adults-few"), (2, "adults-ratio"), (5, "adults-ratio")]
)
def test_it_is_always_a_look_with_the_local_rules(adults: int, code: str) -> None:
    first, *rest = adult_cautions(replace(USUAL, adults=adults), FIGURES)
    assert (first.code, first.severity) == (code, Severity.LOOK)
    assert "Local rules come first." in first.message
    assert [problem.code for problem in rest] == (["one-adult"] if adults < 2 else [])


def test_copies_that_run_by_themselves_do_not_make_up_for_an_adult() -> None:
    message = adult_cautions(replace(USUAL, adults=1), FIGURES)[1].message
    assert "not made up" in message


def test_the_figure_is_not_for_grown_ups() -> None:
    assert adult_cautions(replace(USUAL, age=30), FIGURES) == ()
