"""How long each act of a round takes at an age on a surface; must not know who plays it, nor when it starts.

An act falls into stages, each a fixed number of seconds: the preparation of the ball (a control, a dead ball put
right), a flight, the follow-through, a movement with its turn. The recursion adds them up.
"""

from dataclasses import dataclass, replace
from itertools import pairwise
from math import pi

from conewright.model.exercise import Event, Exercise, Pace, Place, SupplyKind, TargetKind, Verb, Weight
from conewright.model.figures import Figures
from conewright.model.geometry import Point, angle_between_rad, distance_m, heading_rad, path_length_m
from conewright.model.round import Played, Round
from conewright.model.unroll import KICKS
from conewright.rehearsal.rolling import Ground, ground_on, pass_release_m_s, roll
from conewright.rehearsal.running import run_time_s, turn_cost_s

FREE_TOUCHES_UNDER = 11  # below this age touches are free where nothing is said, from it on two (the usual default)
CORNER_RAD = pi / 4  # a sharper corner on the way costs a turn, a gentler bend is run through
HAND_OVER_M = 2.0  # whoever brings the one ball plays it this far to the head of the line
STEP_UP_M = 1.0  # the next in line steps up this far when the head has left


@dataclass(frozen=True, slots=True, kw_only=True)
class Pupil:
    """The figures of a child of one age, read once: speeds m/s, times s."""

    age: int
    top_m_s: float
    tau_s: float
    walk_m_s: float
    jog_m_s: float
    run_m_s: float
    with_ball_share: float
    reaction_s: float
    turn_180_s: float
    follow_through_s: float
    short_m_s: float
    firm_m_s: float
    arrival_m_s: float
    shot_m_s: float
    throw_m_s: float
    control_s: float
    extra_touch_s: float
    first_time_s: float
    dead_ball_s: float
    keeper_ready_s: float
    touches_per_m: float
    touch_gap_s: float
    ground: Ground

    def run_s(self, length_m: float, *, pace: Pace, with_ball: bool = False) -> float:
        """Seconds for a movement from standing."""
        if pace is Pace.WALK:
            return length_m / self.walk_m_s
        return run_time_s(
            length_m, top_m_s=self.top_m_s, tau_s=self.tau_s, cap_m_s=self.cap_m_s(pace, with_ball=with_ball)
        )

    def cap_m_s(self, pace: Pace, *, with_ball: bool) -> float:
        """The speed a movement grows to."""
        cap = {Pace.WALK: self.walk_m_s, Pace.JOG: self.jog_m_s, Pace.RUN: self.run_m_s, Pace.SPRINT: self.top_m_s}[
            pace
        ]
        return cap * self.with_ball_share if with_ball and pace in (Pace.RUN, Pace.SPRINT) else cap


def pupil(figures: Figures, *, age: int, surface: str) -> Pupil:
    """The figures of an age on a surface."""

    def at(key: str) -> float:
        return figures.at(key, age=age)

    return Pupil(
        age=age,
        top_m_s=at("top_speed_m_s"),
        tau_s=at("speed_time_constant_s"),
        walk_m_s=at("walk_m_s"),
        jog_m_s=at("jog_m_s"),
        run_m_s=at("top_speed_m_s") * figures.value("purposeful_run_share"),
        with_ball_share=at("with_ball_share"),
        reaction_s=at("reaction_known_s"),
        turn_180_s=at("turn_180_s"),
        follow_through_s=at("follow_through_s"),
        short_m_s=at("pass_short_m_s"),
        firm_m_s=at("pass_firm_m_s"),
        arrival_m_s=at("pass_arrival_m_s"),
        shot_m_s=at("kick_max_m_s") * figures.value("shot_share"),
        throw_m_s=at("throw_m_s"),
        control_s=at("control_time_s"),
        extra_touch_s=figures.value("extra_touch_s"),
        first_time_s=figures.value("first_time_s"),
        dead_ball_s=at("dead_ball_s"),
        keeper_ready_s=at("keeper_ready_s"),
        touches_per_m=at("dribble_touches_per_m"),
        touch_gap_s=figures.value("touch_gap_s"),
        ground=ground_on(figures, surface),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class TimedAct:
    """An act with its stages in seconds. `prepare_s` counts from the moment the ball is there and the bearer ready."""

    played: Played
    bearer: int
    kick: bool
    moves: bool
    prepare_s: float = 0.0
    flight_s: float = 0.0
    release_m_s: float = 0.0
    turn_s: float = 0.0
    move_s: float = 0.0
    still_s: float = 0.0
    length_m: float = 0.0
    pace: Pace = Pace.RUN
    contacts: float = 0.0
    receiver: int = -1
    ahead: bool = False  # the receiver meets it on the run
    met_there: bool = False  # the receiver is on the way to that spot already: the ball is timed to come as it does
    meets: bool = False  # this movement is the run that meets the ball of the act before it
    needs_ball: bool = False
    group: int = -1  # acts of one step that start together share a group
    leaves: bool = False  # the bearer goes away from its place with it
    last: bool = False  # the bearer's last act of the round


@dataclass(frozen=True, slots=True, kw_only=True)
class TimedRound:
    """A round with the seconds of every act."""

    round: Round
    acts: tuple[TimedAct, ...]


def touches_of(played: Played, age: int) -> int:
    """How many touches a control and release take: what the text says, else free (three) for the young, two later."""
    act = played.act
    if act is not None and act.manner.touches is not None:
        return act.manner.touches
    if played.verb is Verb.SET_BACK:
        return 1
    return 3 if age < FREE_TOUCHES_UNDER else 2


def control_for(touches: int, child: Pupil) -> float:
    """Seconds from a ball's arrival to its release with so many touches."""
    if touches <= 1:
        return child.first_time_s
    return child.control_s + child.extra_touch_s * (touches - 2)


def time_round(exercise: Exercise, round_: Round, child: Pupil) -> TimedRound:
    """The stages of every act of a round; `ends when` is left to the recursion."""
    came: dict[int, str] = {}
    groups = _groups(round_)
    timed = []
    gone: set[int] = set()
    for index, played in enumerate(round_.acts):
        one = _timed(exercise, round_, played, child, came.get(played.bearer, ""))
        leaves = one.moves and played.bearer not in gone and _goes_away(exercise, round_, played)
        if leaves:
            gone.add(played.bearer)
        meets = index > 0 and _met(round_, index)
        met_there = one.ahead and not (index + 1 < len(round_.acts) and _met(round_, index + 1))
        last = not any(later.bearer == played.bearer for later in round_.acts[index + 1 :])
        group = groups.get(index, -1)
        timed.append(replace(one, group=group, leaves=leaves, meets=meets, met_there=met_there, last=last))
        _note_ball(came, played)
    return TimedRound(round=round_, acts=tuple(timed))


def _met(round_: Round, index: int) -> bool:
    """True where a movement is the run onto the ball of the act before it."""
    before, played = round_.acts[index - 1], round_.acts[index]
    implied = played.implied and played.verb is Verb.RUN and not played.way_back
    return implied and before.receiver == played.bearer and bool(before.flight)


def _goes_away(exercise: Exercise, round_: Round, played: Played) -> bool:
    """True where the movement is not a feint that comes back to the own place."""
    if played.verb in (Verb.CHECK, Verb.SHOW):
        return False
    place = exercise.place(round_.bearers[played.bearer].place)
    return place is None or path_length_m(played.path) > 0


def _note_ball(came: dict[int, str], played: Played) -> None:
    if played.verb is Verb.TURN:
        came[played.bearer] = "turned"
    elif played.verb in (Verb.DRIBBLE, Verb.FETCH):
        came[played.bearer] = "carried"
    elif played.verb in KICKS:
        came[played.bearer] = ""
    if played.receiver is not None and played.flight:
        target = played.act.target if played.act else None
        ahead = target is not None and target.kind is TargetKind.AHEAD
        came[played.receiver] = "met" if ahead else "received"


def _timed(exercise: Exercise, round_: Round, played: Played, child: Pupil, came: str) -> TimedAct:
    place = exercise.place(played.takes_from)
    if played.verb in KICKS:
        return _kick(exercise, played, child, came, place)
    if len(played.path) > 1 or played.verb in (Verb.RUN, Verb.DRIBBLE, Verb.CHECK, Verb.SHOW, Verb.FETCH):
        return _move(played, child, came, place)
    return _still(round_, played, child, came, place)


def _prepare(played: Played, child: Pupil, came: str, place: Place | None) -> tuple[float, float]:
    """Seconds of preparation and contacts before the ball goes."""
    if place is not None:
        supply = place.supply.kind
        if supply is SupplyKind.EACH:
            return 0.0, 1.0
        if supply is SupplyKind.STOCK:
            return child.dead_ball_s, 1.0
        touches = touches_of(played, child.age)
        return control_for(touches, child), float(touches)
    if came in ("turned", "carried"):
        return 0.0, 1.0
    touches = touches_of(played, child.age)
    if came == "met" and played.act is not None and played.act.manner.touches is None:
        touches = 1
    return control_for(touches, child), float(touches)


def _kick(exercise: Exercise, played: Played, child: Pupil, came: str, place: Place | None) -> TimedAct:
    prepare_s, contacts = _prepare(played, child, came, place)
    by_hand = played.verb is Verb.THROW
    flight_s, release = flight_time(played, child)
    target = played.act.target if played.act else None
    return TimedAct(
        played=played,
        bearer=played.bearer,
        kick=True,
        moves=False,
        prepare_s=prepare_s,
        flight_s=flight_s,
        release_m_s=release,
        still_s=child.follow_through_s,
        contacts=0.0 if by_hand else contacts,
        receiver=played.receiver if played.receiver is not None else -1,
        ahead=target is not None and target.kind is TargetKind.AHEAD,
        needs_ball=True,
    )


def flight_time(played: Played, child: Pupil) -> tuple[float, float]:
    """Seconds a ball is on its way and its speed at release, m/s.

    A pass leaves at the age's usual speed, or as fast as it must to arrive at the age's arrival speed, at most firm.
    A ball that would stop short is struck harder, up to the age's shot; what no child of the age can reach takes
    what a shot takes to its stop, and the pass length check says so.
    """
    length = path_length_m(played.flight)
    if played.verb is Verb.THROW:
        return length / child.throw_m_s, child.throw_m_s
    firm = played.act is not None and played.act.manner.weight is Weight.FIRM
    if played.verb is Verb.SHOOT:
        release = child.shot_m_s
    elif firm:
        release = child.firm_m_s
    else:
        release = pass_release_m_s(
            length, short=child.short_m_s, firm=child.firm_m_s, arrival=child.arrival_m_s, ground=child.ground
        )
    for speed in (release, child.firm_m_s, child.shot_m_s):
        ball = roll(speed, child.ground)
        seconds = ball.travel_time_s(length)
        if seconds is not None:
            return seconds, speed
    last = roll(child.shot_m_s, child.ground)
    return last.stop_time_s, child.shot_m_s


def pace_of(played: Played) -> Pace:
    """How fast a movement is: what is written; the implied way round to the next place is jogged, else a run."""
    if played.act is not None and played.act.manner.pace is not None:
        return played.act.manner.pace
    direct = len(played.path) == 2
    return Pace.JOG if played.implied and played.way_back and not played.with_ball and not direct else Pace.RUN


def _move(played: Played, child: Pupil, came: str, place: Place | None) -> TimedAct:
    pace = pace_of(played)
    length = path_length_m(played.path)
    turn = 0.0
    if length > 0:
        first = heading_rad(played.path[0], played.path[1])
        turn = turn_cost_s(angle_between_rad(played.heading, first), child.turn_180_s)
        turn += sum(_corner_s(before, at, after, child) for before, at, after in _triples(played))
    if played.verb is Verb.CHECK or played.verb is Verb.SHOW:
        turn = turn_cost_s(pi, child.turn_180_s) if length > 0 and played.verb is Verb.SHOW else 0.0
    dribbled = played.verb is Verb.DRIBBLE or played.with_ball
    prepare_s, contacts = (0.0, 0.0)
    if dribbled and came == "received":
        touches = played.act.manner.touches if played.act else None
        prepare_s, contacts = control_for(touches or 2, child), 1.0
    elif dribbled and came == "met":
        prepare_s, contacts = child.first_time_s, 1.0
    elif dribbled and place is not None and place.supply.kind is SupplyKind.STOCK:
        prepare_s = child.dead_ball_s
    move_s = child.run_s(length, pace=pace, with_ball=dribbled)
    if dribbled:
        contacts += min(child.touches_per_m * length, move_s / child.touch_gap_s)
    return TimedAct(
        played=played,
        bearer=played.bearer,
        kick=False,
        moves=True,
        prepare_s=prepare_s,
        turn_s=turn,
        move_s=move_s,
        length_m=length,
        pace=pace,
        contacts=contacts,
        needs_ball=dribbled,
    )


def _triples(played: Played) -> list[tuple[Point, Point, Point]]:
    legs = list(pairwise(played.path))
    return [(first[0], first[1], second[1]) for first, second in pairwise(legs)]


def _corner_s(before: Point, at: Point, after: Point, child: Pupil) -> float:
    if distance_m(before, at) == 0 or distance_m(at, after) == 0:
        return 0.0
    angle = angle_between_rad(heading_rad(before, at), heading_rad(at, after))
    return turn_cost_s(angle, child.turn_180_s) if angle > CORNER_RAD else 0.0


def _still(round_: Round, played: Played, child: Pupil, came: str, place: Place | None) -> TimedAct:
    act = played.act
    seconds = act.seconds if act is not None and act.seconds is not None else 0.0
    prepare_s, contacts = (0.0, 0.0)
    if played.verb is Verb.TURN:
        prepare_s, contacts = _prepare(played, child, came, place)
        contacts = max(1.0, contacts - 1)
        seconds = turn_cost_s(angle_between_rad(played.heading, _looks_next(round_, played)), child.turn_180_s)
    return TimedAct(
        played=played,
        bearer=played.bearer,
        kick=False,
        moves=False,
        prepare_s=prepare_s,
        still_s=seconds,
        contacts=contacts,
        needs_ball=played.verb is Verb.TURN,
    )


def _looks_next(round_: Round, played: Played) -> float:
    later = (act for act in round_.acts[played.number + 1 :] if act.bearer == played.bearer)
    following = next(later, None)
    if following is None:
        return played.heading
    way = following.flight or following.path
    return heading_rad(way[0], way[1]) if len(way) > 1 else played.heading


def _groups(round_: Round) -> dict[int, int]:
    """Acts of one step by different people that start together: act number -> group number.

    Left out: acts with a start of their own, implied ones, and those that need a ball or a receipt of the same step.
    """
    found: dict[int, int] = {}
    steps = sorted({act.step for act in round_.acts})
    for step in steps:
        members: dict[int, int] = {}
        receiving: set[int] = set()
        for act in round_.acts:
            if act.step != step:
                continue
            free = not act.implied and act.start is None and act.bearer not in receiving
            if free and act.bearer not in members:
                members[act.bearer] = act.number
            if act.receiver is not None:
                receiving.add(act.receiver)
        if len(members) > 1:
            found.update(dict.fromkeys(members.values(), step))
    return found


def starts_by_event(event: Event) -> bool:
    """True where somebody has to see the event and react to it."""
    return event not in (Event.STEP, Event.TOGETHER, Event.CALL, Event.READY)
