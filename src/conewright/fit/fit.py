"""Fits an evening to whoever came: from tonight and the shelf to a session; must not know files, pages or clocks.

The clock gives the parts, each exercise says in what way it can be used tonight or why not, the search puts one in each
part, and the blocks are written out with answers for a few fewer and a few more. What cannot be had is said as a
problem; nothing here raises for anything a coach may ask.
"""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass, replace

from conewright.checks.check import check_copy
from conewright.fit.adults import adult_cautions
from conewright.fit.answers import answers_for
from conewright.fit.asked import cannot_start, sound
from conewright.fit.bench import Bench, Checker, Rehearser, Stop
from conewright.fit.blocks import block_of
from conewright.fit.changes import changes
from conewright.fit.clock import Clock, Slot, also_serves, clock_for
from conewright.fit.findings import SEVERITIES
from conewright.fit.memory import Memory
from conewright.fit.options import Choice, Option, choice_for, choice_like
from conewright.fit.parts import Chosen, Evening, ball_rolling, cones_of, grades
from conewright.fit.reasons import nothing_fits, nothing_made_for
from conewright.fit.remarks import remarks
from conewright.fit.rules import slot_failure
from conewright.fit.search import best_evening, candidates, lot
from conewright.fit.suiting import OF_THE_KIND, relevance, suit
from conewright.model.exercise import Exercise
from conewright.model.figures import Figures
from conewright.model.problem import Problem
from conewright.model.session import Block, Job, Session, Tonight
from conewright.rehearsal.rehearse import rehearse as rehearse_copy

ENOUGH = 6  # so many exercises that run, made for a part of the evening, are a choice


@dataclass(frozen=True, slots=True, kw_only=True)
class _Table:
    """Everything on the table while an evening is put together."""

    said: Tonight
    bench: Bench
    shelf: tuple[Exercise, ...]
    opening: tuple[Problem, ...]
    stop: Stop | None

    @property
    def explain_min(self) -> float:
        """Minutes of explanation planned at the start of each block."""
        return self.bench.figures.value("explain_max_s") / 60


def fit(
    tonight: Tonight,
    shelf: tuple[Exercise, ...],
    *,
    figures: Figures,
    memory: Memory | None = None,
    stop: Stop | None = None,
    rehearse: Rehearser = rehearse_copy,
    check: Checker = check_copy,
) -> Session:
    """The evening from the shelf for tonight; where none can be had, no blocks and the reasons.

    The same tonight, shelf and figures give the same session, with a memory or without, unless `stop` says to make do.
    """
    table = _table(tonight, shelf, figures, memory, stop, rehearse, check)
    refusal = cannot_start(table.bench.asked)
    if refusal is not None:
        return _empty(table, refusal)
    choices = _choices(table, table.shelf)
    if not any(choice.option for choice in choices):
        return _empty(table, nothing_fits(choices, table.bench, stop=stop))
    clock = _clock(table, choices)
    return _written(table, clock, _evening(table, clock, choices, kept={}), choices)


def refit(
    session: Session,
    tonight: Tonight,
    shelf: tuple[Exercise, ...],
    *,
    figures: Figures,
    memory: Memory | None = None,
    stop: Stop | None = None,
    rehearse: Rehearser = rehearse_copy,
    check: Checker = check_copy,
) -> Session:
    """The session for who is here now: exercises that still run stay where they are, and what changed is said.

    Only parts whose exercise no longer runs are chosen anew. With other minutes the clock is made anew, and each part
    keeps its exercise where there is one.
    """
    table = _table(tonight, shelf, figures, memory, stop, rehearse, check)
    if not session.blocks or cannot_start(table.bench.asked) is not None:
        return fit(tonight, shelf, figures=figures, memory=memory, stop=stop, rehearse=rehearse, check=check)
    clock = _kept_clock(table, session)
    kept, second_best = _kept(table, clock, session)
    choices: tuple[Choice, ...] = ()
    if len(kept) < len(clock.slots):
        choices = _choices(table, table.shelf)
        if not any(choice.option for choice in choices):
            return _empty(table, nothing_fits(choices, table.bench, stop=stop))
        if tonight.minutes != session.tonight.minutes:
            clock = _clock(table, choices)
            kept, second_best = _kept(table, clock, session)
        kept |= {at: option for at, option in second_best.items() if not _better(clock.slots[at], choices)}
    fitted = _written(table, clock, _evening(table, clock, choices, kept=kept), choices)
    told = changes(session, fitted, choices)
    return replace(fitted, problems=_in_order((*fitted.problems, *told)))


def _table(
    tonight: Tonight,
    shelf: tuple[Exercise, ...],
    figures: Figures,
    memory: Memory | None,
    stop: Stop | None,
    rehearse: Rehearser,
    check: Checker,
) -> _Table:
    asked, surface = sound(tonight)
    bench = Bench(
        asked=asked,
        figures=figures,
        memory=memory if memory is not None else Memory(),
        rehearse=rehearse,
        check=check,
    )
    opening = (*(adult_cautions(asked, figures) if asked.here else ()), *surface)
    return _Table(said=tonight, bench=bench, shelf=_named_once(shelf), opening=opening, stop=stop)


def _named_once(shelf: Iterable[Exercise]) -> tuple[Exercise, ...]:
    """The shelf with each name once, the first of them."""
    return tuple({exercise.name: exercise for exercise in reversed(tuple(shelf))}.values())[::-1]


def _choices(table: _Table, exercises: tuple[Exercise, ...]) -> tuple[Choice, ...]:
    """What the exercises offer: those nearest to the aim first, until each part of the evening has enough that run.

    An exercise whose parts all have enough is not tried, so that a long shelf costs little more than a short one.
    """
    choices: list[Choice] = []
    found: Counter[Job] = Counter()
    asked = table.bench.asked
    for exercise in sorted(exercises, key=lambda one: (-relevance(one, asked.aim), lot(asked.seed, one.name))):
        if table.stop is not None and table.stop() and any(choice.option for choice in choices):
            break
        parts = tuple(job for job in Job if suit(exercise, job) >= OF_THE_KIND)
        if parts and all(found[job] >= ENOUGH for job in parts):
            continue
        choice = choice_for(exercise, table.bench)
        choices.append(choice)
        if choice.option is not None and not choice.option.arrangement.resting:
            found.update(parts)
    return tuple(choices)


def _clock(table: _Table, choices: tuple[Choice, ...]) -> Clock:
    """The clock, without a close where nothing is made for one."""
    minutes, figures = table.bench.asked.minutes, table.bench.figures
    clock = clock_for(minutes, figures)
    empty = frozenset(slot.job for slot in clock.slots if not _can_fill(slot, choices))
    return clock_for(minutes, figures, without=empty) if Job.CLOSE in empty else clock


def _can_fill(slot: Slot, choices: tuple[Choice, ...]) -> bool:
    return any(choice.option is not None and slot_failure(choice.exercise, slot) is None for choice in choices)


def _evening(table: _Table, clock: Clock, choices: tuple[Choice, ...], *, kept: dict[int, Option]) -> Evening:
    """An option in each slot: the kept ones where they are, the rest found by search."""
    options = tuple(choice.option for choice in choices if choice.option is not None)
    cones, explain_min = table.bench.asked.cones, table.explain_min
    offered = candidates(clock.slots, options, cones=cones, explain_min=explain_min, seed=table.bench.asked.seed)
    filled = tuple(
        (_chosen(slot, kept[at]),) if at in kept else offers or _anything(slot, options)
        for at, (slot, offers) in enumerate(zip(clock.slots, offered, strict=True))
    )
    return best_evening(filled, cones=cones, explain_min=explain_min, stop=table.stop)


def _chosen(slot: Slot, option: Option) -> Chosen:
    return Chosen(slot=slot, option=option, cones=cones_of(option))


def _anything(slot: Slot, options: tuple[Option, ...]) -> tuple[Chosen, ...]:
    """Where the rules of a slot leave nothing, whatever runs at all fills it, and the block says so."""
    return tuple(_chosen(slot, option) for option in options)


def _kept_clock(table: _Table, session: Session) -> Clock:
    if table.said.minutes != session.tonight.minutes:
        return clock_for(table.bench.asked.minutes, table.bench.figures)
    jobs = tuple(block.job for block in session.blocks)
    slots = tuple(
        Slot(
            job=block.job,
            start_min=round(block.start_min),
            minutes=round(block.minutes),
            also=also_serves(block.job, jobs),
        )
        for block in session.blocks
    )
    return Clock(slots=slots, pauses=session.pauses)


def _kept(table: _Table, clock: Clock, session: Session) -> tuple[dict[int, Option], dict[int, Option]]:
    """For each slot whose exercise of before still runs, how it runs now; apart, those in which more would rest."""
    shelf = {exercise.name: exercise for exercise in table.shelf}
    before = list(session.blocks)
    kept: dict[int, Option] = {}
    second_best: dict[int, Option] = {}
    for at, slot in enumerate(clock.slots):
        block = next((block for block in before if block.job is slot.job), None)
        exercise = shelf.get(block.exercise.name) if block is not None else None
        if block is None or exercise is None:
            continue
        before.remove(block)
        option = choice_like(exercise, table.bench, copies=len(block.copies)).option
        if option is None or (block.minutes != slot.minutes and slot_failure(exercise, slot) is not None):
            continue
        (second_best if option.arrangement.resting > block.resting else kept)[at] = option
    return kept, second_best


def _better(slot: Slot, choices: tuple[Choice, ...]) -> bool:
    """Whether something made for the slot holds everybody."""
    options = tuple(choice.option for choice in choices if choice.option is not None)
    made = (option for option in options if suit(option.exercise, slot.job) >= OF_THE_KIND)
    return any(not option.arrangement.resting and slot_failure(option.exercise, slot) is None for option in made)


def _written(table: _Table, clock: Clock, evening: Evening, choices: tuple[Choice, ...]) -> Session:
    """The evening as a session: blocks with their answers, and everything to be said, most urgent first."""
    bench = table.bench
    blocks = tuple(_block(table, chosen, evening) for chosen in evening.chosen)
    unfilled = tuple(
        nothing_made_for(chosen.slot, choices, bench)
        for chosen in evening.chosen
        if suit(chosen.option.exercise, chosen.slot.job) < OF_THE_KIND and choices
    )
    rolling = ball_rolling(evening)
    said = remarks(blocks, bench, rolling_share=rolling, close_left_out=_no_close(clock, bench))
    return Session(
        tonight=table.said,
        blocks=blocks,
        pauses=clock.pauses,
        problems=(*table.opening, *_in_order(tuple(dict.fromkeys((*unfilled, *clock.problems, *said))))),
        rolling_share=rolling,
        score=grades(evening),
    )


def _no_close(clock: Clock, bench: Bench) -> bool:
    """Whether a close was left out though the minutes would hold one."""
    usual = clock_for(bench.asked.minutes, bench.figures)
    return any(slot.job is Job.CLOSE for slot in usual.slots) and all(slot.job is not Job.CLOSE for slot in clock.slots)


def _block(table: _Table, chosen: Chosen, evening: Evening) -> Block:
    """A block with its answers; other exercises may answer, first those that no other block uses."""
    used = {other.option.exercise.name for other in evening.chosen}
    others = tuple(exercise for exercise in table.shelf if exercise.name not in used)
    ordered = sorted(others, key=lambda exercise: -suit(exercise, chosen.slot.job))
    answers = answers_for(chosen.slot, chosen.option, table.bench, others=tuple(ordered), stop=table.stop)
    return replace(block_of(chosen, table.bench), answers=answers)


def _empty(table: _Table, refusal: Problem) -> Session:
    return Session(tonight=table.said, blocks=(), pauses=(), problems=(*table.opening, refusal))


def _in_order(problems: tuple[Problem, ...]) -> tuple[Problem, ...]:
    """The heaviest first, else as they come."""
    return tuple(sorted(problems, key=lambda problem: SEVERITIES.index(problem.severity)))
