"""What a rehearsal found, as data: the rounds a minute follow from the cycle."""

from dataclasses import replace

import pytest

from conewright.model.rehearsed import Knot, Rehearsal
from conewright.notation.reader import read
from conewright.rehearsal.rehearse import rehearse
from conewright.store.figures import load_figures

TEXT = """exercise: Case
kind: dribbling
for 2 to 8 players, under 8 to under 16
Home at 0, 0 is a line with the ball.
Each round:
1. Home dribbles to 0, 8, then dribbles home.
"""


def rehearsal() -> Rehearsal:
    exercise, _ = read(TEXT)
    assert exercise is not None
    result, _ = rehearse(exercise, 4, figures=load_figures(), age=11, surface="grass_club")
    assert isinstance(result, Rehearsal)
    return result


def test_rounds_a_minute_are_sixty_over_the_cycle() -> None:
    found = rehearsal()
    assert found.rounds_a_minute * found.cycle_s == pytest.approx(60)
    assert replace(found, cycle_s=0.0).rounds_a_minute == 0


def test_a_rehearsal_is_a_value() -> None:
    assert rehearsal() == rehearsal()
    assert hash(rehearsal()) == hash(rehearsal())
    assert Knot(1.0, 2.0, 3.0) < Knot(1.5, 0.0, 0.0)
