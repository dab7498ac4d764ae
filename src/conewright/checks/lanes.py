"""Shots that fly past somebody who is in their way, from the exact tracks; reads what was rehearsed."""

from bisect import bisect_left
from dataclasses import dataclass
from itertools import pairwise
from operator import itemgetter

from conewright.checks.case import AfterCheck, Case, look
from conewright.model.geometry import ORIGIN, Point, distance_m, heading_rad, nearest_on_segment, toward
from conewright.model.problem import Problem
from conewright.model.rehearsed import Flight, FlightKind, Knot, PersonTrack, Rehearsal

BESIDE_M = 1.5  # so near the shooter nobody is in front of the ball yet
KEEPS_M = 2.5  # whoever is so near where the shot goes keeps the goal: there to be shot at
ASIDE_M = 2.0  # so far beside the line they are proposed to stand
QUARTER = heading_rad(ORIGIN, Point(0.0, 1.0))

_time = itemgetter(0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Passing:
    """How near a shot comes to somebody, metres, and where that one is then."""

    flight: Flight
    gap_m: float
    where: Point


def shots_past(case: Case, rehearsal: Rehearsal) -> tuple[Problem, ...]:
    """The nearest that each shot comes to anybody but its shooter, where that is within the gap of two lanes."""
    reach_m = case.figures.value("lane_gap_m")
    nearest: dict[int, Passing] = {}
    for flight in (flight for ball in rehearsal.balls for flight in ball.flights if flight.kind is FlightKind.SHOT):
        for person in rehearsal.people:
            passing = _passing(flight, person) if person.person != flight.passer else None
            known = nearest.get(flight.act)
            if passing is not None and passing.gap_m < (known.gap_m if known else reach_m):
                nearest[flight.act] = passing
    return tuple(_finding(case, nearest[act]) for act in sorted(nearest))


def _passing(flight: Flight, person: PersonTrack) -> Passing | None:
    """The nearest they come while the ball flies, between a step in front of the shooter and who keeps the goal."""
    start, end = Point(*flight.knots[0][1:]), Point(*flight.knots[-1][1:])
    best: Passing | None = None
    spots = [at(person.knots, knot.time_s) for knot in flight.knots]
    for (before, after), (here, there) in zip(pairwise(flight.knots), pairwise(spots), strict=True):
        if distance_m(start, Point(*after[1:])) < BESIDE_M or distance_m(here, end) < KEEPS_M:
            continue
        first = Point(before.x_m - here.x_m, before.y_m - here.y_m)
        last = Point(after.x_m - there.x_m, after.y_m - there.y_m)
        gap_m = distance_m(ORIGIN, nearest_on_segment(ORIGIN, first, last))
        if best is None or gap_m < best.gap_m:
            best = Passing(flight=flight, gap_m=gap_m, where=here)
    return best


def at(knots: tuple[Knot, ...], time_s: float) -> Point:
    """Where a track is at a moment."""
    after = bisect_left(knots, time_s, key=_time)
    if after in (0, len(knots)):
        return Point(*knots[0 if after == 0 else -1][1:])
    before, to = knots[after - 1], knots[after]
    share = (time_s - before.time_s) / (to.time_s - before.time_s)
    return Point(before.x_m + (to.x_m - before.x_m) * share, before.y_m + (to.y_m - before.y_m) * share)


def _finding(case: Case, passing: Passing) -> Problem:
    flight, where = passing.flight, passing.where
    near = next((place.name for place in case.exercise.places if distance_m(place.at, where) < BESIDE_M), "")
    whom = f"somebody at {near}" if near else f"somebody near {where.x_m:.0f}, {where.y_m:.0f}"
    start, end = Point(*flight.knots[0][1:]), Point(*flight.knots[-1][1:])
    clear = toward(nearest_on_segment(where, start, end), heading_rad(start, end) - QUARTER, ASIDE_M)
    acts = case.rounds[0].acts
    return look(
        "shot-past-somebody",
        f"The shot in step {flight.step} flies {passing.gap_m:.1f} m past {whom}.",
        acts[flight.act].span if flight.act < len(acts) else None,
        f"Let them stand beside the line of the shot, near {clear.x_m:.0f}, {clear.y_m:.0f}, or shoot from the side.",
    )


AFTER_CHECKS = (
    AfterCheck(
        codes=("shot-past-somebody",),
        why="A child who stands in the line of a shot is hit, or the shooter holds back.",
        run=shots_past,
    ),
)
