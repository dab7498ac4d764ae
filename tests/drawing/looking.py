"""Eyes for the tests of pictures: what a scene holds and where, worked out from its shapes alone."""

import math
from dataclasses import dataclass

from conewright.drawing.letters import width_of
from conewright.model.exercise import Exercise
from conewright.model.problem import Severity
from conewright.model.scene import Circle, Dot, Group, Path, Rect, Scene, Text, walk
from conewright.notation.reader import read

GATE = """exercise: Small gate
kind: passing pattern
for 4 to 6 players
Base at 0, 0 is a line with the ball.
Stem at 0, 10 holds one.
Post at 6, 14 is a line.

Each round:
1. Base passes to Stem, then runs to Stem.
2. Stem passes to Post, then runs to Post.
3. Post dribbles to Base round the outside.
"""


def exercise_of(text: str) -> Exercise:
    """The exercise a text means; the text has nothing to mend."""
    exercise, problems = read(text)
    assert exercise is not None
    assert not [problem for problem in problems if problem.severity is Severity.MEND], problems
    return exercise


@dataclass(frozen=True, slots=True, kw_only=True)
class Blot:
    """What a mark or word covers: a disc (radius) or a box (half sizes)."""

    at: Dot
    radius: float = 0.0
    half: Dot = Dot(0.0, 0.0)
    words: str = ""

    @property
    def is_disc(self) -> bool:
        return self.radius > 0


def touching(one: Blot, other: Blot) -> bool:
    """Whether two blots cover a common spot."""
    if one.is_disc and other.is_disc:
        return math.dist(one.at, other.at) < one.radius + other.radius
    if one.is_disc:
        return touching(other, one)
    if other.is_disc:
        x = max(abs(other.at.x - one.at.x) - one.half.x, 0.0)
        y = max(abs(other.at.y - one.at.y) - one.half.y, 0.0)
        return math.hypot(x, y) < other.radius
    across = abs(one.at.x - other.at.x) < one.half.x + other.half.x
    return across and abs(one.at.y - other.at.y) < one.half.y + other.half.y


def marks(scene: Scene) -> list[Blot]:
    """Persons."""
    found = []
    for shape, at in walk(scene.shapes):
        if isinstance(shape, Group) and shape.name.split()[0] == "p":
            middle = Dot(at.x + shape.at.x, at.y + shape.at.y)
            disc = next(inner for inner in shape.shapes if inner.name.split()[0] == "disc")
            size = disc.radius if isinstance(disc, Circle) else disc.width / 2 if isinstance(disc, Rect) else 0.0
            letters = next((inner.words for inner in shape.shapes if isinstance(inner, Text)), "")
            found.append(Blot(at=middle, radius=size, words=letters))
    return found


def balls(scene: Scene) -> list[Blot]:
    """Balls."""
    return [
        Blot(at=Dot(at.x + shape.at.x, at.y + shape.at.y), radius=shape.radius)
        for shape, at in walk(scene.shapes)
        if isinstance(shape, Circle) and shape.name == "ball-mark"
    ]


def steps(scene: Scene) -> list[Blot]:
    """Numbered squares."""
    found = []
    for shape, at in walk(scene.shapes):
        if isinstance(shape, Group) and shape.name.split()[0] == "stepmark":
            box = next(inner for inner in shape.shapes if isinstance(inner, Rect))
            number = next(inner for inner in shape.shapes if isinstance(inner, Text))
            half = Dot(box.width / 2, box.height / 2)
            found.append(Blot(at=Dot(at.x + shape.at.x, at.y + shape.at.y), half=half, words=number.words))
    return found


def words(scene: Scene, kind: str = "lb") -> list[Blot]:
    """Words on the ground, as high as small letters and as wide as they are set."""
    found = []
    for shape, at in walk(scene.shapes):
        if isinstance(shape, Text) and kind in shape.name.split():
            wide = width_of(shape.words, shape.size)
            left = shape.at.x - {"start": 0.0, "middle": wide / 2, "end": wide}[shape.anchor]
            middle = Dot(at.x + left + wide / 2, at.y + shape.at.y - 0.25 * shape.size)
            found.append(Blot(at=middle, half=Dot(wide / 2, 0.4 * shape.size), words=shape.words))
    return found


def lines(scene: Scene, word: str) -> list[Path]:
    """Drawn lines of a kind."""
    return [
        shape for shape, _ in walk(scene.shapes) if isinstance(shape, Path) and {"ln", word} <= set(shape.name.split())
    ]


def ground(scene: Scene) -> Rect:
    """The squared sheet."""
    return next(shape for shape, _ in walk(scene.shapes) if isinstance(shape, Rect) and shape.name == "ground")
