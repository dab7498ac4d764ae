"""What a copy of an exercise needs from the bag and from the adults; must not know what is in the bag."""

from collections.abc import Iterator
from dataclasses import dataclass

from conewright.model.exercise import Bib, Exercise, PlayKind, SupplyKind, Team, ThingKind
from conewright.model.geometry import Point, distance_m
from conewright.model.layout import Side, sides_for, standing

SAME_SPOT_M = 0.5  # marks nearer than this to one another share a cone
IN_GOAL_M = 1.0  # a place nearer than this to a goal is marked by the goal
GOALS = (ThingKind.MINI_GOAL, ThingKind.GOAL)


@dataclass(frozen=True, slots=True, kw_only=True)
class Needs:
    """What one copy, or several together, need at one time; `least_balls` is enough where children may share."""

    balls: int = 0
    least_balls: int = 0
    cones: int = 0
    mini_goals: int = 0
    goals: int = 0
    adults: int = 0
    bibs: tuple[tuple[Bib, int], ...] = ()

    def __add__(self, other: "Needs") -> "Needs":
        """Both at once."""
        return Needs(
            balls=self.balls + other.balls,
            least_balls=self.least_balls + other.least_balls,
            cones=self.cones + other.cones,
            mini_goals=self.mini_goals + other.mini_goals,
            goals=self.goals + other.goals,
            adults=self.adults + other.adults,
            bibs=added_bibs(self.bibs, other.bibs),
        )


def added_bibs(*bags: tuple[tuple[Bib, int], ...]) -> tuple[tuple[Bib, int], ...]:
    """Bibs of several bags, by colour in the usual order."""
    counts = {bib: sum(count for bag in bags for colour, count in bag if colour is bib) for bib in Bib}
    return tuple((bib, count) for bib, count in counts.items() if count)


def needs_of(exercise: Exercise, size: int) -> Needs:
    """What one copy of `size` children needs; bibs of the sides of an open-play box are left to the colouring."""
    balls, least = _balls(exercise, size)
    return Needs(
        balls=balls,
        least_balls=least,
        cones=len(cone_spots(exercise)),
        mini_goals=sum(1 for thing in exercise.things if thing.kind is ThingKind.MINI_GOAL),
        goals=sum(1 for thing in exercise.things if thing.kind is ThingKind.GOAL),
        adults=sum(1 for place in exercise.places if place.adult),
        bibs=_bibs_at_places(exercise, size),
    )


def _bibs_at_places(exercise: Exercise, size: int) -> tuple[tuple[Bib, int], ...]:
    counts = standing(exercise, size)
    return added_bibs(*(((place.bib, counts.get(place.name, 1)),) for place in exercise.places if place.bib))


def _balls(exercise: Exercise, size: int) -> tuple[int, int]:
    counts = standing(exercise, size)
    at_places = 0
    for place in exercise.places:
        each = place.supply.kind is SupplyKind.EACH
        at_places += counts.get(place.name, 1) if each else place.supply.count
    play = exercise.open_play
    if play is None:
        return at_places, at_places
    in_play, least = balls_in_play(exercise, size)
    return at_places + in_play, at_places + least


def balls_in_play(exercise: Exercise, size: int) -> tuple[int, int]:
    """Balls an open-play box asks for with `size` children, and the least it runs with where two may share one."""
    play = exercise.open_play
    if play is None:
        return 0, 0
    sides = sides_for(exercise, size)
    everyone = play.kind is PlayKind.BALL_EACH and not any(side.team.has_ball_each for side in sides)
    each = size if everyone else sum(side.count for side in sides if side.team.has_ball_each)
    shared = (each + 1) // 2 if play.odd_one == "shares" else each
    return each + play.balls, shared + play.balls


def cone_spots(exercise: Exercise) -> tuple[Point, ...]:
    """Where cones lie: one at each place that is not in a goal, each cone, two a gate, four at the corners of boxes."""
    spots: list[Point] = []
    for wanted in _wanted(exercise):
        if all(distance_m(wanted, spot) >= SAME_SPOT_M for spot in spots):
            spots.append(wanted)
    return tuple(spots)


def _wanted(exercise: Exercise) -> Iterator[Point]:
    goals = tuple(thing.at for thing in exercise.things if thing.kind in GOALS)
    for place in exercise.places:
        if not place.keeper and all(distance_m(place.at, goal) >= IN_GOAL_M for goal in goals):
            yield place.at
    for thing in exercise.things:
        if thing.kind is ThingKind.CONE:
            yield thing.at
        elif thing.kind is ThingKind.GATE:
            half = thing.width_m / 2
            across, up = (0.0, half) if thing.upright else (half, 0.0)
            yield Point(thing.at.x_m - across, thing.at.y_m - up)
            yield Point(thing.at.x_m + across, thing.at.y_m + up)
    play = exercise.open_play
    if play is not None:
        yield from _corners(play.middle, play.width_m, play.depth_m)
    for step in exercise.script.steps if exercise.script else ():
        if step.contest is not None:
            yield from _corners(step.contest.middle, step.contest.width_m, step.contest.depth_m)


def _corners(middle: Point, width_m: float, depth_m: float) -> Iterator[Point]:
    for across in (-width_m / 2, width_m / 2):
        for up in (-depth_m / 2, depth_m / 2):
            yield Point(middle.x_m + across, middle.y_m + up)


def bib_of(team: Team) -> Bib | None:
    """The colour a team wears: as said, or as its name says."""
    return team.bib or next((bib for bib in Bib if bib.value == team.name), None)


def bibs_of(sides: tuple[Side, ...]) -> tuple[tuple[Bib, int], ...]:
    """The bibs the sides of one copy wear."""
    worn = tuple((bib_of(side.team), side.count) for side in sides)
    return added_bibs(*(((bib, count),) for bib, count in worn if bib is not None))
