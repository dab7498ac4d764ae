"""What the page Tonight shows, worked out from a session; must not know requests or the marks of a page."""

from dataclasses import dataclass
from datetime import datetime

from conewright.model.figures import Figures
from conewright.model.problem import Problem, Severity
from conewright.model.rehearsed import NotRehearsed, Rehearsal
from conewright.model.session import Block, Kit, Session
from conewright.web.pages.tonight.clock import JOBS, Piece, Tick, at, pieces_of, ticks_of
from conewright.web.pages.tonight.clock_styles import row_class
from conewright.web.pages.tonight.numbers import Numbers, numbers_of
from conewright.web.pages.tonight.picture import Picture, Strip, copy_name, drawn, narrow, strip_of, wide
from conewright.web.pages.tonight.sources import Origin, origins_of
from conewright.web.pages.tonight.told import Sentence, sentences_of

NOBODY, ADULTS = "nobody-here", "adults"  # codes of problems that have a place of their own


@dataclass(frozen=True, slots=True, kw_only=True)
class CopyName:
    """A copy and its number, to be chosen for the strip."""

    number: int
    name: str


@dataclass(frozen=True, slots=True, kw_only=True)
class BlockView:
    """The block in hand."""

    number: int
    name: str
    hours: str
    groups: str
    why: str
    needs: str
    picture: Picture
    phone: Picture
    phone_words: str
    strip: Strip | None
    phone_strip: Strip | None
    copy: int
    copies: tuple[CopyName, ...]
    plays: bool
    not_rehearsed: str
    sentences: tuple[Sentence, ...]
    numbers: Numbers | None
    pace: str
    findings: tuple[Problem, ...]
    cautions: tuple[str, ...]
    cues: tuple[str, ...]
    faults: tuple[tuple[str, str], ...]
    origins: tuple[Origin, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class EveningView:
    """The evening along the clock, what is urgent, what is good to know, and the block in hand."""

    urgent: tuple[Problem, ...]
    later: tuple[Problem, ...]
    good_to_know: tuple[Problem, ...]
    pieces: tuple[Piece, ...]
    ticks: tuple[Tick, ...]
    row: str
    rolling: str
    rolling_mark: str
    changing_min: int
    refitted: str
    told: str
    block: BlockView | None


def evening_view(
    session: Session, *, begins: datetime, number: int, copy: int, planned: int, figures: Figures, text: str
) -> EveningView:
    """The whole view; `number` is the block in hand, `copy` the copy whose strip is shown, both from 1."""
    tonight = session.tonight
    block = session.blocks[number - 1] if session.blocks else None
    pieces = pieces_of(session, begins)
    changing = sum(pause.minutes for pause in session.pauses)
    return EveningView(
        urgent=tuple(problem for problem in session.problems if _is_urgent(problem)),
        later=tuple(
            problem for problem in session.problems if problem.severity is Severity.LOOK and not _is_urgent(problem)
        ),
        good_to_know=tuple(problem for problem in session.problems if problem.severity is Severity.KNOW),
        pieces=pieces,
        row=row_class(pieces),
        ticks=ticks_of(tonight.minutes, begins) if session.blocks else (),
        rolling=f"{100 * session.rolling_share:.0f} %",
        rolling_mark=f"{100 * figures.value('rolling_share_mark'):.0f}",
        changing_min=round(changing),
        refitted=f"Planned for {planned}, fitted again to {tonight.here}" if planned != tonight.here else "",
        told=_told(session),
        block=_block_view(session, block, begins, number, copy, figures, text) if block else None,
    )


def _is_urgent(problem: Problem) -> bool:
    """What stands before the evening: adults first, and whatever has to be mended; no count is asked for elsewhere."""
    mends = problem.severity is Severity.MEND and problem.code != NOBODY
    return mends or problem.code.startswith(ADULTS)


def _told(session: Session) -> str:
    """What a screen reader hears after a change."""
    here = session.tonight.here
    if not session.blocks:
        return f"Nothing fits {here}." if here else "Nobody is counted yet."
    return f"Fitted to {here}: {', '.join(block.exercise.name for block in session.blocks)}."


def _block_view(
    session: Session, block: Block, begins: datetime, number: int, copy: int, figures: Figures, text: str
) -> BlockView:
    tonight = session.tonight
    chosen = min(max(copy, 1), len(block.copies)) - 1
    most_wait = figures.at("waiting_mark_share", age=tonight.age)
    exercise = block.exercise
    return BlockView(
        number=number,
        name=exercise.name,
        hours=f"{at(begins, block.start_min)} to {at(begins, block.start_min + block.minutes)}",
        groups=f"{JOBS[block.job].capitalize()}. {block.groups}.",
        why=block.why,
        needs=_needs(block.kit),
        picture=drawn(wide(block, tonight)),
        phone=drawn(narrow(block, tonight, chosen)),
        phone_words=_phone_words(block, chosen),
        strip=strip_of(block, chosen, most_wait=most_wait),
        phone_strip=strip_of(block, chosen, most_wait=most_wait, phone=True),
        copy=chosen + 1,
        copies=tuple(CopyName(number=place + 1, name=copy_name(block, place)) for place in range(len(block.copies))),
        plays=isinstance(block.copies[chosen].rehearsed, Rehearsal),
        not_rehearsed=_not_rehearsed(block, chosen),
        sentences=sentences_of(exercise, text),
        numbers=numbers_of(block, tonight.here, figures, tonight.age),
        pace=_pace(block, chosen),
        findings=block.findings,
        cautions=exercise.cautions,
        cues=exercise.cues[:3],
        faults=tuple((fault.fault, fault.remedy) for fault in exercise.faults),
        origins=origins_of(block, figures, age=tonight.age, surface=tonight.surface),
    )


def _needs(kit: Kit) -> str:
    parts = [(kit.balls, "ball"), (kit.cones, "cone"), (kit.mini_goals, "mini goal"), (kit.goals, "goal")]
    words = [f"{count} {noun}{'' if count == 1 else 's'}" for count, noun in parts if count]
    words += [f"{count} {bib.value.lower()} bib{'' if count == 1 else 's'}" for bib, count in kit.bibs if count]
    if len(words) > 1:
        words = [*words[:-2], f"{words[-2]} and {words[-1]}"]
    return f"Needs {', '.join(words)}." if words else "Needs nothing."


def _phone_words(block: Block, chosen: int) -> str:
    if len(block.copies) == 1:
        return ""
    others = [copy_name(block, place) for place in range(len(block.copies)) if place != chosen]
    return f"{copy_name(block, chosen)}. Beside it: {', '.join(others)}."


def _not_rehearsed(block: Block, chosen: int) -> str:
    rehearsed = block.copies[chosen].rehearsed
    if isinstance(rehearsed, Rehearsal):
        return ""
    if isinstance(rehearsed, NotRehearsed):
        return f"Not rehearsed: {rehearsed.why}."
    return "What happens in it is left to the children, so it is not rehearsed and nothing is played here."


def _pace(block: Block, chosen: int) -> str:
    rehearsed = block.copies[chosen].rehearsed
    return rehearsed.pace.sentence if isinstance(rehearsed, Rehearsal) else ""
