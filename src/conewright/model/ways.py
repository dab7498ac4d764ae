"""The way of one written movement from where its bearer stands; must not know of rounds, rotation or time."""

from dataclasses import dataclass
from math import pi

from conewright.model.exercise import Act, Exercise, Target, TargetKind, Verb, Via
from conewright.model.geometry import Point, ahead, distance_m, heading_rad, toward
from conewright.model.ground import outside_path
from conewright.model.problem import Span
from conewright.model.round import Bearer

CHECK_M = 2.0  # "checks away" without a length
SHOW_M = 2.0  # "shows" without a check before it
ROUND_M = 1.0  # a way round a cone keeps this far from it


@dataclass(slots=True, kw_only=True)
class Walker:
    """A bearer while the round is walked."""

    number: int
    role: str
    place: str
    at: Point
    heading: float
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
        return (walker.at, *(_stop(exercise, walker, via, end) for via in act.via), end)
    goes_home = act.target is not None and (act.target.end or act.target.kind is TargetKind.OWN)
    if act.manner.outside or (goes_home and distance_m(walker.at, end) > CHECK_M):
        return outside_path(exercise, walker.at, end)
    return (walker.at, end)


def _stop(exercise: Exercise, walker: Walker, via: Via, end: Point) -> Point:
    """A point on the way: in a gate, or beside a cone so that it is rounded on the outside."""
    place, thing = exercise.place(via.name), exercise.thing(via.name)
    at = place.at if place else thing.at if thing else walker.at
    if via.how == "through":
        return at
    if end == walker.at:
        return toward(at, heading_rad(walker.at, at), ROUND_M)
    return toward(at, heading_rad(walker.at, end) - pi / 2, ROUND_M)
