"""An exercise as JSON and back, for other programs: the names are those of the model; must not know the sentences.

Every record of the model is one object. A field that holds its usual value is left out, and a field that is not known
is refused. A point is a pair of metres. A patch of a step says in `is` which kind it is. `form` counts up when a name
or its meaning changes.
"""

import re
import types
from collections.abc import Mapping
from dataclasses import MISSING, Field, fields, is_dataclass
from typing import Annotated, Any, Literal, Union, get_args, get_origin, get_type_hints

import msgspec

from conewright.model import written
from conewright.model.exercise import KINDS, Exercise, Holds
from conewright.model.problem import Span
from conewright.model.session import Job
from conewright.model.variant import OneMore, Patch

FORM = 1
LONGEST = 240  # letters of a complaint
TAG = "is"
SCHEMA = "https://json-schema.org/draft/2020-12/schema"
Form = dict[str, Any]

JOBS = tuple(job.value for job in Job)
Count = Annotated[int, msgspec.Meta(ge=0)]
AtLeastOne = Annotated[int, msgspec.Meta(ge=1)]
Length = Annotated[float, msgspec.Meta(ge=0)]
NARROWER: Mapping[tuple[type, str], Any] = {  # what the model's own types leave wider than the notation can say
    (Exercise, "kind"): Literal[KINDS],
    (Exercise, "good_for"): tuple[Literal[JOBS], ...],  # type: ignore[valid-type] # known when it runs
    (written.Numbers, "least"): AtLeastOne,
    (written.Numbers, "most"): AtLeastOne,
    (written.Numbers, "best"): AtLeastOne | None,
    (written.Place, "waits"): Literal["behind", "left", "right"],
    (written.Thing, "width_m"): Length,
    (written.Supply, "count"): Count,
    (written.Via, "how"): Literal["round", "through"],
    (written.Manner, "touches"): AtLeastOne | None,
    (written.Step, "number"): AtLeastOne,
    (written.Rotation, "every_rounds"): AtLeastOne,
    (written.OpenPlay, "balls"): Count,
    (written.Form, "copies"): AtLeastOne,
    (Span, "line"): AtLeastOne,
    (Span, "column"): AtLeastOne,
}

TYPES = {
    "str": "text",
    "int": "a whole number",
    "float": "a number",
    "bool": "true or false",
    "array": "a list",
    "object": "an object",
    "null": "null",
}


class NotAnExercise(Exception):
    """A JSON text that is not an exercise; the message says where in it and why, in one line."""


# --- writing ---


def form_of(exercise: Exercise, *, spans: bool = True) -> Form:
    """The exercise as plain objects; `spans` are the places in the text that each part was read from."""
    return {"form": FORM, "exercise": _object(exercise, spans=spans)}


def _object(record: Any, *, spans: bool) -> Form:
    told: Form = {TAG: tag_of(type(record))} if type(record) in PATCHES else {}
    for field in fields(record):
        value = getattr(record, field.name)
        if (spans or field.name != "span") and (_is_needed(field) or value != _usual(field)):
            told[field.name] = _plain(value, spans=spans)
    return told


def _plain(value: Any, *, spans: bool) -> Any:
    if is_dataclass(value):
        return _object(value, spans=spans)
    if isinstance(value, tuple):
        return [_plain(entry, spans=spans) for entry in value]
    return value


def _is_needed(field: Field[Any]) -> bool:
    return field.default is MISSING and field.default_factory is MISSING


def _usual(field: Field[Any]) -> Any:
    return field.default_factory() if field.default_factory is not MISSING else field.default


# --- the forms: one msgspec record for each of the model ---

PATCHES: tuple[type, ...] = get_args(Patch)
_FORMS: dict[type, type[msgspec.Struct]] = {}
_RECORDS: dict[type[msgspec.Struct], type] = {}


def tag_of(patch: type) -> str:
    """How a kind of patch is called: `ChangeManner` is "change manner"."""
    return re.sub(r"(?<=[a-z])(?=[A-Z])", " ", patch.__name__).lower()


def _form(record: type) -> type[msgspec.Struct]:
    """The form of one record of the model, made once."""
    if record not in _FORMS:
        types_of = get_type_hints(record)
        shapes = [_field(record, field, types_of[field.name]) for field in fields(record)]
        tag = tag_of(record) if record in PATCHES else None
        made = msgspec.defstruct(
            record.__name__,
            shapes,
            namespace={"__doc__": record.__doc__},
            tag=tag,
            tag_field=TAG if tag else None,
            frozen=True,
            kw_only=True,
            forbid_unknown_fields=True,
        )
        _FORMS[record], _RECORDS[made] = made, record
    return _FORMS[record]


def _field(record: type, field: Field[Any], kind: Any) -> tuple[str, Any] | tuple[str, Any, Any]:
    shape = NARROWER.get((record, field.name)) or _shape(kind)
    if _is_needed(field):
        return field.name, shape
    if field.default_factory is not MISSING:
        return field.name, shape, msgspec.field(default_factory=_form(type(field.default_factory())))
    return field.name, shape, field.default


def _shape(kind: Any) -> Any:
    """A type of the model with the forms in the place of the records."""
    if is_dataclass(kind):
        return _form(kind)  # type: ignore[arg-type] # a class here, never a record
    inner = get_args(kind)
    if get_origin(kind) is tuple:
        return tuple[tuple(part if part is ... else _shape(part) for part in inner)]  # type: ignore[misc] # made here
    if isinstance(kind, types.UnionType):
        return Union[tuple(_shape(part) for part in inner)]  # noqa: UP007 # the types are only known when it runs
    return kind


class ExerciseFile(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """An exercise of Conewright as one JSON file."""

    form: Literal[1]
    exercise: _form(Exercise)  # type: ignore[valid-type] # the form of a record is made when it runs


# --- reading ---


def exercise_from(text: str) -> Exercise:
    """The exercise of a JSON text. Raises NotAnExercise, naming the path, where it is not one."""
    try:
        file = msgspec.json.decode(text, type=ExerciseFile)
    except msgspec.ValidationError as error:
        raise NotAnExercise(_invalid(str(error))) from None
    except msgspec.DecodeError as error:
        raise NotAnExercise(_malformed(str(error), text)) from None
    exercise: Exercise = _record(file.exercise)
    _refuse_unheard_of(exercise)
    return exercise


def _refuse_unheard_of(exercise: Exercise) -> None:
    """Places that stand for what no place is. Raises NotAnExercise."""
    found = [(f"places[{n}]", place) for n, place in enumerate(exercise.places)]
    found += [
        (f"variants[{n}].patches[{m}].place", patch.place)
        for n, step in enumerate(exercise.variants)
        for m, patch in enumerate(step.patches)
        if isinstance(patch, OneMore)
    ]
    for path, place in found:
        if place.adult and place.holds is Holds.LINE:
            raise NotAnExercise(f"at exercise.{path}.holds: an adult's place holds one")


def _record(form: Any) -> Any:
    if isinstance(form, msgspec.Struct):
        record = _RECORDS[type(form)]
        return record(**{name: _record(getattr(form, name)) for name in form.__struct_fields__})
    if type(form) is tuple:
        return tuple(_record(entry) for entry in form)
    return form


def _invalid(message: str) -> str:
    """ "Expected `str`, got `int` - at `$.exercise.name`" with the path first and in plain words."""
    what, _, path = message.partition(" - at ")
    where = path.strip("`").removeprefix("$").removeprefix(".")
    told = re.sub(r"`([^`]*)`", lambda quoted: _named(quoted[1]), what[:1].lower() + what[1:])
    line = f"at {where}: {told}" if where else told
    return "".join(letter if letter.isprintable() else "?" for letter in line)[:LONGEST]


def _named(types_or_name: str) -> str:
    parts = types_or_name.split(" | ")
    return " or ".join(TYPES[part] for part in parts) if set(parts) <= set(TYPES) else f'"{types_or_name}"'


def _malformed(message: str, text: str) -> str:
    byte = re.search(r"\(byte ([0-9]+)\)", message)
    before = text.encode()[: int(byte[1])] if byte else text.encode()
    line = before.count(b"\n") + 1
    return f"line {line} is not JSON"


# --- for those who check ---


def schema() -> Form:
    """The JSON Schema of what `form_of` gives and `exercise_from` takes."""
    return {"$schema": SCHEMA, **msgspec.json.schema(ExerciseFile)}


def differs_at(first: Any, second: Any, path: str = "exercise") -> str:
    """The path at which two exercises differ first, "" where they are the same; spans count."""
    if type(first) is not type(second):
        return path
    if is_dataclass(first):
        parts = [(f"{path}.{field.name}", field.name) for field in fields(first)]
        found = (differs_at(getattr(first, name), getattr(second, name), inner) for inner, name in parts)
        return next((one for one in found if one), "")
    if isinstance(first, tuple) and len(first) == len(second):
        found = (differs_at(a, b, f"{path}[{n}]") for n, (a, b) in enumerate(zip(first, second, strict=True)))
        return next((one for one in found if one), "")
    return "" if first == second else path
