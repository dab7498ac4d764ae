"""A picture as plain shapes, back to front; must not know what they stand for, their colours or how they are printed.

Lengths are drawing units: px on a screen, mm on paper; x to the right, y down the page. `name` holds class words, from
which a style table gives ink; `data` holds pairs (step, act, person ...) by which a page finds a shape again.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import NamedTuple


class Dot(NamedTuple):
    """A spot on the picture, drawing units. A pair, because every formula reads it as one."""

    x: float
    y: float


Data = tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Path:
    """Lines through points, each piece on its own; `bent`: every second point is a control."""

    pieces: tuple[tuple[Dot, ...], ...]
    name: str
    closed: bool = False
    bent: bool = False
    turn: float = 0.0  # degrees clockwise about the origin of the group it stands in
    data: Data = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Circle:
    """A circle."""

    at: Dot
    radius: float
    name: str
    data: Data = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Rect:
    """An upright rectangle; `at` is its upper left corner."""

    at: Dot
    width: float
    height: float
    name: str
    data: Data = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Text:
    """Words on one line; `at` is the start, middle or end of their base line, as `anchor` says."""

    at: Dot
    words: str
    size: float
    name: str
    anchor: str = "middle"
    data: Data = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """Shapes that belong together, moved by `at`; their own coordinates count from there."""

    shapes: "tuple[Shape, ...]"
    name: str
    at: Dot = Dot(0.0, 0.0)
    data: Data = ()


Shape = Path | Circle | Rect | Text | Group


@dataclass(frozen=True, slots=True, kw_only=True)
class Scene:
    """A whole picture. `title` and `description` are for those who cannot see it; `unit` is "px" or "mm"."""

    width: float
    height: float
    shapes: tuple[Shape, ...]
    title: str
    description: str = ""
    unit: str = "px"
    name: str = "pic"


def walk(shapes: tuple[Shape, ...], at: Dot = Dot(0.0, 0.0)) -> Iterator[tuple[Shape, Dot]]:
    """Every shape, groups before what they hold, each with the sum of the moves of the groups round it."""
    for shape in shapes:
        yield shape, at
        if isinstance(shape, Group):
            yield from walk(shape.shapes, Dot(at.x + shape.at.x, at.y + shape.at.y))


def named(scene: Scene, word: str) -> tuple[tuple[Shape, Dot], ...]:
    """The shapes whose name holds the class word, with the moves of the groups round them."""
    return tuple((shape, at) for shape, at in walk(scene.shapes) if word in shape.name.split())


def words_in(scene: Scene) -> tuple[str, ...]:
    """All class words that occur in the scene, each once, in the order they occur."""
    return tuple(dict.fromkeys(word for shape, _ in walk(scene.shapes) for word in shape.name.split()))
