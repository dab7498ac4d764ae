"""What is wrong, missing or good to know, as data; must not know how it is shown."""

from dataclasses import dataclass
from enum import StrEnum


class Severity(StrEnum):
    """`mend`: cannot run, or breaks a safety rule; `look`: runs but misses a mark; `know`: good to know."""

    MEND = "mend"
    LOOK = "look"
    KNOW = "know"


@dataclass(frozen=True, slots=True, kw_only=True)
class Span:
    """A stretch of a text: lines and columns count from 1, the end column stands behind the last character."""

    line: int
    column: int
    end_line: int
    end_column: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Problem:
    """One finding: `message` names the word and the place, `hint` says what to write or do."""

    code: str
    severity: Severity
    message: str
    where: Span | None = None
    hint: str = ""


def worst(problems: tuple[Problem, ...]) -> Severity | None:
    """The heaviest severity among problems, or None where there are none."""
    found = {problem.severity for problem in problems}
    return next((severity for severity in Severity if severity in found), None)


def is_clean(problems: tuple[Problem, ...]) -> bool:
    """True where nothing has to be mended."""
    return worst(problems) is not Severity.MEND
