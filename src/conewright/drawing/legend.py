"""The legend: a sample and a word for whatever occurs in a picture, and nothing else; ends with the square."""

from collections.abc import Callable
from dataclasses import dataclass, replace

from conewright.drawing import boxes, marks
from conewright.drawing.courses import Course
from conewright.drawing.ink import Stroke, inked
from conewright.drawing.letters import width_of
from conewright.drawing.measures import PAPER, SCREEN, Measures
from conewright.model.geometry import ORIGIN
from conewright.model.scene import Dot, Group, Path, Rect, Scene, Shape, Text, walk

LAST = "one square is 1 m"
HEIGHT, LINE_WIDTH = 20.0, 46.0  # of a sample, px; on paper `PAPER_SHARE` of it
PAPER_SHARE = 0.21
TEXT_SIZE = {"px": 13.0, "mm": 3.0}  # 3.0 mm are 8.5 pt
BETWEEN, AFTER_SAMPLE, ROWS = 18.0, 6.0, 24.0  # between entries, between a sample and its words, from row to row


@dataclass(frozen=True, slots=True, kw_only=True)
class LegendEntry:
    """One entry: a small picture (None for words alone) and what it means."""

    sample: Scene | None
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class _Kit:
    """What samples are drawn with: sizes, the share of a px, the tradition, the form of those who wait."""

    measures: Measures
    share: float
    tradition: str
    waiting: str

    def dot(self, x: float, y: float) -> Dot:
        return Dot(x * self.share, y * self.share)


def _line(kind: str) -> Callable[[_Kit], tuple[Shape, ...]]:
    def draw(kit: _Kit) -> tuple[Shape, ...]:
        course = Course(kind=kind, points=(ORIGIN, ORIGIN), step=0, act=-1)
        drawn = Stroke(course=course, line=(kit.dot(1, 10), kit.dot(LINE_WIDTH - 1, 10)))
        return inked(drawn, kit.measures, kit.tradition, "")[1].shapes

    return draw


def _waiting(kit: _Kit) -> tuple[Shape, ...]:
    thread = Path(pieces=((kit.dot(4, 10), kit.dot(42, 10)),), name="queue")
    letter = "" if kit.waiting == "n" else kit.waiting.upper()
    return (thread, *(_mark(kit, x, group=kit.waiting, letter=letter, radius=7.2, waits=True) for x in (30, 12)))


def _mark(
    kit: _Kit, x: float, *, group: str, letter: str, radius: float, waits: bool = False, looks: float = 0.0
) -> Group:
    radius *= kit.share
    sizes = replace(kit.measures, letter_least=0.0)
    return marks.person(
        kit.dot(x, 10), radius, group=group, letters=letter, direction=looks, measures=sizes, waiting=waits
    )


def _adult(kit: _Kit) -> tuple[Shape, ...]:
    return (_mark(kit, 9, group="ad", letter="C", radius=8.4),)


def _keeper(kit: _Kit) -> tuple[Shape, ...]:
    return (_mark(kit, 9, group="n", letter="K", radius=8.0),)


def _place(kit: _Kit) -> tuple[Shape, ...]:
    return (Path(pieces=((kit.dot(1, 15), kit.dot(23, 15)),), name="spot"),)


def _ball(kit: _Kit) -> tuple[Shape, ...]:
    return (marks.ball(kit.dot(7, 10), 9.0 * kit.share, kit.measures),)


def _cone(kit: _Kit) -> tuple[Shape, ...]:
    return (marks.cone(kit.dot(8, 10), kit.measures),)


def _gate(kit: _Kit) -> tuple[Shape, ...]:
    return (marks.gate(kit.dot(6, 10), kit.dot(38, 10), kit.measures),)


def _goal(kit: _Kit) -> tuple[Shape, ...]:
    return (marks.goal(kit.dot(18, 10), half=7 * kit.share, direction=0.0, depth=9 * kit.share),)


def _wall(kit: _Kit) -> tuple[Shape, ...]:
    return (marks.wall(kit.dot(2, 10), kit.dot(26, 10)),)


def _contest(kit: _Kit) -> tuple[Shape, ...]:
    return (boxes.contest_box(kit.dot(2, 2), kit.dot(44, 18), kit.measures),)


def _open(kit: _Kit) -> tuple[Shape, ...]:
    return (boxes.open_box(kit.dot(2, 2), kit.dot(44, 18), kit.measures),)


def _meeting(kit: _Kit) -> tuple[Shape, ...]:
    return (marks.meeting(kit.dot(12, 10), reach=0.0, measures=kit.measures),)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Kind:
    """Which class words of a picture call for an entry, what it says, its sample and how wide that is, px."""

    on: str
    words: str
    draw: Callable[[_Kit], tuple[Shape, ...]]
    width: float = LINE_WIDTH


def _wait(kit: _Kit) -> tuple[Shape, ...]:
    return (Path(pieces=((kit.dot(0, 10), kit.dot(36, 10)),), name="wait"),)


def _move(kit: _Kit) -> tuple[Shape, ...]:
    low, high = kit.dot(1, 5), kit.dot(35, 15)
    box = Rect(at=low, width=high.x - low.x, height=high.y - low.y, name="move")
    return (box, boxes.slanted(low, high, 5.0, "move-hatch"))


def _on_ball(kit: _Kit) -> tuple[Shape, ...]:
    return (Rect(at=kit.dot(0, 1), width=36 * kit.share, height=18 * kit.share, name="on-ball"),)


STRIP_KINDS = (
    _Kind(on="wait", words="waiting", draw=_wait, width=36),
    _Kind(on="move", words="moving", draw=_move, width=36),
    _Kind(on="on-ball", words="on the ball", draw=_on_ball, width=36),
)

KINDS = (
    _Kind(on="ln.ball", words="ball", draw=_line("ball")),
    _Kind(on="ln.run", words="run", draw=_line("run")),
    _Kind(on="ln.with", words="with the ball", draw=_line("with")),
    _Kind(on="ln.shot", words="shot", draw=_line("shot")),
    _Kind(on="ln.back", words="way back", draw=_line("back")),
    _Kind(on="p.w", words="waiting, in line", draw=_waiting),
    _Kind(on="spot", words="place", draw=_place, width=24),
    _Kind(on="ball-mark", words="ball on the ground", draw=_ball, width=14),
    _Kind(on="cone", words="cone", draw=_cone, width=16),
    _Kind(on="gate-mark", words="gate", draw=_gate),
    _Kind(on="goal-mark.mini", words="mini goal", draw=_goal, width=24),
    _Kind(on="goal-mark.full", words="goal", draw=_goal, width=24),
    _Kind(on="wall", words="wall", draw=_wall, width=28),
    _Kind(on="contest", words="contest: left to them", draw=_contest),
    _Kind(on="open-play", words="open play", draw=_open),
    _Kind(on="wn", words="paths meet", draw=_meeting, width=24),
    _Kind(on="keeper", words="keeper", draw=_keeper, width=24),
    _Kind(on="p.ad", words="adult", draw=_adult, width=28),
)
"""The entries in the order they are printed."""


def legend(scene: Scene) -> tuple[LegendEntry, ...]:
    """What occurs in the picture, each with a sample in its own tradition, and last what a square is."""
    return legend_of((scene,))


def legend_of(scenes: tuple[Scene, ...]) -> tuple[LegendEntry, ...]:
    """One legend for several pictures of one unit and tradition."""
    if not scenes:
        return ()
    names = [frozenset(shape.name.split()) for scene in scenes for shape, _ in walk(scene.shapes)]
    waiting = next((min(name & {"y", "b", "r", "g", "n"}) for name in names if {"p", "w"} <= name), "n")
    paper = scenes[0].unit == "mm"
    kit = _Kit(
        measures=PAPER if paper else SCREEN,
        share=PAPER_SHARE if paper else 1.0,
        tradition="B" if "tradB" in scenes[0].name.split() else "A",
        waiting=waiting,
    )
    found = (kind for kind in KINDS if any(name.issuperset(kind.on.split(".")) for name in names))
    entries = tuple(LegendEntry(sample=_sample(kind, kit, scenes[0]), words=kind.words) for kind in found)
    return (*entries, LegendEntry(sample=None, words=LAST))


def strip_legend() -> tuple[LegendEntry, ...]:
    """The three forms of the strip, for a screen."""
    kit = _Kit(measures=SCREEN, share=1.0, tradition="A", waiting="n")
    blank = Scene(width=1, height=1, shapes=(), title="", name="pic strip")
    return tuple(LegendEntry(sample=_sample(kind, kit, blank), words=kind.words) for kind in STRIP_KINDS)


def _sample(kind: _Kind, kit: _Kit, scene: Scene) -> Scene:
    return Scene(
        width=kind.width * kit.share,
        height=HEIGHT * kit.share,
        shapes=kind.draw(kit),
        title=kind.words,
        unit=scene.unit,
        name=scene.name,
    )


def with_legend(scene: Scene) -> Scene:
    """The picture with its legend printed under it, for a picture that stands alone."""
    shapes, below = legend_rows(legend(scene), width=scene.width, unit=scene.unit)
    gap = 8.0 * (PAPER_SHARE if scene.unit == "mm" else 1.0)
    group = Group(shapes=shapes, name="l-legend", at=Dot(0.0, scene.height + gap))
    return replace(scene, height=scene.height + gap + below, shapes=(*scene.shapes, group))


def legend_rows(entries: tuple[LegendEntry, ...], *, width: float, unit: str) -> tuple[tuple[Shape, ...], float]:
    """The entries set in rows of a width, and how high they are."""
    share, size = (PAPER_SHARE if unit == "mm" else 1.0), TEXT_SIZE[unit]
    row = max(ROWS * share, 1.5 * size)
    shapes: list[Shape] = []
    x, y = 0.0, 0.0
    for words, sample in (("Legend", None), *((entry.words, entry.sample) for entry in entries)):
        before = (sample.width + AFTER_SAMPLE * share) if sample else 0.0
        wide = before + width_of(words, size) * (1.0 if words == "Legend" else 0.95)
        if x > 0 and x + wide > width:
            x, y = 0.0, y + row
        if sample is not None:
            shapes.append(Group(shapes=sample.shapes, name="lg-sample", at=Dot(x, y + (row - sample.height) / 2)))
        name = "lg first" if words == "Legend" else "lg"
        shapes.append(
            Text(at=Dot(x + before, y + row / 2 + 0.35 * size), words=words, size=size, name=name, anchor="start")
        )
        x += wide + BETWEEN * share
    return tuple(shapes), y + row
