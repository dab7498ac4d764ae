"""When something starts: "when Base passes", "after 2", "1 s after Side is home"; must not know what starts."""

from conewright.model.exercise import Event, Trigger
from conewright.notation.cursor import Cursor, indexed
from conewright.notation.measures import seconds, sees_seconds
from conewright.notation.words import AT_ONCE, TRIGGERS

_EXAMPLES = "when Base passes; when Stem has the ball; when Side is home; after 2; 1 s after Base passes"


def _tail(phrase: str) -> str:
    return phrase.removeprefix("{who} ").removesuffix(" {name}").removesuffix("{step}").strip()


_CLAUSES = tuple((phrase, form.event) for form in TRIGGERS for phrase in (form.clause, *form.also))
_MEANING = {phrase: (event, "{name}" in phrase) for phrase, event in _CLAUSES}
_OF_WHO = indexed({_tail(phrase): phrase for phrase, _ in _CLAUSES if phrase.startswith("{who}")})
_OF_NOBODY = indexed(
    {_tail(phrase): phrase for phrase, _ in _CLAUSES if "{who}" not in phrase and "{step}" not in phrase}
)


def sees_trigger(cursor: Cursor, offset: int = 0) -> bool:
    """True where the start of something comes next."""
    token = cursor.peek(offset)
    if cursor.asks:
        cursor.sees("on the coach 's call", offset)
        cursor.sees(AT_ONCE, offset)
        if cursor.sees_number(offset):
            cursor.sees("after", offset + 2)
    if cursor.sees("when", offset) or cursor.sees("after", offset) or cursor.sees("once", offset):
        return True
    if token.lower == "on":
        return (
            cursor.sees("on the", offset) or cursor.sees_name(offset + 1) > 0 or cursor.peek(offset + 2).lower == "'s"
        )
    if token.lower == "at":
        return cursor.sees(AT_ONCE, offset)
    if not cursor.sees_number(offset):
        return False
    cursor.at += offset
    timed = sees_seconds(cursor) and cursor.peek(2).lower == "after"
    cursor.at -= offset
    return timed


def trigger(cursor: Cursor) -> Trigger:
    """Take the start of something; fails where none comes next."""
    start = cursor.at
    if cursor.takes(AT_ONCE):
        return Trigger(event=Event.TOGETHER, span=cursor.span_from(start))
    delay = 0.0
    if cursor.sees_number():
        delay = seconds(cursor, "a delay")
        cursor.must("after", "Write a start with a delay like this: 1 s after Base passes.")
    elif cursor.takes("after"):
        if sees_seconds(cursor):
            return Trigger(event=Event.TOGETHER, delay_s=seconds(cursor, "a delay"), span=cursor.span_from(start))
    elif not cursor.takes("when", "once", "on"):
        cursor.unexpected("when it starts", f"Write it like this: {_EXAMPLES}.")
    event, who, name, step = _clause(cursor)
    return Trigger(event=event, who=who, step=step, name=name, delay_s=delay, span=cursor.span_from(start))


def _clause(cursor: Cursor) -> tuple[Event, str, str, int | None]:
    """The event, whom it is seen on, what is reached, and the step."""
    if cursor.takes("step") or (cursor.sees_number() and not cursor.sees_name()):
        return Event.STEP, "", "", cursor.count("the step")
    phrase = cursor.one_of(_OF_NOBODY)
    who = ""
    if not phrase:
        start = cursor.at
        who = cursor.name("whom to look at")
        if cursor.names.thing(who):
            told = f"{who} is a thing: it does nothing."
            cursor.note("cannot-act", start, told, "Name a place where somebody stands.")
        phrase = cursor.guessed(_OF_WHO, "event")
    if not phrase:
        cursor.unexpected("what is seen", f"Write it like this: {_EXAMPLES}.")
        return Event.STARTED, who, "", None
    event, named = _MEANING[phrase]
    return event, who, cursor.name("the place it reaches") if named else "", None
