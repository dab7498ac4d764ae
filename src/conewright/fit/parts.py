"""What makes a good evening, in named parts, each 0 to 1; must not know how evenings are searched.

PARTS is the table of contents: the weights say what is worth more, and are a matter of taste, not of measurement.
"""

from dataclasses import dataclass
from itertools import pairwise
from typing import Protocol

from conewright.fit.clock import Slot
from conewright.fit.needs import cone_spots
from conewright.fit.options import Option
from conewright.fit.suiting import suit
from conewright.model.exercise import Exercise
from conewright.model.geometry import Point
from conewright.model.session import Copy, Job

AIM_WEIGHT = {Job.MAIN: 1.0, Job.OPPOSED: 1.0, Job.GAME: 0.5, Job.ARRIVAL: 0.25, Job.WARM_UP: 0.5, Job.CLOSE: 0.0}


@dataclass(frozen=True, slots=True, kw_only=True)
class Chosen:
    """An option in a slot. `cones` are the whole metres of the ground on which its cones lie."""

    slot: Slot
    option: Option
    cones: frozenset[tuple[int, int]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Evening:
    """The slots filled so far, in order."""

    chosen: tuple[Chosen, ...]
    cones: int  # in the bag
    explain_min: float  # minutes at the start of each block in which the coach explains


class Measure(Protocol):
    """Grades an evening from 0 to 1."""

    def __call__(self, evening: Evening) -> float:
        """The grade."""
        ...


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """One part of what makes a good evening."""

    name: str
    weight: float
    measure: Measure


def _filled_min(evening: Evening) -> float:
    return sum(chosen.slot.minutes for chosen in evening.chosen)


def ball_rolling(evening: Evening) -> float:
    """The share of the minutes so far, explanations and pauses counted, in which a ball is planned to roll."""
    last = evening.chosen[-1].slot if evening.chosen else None
    until = last.start_min + last.minutes if last else 0
    rolling = sum(
        max(0.0, chosen.slot.minutes - _explained_min(chosen, evening)) * chosen.option.merits.rolling
        for chosen in evening.chosen
    )
    return min(1.0, rolling / until) if until else 0.0


def _explained_min(chosen: Chosen, evening: Evening) -> float:
    """Nobody gathers to hear the arrival explained: each child is told on coming and starts."""
    return 0.0 if chosen.slot.job is Job.ARRIVAL else evening.explain_min


def contacts(evening: Evening) -> float:
    """Foot contacts against the marks of their kinds."""
    return _by_minutes(evening, lambda chosen: chosen.option.merits.contacts)


def waiting(evening: Evening) -> float:
    """Little waiting, against the age's mark."""
    return _by_minutes(evening, lambda chosen: chosen.option.merits.waiting)


def aim(evening: Evening) -> float:
    """How far the exercises speak of the aim; main and opposed work count most."""
    weights = tuple(AIM_WEIGHT[chosen.slot.job] * chosen.slot.minutes for chosen in evening.chosen)
    whole = sum(weights)
    if not whole:
        return 0.0
    return sum(w * chosen.option.merits.aim for w, chosen in zip(weights, evening.chosen, strict=True)) / whole


def opposed(evening: Evening) -> float:
    """The share of the blocks' minutes in which children play against each other."""
    return _by_minutes(evening, lambda chosen: chosen.option.merits.opposed)


def game(evening: Evening) -> float:
    """The share of the blocks' minutes that is a game."""
    return _by_minutes(evening, lambda chosen: chosen.option.merits.game)


def changeover(evening: Evening) -> float:
    """Few cones to lay between blocks, of all that could be: those that may stay where they lie are not counted."""
    laid = tuple(len(after.cones - before.cones) for before, after in pairwise(evening.chosen))
    most = len(laid) * max(evening.cones, *laid, 1) if laid else 1
    return 1 - sum(laid) / most


def variety(evening: Evening) -> float:
    """Different exercises, and different kinds of them."""
    count = len(evening.chosen)
    if not count:
        return 0.0
    names = {chosen.option.exercise.name for chosen in evening.chosen}
    kinds = {chosen.option.exercise.kind for chosen in evening.chosen}
    return (2 * len(names) + len(kinds)) / (3 * count)


def fits_its_part(evening: Evening) -> float:
    """Exercises in the parts of the evening that they are made for."""
    return _by_minutes(evening, lambda chosen: slot_suit(chosen.option.exercise, chosen.slot))


def everybody(evening: Evening) -> float:
    """Nobody rests because the numbers do not come out."""
    return _by_minutes(evening, lambda chosen: chosen.option.merits.everybody)


def as_written(evening: Evening) -> float:
    """Exercises in their written size, with the kit they name."""
    return _by_minutes(evening, lambda chosen: chosen.option.merits.as_written)


def ground(evening: Evening) -> float:
    """Ground enough for each child in games and possession."""
    return _by_minutes(evening, lambda chosen: chosen.option.merits.ground)


def one_place(evening: Evening) -> float:
    """One place to watch where there is one adult."""
    return _by_minutes(evening, lambda chosen: chosen.option.merits.one_place)


def slot_suit(exercise: Exercise, slot: Slot) -> float:
    """How well an exercise suits a slot: the mean over the parts the slot serves, 0 to 1."""
    own = suit(exercise, slot.job)
    return own if slot.also is None else (own + suit(exercise, slot.also)) / 2


class _Value(Protocol):
    def __call__(self, chosen: Chosen) -> float: ...


def _by_minutes(evening: Evening, value: _Value) -> float:
    filled = _filled_min(evening)
    return sum(chosen.slot.minutes * value(chosen) for chosen in evening.chosen) / filled if filled else 0.0


PARTS: tuple[Part, ...] = (
    Part(name="ball rolling", weight=2, measure=ball_rolling),
    Part(name="contacts", weight=2, measure=contacts),
    Part(name="waiting", weight=3, measure=waiting),
    Part(name="aim", weight=5, measure=aim),
    Part(name="opposed", weight=1, measure=opposed),
    Part(name="game", weight=1, measure=game),
    Part(name="changeover", weight=1, measure=changeover),
    Part(name="variety", weight=6, measure=variety),
    Part(name="fits its part", weight=5, measure=fits_its_part),
    Part(name="everybody in", weight=4, measure=everybody),
    Part(name="as written", weight=1, measure=as_written),
    Part(name="ground for each", weight=1, measure=ground),
    Part(name="one place to watch", weight=1, measure=one_place),
)


def worth(evening: Evening) -> float:
    """The weighed mean of all parts, 0 to 1."""
    return sum(part.weight * part.measure(evening) for part in PARTS) / sum(part.weight for part in PARTS)


def grades(evening: Evening) -> tuple[tuple[str, float], ...]:
    """Each part by name with its grade, 0 to 1, in the order of PARTS."""
    return tuple((part.name, round(part.measure(evening), 3)) for part in PARTS)


def cones_of(option: Option) -> frozenset[tuple[int, int]]:
    """The whole metres of the ground on which the cones of an option lie."""
    spots = cone_spots(option.exercise)
    return frozenset(_whole(copy.on_ground(spot)) for copy in copies_of(option) for spot in spots)


def _whole(point: Point) -> tuple[int, int]:
    return round(point.x_m), round(point.y_m)


def copies_of(option: Option) -> tuple[Copy, ...]:
    """The copies of an option where they stand, without sides, colours or rehearsals."""
    placing = option.attempt.placing
    if placing is None:
        return ()
    return tuple(
        Copy(size=size, origin=spot.origin, turned=placing.turned, mirrored=spot.mirrored, scale=placing.scale)
        for size, spot in zip(option.arrangement.sizes, placing.spots, strict=True)
    )
