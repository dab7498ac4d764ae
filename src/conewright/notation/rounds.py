"""How a round opens, what its steps are and what starts the next one; must not know how an act is written."""

from dataclasses import replace

from conewright.model.exercise import SideOrder, Sides, Step
from conewright.model.problem import Span
from conewright.notation.acts import acts
from conewright.notation.boxes import contest
from conewright.notation.cursor import Cursor
from conewright.notation.draft import Draft
from conewright.notation.guesses import closest
from conewright.notation.moves import outcome, rotation
from conewright.notation.shapes import EXAMPLES
from conewright.notation.starts import tell_not_a_place
from conewright.notation.triggers import trigger

MOST_IN_FLIGHT = 9


def opening(cursor: Cursor, draft: Draft) -> None:
    """Read "Each round, Left and Right in turn (call it Side)" into the draft."""
    cursor.example = EXAMPLES["round"]
    if draft.round_opened:
        cursor.fail("said-twice", "The round is opened twice.", "Leave one of the two out.")
    draft.round_opened = True
    cursor.at += 2
    cursor.takes(":")
    if cursor.done():
        return
    cursor.must(",")
    places = [_side(cursor)]
    order = SideOrder.IN_TURN
    while cursor.takes(", and", ",", "and"):
        if cursor.takes("then"):
            order = SideOrder.HALF_TIME
        places.append(_side(cursor))
    if order is SideOrder.HALF_TIME:
        cursor.must("from")
        _half_time(cursor)
    else:
        cursor.must("in")
        cursor.must("turn")
    word = _word(cursor, draft)
    cursor.takes(":")
    cursor.finish()
    if cursor.failed:
        cursor.findings.unnamed += 1
    else:
        draft.sides = Sides(word=word, places=tuple(places), order=order, span=cursor.span_from(0))


def _side(cursor: Cursor) -> str:
    start = cursor.at
    name = cursor.name("a place")
    tell_not_a_place(cursor, name, start)
    return name


def _word(cursor: Cursor, draft: Draft) -> str:
    """The word in "(call it Side)"."""
    cursor.must("(", "Give the side a word of its own: (call it Side).")
    cursor.must("call")
    cursor.must("it")
    start = cursor.at
    word = cursor.name("a word")
    if word in draft.taken():
        cursor.note(
            "sides-word-taken",
            start,
            f'"{word}" is the name of a place or thing already.',
            "Take another word for the side in turn, such as Side.",
        )
    cursor.must(")")
    return word


def step_sentence(cursor: Cursor, draft: Draft, number: int | None) -> None:
    """Read a sentence of a step: a numbered one opens the step, others add to the last one."""
    if number is not None:
        _open_step(cursor, draft, number)
    cursor.example = "1. Base passes to Stem, then runs to Stem."
    if _sees_contest(cursor):
        found = contest(cursor)
        if found is not None:
            _to_last(draft, replace(draft.steps[-1], contest=found), cursor.span_from(0))
        else:
            cursor.findings.lost.add("contest")
        return
    read = acts(cursor, draft.acts())
    last = draft.steps[-1]
    _to_last(draft, replace(last, acts=(*last.acts, *read)), cursor.span_from(0))


def _sees_contest(cursor: Cursor) -> bool:
    """True at a contest, and at a slip of that word, which is told and passed."""
    if cursor.sees("contest"):
        return True
    missing = cursor.sees("in") and cursor.sees_number(1)
    slipped = cursor.peek(1).lower == "in" and closest(cursor.peek().lower, ("contest",)) != ""
    if missing or (slipped and not cursor.sees_name()):
        return cursor.must("contest") or missing
    return False


def empty_step(cursor: Cursor, draft: Draft, number: int) -> None:
    """Tell a step whose number is followed by nothing, and keep it."""
    _open_step(cursor, draft, number)
    cursor.fail("empty-step", f"Step {number} says nothing.", "Write what happens, or take the number out.")


def _open_step(cursor: Cursor, draft: Draft, number: int) -> None:
    before = draft.steps[-1].number if draft.steps else 0
    if not draft.round_opened and not draft.steps and "round" not in cursor.findings.lost:
        first = cursor.tokens[0]
        cursor.findings.add(
            "no-round", first.span, "Steps begin, but no round was opened.", 'Write "Each round:" in the line before.'
        )
        draft.round_opened = True
        cursor.findings.unnamed += 1  # the word for the side may stand in the missing line
    if number != before + 1:
        cursor.findings.add(
            "step-number",
            cursor.tokens[0].span,
            f"Step {number} comes where step {before + 1} should come.",
            f"Number it {before + 1}.",
        )
    draft.steps.append(Step(number=number))


def _to_last(draft: Draft, step: Step, span: Span) -> None:
    whole = replace(step.span, end_line=span.end_line, end_column=span.end_column) if step.span else span
    draft.steps[-1] = replace(step, span=whole)


def outcome_sentence(cursor: Cursor, draft: Draft) -> None:
    """Read what happens after a contest into the last contest of the draft."""
    at = next((at for at in range(len(draft.steps) - 1, -1, -1) if draft.steps[at].contest is not None), None)
    found = draft.steps[at].contest if at is not None else None
    read = outcome(cursor, found.defenders if found else ())
    if at is None or found is None:
        if "contest" not in cursor.findings.lost:
            cursor.findings.lost.add("contest")
            cursor.note(
                "no-contest", 0, "An outcome needs a contest before it.", "Write the contest as a step before it."
            )
        return
    if read is None:
        return
    said = {ending for earlier in found.outcomes for ending in earlier.endings}
    twice = next((ending for ending in read.endings if ending in said), None)
    if twice:
        cursor.note("said-twice", 0, f'"{twice.value}" is said twice.', "Name each ending once.")
    draft.steps[at] = replace(draft.steps[at], contest=replace(found, outcomes=(*found.outcomes, read)))


def next_round(cursor: Cursor, draft: Draft) -> None:
    """Read "The next round starts when Side is halfway home" into the draft."""
    cursor.example = EXAMPLES["next"]
    cursor.takes("the")
    cursor.takes("next round")
    cursor.must("starts")
    if cursor.sees("on") or not cursor.done():
        found = trigger(cursor)
        cursor.finish()
        if not cursor.failed:
            draft.next_trigger, draft.next_span = found, cursor.span_from(0)
        return
    cursor.unexpected("when it starts")


def in_flight(cursor: Cursor, draft: Draft) -> None:
    """Read "Two rounds may run at once" into the draft."""
    cursor.example = EXAMPLES["in flight"]
    cursor.takes("only")
    count = cursor.count("rounds", most=MOST_IN_FLIGHT)
    cursor.takes("round") or cursor.must("rounds")
    if cursor.takes("runs at a time", "at a time"):
        pass
    else:
        cursor.must("may")
        cursor.must("run")
        cursor.must("at")
        cursor.must("once")
    cursor.finish()
    if not cursor.failed:
        draft.in_flight = count
        draft.next_span = draft.next_span or cursor.span_from(0)


def mirrored(cursor: Cursor, draft: Draft) -> None:
    """Read "Change sides at half time" into the draft."""
    cursor.example = EXAMPLES["mirrored"]
    cursor.at += 2
    cursor.must("at")
    _half_time(cursor)
    cursor.finish()
    draft.mirrored = draft.mirrored or not cursor.failed


def _half_time(cursor: Cursor) -> None:
    if not cursor.takes("half time on", "half time", "half-time", "halftime"):
        cursor.must("half")
        cursor.must("time")


def rotation_sentence(cursor: Cursor, draft: Draft) -> None:
    """Read a rotation into the draft."""
    found = rotation(cursor)
    if found is not None:
        draft.rotations.append(found)
