"""Ink for class words: one table read as a page's style sheet or as attributes of a picture that stands alone.

A value "@word" is a token: a CSS variable of the page, or a fixed value on a light screen or on paper. It must not
know the shapes; `svg` asks it what a shape's class words mean.
"""

from collections.abc import Iterable
from dataclasses import dataclass

FAMILY = "Atkinson Hyperlegible Next"

SCREEN_TOKENS = {
    "paper": "#f3eee1",
    "sheet": "#fbf8f0",
    "ink": "#1f2328",
    "ink-2": "#4f4a40",
    "rule": "#7d7463",
    "hair": "#d6cdb9",
    "grid-1": "#e6dfcf",
    "grid-5": "#cdc3ad",
    "lit": "#e8d9b0",
    "bib-y": "#f0b400",
    "bib-b": "#1d5fa8",
    "bib-r": "#b5273f",
    "bib-g": "#2d7a4b",
    "on-y": "#1f2328",
    "on-b": "#ffffff",
    "on-r": "#1f2328",
    "w-line": "2.25",
    "w-lit": "3.25",
    "w-thin": "1.25",
    "w-kit": "2.5",
    "w-band": "13",
    "w-chalk": "2",
    "w-grid": "1",
    "w-edge": "1.5",
    "w-hatch": "1",
    "w-net": "0.9",
    "w-halo": "4",
    "w-dots": "2.5",
    "w-hoop": "2.6",
    "w-wait": "1.5",
    "w-meet": "2",
    "w-wall": "6",
    "w-now": "2",
    "heavy": "750",
    "dash-run": "8 5.5",
    "dash-back": "0.1 5.5",
    "dash-zone": "4 4",
    "dash-sill": "2 2.5",
    "dash-reach": "2 3",
    "dash-open": "5 7",
}
"""Tokens of the light page; the page overrides the first sixteen and the strokes that `SHARED` names."""

PAPER_TOKENS = SCREEN_TOKENS | {
    "paper": "#ffffff",
    "sheet": "#ffffff",
    "ink": "#000000",
    "ink-2": "#222222",
    "rule": "#555555",
    "hair": "#999999",
    "grid-1": "#e4e4e4",
    "grid-5": "#bdbdbd",
    "lit": "#dcdcdc",
    "bib-y": "#e3e3e3",
    "bib-b": "#000000",
    "bib-r": "#000000",
    "bib-g": "#777777",
    "on-y": "#000000",
    "on-r": "#000000",
    "w-line": "0.5",
    "w-lit": "0.8",
    "w-thin": "0.28",
    "w-kit": "0.6",
    "w-band": "3",
    "w-chalk": "0.5",
    "w-grid": "0.25",
    "w-edge": "0.35",
    "w-hatch": "0.2",
    "w-net": "0.2",
    "w-halo": "0.8",
    "w-dots": "0.55",
    "w-hoop": "0.5",
    "w-wait": "0.35",
    "w-meet": "0.45",
    "w-wall": "1.2",
    "w-now": "0.5",
    "heavy": "700",  # the heaviest the font for paper has
    "dash-run": "1.9 1.3",
    "dash-back": "0.03 1.3",
    "dash-zone": "1 1",
    "dash-sill": "0.5 0.6",
    "dash-reach": "0.5 0.7",
    "dash-open": "1.2 1.7",
}

SHARED = frozenset({"w-line", "w-lit", "w-thin", "w-kit", "w-band", "w-chalk", "dash-run", "dash-back", "dash-zone"})
"""Stroke tokens that the page's own token file defines; the others become plain numbers in the style sheet."""

Look = tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """What shapes with all the class words `on` look like; `state` may stand on a group round them instead."""

    on: tuple[str, ...]
    look: Look
    state: str = ""


def _rule(on: str, state: str = "", **look: str) -> Rule:
    pairs = tuple((name.replace("_", "-"), value) for name, value in look.items())
    return Rule(on=tuple(on.split(".")), look=pairs, state=state)


RULES = (
    _rule("ground", fill="@sheet", stroke="@rule", stroke_width="@w-grid"),
    _rule("g1", fill="none", stroke="@grid-1", stroke_width="@w-grid"),
    _rule("g5", fill="none", stroke="@grid-5", stroke_width="@w-grid"),
    _rule("gn", fill="@ink-2", stroke="none"),
    _rule("box", fill="none", stroke="@ink", stroke_width="@w-thin"),
    _rule("box.zone", stroke_dasharray="@dash-zone"),
    _rule("hl", fill="none", stroke="@rule", stroke_width="@w-hatch", opacity="0.75"),
    _rule("hl.open", stroke_dasharray="@dash-open"),
    _rule("band", fill="none", stroke="none", stroke_width="@w-band", stroke_linecap="round", stroke_linejoin="round"),
    _rule("band", state="lit", stroke="@lit"),
    _rule("ln", fill="none", stroke="@ink", stroke_width="@w-line", stroke_linejoin="round"),
    _rule("ln.broken", stroke_dasharray="@dash-run"),
    _rule("ln.back", stroke_width="@w-dots", stroke_dasharray="@dash-back", stroke_linecap="round"),
    _rule("ln", state="lit", stroke_width="@w-lit"),
    _rule("ln", state="dim", stroke="@rule", stroke_width="@w-line*0.8"),
    _rule("ln.shot", stroke_width="@w-line*2.7"),
    _rule("core", fill="none", stroke="@sheet", stroke_width="@w-line*1.05"),
    _rule("head", fill="@ink", stroke="none"),
    _rule("head", state="dim", fill="@rule"),
    _rule("vhead", fill="none", stroke="@ink", stroke_width="@w-line", stroke_linejoin="miter"),
    _rule("vhead", state="lit", stroke_width="@w-lit"),
    _rule("vhead", state="dim", stroke="@rule", stroke_width="@w-line*0.8"),
    _rule("vhead.thin", stroke_width="@w-thin"),
    _rule("cone", fill="@ink", stroke="@sheet", stroke_width="@w-hatch"),
    _rule("gate", fill="none", stroke="@ink", stroke_width="@w-thin", stroke_dasharray="@dash-sill"),
    _rule("goal", fill="none", stroke="@ink", stroke_width="@w-kit"),
    _rule("net", fill="none", stroke="@ink", stroke_width="@w-net"),
    _rule("wall", fill="none", stroke="@ink", stroke_width="@w-wall"),
    _rule("spot", fill="none", stroke="@ink", stroke_width="@w-chalk", stroke_linecap="round"),
    _rule("queue", fill="none", stroke="@ink", stroke_width="@w-thin"),
    _rule("beak", fill="@ink", stroke="none"),
    _rule("disc", fill="@sheet", stroke="@ink", stroke_width="@w-edge"),
    _rule("disc.y", fill="@bib-y"),
    _rule("disc.b", fill="@bib-b"),
    _rule("disc.r", fill="@bib-r"),
    _rule("belt", fill="@sheet", stroke="none"),
    _rule("hoop", fill="none", stroke="@bib-g", stroke_width="@w-hoop"),
    _rule("letter", fill="@ink", stroke="none", font_weight="@heavy"),
    _rule("letter.y", fill="@on-y"),
    _rule("letter.b", fill="@on-b"),
    _rule("letter.r", fill="@on-r"),
    _rule("ball-mark", fill="@ink", stroke="@sheet", stroke_width="@w-edge"),
    _rule("step-box", fill="@sheet", stroke="@ink", stroke_width="@w-thin"),
    _rule("step-box", state="dim", stroke="@rule"),
    _rule("step-box", state="lit", fill="@ink"),
    _rule("step-number", fill="@ink", stroke="none", font_weight="@heavy"),
    _rule("step-number", state="dim", fill="@ink-2"),
    _rule("step-number", state="lit", fill="@sheet"),
    _rule(
        "lb",
        fill="@ink",
        stroke="@sheet",
        stroke_width="@w-halo",
        stroke_linejoin="round",
        paint_order="stroke",
        font_weight="700",
    ),
    _rule("reach", fill="none", stroke="@ink", stroke_width="@w-hatch", stroke_dasharray="@dash-reach"),
    _rule("meet", fill="@sheet", stroke="@ink", stroke_width="@w-meet"),
    _rule("meet-sign", fill="@ink", stroke="none", font_weight="@heavy"),
    _rule("lg", fill="@ink-2", stroke="none"),
    _rule("lg.first", fill="@ink", font_weight="700"),
    _rule("row", fill="none", stroke="@hair", stroke_width="@w-grid"),
    _rule("row-band", fill="none", stroke="none"),
    _rule("row-band", state="lit", fill="@lit"),
    _rule("st", fill="@ink", stroke="none"),
    _rule("st.soft", fill="@ink-2"),
    _rule("st.strong", font_weight="@heavy"),
    _rule("wait", fill="none", stroke="@ink-2", stroke_width="@w-wait"),
    _rule("move", fill="@sheet", stroke="@ink", stroke_width="@w-grid"),
    _rule("move-hatch", fill="none", stroke="@ink", stroke_width="@w-thin"),
    _rule("on-ball", fill="@ink", stroke="none"),
    _rule("on-ball-number", fill="@sheet", stroke="none", font_weight="@heavy"),
    _rule("tick", fill="none", stroke="@ink", stroke_width="@w-grid"),
    _rule("round", fill="none", stroke="@grid-5", stroke_width="@w-grid"),
    _rule("longest", fill="none", stroke="@ink", stroke_width="@w-thin"),
    _rule("now", fill="none", stroke="@ink", stroke_width="@w-now"),
    _rule("now-box", fill="@ink", stroke="none"),
    _rule("now-time", fill="@paper", stroke="none", font_weight="700"),
    _rule(
        "longest-words",
        fill="@ink",
        stroke="@paper",
        stroke_width="@w-halo*2",
        stroke_linejoin="round",
        paint_order="stroke",
    ),
    _rule("longest-words", state="lit", stroke="@lit"),
)
"""The style table; a later rule wins."""


def look_of(words: Iterable[str], tokens: dict[str, str]) -> dict[str, str]:
    """The attributes of a shape whose own and outer class words are given, with the tokens filled in."""
    own = frozenset(words)
    looks: dict[str, str] = {}
    for rule in RULES:
        if own.issuperset(rule.on) and (not rule.state or rule.state in own):
            looks |= {name: _number(value, tokens) for name, value in rule.look}
    return looks


def _number(value: str, tokens: dict[str, str]) -> str:
    if not value.startswith("@"):
        return value
    name, _, factor = value[1:].partition("*")
    return f"{float(tokens[name]) * float(factor):.3g}" if factor else tokens[name]


def stylesheet() -> str:
    """The table as a style sheet for pages, which define the colour and stroke tokens as CSS variables."""
    return "".join(f"{_selector(rule)}{{{_declared(rule.look)}}}\n" for rule in RULES)


def _selector(rule: Rule) -> str:
    own = "".join(f".{word}" for word in rule.on)
    if not rule.state:
        return f".pic {own}"
    return f".pic {own}.{rule.state},.pic .{rule.state} {own}"


def _declared(look: Look) -> str:
    return ";".join(f"{name}:{_variable(name, value)}" for name, value in look)


def _variable(name: str, value: str) -> str:
    if not value.startswith("@"):
        return value
    token, _, factor = value[1:].partition("*")
    if token == "heavy":
        return SCREEN_TOKENS[token]
    stroke = token.startswith(("w-", "dash-"))
    if stroke and token not in SHARED:
        plain = SCREEN_TOKENS[token].split()
        plain = [f"{float(part) * float(factor or 1):g}px" for part in plain]
        return " ".join(plain)
    return f"calc(var(--{token}) * {factor})" if factor else f"var(--{token})"
