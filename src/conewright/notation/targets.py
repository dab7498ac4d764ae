"""Where an act goes: to feet, ahead of somebody, to a place, a point or a thing; must not know how it is done."""

from conewright.model.exercise import Target, TargetKind, ThingKind, Verb, Via
from conewright.model.geometry import Point
from conewright.notation.cursor import Cursor
from conewright.notation.measures import length_m, point, sees_length, sees_point

KICKS = frozenset({Verb.PASS, Verb.SET_BACK, Verb.CROSS, Verb.THROW})
MOVES = frozenset({Verb.RUN, Verb.DRIBBLE})
_TO_OWN = (
    "home",
    "to the own place",
    "to the own line",
    "to its own place",
    "to their own place",
    "to its own line",
    "to their own line",
    "back home",
)


def target(cursor: Cursor, verb: Verb) -> Target | None:
    """Take the target that comes next, or None where none does."""
    if verb in KICKS:
        return _kick_target(cursor)
    if verb is Verb.SHOOT:
        return _shot_target(cursor)
    if verb in MOVES:
        return _move_target(cursor)
    if verb is Verb.CHECK and sees_length(cursor):
        return Target(kind=TargetKind.TOWARDS, distance_m=length_m(cursor, "the way checked away"))
    return None


def _kick_target(cursor: Cursor) -> Target | None:
    if cursor.takes("into space ahead of", "into the space ahead of", "ahead of"):
        return _ahead(cursor)
    if cursor.takes("against"):
        return _wall(cursor)
    if not cursor.takes("to the feet of", "back to", "to"):
        return None
    if sees_point(cursor):
        return Target(kind=TargetKind.POINT, at=point(cursor))
    start = cursor.at
    name = cursor.name("who gets the ball")
    thing = cursor.names.thing(name)
    if thing is not None and thing.kind is ThingKind.CONE:
        cursor.note("no-receiver", start, f"{name} is a cone: nobody gets the ball there.", "Name a place.")
    return Target(kind=TargetKind.THING if thing else TargetKind.ROLE, name=name)


def _ahead(cursor: Cursor) -> Target:
    start = cursor.at
    name = cursor.name("who runs onto the ball")
    if cursor.names.thing(name):
        cursor.note("cannot-act", start, f"{name} is a thing: it does not run onto a ball.", "Name a place.")
    at = None
    if cursor.takes(", who runs to", "who runs to", "to"):
        at = _spot(cursor)
    return Target(kind=TargetKind.AHEAD, name=name, at=at)


def _spot(cursor: Cursor) -> Point | None:
    if sees_point(cursor):
        return point(cursor)
    start = cursor.at
    name = cursor.name("where they meet")
    if cursor.names.is_word(name):
        cursor.note(
            "not-a-spot", start, f"{name} is a word for one of the sides, not one spot.", "Name a point: to -6, 18."
        )
    stands = cursor.names.things.get(name) or cursor.names.places.get(name)
    return stands.at if stands else None


def _wall(cursor: Cursor) -> Target:
    start = cursor.at
    name = cursor.name("the wall")
    thing = cursor.names.thing(name)
    known = thing is not None or name in cursor.names.places
    if known and (thing is None or thing.kind is not ThingKind.WALL):
        cursor.note(
            "not-a-wall", start, f"{name} is not a wall.", f'Write "{name} at 0, 10 is a wall.", or pass to somebody.'
        )
    return Target(kind=TargetKind.THING, name=name)


def _shot_target(cursor: Cursor) -> Target | None:
    if not cursor.takes("at", "into"):
        return None
    start = cursor.at
    name = cursor.name("a goal")
    tell_no_goal(cursor, name, start)
    return Target(kind=TargetKind.THING, name=name)


def tell_no_goal(cursor: Cursor, name: str, start: int) -> None:
    """Tell where something else than a goal or gate is attacked."""
    if name and not cursor.failed and not cursor.names.is_goal(name):
        thing = cursor.names.thing(name)
        what = f"a {thing.kind.value}" if thing else "a place"
        cursor.note(
            "not-a-goal",
            start,
            f"{name} is {what}, not a goal or gate.",
            'Write "Goal at 0, 20 is a goal." and name that.',
        )


def _move_target(cursor: Cursor) -> Target | None:
    if cursor.takes(*_TO_OWN):
        return Target(kind=TargetKind.OWN)
    if cursor.asks and sees_length(cursor):
        cursor.sees("towards", 2)
    if sees_length(cursor) and cursor.peek(2).lower in ("towards", "toward"):
        distance = length_m(cursor, "the way")
        cursor.at += 1
        if sees_point(cursor):
            return Target(kind=TargetKind.TOWARDS, at=point(cursor), distance_m=distance)
        return Target(kind=TargetKind.TOWARDS, name=cursor.name("a place or thing"), distance_m=distance)
    if not cursor.takes("back to", "to"):
        return None
    if sees_point(cursor):
        return Target(kind=TargetKind.POINT, at=point(cursor))
    end = cursor.takes("the end of", "the back of", "the end of the line at")
    name = cursor.name("a place or point")
    kind = TargetKind.THING if cursor.names.thing(name) else TargetKind.PLACE
    return Target(kind=kind, name=name, end=end)


def via(cursor: Cursor) -> Via | None:
    """Take "round NAME" or "through GATE"; None where neither comes next."""
    if cursor.takes("round", "around"):
        return Via(how="round", name=cursor.name("what to go round"))
    if not cursor.takes("through"):
        return None
    start = cursor.at
    name = cursor.name("a gate")
    if name and not cursor.failed and not cursor.names.is_goal(name):
        cursor.note("not-a-gate", start, f"{name} is not a gate.", f'Write "round {name}", or declare a gate.')
    return Via(how="through", name=name)
