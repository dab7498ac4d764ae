"""Lines through dots: smoothing, trimming, waves, heads; drawing units. Must not know who runs along them."""

import math
from itertools import pairwise

from conewright.drawing.measures import Measures
from conewright.model.scene import Dot

Line = tuple[Dot, ...]
SMOOTH_PARTS = 12  # straight pieces a smoothed stretch is drawn with before what is needless is left out
TINY = 1e-9
SAME = 1e-6  # dots nearer than this are one


def apart(first: Dot, second: Dot) -> float:
    """Distance between two dots."""
    return math.hypot(second.x - first.x, second.y - first.y)


def length(line: Line) -> float:
    """Length of a line."""
    return sum(apart(start, end) for start, end in pairwise(line))


def along(start: Dot, end: Dot, share: float) -> Dot:
    """The dot that part of the straight way from start to end."""
    return Dot(start.x + (end.x - start.x) * share, start.y + (end.y - start.y) * share)


def moved(dot: Dot, angle: float, by: float) -> Dot:
    """The dot moved by a length in a direction, radians clockwise from the right."""
    return Dot(dot.x + math.cos(angle) * by, dot.y + math.sin(angle) * by)


def angle(start: Dot, end: Dot) -> float:
    """Direction from start to end, radians clockwise from the right."""
    return math.atan2(end.y - start.y, end.x - start.x)


def smoothed(dots: Line) -> Line:
    """A Catmull-Rom curve through the dots, centripetal so that close dots make no loops; a straight line stays one."""
    dots = _distinct(dots)
    if len(dots) < 3:
        return dots
    first = Dot(2 * dots[0].x - dots[1].x, 2 * dots[0].y - dots[1].y)
    last = Dot(2 * dots[-1].x - dots[-2].x, 2 * dots[-1].y - dots[-2].y)
    padded = (first, *dots, last)
    curve = [dots[0]]
    for index in range(1, len(padded) - 2):
        curve += _stretch(*padded[index - 1 : index + 3])
    return tuple(curve)


def _distinct(dots: Line) -> Line:
    return (*dots[:1], *(dot for before, dot in pairwise(dots) if apart(before, dot) > SAME))


def _stretch(p0: Dot, p1: Dot, p2: Dot, p3: Dot) -> Line:
    """The curve from p1 to p2, by the pyramid of Barry and Goldman with knots at square roots of distances."""
    t1 = math.sqrt(apart(p0, p1))
    t2 = t1 + math.sqrt(apart(p1, p2))
    t3 = t2 + math.sqrt(apart(p2, p3))
    curve = []
    for part in range(1, SMOOTH_PARTS + 1):
        t = t1 + (t2 - t1) * part / SMOOTH_PARTS
        a1, a2, a3 = along(p0, p1, t / t1), along(p1, p2, (t - t1) / (t2 - t1)), along(p2, p3, (t - t2) / (t3 - t2))
        b1, b2 = along(a1, a2, t / t2), along(a2, a3, (t - t1) / (t3 - t1))
        curve.append(along(b1, b2, (t - t1) / (t2 - t1)))
    return tuple(curve)


def at_share(line: Line, share: float) -> Dot:
    """The dot at a part of the length of a line, 0 its start, 1 its end."""
    return at_length(line, share * length(line))


def at_length(line: Line, wanted: float) -> Dot:
    """The dot at a length along a line; its ends where the length lies outside."""
    for start, end in pairwise(line):
        piece = apart(start, end)
        if wanted <= piece and piece > TINY:
            return along(start, end, max(wanted, 0.0) / piece)
        wanted -= piece
    return line[-1]


def angle_at(line: Line, wanted: float) -> float:
    """The direction of a line at a length along it."""
    reach = length(line)
    before, after = max(wanted - 1.0, 0.0), min(wanted + 1.0, reach)
    return angle(at_length(line, before), at_length(line, after))


def trimmed(line: Line, start: float, end: float) -> Line:
    """The line without a length at its start and one at its end; its middle dot twice where nothing is left."""
    whole = length(line)
    if whole - start - end <= TINY:
        middle = at_share(line, 0.5)
        return (middle, middle)
    kept = [at_length(line, start)]
    run = 0.0
    for before, dot in pairwise(line):
        run += apart(before, dot)
        if start + TINY < run < whole - end - TINY:
            kept.append(dot)
    return (*kept, at_length(line, whole - end))


def spare(line: Line, tolerance: float) -> Line:
    """The line without dots that lie within the tolerance of the straight way past them (Douglas and Peucker)."""
    if len(line) < 3:
        return line
    off = [distance_to(dot, line[0], line[-1]) for dot in line[1:-1]]
    worst = max(range(len(off)), key=lambda index: off[index])
    if off[worst] <= tolerance:
        return (line[0], line[-1])
    return (*spare(line[: worst + 2], tolerance)[:-1], *spare(line[worst + 1 :], tolerance))


def distance_to(dot: Dot, start: Dot, end: Dot) -> float:
    """Distance of a dot from a straight stretch."""
    square = (end.x - start.x) ** 2 + (end.y - start.y) ** 2
    if square <= TINY:
        return apart(dot, start)
    share = ((dot.x - start.x) * (end.x - start.x) + (dot.y - start.y) * (end.y - start.y)) / square
    return apart(dot, along(start, end, min(1.0, max(0.0, share))))


def distance_to_line(dot: Dot, line: Line) -> float:
    """Distance of a dot from a line."""
    return min((distance_to(dot, start, end) for start, end in pairwise(line)), default=math.inf)


def wave(line: Line, measures: Measures) -> tuple[Line, Line]:
    """A wave along a line, as a bent piece, and the straight last piece of the way."""
    whole = length(line) - measures.wave_tail
    halves = max(1, round(2 * whole / measures.wave_length))
    half = whole / halves
    dots = [line[0]]
    for index in range(halves):
        middle = (index + 0.5) * half
        side = 1 if index % 2 == 0 else -1
        across = angle_at(line, middle) + math.pi / 2
        swing = 2 * measures.wave_half * side * min(1.0, (index + 1) / 2)
        dots += [moved(at_length(line, middle), across, swing), at_length(line, (index + 1) * half)]
    return tuple(dots), trimmed(line, whole, 0.0)


def filled_head(tip: Dot, direction: float, measures: Measures) -> Line:
    """The three corners of a filled head."""
    back = moved(tip, direction + math.pi, measures.head_length)
    across = direction + math.pi / 2
    return (tip, moved(back, across, measures.head_half), moved(back, across, -measures.head_half))


def open_head(tip: Dot, direction: float, measures: Measures) -> Line:
    """The V of an open head."""
    back = moved(tip, direction + math.pi, measures.open_back)
    across = direction + math.pi / 2
    return (moved(back, across, measures.open_half), tip, moved(back, across, -measures.open_half))
