"""The way of one written movement from where its bearer stands; must not know of rounds, rotation or time."""

from dataclasses import dataclass, replace
from math import ceil, pi, tau

from conewright.model.exercise import Act, Exercise, Target, TargetKind, Verb, Via
from conewright.model.geometry import Point, ahead, distance_m, heading_rad, toward
from conewright.model.ground import outside_path
from conewright.model.problem import Span
from conewright.model.round import Bearer

CHECK_M = 2.0  # "checks away" without a length
SHOW_M = 2.0  # "shows" without a check before it
ROUND_M = 1.0  # a way round a cone keeps this far from it
STRAIGHT_RAD = pi / 12  # a way that turns less at a cone only passes it
BOW_STEP_RAD = pi / 3


@dataclass(slots=True, kw_only=True)
class Walker:
    """A bearer while the round is walked."""

    number: int
    role: str
    place: str
    at: Point
    heading: float
    first: bool = True  # the first at its place in the round: the listed moves are for it
    has_ball: bool = False
    gone_to: str = ""
    moved: bool = False
    kicks: int = 0
    last_receiver: int | None = None
    came_from: int | None = None  # who played the ball to it
    last_span: Span | None = None
    done: bool = False

    def bearer(self, exercise: Exercise) -> Bearer:
        """What the round remembers of it."""
        place = exercise.place(self.place)
        return Bearer(
            number=self.number,
            role=self.role,
            place=self.place,
            ends_at=self.gone_to or ("" if self.moved else self.place),
            adult=bool(place and place.adult),
            stays=not self.gone_to and not self.moved,
            ends_with_ball=self.has_ball,
        )


def spot_of(exercise: Exercise, walker: Walker, target: Target | None, words: dict[str, str]) -> Point | None:
    """The point a target means for somebody who stands where it stands; None where it means none."""
    if target is None:
        return None
    if target.kind is TargetKind.POINT:
        return target.at
    if target.kind is TargetKind.OWN:
        own = exercise.place(walker.place)
        return own.at if own else None
    name = words.get(target.name, target.name)
    place, thing = exercise.place(name), exercise.thing(name)
    at = place.at if place else thing.at if thing else None
    if at is not None and target.kind is TargetKind.TOWARDS:
        return ahead(walker.at, at, target.distance_m)
    return at


def way_of(
    exercise: Exercise, walker: Walker, act: Act, *, words: dict[str, str], loose_at: Point
) -> tuple[Point, ...]:
    """The path of a written movement; `loose_at` is where the ball lies that nobody received."""
    if act.verb is Verb.CHECK:
        length = act.target.distance_m if act.target and act.target.distance_m else CHECK_M
        return (walker.at, toward(walker.at, walker.heading, -length))
    if act.verb is Verb.SHOW:
        own = exercise.place(walker.place)
        if own is not None and walker.at != own.at:
            return (walker.at, own.at)
        return (walker.at, toward(walker.at, walker.heading, SHOW_M))
    if act.verb is Verb.FETCH and act.target is None:
        return (walker.at, loose_at)
    end = spot_of(exercise, walker, act.target, words) or walker.at
    if act.via:
        return _by_way_of(
            exercise, walker, tuple(replace(via, name=words.get(via.name, via.name)) for via in act.via), end
        )
    goes_home = act.target is not None and (act.target.end or act.target.kind is TargetKind.OWN)
    if act.manner.outside or (goes_home and distance_m(walker.at, end) > CHECK_M):
        return outside_path(exercise, walker.at, end)
    return (walker.at, end)


def _by_way_of(exercise: Exercise, walker: Walker, vias: tuple[Via, ...], end: Point) -> tuple[Point, ...]:
    """Through gates and round cones, one after the other: each cone is gone round on the side the way turns.

    A cone on a straight way is passed on the right, the next one on the left, and so on: a slalom.
    """
    stops = tuple(_at(exercise, walker, via) for via in vias)
    path = [walker.at]
    for number, (via, at) in enumerate(zip(vias, stops, strict=True)):
        onward = stops[number + 1] if number + 1 < len(stops) else end
        if via.how == "through" or path[-1] == at:
            path.append(at)
            continue
        comes = heading_rad(path[-1], at)
        goes = heading_rad(at, onward) if onward != at else comes
        path += _round(at, comes, goes, slalom=number)
    return (*path, end)


def _at(exercise: Exercise, walker: Walker, via: Via) -> Point:
    place, thing = exercise.place(via.name), exercise.thing(via.name)
    return place.at if place else thing.at if thing else walker.at


def _round(cone: Point, comes: float, goes: float, *, slalom: int) -> list[Point]:
    """The bow round a cone from one heading to the other, its points at most a sixth of a circle apart."""
    left = (goes - comes) % tau
    if min(left, tau - left) < STRAIGHT_RAD:
        side = -pi / 2 if slalom % 2 == 0 else pi / 2
        return [toward(cone, comes + side, ROUND_M)]
    turn = left if left <= pi + STRAIGHT_RAD else left - tau
    side = -pi / 2 if turn > 0 else pi / 2
    parts = max(1, ceil(abs(turn) / BOW_STEP_RAD - 1e-9))
    return [toward(cone, comes + turn * part / parts + side, ROUND_M) for part in range(parts + 1)]
