"""Waiting and contacts against their marks, lines over four; reads what was rehearsed."""

from conewright.checks.case import AfterCheck, Case, Check, look
from conewright.checks.smaller import two_copies
from conewright.model.exercise import SupplyKind
from conewright.model.problem import Problem
from conewright.model.rehearsed import Rehearsal

CALM_KINDS = frozenset({"cool-down"})  # standing still is part of it


def line_over_four(case: Case, rehearsal: Rehearsal) -> tuple[Problem, ...]:
    """The longest line seen while it is played."""
    limit = case.figures.value("queue_limit")
    if rehearsal.longest_line <= limit:
        return ()
    return (_long_line(case, rehearsal.longest_line, rehearsal.longest_line_at),)


def line_at_start(case: Case) -> tuple[Problem, ...]:
    """The longest line at the start, where nothing is rehearsed."""
    if case.exercise.script is None or not case.contest:
        return ()
    limit = case.figures.value("queue_limit")
    name, count = max(case.standing, key=lambda entry: entry[1], default=("", 0))
    return (_long_line(case, count, name),) if count > limit else ()


def _long_line(case: Case, count: int, name: str) -> Problem:
    place = case.exercise.place(name)
    copies, numbers = two_copies(case), case.exercise.numbers
    fewer = f'"for {min(numbers.least, case.size - 1)} to {case.size - 1} players"'
    return look(
        "line-long",
        f"The line at {name} grows to {count}; more than {case.figures.value('queue_limit'):g} is too long.",
        place.span if place else None,
        f"Two copies halve it: {copies}" if copies else f"Add a second line, or keep it to fewer: {fewer}.",
    )


def waiting(case: Case, rehearsal: Rehearsal) -> tuple[Problem, ...]:
    """The mean waiting share against the mark of the age for exercises with lines (an estimate)."""
    mark = case.figures.at("waiting_mark_share", age=case.age)
    if rehearsal.waiting_share <= mark or case.exercise.kind in CALM_KINDS:
        return ()
    return (
        look(
            "waiting-long",
            f"Children wait {rehearsal.waiting_share:.0%} of the time; the mark is {mark:.0%} (an estimate).",
            case.exercise.script.span if case.exercise.script else None,
            _what_helps(case, rehearsal),
        ),
    )


def _what_helps(case: Case, rehearsal: Rehearsal) -> str:
    copies = two_copies(case)
    if copies:
        return f"In two copies half as many share a ball: {copies}"
    return _sooner(case) or f"{rehearsal.pace.sentence} Fewer children, or a second ball, help most.".strip()


def _sooner(case: Case) -> str:
    """How the next round may start before this one is over, where a ball is left for it; else ""."""
    script = case.exercise.script
    said = script is None or (script.next_round is not None and script.next_round.trigger is not None)
    last = next((act for act in reversed(case.rounds[0].acts) if act.receiver is not None or act.with_ball), None)
    source = next((case.exercise.place(act.takes_from) for act in case.rounds[0].acts if act.takes_from), None)
    if said or last is None or source is None or source.supply.kind is SupplyKind.BALL:
        return ""
    holder = case.rounds[0].bearers[last.bearer if last.with_ball else last.receiver or 0].role
    when = f"{holder} is halfway home" if last.homeward else f"{holder} has the ball"
    return f'Let the next round start earlier: "The next round starts when {when}. Two rounds may run at once."'


def contacts(case: Case, rehearsal: Rehearsal) -> tuple[Problem, ...]:
    """Foot contacts a child a minute against the mark of its kind (an estimate)."""
    each = any(place.supply.kind is SupplyKind.EACH for place in case.exercise.places)
    figures = case.figures
    mark = figures.at("contacts_pattern_mark_per_min", age=case.age)
    per_ball = figures.value("pattern_mark_per_ball")
    balls = max(1, len(rehearsal.balls)) if not each else max(1, case.size / per_ball)
    mark *= min(1.0, per_ball * balls / max(1, case.size))
    if rehearsal.contacts_a_minute >= mark or case.exercise.kind in CALM_KINDS:
        return ()
    return (
        look(
            "contacts-few",
            f"{rehearsal.contacts_a_minute:.1f} foot contacts a child a minute; the mark is {mark:.1f} (an estimate).",
            case.exercise.script.span if case.exercise.script else None,
            _what_helps(case, rehearsal),
        ),
    )


CHECKS = (
    Check(
        codes=("line-long",),
        why="Three to four in a line is the trade's limit; more is a queue.",
        run=line_at_start,
    ),
)
AFTER_CHECKS = (
    AfterCheck(
        codes=("line-long",),
        why="Three to four in a line is the trade's limit; more is a queue.",
        run=line_over_four,
    ),
    AfterCheck(
        codes=("waiting-long",),
        why="Queues are the most condemned practice of all; most line patterns miss the mark, and it is said plainly.",
        run=waiting,
    ),
    AfterCheck(
        codes=("contacts-few",),
        why="Contacts with the ball are what an exercise is for; the mark differs by kind.",
        run=contacts,
    ),
)
