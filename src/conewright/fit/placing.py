"""Where copies stand on the coach's rectangle, turned and scaled as need be; must not know what is done in them."""

from collections.abc import Iterator
from dataclasses import dataclass

from conewright.fit.arrangement import Arrangement
from conewright.fit.bench import Bench
from conewright.model.exercise import Exercise, PlayKind, ThingKind, Verb
from conewright.model.geometry import Box, Point, heading_rad
from conewright.model.ground import hub
from conewright.model.layout import APART_SHOTS_M

LEAST_SCALE = 0.7
MOST_SCALE = 1.3
SCALE_STEP = 0.05
SLACK_M = 1e-9
QUARTER_RAD = 0.7853981633974483  # half a quarter turn: nearer to up the page than to level


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """Where the origin of a copy lies in the coach's rectangle, metres."""

    origin: Point
    mirrored: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Placing:
    """All copies of a block on the ground, one spot for each size of the arrangement."""

    scale: float
    turned: bool
    spots: tuple[Spot, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Gaps:
    """How far apart copies stand, edge to edge: to the side of each other and up the page, metres."""

    across_m: float
    up_m: float


def place(exercise: Exercise, arrangement: Arrangement, bench: Bench) -> Placing | None:
    """The first way the copies fit: at the scale wished, then at others, the nearest to the written one first."""
    area_m2 = sum(_area_m2(bench.box(exercise, size, 1.0)) for size in arrangement.sizes)
    given_m2 = bench.asked.width_m * bench.asked.depth_m
    for scale in _scales(_wished_scale(exercise, arrangement, bench)):
        if area_m2 * min(1.0, scale) ** 2 > given_m2 + SLACK_M:
            continue  # a quick no by area, so that grounds are not worked out at scales that cannot fit
        for turned in (False, True):
            found = _fit_at(exercise, arrangement, bench, scale=scale, turned=turned)
            if found is not None:
                return found
    return None


def least_ground(exercise: Exercise, arrangement: Arrangement, bench: Bench) -> tuple[float, float]:
    """Width and depth in metres that the copies need side by side at the written scale."""
    boxes = _boxes(exercise, arrangement, bench, scale=1.0, turned=False)
    gaps = _gaps(exercise, arrangement, turned=False)
    width = sum(box.width_m for box in boxes) + gaps.across_m * (len(boxes) - 1)
    return width, max(box.depth_m for box in boxes)


def _scales(wished: float) -> Iterator[float]:
    step = round(wished / SCALE_STEP)
    while step * SCALE_STEP >= LEAST_SCALE - SLACK_M:
        yield round(step * SCALE_STEP, 2)
        step -= 1


def _wished_scale(exercise: Exercise, arrangement: Arrangement, bench: Bench) -> float:
    """1, or more where a game or possession box gives each child less ground than the figures ask for."""
    play, wanted_m2 = exercise.open_play, area_wanted_m2(exercise, bench)
    has_m2 = play.width_m * play.depth_m / max(arrangement.sizes) if play is not None else 0.0
    if wanted_m2 is None or has_m2 <= 0 or has_m2 >= wanted_m2:
        return 1.0
    return min(MOST_SCALE, float((wanted_m2 / has_m2) ** 0.5))


def area_wanted_m2(exercise: Exercise, bench: Bench) -> float | None:
    """The least ground a child should have in a game or possession box, by the figures; None for anything else."""
    kind = exercise.open_play.kind if exercise.open_play is not None else None
    if kind is PlayKind.GAME:
        return bench.figures.value("area_small_game_low_m2")
    if kind is PlayKind.KEEP:
        return bench.figures.at("area_possession_low_m2", age=bench.asked.age)
    return None


def _fit_at(
    exercise: Exercise, arrangement: Arrangement, bench: Bench, *, scale: float, turned: bool
) -> Placing | None:
    boxes = _boxes(exercise, arrangement, bench, scale=scale, turned=turned)
    gaps = _gaps(exercise, arrangement, turned=turned)
    for columns in range(len(boxes), 0, -1):
        rows = tuple(boxes[start : start + columns] for start in range(0, len(boxes), columns))
        if _holds(rows, gaps, bench):
            mirrored = arrangement.mirrored and not _shoots_across(exercise, turned=turned)
            return Placing(scale=scale, turned=turned, spots=_spots(rows, gaps, bench, mirrored=mirrored))
    return None


def _area_m2(box: Box) -> float:
    return box.width_m * box.depth_m


def _boxes(
    exercise: Exercise, arrangement: Arrangement, bench: Bench, *, scale: float, turned: bool
) -> tuple[Box, ...]:
    known = {size: bench.box(exercise, size, scale) for size in set(arrangement.sizes)}
    return tuple(turned_box(known[size]) if turned else known[size] for size in arrangement.sizes)


def turned_box(box: Box) -> Box:
    """The box a quarter turn anticlockwise round the origin."""
    return Box(left_m=-box.top_m, bottom_m=box.left_m, right_m=-box.bottom_m, top_m=box.right_m)


def mirrored_box(box: Box) -> Box:
    """The box flipped left to right."""
    return Box(left_m=-box.right_m, bottom_m=box.bottom_m, right_m=-box.left_m, top_m=box.top_m)


def _width_m(row: tuple[Box, ...], gaps: Gaps) -> float:
    return sum(box.width_m for box in row) + gaps.across_m * (len(row) - 1)


def _depth_m(row: tuple[Box, ...]) -> float:
    return max(box.depth_m for box in row)


def _holds(rows: tuple[tuple[Box, ...], ...], gaps: Gaps, bench: Bench) -> bool:
    wide = max(_width_m(row, gaps) for row in rows) <= bench.asked.width_m + SLACK_M
    deep = sum(_depth_m(row) for row in rows) + gaps.up_m * (len(rows) - 1) <= bench.asked.depth_m + SLACK_M
    return wide and deep


def _spots(rows: tuple[tuple[Box, ...], ...], gaps: Gaps, bench: Bench, *, mirrored: bool) -> tuple[Spot, ...]:
    """The copies in the middle of the rectangle, neighbours mirrored where wanted."""
    depth = sum(_depth_m(row) for row in rows) + gaps.up_m * (len(rows) - 1)
    bottom = max(0.0, (bench.asked.depth_m - depth) / 2)
    spots: list[Spot] = []
    for row in rows:
        left = max(0.0, (bench.asked.width_m - _width_m(row, gaps)) / 2)
        for position, box in enumerate(row):
            flipped = mirrored and position % 2 == 1
            own = mirrored_box(box) if flipped else box
            spots.append(Spot(origin=Point(left - own.left_m, bottom - own.bottom_m), mirrored=flipped))
            left += box.width_m + gaps.across_m
        bottom += _depth_m(row) + gaps.up_m
    return tuple(spots)


def _gaps(exercise: Exercise, arrangement: Arrangement, *, turned: bool) -> Gaps:
    """As the text says; more between copies that stand in each other's line of shooting."""
    apart_m, behind_m = arrangement.apart_m, max(arrangement.apart_m, APART_SHOTS_M)
    level, upright = _shots(exercise)
    along_x, along_y = (upright, level) if turned else (level, upright)
    return Gaps(across_m=behind_m if along_x else apart_m, up_m=behind_m if along_y else apart_m)


def _shoots_across(exercise: Exercise, *, turned: bool) -> bool:
    """Whether mirroring would make neighbours shoot at each other."""
    level, upright = _shots(exercise)
    return upright if turned else level


def _shots(exercise: Exercise) -> tuple[bool, bool]:
    """Whether balls are shot level and up or down the page, in the exercise's own coordinates."""
    middle = hub(exercise)
    names = _aimed_at(exercise)
    goals = tuple(
        thing for thing in exercise.things if thing.kind in (ThingKind.GOAL, ThingKind.MINI_GOAL) or thing.name in names
    )
    headings = tuple(heading_rad(middle, thing.at) for thing in goals)
    upright = tuple(QUARTER_RAD <= abs(heading) <= 3 * QUARTER_RAD for heading in headings)
    return any(not up for up in upright), any(upright)


def _aimed_at(exercise: Exercise) -> frozenset[str]:
    acts = (act for step in exercise.script.steps for act in step.acts) if exercise.script else ()
    return frozenset(act.target.name for act in acts if act.verb is Verb.SHOOT and act.target is not None)
