"""Where a line waits, which way a way back goes, how much ground an exercise uses; must not know of time."""

import math
from itertools import pairwise

from conewright.model.exercise import Exercise, Holds, Place
from conewright.model.geometry import (
    Box,
    Point,
    box_round,
    distance_m,
    heading_rad,
    middle,
    nearest_on_segment,
    toward,
)
from conewright.model.layout import first_ball_place, standing
from conewright.model.round import Round

LINE_STEP_M = 1.0  # children in a line stand this far apart
MARGIN_M = 1.0  # round everything an exercise uses
CLEAR_M = 1.5  # a way back keeps this far from places and things
BOWS_M = (2.0, 3.0, 4.0, 5.0, 6.0)  # how far a way back may swing out, the least first
CURVE_PARTS = 8  # straight pieces of a drawn and run curve
QUARTER = math.pi / 2
NEARLY_M = 1e-9
WAITING_SIDES = {"behind": 0.0, "left": -QUARTER, "right": QUARTER}


def hub(exercise: Exercise) -> Point:
    """The middle of the exercise's places, things and boxes: what play happens round."""
    spots = [place.at for place in exercise.places] + [thing.at for thing in exercise.things]
    if exercise.open_play:
        spots.append(exercise.open_play.middle)
    return middle(tuple(spots))


def facing_rad(exercise: Exercise, place: Place) -> float:
    """The heading in which the head of a place looks: as the text says, else to the first ball, else to the middle."""
    named = exercise.place(place.facing or "") or exercise.thing(place.facing or "")
    if named is not None and named.at != place.at:
        return heading_rad(place.at, named.at)
    first = exercise.place(first_ball_place(exercise))
    if first is not None and first.at != place.at:
        return heading_rad(place.at, first.at)
    others = tuple(other.at for other in exercise.places if other.at != place.at)
    others += tuple(thing.at for thing in exercise.things if thing.at != place.at)
    target = middle(others) if others else place.at
    return heading_rad(place.at, target) if distance_m(target, place.at) > NEARLY_M else QUARTER


def line_heading_rad(exercise: Exercise, place: Place) -> float:
    """The heading in which a line grows from its head: away from play, or to the side the text says."""
    return facing_rad(exercise, place) + math.pi + WAITING_SIDES.get(place.waits, 0.0)


def line_spots(exercise: Exercise, place: Place, count: int) -> tuple[Point, ...]:
    """Where the first `count` children of a place stand, the head first."""
    heading = line_heading_rad(exercise, place)
    return tuple(toward(place.at, heading, LINE_STEP_M * rank) for rank in range(count))


def outside_path(exercise: Exercise, start: Point, end: Point) -> tuple[Point, ...]:
    """The way from start to end round the outside: a bow away from the middle that keeps clear of places and things."""
    length = distance_m(start, end)
    if length < 2 * CLEAR_M:
        return (start, end)
    obstacles = tuple(p.at for p in exercise.places) + tuple(t.at for t in exercise.things)
    obstacles = tuple(at for at in obstacles if distance_m(at, start) > CLEAR_M and distance_m(at, end) > CLEAR_M)
    side = _outer_side(hub(exercise), start, end)
    bows = tuple(_bow(start, end, side * bow) for bow in BOWS_M)
    return next((path for path in bows if clearance_m(path, obstacles) >= CLEAR_M), bows[-1])


def _outer_side(centre: Point, start: Point, end: Point) -> float:
    """+1 where the centre lies on the right of the way (or on it), so that the bow goes to the left; else -1."""
    cross = (end.x_m - start.x_m) * (centre.y_m - start.y_m) - (end.y_m - start.y_m) * (centre.x_m - start.x_m)
    return -1.0 if cross > 1e-9 else 1.0


def _bow(start: Point, end: Point, swing_m: float) -> tuple[Point, ...]:
    half = Point((start.x_m + end.x_m) / 2, (start.y_m + end.y_m) / 2)
    control = toward(half, heading_rad(start, end) + QUARTER, 2 * swing_m)
    shares = tuple(part / CURVE_PARTS for part in range(CURVE_PARTS + 1))
    return tuple(
        Point(
            (1 - t) ** 2 * start.x_m + 2 * t * (1 - t) * control.x_m + t * t * end.x_m,
            (1 - t) ** 2 * start.y_m + 2 * t * (1 - t) * control.y_m + t * t * end.y_m,
        )
        for t in shares
    )


def clearance_m(path: tuple[Point, ...], obstacles: tuple[Point, ...]) -> float:
    """The least distance between a path and some spots, metres; infinite where there are none."""
    return min(
        (distance_m(spot, nearest_on_segment(spot, start, end)) for spot in obstacles for start, end in pairwise(path)),
        default=math.inf,
    )


def ground_used(exercise: Exercise, size: int, rounds: tuple[Round, ...] = ()) -> Box:
    """The box of ground a copy of `size` children uses: places, lines, movements, flights, boxes and 1 m round them."""
    spots = [thing.at for thing in exercise.things]
    counts = standing(exercise, size)
    for place in exercise.places:
        count = max(1, counts.get(place.name, 1)) if place.holds is Holds.LINE else 1
        spots += line_spots(exercise, place, count)
    for round_ in rounds:
        for played in round_.acts:
            spots += [*played.path, *played.flight]
        contest = round_.contest
        if contest is not None:
            spots += _corners(contest.middle, contest.width_m, contest.depth_m)
    play = exercise.open_play
    if play is not None:
        inside = _corners(play.middle, play.width_m, play.depth_m)
        return box_round((*spots, *inside), MARGIN_M if spots else 0.0)
    return box_round(tuple(spots), MARGIN_M)


def _corners(centre: Point, width_m: float, depth_m: float) -> tuple[Point, Point]:
    return (
        Point(centre.x_m - width_m / 2, centre.y_m - depth_m / 2),
        Point(centre.x_m + width_m / 2, centre.y_m + depth_m / 2),
    )
