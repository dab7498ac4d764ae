"""The evening fitted last, kept whole so that the next start shows it at once.

It counts only while everything it rests on is as it was: the answers, the exercises, the figures and the program.
This module must not know how an evening is fitted or shown.
"""

import sys
from dataclasses import fields, is_dataclass
from enum import Enum
from hashlib import blake2b
from pathlib import Path
from typing import Any

import msgspec

from conewright.model.session import Session, Tonight
from conewright.store.keep import Keep, recall, remember

KEY = "fitted"
PACKAGE = Path(__file__).parents[1]
MODEL = "conewright.model."
RECORDS = {
    f"{record.__module__.removeprefix(MODEL)}.{record.__name__}": record
    for name, module in tuple(sys.modules.items())
    if name.startswith(MODEL)
    for record in vars(module).values()
    if isinstance(record, type) and record.__module__ == name
}
"""Every record of the model that an evening may hold, by its module and name: nothing else is ever made."""


def keep_fitted(keep: Keep, tonight: Tonight, planned: int, fitted: Session) -> bool:
    """Keep an evening where it is not the one kept already; False where it could not be kept as it is."""
    rests_on = _rests_on(tonight, planned)
    kept = recall(keep, KEY)
    if isinstance(kept, dict) and kept.get("rests on") == rests_on:
        return True
    text = msgspec.json.encode(to_plain(fitted)).decode()
    if from_plain(msgspec.json.decode(text)) != fitted:  # a number that JSON does not have
        return False
    return remember(keep, {KEY: {"rests on": rests_on, "evening": text}})


def last_fitted(keep: Keep, tonight: Tonight, planned: int) -> Session | None:
    """The evening kept last, where it is the one for these answers; None for any other and where it is damaged."""
    kept = recall(keep, KEY)
    if not isinstance(kept, dict) or kept.get("rests on") != _rests_on(tonight, planned):
        return None
    try:
        found = from_plain(msgspec.json.decode(kept["evening"]))
    except (KeyError, TypeError, ValueError):  # msgspec.DecodeError is a ValueError
        return None
    return found if isinstance(found, Session) else None


def _rests_on(tonight: Tonight, planned: int) -> str:
    mark = blake2b(digest_size=16)
    for path in sorted(PACKAGE.rglob("*")):
        if path.is_file() and path.suffix != ".pyc":
            known = path.stat()
            mark.update(f"{path.relative_to(PACKAGE)} {known.st_size} {known.st_mtime_ns}\n".encode())
    mark.update(repr((tonight, planned)).encode())
    return mark.hexdigest()


def to_plain(value: Any) -> Any:
    """A record as what JSON has: records, enums and rows of records carry their names, tuples are lists."""
    if isinstance(value, Enum):
        return {"one of": _name(type(value)), "is": value.value}
    if is_dataclass(value):
        held = {part.name: to_plain(getattr(value, part.name)) for part in fields(value)}
        return {"record": _name(type(value)), "is": held}
    if isinstance(value, tuple):
        kinds = {type(one) for one in value}
        if len(value) > 1 and len(kinds) == 1 and hasattr(value[0], "_fields"):
            return {"rows": _name(kinds.pop()), "is": [list(one) for one in value]}
        held_ones = [to_plain(one) for one in value]
        return {"row": _name(type(value)), "is": held_ones} if hasattr(value, "_fields") else held_ones
    return value


def _name(record: type) -> str:
    return f"{record.__module__.removeprefix(MODEL)}.{record.__name__}"


def from_plain(plain: Any) -> Any:
    """The record that was written. Raises KeyError, TypeError or ValueError for anything that never was one."""
    if isinstance(plain, list):
        return tuple(from_plain(one) for one in plain)
    if not isinstance(plain, dict):
        return plain
    held = plain["is"]
    if "rows" in plain:
        row = RECORDS[plain["rows"]]
        return tuple(row(*one) for one in held)
    if "row" in plain:
        return RECORDS[plain["row"]](*(from_plain(one) for one in held))
    if "one of" in plain:
        return RECORDS[plain["one of"]](held)
    return RECORDS[plain["record"]](**{name: from_plain(one) for name, one in held.items()})
