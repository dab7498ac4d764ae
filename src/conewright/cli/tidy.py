"""`tidy`: an exercise rewritten in the one form the notation has; must not know that form."""

from argparse import ArgumentParser, Namespace
from itertools import zip_longest
from pathlib import Path

from conewright.cli.command import Command
from conewright.cli.exercise_file import ExerciseFile, read_file
from conewright.cli.files import check_output, write
from conewright.cli.wrong import CLEAN, MEND, WrongUsage
from conewright.model.exercise import Exercise
from conewright.model.problem import is_clean
from conewright.notation.comments import comment_lines
from conewright.notation.printer import write as written
from conewright.notation.reader import read
from conewright.notation.report import in_terminal
from conewright.notation.spans import without_spans

CHANGED = MEND  # with --check: something is there to be done


def _add_words(parser: ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help="a text of one exercise, ending .exercise")
    parser.add_argument("--check", action="store_true", help="write nothing; exit code 1 where it would be changed")
    parser.add_argument("-o", metavar="OUT", dest="out", help="where to write; unsaid: to the file itself")
    parser.add_argument("--drop-comments", action="store_true", help="lose the lines that begin with #")


def _run(words: Namespace) -> int:
    if words.check and words.out is not None:
        raise WrongUsage("--check writes nothing and -o writes; leave one of them out")
    path = None if words.out is None else check_output(words.out)
    file = read_file(words.file)
    if file.exercise is None:
        raise WrongUsage(f'no exercise could be read from "{file.name}"; conewright check says why')
    if file.problems:
        print(in_terminal(file.problems, file.text, file.name).strip("\n"), end="\n\n")
    if not is_clean(file.problems):
        print(f"{file.name}: left as it is; mend the text first, so that nothing of it is lost.")
        return MEND
    tidied = _tidied(file.exercise)
    if tidied is None:
        print(f"{file.name}: left as it is; something in it has no tidy form yet.")
        return MEND
    if words.check:
        return _compared(file, tidied)
    _keep_comments(file, dropped=words.drop_comments)
    if path is None and tidied == file.text:
        print(f"{file.name}: tidy already.")
        return CLEAN
    where = path or Path(file.name).resolve()  # a link keeps pointing at the file it stands for
    write(where, tidied.encode(), option="-o" if path else "FILE")
    print(f"{path or file.name}: {file.exercise.name}, in its tidy form.")
    return CLEAN


def _tidied(exercise: Exercise) -> str | None:
    """The tidy form; None where reading it would not give the same exercise, which must not cost anybody a text."""
    tidied = written(exercise)
    again, problems = read(tidied)
    return tidied if not problems and without_spans(again) == without_spans(exercise) else None


def _compared(file: ExerciseFile, tidied: str) -> int:
    if tidied == file.text:
        print(f"{file.name}: tidy already.")
        return CLEAN
    pairs = zip_longest(file.text.split("\n"), tidied.split("\n"))
    line = next(number for number, (old, new) in enumerate(pairs, start=1) if old != new)
    comments = comment_lines(file.text)
    kept = f" Its comments, the first at line {comments[0]}, have no place in that form." if comments else ""
    print(f"{file.name}: would be changed, first at line {line}.{kept}")
    return CHANGED


def _keep_comments(file: ExerciseFile, *, dropped: bool) -> None:
    comments = comment_lines(file.text)
    if comments and not dropped:
        lines = f"line {comments[0]}" if len(comments) == 1 else f"{len(comments)} lines from line {comments[0]} on"
        raise WrongUsage(
            f'"{file.name}" has comments ({lines}), which the tidy form does not keep; '
            "make notes of them (note: ...), or add --drop-comments to lose them"
        )


TIDY = Command(
    name="tidy",
    does="rewrite an exercise in the one tidy form, with nothing changed in what it says",
    example="conewright tidy stem-and-branch.exercise --check",
    add_words=_add_words,
    run=_run,
)
