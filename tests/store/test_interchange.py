"""An exercise as JSON and back: the same exercise, by the published schema, and refused in one line where it is not."""

import json
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from conewright.model.exercise import Exercise
from conewright.model.geometry import Point
from conewright.model.variant import (
    AfterStep,
    ChangeManner,
    InsteadOf,
    LeaveOut,
    OneMore,
    OtherLength,
    OtherTeams,
    Resize,
    Shift,
    Variant,
    VariantKind,
)
from conewright.model.written import Act, Bib, Holds, Manner, Numbers, Place, Rotation, RotationKind, Step, Team, Verb
from conewright.notation.printer import write
from conewright.notation.reader import read
from conewright.notation.spans import without_spans
from conewright.store.interchange import PATCHES, NotAnExercise, differs_at, exercise_from, form_of, schema, tag_of
from conewright.store.shelf import load_shelf
from scripts.schema import PAGE, schema_text
from tests.notation.invented import exercises
from tests.store.schemas import faults

SHELF = {exercise.name: exercise for exercise in load_shelf()}
STEM = SHELF["Stem and branch"]
WHOLE = json.loads(schema_text())
PATCH_OF_EACH_KIND = (
    ChangeManner(step=3, who="Stem", verb=Verb.TURN, manner=Manner(touches=1)),
    InsteadOf(step=Step(number=3, acts=(Act(who="Stem", verb=Verb.SET_BACK),))),
    AfterStep(after=2, step=Step(number=3, acts=(Act(who="Left", verb=Verb.SHOW),))),
    LeaveOut(number=4),
    OneMore(
        place=Place(name="Shadow", at=Point(0.0, 10.0), holds=Holds.ONE, passive=True),
        rotation=Rotation(kind=RotationKind.MOVES, every_rounds=6),
    ),
    Shift(name="Stem", at=Point(0.0, 12.5)),
    Resize(width_m=10, depth_m=12.5),
    OtherTeams(teams=(Team(name="Yellow", count=4, bib=Bib.YELLOW),)),
    OtherLength(seconds=45.0),
)
STEPPED = replace(
    STEM,
    variants=(
        Variant(kind=VariantKind.HARDER, name="all at once", patches=PATCH_OF_EACH_KIND, as_before=False),
        Variant(kind=VariantKind.FEW_BALLS, name="two", patches=(), numbers=Numbers(least=4, most=6)),
    ),
)


def through(exercise: Exercise, *, spans: bool = True) -> Exercise:
    return exercise_from(json.dumps(form_of(exercise, spans=spans)))


@pytest.mark.parametrize("exercise", [*SHELF.values(), STEPPED], ids=lambda exercise: exercise.name)
def test_it_comes_back_the_same_and_the_schema_says_so(exercise: Exercise) -> None:
    form = json.loads(json.dumps(form_of(exercise)))
    assert through(exercise) == exercise
    assert faults(form, WHOLE, WHOLE) == []
    bare = form_of(exercise, spans=False)
    assert '"span"' not in json.dumps(bare)
    assert through(exercise, spans=False) == without_spans(exercise)


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])
@given(exercises())
def test_any_exercise_comes_back_the_same_as_json_and_as_sentences(exercise: Exercise) -> None:
    form = json.loads(json.dumps(form_of(exercise)))
    again = exercise_from(json.dumps(form))
    assert faults(form, WHOLE, WHOLE) == []
    assert again == exercise
    assert differs_at(exercise, without_spans(read(write(again))[0])) == ""


def test_every_kind_of_patch_has_a_name_of_its_own() -> None:
    assert {type(patch) for patch in PATCH_OF_EACH_KIND} == set(PATCHES)
    assert tag_of(ChangeManner) == "change manner"
    told = form_of(STEPPED)["exercise"]["variants"][0]["patches"]
    assert [patch["is"] for patch in told] == [tag_of(type(patch)) for patch in PATCH_OF_EACH_KIND]


def test_what_is_usual_is_left_out() -> None:
    assert form_of(STEM, spans=False)["exercise"]["places"][1] == {"name": "Stem", "at": [0.0, 7.0], "holds": "one"}


def spoilt(path: str, value: object) -> str:
    """Stem and branch as JSON with something else at a path; `...` takes it away."""
    form: Any = json.loads(json.dumps(form_of(STEPPED)))
    *way, last = [int(part) if part.isdigit() else part for part in path.split(".")]
    held = form
    for part in way:
        held = held[part]
    if value is ...:
        del held[last]
    else:
        held[last] = value
    return json.dumps(form)


@pytest.mark.parametrize(
    ("path", "value", "told"),
    [
        ("exercise.name", 3, "at exercise.name: expected text, got a whole number"),
        ("exercise.name", ..., 'at exercise: object missing required field "name"'),
        ("exercise.nick", "Stem", 'at exercise: object contains unknown field "nick"'),
        ("exercise.kind", "drill", "at exercise.kind: invalid enum value 'drill'"),
        ("exercise.places.1.at", [1], "at exercise.places[1].at: expected a list of length 2"),
        ("exercise.places.1.at.0", "far", "at exercise.places[1].at[0]: expected a number, got text"),
        ("exercise.places.0.adult", True, "at exercise.places[0].holds: an adult's place holds one"),
        ("exercise.script.steps.0", None, "at exercise.script.steps[0]: expected an object, got null"),
        ("exercise.script", [], "at exercise.script: expected an object or null, got a list"),
        ("exercise.script.steps.2.acts.0.manner.touches", 0, "touches: expected a whole number >= 1"),
        ("exercise.variants.0.patches.3.is", "leave", "patches[3].is: invalid value 'leave'"),
        ("exercise.variants.0.patches.4.place.waits", "up", "patches[4].place.waits: invalid enum value 'up'"),
        ("form", 2, "at form: invalid enum value 2"),
    ],
)
def test_what_is_wrong_is_said_in_a_line_with_its_path(path: str, value: object, told: str) -> None:
    text = spoilt(path, value)
    with pytest.raises(NotAnExercise) as refused:
        exercise_from(text)
    assert told in str(refused.value)
    assert len(str(refused.value).splitlines()) == 1
    if "adult" not in path:
        assert faults(json.loads(text), WHOLE, WHOLE) != []


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("", "line 1 is not JSON"),
        ('{\n"form": 1,\n"exercise": }', "line 3 is not JSON"),
        ("[" * 100_000, "expected an object, got a list"),
        ('{"form": 1, "exercise": {"name": "\\ud800"}}', "line 1 is not JSON"),
        ('{"form": 1, "exercise": {"name": "x", "kind": "duel", "numbers": {"least": 1e999}}}', "at exercise.numbers"),
    ],
)
def test_what_is_no_json_is_said_with_its_line(text: str, told: str) -> None:
    with pytest.raises(NotAnExercise, match=told.replace("[", r"\[")):
        exercise_from(text)


def test_where_two_exercises_differ_first() -> None:
    step = STEM.script.steps[1] if STEM.script else Step(number=1)
    other = replace(STEM, places=(*STEM.places[:3], replace(STEM.places[3], at=Point(6.0, 14.0))))
    assert differs_at(STEM, STEM) == ""
    assert differs_at(STEM, other) == "exercise.places[3].at[1]"
    assert differs_at(STEM, replace(STEM, places=STEM.places[1:])) == "exercise.places"
    assert differs_at(step, replace(step, acts=()), "step") == "step.acts"
    assert differs_at(STEM, None) == "exercise"


def test_the_published_schema_is_up_to_date() -> None:
    """If not: `python scripts/schema.py` writes it anew."""
    assert PAGE.read_text(encoding="utf-8") == schema_text()
    assert schema()["$schema"].startswith("https://json-schema.org/")


# What is strange

anything = st.recursive(
    st.none() | st.booleans() | st.integers(-3, 99) | st.floats(allow_nan=False) | st.text(max_size=8),
    lambda inner: st.lists(inner, max_size=2) | st.dictionaries(st.text(max_size=5), inner, max_size=2),
    max_leaves=4,
)


@st.composite
def strange(draw: st.DrawFn) -> str:
    """A shipped exercise in which one thing is something else, or what stands elsewhere in it."""
    form: Any = json.loads(json.dumps(form_of(draw(st.sampled_from([STEPPED, *SHELF.values()])))))
    spots = list(_spots(form))
    held, key = draw(st.sampled_from(spots))
    other, name = draw(st.sampled_from(spots))
    alike = [(a, b) for a, b in spots if b == key and type(key) is str]
    new = draw(anything | st.just(other[name]) | st.sampled_from([a[b] for a, b in alike] or [None]))
    held[key] = json.loads(json.dumps(new))
    return json.dumps(form)


def _spots(value: Any) -> Any:
    keys = value.keys() if isinstance(value, dict) else range(len(value)) if isinstance(value, list) else ()
    for key in keys:
        yield value, key
        yield from _spots(value[key])


@settings(max_examples=400, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(strange())
def test_strange_json_is_refused_or_said_in_sentences(text: str) -> None:
    exercise, why = outcome(text)
    assert len(why.splitlines()) <= 1
    if exercise is not None:
        assert faults(json.loads(text), WHOLE, WHOLE) == []
        assert read(write(exercise))[0] is not None


def outcome(text: str) -> tuple[Exercise | None, str]:
    try:
        return exercise_from(text), ""
    except NotAnExercise as refused:
        return None, str(refused)
