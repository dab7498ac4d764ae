"""Courses turned into lines with heads on the picture, trimmed at marks; must not know who runs along them or why."""

import math
from dataclasses import dataclass

from conewright.drawing.canvas import Canvas
from conewright.drawing.courses import Course
from conewright.drawing.measures import Measures
from conewright.drawing.strokes import (
    Line,
    angle,
    angle_at,
    apart,
    at_length,
    at_share,
    distance_to_line,
    filled_head,
    length,
    moved,
    open_head,
    smoothed,
    spare,
    trimmed,
    wave,
)
from conewright.drawing.view import View
from conewright.model.scene import Data, Dot, Group, Path, Shape

SPARE_PARTS = 90  # a line may leave out dots that change it by less than this part of a mark
SHORTEST = 1.4  # in lengths of a head: what must be left of a line between its ends
LOOK_AT = (0.25, 0.4, 0.55, 0.7, 0.85)  # along a loop, where others may be in the way
LOOP = ((0.48, 0.52), (0.97, 0.32), (0.97, 0.04))  # along the check, and to its side, parts of its length


@dataclass(frozen=True, slots=True, kw_only=True)
class Stroke:
    """A drawn course: its whole way on the picture, for numbers and names to keep off and to stand on."""

    course: Course
    line: Line


def stroke(course: Course, view: View, canvas: Canvas, marks: tuple[tuple[Dot, float], ...]) -> Stroke | None:
    """The way of a course on the picture, trimmed at marks; None where nothing is left to draw."""
    measures = canvas.measures
    if course.loop:
        line = _loop(view.line(course.points), canvas, marks)
    else:
        line = view.line(course.points)
        line = line if course.is_ball else smoothed(line)
    line = tuple(canvas.within(dot, measures.gap) for dot in line)
    start = _trim(line, marks, measures)
    end = 0.0 if course.loop else _trim(line[::-1], marks, measures)
    shortest = SHORTEST * measures.head_length
    if length(line) - start - end < shortest:
        start, end = start * 0.8, end * 0.8
    if length(line) - start - end < shortest:
        return None
    return Stroke(course=course, line=spare(trimmed(line, start, end), measures.radius / SPARE_PARTS))


def _trim(line: Line, marks: tuple[tuple[Dot, float], ...], measures: Measures) -> float:
    """How much of the start of a line lies on the mark it starts at, or within the gap round it."""
    on = [(spot, radius + measures.gap) for spot, radius in marks if apart(line[0], spot) < radius + measures.gap]
    if not on:
        return measures.gap
    whole, run, pace = length(line), 0.0, measures.gap / 10
    while run < whole / 2 and any(apart(at_length(line, run), spot) < reach for spot, reach in on):
        run += pace
    return run


def _loop(line: Line, canvas: Canvas, marks: tuple[tuple[Dot, float], ...]) -> Line:
    """Away from the ball, round and back again, on the side where less is in the way."""
    start, away = line[0], line[-1]
    mark = max((radius for spot, radius in marks if apart(spot, start) < radius), default=0.0)
    reach = max(apart(start, away), 2.6 * (mark + canvas.measures.gap))
    heading = angle(start, away)
    home = moved(start, heading, max(0.5 * reach, mark + canvas.measures.gap))

    def side(sign: int) -> Line:
        bends = (
            moved(moved(start, heading, reach * forth), heading + sign * math.pi / 2, reach * out)
            for forth, out in LOOP
        )
        return smoothed((start, *bends, home))

    return min((side(-1), side(1)), key=lambda way: _in_the_way(way, canvas, start))


def _in_the_way(way: Line, canvas: Canvas, start: Dot) -> float:
    """How much lies near a way, its own mark left out; a mark counts more than a line."""
    spots = [at_share(way, share) for share in LOOK_AT]
    clear = canvas.measures.step_side
    discs = sum(apart(spot, at) < taken + clear for spot in spots for at, taken in canvas.discs if at != start)
    lines = sum(distance_to_line(spot, line) < clear for spot in spots for line in canvas.lines)
    return 3.0 * discs + lines


def inked(drawn: Stroke, measures: Measures, tradition: str, state: str) -> tuple[Group, Group]:
    """The band under a line, and the line with its head, with act and step as data; `state` is "", "lit" or "dim"."""
    course, line = drawn.course, drawn.line
    data: Data = (("step", str(course.step)), ("act", str(course.act)))
    tip, direction = line[-1], angle_at(line, length(line) - 0.3 * measures.head_length)
    direction = angle(at_share(line, 1 - min(0.5, measures.head_length / length(line))), tip) or direction
    filled = course.kind in ("ball", "shot", "with")
    body = trimmed(line, 0.0, 0.8 * measures.head_length) if filled else line
    shapes: list[Shape] = [*_body(course.kind, body, measures, tradition)]
    if filled:
        shapes.append(Path(pieces=(filled_head(tip, direction, measures),), name="head", closed=True))
    else:
        thin = " thin" if course.kind == "back" else ""
        shapes.append(Path(pieces=(open_head(tip, direction, measures),), name=f"vhead{thin}"))
    band = Group(shapes=(Path(pieces=(line,), name="band"),), name=f"act {state}".strip(), data=data)
    return band, Group(shapes=tuple(shapes), name=f"act {state}".strip(), data=data)


def _body(kind: str, line: Line, measures: Measures, tradition: str) -> tuple[Path, ...]:
    if kind == "with":
        waved, rest = wave(line, measures)
        tail = () if apart(rest[0], rest[-1]) < 1e-6 else (rest,)
        bent = Path(pieces=(waved,), name="ln with", bent=True)
        return (bent, *(Path(pieces=(piece,), name="ln with") for piece in tail))
    if kind == "shot":
        return (Path(pieces=(line,), name="ln shot"), Path(pieces=(line,), name="core"))
    broken = " broken" if is_broken(kind, tradition) else ""
    return (Path(pieces=(line,), name=f"ln {kind}{broken}"),)


def is_broken(kind: str, tradition: str) -> bool:
    """Whether a line of that kind is drawn broken: the run in tradition A, the ball in B."""
    return kind == ("run" if tradition == "A" else "ball")
