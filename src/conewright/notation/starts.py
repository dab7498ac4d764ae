"""Who stands where at the start: "Start with two at Base, the rest at Stem"; must not know what happens then."""

from conewright.model.exercise import Start
from conewright.notation.cursor import Cursor
from conewright.notation.header import MOST_PLAYERS
from conewright.notation.lexer import MARK, WORD
from conewright.notation.shapes import EXAMPLES
from conewright.notation.vocabulary import NEVER_NAMES


def start(cursor: Cursor) -> Start | None:
    """Take everything behind "Start with"; None where it fails."""
    begins = cursor.at
    cursor.example = EXAMPLES["start"]
    if cursor.takes("the same number in each line", "the same number at each line", "the same number in every line"):
        cursor.finish()
        return None if cursor.failed else Start(even=True, span=cursor.span_from(begins))
    counts: list[tuple[str, int]] = []
    rest: tuple[str, ...] = ()
    while cursor.more():
        if cursor.takes("the rest", "everyone", "everybody"):
            rest = _rest(cursor)
        else:
            _count(cursor, counts)
        before = cursor.at
        cursor.takes(",", ";")
        cursor.takes("and")
        if cursor.at == before:
            break
    cursor.finish()
    return None if cursor.failed else Start(counts=tuple(counts), rest=rest, span=cursor.span_from(begins))


def _count(cursor: Cursor, counts: list[tuple[str, int]]) -> None:
    begins = cursor.at
    count = cursor.count("players", most=MOST_PLAYERS)
    cursor.must("at")
    names = [cursor.name("a place")]
    while cursor.sees("and") and cursor.sees_name(1):
        cursor.at += 1
        names.append(cursor.name("a place"))
    cursor.takes("each")
    for name in names:
        if name in dict(counts) and cursor.guess < 0:
            cursor.note("said-twice", begins, f"{name} is counted twice.", "Leave one of the two out.")
        elif not cursor.failed:
            tell_not_a_place(cursor, name, begins)
            counts.append((name, count))


def _rest(cursor: Cursor) -> tuple[str, ...]:
    begins = cursor.at
    if cursor.takes("shared between", "shared among", "between"):
        names = listed(cursor, "a place")
    else:
        cursor.must("at")
        names = (cursor.name("a place"),)
    for name in names:
        tell_not_a_place(cursor, name, begins)
    return names


def listed(cursor: Cursor, what: str) -> tuple[str, ...]:
    """Take names with commas and "and" between them."""
    names = [cursor.name(what)]
    while not cursor.failed and _sees_another(cursor, what):
        cursor.takes(",")
        cursor.takes("and")
        names.append(cursor.name(what))
    return tuple(name for name in names if name)


def _sees_another(cursor: Cursor, what: str) -> bool:
    """True at "and", and at a comma with a name behind it."""
    if cursor.asks and cursor.peek().lower == ",":
        cursor.ask_names(what, offset=1)
    if cursor.sees("and"):
        return True
    token = cursor.peek()
    return token.kind == MARK and token.lower == "," and (_begins_name(cursor, 1) or cursor.sees("and", 1))


def _begins_name(cursor: Cursor, offset: int) -> bool:
    """True at a known name, and at a capital word that may be a slip of one."""
    token = cursor.peek(offset)
    capital = token.kind == WORD and token.text[0].isupper() and token.lower not in NEVER_NAMES
    return cursor.sees_name(offset) > 0 or capital


def tell_not_a_place(cursor: Cursor, name: str, begins: int, *, or_side: bool = False) -> None:
    """Tell where people are said to stand at a thing, or at a word for sides unless that will do."""
    thing = cursor.names.thing(name)
    if thing is None and cursor.names.is_word(name) and not or_side:
        cursor.note("not-a-place", begins, f"{name} is a word for one of the sides.", "Name the place itself.")
    if thing is not None:
        cursor.note(
            "not-a-place", begins, f"{name} is a {thing.kind.value}, not a place to stand at.", "Name a place instead."
        )
