"""Where the sides of an open-play box stand in the picture: mixed, apart, the same every time; metres from its middle.

It shows that they play, not how: nothing here is rehearsed.
"""

import math

from conewright.model.exercise import OpenPlay, PlayKind
from conewright.model.geometry import Point, distance_m
from conewright.model.layout import Side

GOLDEN = 0.6180339887498949  # steps by it fall evenly and never in a row
PLASTIC = 0.7548776662466927, 0.5698402909980532  # the same for two directions at once
ROUNDS = 12
FIELDS = 14  # the box is cut into so many fields each way to see who is nearest to what
STIR = 0.16  # how far spots leave the even pattern, parts of the way to the next
MIX = 1.15  # how far two sides of a game reach into each other, parts of the box
ROUND_BOX = 8  # so many or fewer keep the ball from round the box, more of them from all over it
RING = 0.86  # how far out they stand


def spread(play: OpenPlay, sides: tuple[Side, ...], edge_m: float) -> tuple[tuple[Point, ...], ...]:
    """One spot a child by side, counted from the middle of the box, `edge_m` clear of its edges."""
    half = Point(max(play.width_m / 2 - edge_m, 0.3), max(play.depth_m / 2 - edge_m, 0.3))
    most = max((side.count for side in sides), default=0)
    if play.kind is PlayKind.KEEP and len(sides) > 1 and most <= ROUND_BOX:
        return _kept_from_within(sides, half)
    spots = _even(sum(side.count for side in sides), half)
    inner = play.kind in (PlayKind.KEEP, PlayKind.CHASE)
    order = _scattered(spots) if inner else _along_play(play, spots)
    return _dealt(sides, spots, order, small_first=inner)


def _kept_from_within(sides: tuple[Side, ...], half: Point) -> tuple[tuple[Point, ...], ...]:
    """The largest side round the box, the others inside it."""
    outer = max(range(len(sides)), key=lambda index: (sides[index].count, -index))
    others = tuple(index for index in range(len(sides)) if index != outer)
    inside = _even(sum(sides[index].count for index in others), Point(half.x_m * 0.5, half.y_m * 0.5))
    dealt = {outer: _ring(sides[outer].count, half)}
    for index in others:
        dealt[index], inside = tuple(inside[: sides[index].count]), inside[sides[index].count :]
    return tuple(dealt[index] for index in range(len(sides)))


def _ring(count: int, half: Point) -> tuple[Point, ...]:
    """Spots round the box, a little out of step so that they look like children."""
    spots = []
    for index in range(count):
        turn = math.tau * (index + 0.5 + STIR * ((index * GOLDEN) % 1 - 0.5)) / count - math.pi / 2
        across, up = math.cos(turn), math.sin(turn)
        reach = RING / max(abs(across), abs(up)) if count > 4 else RING * 1.15
        spots.append(Point(across * reach * half.x_m, up * reach * half.y_m))
    return tuple(spots)


def _even(count: int, half: Point) -> list[Point]:
    """Spots that share the box evenly: each moves to the middle of what is nearest to it, a few times over."""
    spots = [
        Point(
            (2 * ((0.5 + PLASTIC[0] * (index + 1)) % 1) - 1) * half.x_m,
            (2 * ((0.5 + PLASTIC[1] * (index + 1)) % 1) - 1) * half.y_m,
        )
        for index in range(count)
    ]
    steps = [(2 * (part + 0.5) / FIELDS - 1) * 1.12 for part in range(FIELDS)]
    fields = [Point(across * half.x_m, up * half.y_m) for across in steps for up in steps]
    for _ in range(ROUNDS if count > 1 else 0):
        spots = _shared_out(spots, fields)
    gap = math.sqrt(half.x_m * half.y_m * 4 / max(count, 1))
    return [_stirred(spot, index, STIR * gap, half) for index, spot in enumerate(spots)]


def _shared_out(spots: list[Point], fields: list[Point]) -> list[Point]:
    held: list[list[Point]] = [[] for _ in spots]
    for field in fields:
        nearest = min(range(len(spots)), key=lambda index: distance_m(spots[index], field))
        held[nearest].append(field)
    return [
        Point(sum(f.x_m for f in own) / len(own), sum(f.y_m for f in own) / len(own)) if own else spot
        for spot, own in zip(spots, held, strict=True)
    ]


def _stirred(spot: Point, index: int, by_m: float, half: Point) -> Point:
    turn = math.tau * (index * GOLDEN % 1)
    x, y = spot.x_m + math.cos(turn) * by_m, spot.y_m + math.sin(turn) * by_m
    return Point(min(max(x, -half.x_m), half.x_m), min(max(y, -half.y_m), half.y_m))


def _scattered(spots: list[Point]) -> list[int]:
    """An order in which each next spot lies far from those before: the few of a small side stand apart."""
    if not spots:
        return []
    first = min(range(len(spots)), key=lambda index: (round(math.hypot(*spots[index]), 6), index))
    order, left = [first], [index for index in range(len(spots)) if index != first]
    while left:
        best = max(left, key=lambda index: min(distance_m(spots[index], spots[taken]) for taken in order))
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
    sides: tuple[Side, ...], spots: list[Point], order: list[int], *, small_first: bool
) -> tuple[tuple[Point, ...], ...]:
    """The order cut into the sides: small ones first where sides scatter, odd ones between two full sides of a game."""
    small = sorted(range(len(sides)), key=lambda index: (sides[index].count, index))
    dealt: dict[int, tuple[Point, ...]] = {}
    rest = list(order)
    for index in small if small_first else _odd_between(sides):
        taken, rest = rest[: sides[index].count], rest[sides[index].count :]
        dealt[index] = tuple(spots[spot] for spot in taken)
    return tuple(dealt[index] for index in range(len(sides)))


def _odd_between(sides: tuple[Side, ...]) -> list[int]:
    full = [index for index, side in enumerate(sides) if side.count > 1]
    odd = [index for index in range(len(sides)) if index not in full]
    return [*full[:1], *odd, *full[1:]]
