"""An exercise's script unrolled into one round with everything implied made plain; must not know of time or drawing.

The round is walked in the order of the text. A role binds at the first act or receipt that names it; once its bearer
has done its last written act and has gone to join a place, the same word means the next child at that place.
What the text leaves unsaid is put in: the rotation after a bearer's last act, the run that meets a ball played
ahead, fetching one's own shot.
"""

from dataclasses import dataclass, field, replace

from conewright.model.exercise import (
    Act,
    Exercise,
    Holds,
    Place,
    Script,
    Step,
    SupplyKind,
    Target,
    TargetKind,
    Verb,
)
from conewright.model.geometry import Point, along, distance_m, heading_rad, path_length_m, toward
from conewright.model.ground import facing_rad, outside_path
from conewright.model.problem import Problem
from conewright.model.rotation import Onward, is_told_on, onward
from conewright.model.round import Played, Round
from conewright.model.unsaid import asked_where, left_standing, no_ball
from conewright.model.ways import ROUND_M, Walker, spot_of, way_of

KICKS = frozenset({Verb.PASS, Verb.SET_BACK, Verb.CROSS, Verb.THROW, Verb.SHOOT})
PAIR = 2  # sides that have a word for the other one
PASSES = KICKS - {Verb.SHOOT}
MOVES = frozenset({Verb.DRIBBLE, Verb.RUN, Verb.CHECK, Verb.SHOW, Verb.FETCH})
Unrolled = tuple[tuple[Round, ...], tuple[Problem, ...]]
LEAD_M = 3.0  # a ball played ahead of somebody meets the run this far along, where the text does not say


def sides_count(exercise: Exercise) -> int:
    """How many rounds it takes until the sides come round again; 1 where no sides take turns."""
    script = exercise.script
    return len(script.sides.places) if script and script.sides and script.sides.places else 1


def unroll(exercise: Exercise, side: int = 0) -> tuple[Round, tuple[Problem, ...]]:
    """The round in which the sides stand at `side` (modulo their number), and what could not be understood of it.

    An exercise without a script gives an empty round.
    """
    script = exercise.script
    if script is None:
        return Round(side=0, places=(), bearers=(), acts=()), ()
    walk = _Walk(exercise=exercise, script=script, side=side % sides_count(exercise))
    contest_step = next((step for step in script.steps if step.contest is not None), None)
    for step in script.steps:
        for act in step.acts:
            walk.act(act, step)
    if contest_step is None:
        walk.finish()
    return (
        Round(
            side=walk.side,
            places=tuple(walk.words.items()),
            bearers=tuple(state.bearer(exercise) for state in walk.states),
            acts=tuple(walk.numbered()),
            contest=contest_step.contest if contest_step else None,
            contest_step=contest_step.number if contest_step else 0,
        ),
        tuple(walk.problems),
    )


def rounds_of(exercise: Exercise) -> Unrolled:
    """One round for each state of the sides, and the problems of all, each told once."""
    unrolled = tuple(unroll(exercise, side) for side in range(sides_count(exercise)))
    problems = tuple(dict.fromkeys(problem for _, found in unrolled for problem in found))
    return tuple(round_ for round_, _ in unrolled), problems


@dataclass(slots=True, kw_only=True)
class _Walk:
    """The walk through one round: real state with a life of one call of `unroll`."""

    exercise: Exercise
    script: Script
    side: int
    states: list[Walker] = field(default_factory=list)
    active: dict[str, int] = field(default_factory=dict)
    acts: list[Played] = field(default_factory=list)
    problems: list[Problem] = field(default_factory=list)
    words: dict[str, str] = field(default_factory=dict)
    last_act: dict[str, Act] = field(default_factory=dict)  # of each role, by the place it stands for
    shots_fetched: bool = False

    def __post_init__(self) -> None:
        sides = self.script.sides
        if sides and sides.places:
            self.words[sides.word] = sides.places[self.side]
        if sides and sides.other and len(sides.places) == PAIR:
            self.words[sides.other] = sides.places[1 - self.side]
        written = [act for step in self.script.steps for act in step.acts]
        self.last_act = {self.place_of(act.who): act for act in written}
        self.shots_fetched = any(act.verb is Verb.FETCH for act in written)

    def place_of(self, word: str) -> str:
        return self.words.get(word, word)

    # --- who ------------------------------------------------------------------------------------------------------

    def bind(self, word: str) -> Walker | None:
        """The bearer a role word means now: the one at work, else a new one from the head of the place."""
        name = self.place_of(word)
        if name in self.active:
            return self.states[self.active[name]]
        place = self.exercise.place(name)
        if place is None:
            return None
        heading = facing_rad(self.exercise, place)
        first = not any(other.place == name for other in self.states)
        state = Walker(number=len(self.states), role=word, place=name, at=place.at, heading=heading, first=first)
        self.states.append(state)
        self.active[name] = state.number
        return state

    # --- what -----------------------------------------------------------------------------------------------------

    def act(self, act: Act, of_step: Step) -> None:
        step = of_step.number
        state = self.bind(act.who)
        if state is None:
            return
        state.last_span = act.span
        if act.verb in KICKS:
            self.kick(state, act, step)
        elif act.verb in MOVES:
            self.move(state, act, step)
        else:
            self.still(state, act, step)
        last = self.last_act[state.place] is act or self.has_joined_another(state, of_step, act)
        if act.verb is Verb.SHOOT and not self.shots_fetched:
            self.fetch_own_shot(state, act, step)
        if last:
            state.done = True
            if state.gone_to or self.leaves_at_once(state):
                self.leave(state, step)
                self.release(state)

    def has_joined_another(self, state: Walker, step: Step, act: Act) -> bool:
        """True where a step ends with the bearer, its ball passed on, gone to another place: the role is free again."""
        elsewhere = state.gone_to not in ("", state.place) and state.kicks > 0 and not state.has_ball
        mine = [other for other in step.acts if self.place_of(other.who) == state.place]
        return elsewhere and mine[-1] is act

    def stays(self, state: Walker) -> bool:
        place = self.exercise.place(state.place)
        return place is not None and (place.adult or place.keeper)

    def release(self, state: Walker) -> None:
        """The role is free: it means whoever was played to at the place meanwhile, else the next from its head."""
        if self.active.get(state.place) == state.number:
            del self.active[state.place]
        heirs = (s for s in self.states if s.place == state.place and not s.done and not s.gone_to and s is not state)
        heir = next(heirs, None)
        if heir is not None:
            self.active.setdefault(state.place, heir.number)

    def next_in_line(self, state: Walker) -> Walker | None:
        """The child behind the bearer at its place; the role stays with the bearer while it has acts to come."""
        if self.stays(state):
            return state
        number = self.active.pop(state.place, None)
        fresh = self.bind(state.place)
        if number is not None:
            self.active[state.place] = number
        return fresh

    def leaves_at_once(self, state: Walker) -> bool:
        """True where the bearer goes straight after its last pass, before anybody can play to it again."""
        set_backs = (act for step in self.script.steps for act in step.acts if act.verb is Verb.SET_BACK)
        coming = [act for act in set_backs if not any(one.act is act for one in self.acts)]
        awaited = any(act.target is None or self.place_of(act.target.name) == state.place for act in coming)
        return not state.has_ball and not awaited and self.onto(state).direct

    def onto(self, state: Walker) -> Onward:
        receiver = self.states[state.last_receiver] if state.last_receiver is not None else None
        return onward(self.exercise, self.script, state, receiver, self.words)

    def needs_ball(self, state: Walker, act: Act, step: int) -> str:
        """Give the bearer a ball from its place's supply; "" where it had one. Without either: a problem."""
        if state.has_ball:
            return ""
        state.has_ball = True
        place = self.exercise.place(state.place)
        if place is not None and place.supply.kind is not SupplyKind.NONE and state.at == place.at:
            return place.name
        self.problems.append(no_ball(state, act, step))
        return state.place

    def kick(self, state: Walker, act: Act, step: int) -> None:
        takes = self.needs_ball(state, act, step)
        state.has_ball = False
        target = act.target or self.back_to(state)
        receiver, spot, lead = self.aim(state, act, target)
        state.kicks += receiver is not state
        flight = self.flight(state, target, spot)
        self.acts.append(
            Played(
                number=0,
                step=step,
                bearer=state.number,
                verb=act.verb,
                path=(state.at,),
                heading=state.heading,
                flight=flight,
                receiver=receiver.number if receiver else None,
                receives_at=spot,
                takes_from=takes,
                act=act,
                start=act.start,
                words=f"{state.role}'s {_noun(act.verb)}",
                span=act.span,
            )
        )
        state.heading = heading_rad(state.at, flight[1])
        state.last_receiver = receiver.number if receiver else None
        if receiver is None:
            return
        if lead:
            self.meet(receiver, spot, step, act)
        receiver.has_ball = True
        receiver.came_from = state.number
        receiver.heading = heading_rad(receiver.at, state.at) if receiver is not state else receiver.heading

    def back_to(self, state: Walker) -> Target | None:
        """ "Sets it back" without a name: to whoever played it."""
        if state.came_from is None:
            return None
        return Target(kind=TargetKind.ROLE, name=self.states[state.came_from].role)

    def aim(self, state: Walker, act: Act, target: Target | None) -> tuple[Walker | None, Point, bool]:
        """Who receives, where, and whether the receiver has to run to meet it."""
        if target is None:
            return None, toward(state.at, state.heading, LEAD_M), False
        thing = self.exercise.thing(self.place_of(target.name))
        if target.kind is TargetKind.THING or (thing is not None and target.kind is not TargetKind.AHEAD):
            at = thing.at if thing else state.at
            if thing is not None and thing.kind.value == "wall" and act.verb is not Verb.SHOOT:
                receiver = self.rebound(state, act)
                return receiver, receiver.at if receiver else at, False
            return None, at, False
        if target.kind is TargetKind.POINT and target.at is not None:
            return self.waiting_at(target.at, state), target.at, False
        receiver = self.passer_named(state, target) or self.bind(target.name)
        if receiver is state and target.kind is TargetKind.ROLE:
            receiver = self.next_in_line(state)
        if receiver is None:
            return None, state.at, False
        if target.kind is TargetKind.AHEAD:
            return receiver, self.meeting_point(receiver, state, target), True
        return receiver, receiver.at, False

    def passer_named(self, state: Walker, target: Target) -> Walker | None:
        """A set back to a role whose bearer has already run on to a spot still means that bearer."""
        if state.came_from is None or target.kind is not TargetKind.ROLE:
            return None
        passer = self.states[state.came_from]
        return passer if passer.place == self.place_of(target.name) and not passer.gone_to else None

    def rebound(self, state: Walker, act: Act) -> Walker | None:
        """Who gets a ball that comes back from a wall: its passer where its next act needs it, else the next one."""
        following = next((other for other in self.to_come(state) if other is not act), None)
        if following is not None and following.verb in KICKS | {Verb.DRIBBLE, Verb.TURN}:
            return state
        return self.next_in_line(state)

    def to_come(self, state: Walker) -> list[Act]:
        """The written acts of the bearer's role that have not been played yet, in the order of the text."""
        played = {id(one.act) for one in self.acts}
        written = (act for step in self.script.steps for act in step.acts)
        return [act for act in written if self.place_of(act.who) == state.place and id(act) not in played]

    def waiting_at(self, spot: Point, passer: Walker) -> Walker | None:
        """A ball played to a point is for whoever stands there."""
        near = (s for s in self.states if s is not passer and not s.gone_to and distance_m(s.at, spot) < ROUND_M)
        return next(near, None)

    def meeting_point(self, receiver: Walker, passer: Walker, target: Target) -> Point:
        if target.at is not None:
            return target.at
        onward = self.next_path(receiver)
        if path_length_m(onward) < LEAD_M:
            return toward(receiver.at, heading_rad(passer.at, receiver.at), LEAD_M)
        return along(onward, LEAD_M)

    def next_path(self, receiver: Walker) -> tuple[Point, ...]:
        """The way of the receiver's next written movement or shot; a single point where it has none."""
        for act in self.to_come(receiver):
            if act.verb in MOVES:
                return self.movement(receiver, act)
            if act.verb is Verb.SHOOT:
                return (receiver.at, self.spot(receiver, act.target) or receiver.at)
        return (receiver.at,)

    def meet(self, receiver: Walker, spot: Point, step: int, act: Act) -> None:
        if distance_m(receiver.at, spot) < 1e-9:
            return
        run = _implied(receiver, step, Verb.RUN, (receiver.at, spot))
        self.acts.append(replace(run, words=f"{receiver.role}'s run onto the ball", span=act.span))
        receiver.heading = heading_rad(receiver.at, spot)
        receiver.at = spot
        receiver.moved = True

    def flight(self, state: Walker, target: Target | None, spot: Point) -> tuple[Point, ...]:
        thing = self.exercise.thing(self.place_of(target.name)) if target else None
        if thing is not None and thing.kind.value == "wall":
            return (state.at, thing.at, spot)
        return (state.at, spot)

    def still(self, state: Walker, act: Act, step: int) -> None:
        takes = self.needs_ball(state, act, step) if act.verb is Verb.TURN else ""
        self.acts.append(
            Played(
                number=0,
                step=step,
                bearer=state.number,
                verb=act.verb,
                path=(state.at,),
                heading=state.heading,
                with_ball=act.verb is Verb.TURN,
                takes_from=takes,
                act=act,
                start=act.start,
                words=f"{state.role}'s {_noun(act.verb)}",
                span=act.span,
            )
        )
        onward = self.next_target(state)
        if act.verb is Verb.TURN and onward is not None and onward != state.at:
            state.heading = heading_rad(state.at, onward)

    def next_target(self, state: Walker) -> Point | None:
        """What the bearer's next written act is aimed at."""
        return next((self.spot(state, act.target) for act in self.to_come(state) if act.target is not None), None)

    # --- where ----------------------------------------------------------------------------------------------------

    def spot(self, state: Walker, target: Target | None) -> Point | None:
        return spot_of(self.exercise, state, target, self.words)

    def movement(self, state: Walker, act: Act) -> tuple[Point, ...]:
        return way_of(self.exercise, state, act, words=self.words, loose_at=self.loose_ball(state))

    def loose_ball(self, state: Walker) -> Point:
        """Where the last ball lies that nobody received."""
        loose = (played.flight[-1] for played in reversed(self.acts) if played.flight and played.receiver is None)
        return next(loose, state.at)

    def move(self, state: Walker, act: Act, step: int) -> None:
        with_ball = act.verb is Verb.DRIBBLE
        if not with_ball:
            self.put_down(state)
        takes = self.needs_ball(state, act, step) if with_ball else ""
        path = self.movement(state, act)
        if act.verb is Verb.FETCH:
            state.has_ball = True
        carries = with_ball or (state.has_ball and act.verb is Verb.RUN)
        target = act.target
        to_place = ""
        if target is not None and target.kind in (TargetKind.PLACE, TargetKind.OWN, TargetKind.ROLE):
            to_place = state.place if target.kind is TargetKind.OWN else self.place_of(target.name)
        heading = state.heading
        had_ball = state.kicks > 0 or state.came_from is not None
        self.step_along(state, path)
        self.acts.append(
            Played(
                number=0,
                step=step,
                bearer=state.number,
                verb=act.verb,
                path=path,
                heading=heading,
                with_ball=carries,
                takes_from=takes,
                way_back=bool(to_place) and not with_ball and had_ball,
                act=act,
                start=act.start,
                to_place=to_place,
                words=f"{state.role}'s {_noun(act.verb)}" + (f" to {to_place}" if to_place else ""),
                span=act.span,
            )
        )
        state.gone_to = to_place if to_place and self.exercise.place(to_place) else ""

    def put_down(self, state: Walker) -> None:
        """Whoever brought a ball to a place that uses balls and goes on without it has left it there."""
        place = self.exercise.place(state.gone_to)
        if not state.has_ball or place is None or place.supply.kind not in (SupplyKind.BALL, SupplyKind.STOCK):
            return
        brought = (at for at, act in enumerate(self.acts) if act.bearer == state.number and act.to_place == place.name)
        at = max(brought, default=-1)
        if at >= 0 and self.acts[at].with_ball:
            self.acts[at] = replace(self.acts[at], leaves_ball=True)
            state.has_ball = False

    def step_along(self, state: Walker, path: tuple[Point, ...]) -> None:
        moved = path_length_m(path) > 1e-9
        if moved:
            state.heading = heading_rad(path[-2], path[-1])
            state.at = path[-1]
            own = self.exercise.place(state.place)
            state.moved = own is None or state.at != own.at

    def fetch_own_shot(self, state: Walker, act: Act, step: int) -> None:
        path = (state.at, self.acts[-1].flight[-1])
        fetch = _implied(state, step, Verb.FETCH, path)
        self.acts.append(replace(fetch, words=f"{state.role} fetching the shot", span=act.span))
        self.step_along(state, path)
        state.has_ball = True

    # --- what follows ---------------------------------------------------------------------------------------------

    def finish(self) -> None:
        """After the last step everybody who still stands about goes where the rotation says."""
        last = self.script.steps[-1].number if self.script.steps else 0
        for state in self.states:
            self.leave(state, last)
        self.problems += left_standing(self.exercise, self.states)

    def leave(self, state: Walker, step: int) -> None:
        """The implied movement to the next place, if the text has not written one."""
        place = self.exercise.place(state.place)
        if place is None or self.stays(state):
            return
        if state.gone_to:
            if not is_told_on(self.script, state, self.words):
                return
            self.put_down(state)
        onto = self.onto(state)
        if onto.guessed and onto.goal:
            self.problems.append(asked_where(state, onto.goal))
        there = self.exercise.place(onto.goal or "")
        if there is None or (there is place and not state.moved and place.holds is Holds.ONE):
            return
        self.go_on(state, there, step, direct=onto.direct)

    def go_on(self, state: Walker, there: Place, step: int, *, direct: bool) -> None:
        path = (state.at, there.at) if direct else outside_path(self.exercise, state.at, there.at)
        last = next((act for act in reversed(self.acts) if act.bearer == state.number), None)
        verb = Verb.DRIBBLE if state.has_ball else Verb.RUN
        played = replace(
            _implied(state, last.step if last else step, verb, path),
            with_ball=state.has_ball,
            way_back=True,
            to_place=there.name,
            words=f"{state.role}'s way to {there.name}",
            span=state.last_span,
        )
        at = max((i for i, act in enumerate(self.acts) if state.number in (act.bearer, act.receiver)), default=-1)
        after = self.acts[at + 1 : at + 2]
        at += bool(after and after[0].implied and after[0].bearer == self.acts[at].receiver)  # the run that meets it
        self.acts.insert(at + 1, played)
        self.step_along(state, path)
        state.gone_to = there.name

    def numbered(self) -> list[Played]:
        last = {played.bearer: at for at, played in enumerate(self.acts)}
        return [
            replace(played, number=at, homeward=bool(played.to_place) and last[played.bearer] == at)
            for at, played in enumerate(self.acts)
        ]


def _implied(state: Walker, step: int, verb: Verb, path: tuple[Point, ...]) -> Played:
    return Played(number=0, step=step, bearer=state.number, verb=verb, path=path, heading=state.heading, implied=True)


def _noun(verb: Verb) -> str:
    return {
        Verb.SET_BACK: "set-back",
        Verb.SHOOT: "shot",
        Verb.CHECK: "check",
        Verb.FETCH: "fetching",
        Verb.WAIT: "wait",
    }.get(verb, verb.value)
