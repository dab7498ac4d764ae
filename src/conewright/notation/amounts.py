"""Numbers, times, points and lists as the printer writes them; must not know what they belong to."""

from collections.abc import Sequence
from decimal import Decimal

from conewright.model.geometry import Point
from conewright.notation.words import NUMBER_WORDS

_SPOKEN = 12  # numbers of people up to this are written as words


def figure(value: float) -> str:
    """A number in digits, whole where it is whole, never with an exponent."""
    if value == int(value):
        return str(int(value))
    return format(Decimal(repr(value)), "f")


def people(count: int) -> str:
    """A number of people, as a word where it is short."""
    return NUMBER_WORDS[count] if 1 <= count <= _SPOKEN else str(count)


def point(at: Point) -> str:
    """`-6, 15`."""
    return f"{figure(at.x_m)}, {figure(at.y_m)}"


def size(width_m: float, depth_m: float) -> str:
    """`16 by 18 m`."""
    return f"{figure(width_m)} by {figure(depth_m)} m"


def minutes(total_s: float) -> str:
    """A time, in minutes where it is whole minutes, else in seconds."""
    whole = total_s / 60
    if whole != int(whole):
        return f"{figure(total_s)} s"
    return "1 minute" if whole == 1 else f"{int(whole)} minutes"


def listed(words: Sequence[str], *, last: str = "and") -> str:
    """`A`, `A and B`, `A, B and C`; another word may stand before the last one."""
    return ", ".join(words[:-1]) + f" {last} {words[-1]}" if len(words) > 1 else "".join(words)


def capital(sentence: str) -> str:
    """The sentence with a capital at its beginning."""
    return sentence[:1].upper() + sentence[1:]


def one_line(text: str) -> str:
    """A text without line breaks and with one space between its words."""
    return " ".join(text.split())
