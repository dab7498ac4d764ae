"""The figures of sport science that rehearsing, checking and fitting rest on, each with its unit, source and grade.

A figure is asked for by name and by age, surface or format. This module must not know the numbers themselves, nor
where they are kept: they are loaded at the edge and handed in.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field
from difflib import get_close_matches
from itertools import pairwise
from typing import Literal

Grade = Literal["A", "A*", "A>C", "B+", "B", "B-", "C"]
By = Literal["all", "age", "surface", "format", "contest", "level", "ball"]

AGE_COLUMNS = ("U7", "U9", "U11", "U13", "U15", "U17", "adult")
SURFACES = ("hall", "turf_fast", "turf", "grass_short", "grass_club", "grass_long")
FORMATS = ("2v2", "3v3", "4v4", "5v5", "7v7", "9v9", "11v11")
CONTESTS = ("1v1", "2v1")
LEVELS = ("beginner", "average", "advanced")
BALLS = ("3", "4", "5")

COLUMNS: dict[By, tuple[str, ...]] = {
    "all": ("all",),
    "age": AGE_COLUMNS,
    "surface": SURFACES,
    "format": FORMATS,
    "contest": CONTESTS,
    "level": LEVELS,
    "ball": BALLS,
}

YOUNGEST = 7
ADULT = 19
_SIDES = tuple(int(name.partition("v")[0]) for name in FORMATS)


class UnknownFigure(KeyError):
    """A figure, or a column of one, was asked for that the table does not hold: a programmer's mistake."""

    def __str__(self) -> str:
        """Give the message as it was written, without the quotes a KeyError puts round it."""
        return str(self.args[0])


@dataclass(frozen=True, slots=True, kw_only=True)
class Spread:
    """How far players differ round a figure: a coefficient of variation or a standard deviation in its own unit."""

    kind: Literal["cv", "sd"]
    values: tuple[float, ...]

    def __post_init__(self) -> None:
        """Refuse an empty or negative spread."""
        if not self.values or min(self.values) < 0:
            raise ValueError("a spread needs values of nought or more")


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """One row of the table: its values in the order of its columns, and where they come from."""

    key: str
    title: str
    unit: str
    by: By
    values: tuple[float, ...]
    spread: Spread | None
    source: str
    grade: Grade
    note: str = ""

    def __post_init__(self) -> None:
        """Refuse a row whose values or spread do not fit its columns."""
        wanted = len(COLUMNS[self.by])
        if len(self.values) != wanted:
            raise ValueError(f"{self.key}: {wanted} values wanted by {self.by}, {len(self.values)} given")
        if self.spread is not None and len(self.spread.values) not in (1, wanted):
            raise ValueError(f"{self.key}: a spread has one value or one for each column")

    @property
    def columns(self) -> tuple[str, ...]:
        """Give the names of the columns the values stand in."""
        return COLUMNS[self.by]

    @property
    def is_estimate(self) -> bool:
        """Say whether the row rests on reasoning of our own and must be called an estimate wherever it is shown."""
        return self.grade.endswith("C")


@dataclass(frozen=True, slots=True, kw_only=True)
class AgeBand:
    """A range of ages, as "under N" with both ends included, and what holds in it; no oldest means no upper end."""

    youngest: int
    oldest: int | None
    low: float | None = None
    high: float | None = None
    text: str = ""

    def covers(self, age: int) -> bool:
        """Say whether an age, as "under N", lies in the band."""
        return self.youngest <= age and (self.oldest is None or age <= self.oldest)


@dataclass(frozen=True, slots=True, kw_only=True)
class AgeRule:
    """A row that holds by exact ranges of age and is never a mean of its neighbours: safety, balls, goals, limits."""

    key: str
    title: str
    unit: str
    bands: tuple[AgeBand, ...]
    source: str
    grade: Grade
    note: str = ""

    def __post_init__(self) -> None:
        """Refuse a rule without bands, and bands that overlap, leave a gap, or stand out of order."""
        if not self.bands:
            raise ValueError(f"{self.key}: a rule needs a band")
        if any(band.oldest is not None and band.oldest < band.youngest for band in self.bands):
            raise ValueError(f"{self.key}: a band ends before it begins")
        for band, following in pairwise(self.bands):
            if band.oldest is None or following.youngest != band.oldest + 1:
                raise ValueError(f"{self.key}: the bands must follow one another without gap or overlap")

    def band(self, age: int) -> AgeBand | None:
        """Give the band an age, as "under N", lies in, or None where the rule says nothing about it."""
        return next((band for band in self.bands if band.covers(age)), None)

    @property
    def is_estimate(self) -> bool:
        """Say whether the row rests on reasoning of our own and must be called an estimate wherever it is shown."""
        return self.grade.endswith("C")


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """A work that rows name by its short name, where it is found, and whether it was seen or is quoted from memory."""

    name: str
    where: str
    seen: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Figures:
    """The whole table, with its look-ups made once."""

    rows: tuple[Figure, ...]
    rules: tuple[AgeRule, ...] = ()
    sources: tuple[Source, ...] = ()
    _rows: dict[str, Figure] = field(init=False, repr=False, compare=False)
    _rules: dict[str, AgeRule] = field(init=False, repr=False, compare=False)
    _ages: dict[str, tuple[float, ...]] = field(init=False, repr=False, compare=False)
    _cells: dict[tuple[str, str], float] = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        """Build the look-ups; refuse two rows of one name."""
        rows = {row.key: row for row in self.rows}
        rules = {rule.key: rule for rule in self.rules}
        seen = Counter([*(row.key for row in self.rows), *(rule.key for rule in self.rules)])
        if twice := [key for key, times in seen.items() if times > 1]:
            raise ValueError(f"two rows of the figures have the same key: {', '.join(twice)}")
        ages = {row.key: _by_every_age(row) for row in self.rows if row.by in ("age", "all")}
        cells = {
            (row.key, name): value for row in self.rows for name, value in zip(row.columns, row.values, strict=True)
        }
        for name, table in (("_rows", rows), ("_rules", rules), ("_ages", ages), ("_cells", cells)):
            object.__setattr__(self, name, table)

    def at(self, key: str, *, age: int) -> float:
        """Give a figure at an age, as "under N"; between two rows it is their mean, and under 7 it is as under 7."""
        try:
            return self._ages[key][min(max(age, YOUNGEST), ADULT) - YOUNGEST]
        except KeyError:
            raise self._unknown(key, "by age") from None

    def value(self, key: str) -> float:
        """Give a figure that is one number for everybody."""
        return self._cell(key, "all")

    def on(self, key: str, surface: str) -> float:
        """Give a figure of the ball on a surface, one of SURFACES."""
        return self._cell(key, surface)

    def of(self, key: str, column: str) -> float:
        """Give a figure in a column named as it stands in the table: a surface, format, contest, level or ball."""
        return self._cell(key, column)

    def in_format(self, key: str, *, a_side: float) -> float:
        """Give a figure for so many players a side: straight between two formats, at the ends the last format's."""
        if self.row(key).by != "format":
            raise self._unknown(key, "by format")
        return _between(_SIDES, self._rows[key].values, a_side)

    def spread_at(self, key: str, *, age: int) -> float | None:
        """Give the standard deviation between players in the figure's own unit, or None where none is known."""
        row = self.row(key)
        if row.spread is None:
            return None
        values = row.spread.values
        if len(values) > 1 and row.by == "age":
            size = _every_age(values)[min(max(age, YOUNGEST), ADULT) - YOUNGEST]
        else:
            size = values[0]
        return size * self.at(key, age=age) if row.spread.kind == "cv" else size

    def row(self, key: str) -> Figure:
        """Give the whole row of a figure, to say where a number came from."""
        try:
            return self._rows[key]
        except KeyError:
            raise self._unknown(key, "at all") from None

    def rule(self, key: str) -> AgeRule:
        """Give a rule that holds by exact ranges of age."""
        try:
            return self._rules[key]
        except KeyError:
            raise self._unknown(key, "as a rule by age") from None

    def band(self, key: str, *, age: int) -> AgeBand | None:
        """Give what a rule says at an age, as "under N", or None where it says nothing."""
        return self.rule(key).band(age)

    def _cell(self, key: str, column: str) -> float:
        try:
            return self._cells[key, column]
        except KeyError:
            raise self._unknown(key, f'in a column "{column}"') from None

    def _unknown(self, key: str, how: str) -> UnknownFigure:
        known = [*self._rows, *self._rules]
        if key in self._rows:
            row = self._rows[key]
            return UnknownFigure(
                f'the figure "{key}" is not known {how}: it goes by {row.by} ({", ".join(row.columns)})'
            )
        if key in self._rules:
            return UnknownFigure(f'"{key}" is not known {how}: it is a rule by exact ranges of age')
        near = get_close_matches(key, known, n=3)
        hint = f"; near it: {', '.join(near)}" if near else ""
        return UnknownFigure(f'no figure is called "{key}"{hint}')


def _by_every_age(row: Figure) -> tuple[float, ...]:
    if row.by == "all":
        return row.values * (ADULT - YOUNGEST + 1)
    return _every_age(row.values)


def _every_age(values: tuple[float, ...]) -> tuple[float, ...]:
    """Give a value for each age from under 7 to adult; between two rows the mean of both."""
    every = [values[0]]
    for before, after in pairwise(values):
        every += [(before + after) / 2, after]
    return tuple(every)


def _between(places: tuple[int, ...], values: tuple[float, ...], at: float) -> float:
    at = min(max(at, places[0]), places[-1])
    after = next(i for i, place in enumerate(places) if place >= at)
    if places[after] == at:
        return values[after]
    share = (at - places[after - 1]) / (places[after] - places[after - 1])
    return values[after - 1] + share * (values[after] - values[after - 1])
