"""Boxes of contest and open play: edge, hatching, corner cones; must not know who is inside."""

from conewright.drawing.marks import cone
from conewright.drawing.measures import Measures
from conewright.model.scene import Dot, Group, Path, Rect


def contest_box(low: Dot, high: Dot, measures: Measures) -> Group:
    """An edge and slanted hatching."""
    return Group(shapes=(slanted(low, high, measures.hatch_pitch), _edge(low, high)), name="contest")


def open_box(low: Dot, high: Dot, measures: Measures) -> Group:
    """An edge and staggered level dashes."""
    return Group(shapes=(*level(low, high, measures), _edge(low, high)), name="open-play")


def _edge(low: Dot, high: Dot) -> Rect:
    return Rect(at=low, width=high.x - low.x, height=high.y - low.y, name="box")


def slanted(low: Dot, high: Dot, pitch: float, name: str = "hl") -> Path:
    """Lines rising to the right at 45 degrees, `pitch` apart across, inside an upright box."""
    step = pitch * 2**0.5
    width, height = high.x - low.x, high.y - low.y
    pieces = []
    offset = step / 2
    while offset < width + height:
        start = Dot(low.x + max(0.0, offset - height), low.y + min(offset, height))
        end = Dot(low.x + min(offset, width), low.y + max(0.0, offset - width))
        pieces.append((start, end))
        offset += step
    return Path(pieces=tuple(pieces), name=name)


def level(low: Dot, high: Dot, measures: Measures) -> tuple[Path, Path]:
    """Rows of level dashes, every second row shifted by half; the dashes come from the style of "hl open"."""
    half = measures.dash_down / 2
    rows: tuple[list[tuple[Dot, Dot]], list[tuple[Dot, Dot]]] = ([], [])
    y, index = low.y + half * 0.56, 0
    while y < high.y - half * 0.1:
        start = low.x + measures.dash_across * (0.08 if index % 2 == 0 else 0.58)
        rows[index % 2].append((Dot(start, y), Dot(high.x, y)))
        y, index = y + half, index + 1
    return Path(pieces=tuple(rows[0]), name="hl open"), Path(pieces=tuple(rows[1]), name="hl open")


def corner_cones(low: Dot, high: Dot, measures: Measures) -> tuple[Path, ...]:
    """A cone at each corner."""
    corners = (low, Dot(high.x, low.y), Dot(low.x, high.y), high)
    return tuple(cone(at, measures) for at in corners)
