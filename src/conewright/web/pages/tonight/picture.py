"""The pictures of a block on the page: the whole ground, one copy for a phone, the strip, and what moves in them.

It must not know how the page lays them out.
"""

from dataclasses import dataclass, replace
from functools import lru_cache

from conewright.drawing.block import block_picture, copy_words, ground_of
from conewright.drawing.legend import legend
from conewright.drawing.marks import ball, person
from conewright.drawing.measures import SCREEN
from conewright.drawing.options import PictureOptions
from conewright.drawing.people import Person, people
from conewright.drawing.picture import whole
from conewright.drawing.playback import Playback, playback
from conewright.drawing.stands import mark_radius
from conewright.drawing.strip import StripOptions, strip
from conewright.drawing.svg import fragment, svg
from conewright.drawing.view import View, fitted
from conewright.model.geometry import Box, Point
from conewright.model.rehearsed import Rehearsal
from conewright.model.scene import Dot, Path, Scene, named
from conewright.model.session import Block, Copy, Tonight

WIDE_PX, PHONE_PX = 786.0, 328.0
MOST_PHONE_PX = 460.0
WIDE_STRIP_S, PHONE_STRIP_S = 60.0, 30.0
CROP_M = 1.0
ORDER = ("First", "Second", "Third", "Fourth", "Fifth", "Sixth")
KEPT = 24  # pictures held ready


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One entry of a legend."""

    sample: str
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """A picture as SVG with its legend."""

    picture: str
    legend: tuple[Entry, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Strip:
    """A strip as SVG, and where on it time lies: seconds from `left` to `right` of `width`."""

    picture: str
    seconds: float
    left: float
    right: float
    width: float
    top: float
    bottom: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """A block on a ground: the whole of it, or the piece that one copy uses."""

    block: Block
    tonight: Tonight
    options: PictureOptions

    @property
    def view(self) -> View:
        """How metres lie on the picture."""
        ground = Box(left_m=0.0, bottom_m=0.0, right_m=self.tonight.width_m, top_m=self.tonight.depth_m)
        return fitted(ground, self.options)


def wide(block: Block, tonight: Tonight) -> Shown:
    """The coach's whole ground."""
    return Shown(block=block, tonight=tonight, options=PictureOptions(width=WIDE_PX))


def narrow(block: Block, tonight: Tonight, number: int) -> Shown:
    """One copy alone, moved to the corner of its own piece of ground and laid so that it fills a phone."""
    copy = block.copies[number]
    used = ground_of(block, copy)
    room = whole(
        Box(
            left_m=used.left_m - CROP_M,
            bottom_m=used.bottom_m - CROP_M,
            right_m=used.right_m + CROP_M,
            top_m=used.top_m + CROP_M,
        )
    )
    moved = replace(copy, origin=Point(copy.origin.x_m - room.left_m, copy.origin.y_m - room.bottom_m))
    turned = room.depth_m > room.width_m
    options = PictureOptions(width=PHONE_PX, most_height=MOST_PHONE_PX, numbers=False, turned=turned)
    return Shown(
        block=replace(block, copies=(moved,), resting=0),
        tonight=replace(tonight, width_m=room.width_m, depth_m=room.depth_m, adults=0),
        options=options,
    )


def draw_ahead(block: Block, tonight: Tonight) -> None:
    """Draw what a page shows first of a block, to have it ready."""
    drawn(wide(block, tonight))
    drawn(narrow(block, tonight, 0))


@lru_cache(KEPT)
def drawn(shown: Shown) -> Picture:
    """The picture with its legend."""
    scene = block_picture(shown.block, shown.tonight, options=shown.options)
    return Picture(picture=svg(scene), legend=_entries(scene))


def _entries(scene: Scene) -> tuple[Entry, ...]:
    return tuple(
        Entry(sample=_silent(svg(entry.sample)) if entry.sample else "", words=entry.words) for entry in legend(scene)
    )


def _silent(sample: str) -> str:
    """A sample says nothing to those who cannot see it: its words stand beside it."""
    return sample.replace(' role="img"', ' aria-hidden="true"', 1)


def copy_name(block: Block, number: int) -> str:
    """ "Yellow copy, seven"; several without a colour are counted: "First, seven children"."""
    copy = block.copies[number]
    words = copy_words(copy, block)
    if copy.bib is None and 1 < len(block.copies) <= len(ORDER):
        return f"{ORDER[number]}, {words}"
    return words[:1].upper() + words[1:]


def strip_of(block: Block, number: int, *, most_wait: float, phone: bool = False) -> Strip | None:
    """The strip of one copy; None where it was not rehearsed."""
    copy = block.copies[number]
    rehearsal = copy.rehearsed
    if not isinstance(rehearsal, Rehearsal):
        return None
    title = f"The strip of {block.exercise.name}, {copy_name(block, number)}"
    return _strip(title, rehearsal, children_of(block, copy), most_wait, phone)


@lru_cache(KEPT)
def _strip(title: str, rehearsal: Rehearsal, children: tuple[Person, ...], most_wait: float, phone: bool) -> Strip:
    seconds = PHONE_STRIP_S if phone else WIDE_STRIP_S
    options = StripOptions(people=children, touch=phone, most_wait=most_wait, title=title)
    names = tuple(called(one) for one in children)
    scene = strip(rehearsal, seconds=seconds, names=names, width=PHONE_PX if phone else WIDE_PX, options=options)
    lines = [shape for shape, _ in named(scene, "wait") if isinstance(shape, Path)]
    rows = [piece for line in lines for piece in line.pieces]
    half = options.row / 2
    return Strip(
        picture=svg(scene),
        seconds=seconds,
        left=rows[0][0].x if rows else 0.0,
        right=rows[0][-1].x if rows else scene.width,
        width=scene.width,
        top=rows[0][0].y - half if rows else 0.0,
        bottom=rows[-1][0].y + half if rows else scene.height,
    )


def children_of(block: Block, copy: Copy) -> tuple[Person, ...]:
    """The children of a copy in the order of their numbers."""
    return tuple(one for one in people(block.exercise, copy.size, copy.bib) if one.number >= 0)


def called(child: Person) -> str:
    """What a child is called: as its mark reads, for who is who is not said."""
    return child.name if child.letter else f"child {child.name}"


def moving(shown: Shown, film: Playback | None = None) -> dict[str, object]:
    """Everything that moves in a picture, in px of that picture, for the page's script."""
    played = film or playback(shown.block)
    view = shown.view
    radius = mark_radius(view.scale, SCREEN)
    origin, ahead, up = (view.ground(point) for point in (Point(0, 0), Point(1, 0), Point(0, 1)))
    return {
        "seconds": played.seconds,
        "ground": [origin.x, origin.y, ahead.x - origin.x, ahead.y - origin.y, up.x - origin.x, up.y - origin.y],
        "radius": radius,
        "ball": fragment(ball(Dot(0, 0), radius, SCREEN)),
        "copies": [
            {
                "seconds": copy.seconds,
                "repeats": copy.repeats,
                "people": [
                    {
                        "mark": fragment(
                            person(
                                Dot(0, 0),
                                radius,
                                group=one.group,
                                letters=one.letters,
                                direction=None,
                                measures=SCREEN,
                            )
                        ),
                        "name": one.letters,
                        "knots": one.knots,
                    }
                    for one in copy.people
                ],
                "balls": copy.balls,
                "steps": copy.steps,
                "rounds": copy.round_starts,
            }
            for copy in played.copies
        ],
    }
