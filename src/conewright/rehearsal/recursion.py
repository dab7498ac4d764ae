"""Moments of a fixed script, round after round: a recursion over sums and maxima; must not know coach's words.

Every moment is a node: either the latest of some moments (a start waits for all it needs) or one moment plus a fixed
number of seconds (a flight, a control, a run). Each node remembers which moment decided it, so the chain that decides
the pace can be walked back from the end. Lines and stocks are the tokens: a role binds to whoever came first to its
place, a ball is taken in the order in which balls came.
"""

from dataclasses import dataclass, field
from math import lcm
from operator import itemgetter
from typing import NamedTuple

from conewright.model.exercise import Event, Exercise, Pace, Place, Rotation, Script, SideOrder, SupplyKind, Verb
from conewright.model.geometry import Point, path_length_m
from conewright.model.ground import outside_path
from conewright.model.layout import standing
from conewright.model.problem import Problem
from conewright.model.round import Played, Round
from conewright.rehearsal.durations import (
    HAND_OVER_M,
    STEP_UP_M,
    Pupil,
    TimedAct,
    TimedRound,
    starts_by_event,
    time_round,
)
from conewright.rehearsal.moments import Moment, Moments, Signal, after, later, seen, settled
from conewright.rehearsal.rolling import roll
from conewright.rehearsal.stalls import never_happens, no_ball_left, no_time, nobody_there
from conewright.rehearsal.tokens import Balls, Lines
from conewright.rehearsal.triggers import Sight

LONG_READY_S = -1000.0  # who stands at a place at the start has stood there for long, balls set
MOST_ROUNDS = 600
LEAST_ROUNDS = 12
SETTLING_ROUNDS = 180  # so long a play is followed for the long run, where rounds do not repeat themselves sooner
CHANGING = " changing to "  # the stage of a change of places, between the two
_time = itemgetter(0)
SAME_S = 1e-9  # moments this near are one
STILL_ROUNDS = 40  # so many rounds in which no time passes mean that none ever will


class Done(NamedTuple):
    """One act in one round: times in seconds; `ball` and `receiver` are -1 where there is none."""

    round: int
    act: int
    person: int
    ball: int
    ready_s: float  # the ball is there and the bearer too
    start_s: float  # it starts (a kick: the ball leaves)
    end_s: float  # over: the ball is there, the movement ends
    receiver: int
    extra: int  # -1, else the number of the rotation that comes every so many rounds


@dataclass(slots=True, kw_only=True)
class Play:
    """A script being played: real state with a life of one rehearsal. `done`, `starts` and the nodes are the result."""

    exercise: Exercise
    script: Script
    rounds: tuple[TimedRound, ...]
    child: Pupil
    size: int
    bout_s: float
    moments: Moments = field(default_factory=Moments)
    lines: Lines = field(default_factory=Lines)
    supply: Balls = field(default_factory=Balls)
    done: list[Done] = field(default_factory=list)
    extra_acts: list[tuple[Played, int, float, str]] = field(default_factory=list)
    side_of: list[int] = field(default_factory=list)  # of each round
    starts: list[Moment] = field(default_factory=list)
    ends: list[Moment] = field(default_factory=list)
    problems: list[Problem] = field(default_factory=list)
    homes: list[str] = field(default_factory=list)
    balls: list[tuple[str, int]] = field(default_factory=list)  # first place and first holder (-1: lies there)
    roles: list[tuple[int, int, str]] = field(default_factory=list)  # round, person, place
    round: int = 0
    now: TimedRound = field(init=False)
    sight: Sight = field(init=False)
    bound: dict[int, int] = field(default_factory=dict)
    free: dict[int, Moment] = field(default_factory=dict)
    stood: dict[int, Moment] = field(default_factory=dict)  # since when a bearer only calls or waits: it sets its ball
    ball_at: dict[int, Moment] = field(default_factory=dict)
    loose: list[tuple[Moment, int, Point]] = field(default_factory=list)
    group_start: dict[int, Moment] = field(default_factory=dict)
    ball_ends: list[Moment] = field(default_factory=list)  # of acts that keep the round running
    act_ends: list[Moment] = field(default_factory=list)
    released: Moment = field(default_factory=lambda: Moment(0.0, -1))
    places: dict[str, Place] = field(init=False)
    watched: bool = field(init=False)
    rise_s: float = field(init=False)  # how long a keeper takes to stand again, nought without one
    paths: dict[tuple[str, str], tuple[Point, ...]] = field(default_factory=dict)
    step_up_s: float = 0.0
    hand_over_s: float = 0.0

    def __post_init__(self) -> None:
        self.places = {place.name: place for place in self.exercise.places}
        self.rise_s = self.child.keeper_ready_s if any(place.keeper for place in self.exercise.places) else 0.0
        waits = any(act.start for step in self.script.steps for act in step.acts)
        self.watched = waits or bool(self.script.next_round and self.script.next_round.trigger)

    # --- the start ------------------------------------------------------------------------------------------------

    def set_out(self) -> None:
        """Everybody to the own place, balls where they belong."""
        self.step_up_s = self.child.run_s(STEP_UP_M, pace=Pace.RUN)
        soft = roll(self.child.short_m_s, self.child.ground).travel_time_s(HAND_OVER_M)
        self.hand_over_s = soft or 0.0
        origin = self.moments.node(LONG_READY_S, -1, -1, "start")
        counts = standing(self.exercise, self.size)
        for place in self.exercise.places:
            for rank in range(counts.get(place.name, 0) if not place.adult else 1):
                person = len(self.homes) if not place.adult else -1 - len(self.lines.waiting)
                if not place.adult:
                    self.homes.append(place.name)
                self.lines.join(place.name, origin, person, stands=rank == 0)
                if place.supply.kind is SupplyKind.EACH:
                    self.supply.held[person] = len(self.balls)
                    self.balls.append((place.name, person))
            for _ in range(place.supply.count if place.supply.kind is not SupplyKind.EACH else 0):
                self.supply.lay(place.name, origin, len(self.balls))
                self.balls.append((place.name, -1))

    # --- rounds ---------------------------------------------------------------------------------------------------

    def run(self) -> None:
        """Play rounds until the bout is over and enough of them are there to know the long run."""
        self.set_out()
        next_start = self.moments.node(0.0, -1, -1, "round")
        still = 0
        while self.round < MOST_ROUNDS and (next_start.time_s <= self.bout_s or not self._known()):
            self.starts.append(next_start)
            before = next_start.time_s
            if not self._play_round(next_start):
                return
            next_start = self._next_start()
            still = still + 1 if next_start.time_s <= before + 1e-9 else 0
            if still > STILL_ROUNDS:
                self.problems.append(no_time(self.script))
                return
            self.round += 1
            self.moments.round = self.round

    def _known(self) -> bool:
        """True where enough rounds are there to know the long run: a few, and until they repeat themselves."""
        if self.round < LEAST_ROUNDS * self.period():
            return False
        by_clock = any(rotation.every_s is not None for rotation in self.script.rotations)
        return by_clock or self.round >= SETTLING_ROUNDS or settled(self.starts, self.period())

    def period(self) -> int:
        """After how many rounds the same acts come again: the sides in turn, and rotations every so many rounds."""
        return lcm(len(self.rounds), *(rotation.every_rounds for rotation in self.script.rotations))

    def _side(self, start_s: float) -> int:
        sides = self.script.sides
        if sides is None:
            return 0
        if sides.order is SideOrder.HALF_TIME:
            return min(int(2 * start_s / self.bout_s), len(self.rounds) - 1) if self.bout_s else 0
        return self.round % len(self.rounds)

    def _play_round(self, start: Moment) -> bool:
        self.side_of.append(self._side(start.time_s))
        self.now = self.rounds[self.side_of[-1]]
        self.bound, self.free, self.stood, self.ball_at, self.loose, self.group_start = {}, {}, {}, {}, [], {}
        self.sight = Sight(
            exercise=self.exercise,
            child=self.child,
            moments=self.moments,
            start=start,
            places=dict(self.now.round.places),
            watched=self.watched,
        )
        self.ball_ends, self.act_ends = [], []
        for act in self.now.acts:
            if not self._play(act, start):
                return False
        self._finish_round(start)
        return True

    def _finish_round(self, start: Moment) -> None:
        for bearer in self.now.round.bearers:
            person = self.bound.get(bearer.number)
            if person is None or not bearer.stays:
                continue
            free = self.free[bearer.number]
            self.lines.join(bearer.place, free, person, stands=True)
            place = self.places.get(bearer.place)
            kind = place.supply.kind if place else SupplyKind.NONE
            if bearer.ends_with_ball and person in self.supply.held and kind in (SupplyKind.BALL, SupplyKind.STOCK):
                ball = self.ball_at[bearer.number]
                self.supply.lay(bearer.place, ball, self.supply.held.pop(person))
        end = max(self.ball_ends or self.act_ends or [start], key=_time)
        self.ends.append(end)
        self.sight.end = end
        for number, rotation in enumerate(self.script.rotations):
            if self._is_due(rotation, end.time_s):
                self._rotate(rotation, end, number)

    def _is_due(self, rotation: Rotation, end_s: float) -> bool:
        if rotation.every_s is not None:
            before = self.ends[-2].time_s if len(self.ends) > 1 else 0.0
            return int(end_s / rotation.every_s) > int(before / rotation.every_s)
        return rotation.every_rounds > 1 and (self.round + 1) % rotation.every_rounds == 0

    def _rotate(self, rotation: Rotation, end: Moment, number: int) -> None:
        taken = []
        for move in rotation.moves:
            head = self.lines.take_head(move.who)
            if head is not None:
                taken.append((move, head))
        for move, head in taken:
            path = self._path_between(move.who, move.to)
            if not path:
                continue
            seconds = self.child.run_s(path_length_m(path), pace=Pace.JOG)
            ready = later(end, Moment(head.time_s, head.node))
            there = self.moments.plus(ready, seconds, -1, f"{move.who}{CHANGING}{move.to}")
            self.lines.left[move.who] = ready
            self.lines.join(move.to, there, head.person)
            played = Played(number=-1, step=0, bearer=-1, verb=Verb.RUN, path=path, implied=True, way_back=True)
            self.extra_acts.append((played, head.person, seconds, move.to))
            extra = len(self.extra_acts) - 1
            went_s, there_s = ready.time_s, there.time_s
            self.done.append(Done(self.round, -1, head.person, -1, went_s, went_s, there_s, -1, extra))

    def _path_between(self, name: str, goal: str) -> tuple[Point, ...]:
        """The way round the outside from one place to another; empty where one of them is not there."""
        if (name, goal) not in self.paths:
            start, end = self.places.get(name), self.places.get(goal)
            self.paths[name, goal] = outside_path(self.exercise, start.at, end.at) if start and end else ()
        return self.paths[name, goal]

    def _next_start(self) -> Moment:
        next_round = self.script.next_round
        trigger = next_round.trigger if next_round else None
        flying = next_round.in_flight if next_round and next_round.in_flight else (2 if trigger else 1)
        shown = self.sight.when(trigger) if trigger else None
        if shown is None:
            shown = self.ends[-1] if trigger is None or trigger.event is not Event.TOGETHER else self.starts[-1]
        moments = [shown]
        if self.round + 1 - flying >= 0:
            moments.append(self.ends[self.round + 1 - flying])
        moments.append(self.starts[-1])
        shown = max(moments, key=_time)
        start = self.moments.node(shown.time_s, shown.node, -1, "round")
        self.moments.move_to_round(start, self.round + 1)
        return start

    # --- who ------------------------------------------------------------------------------------------------------

    def _bind(self, number: int, act: TimedAct) -> bool:
        if number in self.bound:
            return True
        bearer = self.now.round.bearers[number]
        head = self.lines.take_head(bearer.place)
        if head is None:
            self._absent(bearer.place, bearer.role, act.played)
            return False
        self.bound[number] = head.person
        came = Moment(head.time_s, head.node)
        gone = self.lines.left.get(bearer.place)
        if gone is None or head.stands:
            ready = came
        else:
            stage = f"the next at {bearer.place} stepping up"
            ready = self.moments.latest([seen(came), after(gone, self.step_up_s, -1, stage)])
        self.free[number] = ready
        self.ball_at[number] = ready
        self.sight.saw(Event.READY, bearer.place, ready)
        if head.person >= 0:
            self.roles.append((self.round, head.person, bearer.place))
        return True

    def _absent(self, name: str, role: str, played: Played) -> None:
        number = self.round + 1
        self.problems.append(nobody_there(self.exercise, self.size, number=number, name=name, role=role, played=played))

    # --- acts -----------------------------------------------------------------------------------------------------

    def _play(self, act: TimedAct, start: Moment) -> bool:
        if not self._bind(act.bearer, act) or (act.receiver >= 0 and not self._bind(act.receiver, act)):
            return False
        ball = self._take(act) if act.needs_ball else -1
        if ball is None:
            return False
        ready = self._ready(act, start)
        begun = self._begin(act, start, ready)
        if act.kick:
            self._kick(act, ready, begun, ball)
        elif act.meets:
            self._meet(act)
        elif act.moves:
            self._move(act, ready, begun, ball)
        else:
            self._still(act, ready, begun, ball)
        return True

    def _take(self, act: TimedAct) -> int | None:
        """The ball the bearer uses; one from the place's supply where it has none. None: a problem was found."""
        person = self.bound[act.bearer]
        if person in self.supply.held:
            return self.supply.held[person]
        name = act.played.takes_from or self.now.round.bearers[act.bearer].place
        taken = self.supply.take(name)
        if taken is None:
            self.problems.append(no_ball_left(number=self.round + 1, name=name, played=act.played))
            return None
        ball, since = taken
        self.supply.held[person] = ball
        stood = self.stood.get(act.bearer, self.free[act.bearer])
        self.ball_at[act.bearer] = later(stood, since)
        return ball

    def _ready(self, act: TimedAct, start: Moment) -> Moment:
        """When the bearer and its ball are prepared for the act."""
        number = act.played.number
        if not act.needs_ball:
            return self.free[act.bearer]
        ball_at, free = self.ball_at[act.bearer], self.free[act.bearer]
        prepared = self.moments.plus(ball_at, act.prepare_s, number, "preparing") if act.prepare_s else ball_at
        return prepared if prepared.time_s >= free.time_s else free

    def _begin(self, act: TimedAct, start: Moment, ready: Moment) -> Moment:
        if act.group >= 0:
            if act.group not in self.group_start:
                self.group_start[act.group] = self._together(act, start)
            return later(ready, self.group_start[act.group])
        return self.moments.latest([seen(ready), *self._signals(act, start)])

    def _signals(self, act: TimedAct, start: Moment) -> list[Signal]:
        """What an act waits for beside its own readiness."""
        number = act.played.number
        signals = []
        if not act.played.implied:
            no_wait = act.played.verb is Verb.CALL or self._sees_it_coming(act, start)
            signals.append(seen(start) if no_wait else self._react(start, number))
        if act.played.start is not None:
            shown = self.sight.when(act.played.start)
            if shown is None:
                self._unseen(act.played)
            elif starts_by_event(act.played.start.event):
                signals.append(self._react(shown, number))
            else:
                signals.append(seen(shown))
        if act.kick and act.receiver >= 0 and not act.ahead and act.receiver != act.bearer:
            signals.append(seen(self.free[act.receiver]))
        if act.met_there and act.receiver >= 0:
            signals.append(after(self.free[act.receiver], -act.flight_s, number, "timing it to the run"))
        return signals

    def _sees_it_coming(self, act: TimedAct, start: Moment) -> bool:
        """True where the ball to be played on comes no earlier than the start: whoever waits for it need not react."""
        return act.kick and self.ball_at[act.bearer].time_s >= start.time_s - SAME_S

    def _react(self, moment: Moment, act: int) -> Signal:
        return after(moment, self.child.reaction_s, act, "reacting")

    def _together(self, act: TimedAct, start: Moment) -> Moment:
        signals: list[Signal] = []
        for other in (other for other in self.now.acts if other.group == act.group):
            if not self._bind(other.bearer, other) or (other.receiver >= 0 and not self._bind(other.receiver, other)):
                continue
            if other.needs_ball and self._take(other) is None:
                continue
            signals += [seen(self._ready(other, start)), *self._signals(other, start)]
        return self.moments.latest(signals or [seen(start)])

    def _kick(self, act: TimedAct, ready: Moment, begun: Moment, ball: int) -> None:
        number, person = act.played.number, self.bound[act.bearer]
        bearer = self.now.round.bearers[act.bearer]
        there = self.moments.plus(begun, act.flight_s, number, "flight")
        self.supply.held.pop(person, None)
        self.released = begun
        self.sight.saw(Event.RELEASED, bearer.place, begun)
        if act.played.verb is Verb.SHOOT:
            self.sight.saw(Event.SHOT, bearer.place, begun)
            self.sight.saw(Event.OVER, bearer.place, self.moments.plus(there, self.rise_s, number, "the keeper rising"))
        receiver = self.bound[act.receiver] if act.receiver >= 0 else -1
        self.free[act.bearer] = self.moments.plus(begun, act.still_s, number, "follow-through")
        self.stood.pop(act.bearer, None)
        if act.receiver >= 0:
            self.ball_at[act.receiver] = there
            self.supply.held[receiver] = ball
            self._controlled(act.receiver, there)
            if not act.ahead:
                self.free[act.receiver] = later(self.free[act.receiver], there)
        else:
            self.loose.append((there, ball, act.played.flight[-1]))
        self._step(act, there)
        self.done.append(Done(self.round, number, person, ball, ready.time_s, begun.time_s, there.time_s, receiver, -1))

    def _controlled(self, number: int, moment: Moment) -> None:
        bearer = self.now.round.bearers[number]
        self.sight.saw(Event.CONTROLLED, bearer.place, moment)
        self.sight.saw(Event.BACK, bearer.place, moment)

    def _meet(self, act: TimedAct) -> None:
        """The run onto a ball played ahead: it starts as the ball leaves, and both are there when the later is."""
        number, person = act.played.number, self.bound[act.bearer]
        kick = self.done[-1]
        go = self.moments.latest([seen(self.free[act.bearer]), self._react(self.released, number)])
        run = self.moments.plus(go, act.turn_s + act.move_s, number, "moving")
        met = later(self.ball_at[act.bearer], run)
        self.ball_at[act.bearer] = self.free[act.bearer] = met
        self._controlled(act.bearer, met)
        self.done[-1] = kick._replace(end_s=met.time_s)
        self._step(act, met)
        self._leave(act, go)
        self.done.append(Done(self.round, number, person, -1, go.time_s, go.time_s, met.time_s, -1, -1))

    def _move(self, act: TimedAct, ready: Moment, begun: Moment, ball: int) -> None:
        number, person = act.played.number, self.bound[act.bearer]
        bearer = self.now.round.bearers[act.bearer]
        if act.played.verb is Verb.FETCH:
            ball, begun = self._fetch(act, begun)
        end = self.moments.plus(begun, act.turn_s + act.move_s, number, "moving")
        self.free[act.bearer] = end
        self.stood.pop(act.bearer, None)
        self._leave(act, begun)
        self.sight.moved(bearer.place, begun, end, act)
        if act.needs_ball or act.played.verb is Verb.FETCH:
            self.ball_at[act.bearer] = end
            self.supply.held[person] = ball
        if not act.played.way_back or act.needs_ball:
            self._step(act, end)
        self._arrive(act, end, person)
        self.done.append(Done(self.round, number, person, ball, ready.time_s, begun.time_s, end.time_s, -1, -1))

    def _fetch(self, act: TimedAct, begun: Moment) -> tuple[int, Moment]:
        """Fetching starts at once but the ball must have come to rest when the fetcher is there."""
        if not self.loose:
            return -1, begun
        lies, ball, _ = self.loose.pop()
        early = after(lies, -(act.turn_s + act.move_s), act.played.number, "the ball coming to rest")
        return ball, self.moments.latest([seen(begun), early])

    def _still(self, act: TimedAct, ready: Moment, begun: Moment, ball: int) -> None:
        number, person, turns = act.played.number, self.bound[act.bearer], act.played.verb is Verb.TURN
        end = self.moments.plus(begun, act.still_s, number, "turning" if turns else "doing")
        self.stood.setdefault(act.bearer, self.free[act.bearer])
        self.free[act.bearer] = end
        if turns:
            self.ball_at[act.bearer] = end
        self.sight.saw(Event.STARTED, self.now.round.bearers[act.bearer].place, begun)
        self._step(act, end)
        self.done.append(Done(self.round, number, person, ball, ready.time_s, begun.time_s, end.time_s, -1, -1))

    def _leave(self, act: TimedAct, begun: Moment) -> None:
        if act.leaves:
            self.lines.left[self.now.round.bearers[act.bearer].place] = begun

    def _arrive(self, act: TimedAct, end: Moment, person: int) -> None:
        name = act.played.to_place
        place = self.places.get(name)
        bearer = self.now.round.bearers[act.bearer]
        if place is None:
            return
        joins = act.last and bearer.ends_at == name
        waiting = self.lines.anybody_at(name)
        if joins:
            self.lines.join(name, end, person)
        if not joins and not act.played.leaves_ball:
            return
        if person in self.supply.held and place.supply.kind in (SupplyKind.BALL, SupplyKind.STOCK):
            ball = end
            if place.supply.kind is SupplyKind.BALL and waiting:
                ball = self.moments.plus(end, self.hand_over_s, act.played.number, "handing the ball over")
            self.supply.lay(name, ball, self.supply.held.pop(person))
            self._step(act, ball)
        self.sight.saw(Event.BACK, name, end)

    def _step(self, act: TimedAct, moment: Moment) -> None:
        played = act.played
        if played.implied and (played.way_back or played.verb is Verb.FETCH):
            return  # nobody has written it: the step is done without
        if act.kick or act.needs_ball or act.meets:
            self.ball_ends.append(moment)
        else:
            self.act_ends.append(moment)
        self.sight.step_ends(played.step, moment)

    def _unseen(self, played: Played) -> None:
        if not any(problem.code == "never-happens" for problem in self.problems):
            self.problems.append(never_happens(played))


def played_out(exercise: Exercise, rounds: tuple[Round, ...], child: Pupil, *, size: int, bout_s: float) -> Play | None:
    """The script played for a bout, or None where there is no script to play."""
    if exercise.script is None:
        return None
    timed = tuple(time_round(exercise, round_, child) for round_ in rounds)
    play = Play(exercise=exercise, script=exercise.script, rounds=timed, child=child, size=size, bout_s=bout_s)
    play.run()
    return play
