"""People at places on a canvas: marks, threads, ticks, balls beside their owners; must not know the lines of play."""

import math
from dataclasses import dataclass

from conewright.drawing.canvas import Area, Canvas
from conewright.drawing.marks import BEAK_TIP, WAITING_SHARE, ball, ball_radius, person, tick
from conewright.drawing.measures import Measures
from conewright.drawing.options import PictureOptions
from conewright.drawing.people import Person, folded
from conewright.drawing.placing import ball_spot, spread_apart
from conewright.drawing.strokes import moved
from conewright.drawing.view import View
from conewright.model.exercise import Exercise, Place, SupplyKind
from conewright.model.geometry import Point, toward
from conewright.model.ground import facing_rad, line_heading_rad
from conewright.model.scene import Dot, Path

STOCK_SHOWN = 3  # balls drawn of a stock
BEHIND_TICK = 5 / 12  # more room behind a tick, in radii of a mark
LEAST_STEP = 1.75  # of a line, in radii of a mark
STEEP = 0.5  # a line that goes down more steeply than this passes the tick


@dataclass(frozen=True, slots=True, kw_only=True)
class Stand:
    """A place on the picture: its spot, where its head looks, where its line grows (both directions), its people.

    `step` is the way from one to the next in its line, `first_step` that from the head to the first who waits.
    """

    place: Place
    spot: Dot
    looks: float
    grows: float
    people: tuple[Person, ...]
    radius: float
    step: float
    first_step: float

    def rank_spot(self, rank: int) -> Dot:
        """Where the so-manieth of the line stands, the head being 0."""
        return moved(self.spot, self.grows, self.first_step + self.step * (rank - 1)) if rank else self.spot


def mark_radius(scale: float, measures: Measures) -> float:
    """How large a person's mark is at a scale of drawing units a metre."""
    return max(measures.radius_least, min(measures.radius, scale * measures.radius_share_m))


def stands_of(
    exercise: Exercise, everybody: tuple[Person, ...], *, view: View, options: PictureOptions
) -> tuple[Stand, ...]:
    """The places of an exercise on the picture; where marks would lie on each other they are pushed apart."""
    radius = mark_radius(view.scale, options.measures)
    spots = spread_apart(tuple(view.dot(place.at) for place in exercise.places), 2.05 * radius)
    plays = exercise.open_play is not None and exercise.script is None
    stands = []
    for place, spot in zip(exercise.places, spots, strict=True):
        grows = view.direction(place.at, line_heading_rad(exercise, place))
        step = max(view.metre, LEAST_STEP * radius)
        past_tick = options.names and math.sin(grows) > STEEP
        first = max(step + BEHIND_TICK * radius, _past_tick(radius, options.measures)) if past_tick else step
        playing = plays and not (place.adult or place.keeper)
        stands.append(
            Stand(
                place=place,
                spot=spot,
                looks=view.direction(place.at, facing_rad(exercise, place)),
                grows=grows,
                people=() if playing else tuple(one for one in everybody if one.place == place.name),
                radius=radius,
                step=step,
                first_step=first,
            )
        )
    return tuple(stands)


def _past_tick(radius: float, measures: Measures) -> float:
    """How far the first who waits has to stand for its beak to clear the tick under the head."""
    return radius + measures.tick_below + 1.05 * BEAK_TIP * WAITING_SHARE * radius


def tails(exercise: Exercise, stands: tuple[Stand, ...], view: View) -> dict[str, Point]:
    """Where a comer joins each line that somebody waits in, in metres of the exercise."""
    found = {}
    for stand in stands:
        waiting = len(folded(stand.people)) - 1
        if waiting > 0:
            reach_m = (stand.first_step + stand.step * waiting + BEHIND_TICK * stand.radius) / view.metre
            found[stand.place.name] = toward(stand.place.at, line_heading_rad(exercise, stand.place), reach_m)
    return found


def put_stand(canvas: Canvas, stand: Stand, options: PictureOptions) -> None:
    """Draw a place with its tick, its head and those who wait."""
    if options.names:
        _put_tick(canvas, stand)
    shown = tuple((one, "") for one in stand.people) if options.everyone else folded(stand.people)
    if len(shown) > 1:
        canvas.add("place", Path(pieces=((stand.spot, stand.rank_spot(len(shown) - 1)),), name="queue"))
    for rank, (one, instead) in reversed(tuple(enumerate(shown))):
        waits = rank > 0
        put_mark(
            canvas,
            one,
            stand.rank_spot(rank),
            radius=stand.radius * (WAITING_SHARE if waits else 1.0),
            letters=instead or letters_of(one, stand.radius, options, waits=waits),
            looks=stand.grows + math.pi if waits else stand.looks,
            waits=waits,
        )


def _put_tick(canvas: Canvas, stand: Stand) -> None:
    chalk = tick(stand.spot, stand.radius, canvas.measures)
    canvas.add("place", chalk)
    low, high = chalk.pieces[0]
    half = 0.1 * stand.radius
    canvas.areas.append(Area(low=Dot(low.x - half, low.y - half), high=Dot(high.x + half, high.y + half)))


def put_mark(
    canvas: Canvas, one: Person, at: Dot, *, radius: float, letters: str, looks: float, waits: bool = False
) -> None:
    """Draw somebody's mark and take its ground and that of its beak."""
    mark = person(
        at,
        radius,
        group=one.group,
        letters=letters,
        direction=looks,
        measures=canvas.measures,
        waiting=waits,
        data=one.data,
    )
    canvas.add("person", mark)
    canvas.discs.append((at, radius))
    canvas.discs.append((moved(at, looks, 1.3 * radius), (BEAK_TIP - 1.3) * radius))


def put_thread(
    canvas: Canvas, line: tuple[Person, ...], *, start: Dot, grows: float, radius: float, options: PictureOptions
) -> None:
    """Draw people who wait away from any place, all small, on a thread."""
    shown = folded(line)
    spots = [moved(start, grows, rank * LEAST_STEP * radius) for rank in range(len(shown))]
    if len(spots) > 1:
        canvas.add("place", Path(pieces=((spots[0], spots[-1]),), name="queue"))
    for (one, instead), at in zip(shown, spots, strict=True):
        letters = instead or letters_of(one, radius, options, waits=True)
        put_mark(canvas, one, at, radius=WAITING_SHARE * radius, letters=letters, looks=grows + math.pi, waits=True)


def letters_of(one: Person, radius: float, options: PictureOptions, *, waits: bool) -> str:
    """What stands in a mark: letter and number where there is room, else the letter; a number without a bib."""
    roomy = radius >= options.measures.radius and options.numbered and not waits
    if one.number < 0 or roomy:
        return one.name
    return one.letter or (one.name if options.numbered else "")


def put_balls(canvas: Canvas, stand: Stand) -> None:
    """Draw the balls of a place beside their owners; of a stock at most three."""
    supply, radius = stand.place.supply, stand.radius
    owners: list[tuple[Dot, float, float]] = []
    if supply.kind is SupplyKind.EACH:
        for rank in range(len(folded(stand.people))):
            looks = stand.grows + math.pi if rank else stand.looks
            owners.append((stand.rank_spot(rank), radius * WAITING_SHARE if rank else radius, looks))
    elif supply.kind is not SupplyKind.NONE:
        owners += [(stand.spot, radius, stand.looks)] * min(max(supply.count, 1), STOCK_SHOWN)
    for at, size, looks in owners:
        spot = ball_spot(canvas, at, size, looks, ball_radius(radius, canvas.measures))
        canvas.add("ball", ball(spot, radius, canvas.measures))
