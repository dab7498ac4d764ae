"""Problems as data: the heaviest of some, and what clean means."""

from itertools import combinations

import pytest

from conewright.model.problem import Problem, Severity, is_clean, worst

ALL = {severity: Problem(code=severity.value, severity=severity, message="So it is.") for severity in Severity}


@pytest.mark.parametrize("size", [0, 1, 2, 3])
def test_the_heaviest_of_any_problems(size: int) -> None:
    weight = list(Severity)
    for chosen in combinations(Severity, size):
        problems = tuple(ALL[severity] for severity in chosen)
        assert worst(problems) == (min(chosen, key=weight.index) if chosen else None)
        assert worst(problems[::-1]) == worst(problems)
        assert is_clean(problems) == (Severity.MEND not in chosen)


def test_the_three_words_in_order_of_weight() -> None:
    assert [severity.value for severity in Severity] == ["mend", "look", "know"]
