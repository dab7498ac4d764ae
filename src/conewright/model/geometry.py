"""Points on the ground in metres, x to the right and y up the page; must not know what stands on them."""

import math
from dataclasses import dataclass
from itertools import pairwise
from typing import NamedTuple


class Point(NamedTuple):
    """A spot on the ground, metres. A pair, because every formula reads it as one."""

    x_m: float
    y_m: float


ORIGIN = Point(0.0, 0.0)


def distance_m(start: Point, end: Point) -> float:
    """Length of the straight line between two points, metres."""
    return math.hypot(end.x_m - start.x_m, end.y_m - start.y_m)


def heading_rad(start: Point, end: Point) -> float:
    """Direction from start to end, radians anticlockwise from the x axis; 0 where they are one point."""
    return math.atan2(end.y_m - start.y_m, end.x_m - start.x_m)


def angle_between_rad(first: float, second: float) -> float:
    """The turn between two headings, 0 to pi radians."""
    turn = abs(first - second) % math.tau
    return math.tau - turn if turn > math.pi else turn


def ahead(start: Point, end: Point, length_m: float) -> Point:
    """The point `length_m` from start on the way to end; start itself where they are one point."""
    whole = distance_m(start, end)
    if whole == 0:
        return start
    share = length_m / whole
    return Point(start.x_m + (end.x_m - start.x_m) * share, start.y_m + (end.y_m - start.y_m) * share)


def toward(start: Point, heading: float, length_m: float) -> Point:
    """The point `length_m` from start along a heading in radians."""
    return Point(start.x_m + math.cos(heading) * length_m, start.y_m + math.sin(heading) * length_m)


def middle(points: tuple[Point, ...]) -> Point:
    """The mean of some points; the origin where there are none."""
    if not points:
        return Point(0.0, 0.0)
    return Point(sum(point.x_m for point in points) / len(points), sum(point.y_m for point in points) / len(points))


def path_length_m(path: tuple[Point, ...]) -> float:
    """Length of a line through points, metres."""
    return sum(distance_m(start, end) for start, end in pairwise(path))


def along(path: tuple[Point, ...], length_m: float) -> Point:
    """The point `length_m` along a line through points; its last point where it is shorter."""
    left = length_m
    for start, end in pairwise(path):
        piece = distance_m(start, end)
        if left <= piece and piece > 0:
            return ahead(start, end, left)
        left -= piece
    return path[-1]


def nearest_on_segment(point: Point, start: Point, end: Point) -> Point:
    """The point of the straight line from start to end that lies nearest to `point`."""
    across, up = end.x_m - start.x_m, end.y_m - start.y_m
    square = across * across + up * up
    if square == 0:
        return start
    share = ((point.x_m - start.x_m) * across + (point.y_m - start.y_m) * up) / square
    share = min(1.0, max(0.0, share))
    return Point(start.x_m + across * share, start.y_m + up * share)


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """An upright rectangle on the ground, metres."""

    left_m: float
    bottom_m: float
    right_m: float
    top_m: float

    @property
    def width_m(self) -> float:
        """Extent to the right, metres."""
        return self.right_m - self.left_m

    @property
    def depth_m(self) -> float:
        """Extent up the page, metres."""
        return self.top_m - self.bottom_m

    @property
    def middle(self) -> Point:
        """The middle of the box."""
        return Point((self.left_m + self.right_m) / 2, (self.bottom_m + self.top_m) / 2)


def box_round(points: tuple[Point, ...], margin_m: float = 0.0) -> Box:
    """The smallest box that holds all points, with a margin on every side; an empty box where there are none."""
    xs = tuple(point.x_m for point in points) or (0.0,)
    ys = tuple(point.y_m for point in points) or (0.0,)
    return Box(
        left_m=min(xs) - margin_m,
        bottom_m=min(ys) - margin_m,
        right_m=max(xs) + margin_m,
        top_m=max(ys) + margin_m,
    )
