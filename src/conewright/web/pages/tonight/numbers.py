"""The table from two fewer to two more, with its small scales; must not know how the figures were found."""

from collections.abc import Callable
from dataclasses import dataclass

from conewright.model.figures import Figures
from conewright.model.session import Block, HeadAnswer

UNKNOWN = "not rehearsed"
AXIS_LEFT, AXIS_RIGHT = 3.0, 61.0  # of a scale 64 wide


@dataclass(frozen=True, slots=True, kw_only=True)
class Scale:
    """A value or a range on its scale, in px: `at` where rehearsed, from `low` wide `wide` where estimated."""

    words: str
    at: str = ""
    low: str = ""
    wide: str = ""
    mark: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Cell:
    """One figure for one head count."""

    words: str
    here: bool
    far: bool
    over: bool = False
    scale: Scale | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One figure for every head count."""

    name: str
    cells: tuple[Cell, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Numbers:
    """The table: head counts, how they are grouped, the figures, and what has to be said about them."""

    heads: tuple[Cell, ...]
    groups: Row
    rows: tuple[Row, ...]
    notes: tuple[str, ...]
    others: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """One figure of an answer: its range, both ends equal where it was rehearsed, and how it is written."""

    low: float
    high: float
    words: str


Read = Callable[[HeadAnswer], Figure | None]


def numbers_of(block: Block, here: int, figures: Figures, age: int) -> Numbers | None:
    """The table of a block; None where no answers stand ready."""
    answers = block.answers
    if not answers:
        return None
    mark = figures.at("waiting_mark_share", age=age)
    rows = (
        _row("waiting, share of the time", answers, here, _waiting, mark=mark),
        _row("foot contacts, a child a minute", answers, here, _contacts),
        _row("longest wait, seconds", answers, here, _longest),
        _row("rounds a minute" + (", all copies" if len(block.copies) > 1 else ""), answers, here, _rounds),
    )
    known = tuple(row for row in rows if any(cell.scale for cell in row.cells))
    return Numbers(
        heads=tuple(_cell(answer, here, str(answer.here)) for answer in answers),
        groups=Row(name="in groups of", cells=tuple(_cell(answer, here, _sizes(answer)) for answer in answers)),
        rows=known or rows[:2],
        notes=_notes(answers, waiting_known=any(answer.waiting_share is not None for answer in answers), age=age),
        others=_others(block, here),
    )


def _sizes(answer: HeadAnswer) -> str:
    return " + ".join(map(str, answer.sizes)) or "does not run"


def _cell(answer: HeadAnswer, here: int, words: str) -> Cell:
    return Cell(words=words, here=answer.here == here, far=abs(answer.here - here) > 1)


def _waiting(answer: HeadAnswer) -> Figure | None:
    share = answer.waiting_share
    return None if share is None else Figure(low=share, high=share, words=f"{100 * share:.0f} %")


def _contacts(answer: HeadAnswer) -> Figure | None:
    low, high = answer.contacts_a_minute, answer.contacts_high
    if low is None:
        return None
    words = f"{low:.0f}" if high is None else f"{low:.0f} to {high:.0f}"
    return Figure(low=low, high=low if high is None else high, words=words)


def _longest(answer: HeadAnswer) -> Figure | None:
    wait = answer.longest_wait_s
    return None if wait is None else Figure(low=wait, high=wait, words=f"{wait:.0f}")


def _rounds(answer: HeadAnswer) -> Figure | None:
    rounds = answer.rounds_a_minute
    return None if rounds is None else Figure(low=rounds, high=rounds, words=f"{rounds:.1f}")


def _row(name: str, answers: tuple[HeadAnswer, ...], here: int, read: Read, *, mark: float | None = None) -> Row:
    figures = tuple(read(answer) for answer in answers)
    top = max((figure.high for figure in figures if figure), default=0.0)
    top = max(top, mark or 0.0) * 1.15 or 1.0
    cells = []
    for answer, figure in zip(answers, figures, strict=True):
        if figure is None:
            cells.append(Cell(words=UNKNOWN, here=answer.here == here, far=abs(answer.here - here) > 1))
            continue
        cells.append(
            Cell(
                words=figure.words,
                here=answer.here == here,
                far=abs(answer.here - here) > 1,
                over=mark is not None and figure.low > mark,
                scale=_scale(figure, top, mark),
            )
        )
    return Row(name=name, cells=tuple(cells))


def _scale(figure: Figure, top: float, mark: float | None) -> Scale:
    low, high = _px(figure.low, top), _px(figure.high, top)
    marked = f"{_px(mark, top):.1f}" if mark is not None else ""
    if high > low:
        return Scale(words=f"from {figure.words}", low=f"{low:.1f}", wide=f"{high - low:.1f}", mark=marked)
    return Scale(words=figure.words, at=f"{low:.1f}", mark=marked)


def _px(value: float, top: float) -> float:
    return AXIS_LEFT + (AXIS_RIGHT - AXIS_LEFT) * value / top


def _notes(answers: tuple[HeadAnswer, ...], *, waiting_known: bool, age: int) -> tuple[str, ...]:
    estimated = any(answer.estimated for answer in answers)
    rehearsed = any(answer.contacts_a_minute is not None and not answer.estimated for answer in answers)
    notes: tuple[str, ...] = ("Rehearsed, if all goes cleanly.",) if rehearsed or waiting_known else ()
    notes += ("Bars are estimates: ranges from published figures, not rehearsed.",) if estimated else ()
    return (*notes, f"Dotted: the mark to beat for under {age}.") if waiting_known else notes


def _others(block: Block, here: int) -> tuple[str, ...]:
    """Head counts for which the block would not stay as it is."""
    own = block.exercise.name
    return tuple(
        f"With {answer.here}: {answer.words}."
        for answer in block.answers
        if answer.here != here and (answer.exercise != own or not answer.sizes)
    )
