"""Other layouts for other numbers: "With 10 to 18: two copies, 6 m apart"; must not know what is laid out."""

from dataclasses import replace

from conewright.model.exercise import Form, OpenPlay, Team
from conewright.notation.boxes import team
from conewright.notation.cursor import Cursor
from conewright.notation.guesses import slipped
from conewright.notation.header import number_range
from conewright.notation.measures import length_m, sees_length
from conewright.notation.shapes import EXAMPLES
from conewright.notation.starts import start
from conewright.notation.words import NUMBERS

MOST_COPIES = 8


def form(cursor: Cursor, play: OpenPlay | None) -> Form | None:
    """Read "With 10 to 18: two copies, 6 m apart, mirrored"; None where it fails. `play` names the teams there are."""
    known = frozenset(team.name for team in play.teams) if play else frozenset()
    known |= {"neutral", "others"}
    cursor.example = EXAMPLES["form or balls"]
    cursor.takes("with")
    least, most = number_range(cursor)
    cursor.takes("players", "children")
    cursor.must(":")
    found = Form(least=least, most=most)
    while not cursor.failed:
        found = _part(cursor, found, known)
        before = cursor.at
        cursor.takes(",", ";")
        cursor.takes("and")
        if cursor.at == before:
            break
    cursor.finish()
    return None if cursor.failed else replace(found, span=cursor.span_from(0))


def _part(cursor: Cursor, found: Form, known: frozenset[str]) -> Form:
    if cursor.asks and cursor.sees_number():
        cursor.sees("copies", 1)
        cursor.sees("m apart", 1)
    if cursor.takes("start with"):
        return replace(found, start=start(cursor))
    if cursor.takes("as it stands"):
        return found
    if cursor.sees("mirrored") or slipped(cursor.peek().lower, ("mirrored",)):
        return replace(found, mirrored=cursor.must("mirrored"))
    number = slipped(cursor.peek().lower, NUMBERS) if cursor.peek(1).lower in ("copy", "copies") else ""
    if number:
        cursor.slip(number, "number", 1)
        cursor.at += 2
        return replace(found, copies=min(NUMBERS[number], MOST_COPIES))
    if cursor.sees_number() and cursor.peek(1).lower in ("copy", "copies"):
        copies = cursor.count("copies", most=MOST_COPIES)
        cursor.at += 1
        return replace(found, copies=copies)
    if sees_length(cursor):
        apart = length_m(cursor, "the distance")
        cursor.must("apart")
        return replace(found, apart_m=apart)
    return replace(found, teams=(*found.teams, _team(cursor, known)))


def _team(cursor: Cursor, known: frozenset[str]) -> Team:
    begins = cursor.at
    found = team(cursor)
    if found.name not in known and found.bib is None:
        told = f"There is no team {found.name}."
        cursor.note("unknown-name", begins, told, "Name a colour, or a team of the open play.")
    return found
