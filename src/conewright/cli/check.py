"""`check`: whether exercises run as written, and what to mend; must not know how that is found out."""

from argparse import ArgumentParser, Namespace
from dataclasses import dataclass, replace

from conewright.cli.command import Command
from conewright.cli.exercise_file import (
    ExerciseFile,
    add_step,
    add_who,
    age_of,
    as_stepped,
    count_of,
    every_count,
    read_file,
    surface_of,
    usual_count,
)
from conewright.cli.json_form import Form, print_json, problem_form
from conewright.cli.prose import counted, listed, table
from conewright.cli.wrong import CLEAN, MEND, WrongUsage
from conewright.model.exercise import Exercise
from conewright.model.layout import layout_for
from conewright.model.problem import Problem, Severity, is_clean
from conewright.model.stepped import stepped
from conewright.model.variant import Variant
from conewright.notation.report import in_terminal
from conewright.store.answers import surface_words


@dataclass(frozen=True, slots=True, kw_only=True)
class Verdict:
    """What is to be said of one file with one number of children."""

    here: int
    sizes: tuple[int, ...]
    problems: tuple[Problem, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class StepChecked:
    """A step up or down of an exercise, with a verdict for each number of children that it is for."""

    variant: Variant
    verdicts: tuple[Verdict, ...]

    @property
    def name(self) -> str:
        """What it is called in a sentence: `harder "first time"`."""
        return f'{self.variant.kind.value} "{self.variant.name}"'


@dataclass(frozen=True, slots=True, kw_only=True)
class Checked:
    """One file: what its text says of itself, a verdict for each number of children looked at, and for its steps."""

    file: ExerciseFile
    age: int
    surface: str
    verdicts: tuple[Verdict, ...]
    steps: tuple[StepChecked, ...] = ()

    @property
    def clean(self) -> bool:
        """Whether nothing has to be mended, whatever the number and the step."""
        verdicts = (*self.verdicts, *(verdict for step in self.steps for verdict in step.verdicts))
        return is_clean(self.file.problems) and all(is_clean(verdict.problems) for verdict in verdicts)


def _add_words(parser: ArgumentParser) -> None:
    parser.add_argument("files", metavar="FILE", nargs="+", help="a text of one exercise, ending .exercise")
    add_who(parser, count="with how many children; unsaid: with the number it is best with")
    parser.add_argument("--every-n", action="store_true", help="with every number it is for, and every step of it too")
    add_step(parser)
    parser.add_argument("--json", action="store_true", help="answer as JSON")


def _run(words: Namespace) -> int:
    if words.every_n and words.n is not None:
        raise WrongUsage("--every-n and --n cannot both be said; leave one of them out")
    count_of(words), age_of(words, None), surface_of(words)
    checked, unreadable = [], []
    for name in words.files:
        try:
            checked.append(_checked(words, as_stepped(words, read_file(name))))
        except WrongUsage as wrong:
            unreadable.append(str(wrong))
    if words.json:
        print_json({"files": [_form(one) for one in checked]})
    elif checked:
        print("\n\n".join(_words(one) for one in checked))
    if unreadable:
        raise WrongUsage("\n".join(unreadable))
    return CLEAN if all(one.clean for one in checked) else MEND


def _checked(words: Namespace, file: ExerciseFile) -> Checked:
    exercise, surface = file.exercise, surface_of(words)
    age = age_of(words, exercise)
    if exercise is None:
        return Checked(file=file, age=age, surface=surface, verdicts=())
    steps = [(variant, stepped(exercise, variant.name)) for variant in exercise.variants if words.every_n]
    return Checked(
        file=file,
        age=age,
        surface=surface,
        verdicts=_verdicts(exercise, _counts(words, exercise), age=age, surface=surface),
        steps=tuple(
            StepChecked(variant=variant, verdicts=_verdicts(step, _counts(words, step), age=age, surface=surface))
            for variant, step in steps
            if step is not None
        ),
    )


def _verdicts(exercise: Exercise, counts: tuple[int, ...], *, age: int, surface: str) -> tuple[Verdict, ...]:
    from conewright.checks.check import check_every
    from conewright.store.figures import load_figures

    found = check_every(exercise, counts, figures=load_figures(), age=age, surface=surface)
    return tuple(Verdict(here=here, sizes=_sizes(exercise, here), problems=found[here]) for here in counts)


def _counts(words: Namespace, exercise: Exercise) -> tuple[int, ...]:
    if words.every_n:
        return every_count(exercise)
    return (count_of(words) or usual_count(exercise),)


def _sizes(exercise: Exercise, here: int) -> tuple[int, ...]:
    layout = layout_for(exercise, here)
    return layout.sizes if layout else ()


def _form(checked: Checked) -> Form:
    exercise = checked.file.exercise
    return {
        "file": checked.file.name,
        "exercise": exercise.name if exercise else None,
        "clean": checked.clean,
        "age": checked.age,
        "surface": checked.surface,
        "problems": [problem_form(problem) for problem in checked.file.problems],
        "answers": [_answer(verdict) for verdict in checked.verdicts],
        "steps": [
            {
                "step": step.variant.name,
                "kind": step.variant.kind.value,
                "clean": all(is_clean(verdict.problems) for verdict in step.verdicts),
                "answers": [_answer(verdict) for verdict in step.verdicts],
            }
            for step in checked.steps
        ],
    }


def _answer(verdict: Verdict) -> Form:
    return {
        "here": verdict.here,
        "copies": list(verdict.sizes),
        "clean": is_clean(verdict.problems),
        "problems": [problem_form(problem) for problem in verdict.problems],
    }


def _words(checked: Checked) -> str:
    file = checked.file
    parts = [in_terminal(file.problems, file.text, file.name)] if file.problems else []
    if len(checked.verdicts) == 1:
        found = checked.verdicts[0].problems
        parts += [in_terminal(found, file.text, file.name)] if found else []
    elif checked.verdicts:
        found = _together(checked.verdicts)
        parts += [in_terminal(found, file.text, file.name)] if found else []
        parts.append(_by_number(checked.verdicts))
    parts += [_step_words(checked, step) for step in checked.steps]
    return "\n\n".join((*(part.strip("\n") for part in parts), _summary(checked)))


def _step_words(checked: Checked, step: StepChecked) -> str:
    """What a step finds that the exercise as it is written does not, and how often it runs."""
    file = checked.file
    known = {_bare(problem) for verdict in checked.verdicts for problem in verdict.problems}
    found = tuple(problem for problem in _together(step.verdicts) if _bare(problem) not in known)
    parts = [in_terminal(found, file.text, file.name).strip("\n")] if found else []
    broken = [verdict.here for verdict in step.verdicts if not is_clean(verdict.problems)]
    heres = _ranges([verdict.here for verdict in step.verdicts])
    runs = f"to be mended with {_ranges(broken)}" if broken else "runs with every number"
    more = f"; {counted(len(found), 'finding')} of its own, above" if found else ""
    return "\n\n".join((*parts, f"{step.name}, for {heres}: {runs}{more}."))


def _bare(problem: Problem) -> tuple[str, object]:
    """A finding without its figures, which differ from step to step."""
    return problem.code, problem.where


def _together(verdicts: tuple[Verdict, ...]) -> tuple[Problem, ...]:
    """Each finding once, with the numbers it holds for put before it."""
    holds: dict[Problem, list[int]] = {}
    for verdict in verdicts:
        for problem in verdict.problems:
            holds.setdefault(problem, []).append(verdict.here)
    every = len(verdicts)
    return tuple(
        problem if len(counts) == every else replace(problem, message=f"With {_ranges(counts)}: {problem.message}")
        for problem, counts in holds.items()
    )


def _ranges(counts: list[int]) -> str:
    """Whole numbers as a coach says them: "5, 7 to 9"."""
    runs: list[list[int]] = []
    for count in counts:
        if runs and count == runs[-1][-1] + 1:
            runs[-1].append(count)
        else:
            runs.append([count])
    return listed([str(run[0]) if len(run) == 1 else f"{run[0]} to {run[-1]}" for run in runs])


def _by_number(verdicts: tuple[Verdict, ...]) -> str:
    head = ("children", "copies of", "")
    rows = [(str(verdict.here), " + ".join(map(str, verdict.sizes)), _tally(verdict.problems)) for verdict in verdicts]
    return table([head, *rows], left=3)


def _tally(problems: tuple[Problem, ...]) -> str:
    counts = {severity: sum(problem.severity is severity for problem in problems) for severity in Severity}
    if counts[Severity.MEND]:
        return f"{counts[Severity.MEND]} to mend"
    told = [f"{counts[severity]} to {severity.value}" for severity in Severity if counts[severity]]
    return f"runs; {listed(told)}" if told else "runs"


def _summary(checked: Checked) -> str:
    file, exercise = checked.file, checked.file.exercise
    if exercise is None:
        return f"{file.name}: no exercise could be read from it."
    if not is_clean(file.problems):
        return f"{file.name}: to be mended before it can be trusted to run."
    who = f"under {checked.age} on {surface_words(checked.surface)}"
    if len(checked.verdicts) == 1:
        verdict = checked.verdicts[0]
        return f"{exercise.name} with {counted(verdict.here, 'child', 'children')} {who}: {_tally(verdict.problems)}."
    broken = [verdict.here for verdict in checked.verdicts if not is_clean(verdict.problems)]
    every = f"{exercise.name} with {_ranges([verdict.here for verdict in checked.verdicts])} children {who}"
    runs = f"to mend with {_ranges(broken)}" if broken else "runs with every number"
    return f"{every}: {runs}{_steps_summary(checked.steps)}."


def _steps_summary(steps: tuple[StepChecked, ...]) -> str:
    broken = [step.name for step in steps if not all(is_clean(verdict.problems) for verdict in step.verdicts)]
    if broken:
        return f"; to mend in {listed(broken)}"
    many = "its step" if len(steps) == 1 else f"its {len(steps)} steps"
    return f", and so {'does' if len(steps) == 1 else 'do'} {many}" if steps else ""


CHECK = Command(
    name="check",
    does="say whether exercises run as written, and what to mend",
    example="conewright check stem-and-branch.exercise --n 13 --age U11 --surface grass",
    add_words=_add_words,
    run=_run,
)
