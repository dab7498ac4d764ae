"""Other layouts for other numbers: "With 10 to 18: two copies, 6 m apart"; must not know what is laid out."""

from dataclasses import replace

from conewright.model.exercise import Form
from conewright.notation.boxes import team
from conewright.notation.cursor import Cursor
from conewright.notation.header import number_range
from conewright.notation.measures import length_m, sees_length
from conewright.notation.starts import start
from conewright.notation.words import EXAMPLES

MOST_COPIES = 8


def form(cursor: Cursor) -> Form | None:
    """Read "With 10 to 18: two copies, 6 m apart, mirrored"; None where it fails."""
    cursor.example = EXAMPLES["form or balls"]
    cursor.takes("with")
    least, most = number_range(cursor)
    cursor.takes("players", "children")
    cursor.must(":")
    found = Form(least=least, most=most)
    while not cursor.failed:
        found = _part(cursor, found)
        before = cursor.at
        cursor.takes(",", ";")
        cursor.takes("and")
        if cursor.at == before:
            break
    cursor.finish()
    return None if cursor.failed else replace(found, span=cursor.span_from(0))


def _part(cursor: Cursor, found: Form) -> Form:
    if cursor.takes("start with"):
        return replace(found, start=start(cursor))
    if cursor.takes("as it stands"):
        return found
    if cursor.takes("mirrored"):
        return replace(found, mirrored=True)
    if cursor.sees_number() and cursor.peek(1).lower in ("copy", "copies"):
        copies = cursor.count("copies", most=MOST_COPIES)
        cursor.at += 1
        return replace(found, copies=copies)
    if sees_length(cursor):
        apart = length_m(cursor, "the distance")
        cursor.must("apart")
        return replace(found, apart_m=apart)
    return replace(found, teams=(*found.teams, team(cursor)))
