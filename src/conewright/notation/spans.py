"""Records without the places they were read from, so that two readings can be compared; must not know the records."""

from dataclasses import fields, is_dataclass, replace
from typing import TypeVar

Record = TypeVar("Record")


def without_spans(record: Record) -> Record:
    """The same record with every field called `span` set to None, in the records it holds too."""
    if not is_dataclass(record) or isinstance(record, type):
        return record
    changed = {field.name: _bare(field.name, getattr(record, field.name)) for field in fields(record)}
    return replace(record, **changed)


def _bare(name: str, value: object) -> object:
    if name == "span":
        return None
    if type(value) is tuple:
        return tuple(_bare("", entry) for entry in value)
    return without_spans(value)
