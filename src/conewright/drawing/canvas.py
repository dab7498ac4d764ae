"""A picture while it is being drawn: shapes by layer, and what is taken so that marks and words find free ground.

The one place with state in this package; its life is one call of a picture function.
"""

from dataclasses import dataclass, field
from itertools import pairwise

from conewright.drawing.letters import width_of
from conewright.drawing.measures import Measures
from conewright.drawing.strokes import Line, apart, distance_to
from conewright.model.scene import Dot, Group, Shape

LAYERS = ("grid", "area", "band", "line", "kit", "place", "person", "ball", "step", "label", "warn")
WORD_UP, WORD_DOWN = 0.74, 0.24  # how far letters reach above and below their base line, parts of their size


@dataclass(frozen=True, slots=True, kw_only=True)
class Area:
    """An upright box on the picture."""

    low: Dot
    high: Dot

    @property
    def middle(self) -> Dot:
        """Its middle."""
        return Dot((self.low.x + self.high.x) / 2, (self.low.y + self.high.y) / 2)


def area_at(middle: Dot, width: float, height: float) -> Area:
    """A box round a middle."""
    return Area(
        low=Dot(middle.x - width / 2, middle.y - height / 2), high=Dot(middle.x + width / 2, middle.y + height / 2)
    )


def word_area(at: Dot, words: str, size: float, anchor: str) -> Area:
    """The box that words take when set."""
    width = width_of(words, size)
    left = at.x - {"start": 0.0, "middle": width / 2, "end": width}[anchor]
    return Area(low=Dot(left, at.y - WORD_UP * size), high=Dot(left + width, at.y + WORD_DOWN * size))


def overlap(one: Area, other: Area, clear: float = 0.0) -> bool:
    """True where two boxes come nearer than `clear`."""
    across = one.low.x < other.high.x + clear and other.low.x < one.high.x + clear
    return across and one.low.y < other.high.y + clear and other.low.y < one.high.y + clear


def touches_disc(area: Area, at: Dot, radius: float) -> bool:
    """True where a box reaches into a disc."""
    near = Dot(min(max(at.x, area.low.x), area.high.x), min(max(at.y, area.low.y), area.high.y))
    return apart(near, at) < radius


@dataclass(slots=True, kw_only=True)
class Canvas:
    """Layers of shapes, and discs, boxes and lines that are taken. `extent` is the ground's box on the picture."""

    measures: Measures
    extent: Area
    layers: dict[str, list[Shape]] = field(default_factory=lambda: {layer: [] for layer in LAYERS})
    discs: list[tuple[Dot, float]] = field(default_factory=list)
    areas: list[Area] = field(default_factory=list)
    lines: list[Line] = field(default_factory=list)

    def add(self, layer: str, *shapes: Shape) -> None:
        """Put shapes on a layer."""
        self.layers[layer] += shapes

    def inside(self, area: Area) -> bool:
        """True where a box lies on the ground."""
        low, high = self.extent.low, self.extent.high
        return low.x <= area.low.x and low.y <= area.low.y and area.high.x <= high.x and area.high.y <= high.y

    def within(self, at: Dot, edge: float) -> Dot:
        """The dot, or the nearest one that lies so far inside the ground."""
        low, high = self.extent.low, self.extent.high
        return Dot(min(max(at.x, low.x + edge), high.x - edge), min(max(at.y, low.y + edge), high.y - edge))

    def free(self, area: Area, clear: float) -> bool:
        """True where a box touches no mark, ball, kit, step mark or word."""
        if any(touches_disc(area, at, radius + clear) for at, radius in self.discs):
            return False
        return not any(overlap(area, taken, clear) for taken in self.areas)

    def disc_free(self, at: Dot, radius: float) -> bool:
        """True where a disc touches no other disc and no box."""
        if any(apart(at, other) < radius + taken for other, taken in self.discs):
            return False
        return not any(touches_disc(area, at, radius) for area in self.areas)

    def crossings(self, area: Area, own: Line = ()) -> int:
        """How many drawn lines run through a box, its own line left out."""
        reach = (area.high.x - area.low.x + area.high.y - area.low.y) / 4
        return sum(1 for line in self.lines if line is not own and _runs_through(line, area, reach))

    def groups(self) -> tuple[Group, ...]:
        """The layers that hold something, back to front."""
        return tuple(Group(shapes=tuple(shapes), name=f"l-{layer}") for layer, shapes in self.layers.items() if shapes)


def _runs_through(line: Line, area: Area, reach: float) -> bool:
    half_width, half_height = (area.high.x - area.low.x) / 2, (area.high.y - area.low.y) / 2
    middle = area.middle
    if half_width > 2 * half_height:  # a word: look at three spots along it
        shift = half_width - half_height
        spots = (Dot(middle.x - shift, middle.y), middle, Dot(middle.x + shift, middle.y))
        return any(_near(line, spot, half_height) for spot in spots)
    return _near(line, middle, reach)


def _near(line: Line, spot: Dot, reach: float) -> bool:
    return any(distance_to(spot, start, end) < reach for start, end in pairwise(line))
