"""Reads the exercises that ship with Conewright.

This is the only place that knows where the shipped texts lie. It must not know what an exercise is used for.
"""

from __future__ import annotations

from importlib.resources import files

from conewright.model.exercise import Exercise
from conewright.model.problem import Problem, Severity
from conewright.notation.reader import read

ENDING = ".exercise"


class DamagedShelf(Exception):
    """An exercise that ships with Conewright cannot be used; the message names the file, the line and what to mend."""


def load_shelf() -> tuple[Exercise, ...]:
    """Read every shipped exercise, in the order of the file names. Raises DamagedShelf where one has a `mend`."""
    return tuple(read_shelved(name, text) for name, text in shelf_texts())


def shelf_texts() -> tuple[tuple[str, str], ...]:
    """The file name and text of every shipped exercise, in the order of the names."""
    shipped = (file for file in files("conewright.data").joinpath("shelf").iterdir() if file.name.endswith(ENDING))
    return tuple((file.name, file.read_text("utf-8")) for file in sorted(shipped, key=lambda file: file.name))


def read_shelved(name: str, text: str) -> Exercise:
    """Read one shipped text. Raises DamagedShelf where it has a `mend` or is not named like its file."""
    exercise, problems = read(text)
    mends = tuple(problem for problem in problems if problem.severity is Severity.MEND)
    if mends:
        raise DamagedShelf("; ".join(_finding(name, problem) for problem in mends))
    if exercise is None or file_name(exercise.name) != name:
        raise DamagedShelf(f"{name}: the exercise in it is not named like the file")
    return exercise


def file_name(exercise_name: str) -> str:
    """The name of the file that an exercise of this name lies in: lower case, with hyphens for blanks."""
    return "-".join(exercise_name.lower().split()) + ENDING


def _finding(name: str, problem: Problem) -> str:
    line = f", line {problem.where.line}" if problem.where else ""
    return f"{name}{line}: {problem.message} {problem.hint}".strip()
