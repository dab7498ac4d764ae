"""Problems as text for a terminal and as plain rows for JSON; must not know who found them or where they are shown."""

from collections.abc import Iterable
from dataclasses import dataclass
from unicodedata import combining, east_asian_width

from conewright.model.problem import Problem, Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One problem of one file, flat; lines and columns count from 1 and are None where it has no place in the text."""

    file: str
    line: int | None
    column: int | None
    end_line: int | None
    end_column: int | None
    code: str
    severity: str
    message: str
    hint: str


def as_rows(problems: Iterable[Problem], file_name: str) -> tuple[Row, ...]:
    """The problems of a file as rows, in their order."""
    return tuple(_row(problem, file_name) for problem in problems)


def _row(problem: Problem, file_name: str) -> Row:
    where = problem.where
    return Row(
        file=file_name,
        line=where.line if where else None,
        column=where.column if where else None,
        end_line=where.end_line if where else None,
        end_column=where.end_column if where else None,
        code=problem.code,
        severity=problem.severity.value,
        message=problem.message,
        hint=problem.hint,
    )


def in_terminal(problems: Iterable[Problem], text: str, file_name: str) -> str:
    """The problems of a file for reading: what, the line with a caret below the words meant, and how to mend it.

    One paragraph a problem, a blank line between them; "" where there are none.
    """
    rows = text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n").split("\n")
    return "\n".join(_paragraph(problem, rows, file_name) for problem in problems)


def _paragraph(problem: Problem, rows: list[str], file_name: str) -> str:
    where = problem.where
    place = f"{file_name}, line {where.line}, column {where.column}" if where else file_name
    lines = [f"{place}: {problem.severity.value} ({problem.code})", f"  {problem.message}"]
    if where is not None and 1 <= where.line <= len(rows):
        lines += _excerpt(rows[where.line - 1], where)
    if problem.hint:
        lines.append(f"  {problem.hint}")
    return "\n".join(lines) + "\n"


def _excerpt(row: str, where: Span) -> list[str]:
    """The line and, below it, carets under the span; what goes on in later lines is marked to the end of this one."""
    end = where.end_column if where.end_line == where.line else len(row) + 1
    before, meant = row[: where.column - 1], row[where.column - 1 : end - 1]
    if not row.strip():
        return []
    shown = "".join(character if character.isprintable() else " " for character in row)
    return [f"    {shown}", f"    {' ' * _width(before)}{'^' * max(1, _width(meant))}"]


def _width(text: str) -> int:
    """How many columns of a terminal a text takes: wide signs two, signs set upon another none."""
    return sum(0 if combining(sign) else 2 if east_asian_width(sign) in "WF" else 1 for sign in text)
