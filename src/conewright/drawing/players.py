"""The sides of an open-play box on a canvas: marks, bibs, balls; must not know what they will do."""

import math

from conewright.drawing.canvas import Canvas
from conewright.drawing.marks import BEAK_TIP, GROUP_WORDS, WAITING_SHARE, ball, ball_radius
from conewright.drawing.options import PictureOptions
from conewright.drawing.people import RESTING, Person, resting
from conewright.drawing.placing import ball_spot, off_kit, spread_apart
from conewright.drawing.spread import spread
from conewright.drawing.stands import letters_of, put_mark, put_thread
from conewright.drawing.strokes import angle, apart, moved
from conewright.drawing.view import View
from conewright.model.exercise import Bib, OpenPlay, PlayKind, Team
from conewright.model.geometry import Point
from conewright.model.layout import Side
from conewright.model.scene import Dot

SHARING = "shares"


def bibs_of(sides: tuple[Side, ...]) -> tuple[Bib | None, ...]:
    """The colour of each side: its own, the one it is named after, else the next free one where there are several."""
    colours = [side.team.bib or next((bib for bib in Bib if bib.value == side.team.name), None) for side in sides]
    several = sum(1 for side in sides if not _is_odd(side.team)) > 1
    for index, side in enumerate(sides):
        if colours[index] is None and several and not _is_odd(side.team):
            colours[index] = next((bib for bib in Bib if bib not in colours), None)
    return tuple(colours)


def _is_odd(team: Team) -> bool:
    return team.name in ("neutral", "everyone", RESTING, SHARING)


def put_players(
    canvas: Canvas, play: OpenPlay, sides: tuple[Side, ...], *, view: View, options: PictureOptions, radius: float
) -> None:
    """Draw who plays in the box, those who rest beside it, and the balls."""
    inside = tuple(side for side in sides if side.team.name != RESTING)
    rests = sum(side.count for side in sides) - sum(side.count for side in inside)
    edge_m = (BEAK_TIP * radius + canvas.measures.gap) / view.metre
    spots = tuple(
        tuple(view.dot(Point(play.middle.x_m + spot.x_m, play.middle.y_m + spot.y_m)) for spot in side)
        for side in spread(play, inside, edge_m)
    )
    persons = _persons(inside, bibs_of(sides))
    apart_spots = spread_apart(tuple(spot for side in spots for spot in side), 2.4 * radius)
    apart_spots = tuple(off_kit(canvas, spot, radius) for spot in apart_spots)
    owner = _first_owner(play, inside, apart_spots)
    for index, (one, at) in enumerate(zip(persons, apart_spots, strict=True)):
        looks = angle(at, _target(play, view, apart_spots, owner, index))
        letters = letters_of(one, radius, options, waits=False)
        put_mark(canvas, one, at, radius=radius, letters=letters, looks=looks)
    if rests:
        corner = view.dot(Point(play.middle.x_m + play.width_m / 2, play.middle.y_m - play.depth_m / 2))
        start = canvas.within(Dot(corner.x + 1.6 * radius, corner.y - 1.6 * radius), 1.1 * radius)
        start = off_kit(canvas, start, WAITING_SHARE * radius)
        line = resting(rests, after=len(persons))
        put_thread(canvas, line, start=start, grows=-math.pi / 2, radius=radius, options=options)
    for index in _owners(play, inside, owner):
        looks = angle(apart_spots[index], _target(play, view, apart_spots, owner, index))
        spot = ball_spot(canvas, apart_spots[index], radius, looks, ball_radius(radius, canvas.measures))
        canvas.add("ball", ball(spot, radius, canvas.measures))


def _persons(sides: tuple[Side, ...], bibs: tuple[Bib | None, ...]) -> tuple[Person, ...]:
    found: list[Person] = []
    for side, bib in zip(sides, bibs, strict=False):
        group = GROUP_WORDS[bib]
        letter = group.upper() if bib else "N" if side.team.name == "neutral" else ""
        for rank in range(side.count):
            name = f"{letter}{rank + 1}" if side.count > 1 or not letter else letter
            number = len(found)
            found.append(Person(number=number, place=side.team.name, rank=rank, group=group, letter=letter, name=name))
    return tuple(found)


def _first_owner(play: OpenPlay, sides: tuple[Side, ...], spots: tuple[Dot, ...]) -> int:
    """Who has the ball at first: one of the first side, away from the middle where it is to be kept, else near it."""
    first = max(range(len(sides)), key=lambda index: sides[index].count) if play.kind is PlayKind.KEEP else 0
    start = sum(side.count for side in sides[:first])
    mine = range(start, start + sides[first].count) if sides else range(0)
    if not mine:
        return 0
    centre = Dot(sum(spot.x for spot in spots) / len(spots), sum(spot.y for spot in spots) / len(spots))
    far = play.kind is PlayKind.KEEP
    return (max if far else min)(mine, key=lambda index: apart(spots[index], centre))


def _owners(play: OpenPlay, sides: tuple[Side, ...], first: int) -> tuple[int, ...]:
    """Who has a ball beside them."""
    count = sum(side.count for side in sides)
    if play.kind is PlayKind.BALL_EACH or any(side.team.has_ball_each for side in sides):
        owners: list[int] = []
        start = 0
        some = any(side.team.has_ball_each for side in sides)
        for side in sides:
            has = side.team.has_ball_each or not some
            owners += range(start, start + side.count) if has and side.team.name != SHARING else []
            start += side.count
        return tuple(owners)
    step = max(1, count // max(1, play.balls))
    return tuple((first + step * index) % count for index in range(min(play.balls, count))) if count else ()


def _target(play: OpenPlay, view: View, spots: tuple[Dot, ...], owner: int, index: int) -> Dot:
    """What somebody looks at: the ball; who has it, and everybody with a ball of their own, the middle."""
    centre = view.dot(play.middle)
    if play.kind is PlayKind.BALL_EACH:
        return moved(spots[index], index * 2.4, 10.0)
    if index == owner:
        return centre if apart(spots[index], centre) > 1.0 else moved(centre, -math.pi / 2, 10.0)
    return spots[owner]
