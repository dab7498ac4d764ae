"""Free ground for balls, step marks and words: nothing touches anything else; must not know what they mean."""

import math

from conewright.drawing.canvas import Area, Canvas, area_at, word_area
from conewright.drawing.ink import Stroke
from conewright.drawing.marks import RISE, step_width
from conewright.drawing.strokes import apart, at_share, distance_to_line, moved
from conewright.model.scene import Dot

BALL_TURNS = tuple(
    math.radians(degrees) for degrees in (50, -50, 75, -75, 30, -30, 100, -100, 130, -130, 160, -160, 180)
)
SHARES = tuple(0.5 + sign * 0.03 * step for step in range(5) for sign in ((1, -1) if step else (1,)))  # 38 to 62 %
WIDE_SHARES = tuple(0.5 + sign * 0.04 * step for step in range(4, 11) for sign in (1, -1))
NUDGES = 12  # how far a mark may be nudged off kit, in thirds of its radius
RINGS = 14  # how far a mark looks for free ground beside its line, in halves of its size
TURNS = tuple(math.tau * part / 16 for part in range(16))
NAME_TURNS = (180, 0, 270, 90, 225, 315, 135, 45)  # degrees clockwise from the right, in the order they are tried
NAME_RINGS = (1.0, 1.6, 2.6, 4.0, 6.0, 9.0, 13.0)


def ball_spot(canvas: Canvas, owner: Dot, radius: float, direction: float, size: float) -> Dot:
    """For a ball of radius `size` beside its owner, off lines, beaks and other marks; taken from now on."""
    reach = radius + size + 0.35 * size
    options = [moved(owner, direction + turn, reach) for turn in BALL_TURNS]
    options += [moved(owner, direction + turn, reach + 2.2 * size) for turn in BALL_TURNS]

    def cost(spot: Dot) -> tuple[int, int]:
        near = sum(distance_to_line(spot, line) < 1.4 * size for line in canvas.lines)
        return (0 if canvas.disc_free(spot, size) else 1, near)

    best = min(options, key=cost)
    canvas.discs.append((best, size))
    return best


def step_spot(canvas: Canvas, drawn: Stroke) -> Dot:
    """On the line of the stroke, as near its middle as free ground allows; beside it where there is none on it."""
    width, height = step_width(drawn.course.step, canvas.measures), canvas.measures.step_side
    clear = 0.12 * height

    def area(share: float) -> Area:
        return area_at(at_share(drawn.line, share), width, height)

    near = [area(share) for share in SHARES]
    free = [option for option in near if canvas.free(option, clear) and canvas.inside(option)]
    uncrossed = [option for option in free if not canvas.crossings(option, drawn.line)]
    wide = [area(share) for share in WIDE_SHARES]
    wide = [option for option in wide if canvas.free(option, clear) and canvas.inside(option)]
    wide_uncrossed = [option for option in wide if not canvas.crossings(option, drawn.line)]
    for options in (uncrossed, wide_uncrossed, free, wide):
        if options:
            return _take(canvas, options[0])
    return _take(canvas, _beside(canvas, near[0].middle, width, height))


def step_spot_at(canvas: Canvas, at: Dot, number: int) -> Dot:
    """For a sentence that draws no line: beside the one who does it."""
    return _take(canvas, _beside(canvas, at, step_width(number, canvas.measures), canvas.measures.step_side))


def _take(canvas: Canvas, area: Area) -> Dot:
    canvas.areas.append(area)
    return area.middle


def _beside(canvas: Canvas, middle: Dot, width: float, height: float) -> Area:
    """The nearest free box round a spot; the last one looked at where the whole picture is full."""
    area = area_at(middle, width, height)
    for ring in range(1, RINGS * 4):
        for turn in TURNS:
            area = area_at(moved(middle, turn, ring * height / 4), width, height)
            if canvas.free(area, 0.1 * height) and canvas.inside(area):
                return area
    return area


def name_spot(canvas: Canvas, at: Dot, radius: float, words: str) -> tuple[Dot, str] | None:
    """Where a name stands beside a mark, with its anchor; None where there is no free ground near."""
    size, clear = canvas.measures.name_size, canvas.measures.name_clear
    for ring in NAME_RINGS:
        options = [_named_at(at, radius + clear * ring, degrees, size) for degrees in NAME_TURNS]
        areas = [(word_area(spot, words, size, anchor), spot, anchor) for spot, anchor in options]
        free = [option for option in areas if canvas.inside(option[0]) and canvas.free(option[0], 0.1 * size)]
        if free:
            area, spot, anchor = min(free, key=lambda option: canvas.crossings(option[0]))
            if canvas.crossings(area) and ring == NAME_RINGS[0]:
                continue
            canvas.areas.append(area)
            return spot, anchor
    return None


def _named_at(at: Dot, reach: float, degrees: int, size: float) -> tuple[Dot, str]:
    edge = moved(at, math.radians(degrees), reach)
    anchor = {180: "end", 0: "start", 270: "middle", 90: "middle"}.get(
        degrees, "end" if 90 < degrees < 270 else "start"
    )
    lift = {270: -0.1, 90: 0.75}.get(degrees, RISE)
    return Dot(edge.x, edge.y + lift * size), anchor


def words_spot(canvas: Canvas, options: tuple[tuple[Dot, str], ...], words: str, size: float) -> tuple[Dot, str] | None:
    """Of some spots the first where words touch nothing and cross least, if there is one; taken from now on."""
    areas = [(word_area(spot, words, size, anchor), (spot, anchor)) for spot, anchor in options]
    free = [option for option in areas if canvas.free(option[0], 0.1 * size) and canvas.inside(option[0])]
    if not free:
        return None
    area, spot = min(free, key=lambda option: canvas.crossings(option[0]))
    canvas.areas.append(area)
    return spot


def off_kit(canvas: Canvas, at: Dot, radius: float) -> Dot:
    """The spot itself, or the nearest one from which a mark touches no kit, sill or other mark."""
    reach = 1.25 * radius
    for ring in range(NUDGES):
        for turn in TURNS[:: 1 if ring else len(TURNS)]:
            spot = moved(at, turn, ring * radius / 3)
            clear = all(distance_to_line(spot, line) > reach for line in canvas.lines)
            if clear and canvas.disc_free(spot, reach):
                return spot
    return at


def spread_apart(spots: tuple[Dot, ...], least: float) -> tuple[Dot, ...]:
    """Spots pushed apart until none are nearer than `least` (or as far as forty rounds of pushing bring them)."""
    now = list(spots)
    for _ in range(40):
        close = [
            (i, j) for i in range(len(now)) for j in range(i + 1, len(now)) if apart(now[i], now[j]) < least - 1e-6
        ]
        if not close:
            break
        for i, j in close:
            now[i], now[j] = _pushed(now[i], now[j], least)
    return tuple(now)


def _pushed(one: Dot, other: Dot, least: float) -> tuple[Dot, Dot]:
    gap = apart(one, other)
    across = math.atan2(other.y - one.y, other.x - one.x) if gap > 1e-9 else 0.0
    by = (least - gap) / 2
    return moved(one, across + math.pi, by), moved(other, across, by)
