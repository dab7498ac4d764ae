"""A scene written as SVG; must not know what the shapes stand for."""

from itertools import pairwise
from xml.sax.saxutils import escape, quoteattr

from conewright.drawing.style import FAMILY, PAPER_TOKENS, SCREEN_TOKENS, look_of
from conewright.model.scene import Circle, Data, Dot, Group, Path, Rect, Scene, Shape, Text

TOKENS = {"screen": SCREEN_TOKENS, "paper": PAPER_TOKENS}
ALLOWED = str.maketrans(dict.fromkeys((*range(9), 11, 12, *range(14, 32), 0xFFFE, 0xFFFF)))


def svg(scene: Scene, *, style: str = "page") -> str:
    """The scene as one SVG element.

    "page": class words only, for a page that carries `style.stylesheet()`. "screen" and "paper": a picture that stands
    alone, every attribute written out, in the colours of the light page or in black and white.
    """
    tokens = TOKENS.get(style)
    width, height = _short(scene.width, 2), _short(scene.height, 2)
    unit = "mm" if scene.unit == "mm" else ""
    inside = "".join(_shape(shape, tokens, decimals(scene), ()) for shape in scene.shapes)
    label = escape(_clean(scene.title))
    head = f'<svg xmlns="http://www.w3.org/2000/svg" class={quoteattr(scene.name)} viewBox="0 0 {width} {height}"'
    head += f' width="{width}{unit}" height="{height}{unit}" role="img"'
    if tokens is None:
        spoken = ". ".join(part.rstrip(".") for part in (scene.title, scene.description) if part)
        return f"{head} aria-label={quoteattr(_clean(spoken))}>{inside}</svg>"
    described = f"<desc>{escape(_clean(scene.description))}</desc>" if scene.description else ""
    return f"{head} font-family={quoteattr(FAMILY)}><title>{label}</title>{described}{inside}</svg>"


def fragment(shape: Shape, *, decimals: int = 1) -> str:
    """One shape as SVG with class words only, for a page that puts it into a picture of its own."""
    return _shape(shape, None, decimals, ())


def decimals(scene: Scene) -> int:
    """How many decimals lengths of this scene need: a tenth of a px, a hundredth of a mm."""
    return 2 if scene.unit == "mm" else 1


def _clean(words: str) -> str:
    return words.translate(ALLOWED)


def _short(value: float, places: int) -> str:
    text = f"{value:.{places}f}".rstrip("0").rstrip(".") if places else f"{value:.0f}"
    return "0" if text in ("-0", "") else text


def _shape(shape: Shape, tokens: dict[str, str] | None, places: int, outer: tuple[str, ...]) -> str:
    words = (*outer, *shape.name.split())
    if isinstance(shape, Group):
        inside = "".join(_shape(inner, tokens, places, words) for inner in shape.shapes)
        moved = f' transform="translate({_pair(shape.at, places)})"' if shape.at != Dot(0.0, 0.0) else ""
        return f"<g{_named(shape.name, tokens)}{_data(shape.data, tokens)}{moved}>{inside}</g>"
    look = look_of(words, tokens) if tokens is not None else {}
    if look.get("stroke") == "none" and look.get("fill") == "none":
        return ""
    ink = _named(shape.name, tokens) + "".join(f" {name}={quoteattr(value)}" for name, value in look.items())
    return _drawn(shape, ink + _data(shape.data, tokens), places)


def _named(name: str, tokens: dict[str, str] | None) -> str:
    return f" class={quoteattr(name)}" if tokens is None and name else ""


def _data(data: Data, tokens: dict[str, str] | None) -> str:
    return "".join(f" data-{key}={quoteattr(_clean(value))}" for key, value in data) if tokens is None else ""


def _pair(dot: Dot, places: int) -> str:
    return f"{_short(dot.x, places)} {_short(dot.y, places)}"


def _drawn(shape: Path | Circle | Rect | Text, ink: str, places: int) -> str:
    if isinstance(shape, Path):
        turn = f' transform="rotate({_short(shape.turn, 1)})"' if shape.turn else ""
        return f'<path{ink}{turn} d="{path_data(shape, places)}"/>'
    x, y = _short(shape.at.x, places), _short(shape.at.y, places)
    if isinstance(shape, Circle):
        return f'<circle{ink} cx="{x}" cy="{y}" r="{_short(shape.radius, places)}"/>'
    if isinstance(shape, Rect):
        size = f'width="{_short(shape.width, places)}" height="{_short(shape.height, places)}"'
        return f'<rect{ink} x="{x}" y="{y}" {size}/>'
    anchor = f' text-anchor="{shape.anchor}"' if shape.anchor != "start" else ""
    words = escape(_clean(shape.words))
    return f'<text{ink} x="{x}" y="{y}"{anchor} font-size="{_short(shape.size, 2)}">{words}</text>'


def path_data(path: Path, places: int) -> str:
    """The `d` of a path: absolute pieces, level and upright stretches by their one coordinate."""
    return "".join(_piece(piece, path, places) for piece in path.pieces if piece)


def _piece(piece: tuple[Dot, ...], path: Path, places: int) -> str:
    texts = [(_short(dot.x, places), _short(dot.y, places)) for dot in piece]
    parts = [f"M{texts[0][0]} {texts[0][1]}"]
    if path.bent:
        for (cx, cy), (x, y) in zip(texts[1::2], texts[2::2], strict=True):
            parts.append(f"Q{cx} {cy} {x} {y}")
    else:
        for (px, py), (x, y) in pairwise(texts):
            parts.append(f"H{x}" if y == py else f"V{y}" if x == px else f"L{x} {y}")
    return "".join(parts) + ("Z" if path.closed else "")
