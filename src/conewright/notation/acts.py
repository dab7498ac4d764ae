"""The acts of a step: "Stem checks away, then shows; Left runs to -3, 12"; must not know the other sentences."""

from dataclasses import dataclass, field

from conewright.model.exercise import Act, Foot, Manner, Pace, Target, TargetKind, Trigger, Verb, Via, Weight
from conewright.notation.cursor import Cursor, indexed
from conewright.notation.guesses import slipped
from conewright.notation.measures import seconds
from conewright.notation.targets import KICKS, MOVES, target, via
from conewright.notation.triggers import sees_trigger, trigger
from conewright.notation.words import (
    FEET,
    FIRST_TIME,
    FOLLOW_PHRASES,
    LOFTED,
    MANNER_SYNONYMS,
    OUTSIDE,
    PACES,
    VERBS,
    WEIGHTS,
    VerbWord,
)

_FOLLOW = "follow"
_BY_PHRASE = {verb.phrase: verb for verb in VERBS}
_VERBS = indexed(
    {
        **{phrase: verb.phrase for verb in VERBS for phrase in (verb.phrase, verb.base, *verb.also)},
        **dict.fromkeys(FOLLOW_PHRASES, _FOLLOW),
    }
)
_MANNERS = indexed(
    {
        **{word: word for word in (*WEIGHTS.values(), *FEET.values(), *PACES.values(), LOFTED, OUTSIDE, FIRST_TIME)},
        **MANNER_SYNONYMS,
    }
)
_WEIGHTS = {word: weight for weight, word in WEIGHTS.items()}
_FEET = {word: foot for foot, word in FEET.items()}
_PACES = {word: pace for pace, word in PACES.items()}
_NEEDS_TARGET = KICKS | MOVES | {Verb.SHOOT}
_WITHOUT_TARGET = frozenset({Verb.SET_BACK})  # goes back to whoever played it
_TOUCHES_BALL = KICKS | {Verb.SHOOT, Verb.DRIBBLE, Verb.TURN, Verb.FETCH}
_MOST_TOUCHES = 9


@dataclass(slots=True)
class _Parts:
    """What was read of one act so far."""

    verb: VerbWord
    target: Target | None = None
    via: list[Via] = field(default_factory=list)
    touches: int | None = None
    weight: Weight = Weight.USUAL
    foot: Foot | None = None
    pace: Pace | None = None
    outside: bool = False
    lofted: bool = False
    start: Trigger | None = None
    seconds: float | None = None
    what: str = ""

    def manner(self) -> Manner:
        return Manner(
            touches=self.touches,
            weight=self.weight,
            foot=self.foot,
            pace=self.pace,
            outside=self.outside,
            lofted=self.lofted,
        )

    def act(self, cursor: Cursor, who: str, start: int) -> Act:
        return Act(
            who=who,
            verb=self.verb.verb,
            target=self.target,
            manner=self.manner(),
            via=tuple(self.via),
            start=self.start,
            seconds=self.seconds,
            what=self.what,
            span=cursor.span_from(start),
        )


def acts(cursor: Cursor, earlier: tuple[Act, ...]) -> tuple[Act, ...]:
    """Take all acts of a sentence; those read before a failure are kept. `earlier` are the acts of the round so far."""
    found: list[Act] = []
    going_on = "clause"
    who, front = "", None
    while going_on and not cursor.failed:
        start = cursor.at
        if going_on == "clause":
            front = _front_trigger(cursor)
            who = _subject(cursor)
        act = _act(cursor, who, start, front, (*earlier, *found))
        if cursor.failed or act is None:
            break
        found.append(act)
        front = None
        going_on = _goes_on(cursor)
    cursor.finish()
    return tuple(found)


def in_another_way(cursor: Cursor) -> tuple[VerbWord, Manner] | None:
    """Take a verb and how it is done now, without where to: "turns first time"; None where it fails."""
    start = cursor.at
    phrase = cursor.guessed(_VERBS, "verb")
    if not phrase or phrase == _FOLLOW:
        cursor.unexpected("a verb", f"Name what is done as the step does: {', '.join(_BY_PHRASE)}.")
        return None
    parts = _Parts(verb=_BY_PHRASE[phrase], pace=_BY_PHRASE[phrase].pace)
    while _how(cursor, parts):
        cursor.at += 1 if cursor.sees(",") and _sees_addition(cursor, 1) else 0
    slip = "" if cursor.done() else cursor.guessed(_MANNERS, "way of doing it")
    if slip:
        _manner(parts, slip)
    _tell_idle(cursor, parts, "It", start)
    return parts.verb, parts.manner()


def _front_trigger(cursor: Cursor) -> Trigger | None:
    if not sees_trigger(cursor):
        return None
    start = trigger(cursor)
    cursor.takes(",")
    return start


def _subject(cursor: Cursor) -> str:
    start = cursor.at
    who = cursor.name("who does it")
    thing = cursor.names.thing(who)
    if thing is not None:
        kind = thing.kind.value
        told = f"{who} is a {kind}, and a {kind} does nothing."
        cursor.note("cannot-act", start, told, "Name a place where somebody stands.")
    return who


def _goes_on(cursor: Cursor) -> str:
    """Take what stands between two acts: "verb" where the same one goes on, "clause" where another begins, else ""."""
    before = cursor.at
    cursor.takes(",", ";")
    cursor.takes("and")
    cursor.takes("then", "while", "but")
    if cursor.at == before:
        return ""
    cursor.ask_names("who does it")
    if cursor.peek().lower in _VERBS:
        return "verb"
    if cursor.sees_name() or sees_trigger(cursor):
        return "clause"
    return "clause" if cursor.peek().text[:1].isupper() else "verb"


def _act(cursor: Cursor, who: str, start: int, front: Trigger | None, earlier: tuple[Act, ...]) -> Act | None:
    _then(cursor)
    phrase_start = cursor.at
    if cursor.sees("and") and cursor.sees_name(1):
        hint = f"Say it for each of them: {who} ...; {cursor.peek(1).text} ..."
        told = f"{who} and {cursor.peek(1).text} are to do one act together."
        cursor.fail("two-together", told, hint, cursor.span_from(start))
        return None
    phrase = cursor.guessed(_VERBS, "verb")
    if not phrase:
        known = ", ".join(verb.phrase for verb in VERBS[:8])
        cursor.unexpected("a verb", f"Write what {who} does: {known}, ...")
        return None
    verb = _BY_PHRASE["runs" if phrase == _FOLLOW else phrase]
    cursor.example = f"{verb.example}."
    parts = _Parts(verb=verb, pace=verb.pace, start=front)
    if phrase == _FOLLOW:
        parts.target = _followed(cursor, who, phrase_start, earlier)
    if verb.verb in (Verb.CALL, Verb.TASK):
        parts.what = cursor.quoted("words")
        if cursor.sees("for") and verb.verb is Verb.TASK:
            cursor.at += 1
            parts.seconds = seconds(cursor, "the time it takes")
    if verb.verb is Verb.WAIT:
        parts.seconds = seconds(cursor, "a wait")
    while cursor.more() and _addition(cursor, parts):
        pass
    _tell_what_lacks(cursor, parts, who, phrase_start)
    return parts.act(cursor, who, start)


def _then(cursor: Cursor) -> None:
    """Take "then", and a slip of it before a verb, which is told."""
    if not cursor.takes("then") and cursor.peek(1).lower in _VERBS and slipped(cursor.peek().lower, ("then",)):
        cursor.slip("then", "word", 1)
        cursor.at += 1


def _followed(cursor: Cursor, who: str, start: int, earlier: tuple[Act, ...]) -> Target | None:
    """Where the last pass of `who` went."""
    kicks = (
        act for act in reversed(earlier) if act.who == who and act.verb in KICKS and act.target and act.target.name
    )
    last = next(kicks, None)
    if last is None or last.target is None:
        cursor.note("no-pass", start, f"{who} has passed to nobody before.", f"Say where to: {who} runs to Stem.")
        return Target(kind=TargetKind.OWN)
    kind = TargetKind.THING if last.target.kind is TargetKind.THING else TargetKind.PLACE
    return Target(kind=kind, name=last.target.name)


def _addition(cursor: Cursor, parts: _Parts) -> bool:
    """Take one thing that may follow a verb; False where none comes next. A comma before it is taken too."""
    if cursor.asks and cursor.done():
        _ask_additions(cursor, parts)
    comma = cursor.sees(",")
    if comma:
        if not _sees_addition(cursor, 1):
            return False
        cursor.at += 1
    if sees_trigger(cursor):
        if parts.start is not None:
            cursor.unexpected("the next act", "Give an act one start only.")
        parts.start = trigger(cursor)
        return True
    if _how(cursor, parts):
        return True
    if cursor.asks and cursor.sees("and"):
        cursor.sees("through", 1)
        cursor.sees("round", 1)
    if cursor.takes("and") and cursor.peek().lower not in ("round", "around", "through"):
        cursor.at -= 1
        return False
    way = via(cursor) if parts.verb.verb in KICKS | MOVES else None
    if way is not None:
        parts.via.append(way)
        return True
    goal = target(cursor, parts.verb.verb) if parts.target is None else None
    if goal is not None:
        parts.target = goal
    return goal is not None


def _how(cursor: Cursor, parts: _Parts) -> bool:
    """Take one phrase that says how something is done; False where none comes next."""
    if cursor.asks:
        _ask_how(cursor, parts.verb.verb)
        if cursor.done():
            return False
    manner = cursor.one_of(_MANNERS)
    if manner:
        _manner(parts, manner)
        return True
    if not (cursor.sees("in") and cursor.sees_number(1)):
        return False
    cursor.at += 1
    parts.touches = cursor.count("touches", most=_MOST_TOUCHES)
    cursor.takes("touch") or cursor.must("touches")
    return True


def _ask_additions(cursor: Cursor, parts: _Parts) -> None:
    """At an end where it is asked what may follow: where to first, then how."""
    if parts.target is None:
        if parts.verb.verb in KICKS | MOVES:
            cursor.sees("to")
        target(cursor, parts.verb.verb)
    _ask_how(cursor, parts.verb.verb)


def _ask_how(cursor: Cursor, verb: Verb) -> None:
    """Look for what may be said of how a verb is done: balls are played firmly, ways gone at full speed."""
    if verb in _TOUCHES_BALL:
        for words in (*WEIGHTS.values(), FIRST_TIME, "in two touches", "in three touches", *FEET.values(), LOFTED):
            cursor.sees(words)
    if verb in MOVES:
        for words in (OUTSIDE, *PACES.values()):
            cursor.sees(words)


def _sees_addition(cursor: Cursor, offset: int) -> bool:
    token = cursor.peek(offset)
    if token.lower in ("round", "around", "through", "against", "ahead", "in", "home"):
        return True
    if token.lower == "to":
        return True
    if token.lower in _MANNERS:
        return any(
            tuple(cursor.peek(offset + at).lower for at in range(len(words))) == words
            for words, _ in _MANNERS[token.lower]
        )
    return sees_trigger(cursor, offset)


def _manner(parts: _Parts, word: str) -> None:
    if word in _WEIGHTS:
        parts.weight = _WEIGHTS[word]
    elif word in _FEET:
        parts.foot = _FEET[word]
    elif word in _PACES:
        parts.pace = _PACES[word]
    elif word == FIRST_TIME:
        parts.touches = 1
    elif word == LOFTED:
        parts.lofted = True
    else:
        parts.outside = True


def _tell_what_lacks(cursor: Cursor, parts: _Parts, who: str, start: int) -> None:
    verb = parts.verb
    if parts.target is None and verb.verb in _NEEDS_TARGET - _WITHOUT_TARGET:
        wanted = "who gets the ball" if verb.verb in KICKS else "a place or point"
        cursor.unexpected("a goal" if verb.verb is Verb.SHOOT else wanted)
    _tell_idle(cursor, parts, who, start)


def _tell_idle(cursor: Cursor, parts: _Parts, who: str, start: int) -> None:
    verb = parts.verb
    on_ball = parts.touches or parts.foot or parts.lofted or parts.weight is not Weight.USUAL
    if on_ball and cursor.slips == 0 and verb.verb not in _TOUCHES_BALL:
        cursor.note(
            "idle-manner",
            start,
            f"{who} {verb.phrase}: no ball is touched.",
            "Say how the ball is played at the act that plays it.",
        )
