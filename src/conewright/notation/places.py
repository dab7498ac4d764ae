"""Where people stand and what stands on the ground: "Base at 0, 0 is a line"; must not know what happens there."""

from dataclasses import dataclass, replace

from conewright.model.exercise import Place, Supply, SupplyKind, Thing, ThingKind
from conewright.model.geometry import Point
from conewright.model.problem import Span
from conewright.notation.cursor import Cursor, indexed
from conewright.notation.draft import Draft
from conewright.notation.lexer import NUMBER, WORD
from conewright.notation.measures import length_m, point, sees_length
from conewright.notation.names import name_of
from conewright.notation.sentences import declares
from conewright.notation.shapes import EXAMPLES
from conewright.notation.vocabulary import RESERVED
from conewright.notation.words import (
    COLOURS,
    DEFAULT_WIDTH_M,
    HOLDS,
    HOLDS_OF_SEVERAL,
    HOLDS_SYNONYMS,
    PASSIVE,
    THING_SYNONYMS,
    THINGS,
    WAITS,
    Standing,
)

_HOLDS = indexed(
    {
        **{phrase: f"holds {phrase}" for phrase in HOLDS},
        **{phrase: f"holds {one}" for one, phrase in HOLDS_OF_SEVERAL.items()},
        **{phrase: f"holds {one}" for phrase, one in HOLDS_SYNONYMS.items()},
        **{f"is a {word}": f"thing {word}" for word in THINGS},
        **{f"are {word}s": f"thing {word}" for word in THINGS},
        **{f"is a {word}": f"thing {known}" for word, known in THING_SYNONYMS.items()},
        **{f"are {word}s": f"thing {known}" for word, known in THING_SYNONYMS.items()},
    }
)
_WAITS = indexed({phrase: side for side, phrase in WAITS.items()})
_COLOURS = indexed(COLOURS.keys())
_EXTRAS = ("with 6 balls", *WAITS.values(), *(f"in {colour}" for colour in COLOURS))
MOST_BALLS = 60


@dataclass(frozen=True, slots=True, kw_only=True)
class _Spot:
    """A name and where it stands."""

    name: str
    at: Point
    span: Span


def declaration(cursor: Cursor, draft: Draft) -> None:
    """Read a sentence that says where places or things stand into the draft."""
    cursor.example = EXAMPLES["place"]
    spots = _spots(cursor)
    what = cursor.guessed(_HOLDS, "phrase")
    if not what:
        cursor.unexpected('"is a line", "holds one" or "is a cone"', _hint(spots))
    sort, _, phrase = what.partition(" ")
    if sort == "thing":
        cursor.example = EXAMPLES["thing"]
        things = _things(cursor, spots, THINGS[phrase])
        _keep_things(cursor, draft, things)
    elif sort == "holds":
        places = _places(cursor, spots, HOLDS[phrase])
        _keep_places(cursor, draft, places)
    _rest(cursor, draft)


def one_place(cursor: Cursor) -> Place | None:
    """Take "Shadow at 0, 10 is passive", also "Shadow, stands at 0, 10 and is passive"; None where it fails."""
    start = cursor.at
    name = _new_name(cursor, ends=("at", "and", "stands"))
    cursor.takes(",")
    cursor.takes("stands")
    cursor.must("at")
    at = point(cursor)
    cursor.takes(", and", ",", "and")
    begins = cursor.at
    what = cursor.guessed(_HOLDS, "phrase")
    sort, _, phrase = what.partition(" ")
    if sort == "thing":
        cursor.note("not-a-place", begins, f"{name} is a thing here.", "One more is a place: somebody stands there.")
        return None
    if not what:
        cursor.unexpected('"is passive", "holds one" or "is a line"')
        return None
    (place,) = _places(cursor, (_Spot(name=name, at=at, span=cursor.span_from(start)),), HOLDS[phrase])
    cursor.finish()
    return None if cursor.failed else replace(place, span=cursor.span_from(start))


def _rest(cursor: Cursor, draft: Draft) -> None:
    """Read on where another declaration follows without a full stop before it, and tell that."""
    rest = () if cursor.done() else cursor.tokens[cursor.at :]
    if not rest or cursor.at == 0 or not declares(rest):
        cursor.finish()
        return
    last = cursor.tokens[cursor.at - 1]
    span = Span(line=last.line, column=last.end, end_line=last.line, end_column=last.end + 1)
    cursor.findings.add(
        "no-full-stop", span, f'A full stop is missing after "{last.text}".', "End the sentence with a full stop."
    )
    declaration(Cursor(rest, cursor.names, cursor.findings, slips=1), draft)


def _hint(spots: tuple[_Spot, ...]) -> str:
    name = spots[0].name if spots else "Base"
    return f'Write "{name} at 0, 0 is a line.", "{name} at 0, 0 holds one." or "{name} at 0, 0 is a cone."'


def _spots(cursor: Cursor) -> tuple[_Spot, ...]:
    found = []
    while True:
        start = cursor.at
        name = _new_name(cursor)
        cursor.must("at")
        at = point(cursor)
        found.append(_Spot(name=name, at=at, span=cursor.span_from(start)))
        before = cursor.at
        cursor.takes(",")
        cursor.takes("and")
        if cursor.failed or cursor.at == before:
            return tuple(found)
        if cursor.peek().kind not in (WORD, NUMBER) or cursor.peek().lower in ("is", "are", "holds", "hold"):
            cursor.at = before
            return tuple(found)


def _new_name(cursor: Cursor, ends: tuple[str, ...] = ("at", "and")) -> str:
    start = cursor.at
    while cursor.peek().kind in (WORD, NUMBER) and cursor.peek().lower not in ends:
        cursor.at += 1
    if cursor.at == start:
        cursor.findings.unnamed += 1
        cursor.unexpected("a name")
        return ""
    name = name_of(cursor.tokens[start : cursor.at])
    if name.lower() in RESERVED:
        cursor.note(
            "unclear-name", start, f'"{name}" cannot be a name.', "Take a word that does not occur in sentences."
        )
    return name


def _places(cursor: Cursor, spots: tuple[_Spot, ...], meant: Standing) -> tuple[Place, ...]:
    place = Place(
        name="",
        at=Point(0.0, 0.0),
        holds=meant.holds,
        adult=meant.adult,
        keeper=meant.keeper,
        passive=meant.passive,
    )
    said: set[str] = set()
    while cursor.more():
        start = cursor.at
        cursor.takes(",")
        sort, changed = _extra(cursor, place)
        if not sort:
            cursor.at = start + 1 if cursor.at > start and not cursor.failed else cursor.at
            break
        if sort in said:
            cursor.note("said-twice", start, "This is said twice.", "Leave one of the two out.")
        said.add(sort)
        place = changed
    whole = cursor.span_from(0)
    alone = len(spots) == 1
    return tuple(replace(place, name=spot.name, at=spot.at, span=whole if alone else spot.span) for spot in spots)


def _extra(cursor: Cursor, place: Place) -> tuple[str, Place]:
    """Take one phrase that may follow; which sort it was ("" where none came) and the place with it."""
    if cursor.asks:
        for words in _EXTRAS:
            cursor.sees(words)
    if cursor.takes("a ball each", "with a ball each", "a ball for each"):
        return "balls", replace(place, supply=Supply(kind=SupplyKind.EACH))
    if cursor.takes("with the ball", "with a ball", "the ball"):
        return "balls", replace(place, supply=Supply(kind=SupplyKind.BALL, count=1))
    if cursor.takes("with"):
        count = cursor.count("balls", most=MOST_BALLS)
        cursor.takes("ball") or cursor.must("balls")
        return "balls", replace(place, supply=Supply(kind=SupplyKind.STOCK, count=count))
    if cursor.takes("in"):
        colour = cursor.guessed(_COLOURS, "colour of bibs")
        if not colour:
            cursor.unexpected("a colour of bibs", f"Known are {', '.join(bib.value for bib in COLOURS.values())}.")
            return "bib", place
        return "bib", replace(place, bib=COLOURS[colour])
    if cursor.takes(PASSIVE):
        return "passive", replace(place, passive=True)
    if cursor.takes("facing"):
        return "facing", replace(place, facing=cursor.name("what they face"))
    side = cursor.guessed(_WAITS, "side to wait on") if cursor.sees("waiting") else ""
    return ("waits", replace(place, waits=side)) if side else ("", place)


def _things(cursor: Cursor, spots: tuple[_Spot, ...], kind: ThingKind) -> tuple[Thing, ...]:
    width = DEFAULT_WIDTH_M[kind]
    upright = False
    while cursor.more():
        start = cursor.at
        cursor.takes(",")
        if cursor.asks:
            cursor.sees("3 m wide")
        if sees_length(cursor):
            width = length_m(cursor, "a width")
            cursor.must("wide")
        elif cursor.takes("upright"):
            upright = True
        else:
            cursor.at = start + 1 if cursor.at > start else start
            break
    whole = cursor.span_from(0)
    alone = len(spots) == 1
    return tuple(
        Thing(
            name=spot.name,
            kind=kind,
            at=spot.at,
            width_m=width,
            upright=upright,
            span=whole if alone else spot.span,
        )
        for spot in spots
    )


def _keep_places(cursor: Cursor, draft: Draft, places: tuple[Place, ...]) -> None:
    for place in places:
        if not _told_twice(cursor, draft, place.name, place.span):
            draft.places.append(place)


def _keep_things(cursor: Cursor, draft: Draft, things: tuple[Thing, ...]) -> None:
    for thing in things:
        if not _told_twice(cursor, draft, thing.name, thing.span):
            draft.things.append(thing)


def _told_twice(cursor: Cursor, draft: Draft, name: str, span: Span | None) -> bool:
    taken = name in draft.taken()
    if taken:
        cursor.findings.add(
            "name-twice", span, f'There are two places or things called "{name}".', "Give one of them another name."
        )
    return taken or not name
