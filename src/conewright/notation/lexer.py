"""A text as header lines and tokens, each with its place; must not know what the words mean."""

import re
from dataclasses import dataclass
from itertools import pairwise
from typing import NamedTuple

from conewright.model.problem import Span
from conewright.notation.shapes import FREE_LINES, HEADERS
from conewright.notation.words import NUMBERS

WORD, NUMBER, TEXT, MARK, END = "word", "number", "text", "mark", "end"

_TOKEN = re.compile(
    r"""
    (?P<word>[^\W\d_]+(?:-[^\W\d_]+)*)
    | (?P<number>[-\u2212+]?[0-9]+(?:\.[0-9]+)?)
    | (?P<text>"[^"]*"|\u201c[^\u201c\u201d]*\u201d)
    | (?P<mark>->|['\u2019](?:s\b)?|\S)
    """,
    re.VERBOSE,
)
_KEYED = re.compile(r"\s*([A-Za-z][A-Za-z ]{0,40}?)\s*:(.*)$", re.DOTALL)
_FOR = re.compile(rf"\s*(for)((?=\s+(?:[0-9]|(?:{'|'.join(NUMBERS)})\b)).*)$", re.IGNORECASE | re.DOTALL)
_FREE_START = re.compile(r"(?<=\.)\s+(?=(?:swap|restart|rule|score)\s*:)", re.IGNORECASE)
KEYS = frozenset(HEADERS) | frozenset(FREE_LINES)
_UNCUT = frozenset(HEADERS) - {"score"}


class Token(NamedTuple):
    """One word, number, quoted text or mark. A plain tuple, because a text has hundreds and they are made at once."""

    kind: str
    text: str
    lower: str
    line: int
    column: int
    end: int

    @property
    def span(self) -> Span:
        """Where the token stands."""
        return Span(line=self.line, column=self.column, end_line=self.line, end_column=self.end)


@dataclass(frozen=True, slots=True, kw_only=True)
class Keyed:
    """A line `key: value`: the key in small letters, the value as written, without the space round it."""

    key: str
    value: str
    line: int
    column: int
    value_column: int

    @property
    def span(self) -> Span:
        """The whole line."""
        return Span(
            line=self.line, column=self.column, end_line=self.line, end_column=self.value_column + len(self.value)
        )

    @property
    def key_span(self) -> Span:
        """The key alone."""
        end = self.column + len(self.key)
        return Span(line=self.line, column=self.column, end_line=self.line, end_column=end)

    @property
    def value_span(self) -> Span:
        """The value alone; the whole line where there is none."""
        if not self.value:
            return self.span
        end = self.value_column + len(self.value)
        return Span(line=self.line, column=self.value_column, end_line=self.line, end_column=end)


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A line of a text, blank: neither. `keyed` where it may be `key: value`; `tokens` unless its key is known."""

    number: int
    keyed: Keyed | None = None
    tokens: tuple[Token, ...] = ()


def lines_of(text: str) -> tuple[Line, ...]:
    """The lines of a text without its comments; a blank line has no tokens. Never raises."""
    rows = text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n").split("\n")
    found: list[Line] = []
    for number, row in enumerate(rows, start=1):
        if row.lstrip().startswith("#"):
            continue
        for column, part in _parts(row):
            found.append(_line(part, number, column))
    return tuple(found)


def _parts(row: str) -> tuple[tuple[int, str], ...]:
    """A row cut where a free line such as `Restart:` begins behind another sentence; with the columns they begin at."""
    match = _KEYED.match(row) if ":" in row else None
    whole = ":" not in row or (match is not None and match[1].lower() in _UNCUT)
    cuts = [] if whole else [match.end() for match in _FREE_START.finditer(row)]
    edges = [0, *cuts, len(row)]
    return tuple((start, row[start:end]) for start, end in pairwise(edges))


def _line(part: str, number: int, offset: int) -> Line:
    match = (_KEYED.match(part) if ":" in part else None) or _FOR.match(part)
    keyed = _keyed(match, number, offset) if match else None
    if keyed is not None and keyed.key in KEYS and ":" in part[: keyed.value_column - offset]:
        return Line(number=number, keyed=keyed)
    return Line(number=number, keyed=keyed, tokens=tokens_of(part, number, offset))


def _keyed(match: re.Match[str], number: int, offset: int) -> Keyed:
    value = match[2]
    lead = len(value) - len(value.lstrip())
    return Keyed(
        key=" ".join(match[1].lower().split()),
        value=value.strip(),
        line=number,
        column=offset + match.start(1) + 1,
        value_column=offset + match.start(2) + lead + 1,
    )


def tokens_of(part: str, line: int, offset: int = 0) -> tuple[Token, ...]:
    """The tokens of a stretch of one line that begins `offset` characters into it."""
    return tuple(
        Token(
            match.lastgroup or MARK,
            match[0],
            match[0].lower().replace("\u2019", "'"),
            line,
            offset + match.start() + 1,
            offset + match.end() + 1,
        )
        for match in _TOKEN.finditer(part)
    )
