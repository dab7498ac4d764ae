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
from conewright.notation.triggers import trigger
from conewright.notation.words import CHOICES, COACH

MOST_IN_FLIGHT = 9
PAIR = 2  # so many sides have a word for the one that is not meant


def opening(cursor: Cursor, draft: Draft) -> None:
    """Read "Each round, Left and Right in turn (call it Side)" into the draft."""
    cursor.example = EXAMPLES["round"]
    if draft.round_opened:
        cursor.fail("said-twice", "The round is opened twice.", "Leave one of the two out.")
    draft.round_opened = True
    cursor.at += 2
    cursor.takes(":")
    if not cursor.more():
        return
    cursor.must(",")
    order, chooser = _who_decides(cursor)
    places = _sides(cursor)
    if order is SideOrder.IN_TURN:
        order = _order(cursor)
    word, other = _words(cursor, draft, len(places))
    cursor.takes(":")
    cursor.finish()
    if cursor.failed:
        cursor.findings.unnamed += 1
    else:
        draft.sides = Sides(
            word=word, places=places, order=order, chooser=chooser, other=other, span=cursor.span_from(0)
        )


def _who_decides(cursor: Cursor) -> tuple[SideOrder, str]:
    """Take "Hub chooses" or "the coach calls"; in turn where neither comes next. A coach who chooses calls."""
    coach = cursor.takes(COACH)
    length = 0 if coach else cursor.sees_name()
    decides = cursor.peek(length).lower
    if cursor.asks:
        cursor.ask_names("who chooses")
        for phrases in CHOICES.values() if coach or length else ():
            cursor.sees(phrases[0], length)
    order = next((order for order, phrases in CHOICES.items() if decides in phrases), SideOrder.IN_TURN)
    if coach:
        if order is SideOrder.IN_TURN:
            cursor.unexpected('"calls"')
        cursor.at += 1
        return SideOrder.CALL, ""
    if order is SideOrder.IN_TURN:
        return order, ""
    start = cursor.at
    chooser = cursor.name("who chooses")
    thing = cursor.names.thing(chooser)
    if thing is not None:
        told = f"{chooser} is a {thing.kind.value}: it does not choose."
        cursor.note("cannot-act", start, told, "Name a place where somebody stands.")
    cursor.at += 1
    return order, chooser


def _sides(cursor: Cursor) -> tuple[str, ...]:
    """Take the places or things that are the sides, with commas, "and", "or" or "then" between them."""
    start = cursor.at
    places = [cursor.name("a place or thing")]
    while cursor.takes(", and", ", or", ",", "and", "or"):
        if cursor.sees("then"):
            cursor.at += 1
        places.append(cursor.name("a place or thing"))
    things = [name for name in places if cursor.names.thing(name)]
    stands = [name for name in places if name in cursor.names.places]
    if things and stands:
        cursor.note(
            "mixed-sides",
            start,
            f"{stands[0]} is a place and {things[0]} a thing.",
            "Let the sides be places only, or things only.",
        )
    return tuple(places)


def _order(cursor: Cursor) -> SideOrder:
    """Take "in turn" or "from half time"."""
    if cursor.asks:
        cursor.sees("in turn")
        cursor.sees("from half time")
    if cursor.takes("from"):
        _half_time(cursor)
        return SideOrder.HALF_TIME
    cursor.must("in")
    cursor.must("turn")
    return SideOrder.IN_TURN


def _words(cursor: Cursor, draft: Draft, sides: int) -> tuple[str, str]:
    """The words in "(call it Side, the other Rest)"; "" for the second where it is not said."""
    if cursor.asks:
        cursor.sees("( call it")
    cursor.must("(", "Give the side a word of its own: (call it Side).")
    cursor.must("call")
    cursor.must("it")
    start = cursor.at
    word = _new_word(cursor, draft)
    other = ""
    if cursor.takes(", and the other", ", the other", "and the other", "the other"):
        other = _new_word(cursor, draft)
        if sides != PAIR and cursor.slips == 0:
            told = f'"The other" is clear between two sides, and here are {sides}.'
            cursor.note("several-others", start, told, f"Leave it out: (call it {word}).")
        elif other == word:
            told = f'Both sides are called "{word}".'
            cursor.note("sides-word-taken", start, told, "Take another word for the other side, such as Rest.")
    cursor.must(")")
    return word, other


def _new_word(cursor: Cursor, draft: Draft) -> str:
    start = cursor.at
    word = cursor.name("a word")
    cursor.findings.used.discard(word)  # saying what it is called is no use of it
    if word in draft.taken():
        cursor.note(
            "sides-word-taken",
            start,
            f'"{word}" is the name of a place or thing already.',
            "Take another word for the side in turn, such as Side.",
        )
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
    cursor.findings.steps_unsure |= cursor.failed or cursor.slips > 0
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
    cursor.findings.steps_unsure = True
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
        cursor.findings.steps_unsure = True
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
    if cursor.more():
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
