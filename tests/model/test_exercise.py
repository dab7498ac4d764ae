"""An exercise as data: places and things are found by name, records are values."""

from dataclasses import FrozenInstanceError, replace

import pytest

from conewright.model.exercise import KINDS, Act, Exercise, Manner, Verb
from conewright.notation.reader import read

TEXT = """exercise: Case
kind: passing pattern
for 2 to 12 players, under 8 to under 16
Base at 0, 0 is a line with the ball.
Far at 0, 10 is a line.
Mast at 3, 3 is a cone.
Each round:
1. Base passes to Far, then runs to Far.
2. Far passes to Base, then runs to Base.
"""


def exercise() -> Exercise:
    found, problems = read(TEXT)
    assert found is not None
    assert not problems
    return found


def test_places_and_things_are_found_by_name_and_only_their_own() -> None:
    case = exercise()
    assert case.place("Far") == case.places[1]
    assert case.thing("Mast") == case.things[0]
    assert case.place("Mast") is None
    assert case.thing("Far") is None
    assert case.place("") is None


def test_the_same_text_is_the_same_value() -> None:
    assert exercise() == exercise()
    assert hash(exercise()) == hash(exercise())
    assert replace(exercise(), name="Other") != exercise()


def test_records_do_not_change() -> None:
    act = Act(who="Base", verb=Verb.RUN)
    with pytest.raises(FrozenInstanceError):
        act.who = "Far"  # type: ignore[misc]
    assert replace(act, manner=Manner(touches=1)).manner.touches == 1


def test_kinds_are_told_apart() -> None:
    assert len(set(KINDS)) == len(KINDS)
    assert exercise().kind in KINDS
