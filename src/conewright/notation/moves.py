"""Who goes where after a round or a contest: "Base to Stem", "Hub joins Wing"; must not know what was played before."""

from dataclasses import replace

from conewright.model.exercise import Ending, Move, Outcome, Rotation, RotationKind
from conewright.notation.cursor import Cursor, indexed
from conewright.notation.measures import LONGEST_S
from conewright.notation.shapes import EXAMPLES
from conewright.notation.starts import tell_not_a_place
from conewright.notation.words import ENDINGS, MOVER_SYNONYMS, MOVERS, SECONDS

_MOVERS = indexed({**{phrase: word for word, phrase in MOVERS.items()}, **MOVER_SYNONYMS})
_ENDINGS = indexed({phrase: ending.name for ending, phrase in ENDINGS.items()} | {"time is up": Ending.TIME_UP.name})
_FOLLOW = ("follow the pass", "follow your pass", "everyone follows the pass", "everyone follows their own pass")
_STAY = (
    "everyone goes back to their own place",
    "everyone goes back to the own place",
    "everyone back to their own place",
    "everyone back to the own place",
    "everyone stays",
)
_WHOLE = indexed(dict.fromkeys(_FOLLOW, RotationKind.FOLLOW.value) | dict.fromkeys(_STAY, RotationKind.STAY.value))
_UNITS = indexed(("round", "rounds", *SECONDS))
_SINGLE = frozenset(("round", "minute"))  # "every round" needs no number
_MOST_ROUNDS = 50


def outcome(cursor: Cursor, defenders: tuple[str, ...]) -> Outcome | None:
    """Read "Scored or out: Hub joins Wing, ..."; None where it fails."""
    cursor.example = EXAMPLES["outcome"]
    endings = _endings(cursor, defenders)
    cursor.must(":")
    moves, ball_to = _moves(cursor)
    cursor.finish()
    if cursor.failed:
        return None
    return Outcome(endings=endings, moves=moves, ball_to=ball_to, span=cursor.span_from(0))


def _endings(cursor: Cursor, defenders: tuple[str, ...]) -> tuple[Ending, ...]:
    lead = tuple(token.lower for token in cursor.tokens[:8])
    if "wins" in lead or (":" in lead and lead[lead.index(":") - 1] == "it"):
        start = cursor.at
        name = cursor.name()
        cursor.must("wins")
        cursor.takes("it")
        known = cursor.names.places
        if defenders and name not in defenders and name in known and all(one in known for one in defenders):
            cursor.note("not-a-defender", start, f"{name} does not defend.", f"Write {defenders[0]} wins it, or won.")
        return (Ending.WON,)
    found: list[Ending] = []
    while not cursor.failed:
        word = cursor.guessed(_ENDINGS, "ending")
        if not word:
            cursor.unexpected("how it ends", "Endings are scored, out, time up, and the defender wins it.")
            break
        found.append(Ending[word])
        cursor.takes(",")
        cursor.takes("or", "and")
        if cursor.sees(":"):
            break
    return tuple(dict.fromkeys(found))


def _moves(cursor: Cursor) -> tuple[tuple[Move, ...], str | None]:
    moves: list[Move] = []
    ball_to: str | None = None
    if cursor.takes("nobody moves", "everyone stays"):
        return (), None
    while not cursor.failed:
        if cursor.takes("the ball goes to", "the ball goes back to"):
            ball_to = cursor.name("a place")
        else:
            moves += _move(cursor)
        before = cursor.at
        cursor.takes(",", ";")
        cursor.takes("and")
        if cursor.at == before:
            break
    return tuple(moves), ball_to


def _move(cursor: Cursor) -> tuple[Move, ...]:
    start = cursor.at
    who = _mover(cursor)
    if cursor.sees("and"):
        return _swap(cursor, who, start)
    brings: str | None = None
    if cursor.takes("takes the ball", "takes it"):
        cursor.must("to", f"Write it like this: {who} takes the ball to Stem and joins Stem.")
        brings = _place(cursor)
        cursor.takes(",")
        if not cursor.takes("and joins", "and goes to", "joins", "goes to"):
            return (Move(who=who, to=brings, brings_ball_to=brings, span=cursor.span_from(start)),)
    elif not cursor.takes("joins", "goes to", "to"):
        cursor.unexpected("a place to go to", f"Write it like this: {who} to Stem, or {who} joins Stem.")
        return ()
    to = _place(cursor)
    if cursor.takes("with the ball"):
        brings = to
    return (Move(who=who, to=to, brings_ball_to=brings, span=cursor.span_from(start)),)


def _mover(cursor: Cursor) -> str:
    word = cursor.one_of(_MOVERS)
    if word:
        return word
    start = cursor.at
    name = cursor.name("who goes")
    if cursor.names.thing(name):
        cursor.note("cannot-act", start, f"{name} is a thing: it goes nowhere.", "Name a place where somebody stands.")
    return name


def _place(cursor: Cursor) -> str:
    start = cursor.at
    name = cursor.name("a place")
    tell_not_a_place(cursor, name, start, or_side=True)
    return name


def _swap(cursor: Cursor, who: str, start: int) -> tuple[Move, ...]:
    """ "A and B swap": two moves."""
    cursor.at += 1
    other = cursor.name("who swaps")
    if not cursor.takes("swap", "swap places"):
        cursor.unexpected('"swap"', f"Write {who} and {other} swap, or say it for each of them.")
        return ()
    span = cursor.span_from(start)
    return Move(who=who, to=other, span=span), Move(who=other, to=who, span=span)


def rotation(cursor: Cursor) -> Rotation | None:
    """Read "Rotation: ..." or "Every 4 rounds: ..."; None where it fails."""
    cursor.example = EXAMPLES["rotation"]
    told = Rotation(kind=RotationKind.MOVES)
    if cursor.takes("every"):
        told = _every(cursor)
    else:
        cursor.at += 1
    cursor.must(":")
    whole = "" if cursor.sees_name() else cursor.guessed(_WHOLE, "rotation")
    if whole:
        told = replace(told, kind=RotationKind(whole))
    else:
        moves, ball_to = _moves(cursor)
        if ball_to is not None:
            cursor.note("no-mover", 0, "Nobody is said to bring the ball.", "Write: Side to Base with the ball.")
        told = replace(told, moves=moves)
    cursor.finish()
    return None if cursor.failed else replace(told, span=cursor.span_from(0))


def relief(cursor: Cursor) -> Rotation | None:
    """Read "Shadow changes with Left every 6 rounds": the two swap; None where it fails."""
    who = _mover(cursor)
    cursor.must("changes")
    cursor.must("with")
    other = _place(cursor)
    span = cursor.span_from(0)
    cursor.must("every")
    told = _every(cursor)
    cursor.finish()
    if cursor.failed:
        return None
    swap = (Move(who=who, to=other, span=span), Move(who=other, to=who, span=span))
    return replace(told, moves=swap, span=cursor.span_from(0))


def _every(cursor: Cursor) -> Rotation:
    """Take `4 rounds`, `2 minutes`, `minute`."""
    start = cursor.at
    value = 1.0 if cursor.peek().lower in _SINGLE else cursor.number()
    unit = cursor.guessed(_UNITS, "word")
    told = Rotation(kind=RotationKind.MOVES)
    if value is None or not unit:
        cursor.unexpected('"rounds" or "minutes"' if value else "a number of rounds or minutes")
    elif unit in SECONDS and 0 < value * SECONDS[unit] <= LONGEST_S:
        return replace(told, every_s=value * SECONDS[unit])
    elif unit not in SECONDS and 1 <= value <= _MOST_ROUNDS and value == int(value):
        return replace(told, every_rounds=int(value))
    else:
        hint = f"Write 1 to {_MOST_ROUNDS} rounds, or some minutes."
        cursor.note("impossible-count", start, f"Every {value:g} {unit} cannot be.", hint)
    return told
