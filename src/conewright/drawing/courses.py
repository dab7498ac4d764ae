"""The lines of one round in metres: which act draws which line, and how lines of the same two places keep apart.

It must not know the page: `unit_m` is how far apart two lines have to be, `marks` the spots where marks stand.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass, replace
from itertools import pairwise

from conewright.model.exercise import Contest, Exercise, Verb
from conewright.model.geometry import (
    Point,
    ahead,
    distance_m,
    heading_rad,
    nearest_on_segment,
    path_length_m,
    toward,
)
from conewright.model.round import Played, Round

SAME_M = 1.0  # ends nearer than this are ends at the same place
STILL_M = 0.3  # a shorter movement draws no line
KEPT_M = 3.0  # a keeper no further from a goal stands in it
OUTSIDE_M = 1.2  # a way back keeps this far from the box it leaves
QUARTER = math.pi / 2
BOW_SHARES = ((0.25, 0.75), (0.5, 1.0), (0.75, 0.75))  # where along, and how much of the whole swing
Swings = tuple[float, ...]
BALL_ALONE: Swings = (0.0, 0.5, -0.5, 1.5)  # shifts to the left, in units
BALL_SHARED: Swings = (0.5, -0.5, 1.5, -1.5)
MOVE_SHARED: Swings = (1.6, -1.6, 2.6, -2.6, 3.6, -3.6)  # swings of a bow to its first side, in units
END_SHARE, BACK_SHARE = 0.4, 0.9  # how far the ends of such a bow, and the start of a way back, shift in units
NEAR_SHARE = 0.45  # two lines nearer than this part of the unit lie on each other
SAMPLES = (0.2, 0.35, 0.5, 0.65, 0.8)


@dataclass(frozen=True, slots=True, kw_only=True)
class Course:
    """One line of the picture. `kind` is "ball", "run", "with", "shot" or "back"; `loop` is a check and show in one.

    `numbered` lines carry the number of their sentence. `act` counts the round's acts, -1 after a contest.
    """

    kind: str
    points: tuple[Point, ...]
    step: int
    act: int
    numbered: bool = True
    loop: bool = False

    @property
    def is_ball(self) -> bool:
        """True where the ball travels without a foot on it."""
        return self.kind in ("ball", "shot")


def courses(exercise: Exercise, round_: Round, tails: dict[str, Point]) -> tuple[Course, ...]:
    """The lines of a round in the order of its acts; `tails` are the spots where lines of waiting children end."""
    found: list[Course] = []
    busy = _in_contest(round_)
    for played in round_.acts:
        if played.bearer in busy and played.implied and played.way_back:
            continue  # the contest comes first, its outcomes say who goes where
        if _shows_again(found, played, round_):
            found[-1] = replace(found[-1], loop=True)
            continue
        found += _flight(exercise, played)
        found += _movement(played, tails)
    if round_.contest is not None:
        found += _after_contest(exercise, round_.contest, tails)
    return tuple(found)


def _in_contest(round_: Round) -> frozenset[int]:
    if round_.contest is None:
        return frozenset()
    roles = {*round_.contest.attackers, *round_.contest.defenders}
    return frozenset(bearer.number for bearer in round_.bearers if bearer.role in roles)


def _shows_again(found: list[Course], played: Played, round_: Round) -> bool:
    """True where the act brings its bearer back from the check just drawn."""
    if played.verb is not Verb.SHOW or not found or len(played.path) < 2:
        return False
    last = found[-1]
    check = next((act for act in round_.acts if act.number == last.act), None)
    if check is None or check.verb is not Verb.CHECK or check.bearer != played.bearer or check.step != played.step:
        return False
    return distance_m(played.path[-1], last.points[0]) < SAME_M


def _flight(exercise: Exercise, played: Played) -> Iterable[Course]:
    if len(played.flight) < 2 or path_length_m(played.flight) <= STILL_M:
        return
    shot = played.verb is Verb.SHOOT
    flight = (*played.flight[:-1], _beside_keeper(exercise, played.flight)) if shot else played.flight
    yield Course(kind="shot" if shot else "ball", points=flight, step=played.step, act=played.number)


def _beside_keeper(exercise: Exercise, flight: tuple[Point, ...]) -> Point:
    """Where in a goal a drawn shot ends: past a keeper in the middle of it, at the far side."""
    start, end = flight[-2], flight[-1]
    goal = next((thing for thing in exercise.things if thing.at == end and thing.width_m > 0), None)
    kept = any(place.keeper and distance_m(place.at, end) < KEPT_M for place in exercise.places)
    if goal is None or not kept:
        return end
    side = 1.0 if start.x_m <= end.x_m else -1.0
    reach = side * goal.width_m * 0.38
    return Point(end.x_m, end.y_m + reach) if goal.upright else Point(end.x_m + reach, end.y_m)


def _movement(played: Played, tails: dict[str, Point]) -> Iterable[Course]:
    if len(played.path) < 2 or path_length_m(played.path) <= STILL_M:
        return
    if played.verb is Verb.FETCH and played.implied:
        return  # it follows its own shot: a second line over the first says nothing
    dotted = played.implied and played.way_back and not played.with_ball
    kind = "with" if played.with_ball else "back" if dotted else "run"
    numbered = not (played.implied and played.way_back)
    path = played.path
    tail = tails.get(played.to_place)
    if tail is not None:
        path = ended_at(path, tail)
    yield Course(kind=kind, points=path, step=played.step, act=played.number, numbered=numbered)


def ended_at(path: tuple[Point, ...], end: Point) -> tuple[Point, ...]:
    """A path that ends somewhere else, bent over all of its length."""
    shift_x, shift_y = end.x_m - path[-1].x_m, end.y_m - path[-1].y_m
    whole = path_length_m(path)
    run, bent = 0.0, [path[0]]
    for before, point in pairwise(path):
        run += distance_m(before, point)
        share = (run / whole) ** 2 if whole else 1.0
        bent.append(Point(point.x_m + shift_x * share, point.y_m + shift_y * share))
    return tuple(bent)


def _after_contest(exercise: Exercise, contest: Contest, tails: dict[str, Point]) -> Iterable[Course]:
    """One way back from the side of the box to each place an outcome sends somebody to, those in the middle last."""
    goals = tuple(dict.fromkeys(move.to for outcome in contest.outcomes for move in outcome.moves))
    places = [place for place in map(exercise.place, goals) if place is not None]
    used = [0, 0]  # ways on the left and on the right
    for place in sorted(places, key=lambda place: -abs(place.at.x_m - contest.middle.x_m)):
        off = place.at.x_m - contest.middle.x_m
        central = abs(off) <= contest.width_m / 4
        right = used[1] <= used[0] if central else off > 0
        used[right] += 1
        path = _round_box(contest, place.at, tails.get(place.name, place.at), right=right)
        yield Course(kind="back", points=path, step=0, act=-1, numbered=False)


def _round_box(contest: Contest, place: Point, end: Point, *, right: bool) -> tuple[Point, ...]:
    """From the side of a box, round its corner where the place lies above or below it, to the end of a line."""
    side = 1.0 if right else -1.0
    edge = contest.middle.x_m + side * contest.width_m / 2
    low, high = contest.middle.y_m - contest.depth_m / 2, contest.middle.y_m + contest.depth_m / 2
    if low < place.y_m < high:
        start = Point(edge, place.y_m + (contest.middle.y_m - place.y_m) * 0.4)
        outer = side * max(side * edge, side * end.x_m, side * place.x_m) + side * OUTSIDE_M
        return (start, Point(outer, (start.y_m + end.y_m) / 2), end)
    near = low if place.y_m < contest.middle.y_m else high
    start = Point(edge, near + (contest.middle.y_m - near) * 0.4)
    if side * (end.x_m - edge) > 0:
        return (start, Point(side * max(side * edge, side * end.x_m) + side * OUTSIDE_M, (near + end.y_m) / 2), end)
    beyond = near + math.copysign(OUTSIDE_M, near - contest.middle.y_m)
    return (start, Point(edge + side * OUTSIDE_M, (start.y_m + near) / 2), Point(edge + side * 0.6, beyond), end)


def kept_apart(
    found: tuple[Course, ...], unit_m: float, marks: tuple[tuple[Point, float], ...], centre: Point
) -> tuple[Course, ...]:
    """The courses with straight ones shifted or bowed so that no two lie on each other and no run crosses a mark.

    `marks` are spots with the distance a run has to keep from them. Balls choose first, then what bends, then runs:
    a run bows to its own right, a way back away from the `centre` of play.
    """
    placed: dict[int, Course] = {}
    for index in sorted(range(len(found)), key=lambda index: _turn(found[index])):
        course = found[index]
        if len(course.points) == 2 and not course.loop:
            course = _best(course, found, tuple(placed.values()), unit_m, (marks, centre))
        placed[index] = course
    return tuple(placed[index] for index in range(len(found)))


def _turn(course: Course) -> int:
    """When a course chooses its way: one that bends already stays as it is and comes before straight runs."""
    return 0 if course.is_ball else 1 if len(course.points) > 2 else 2


def _best(
    course: Course,
    found: tuple[Course, ...],
    placed: tuple[Course, ...],
    unit_m: float,
    ground: tuple[tuple[tuple[Point, float], ...], Point],
) -> Course:
    marks, centre = ground
    shared = any(other is not course and _same_ends(course, other) for other in found)
    if course.is_ball:
        offsets = BALL_SHARED if shared else BALL_ALONE
    else:
        offsets = MOVE_SHARED if shared else (0.0, *MOVE_SHARED)
        offsets = tuple(_first_side(course, centre) * offset for offset in offsets)
    shaped = [_shaped(course, offset * unit_m, unit_m, shared=shared) for offset in offsets]
    costs = [len(shaped) * _clashes(option, placed, marks, unit_m) + rank for rank, option in enumerate(shaped)]
    return shaped[costs.index(min(costs))]


def _first_side(course: Course, centre: Point) -> float:
    """+1 where the course bows to its left first."""
    start, end = course.points
    left = (end.x_m - start.x_m) * (centre.y_m - start.y_m) - (end.y_m - start.y_m) * (centre.x_m - start.x_m)
    return 1.0 if course.kind == "back" and left < -1e-6 else -1.0


def _same_ends(one: Course, other: Course) -> bool:
    if other.loop or len(other.points) != 2:
        return False
    straight = (
        distance_m(one.points[0], other.points[0]) < SAME_M and distance_m(one.points[-1], other.points[-1]) < SAME_M
    )
    turned = (
        distance_m(one.points[0], other.points[-1]) < SAME_M and distance_m(one.points[-1], other.points[0]) < SAME_M
    )
    return straight or turned


def _shaped(course: Course, swing_m: float, unit_m: float, *, shared: bool) -> Course:
    """A ball shifted to its left by the swing; a movement bowed by it, its start and a shared end to the same side."""
    if swing_m == 0.0:
        return course
    start, end = course.points
    across = heading_rad(start, end) + QUARTER
    if course.is_ball:
        return replace(course, points=(toward(start, across, swing_m), toward(end, across, swing_m)))
    length = distance_m(start, end)
    swing_m = math.copysign(min(abs(swing_m), 0.45 * length), swing_m)
    shift = math.copysign(END_SHARE * unit_m, swing_m) if shared else 0.0
    begin = math.copysign((BACK_SHARE if course.kind == "back" else END_SHARE) * unit_m, swing_m)
    bends = (toward(ahead(start, end, share * length), across, part * swing_m) for share, part in BOW_SHARES)
    return replace(course, points=(toward(start, across, begin), *bends, toward(end, across, shift)))


def _clashes(
    course: Course, placed: tuple[Course, ...], marks: tuple[tuple[Point, float], ...], unit_m: float
) -> float:
    spots = [_at_share(course.points, share) for share in SAMPLES]
    lying = sum(1 for other in placed if sum(_off_m(spot, other.points) < NEAR_SHARE * unit_m for spot in spots) >= 2)
    if course.is_ball:
        return float(lying)
    start, end = course.points[0], course.points[-1]
    crossed = sum(
        1
        for at, keep_m in marks
        if distance_m(at, start) > keep_m and distance_m(at, end) > keep_m and _off_m(at, course.points) < keep_m
    )
    return lying + 1.5 * crossed


def _off_m(spot: Point, path: tuple[Point, ...]) -> float:
    return min(distance_m(spot, nearest_on_segment(spot, start, end)) for start, end in pairwise(path))


def _at_share(path: tuple[Point, ...], share: float) -> Point:
    wanted = share * path_length_m(path)
    for start, end in pairwise(path):
        piece = distance_m(start, end)
        if wanted <= piece:
            return ahead(start, end, wanted)
        wanted -= piece
    return path[-1]
