"""What has been seen in the round being played, and when; must not know what it starts."""

from dataclasses import dataclass, field
from itertools import pairwise

from conewright.model.exercise import Event, Exercise, Trigger
from conewright.model.geometry import ORIGIN, Point, distance_m, nearest_on_segment
from conewright.rehearsal.durations import Pupil, TimedAct
from conewright.rehearsal.moments import Moment, Moments

SAID = {
    Event.RELEASED: "{who} passes",
    Event.CONTROLLED: "{who} has the ball",
    Event.SHOT: "{who} shoots",
    Event.OVER: "{who}'s shot is over",
    Event.ARRIVED: "{who} reaches {name}",
    Event.HALFWAY: "{who} is halfway home",
    Event.PASSED: "{who} is past {name}",
    Event.STARTED: "{who} starts",
    Event.STEP: "step {step} is done",
    Event.BACK: "the ball is back at {name}",
    Event.READY: "{who} is ready",
    Event.BOX_CLEAR: "the box is clear",
}


def said(trigger: Trigger) -> str:
    """What a trigger waits for, in words."""
    home = trigger.event is Event.ARRIVED and not trigger.name
    form = "{who} is home" if home else SAID.get(trigger.event, "the coach calls")
    return form.format(who=trigger.who, name=trigger.name, step=trigger.step)


@dataclass(slots=True, kw_only=True)
class Sight:
    """The events of one round so far: real state with a life of that round."""

    exercise: Exercise
    child: Pupil
    moments: Moments
    start: Moment
    places: dict[str, str]  # sides word -> place
    watched: bool = True  # whether anything waits for an event: else none has to be remembered
    end: Moment | None = None
    events: dict[tuple[Event, str], Moment] = field(default_factory=dict)
    steps: dict[int, Moment] = field(default_factory=dict)
    moves: dict[str, list[tuple[Moment, TimedAct]]] = field(default_factory=dict)

    def saw(self, event: Event, name: str, moment: Moment) -> None:
        """Remember an event on the bearer of a place; the last of its kind counts."""
        if self.watched:
            self.events[event, name] = moment

    def moved(self, name: str, begun: Moment, end: Moment, act: TimedAct) -> None:
        """Remember a movement of the bearer of a place: when it starts, when it is over, what lies on its way."""
        if self.watched:
            self.events[Event.STARTED, name] = begun
            self.events[Event.ARRIVED, name] = end
            self.moves.setdefault(name, []).append((begun, act))

    def step_ends(self, step: int, moment: Moment) -> None:
        """A step is done with the last of its acts."""
        known = self.steps.get(step)
        if known is None or known.time_s < moment.time_s:
            self.steps[step] = moment

    def when(self, trigger: Trigger) -> Moment | None:
        """When what a trigger waits for is seen; None where it has not happened in this round."""
        moment = self._event(trigger)
        if moment is None or not trigger.delay_s:
            return moment
        return self.moments.plus(moment, trigger.delay_s, -1, "the pause asked for")

    def _event(self, trigger: Trigger) -> Moment | None:
        if trigger.event is Event.STEP:
            return self.steps.get(trigger.step or 0)
        if trigger.event is Event.TOGETHER:
            return self.start
        if trigger.event is Event.CALL:
            return self.end or self.start
        name = self._place(trigger.who) or self._place(trigger.name)
        on_the_way = trigger.event is Event.ARRIVED and trigger.name
        if on_the_way or trigger.event in (Event.HALFWAY, Event.PASSED):
            return self._on_the_way(trigger, name)
        return self.events.get((trigger.event, name))

    def _place(self, word: str) -> str:
        return self.places.get(word, word)

    def _on_the_way(self, trigger: Trigger, name: str) -> Moment | None:
        moves = self.moves.get(name, [])
        if not moves:
            return None
        if trigger.event is Event.HALFWAY:
            begun, act = moves[-1]
            return self._along(begun, act, act.length_m / 2)
        goal = self._place(trigger.name)
        place, thing = self.exercise.place(goal), self.exercise.thing(goal)
        spot = place.at if place else thing.at if thing else ORIGIN
        passes = ((begun, act, *_length_to(act.played.path, spot)) for begun, act in moves)
        begun, act, length, _ = min(passes, key=lambda found: found[3])
        return self._along(begun, act, length)

    def _along(self, begun: Moment, act: TimedAct, length_m: float) -> Moment:
        seconds = act.turn_s + self.child.run_s(length_m, pace=act.pace, with_ball=act.needs_ball)
        return self.moments.plus(begun, seconds, act.played.number, "on the way")


def _length_to(path: tuple[Point, ...], spot: Point) -> tuple[float, float]:
    """How far along a path it comes nearest to a spot, and how near, metres."""
    best, walked = (0.0, float("inf")), 0.0
    for start, end in pairwise(path):
        near = nearest_on_segment(spot, start, end)
        gap = distance_m(spot, near)
        if gap < best[1]:
            best = (walked + distance_m(start, near), gap)
        walked += distance_m(start, end)
    return best
