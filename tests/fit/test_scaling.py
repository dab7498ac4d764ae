"""A scaled exercise has every distance scaled, and its rehearsal is laid back over the written one."""

import pytest

from conewright.fit.scaling import laid_back, scaled
from conewright.model.geometry import Point
from conewright.model.rehearsed import Rehearsal
from conewright.rehearsal.rehearse import rehearse
from tests.fit.evenings import FIGURES, written

PATTERN = """exercise: There and back
for 4 to 8 players, under 9 to under 14
space: 8 by 14 m
Near at 0, 0 is a line with the ball.
Far at 0, 10 is a line.

Each round:
1. Near dribbles to 0, 2, passes to Far, then jogs to the end of Far round the outside.
2. Far passes to Near, then jogs to the end of Near round the outside.
"""


def played(scale: float) -> Rehearsal:
    exercise = scaled(written(PATTERN), scale)
    rehearsed, _ = rehearse(exercise, 6, figures=FIGURES, age=11, surface="grass_club")
    assert isinstance(rehearsed, Rehearsal)
    return rehearsed


def test_places_points_and_boxes_move_and_the_stated_ground_is_left_out() -> None:
    exercise = written(PATTERN)
    smaller = scaled(exercise, 0.7)
    assert [place.at for place in smaller.places] == [Point(0, 0), Point(0, 7)]
    assert smaller.script is not None
    target = smaller.script.steps[0].acts[0].target
    assert target is not None
    assert target.at == Point(0, pytest.approx(1.4))
    assert smaller.space is None
    assert scaled(exercise, 1.0) is exercise


def test_contest_and_open_play_are_scaled() -> None:
    box = written(
        "exercise: Box\nfor 4 to 8 players, under 9 to under 14\n\nOpen play in 20 by 10 m: Yellow against Blue.\n"
    )
    play = scaled(box, 0.5).open_play
    assert play is not None
    assert (play.width_m, play.depth_m) == (10, 5)


def test_a_shorter_way_takes_less_time() -> None:
    assert played(0.7).cycle_s < played(1.0).cycle_s


def test_the_tracks_of_a_scaled_rehearsal_lie_over_the_written_exercise() -> None:
    small = played(0.7)
    back = laid_back(small, 0.7)
    assert isinstance(back, Rehearsal)
    assert back.cycle_s == small.cycle_s
    for before, after in zip(small.people, back.people, strict=True):
        assert all(
            (knot.time_s, knot.x_m, knot.y_m)
            == (old.time_s, pytest.approx(old.x_m / 0.7), pytest.approx(old.y_m / 0.7))
            for old, knot in zip(before.knots, after.knots, strict=True)
        )
    assert max(knot.y_m for track in back.balls for knot in track.knots) == pytest.approx(10, abs=1.5)
    assert [f.kind for track in back.balls for f in track.flights] == [f.kind for t in small.balls for f in t.flights]
