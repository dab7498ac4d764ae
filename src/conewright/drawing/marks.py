"""Marks of persons, balls, kit and steps as shapes; must not know where they stand or why."""

import math

from conewright.drawing.letters import width_of
from conewright.drawing.measures import Measures
from conewright.drawing.strokes import moved
from conewright.model.exercise import Bib
from conewright.model.scene import Circle, Data, Dot, Group, Path, Rect, Shape, Text

GROUP_WORDS = {Bib.YELLOW: "y", Bib.BLUE: "b", Bib.RED: "r", Bib.GREEN: "g", None: "n"}
ORIGIN = Dot(0.0, 0.0)
RISE = 0.355  # the base line of a letter in the middle of its mark, parts of its size
BEAK_HALF = math.radians(29)
BEAK_BASE = 0.98
BEAK_TIP = 1.58
ADULT_HALF = 0.92
ADULT_TIP = 1.85
WAITING_SHARE = 0.8
BALL_SHARE = 0.4
BELT_PARTS = 6
NET_SHARE = 0.7  # depth of a goal, metres
SCREEN_RADIUS = 12.0  # the hoop of the fourth colour is drawn in shares of it


def person(
    at: Dot,
    radius: float,
    *,
    group: str,
    letters: str,
    direction: float | None,
    measures: Measures,
    waiting: bool = False,
    data: Data = (),
) -> Group:
    """A person's mark: disc or square, beak, letters; `group` is "y", "b", "r", "g", "n" or "ad" for an adult."""
    size = _letter_size(letters, radius, measures, waiting=waiting)
    shapes: list[Shape] = []
    if direction is not None:
        shapes.append(_beak(radius, direction, adult=group == "ad"))
    if group == "ad":
        half = ADULT_HALF * radius
        shapes.append(Rect(at=Dot(-half, -half), width=2 * half, height=2 * half, name="disc"))
    else:
        shapes.append(Circle(at=ORIGIN, radius=radius, name=f"disc {group}"))
    if group == "r":
        shapes.append(_belt(radius, min(0.54 * radius, 0.5 * size)))
    if group == "g":
        hoop = 2 * radius / SCREEN_RADIUS
        shapes.append(Circle(at=ORIGIN, radius=radius - hoop, name="hoop"))
    if letters:
        shapes.append(Text(at=Dot(0.0, size * RISE), words=letters, size=size, name=f"letter {group}"))
    more = f"{' w' if waiting else ''}{' keeper' if letters == 'K' else ''}"
    return Group(shapes=tuple(shapes), name=f"p {group}{more}", at=at, data=data)


def _letter_size(letters: str, radius: float, measures: Measures, *, waiting: bool) -> float:
    if len(letters) > 1 and not letters.startswith("+"):
        return min(measures.lettered_size, 1.6 * radius / width_of(letters, 1.0))
    alone = max(1.2 * radius, measures.letter_least)
    return min(alone, 1.75 * radius / width_of(letters, 1.0)) if letters else alone


def _beak(radius: float, direction: float, *, adult: bool) -> Path:
    tip = Dot(radius * (ADULT_TIP if adult else BEAK_TIP), 0.0)
    base = tuple(moved(ORIGIN, side * BEAK_HALF, BEAK_BASE * radius) for side in (1, -1))
    return Path(pieces=((base[0], tip, base[1]),), name="beak", closed=True, turn=math.degrees(direction))


def _belt(radius: float, half: float) -> Path:
    lean = math.asin(min(1.0, half / radius))
    turns = [-lean + 2 * lean * part / BELT_PARTS for part in range(BELT_PARTS + 1)]
    right = [moved(ORIGIN, turn, radius - 0.06 * radius) for turn in turns]
    left = [Dot(-dot.x, dot.y) for dot in reversed(right)]
    return Path(pieces=((*right, *left),), name="belt", closed=True)


def ball(at: Dot, radius: float, measures: Measures, data: Data = ()) -> Circle:
    """A ball beside a mark of that radius."""
    return Circle(at=at, radius=ball_radius(radius, measures), name="ball-mark", data=data)


def ball_radius(radius: float, measures: Measures) -> float:
    """How large a ball is beside marks of a radius."""
    return max(BALL_SHARE * radius, measures.ball_least)


def cone(at: Dot, measures: Measures, data: Data = ()) -> Path:
    """A cone, point up."""
    half, up = measures.cone_width / 2, measures.cone_height * 0.55
    low = measures.cone_height - up
    corners = (Dot(at.x, at.y - up), Dot(at.x + half, at.y + low), Dot(at.x - half, at.y + low))
    return Path(pieces=(corners,), name="cone", closed=True, data=data)


def gate(first: Dot, second: Dot, measures: Measures, data: Data = ()) -> Group:
    """A gate: two cones and a dotted sill."""
    sill = Path(pieces=((first, second),), name="gate")
    return Group(shapes=(sill, cone(first, measures), cone(second, measures)), name="gate-mark", data=data)


def goal(at: Dot, *, half: float, direction: float, depth: float, name: str = "goal-mark", data: Data = ()) -> Group:
    """Three sides of a box, its mouth at `at` and open in `direction`, half its width; the net a thin cross."""
    across, back = direction + math.pi / 2, direction + math.pi
    one, other = moved(at, across, half), moved(at, across, -half)
    far_one, far_other = moved(one, back, depth), moved(other, back, depth)
    net = Path(pieces=((one, far_other), (other, far_one)), name="net")
    frame = Path(pieces=((one, far_one, far_other, other),), name="goal")
    return Group(shapes=(net, frame), name=name, data=data)


def wall(first: Dot, second: Dot, data: Data = ()) -> Path:
    """A bench or rebound board."""
    return Path(pieces=((first, second),), name="wall", data=data)


def tick(at: Dot, radius: float, measures: Measures) -> Path:
    """The chalk tick under a place, level."""
    down = at.y + radius + measures.tick_below
    return Path(pieces=((Dot(at.x - radius, down), Dot(at.x + radius, down)),), name="spot")


def step_width(number: int, measures: Measures) -> float:
    """How wide the mark of a step is: square, wider for two figures."""
    return measures.step_side * (1.0 + 0.34 * (len(str(number)) - 1))


def step_mark(at: Dot, number: int, measures: Measures, *, state: str = "", data: Data = ()) -> Group:
    """The numbered square on a line; `state` is "", "lit" or "dim"."""
    wide, high = step_width(number, measures), measures.step_side
    box = Rect(at=Dot(-wide / 2, -high / 2), width=wide, height=high, name="step-box")
    figure = Text(
        at=Dot(0.0, measures.step_size * RISE), words=str(number), size=measures.step_size, name="step-number"
    )
    return Group(shapes=(box, figure), name=f"stepmark {state}".strip(), at=at, data=data)


def meeting(at: Dot, *, reach: float, measures: Measures) -> Group:
    """Where paths meet: a diamond with "!" and a ring true to scale."""
    half = measures.meeting_half
    corners = (Dot(0, -half), Dot(half, 0), Dot(0, half), Dot(-half, 0))
    sign = Text(at=Dot(0.0, half * 0.48), words="!", size=half * 1.37, name="meet-sign")
    ring = (Circle(at=ORIGIN, radius=reach, name="reach"),) if reach > 0 else ()
    return Group(shapes=(*ring, Path(pieces=(corners,), name="meet", closed=True), sign), name="wn", at=at)


def word(at: Dot, words: str, *, size: float, anchor: str, kind: str) -> Text:
    """A word on the ground, with a halo; `kind` is "nm" for a name, "bx" for a box, "wt" for a warning."""
    return Text(at=at, words=words, size=size, name=f"lb {kind}", anchor=anchor)
