"""Where the sides of an open-play box stand in the picture: mixed, apart, the same every time; metres from its middle.

It shows that they play, not how: nothing here is rehearsed.
"""

import math

from conewright.model.exercise import OpenPlay, PlayKind
from conewright.model.geometry import Point, distance_m, middle
from conewright.model.layout import Side

GOLDEN = 0.6180339887498949  # steps by it fall evenly and never in a row
PLASTIC = 0.7548776662466927, 0.5698402909980532  # the same for two directions at once
PUSHES = 24
MIX = 0.42  # how far two sides of a game reach into each other, parts of the box


def spread(play: OpenPlay, sides: tuple[Side, ...], edge_m: float) -> tuple[tuple[Point, ...], ...]:
    """One spot a child by side, from the middle of the box, `edge_m` clear of its edges."""
    count = sum(side.count for side in sides)
    if not count:
        return tuple(() for _ in sides)
    half = Point(max(play.width_m / 2 - edge_m, 0.3), max(play.depth_m / 2 - edge_m, 0.3))
    spots = _even(count, half)
    order = _inner_first(spots) if play.kind in (PlayKind.KEEP, PlayKind.CHASE) else _along_play(play, spots)
    return _dealt(sides, spots, order, inner=play.kind in (PlayKind.KEEP, PlayKind.CHASE))


def _even(count: int, half: Point) -> list[Point]:
    spots = [
        Point(
            (2 * ((0.5 + PLASTIC[0] * (index + 1)) % 1) - 1) * half.x_m,
            (2 * ((0.5 + PLASTIC[1] * (index + 1)) % 1) - 1) * half.y_m,
        )
        for index in range(count)
    ]
    wanted = 1.7 * math.sqrt(half.x_m * half.y_m / count)
    for _ in range(PUSHES):
        spots = [_eased(spot, spots, wanted, half) for spot in spots]
    return spots


def _eased(spot: Point, spots: list[Point], wanted: float, half: Point) -> Point:
    x, y = spot
    for other in spots:
        gap = distance_m(spot, other)
        if other is not spot and gap < wanted:
            push = 0.35 * (wanted - gap) / max(gap, 1e-6)
            x, y = x + push * (spot.x_m - other.x_m), y + push * (spot.y_m - other.y_m)
    return Point(min(max(x, -half.x_m), half.x_m), min(max(y, -half.y_m), half.y_m))


def _inner_first(spots: list[Point]) -> list[int]:
    """Spots from the middle outwards, but never two neighbours in a row: the few inside stand apart."""
    centre = middle(tuple(spots))
    left = sorted(range(len(spots)), key=lambda index: (round(distance_m(spots[index], centre), 6), index))
    order = [left.pop(0)]
    while left:
        near = left[: max(1, (len(left) + 1) // 2)]
        best = max(near, key=lambda index: min(distance_m(spots[index], spots[taken]) for taken in order))
        left.remove(best)
        order.append(best)
    return order


def _along_play(play: OpenPlay, spots: list[Point]) -> list[int]:
    """Spots from one end of the box to the other, stirred so that the two sides stand among each other."""
    across = play.width_m > play.depth_m
    reach = (play.width_m if across else play.depth_m) or 1.0
    stir = [MIX * reach * (((index + 1) * GOLDEN) % 1 - 0.5) for index in range(len(spots))]
    ends = [(spot.x_m if across else spot.y_m) for spot in spots]
    return sorted(range(len(spots)), key=lambda index: (ends[index] + stir[index], index))


def _dealt(
    sides: tuple[Side, ...], spots: list[Point], order: list[int], *, inner: bool
) -> tuple[tuple[Point, ...], ...]:
    """The order cut into the sides: the smallest side first where it stands inside, neutrals in the middle else."""
    turn = sorted(range(len(sides)), key=lambda index: (sides[index].count, index)) if inner else _ends_last(sides)
    dealt: dict[int, tuple[Point, ...]] = {}
    rest = list(order)
    for index in turn:
        taken, rest = rest[: sides[index].count], rest[sides[index].count :]
        dealt[index] = tuple(spots[spot] for spot in taken)
    return tuple(dealt[index] for index in range(len(sides)))


def _ends_last(sides: tuple[Side, ...]) -> list[int]:
    """First the first side, then the odd ones, then the last full side, so that the full sides hold the ends."""
    full = [index for index, side in enumerate(sides) if side.count > 1]
    odd = [index for index in range(len(sides)) if index not in full]
    return [*full[:1], *odd, *full[1:]]
