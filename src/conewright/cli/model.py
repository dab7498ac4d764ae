"""`model`: an exercise as JSON for other programs, and JSON as sentences again; must not know the names in it."""

import sys
from argparse import ArgumentParser, Namespace

from conewright.cli.command import Command
from conewright.cli.exercise_file import read_file
from conewright.cli.files import check_output, text_of, write
from conewright.cli.json_form import json_text
from conewright.cli.wrong import CLEAN, MEND, WrongUsage
from conewright.model.exercise import Exercise
from conewright.model.problem import is_clean
from conewright.notation.printer import write as written
from conewright.notation.reader import read
from conewright.notation.report import in_terminal
from conewright.notation.spans import without_spans

SCHEMA = "docs/exercise.schema.json says what may stand there"


def _add_words(parser: ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", nargs="?", help="a text of one exercise, ending .exercise")
    parser.add_argument("--no-spans", action="store_true", help="without the places in the text that each part has")
    parser.add_argument("--read", metavar="FILE.json", help="the other way: print the text of an exercise from JSON")
    parser.add_argument("-o", metavar="OUT", dest="out", help="where to write; unsaid: it is printed")


def _run(words: Namespace) -> int:
    if (words.file is None) == (words.read is None):
        raise WrongUsage("name either a FILE to print as JSON or --read FILE.json to print as a text; one of the two")
    if words.read is not None and words.no_spans:
        raise WrongUsage("--no-spans is for printing JSON, and --read prints a text; leave one of them out")
    path = None if words.out is None else check_output(words.out)
    text, code = _json(words.file, spans=not words.no_spans) if words.file else _sentences(words.read)
    if path is None:
        print(text, end="")
    else:
        write(path, text.encode())
    return code


def _json(name: str, *, spans: bool) -> tuple[str, int]:
    from conewright.store.interchange import form_of

    file = read_file(name)
    if file.exercise is None:
        raise WrongUsage(f'no exercise could be read from "{file.name}"; conewright check says why')
    if file.problems:
        print(in_terminal(file.problems, file.text, file.name).strip("\n"), file=sys.stderr)
    return f"{json_text(form_of(file.exercise, spans=spans))}\n", CLEAN if is_clean(file.problems) else MEND


def _sentences(name: str) -> tuple[str, int]:
    from conewright.store.interchange import NotAnExercise, exercise_from

    try:
        exercise = exercise_from(text_of(name))
    except NotAnExercise as wrong:
        raise WrongUsage(f'"{name}" is not an exercise: {wrong}; {SCHEMA}') from None
    return _said(name, exercise)


def _said(name: str, exercise: Exercise) -> tuple[str, int]:
    """The text, which must say all that the JSON says. Raises WrongUsage, naming what it could not say."""
    from conewright.store.interchange import differs_at

    text = written(exercise)
    again, problems = read(text)
    lost = differs_at(without_spans(exercise), without_spans(again))
    if lost:
        why = f" ({problems[0].message.rstrip('.')})" if problems else ""
        raise WrongUsage(f'"{name}" has something at {lost} that no sentence says{why}; change it there')
    if problems:
        print(in_terminal(problems, text, name).strip("\n"), file=sys.stderr)
    return text, CLEAN if is_clean(problems) else MEND


MODEL = Command(
    name="model",
    does="print an exercise as JSON for other programs, or such JSON as sentences again",
    example="conewright model stem-and-branch.exercise --no-spans",
    add_words=_add_words,
    run=_run,
)
