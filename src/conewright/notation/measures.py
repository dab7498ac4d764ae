"""Points, lengths, sizes and times in a sentence; must not know what is measured. Metres and seconds."""

from conewright.model.geometry import Point
from conewright.notation.amounts import capital
from conewright.notation.cursor import Cursor
from conewright.notation.words import METRES, SECONDS

FARTHEST_M = 300.0  # no ground of a youth team is wider: a coordinate or size beyond it is a slip
LONGEST_S = 7200.0


def point(cursor: Cursor) -> Point:
    """Take `X, Y`; one that lies absurdly far off is told."""
    start = cursor.at
    across = _coordinate(cursor)
    cursor.must(",", 'Write a point as two numbers in metres: "to the right, up": "-6, 15".')
    up = _coordinate(cursor)
    if max(abs(across), abs(up)) > FARTHEST_M:
        cursor.note(
            "too-far",
            start,
            f"The point {across:g}, {up:g} lies more than {FARTHEST_M:g} m away.",
            "Write metres from 0, 0: to the right, then up.",
        )
        return Point(0.0, 0.0)
    return Point(across, up)


def _coordinate(cursor: Cursor) -> float:
    value = cursor.number()
    if value is None:
        cursor.unexpected("a number of metres", 'Write a point as two numbers in metres: "-6, 15".')
        return 0.0
    return value


def sees_point(cursor: Cursor) -> bool:
    """True where two numbers with a comma between them come next."""
    return cursor.sees_number() and cursor.peek(1).lower == ","


def sees_length(cursor: Cursor, offset: int = 0) -> bool:
    """True where a number and a unit of length come next."""
    return cursor.sees_number(offset) and cursor.peek(offset + 1).lower in METRES


def sees_seconds(cursor: Cursor) -> bool:
    """True where a number and a unit of time come next."""
    return cursor.sees_number() and cursor.peek(1).lower in SECONDS


def length_m(cursor: Cursor, what: str) -> float:
    """Take a number and a unit of length; nought, less, or far too much is told."""
    start = cursor.at
    value = cursor.number()
    if value is None:
        cursor.unexpected(f"{what} in metres")
        return 1.0
    return _sized(cursor, start, value, _unit(cursor), what)


def size_m(cursor: Cursor, what: str) -> tuple[float, float]:
    """Take `16 by 18 m`."""
    start = cursor.at
    width = cursor.number()
    if width is None:
        cursor.unexpected(f"{what}, such as 16 by 18 m")
    if cursor.peek().lower in METRES:
        cursor.at += 1
    if not cursor.takes("x", "\u00d7"):
        cursor.must("by", f'Write {what} like this: "16 by 18 m".')
    second = cursor.at
    depth = cursor.number()
    if depth is None:
        cursor.unexpected(f"{what}, such as 16 by 18 m")
    factor = _unit(cursor)
    if cursor.failed:
        return 1.0, 1.0
    side = f"a side of {what}"
    return _sized(cursor, start, width or 0.0, factor, side), _sized(cursor, second, depth or 0.0, factor, side)


def _unit(cursor: Cursor) -> float:
    factor = METRES.get(cursor.peek().lower)
    if factor is None:
        cursor.unexpected('"m"', 'Write lengths in metres: "6 m", or in yards: "6 yards".')
        return 1.0
    cursor.at += 1
    return factor


def _sized(cursor: Cursor, start: int, value: float, factor: float, what: str) -> float:
    size = value if factor == 1.0 else round(value * factor, 3)
    if 0 < size <= FARTHEST_M:
        return size
    told = "it has to be more than 0" if size <= 0 else f"it is more than {FARTHEST_M:g} m"
    cursor.note("bad-size", start, f"{capital(what)} of {value:g} m cannot be: {told}.", "Write a length such as 6 m.")
    return 1.0


def seconds(cursor: Cursor, what: str) -> float:
    """Take a number and a unit of time, in seconds; nought, less, or hours are told."""
    start = cursor.at
    value = cursor.number() if not cursor.sees("minute") else 1.0
    factor = SECONDS.get(cursor.peek().lower)
    if value is None or factor is None:
        cursor.unexpected(f"{what} in seconds" if value is None else '"s" or "minutes"', "Write a time such as 8 s.")
        return 1.0
    cursor.at += 1
    total = value * factor
    if not 0 < total <= LONGEST_S:
        told = f"{capital(what)} of {total:g} s cannot be."
        cursor.note("bad-time", start, told, "Write a time such as 8 s or 3 minutes.")
        return 1.0
    return total
