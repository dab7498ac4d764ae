"""All checks on an exercise: of the text, then of what was rehearsed; must not know of the evening."""

from conewright.checks import balls, crossings, flow, lines, passes, people, space, turns
from conewright.checks.case import AfterCheck, Check, case_of
from conewright.model.exercise import Exercise
from conewright.model.figures import Figures
from conewright.model.layout import layout_for
from conewright.model.problem import Problem, Severity
from conewright.model.rehearsed import Rehearsal, Rehearsed
from conewright.rehearsal.rehearse import rehearse

TEXT_CHECKS: tuple[Check, ...] = (
    *people.CHECKS,
    *flow.CHECKS,
    *balls.CHECKS,
    *space.CHECKS,
    *passes.CHECKS,
    *lines.CHECKS,
)
REHEARSED_CHECKS: tuple[AfterCheck, ...] = (*lines.AFTER_CHECKS, *turns.AFTER_CHECKS, *crossings.AFTER_CHECKS)
STALLS = frozenset({"nobody-there", "no-ball-left", "no-time"})  # the figures of a round that stops mean nothing
ORDER = {severity: place for place, severity in enumerate(Severity)}


def check_copy(
    exercise: Exercise,
    size: int,
    *,
    figures: Figures,
    age: int,
    surface: str,
    rehearsed: tuple[Rehearsed, tuple[Problem, ...]] | None = None,
) -> tuple[Problem, ...]:
    """What is to be said of one copy of `size` children, the heaviest first; pass the rehearsal where it is at hand."""
    case = case_of(exercise, size, figures=figures, age=age, surface=surface)
    found = [*case.unsaid, *(problem for check in TEXT_CHECKS for problem in check.run(case))]
    result, met = rehearsed or rehearse(exercise, size, figures=figures, age=age, surface=surface)
    found += _not_said(met, found)
    if isinstance(result, Rehearsal) and not any(problem.code in STALLS for problem in met):
        found += [problem for check in REHEARSED_CHECKS for problem in check.run(case, result)]
    return in_order(tuple(found))


def check(exercise: Exercise, n: int, *, figures: Figures, age: int, surface: str) -> tuple[Problem, ...]:
    """What is to be said of the exercise with n children in all, in as many copies as its forms say."""
    layout = layout_for(exercise, n)
    sizes = tuple(dict.fromkeys(layout.sizes)) if layout else (n,)
    found = tuple(
        problem for size in sizes for problem in check_copy(exercise, size, figures=figures, age=age, surface=surface)
    )
    return in_order(found)


def in_order(problems: tuple[Problem, ...]) -> tuple[Problem, ...]:
    """Each problem once, `mend` before `look` before `know`, else as found."""
    return tuple(sorted(dict.fromkeys(problems), key=lambda problem: ORDER[problem.severity]))


def _not_said(met: tuple[Problem, ...], found: list[Problem]) -> list[Problem]:
    """A rehearsal stalls because of what the text check has found already: the cause is told, not the stall too."""
    causes = {problem.code for problem in found if problem.severity is Severity.MEND}
    follows = {"nobody-there": {"flow-open", "nobody-there"}, "no-ball-left": {"balls-run-out", "ball-stranded"}}
    return [problem for problem in met if not causes & follows.get(problem.code, set())]
