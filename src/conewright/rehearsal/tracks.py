"""Where every person and ball is at every moment of the first minute; must not know what the numbers mean."""

from bisect import bisect_left
from dataclasses import dataclass, field
from itertools import pairwise
from math import hypot

from conewright.model.exercise import Exercise, SupplyKind, Verb, Weight
from conewright.model.geometry import Point, ahead, along, distance_m, path_length_m, toward
from conewright.model.ground import LINE_STEP_M, line_heading_rad
from conewright.model.rehearsed import BallTrack, Flight, FlightKind, Knot, PersonTrack
from conewright.rehearsal.durations import TimedAct, pace_of
from conewright.rehearsal.recursion import Done, Play
from conewright.rehearsal.rolling import roll
from conewright.rehearsal.spells import Stretch, act_of, filled

TRACK_S = 60.0  # tracks cover the first minute: the round repeats itself long before
EARLY_M = (0.3, 0.8, 1.6, 3.0)  # knots while a run is still gathering speed, metres from its start
FLIGHT_PARTS = 6
Course = list[tuple[float, float, float]]  # seconds or share from the start, metres across, metres up


@dataclass(slots=True, kw_only=True)
class _Line:
    """Who stands at a place as time goes by."""

    heading: float
    at: Point
    people: list[int] = field(default_factory=list)

    def spot(self, rank: int) -> Point:
        return self.at if rank == 0 else toward(self.at, self.heading, LINE_STEP_M * rank)


def people_tracks(
    play: Play, spells: dict[int, list[Stretch]], *, until_s: float = TRACK_S
) -> tuple[tuple[PersonTrack, ...], tuple[int, str]]:
    """Tracks of all children with their stretches as spells, and the longest line seen (how many, where)."""
    courses: dict[int, Course] = {}
    knots: dict[int, list[Knot]] = {person: [] for person in range(len(play.homes))}
    lines = {
        place.name: _Line(heading=line_heading_rad(play.exercise, place), at=place.at) for place in play.exercise.places
    }
    for person, home in enumerate(play.homes):
        stood = lines[home]
        knots[person].append(Knot(0.0, *stood.spot(len(stood.people))))
        stood.people.append(person)
    longest = max(((len(line.people), name) for name, line in lines.items()), default=(0, ""), key=lambda e: e[0])
    for time_s, kind, done, act in _events(play, until_s):
        if done.person < 0:
            continue
        if kind == 0:
            _leave_lines(lines, knots, done.person, time_s, play.step_up_s)
            _run(play, done, act, knots[done.person], courses)
        elif kind == 1:
            name = _joins(play, done, act)
            line = lines.get(name)
            if line is not None and done.person not in line.people:
                line.people.append(done.person)
                rank = len(line.people) - 1
                if rank:
                    _to_the_end(knots[done.person], line.spot(rank))
                if len(line.people) > longest[0]:
                    longest = (len(line.people), name)
    return (
        tuple(
            PersonTrack(
                person=person,
                place=play.homes[person],
                knots=_in_order(track, until_s),
                spells=filled(spells[person], until_s),
            )
            for person, track in knots.items()
        ),
        longest,
    )


def _events(play: Play, until_s: float) -> list[tuple[float, int, Done, TimedAct | None]]:
    """Starts (0) and ends (1) of movements, in time; an arrival before a departure of the same moment."""
    events: list[tuple[float, int, Done, TimedAct | None]] = []
    for done in play.done:
        act = act_of(play, done)
        if done.start_s > until_s or (act is not None and not act.moves):
            continue
        events.append((done.start_s, 0, done, act))
        events.append((done.end_s, 1, done, act))
    events.sort(key=lambda event: (event[0], -event[1], event[2].round, event[2].act))
    return events


def _joins(play: Play, done: Done, act: TimedAct | None) -> str:
    if act is None:
        return play.extra_acts[done.extra][3]
    place = act.played.to_place
    bearers = play.rounds[play.side_of[done.round]].round.bearers
    return place if bearers[act.bearer].ends_at == place else ""


def _to_the_end(track: list[Knot], spot: Point) -> None:
    """The last stretch leads to the end of the line instead of its head, at the same speed."""
    last = track.pop()
    before = track[-1] if track else last
    came = hypot(last.x_m - before.x_m, last.y_m - before.y_m)
    goes = hypot(spot.x_m - before.x_m, spot.y_m - before.y_m)
    seconds = last.time_s - before.time_s
    later = seconds * max(goes / came, 1.0) if came > 0 else seconds
    track.append(Knot(before.time_s + max(later, seconds), *spot))


def _leave_lines(
    lines: dict[str, _Line], knots: dict[int, list[Knot]], person: int, time_s: float, step_up_s: float
) -> None:
    """The leaver is out of its line; everybody behind steps up."""
    for line in lines.values():
        if person not in line.people:
            continue
        rank = line.people.index(person)
        line.people.remove(person)
        for behind in range(rank, len(line.people)):
            _step_up(knots[line.people[behind]], time_s, step_up_s, line.spot(behind))
        return


def _step_up(track: list[Knot], time_s: float, step_up_s: float, spot: Point) -> None:
    """To a spot further up the line; whoever is still on the way to the last one goes on to this one."""
    arrives_s = max(time_s + step_up_s, track[-1].time_s)
    bound = None
    while len(track) > 1 and track[-1].time_s > time_s:
        bound = track.pop()
    before = track[-1]
    if bound is None or bound.time_s <= before.time_s:
        _stand_until(track, time_s)
    else:
        share = (time_s - before.time_s) / (bound.time_s - before.time_s)
        x_m, y_m = (here + (there - here) * share for here, there in zip(before[1:], bound[1:], strict=True))
        track.append(Knot(time_s, x_m, y_m))
    track.append(Knot(arrives_s, *spot))


def _stand_until(track: list[Knot], time_s: float) -> None:
    last = track[-1]
    if last.time_s < time_s:
        track.append(Knot(time_s, last.x_m, last.y_m))


def _run(play: Play, done: Done, act: TimedAct | None, track: list[Knot], courses: dict[int, Course]) -> None:
    _stand_until(track, done.start_s)
    known = id(act) if act else -1 - done.extra
    if known not in courses:
        courses[known] = _course(play, done, act)
    for seconds, x_m, y_m in courses[known]:
        track.append(Knot(min(done.start_s + seconds, done.end_s), x_m, y_m))


def _course(play: Play, done: Done, act: TimedAct | None) -> Course:
    """Where a movement is how long after it starts: the same in every round."""
    played = act.played if act else play.extra_acts[done.extra][0]
    turn_s = act.turn_s if act else 0.0
    pace = act.pace if act else pace_of(played)
    course = [(turn_s, *played.path[0])] if turn_s else []
    for length, (x_m, y_m) in _stations(played.path):
        seconds = play.child.run_s(length, pace=pace, with_ball=bool(act and act.needs_ball))
        course.append((turn_s + seconds, x_m, y_m))
    return course


def _stations(path: tuple[Point, ...]) -> list[tuple[float, Point]]:
    """Lengths along a path where a knot is wanted: while gathering speed, and at each bend."""
    stations, walked = [], 0.0
    for start, end in pairwise(path):
        piece = distance_m(start, end)
        for early in EARLY_M:
            if walked < early < walked + piece:
                stations.append((early, ahead(start, end, early - walked)))
        walked += piece
        stations.append((walked, end))
    return stations


def _in_order(track: list[Knot], until_s: float) -> tuple[Knot, ...]:
    """Knots sorted by time, none twice; the last stands until the end."""
    ordered = sorted(track, key=lambda knot: knot.time_s)
    kept = [
        knot for knot, after in zip(ordered, [*ordered[1:], None], strict=True) if after is None or after[0] != knot[0]
    ]
    if kept and kept[-1].time_s < until_s:
        kept.append(Knot(until_s, kept[-1].x_m, kept[-1].y_m))
    return tuple(kept)


def ball_tracks(play: Play, people: tuple[PersonTrack, ...], *, until_s: float = TRACK_S) -> tuple[BallTrack, ...]:
    """Tracks of all balls: with their holders, in flight, or lying where they were left."""
    events: dict[int, list[Done]] = {ball: [] for ball in range(len(play.balls))}
    for done in play.done:
        if done.ball >= 0 and done.start_s <= until_s and _moves_ball(play, done):
            events[done.ball].append(done)
    return tuple(
        _ball_track(play, ball, sorted(found, key=lambda done: done.start_s), people, until_s)
        for ball, found in events.items()
    )


def _moves_ball(play: Play, done: Done) -> bool:
    act = act_of(play, done)
    return act is not None and (act.kick or act.moves)


def _ball_track(
    play: Play, ball: int, events: list[Done], people: tuple[PersonTrack, ...], until_s: float
) -> BallTrack:
    ways: dict[int, Course] = {}
    name, holder = play.balls[ball]
    first = people[holder].knots[0] if 0 <= holder < len(people) else Knot(0.0, *_place_at(play.exercise, name))
    knots = [Knot(0.0, first.x_m, first.y_m)]
    flights: list[Flight] = []
    for done in events:
        act = act_of(play, done)
        if act is None:
            continue
        if 0 <= holder < len(people):
            knots += _between(people[holder].knots, knots[-1].time_s, done.start_s)
        if act.kick:
            if id(act) not in ways:
                ways[id(act)] = _way(play, act)
            flight = _flight(act, done, ways[id(act)])
            _stand_until(knots, flight.knots[0].time_s)
            knots += flight.knots
            flights.append(flight)
            holder = done.receiver
        else:
            _stand_until(knots, done.start_s)
            if 0 <= done.person < len(people):
                begun = done.start_s if act.played.verb is not Verb.FETCH else done.end_s
                knots += _between(people[done.person].knots, begun, done.end_s)
            holder = done.person
            lies = _lies_at(play, done, act)
            if lies is not None:
                knots.append(Knot(done.end_s, *lies))
                holder = -1
    if 0 <= holder < len(people):
        knots += _between(people[holder].knots, knots[-1].time_s, until_s)
    return BallTrack(ball=ball, knots=_in_order(knots, until_s), flights=tuple(flights))


def _lies_at(play: Play, done: Done, act: TimedAct) -> Point | None:
    """Where a ball lies that is brought to a place that uses balls; None where its bearer keeps it."""
    place = play.exercise.place(act.played.to_place)
    if place is None or not act.needs_ball or place.supply.kind not in (SupplyKind.BALL, SupplyKind.STOCK):
        return None
    bearer = play.rounds[play.side_of[done.round]].round.bearers[act.bearer]
    last = act.played.homeward and bearer.ends_at == place.name
    return place.at if last or act.played.leaves_ball else None


def _between(knots: tuple[Knot, ...], after_s: float, before_s: float) -> list[Knot]:
    first = bisect_left(knots, after_s, key=lambda knot: knot.time_s)
    found = []
    for knot in knots[first:]:
        if knot.time_s > before_s:
            break
        found.append(knot)
    return found


def _way(play: Play, act: TimedAct) -> Course:
    """Where a ball is after which share of its flight: the same in every round."""
    path = act.played.flight
    length = path_length_m(path)
    rolled = roll(act.release_m_s, play.child.ground)
    shares = [part / FLIGHT_PARTS for part in range(FLIGHT_PARTS)]
    by_hand = act.played.verb is Verb.THROW
    gone = [length * share if by_hand else min(rolled.distance_at(act.flight_s * share), length) for share in shares]
    way = [(share, *along(path, metres)) for share, metres in zip(shares, gone, strict=True)]
    return [*way, (1.0, *path[-1])]


def _flight(act: TimedAct, done: Done, way: Course) -> Flight:
    played = act.played
    lasts_s = done.end_s - done.start_s  # longer than the flight where it is weighted to meet a runner
    knots = tuple(Knot(done.start_s + lasts_s * share, x_m, y_m) for share, x_m, y_m in way)
    firm = played.act is not None and played.act.manner.weight is Weight.FIRM
    kind = FlightKind.FIRM if firm else FlightKind.PASS
    kind = FlightKind.SHOT if played.verb is Verb.SHOOT else FlightKind.HAND if played.verb is Verb.THROW else kind
    return Flight(
        kind=kind,
        act=played.number,
        step=played.step,
        round=done.round,
        passer=done.person,
        receiver=done.receiver,
        knots=knots,
    )


def _place_at(exercise: Exercise, name: str) -> Point:
    place = exercise.place(name)
    return place.at if place else Point(0.0, 0.0)
