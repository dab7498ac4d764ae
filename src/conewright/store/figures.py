"""Reads the table of figures that ships with Conewright.

This is the only place that knows where the figures are kept and in what form. It must not know what they are used for.
"""

from __future__ import annotations

from dataclasses import fields
from importlib.resources import files
from typing import Any, TypeVar

import msgspec

from conewright.model.figures import AgeBand, AgeRule, Figure, Figures, Source, Spread

Record = TypeVar("Record", Figure, AgeRule, Source)

PARTS = ("rows", "rules", "sources")


class DamagedFigures(Exception):
    """The file of figures that ships with Conewright cannot be used; the message names the row."""


def load_figures() -> Figures:
    """Read the figures that ship with Conewright. Raises DamagedFigures, naming the row that is wrong."""
    return read_figures(files("conewright.data").joinpath("figures.json").read_bytes())


def read_figures(data: bytes) -> Figures:
    """Read figures from the bytes of a file. Raises DamagedFigures, naming the row that is wrong."""
    try:
        parts = msgspec.json.decode(data)
    except msgspec.DecodeError as error:
        raise DamagedFigures(f"the file of figures is not readable: {error}") from error
    if not isinstance(parts, dict) or sorted(parts) != sorted(PARTS):
        raise DamagedFigures(f"the file of figures must hold {', '.join(PARTS)} and nothing else")
    try:
        return Figures(
            rows=_records(parts["rows"], Figure, "key"),
            rules=_records(parts["rules"], AgeRule, "key"),
            sources=_records(parts["sources"], Source, "name"),
        )
    except ValueError as error:
        raise DamagedFigures(f"the file of figures is damaged: {error}") from error


def _records(raw: object, kind: type[Record], key: str) -> tuple[Record, ...]:
    if not isinstance(raw, list):
        raise DamagedFigures(f"the file of figures is damaged: the rows of {kind.__name__} must be a list")
    return tuple(_record(row, kind, place, key) for place, row in enumerate(raw, 1))


def _record(raw: Any, kind: type[Record], place: int, key: str) -> Record:
    name = f'"{raw[key]}"' if isinstance(raw, dict) and key in raw else f"number {place}, which has no {key}"
    where = f"the file of figures is damaged at {kind.__name__} {name}"
    _refuse_strangers(raw, kind, where)
    if kind is AgeRule and isinstance(raw.get("bands"), list):
        for band in raw["bands"]:
            _refuse_strangers(band, AgeBand, where)
    if kind is Figure and raw.get("spread") is not None:
        _refuse_strangers(raw["spread"], Spread, where)
    try:
        return msgspec.convert(raw, kind)
    except msgspec.ValidationError as error:
        raise DamagedFigures(f"{where}: {error}") from error


def _refuse_strangers(raw: Any, kind: type[Any], where: str) -> None:
    """Refuse a name no row has, for a misspelt one would be passed over in silence."""
    if not isinstance(raw, dict):
        raise DamagedFigures(f"{where}: it must be a row of names and values")
    strangers = sorted(set(raw) - {part.name for part in fields(kind)})
    if strangers:
        raise DamagedFigures(f"{where}: it has no place for {', '.join(strangers)}")
