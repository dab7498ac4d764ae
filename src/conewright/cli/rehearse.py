"""`rehearse`: what every child gets when an exercise is played; must not know how that is worked out."""

from argparse import ArgumentParser, Namespace

from conewright.cli.command import Command
from conewright.cli.exercise_file import add_step, add_who, age_of, as_stepped, count_of, read_file, surface_of
from conewright.cli.json_form import print_json, problem_form, rehearsed_form
from conewright.cli.prose import counted, decimal, listed, percent, table, wrapped
from conewright.cli.wrong import CLEAN, MEND, WrongUsage
from conewright.model.exercise import Exercise
from conewright.model.layout import layout_for
from conewright.model.problem import Problem, Severity, is_clean
from conewright.model.rehearsed import Estimate, NotRehearsed, Rehearsal, Rehearsed
from conewright.notation.report import in_terminal
from conewright.store.answers import surface_words

Played = tuple[int, Rehearsed]  # how many children in the copy, and what rehearsing it gave


def _add_words(parser: ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help="a text of one exercise, ending .exercise")
    add_who(parser, count_needed=True, count="with how many children in all")
    add_step(parser)
    parser.add_argument("--json", action="store_true", help="answer as JSON")


def _run(words: Namespace) -> int:
    count, surface = count_of(words) or 0, surface_of(words)
    age_of(words, None)
    file = as_stepped(words, read_file(words.file))
    exercise = file.exercise
    if exercise is None:
        raise WrongUsage(f'no exercise could be read from "{file.name}"; conewright check says why')
    age = age_of(words, exercise)
    layout = layout_for(exercise, count)
    sizes = layout.sizes if layout else ()
    played, found = _played(exercise, sizes, age=age, surface=surface)
    problems = (*file.problems, *((_not_for(exercise.name, count),) if not sizes else ()), *found)
    if words.json:
        print_json(
            {
                "exercise": exercise.name,
                "here": count,
                "age": age,
                "surface": surface,
                "copies": [rehearsed_form(rehearsed) for _, rehearsed in played],
                "problems": [problem_form(problem) for problem in problems],
            }
        )
    else:
        if problems:
            print(in_terminal(problems, file.text, file.name).strip("\n"), end="\n\n")
        if played:
            print(f"{exercise.name} with {counted(count, 'child', 'children')} under {age} on {surface_words(surface)}")
            print(_words(played))
    return CLEAN if is_clean(problems) else MEND


def _not_for(name: str, count: int) -> Problem:
    return Problem(
        code="numbers",
        severity=Severity.MEND,
        message=f"{name} is not for {counted(count, 'child', 'children')}.",
        hint='Choose a number that the line "for ..." or a sentence "With ..." holds, or add one.',
    )


def _played(
    exercise: Exercise, sizes: tuple[int, ...], *, age: int, surface: str
) -> tuple[tuple[Played, ...], tuple[Problem, ...]]:
    """Each copy rehearsed, copies of one size once, and every finding once."""
    from conewright.rehearsal.rehearse import rehearse
    from conewright.store.figures import load_figures

    figures = load_figures()
    once = {size: rehearse(exercise, size, figures=figures, age=age, surface=surface) for size in dict.fromkeys(sizes)}
    found = tuple(dict.fromkeys(problem for _, problems in once.values() for problem in problems))
    return tuple((size, once[size][0]) for size in sizes), found


def _words(played: tuple[Played, ...]) -> str:
    parts = [_layout(tuple(size for size, _ in played))]
    once = tuple(dict(played).items())
    rehearsals = tuple((size, one) for size, one in once if isinstance(one, Rehearsal))
    if rehearsals:
        parts.append(f"If all goes cleanly, over {rehearsals[0][1].bout_s / 60:g} minutes:\n{_figures(rehearsals)}")
        parts += [_pace(size, one, several=len(rehearsals) > 1) for size, one in rehearsals]
        parts += [_children(size, one, several=len(rehearsals) > 1) for size, one in rehearsals]
    parts += [_else(size, one, several=len(once) > 1) for size, one in once if not isinstance(one, Rehearsal)]
    return "\n\n".join(part for part in parts if part)


def _layout(sizes: tuple[int, ...]) -> str:
    if len(sizes) == 1:
        return f"In one group of {sizes[0]}."
    return f"In {len(sizes)} copies side by side, of {listed([str(size) for size in sizes])}."


def _figures(rehearsals: tuple[tuple[int, Rehearsal], ...]) -> str:
    rows = [
        ("children in the copy", *(str(size) for size, _ in rehearsals)),
        ("waiting, share of the time", *(percent(one.waiting_share) for _, one in rehearsals)),
        ("longest wait, seconds", *(decimal(one.longest_wait_s, 0) for _, one in rehearsals)),
        ("foot contacts, a child a minute", *(decimal(one.contacts_a_minute) for _, one in rehearsals)),
        ("passes, a child a minute", *(decimal(one.passes_a_minute) for _, one in rehearsals)),
        ("metres, a child a minute", *(decimal(one.metres_a_minute, 0) for _, one in rehearsals)),
        ("rounds a minute", *(decimal(one.rounds_a_minute) for _, one in rehearsals)),
        ("ball rolling, share of the time", *(percent(one.rolling_share) for _, one in rehearsals)),
        ("longest line", *(_line(one) for _, one in rehearsals)),
    ]
    return table(rows)


def _line(rehearsal: Rehearsal) -> str:
    return f"{rehearsal.longest_line} at {rehearsal.longest_line_at}" if rehearsal.longest_line_at else "-"


def _pace(size: int, rehearsal: Rehearsal, *, several: bool) -> str:
    return wrapped(f"{f'The copy of {size}: ' if several else ''}{rehearsal.pace.sentence}")


def _children(size: int, rehearsal: Rehearsal, *, several: bool) -> str:
    head = ("child", "turns", "contacts", "passes", "metres", "waits", "longest, s")
    rows = [
        (
            str(number),
            str(child.turns),
            str(child.contacts),
            str(child.passes),
            decimal(child.metres, 0),
            percent(child.waiting_share),
            decimal(child.longest_wait_s, 0),
        )
        for number, child in enumerate(rehearsal.children, 1)
    ]
    title = f"Each child in the copy of {size}:" if several else "Each child:"
    return f"{title}\n{table([head, *rows])}"


def _else(size: int, rehearsed: Rehearsed, *, several: bool) -> str:
    who = f"The copy of {size}: " if several else ""
    if isinstance(rehearsed, Estimate):
        low, high = decimal(rehearsed.low), decimal(rehearsed.high)
        source = f"(source: {rehearsed.source}; grade {rehearsed.grade})"
        return wrapped(f"{who}about {low} to {high} {rehearsed.what}. This is an estimate, not a rehearsal {source}.")
    why = rehearsed.why if isinstance(rehearsed, NotRehearsed) else ""
    return wrapped(f"{who}{'not' if who else 'Not'} rehearsed: {why}.")


REHEARSE = Command(
    name="rehearse",
    does="play an exercise through and say what every child gets",
    example="conewright rehearse stem-and-branch.exercise --n 13",
    add_words=_add_words,
    run=_run,
)
