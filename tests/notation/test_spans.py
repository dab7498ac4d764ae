"""Taking the spans out of records."""

from dataclasses import fields, is_dataclass
from pathlib import Path

from conewright.model.geometry import Point
from conewright.notation.reader import read
from conewright.notation.spans import without_spans

EVERYTHING = Path(__file__).parents[1] / "data" / "notation" / "everything.exercise"


def spans(record: object) -> list[object]:
    if isinstance(record, tuple):
        return [span for entry in record for span in spans(entry)]
    if not is_dataclass(record):
        return []
    own = [getattr(record, "span", None)]
    return own + [span for field in fields(record) for span in spans(getattr(record, field.name))]


def test_no_span_is_left_and_nothing_else_is_changed() -> None:
    exercise, _ = read(EVERYTHING.read_text(encoding="utf-8"))
    bare = without_spans(exercise)
    assert sum(span is not None for span in spans(exercise)) > 60
    assert set(spans(bare)) == {None}
    assert bare.places[1].at == Point(0, 8)
    assert isinstance(bare.places[1].at, Point)
    assert without_spans(bare) == bare
    assert (bare.name, bare.script.steps[2].acts[0].verb) == (exercise.name, exercise.script.steps[2].acts[0].verb)


def test_what_is_no_record_stays() -> None:
    assert without_spans(3) == 3
