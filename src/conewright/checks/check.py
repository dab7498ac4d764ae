"""All checks on an exercise: of the text, then of what was rehearsed; must not know of the evening."""

from collections.abc import Iterable

from conewright.checks import balls, crossings, flow, lanes, lines, passes, people, space, steps, turns
from conewright.checks.case import AfterCheck, Check, Met, case_of
from conewright.model.exercise import Exercise
from conewright.model.figures import Figures
from conewright.model.layout import layout_for
from conewright.model.problem import Problem, Severity
from conewright.model.rehearsed import Rehearsal, Rehearsed
from conewright.model.unroll import Unrolled, rounds_of
from conewright.rehearsal.rehearse import rehearse

TEXT_CHECKS: tuple[Check, ...] = (
    *people.CHECKS,
    *flow.CHECKS,
    *balls.CHECKS,
    *space.CHECKS,
    *passes.CHECKS,
    *lines.CHECKS,
    *steps.CHECKS,
)
REHEARSED_CHECKS: tuple[AfterCheck, ...] = (
    *lines.AFTER_CHECKS,
    *turns.AFTER_CHECKS,
    *crossings.AFTER_CHECKS,
    *lanes.AFTER_CHECKS,
)
MET_ON_THE_WAY: tuple[Met, ...] = (
    Met(
        codes=("no-ball",),
        why="Who has no ball cannot play it: somebody plays it there first, or one lies there.",
    ),
    Met(codes=("ends-nowhere",), why="A child that does not know where to go next stands in the way."),
    Met(
        codes=("where-after-two-passes",),
        why="Who passes once follows its pass; who passes twice could follow either, and children ask.",
    ),
    Met(codes=("nobody-there",), why="A round that needs a child who is not there stops in the first minute."),
    Met(codes=("no-ball-left",), why="Balls that are taken and not brought back are gone after as many rounds."),
    Met(codes=("never-happens",), why="Who waits for something that does not come in this round waits all evening."),
    Met(codes=("no-time",), why="A round in which nobody plays or moves has nothing to rehearse."),
)
STALLS = frozenset({"nobody-there", "no-ball-left", "no-time"})  # the figures of a round that stops mean nothing
FOLLOWS = {  # what a rehearsal meets, and the findings of the text that it follows from
    "nobody-there": frozenset(
        {"ends-nowhere", "flow-open", "nobody-there", "nowhere-to-stand", "start-too-many", "too-few"}
    ),
    "no-ball-left": frozenset({"balls-run-out", "ball-stranded", "comes-without-ball", "no-ball"}),
}
ORDER = {severity: place for place, severity in enumerate(Severity)}


def whys() -> dict[str, str]:
    """Every code a check or a rehearsal may give, in the order in which they are looked at, and why it matters."""
    told: dict[str, str] = {}
    sources: tuple[Met | Check | AfterCheck, ...] = (*MET_ON_THE_WAY, *TEXT_CHECKS, *REHEARSED_CHECKS)
    for source in sources:
        for code in source.codes:
            told.setdefault(code, source.why)
    return told


def check_copy(
    exercise: Exercise,
    size: int,
    *,
    figures: Figures,
    age: int,
    surface: str,
    rehearsed: tuple[Rehearsed, tuple[Problem, ...]] | None = None,
    unrolled: Unrolled | None = None,
) -> tuple[Problem, ...]:
    """What is to be said of one copy of `size` children, the heaviest first; pass what is at hand of it."""
    case = case_of(exercise, size, figures=figures, age=age, surface=surface, unrolled=unrolled)
    found = [*case.unsaid, *(problem for check in TEXT_CHECKS for problem in check.run(case))]
    laid_out = (case.rounds, case.unsaid) if case.rounds else None
    result, met = rehearsed or rehearse(exercise, size, figures=figures, age=age, surface=surface, unrolled=laid_out)
    found += _not_said(met, found)
    if isinstance(result, Rehearsal) and not any(problem.code in STALLS for problem in met):
        met_there = [problem for check in REHEARSED_CHECKS for problem in check.run(case, result)]
        crossed = {problem.where for problem in met_there if problem.code == "shot-across-way-back"}
        found += [one for one in met_there if one.code != "shot-past-somebody" or one.where not in crossed]
    return in_order(tuple(found))


def check(exercise: Exercise, n: int, *, figures: Figures, age: int, surface: str) -> tuple[Problem, ...]:
    """What is to be said of the exercise with n children in all, in as many copies as its forms say."""
    return check_every(exercise, (n,), figures=figures, age=age, surface=surface)[n]


def check_every(
    exercise: Exercise, counts: Iterable[int], *, figures: Figures, age: int, surface: str
) -> dict[int, tuple[Problem, ...]]:
    """What is to be said with each of many numbers of children; a copy of one size is looked at once for all."""
    unrolled = rounds_of(exercise) if exercise.script is not None else None
    layouts = {n: layout_for(exercise, n) for n in counts}
    sizes = {n: tuple(dict.fromkeys(layout.sizes)) if layout else (n,) for n, layout in layouts.items()}
    told = {
        size: check_copy(exercise, size, figures=figures, age=age, surface=surface, unrolled=unrolled)
        for size in dict.fromkeys(size for copies in sizes.values() for size in copies)
    }
    return {n: in_order(tuple(problem for size in copies for problem in told[size])) for n, copies in sizes.items()}


def in_order(problems: tuple[Problem, ...]) -> tuple[Problem, ...]:
    """Each problem once, `mend` before `look` before `know`, else as found."""
    return tuple(sorted(dict.fromkeys(problems), key=lambda problem: ORDER[problem.severity]))


def _not_said(met: tuple[Problem, ...], found: list[Problem]) -> list[Problem]:
    """A rehearsal stalls because of what the text check has found already: the cause is told, not the stall too."""
    causes = {problem.code for problem in found if problem.severity is Severity.MEND}
    return [problem for problem in met if not causes & FOLLOWS.get(problem.code, frozenset())]
