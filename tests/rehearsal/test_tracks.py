"""Tracks of every scripted exercise on the shelf: nobody jumps, nobody is too fast, the ball is where it is played."""

from bisect import bisect_right
from functools import cache
from itertools import pairwise
from math import hypot

import pytest

from conewright.model.exercise import Exercise
from conewright.model.layout import layout_for
from conewright.model.rehearsed import Knot, Rehearsal
from conewright.rehearsal.durations import pupil
from conewright.rehearsal.rehearse import rehearse
from conewright.rehearsal.tracks import TRACK_S
from conewright.store.figures import load_figures
from conewright.store.shelf import load_shelf

FIGURES = load_figures()
SCRIPTED = tuple(
    exercise
    for exercise in load_shelf()
    if exercise.script is not None and not any(step.contest for step in exercise.script.steps)
)
FASTEST = 1.02 * pupil(FIGURES, age=11, surface="grass_club").top_m_s
REACH_M = 1.2  # a ball is played within a step of its passer
NEAR_M = 1.6  # a line steps up while a ball comes: its receiver is within that


@cache
def rehearsed(name: str, size: int) -> Rehearsal:
    exercise = next(exercise for exercise in SCRIPTED if exercise.name == name)
    result, problems = rehearse(exercise, size, figures=FIGURES, age=11, surface="grass_club")
    assert not problems, problems
    assert isinstance(result, Rehearsal)
    return result


def sizes_of(exercise: Exercise) -> set[int]:
    """Every size of a copy that some head count gives."""
    most = max([exercise.numbers.most, *(form.most for form in exercise.forms)])
    layouts = (layout_for(exercise, n) for n in range(exercise.numbers.least, most + 1))
    return {size for layout in layouts if layout for size in layout.sizes}


CASES = [(exercise.name, size) for exercise in SCRIPTED for size in sorted(sizes_of(exercise))]


def where(knots: tuple[Knot, ...], time_s: float) -> tuple[float, float]:
    at = bisect_right(knots, time_s, key=lambda knot: knot.time_s)
    if at == 0:
        return knots[0][1:]
    before, after = knots[at - 1], knots[min(at, len(knots) - 1)]
    span = after.time_s - before.time_s
    share = (time_s - before.time_s) / span if span > 0 else 0.0
    return before.x_m + (after.x_m - before.x_m) * share, before.y_m + (after.y_m - before.y_m) * share


def gap(first: tuple[float, float], second: tuple[float, float]) -> float:
    return hypot(first[0] - second[0], first[1] - second[1])


@pytest.mark.parametrize(("name", "size"), CASES)
def test_people_move_on_without_jumps(name: str, size: int) -> None:
    for track in rehearsed(name, size).people:
        assert track.knots[0].time_s == 0
        for before, after in pairwise(track.knots):
            assert after.time_s > before.time_s
            speed = gap(before[1:], after[1:]) / (after.time_s - before.time_s)
            assert speed <= FASTEST, (track.person, before, after)


@pytest.mark.parametrize(("name", "size"), CASES)
def test_spells_cover_the_minute_without_gap(name: str, size: int) -> None:
    for track in rehearsed(name, size).people:
        assert track.spells[0].start_s == 0
        assert track.spells[-1].end_s == pytest.approx(TRACK_S)
        for before, after in pairwise(track.spells):
            assert after.start_s == pytest.approx(before.end_s)


@pytest.mark.parametrize(("name", "size"), CASES)
def test_balls_are_played_where_the_passer_and_met_where_the_receiver_is(name: str, size: int) -> None:
    found = rehearsed(name, size)
    people = {track.person: track.knots for track in found.people}
    for ball in found.balls:
        for flight in ball.flights:
            start, end = flight.knots[0], flight.knots[-1]
            if start.time_s < TRACK_S and flight.passer in people:
                assert gap(where(people[flight.passer], start.time_s), start[1:]) < REACH_M
            if end.time_s < TRACK_S and flight.receiver in people:
                assert gap(where(people[flight.receiver], end.time_s), end[1:]) < NEAR_M


@pytest.mark.parametrize(("name", "size"), CASES)
def test_figures_are_sane(name: str, size: int) -> None:
    found = rehearsed(name, size)
    assert found.cycle_s > 0
    assert 0 <= found.waiting_share <= 1
    assert 0 < found.rolling_share <= 1
    assert len(found.children) == size
    starts = found.round_starts_s
    assert all(after >= before for before, after in pairwise(starts))
    long_run = (starts[-1] - starts[len(starts) // 2]) / (len(starts) - 1 - len(starts) // 2)
    assert found.cycle_s == pytest.approx(long_run, rel=0.12)
