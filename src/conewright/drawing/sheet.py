"""The one-page sheet as plain data: what is printed where, pictures as SVG; must not know files, fonts or the setter.

Lengths are millimetres, sizes of text points.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass, replace

from conewright.drawing.block import block_picture, view_of
from conewright.drawing.legend import legend_of, legend_rows
from conewright.drawing.letters import width_of
from conewright.drawing.numerals import counted, in_words, listed
from conewright.drawing.options import PictureOptions
from conewright.drawing.sentences import sentence, start_words, told, told_play
from conewright.drawing.svg import svg
from conewright.model.layout import sides_for, standing
from conewright.model.problem import Problem, Severity
from conewright.model.scene import Scene
from conewright.model.session import Block, Copy, HeadAnswer, Kit, Session, Tonight

PAGE_MM, COLUMN_MM = 190.0, 91.0
POINT_MM = 25.4 / 72
FEW_BLOCKS, TEXT_PT, SMALL_TEXT_PT, LEAST_PT = 4, 10.0, 9.0, 8.5
CLOCK_PT, CLOCK_EDGE_MM = 9.5, 3.4
CAUTIONS = 4  # printed at most, the heaviest first
CUES = 3
CLEAR_MM = 1.9  # of paper a metre: below it one copy is shown alone
TURNED_GAIN = 1.2
OPEN_SHARE = 0.8  # a box without lines of play may be drawn smaller
ADULTS = "adults"  # findings whose code starts so come first
CLOCK = re.compile(r"\b(\d{1,2}):(\d{2})\b")
FULL, BRIEF, BARE = 2, 1, 0  # how much of a block is told: all; not what picture and kit line say; the round alone


@dataclass(frozen=True, slots=True, kw_only=True)
class ClockPart:
    """A stretch of the clock bar; `words` are empty where they would not fit, `hatched` marks a pause."""

    words: str
    at: str
    minutes: float
    hatched: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetPicture:
    """A picture to be set at its own size."""

    svg: str
    width_mm: float
    height_mm: float
    alt: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetBlock:
    """One block: `lines` are sentences with their numbers, "" where a sentence has none."""

    name: str
    when: str
    picture: SheetPicture
    groups: str
    lines: tuple[tuple[str, str], ...]
    say: str
    care: str
    others: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """The sheet, whole. `heading` is the aim, `above` says who and when, `here` and `kit` stand on the right."""

    heading: str
    above: str
    here: str
    ground: str
    clock: tuple[ClockPart, ...]
    blocks: tuple[SheetBlock, ...]
    legend: SheetPicture
    kit: str
    cautions: tuple[str, ...]
    text_pt: float


def sheet(
    session: Session, *, title: str, when: str, tradition: str = "A", picture_mm: float = 60.0, detail: int = FULL
) -> Sheet:
    """The sheet of a session with pictures at most `picture_mm` high, told in full, in brief or bare.

    The heading is the aim; `title` (the team, the evening) stands above it with `when`. Where `when` holds a time of
    day the clock counts from it, else from nought.
    """
    tonight = session.tonight
    chosen = tuple(_options(block, tonight, tradition, picture_mm) for block in session.blocks)
    scenes = tuple(
        block_picture(block, tonight, options=options) for block, options in zip(session.blocks, chosen, strict=True)
    )
    heading = sentence(tonight.aim).rstrip(".") if tonight.aim else title
    above = [title] if tonight.aim else []
    return Sheet(
        heading=heading,
        above=". ".join([*above, when]) if when else title,
        here=f"{counted(tonight.here, 'child', 'children')}, {counted(tonight.adults, 'adult', 'adults')}",
        ground=f"{tonight.width_m:g} by {tonight.depth_m:g} m, {counted(tonight.minutes, 'minute', 'minutes')}",
        clock=_clock(session, when),
        blocks=tuple(
            _block(
                block,
                _picture(scene),
                number,
                session,
                when=when,
                detail=detail,
                drawn=_drawn_words(block, options, detail),
            )
            for number, (block, scene, options) in enumerate(zip(session.blocks, scenes, chosen, strict=True), start=1)
        ),
        legend=_legend(scenes),
        kit=_kit_words(_most_at_once(session.blocks)),
        cautions=_cautions(session.problems),
        text_pt=LEAST_PT if detail == BARE else TEXT_PT if len(session.blocks) <= FEW_BLOCKS else SMALL_TEXT_PT,
    )


# --- pictures ---------------------------------------------------------------------------------------------------------


def _options(block: Block, tonight: Tonight, tradition: str, picture_mm: float) -> PictureOptions:
    """All copies where they have room; else one copy alone, turned where that shows it a good deal larger."""
    every = PictureOptions(
        width=COLUMN_MM,
        most_height=picture_mm * (1.0 if block.exercise.script is not None else OPEN_SHARE),
        paper=True,
        numbers=False,
        names=False,
        cropped=True,
        tradition=tradition,
    )
    if not block.copies or view_of(block, tonight, every).scale >= CLEAR_MM:
        return every
    one = replace(every, only=0 if len(block.copies) > 1 else None)
    turned = replace(one, turned=True)
    larger = view_of(block, tonight, turned).scale > TURNED_GAIN * view_of(block, tonight, one).scale
    return turned if larger else one


def _drawn_words(block: Block, options: PictureOptions, detail: int) -> str:
    """What the picture leaves out or turns, and where the copies lie that it does not show."""
    parts = []
    if options.only is not None:
        first, others = block.copies[options.only], block.copies[: options.only] + block.copies[options.only + 1 :]
        places = "; ".join(_from(first, other) for other in others)
        parts.append(f"Drawn: one copy of {in_words(len(block.copies))}.")
        parts += [f"{'The other' if len(others) == 1 else 'The others'} from there: {places}."] if detail > BARE else []
    if options.turned:
        parts.append("Play runs to the right here.")
    return " ".join(parts)


def _from(first: Copy, other: Copy) -> str:
    """ "14 m right, 3 m up, mirrored"."""
    across, up = other.origin.x_m - first.origin.x_m, other.origin.y_m - first.origin.y_m
    parts = [f"{abs(across):.0f} m {'right' if across > 0 else 'left'}"] if abs(across) >= 0.5 else []
    parts += [f"{abs(up):.0f} m {'up' if up > 0 else 'down'}"] if abs(up) >= 0.5 else []
    parts += ["mirrored"] if other.mirrored != first.mirrored else []
    return ", ".join(parts)


def _picture(scene: Scene) -> SheetPicture:
    alt = ". ".join(part.rstrip(".") for part in (scene.title, scene.description) if part)
    return SheetPicture(svg=svg(scene, style="paper"), width_mm=scene.width, height_mm=scene.height, alt=alt)


def _legend(scenes: tuple[Scene, ...]) -> SheetPicture:
    entries = legend_of(scenes)
    shapes, height = legend_rows(entries, width=PAGE_MM, unit="mm")
    words = ", ".join(entry.words for entry in entries)
    return _picture(Scene(width=PAGE_MM, height=height, shapes=shapes, title="Legend", description=words, unit="mm"))


# --- words of a block -------------------------------------------------------------------------------------------------


def _block(
    block: Block, picture: SheetPicture, number: int, session: Session, *, when: str, detail: int, drawn: str
) -> SheetBlock:
    time = _time(when, block.start_min)
    return SheetBlock(
        name=f"{number} {block.exercise.name}",
        when=f"{time}, {block.minutes:g} min",
        picture=picture,
        groups=_groups(block, detail, drawn),
        lines=_lines(block, detail),
        say="; ".join(block.exercise.cues[:CUES]),
        care=sentence("; ".join(block.exercise.cautions)),
        others=_others(block.answers, session.tonight.here, block.exercise.name),
    )


def _groups(block: Block, detail: int, drawn: str) -> str:
    kit = _kit_words(block.kit) if detail == FULL else ""
    return " ".join(part for part in (sentence(block.groups), sentence(kit), drawn) if part)


def _lines(block: Block, detail: int) -> tuple[tuple[str, str], ...]:
    """The sentences of the round, or those about the game; in brief without who goes where afterwards."""
    exercise, first = block.exercise, block.copies[0] if block.copies else None
    lines: list[tuple[str, str]] = []
    if exercise.script is not None:
        if detail == FULL and first is not None:
            lines.append(("", start_words(exercise, standing(exercise, first.size))))
        lines += [line for line in told(exercise) if line[0] or detail > BARE]
    if exercise.open_play is not None and first is not None:
        sides = first.sides or sides_for(exercise, first.size)
        told_in_full = told_play(exercise.open_play, sides, scale=first.scale)
        words = told_in_full if detail > BARE else told_in_full[:1]
        lines.append(("", " ".join(words)))
    if exercise.score and detail == FULL:
        lines.append(("", sentence(f"Score: {exercise.score}")))
    return tuple(lines)


def _others(answers: tuple[HeadAnswer, ...], here: int, name: str) -> str:
    """What the block is for other head counts: "12: two copies of 6. 14: two copies of 7."."""
    return " ".join(sentence(f"{answer.here}: {_other(answer, name)}") for answer in answers if answer.here != here)


def _other(answer: HeadAnswer, name: str) -> str:
    said = answer.exercise == name or answer.exercise in answer.words
    return answer.words if said else f"{answer.exercise}, {answer.words}"


# --- clock, kit, cautions ---------------------------------------------------------------------------------------------


def _clock(session: Session, when: str) -> tuple[ClockPart, ...]:
    """Blocks and pauses in the order of time, with what words there is room for."""
    parts: list[tuple[float, float, str, str, bool]] = [
        (block.start_min, block.minutes, block.exercise.name, block.job.value, False) for block in session.blocks
    ]
    parts += [(pause.start_min, pause.minutes, "", "", True) for pause in session.pauses]
    whole = sum(part[1] for part in parts) or 1.0
    return tuple(
        ClockPart(
            words=_that_fit(name, short, PAGE_MM * minutes / whole - CLOCK_EDGE_MM),
            at="" if hatched else _that_fit(_time(when, start), "", PAGE_MM * minutes / whole - CLOCK_EDGE_MM + 0.6),
            minutes=minutes,
            hatched=hatched,
        )
        for start, minutes, name, short, hatched in sorted(parts)
    )


def _that_fit(name: str, short: str, width_mm: float) -> str:
    """The name, as many of its first words as there is room for, or what the block is for."""
    words = name.split()
    tries = (*(" ".join(words[:count]) for count in range(len(words), 0, -1)), short.capitalize())
    return next((some for some in tries if width_of(some, CLOCK_PT * POINT_MM) <= width_mm), "")


def _time(when: str, minutes: float) -> str:
    """The time of day so many minutes after the first one in `when`, else the minutes themselves."""
    found = CLOCK.search(when)
    if found is None:
        return f"minute {minutes:g}"
    total = int(found[1]) * 60 + int(found[2]) + round(minutes)
    return f"{total // 60 % 24}:{total % 60:02d}"


def _most_at_once(blocks: tuple[Block, ...]) -> Kit:
    """What has to be brought: the most of each thing any block uses."""
    colours = dict.fromkeys(bib for block in blocks for bib, _ in block.kit.bibs)
    return Kit(
        balls=max((block.kit.balls for block in blocks), default=0),
        cones=max((block.kit.cones for block in blocks), default=0),
        mini_goals=max((block.kit.mini_goals for block in blocks), default=0),
        goals=max((block.kit.goals for block in blocks), default=0),
        bibs=tuple((bib, max(dict(block.kit.bibs).get(bib, 0) for block in blocks)) for bib in colours),
    )


def _kit_words(kit: Kit) -> str:
    """ "8 balls, 10 cones, 6 yellow and 7 blue bibs"."""
    things = (
        (kit.balls, "ball", "balls"),
        (kit.cones, "cone", "cones"),
        (kit.mini_goals, "mini goal", "mini goals"),
        (kit.goals, "goal", "goals"),
    )
    words = [counted(count, one, more) for count, one, more in things if count]
    bibs = [f"{count} {bib.value.lower()}" for bib, count in kit.bibs if count]
    return ", ".join([*words, *([f"{listed(bibs)} bibs"] if bibs else [])])


def _cautions(problems: tuple[Problem, ...]) -> tuple[str, ...]:
    """What the coach has to see before the start: adults first, then what has to be mended, then what to look at."""
    order = list(Severity)
    seen = [problem for problem in problems if problem.severity is not Severity.KNOW or problem.code.startswith(ADULTS)]
    ranked = sorted(seen, key=lambda problem: (not problem.code.startswith(ADULTS), order.index(problem.severity)))
    return tuple(dict.fromkeys(sentence(problem.message).replace(" %", "\N{NO-BREAK SPACE}%") for problem in ranked))[
        :CAUTIONS
    ]


# --- letters ----------------------------------------------------------------------------------------------------------


def texts_of(page: Sheet) -> tuple[str, ...]:
    """Every text of the sheet."""
    found: list[str] = []

    def keep(text: str) -> str:
        found.append(text)
        return text

    each_text(page, keep)
    return tuple(found)


def each_text(page: Sheet, change: Callable[[str], str]) -> Sheet:
    """The sheet with every text changed, those in its pictures too."""

    def picture(one: SheetPicture) -> SheetPicture:
        return replace(one, svg=change(one.svg), alt=change(one.alt))

    blocks = tuple(
        replace(
            block,
            name=change(block.name),
            when=change(block.when),
            picture=picture(block.picture),
            groups=change(block.groups),
            lines=tuple((number, change(words)) for number, words in block.lines),
            say=change(block.say),
            care=change(block.care),
            others=change(block.others),
        )
        for block in page.blocks
    )
    return replace(
        page,
        heading=change(page.heading),
        above=change(page.above),
        here=change(page.here),
        ground=change(page.ground),
        clock=tuple(replace(part, words=change(part.words), at=change(part.at)) for part in page.clock),
        blocks=blocks,
        legend=picture(page.legend),
        kit=change(page.kit),
        cautions=tuple(change(words) for words in page.cautions),
    )
