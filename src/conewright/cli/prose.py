"""Sentences and small tables for a terminal; must not know what they are about."""

import shutil
import textwrap
from collections.abc import Sequence

NARROWEST, WIDEST = 40, 100
SHORTEST = 12
NOTHING = "-"


def width() -> int:
    """How many letters stand on a line."""
    return min(max(shutil.get_terminal_size((WIDEST, 24)).columns, NARROWEST), WIDEST)


def wrapped(words: str, *, indent: str = "", first: str | None = None, columns: int | None = None) -> str:
    """Words folded to the terminal or to `columns`; `first` stands before the first line in the place of the indent."""
    return textwrap.fill(
        words, columns or width(), initial_indent=indent if first is None else first, subsequent_indent=indent
    )


def shortened(words: str, room: int) -> str:
    """Words cut at a blank so that they take no more than `room` letters; nothing where there is hardly any room."""
    if room < SHORTEST:
        return ""
    return textwrap.shorten(words, room, placeholder=" ...")


def table(rows: Sequence[Sequence[str]], *, left: int = 1, indent: str = "  ") -> str:
    """Rows with their columns aligned: the first `left` to the left, the others to the right."""
    widths = [max(len(cell) for cell in column) for column in zip(*rows, strict=True)]
    lines = []
    for row in rows:
        cells = [
            cell.ljust(size) if place < left else cell.rjust(size)
            for place, (cell, size) in enumerate(zip(row, widths, strict=True))
        ]
        lines.append(f"{indent}{'  '.join(cells)}".rstrip())
    return "\n".join(lines)


def percent(share: float | None) -> str:
    """A share as a whole number of per cent."""
    return NOTHING if share is None else f"{100 * share:.0f} %"


def decimal(value: float | None, places: int = 1) -> str:
    """A number with so many decimals."""
    return NOTHING if value is None else f"{value:.{places}f}"


def metres(length_m: float) -> str:
    """A length without needless decimals."""
    return f"{length_m:.1f}".removesuffix(".0")


def counted(count: int, noun: str, plural: str = "") -> str:
    """A count with its noun: "1 ball", "12 balls"."""
    return f"{count} {noun if count == 1 else plural or noun + 's'}"


def listed(parts: Sequence[str]) -> str:
    """Words joined by commas and "and"."""
    return " and ".join((", ".join(parts[:-1]), parts[-1])) if len(parts) > 1 else "".join(parts)
