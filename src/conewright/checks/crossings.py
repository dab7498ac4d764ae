"""Shots and firm passes across a way back, from the exact tracks; reads what was rehearsed."""

from bisect import bisect_left, bisect_right
from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise
from operator import itemgetter

from conewright.checks.case import AfterCheck, Case, look, mend
from conewright.checks.lanes import at
from conewright.model.exercise import Event, Exercise, NextRound, Trigger
from conewright.model.geometry import Point, distance_m, nearest_on_segment
from conewright.model.problem import Problem, Span, is_clean
from conewright.model.rehearsed import Flight, FlightKind, Knot, PersonTrack, Rehearsal, Spell
from conewright.model.round import Played
from conewright.model.unroll import rounds_of
from conewright.rehearsal.rehearse import rehearse

_time = itemgetter(0)
LOOSE = 3.0  # a shot across a way back is told up to so many times the gap in time: not every round is clean
LIES_S = 0.1  # a ball counts as lying there this much before its last moment: times are sums
TRIED_S = 30.0  # so long a remedy is tried: the tracks of a minute are more than a round needs
JOINING_M = 1.5  # at the very end of a way back a child stands in line beside the passer: that is no crossing


@dataclass(frozen=True, slots=True, kw_only=True)
class Meeting:
    """The nearest a struck ball and a child on its way back come: metres and seconds apart, where, in which round."""

    flight: Flight
    spell: Spell
    gap_m: float
    gap_s: float
    where: Point


def shots_across(case: Case, rehearsal: Rehearsal) -> tuple[Problem, ...]:
    """The worst meeting of each shot or firm pass with a way back."""
    worst = _worst(case, rehearsal)
    return tuple(_finding(case, worst[act]) for act in sorted(worst))


def _worst(case: Case, rehearsal: Rehearsal) -> dict[int, Meeting]:
    """The meeting of each act that is worth telling: a firm pass within the gap in time, a shot within three of it."""
    reach_m = case.figures.value("lane_gap_m")
    reach_s = case.figures.value("lane_gap_s")
    loose_s = {FlightKind.SHOT: LOOSE * reach_s, FlightKind.FIRM: reach_s}
    worst: dict[int, Meeting] = {}
    flights = [flight for ball in rehearsal.balls for flight in ball.flights if flight.kind in loose_s]
    ways_back = [(person, spell) for person in rehearsal.people for spell in person.spells if spell.way_back]
    for flight in flights:
        for person, spell in ways_back:
            meeting = _meeting(flight, person, spell, reach_m=reach_m, loose_s=loose_s[flight.kind])
            known = worst.get(flight.act)
            if meeting is not None and (known is None or meeting.gap_s < known.gap_s):
                worst[flight.act] = meeting
    return worst


def _meeting(flight: Flight, person: PersonTrack, spell: Spell, *, reach_m: float, loose_s: float) -> Meeting | None:
    """The nearest a ball and a way back come that are under way at one time, give or take; None beyond reach."""
    start, end = flight.knots[0], flight.knots[-1]
    if spell.end_s < start.time_s - loose_s or spell.start_s > end.time_s + loose_s:
        return None
    if person.person in (flight.passer, flight.receiver):
        return None
    nearest = _nearest(start, end, person.knots, spell, reach_m)
    if nearest is None or nearest[0] > reach_m or nearest[1] > loose_s or _after_it_lies(end, spell, nearest[2]):
        return None
    gap_m, gap_s, where = nearest
    return Meeting(flight=flight, spell=spell, gap_m=gap_m, gap_s=gap_s, where=where)


def _after_it_lies(end: Knot, spell: Spell, where: Point) -> bool:
    """True where a way back only begins at the ball once it lies there: whoever fetched it brings it home."""
    return spell.start_s >= end.time_s - LIES_S and distance_m(where, Point(end.x_m, end.y_m)) < JOINING_M


def _nearest(
    start: Knot, end: Knot, knots: tuple[Knot, ...], spell: Spell, reach_m: float
) -> tuple[float, float, Point] | None:
    """Where the ball's line and the child's way come nearest: metres apart, seconds apart, the spot."""
    ball_start, ball_end = Point(start.x_m, start.y_m), Point(end.x_m, end.y_m)
    left, right = min(start.x_m, end.x_m) - reach_m, max(start.x_m, end.x_m) + reach_m
    bottom, top = min(start.y_m, end.y_m) - reach_m, max(start.y_m, end.y_m) + reach_m
    length = distance_m(ball_start, ball_end)
    last = at(knots, spell.end_s)
    best: tuple[float, float, Point] | None = None
    first, stop = bisect_right(knots, spell.start_s, key=_time), bisect_left(knots, spell.end_s, key=_time)
    for before, after in pairwise(knots[max(first - 1, 0) : stop + 1]):
        if (before.x_m < left and after.x_m < left) or (before.x_m > right and after.x_m > right):
            continue
        if (before.y_m < bottom and after.y_m < bottom) or (before.y_m > top and after.y_m > top):
            continue
        spot, near = _closest(ball_start, ball_end, Point(before.x_m, before.y_m), Point(after.x_m, after.y_m))
        if distance_m(near, last) < JOINING_M:
            continue
        gap_m = distance_m(spot, near)
        whole = distance_m(Point(before.x_m, before.y_m), Point(after.x_m, after.y_m))
        share = distance_m(Point(before.x_m, before.y_m), near) / whole if whole else 0.0
        there_s = before.time_s + (after.time_s - before.time_s) * share
        ball_share = distance_m(ball_start, spot) / length if length else 0.0
        gap_s = abs(start.time_s + (end.time_s - start.time_s) * ball_share - there_s)
        if best is None or (gap_m, gap_s) < best[:2]:
            best = (gap_m, gap_s, near)
    return best


def _closest(a: Point, b: Point, c: Point, d: Point) -> tuple[Point, Point]:
    """The nearest points of two straight pieces: where they cross, else from one of the four ends."""
    crossing = _crossing(a, b, c, d)
    if crossing is not None:
        return crossing, crossing
    pairs = (
        (a, nearest_on_segment(a, c, d)),
        (b, nearest_on_segment(b, c, d)),
        (nearest_on_segment(c, a, b), c),
        (nearest_on_segment(d, a, b), d),
    )
    return min(pairs, key=lambda pair: distance_m(*pair))


def _crossing(a: Point, b: Point, c: Point, d: Point) -> Point | None:
    across = (b.x_m - a.x_m) * (d.y_m - c.y_m) - (b.y_m - a.y_m) * (d.x_m - c.x_m)
    if abs(across) < 1e-12:
        return None
    t = ((c.x_m - a.x_m) * (d.y_m - c.y_m) - (c.y_m - a.y_m) * (d.x_m - c.x_m)) / across
    u = ((c.x_m - a.x_m) * (b.y_m - a.y_m) - (c.y_m - a.y_m) * (b.x_m - a.x_m)) / across
    if 0 <= t <= 1 and 0 <= u <= 1:
        return Point(a.x_m + (b.x_m - a.x_m) * t, a.y_m + (b.y_m - a.y_m) * t)
    return None


def _finding(case: Case, meeting: Meeting) -> Problem:
    flight, spell = meeting.flight, meeting.spell
    shot = flight.kind is FlightKind.SHOT
    together = meeting.gap_s <= case.figures.value("lane_gap_s")
    whose = f"the way back of step {spell.step}" if spell.step else "the way to the next place"
    message = (
        f"The {flight.kind.value} in step {flight.step} crosses {whose} near {meeting.where.x_m:.0f}, "
        f"{meeting.where.y_m:.0f}, {meeting.gap_s:.1f} s apart."
    )
    make = mend if shot and together else look
    code = "shot-across-way-back" if shot else "pass-across-way-back"
    return make(code, message, _span(case, flight.act), _remedy(case, meeting))


def _remedy(case: Case, meeting: Meeting) -> str:
    """The first of a few ways to keep the lane clear that does it when it is rehearsed."""
    tried = ((words, own) for words, own in _ways_clear(case, meeting) if own != case.exercise)
    clear = next((words for words, own in tried if _is_clear(case, own, meeting.flight.act)), "")
    return clear or "Let them go home another way, over a point on the far side of the ball's line."


def _ways_clear(case: Case, meeting: Meeting) -> Iterator[tuple[str, Exercise]]:
    acts, bearers = case.rounds[0].acts, case.rounds[0].bearers
    comes = next((act for act in acts if act.homeward and act.step == meeting.spell.step), acts[meeting.flight.act])
    kicker, comer = bearers[acts[meeting.flight.act].bearer].role, bearers[comes.bearer].role
    outside = _outside(case.exercise, comes)
    yield f'Send {comer} round the outside: "... round the outside".', outside
    if meeting.flight.kind is FlightKind.SHOT:
        over = Trigger(event=Event.OVER, who=kicker)
        yield f'Start later: "The next round starts when {kicker}\'s shot is over."', _later(case.exercise, over)
    halfway = Trigger(event=Event.HALFWAY, who=comer)
    words = f'Send {comer} round the outside, and start later: "The next round starts when {comer} is halfway home."'
    yield words, _later(outside, halfway)
    home = Trigger(event=Event.ARRIVED, who=comer)
    yield f'Start later: "The next round starts when {comer} is home."', _later(case.exercise, home)


def _outside(exercise: Exercise, comes: Played) -> Exercise:
    """The exercise with one written way back going round the outside."""
    script = exercise.script
    if script is None:
        return exercise
    steps = tuple(
        replace(
            step,
            acts=tuple(
                replace(act, manner=replace(act.manner, outside=True)) if act is comes.act else act for act in step.acts
            ),
        )
        for step in script.steps
    )
    return replace(exercise, script=replace(script, steps=steps))


def _later(exercise: Exercise, trigger: Trigger) -> Exercise:
    """The exercise with another start of the next round."""
    script = exercise.script
    if script is None:
        return exercise
    said = script.next_round or NextRound()
    return replace(exercise, script=replace(script, next_round=replace(said, trigger=trigger)))


def _is_clear(case: Case, own: Exercise, act: int) -> bool:
    result, met = rehearse(own, case.size, figures=case.figures, age=case.age, surface=case.surface, bout_s=TRIED_S)
    changed = replace(case, exercise=own, rounds=rounds_of(own)[0])
    return isinstance(result, Rehearsal) and is_clean(met) and act not in _worst(changed, result)


def _span(case: Case, act: int) -> Span | None:
    acts = case.rounds[0].acts
    return acts[act].span if 0 <= act < len(acts) else None


AFTER_CHECKS = (
    AfterCheck(
        codes=("shot-across-way-back", "pass-across-way-back"),
        why="A child that walks back through the shooting line is hit sooner or later.",
        run=shots_across,
    ),
)
