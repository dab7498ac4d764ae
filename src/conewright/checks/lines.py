"""Waiting and contacts against their marks, lines over four, turns shared out; reads what was rehearsed."""

from conewright.checks.case import AfterCheck, Case, Check, look
from conewright.model.exercise import SideOrder, SupplyKind
from conewright.model.layout import layout_for
from conewright.model.problem import Problem
from conewright.model.rehearsed import Rehearsal

CALM_KINDS = frozenset({"cool-down"})  # standing still is part of it
ENOUGH_TURNS = 4  # so many turns on one side and none on the other are no accident


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
    half = case.size - case.size // 2
    more = layout_for(case.exercise, half) and layout_for(case.exercise, case.size // 2)
    copies = (
        f"Two copies of {half} and {case.size // 2} side by side halve it" if more else "Add a place or a second ball"
    )
    return look(
        "line-long",
        f"The line at {name} grows to {count}; more than {case.figures.value('queue_limit'):g} is too long.",
        place.span if place else None,
        f'{copies}: "With {case.size}: two copies, 5 m apart."' if more else f"{copies}.",
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
    next_round = case.exercise.script.next_round if case.exercise.script else None
    half = case.size // 2
    if half and layout_for(case.exercise, half) and layout_for(case.exercise, case.size - half):
        return f"Two copies of {case.size - half} and {half}: half as many share a ball."
    if next_round is None or next_round.trigger is None:
        return 'Let the next round start earlier: "The next round starts when ...". Two rounds may run at once.'
    return f"{rehearsal.pace.sentence} Fewer children, or a second ball, help most."


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


def equal_turns(case: Case, rehearsal: Rehearsal) -> tuple[Problem, ...]:
    """A child that always lands on the same side, where sides take turns."""
    script = case.exercise.script
    if script is None or script.sides is None or script.sides.order is not SideOrder.IN_TURN:
        return ()
    places = script.sides.places
    locked = []
    for child in rehearsal.children:
        turns = dict(child.roles)
        on = [turns.get(name, 0) for name in places]
        if max(on) >= ENOUGH_TURNS and min(on) == 0:
            locked.append(child.person)
    if not locked:
        return ()
    who = "one child" if len(locked) == 1 else f"{len(locked)} children"
    return (
        look(
            "one-side-only",
            f"With {case.size}, {who} always come to the same side.",
            script.sides.span or script.span,
            f"Start with one more at {places[1]} and one fewer at {places[0]}, or change sides at half time.",
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
    AfterCheck(
        codes=("one-side-only",),
        why="Where sides take turns an unlucky number keeps a child on one side all evening.",
        run=equal_turns,
    ),
)
