"""What may be chosen about a picture; must not know how any of it is drawn."""

from dataclasses import dataclass

from conewright.drawing.measures import PAPER, SCREEN, Measures
from conewright.model.exercise import Bib
from conewright.model.geometry import Point


@dataclass(frozen=True, slots=True, kw_only=True)
class Meeting:
    """Where two paths meet: how near, metres, and how far apart in time, seconds."""

    at: Point
    distance_m: float
    apart_s: float


@dataclass(frozen=True, slots=True, kw_only=True)
class PictureOptions:
    """Choices for one picture. `width` and `most_height` are px, or mm on paper; the picture keeps within both.

    `tradition` "A" draws the ball plain and a run broken, "B" the other way about. `lit` is the number of the sentence
    in hand. `turned` lets play run to the right. `everyone` gives each child a mark of its own, for a moving picture.
    `side` is the state of the sides that is drawn. `numbers` stand along the edges, `names` beside places.
    """

    width: float = 594.0
    most_height: float | None = None
    paper: bool = False
    tradition: str = "A"
    lit: int | None = None
    turned: bool = False
    numbers: bool = True
    names: bool = True
    child_numbers: bool | None = None  # None: with the letters on a screen, without on paper
    everyone: bool = False
    side: int = 0
    bib: Bib | None = None
    cropped: bool = False  # a block's picture shows only the ground in use
    only: int | None = None  # a block's picture shows this one of its copies alone, and no adults
    meetings: tuple[Meeting, ...] = ()

    @property
    def measures(self) -> Measures:
        """The sizes that go with the choice of screen or paper."""
        return PAPER if self.paper else SCREEN

    @property
    def numbered(self) -> bool:
        """Whether marks show numbers beside letters."""
        return not self.paper if self.child_numbers is None else self.child_numbers
