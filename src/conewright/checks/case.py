"""What a check looks at: one copy of an exercise with so many children of an age; must not know of the evening."""

from collections.abc import Callable
from dataclasses import dataclass

from conewright.model.exercise import Exercise
from conewright.model.figures import Figures
from conewright.model.layout import one_copy, standing
from conewright.model.problem import Problem, Severity, Span
from conewright.model.rehearsed import Rehearsal, Rehearsed
from conewright.model.round import Round
from conewright.model.unroll import Unrolled, rounds_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """One copy of `size` children: the exercise as that copy sees it, its rounds, who stands where, the figures."""

    exercise: Exercise
    size: int
    age: int
    surface: str
    figures: Figures
    rounds: tuple[Round, ...]
    standing: tuple[tuple[str, int], ...]
    unsaid: tuple[Problem, ...] = ()  # what the rounds leave open: balls and ways that nobody has said

    def count_at(self, name: str) -> int:
        """How many children stand at a place at the start."""
        return dict(self.standing).get(name, 0)

    @property
    def contest(self) -> bool:
        """True where the script holds a contest, which is not rehearsed."""
        return any(round_.contest for round_ in self.rounds)


def case_of(
    exercise: Exercise, size: int, *, figures: Figures, age: int, surface: str, unrolled: Unrolled | None = None
) -> Case:
    """The case of one copy of `size` children; the rounds may be passed in: they are the same for every size."""
    own = one_copy(exercise, size)
    rounds, unsaid = unrolled or (rounds_of(own) if own.script is not None else ((), ()))
    return Case(
        exercise=own,
        size=size,
        age=age,
        surface=surface,
        figures=figures,
        rounds=rounds,
        standing=tuple(standing(own, size).items()),
        unsaid=unsaid,
    )


TextCheck = Callable[[Case], tuple[Problem, ...]]
RehearsedCheck = Callable[[Case, Rehearsal], tuple[Problem, ...]]
Rehearser = Callable[..., tuple[Rehearsed, tuple[Problem, ...]]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Check:
    """One check of the text: the codes it may give, why it matters in a sentence or two, and the function."""

    codes: tuple[str, ...]
    why: str
    run: TextCheck


@dataclass(frozen=True, slots=True, kw_only=True)
class AfterCheck:
    """One check of what was rehearsed: the codes it may give, why it matters, and the function."""

    codes: tuple[str, ...]
    why: str
    run: RehearsedCheck


@dataclass(frozen=True, slots=True, kw_only=True)
class Met:
    """Codes of what is met while a round is laid out or rehearsed, and why it matters; no function of its own."""

    codes: tuple[str, ...]
    why: str


def mend(code: str, message: str, where: Span | None, hint: str) -> Problem:
    """A problem that keeps the exercise from running, or breaks a safety rule."""
    return Problem(code=code, severity=Severity.MEND, message=message, where=where, hint=hint)


def look(code: str, message: str, where: Span | None, hint: str) -> Problem:
    """A problem that misses a mark or may go wrong."""
    return Problem(code=code, severity=Severity.LOOK, message=message, where=where, hint=hint)


def know(code: str, message: str, where: Span | None, hint: str = "") -> Problem:
    """Something good to know."""
    return Problem(code=code, severity=Severity.KNOW, message=message, where=where, hint=hint)


def here(count: int) -> str:
    """ "one child is here", "7 children are here"."""
    return f"{children(count)} {'is' if count == 1 else 'are'} here"


def children(count: int) -> str:
    """ "one child", "7 children"."""
    return "one child" if count == 1 else f"{count} children"
