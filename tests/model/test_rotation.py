"""Where a bearer goes once its acts are done."""

import pytest

from conewright.model.exercise import Exercise, Script
from conewright.model.geometry import Point
from conewright.model.rotation import Onward, fixed_rotations, is_told_on, onward
from conewright.model.ways import Walker
from conewright.notation.reader import read

TEXT = """exercise: Case
kind: passing pattern
for 2 to 12 players, under 8 to under 16
Base at 0, 0 is a line with 4 balls.
Far at 0, 10 is a line.
Left at -6, 9 and Right at 6, 9 are lines.
Coach at 5, 5 is an adult.
Each round, Left and Right in turn (call it Side):
1. Base passes to Far.
{rotation}
"""
WORDS = {"Side": "Left"}


def case(rotation: str) -> tuple[Exercise, Script]:
    exercise, problems = read(TEXT.format(rotation=rotation))
    assert exercise is not None
    assert not problems, problems
    assert exercise.script is not None
    return exercise, exercise.script


def walker(place: str = "Base", role: str = "", **known: object) -> Walker:
    state = Walker(number=0, role=role or place, place=place, at=Point(0, 0), heading=0)
    for name, value in known.items():
        setattr(state, name, value)
    return state


def goes(rotation: str, state: Walker, receiver: Walker | None = None) -> Onward:
    exercise, script = case(rotation)
    return onward(exercise, script, state, receiver, WORDS)


FAR, COACH = walker("Far"), walker("Coach")


def test_nothing_said_follows_the_pass() -> None:
    assert goes("", walker(kicks=1), FAR) == Onward(goal="Far", direct=True)
    assert goes("", walker(kicks=2), FAR) == Onward(goal="Far", direct=True, guessed=True)
    assert goes("Rotation: follow the pass.", walker(kicks=2), FAR) == Onward(goal="Far", direct=True)


def test_nothing_said_and_nothing_passed_goes_nowhere_or_home_with_the_ball() -> None:
    assert goes("", walker()) == Onward(goal=None)
    assert goes("", walker(has_ball=True, moved=True)) == Onward(goal="Base")
    assert goes("", walker(moved=True)) == Onward(goal=None)


def test_after_a_pass_to_an_adult_it_is_back_home() -> None:
    assert goes("", walker(kicks=1), COACH) == Onward(goal="Base")


def test_what_is_listed_comes_before_the_pass() -> None:
    listed = "Rotation: Base to Right, Side to Base."
    assert goes(listed, walker(kicks=1), FAR) == Onward(goal="Right")
    assert goes(listed, walker("Left", "Side")) == Onward(goal="Base")
    assert goes("Rotation: Base to Far.", walker(kicks=1), FAR) == Onward(goal="Far", direct=True)
    assert goes("Rotation: Base to Side.", walker(kicks=1), FAR) == Onward(goal="Left")


def test_back_to_the_own_place() -> None:
    assert goes("Rotation: everyone back to the own place.", walker(kicks=1), FAR) == Onward(goal="Base")


def test_who_has_not_had_its_turn_goes_nowhere() -> None:
    for rotation in ("", "Rotation: Base to Far.", "Rotation: everyone back to the own place."):
        assert goes(rotation, walker(first=False, has_ball=True)) == Onward(goal=None)


@pytest.mark.parametrize(
    ("rotation", "gone_to", "told"),
    [
        ("Rotation: Base to Far.", "Far", False),
        ("Rotation: Base to Far.", "Right", True),
        ("Rotation: everyone back to the own place.", "Far", True),
        ("Rotation: everyone back to the own place.", "Base", False),
        ("", "Far", False),
        ("Every 2 rounds: Base to Right, Right to Base.", "Far", False),
    ],
)
def test_a_rotation_sends_on_from_where_the_last_act_ended(rotation: str, gone_to: str, told: bool) -> None:
    _, script = case(rotation)
    assert is_told_on(script, walker(gone_to=gone_to), WORDS) is told


def test_changes_every_so_many_rounds_are_not_fixed() -> None:
    _, script = case(
        "Rotation: follow the pass.\nEvery 2 rounds: Base to Far, Far to Base.\nEvery 1 minutes: Far to Base."
    )
    assert len(script.rotations) == 3
    assert len(fixed_rotations(script)) == 1
