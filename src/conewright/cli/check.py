"""`check`: whether exercises run as written, and what to mend; must not know how that is found out."""

from argparse import ArgumentParser, Namespace
from dataclasses import dataclass, replace

from conewright.cli.command import Command
from conewright.cli.exercise_file import (
    ExerciseFile,
    add_who,
    age_of,
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
from conewright.notation.report import in_terminal
from conewright.store.answers import surface_words


@dataclass(frozen=True, slots=True, kw_only=True)
class Verdict:
    """What is to be said of one file with one number of children."""

    here: int
    sizes: tuple[int, ...]
    problems: tuple[Problem, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Checked:
    """One file: what its text says of itself, and a verdict for each number of children looked at."""

    file: ExerciseFile
    age: int
    surface: str
    verdicts: tuple[Verdict, ...]

    @property
    def clean(self) -> bool:
        """Whether nothing has to be mended, whatever the number."""
        return is_clean(self.file.problems) and all(is_clean(verdict.problems) for verdict in self.verdicts)


def _add_words(parser: ArgumentParser) -> None:
    parser.add_argument("files", metavar="FILE", nargs="+", help="a text of one exercise, ending .exercise")
    add_who(parser, count="with how many children; unsaid: with the number it is best with")
    parser.add_argument("--every-n", action="store_true", help="with every number it is for, one after another")
    parser.add_argument("--json", action="store_true", help="answer as JSON")


def _run(words: Namespace) -> int:
    if words.every_n and words.n is not None:
        raise WrongUsage("--every-n and --n cannot both be said; leave one of them out")
    count_of(words), age_of(words, None), surface_of(words)
    checked, unreadable = [], []
    for name in words.files:
        try:
            checked.append(_checked(words, read_file(name)))
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
    from conewright.checks.check import check
    from conewright.store.figures import load_figures

    age, surface = age_of(words, file.exercise), surface_of(words)
    counts = _counts(words, file.exercise) if file.exercise else ()
    figures = load_figures()
    verdicts = tuple(
        Verdict(
            here=here,
            sizes=_sizes(file.exercise, here),
            problems=check(file.exercise, here, figures=figures, age=age, surface=surface),
        )
        for here in counts
        if file.exercise
    )
    return Checked(file=file, age=age, surface=surface, verdicts=verdicts)


def _counts(words: Namespace, exercise: Exercise) -> tuple[int, ...]:
    if words.every_n:
        return tuple(every_count(exercise))
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
        "answers": [
            {
                "here": verdict.here,
                "copies": list(verdict.sizes),
                "clean": is_clean(verdict.problems),
                "problems": [problem_form(problem) for problem in verdict.problems],
            }
            for verdict in checked.verdicts
        ],
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
    return "\n\n".join((*(part.strip("\n") for part in parts), _summary(checked)))


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
    every = f"{exercise.name} with {checked.verdicts[0].here} to {checked.verdicts[-1].here} children {who}"
    return f"{every}: to mend with {_ranges(broken)}." if broken else f"{every}: runs with every number."


CHECK = Command(
    name="check",
    does="say whether exercises run as written, and what to mend",
    example="conewright check stem-and-branch.exercise --n 13 --age U11 --surface grass",
    add_words=_add_words,
    run=_run,
)
