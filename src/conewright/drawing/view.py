"""The ground laid on the picture: metres to drawing units, squares and numbers; must not know what stands on it."""

import math
from collections.abc import Callable
from dataclasses import dataclass

from conewright.drawing.letters import width_of
from conewright.drawing.measures import Measures
from conewright.drawing.options import PictureOptions
from conewright.model.geometry import Box, Point, toward
from conewright.model.scene import Dot, Group, Path, Rect, Shape, Text

HEAVY_M = 5  # every fifth line is heavier and numbered

Placer = Callable[[Point], Point]


def _as_it_is(point: Point) -> Point:
    return point


@dataclass(frozen=True, slots=True, kw_only=True)
class View:
    """A box of ground in metres shown at `scale` drawing units a metre, its upper left corner at `corner`.

    Play runs up the page, or to the right where `turned`. `place` says where a point of the exercise lies on the
    ground, `shrink` how many metres of ground a metre of the exercise is.
    """

    box: Box
    scale: float
    corner: Dot
    turned: bool
    place: Placer = _as_it_is
    shrink: float = 1.0

    @property
    def metre(self) -> float:
        """Drawing units of a metre of the exercise."""
        return self.scale * self.shrink

    @property
    def width(self) -> float:
        """Width of the ground on the picture."""
        return (self.box.depth_m if self.turned else self.box.width_m) * self.scale

    @property
    def height(self) -> float:
        """Height of the ground on the picture."""
        return (self.box.width_m if self.turned else self.box.depth_m) * self.scale

    def ground(self, point: Point) -> Dot:
        """A point of the ground on the picture."""
        if self.turned:
            across, down = point.y_m - self.box.bottom_m, point.x_m - self.box.left_m
        else:
            across, down = point.x_m - self.box.left_m, self.box.top_m - point.y_m
        return Dot(self.corner.x + across * self.scale, self.corner.y + down * self.scale)

    def dot(self, point: Point) -> Dot:
        """A point of the exercise on the picture."""
        return self.ground(self.place(point))

    def line(self, points: tuple[Point, ...]) -> tuple[Dot, ...]:
        """A path of the exercise on the picture."""
        return tuple(self.dot(point) for point in points)

    def direction(self, point: Point, heading: float) -> float:
        """A heading of the exercise (radians anticlockwise from its x axis) as a direction on the picture."""
        start, end = self.dot(point), self.dot(toward(point, heading, 1.0))
        return math.atan2(end.y - start.y, end.x - start.x)


def fitted(box: Box, options: PictureOptions, *, most_scale: float = math.inf) -> View:
    """The view that shows a box of ground as large as the width and height of the options allow."""
    measures = options.measures
    left, right, top, bottom = room(options)
    across, up = (box.depth_m, box.width_m) if options.turned else (box.width_m, box.depth_m)
    scale = (options.width - left - right) / across
    if options.most_height is not None:
        scale = min(scale, (options.most_height - top - bottom) / up)
    scale = max(min(scale, most_scale), measures.radius_least / 12)
    return View(box=box, scale=scale, corner=Dot(left, top), turned=options.turned)


def room(options: PictureOptions) -> tuple[float, float, float, float]:
    """What is left free beside the ground: left, right, above, below."""
    measures = options.measures
    if not options.numbers:
        return (1.0, 1.0, 1.0, 1.0) if measures.unit == "px" else (0.2, 0.2, 0.2, 0.2)
    return measures.room_left, measures.room_round, measures.room_round, measures.room_below


def grid(view: View, measures: Measures, *, numbers: bool) -> Group:
    """The squared ground: a line each metre, each fifth heavier, and numbers along the left and lower edges."""
    left, top = view.corner
    right, bottom = left + view.width, top + view.height
    shapes: list[Shape] = [Rect(at=view.corner, width=view.width, height=view.height, name="ground")]
    light: list[tuple[Dot, ...]] = []
    heavy: list[tuple[Dot, ...]] = []
    for metre, x in _marks(view, across=True):
        (light if metre % HEAVY_M else heavy).append((Dot(x, top), Dot(x, bottom)))
    for metre, y in _marks(view, across=False):
        (light if metre % HEAVY_M else heavy).append((Dot(left, y), Dot(right, y)))
    shapes += [Path(pieces=tuple(light), name="g1"), Path(pieces=tuple(heavy), name="g5")]
    if numbers:
        shapes += _numbers(view, measures)
    return Group(shapes=tuple(shapes), name="l-grid")


def _marks(view: View, *, across: bool) -> list[tuple[int, float]]:
    """Whole metres along one side of the picture, with their places on it."""
    flat = across != view.turned
    low, high = (view.box.left_m, view.box.right_m) if flat else (view.box.bottom_m, view.box.top_m)
    metres = range(math.ceil(low - 1e-6), math.floor(high + 1e-6) + 1)
    spots = ((metre, view.ground(Point(metre, low) if flat else Point(low, metre))) for metre in metres)
    return [(metre, dot.x if across else dot.y) for metre, dot in spots]


def _numbers(view: View, measures: Measures) -> list[Shape]:
    size, rise = measures.number_size, measures.number_size * 0.35
    bottom, left = view.corner.y + view.height, view.corner.x
    lower = [(metre, x) for metre, x in _marks(view, across=True) if metre % HEAVY_M == 0]
    upper = [(metre, y) for metre, y in _marks(view, across=False) if metre % HEAVY_M == 0]
    shapes: list[Shape] = []
    for metre, x in lower:
        words = written(metre) + (" m" if (metre, x) == lower[-1] else "")
        over = x + width_of(words, size) / 2 > left + view.width + measures.room_round
        at = Dot(left + view.width + measures.room_round if over else x, bottom + size * 1.3)
        shapes.append(Text(at=at, words=words, size=size, name="gn", anchor="end" if over else "middle"))
    for metre, y in upper:
        at = Dot(left - size * 0.5, y + rise)
        shapes.append(Text(at=at, words=written(metre), size=size, name="gn", anchor="end"))
    return shapes


def written(metre: int) -> str:
    """A whole number with a true minus sign."""
    return str(metre).replace("-", "\N{MINUS SIGN}")
