"""What a child does, one act at a time, as it is told to do it; must not know what comes before or after."""

import re
from dataclasses import replace

from conewright.model.exercise import (
    Act,
    Foot,
    Holds,
    Manner,
    Pace,
    Place,
    SupplyKind,
    TargetKind,
    ThingKind,
    Verb,
    Weight,
)
from conewright.model.geometry import distance_m
from conewright.model.round import Played
from conewright.notation.amounts import people
from conewright.notation.spoken import Scene, line_or_spot, named, seconds, spot, steps, who
from conewright.notation.words import NUMBERS

KICKS = {Verb.PASS: "pass", Verb.SET_BACK: "play", Verb.CROSS: "cross", Verb.THROW: "throw"}
WEIGHTS = {Weight.FIRM: " firmly", Weight.SOFT: " softly", Weight.USUAL: ""}
FEET = {Foot.LEFT: " with your left foot", Foot.RIGHT: " with your right foot", Foot.WEAK: " with your weaker foot"}
RUNS = {Pace.WALK: "walk", Pace.JOG: "jog", Pace.SPRINT: "sprint"}
PACES = {Pace.WALK: " at a walk", Pace.JOG: " at a jog", Pace.SPRINT: " as fast as you can"}
AFTER_GATE_M = 3.0  # a way that ends nearer than this behind a gate or cone is told by that alone


def clause(scene: Scene, played: Played, *, ball: str = "the ball") -> str:
    """One act without who does it: "pass it firmly to Stem"; `ball` is what the ball is called here."""
    act = played.act
    if act is None:
        return _implied(scene, played)
    if played.flight:
        return _kick(scene, played, act, ball)
    if len(played.path) > 1 or act.verb in (Verb.RUN, Verb.DRIBBLE):
        return _movement(scene, played, act, ball)
    return _still(act, ball)


def _implied(scene: Scene, played: Played) -> str:
    if played.verb is Verb.FETCH:
        return "fetch your ball"
    if played.to_place:
        return f"{'dribble' if played.with_ball else 'run'} {goal(scene, played)}"
    return "run onto it"


# --- the ball ---


def _kick(scene: Scene, played: Played, act: Act, ball: str) -> str:
    manner = act.manner
    how = f"{WEIGHTS[manner.weight]}{_through(scene, act)}"
    if act.verb is Verb.SHOOT:
        return f"shoot{how} {_at_goal(scene, act)}{_touches(manner)}"
    back = " straight back" if act.verb is Verb.SET_BACK and _goes_back(scene, played) else ""
    once = " with one touch" if act.verb is Verb.SET_BACK and manner.touches is None else ""
    touches = f"{once}{_touches(manner)}"
    lofted = " through the air" if manner.lofted and act.verb is not Verb.CROSS else ""
    return f"{KICKS[act.verb]} {ball}{back}{how} {_aim(scene, played, act)}{touches}{lofted}"


def _goes_back(scene: Scene, played: Played) -> bool:
    """Whether a ball goes to whoever it came from."""
    came = [one for one in scene.round_.acts[: played.number] if one.receiver == played.bearer]
    return bool(came) and came[-1].bearer == played.receiver


def _aim(scene: Scene, played: Played, act: Act) -> str:
    target, receiver = act.target, played.receiver
    thing = scene.exercise.thing(scene.meant(target.name)) if target else None
    if thing is not None and target is not None and target.kind is not TargetKind.AHEAD:
        way = {ThingKind.WALL: "against", ThingKind.GATE: "through", ThingKind.CONE: "at"}.get(thing.kind, "into")
        return f"{way} {named(scene, target.name)}"
    if receiver is None:
        return "into space"
    if target is not None and target.kind is TargetKind.AHEAD:
        return f"in front of {who(scene, receiver)}"
    return f"to {who(scene, receiver)}"


def _at_goal(scene: Scene, act: Act) -> str:
    if act.target is None:
        return "at the goal"
    thing = scene.exercise.thing(scene.meant(act.target.name))
    way = "through" if thing is not None and thing.kind is ThingKind.GATE else "at"
    return f"{way} {named(scene, act.target.name)}"


def _through(scene: Scene, act: Act) -> str:
    ways = [f"{via.how} {named(scene, via.name)}" for via in act.via]
    return f" {' and '.join(ways)}" if ways else ""


def _touches(manner: Manner) -> str:
    """With how many touches, and with which foot."""
    foot = _foot(manner)
    if manner.touches is None:
        return foot
    if manner.touches > 1:
        return f" in {people(manner.touches)} touches{foot}"
    return f" with the first touch of{foot.removeprefix(' with')}" if foot else " with your first touch"


def _foot(manner: Manner) -> str:
    return FEET[manner.foot] if manner.foot else ""


# --- the feet ---


def _movement(scene: Scene, played: Played, act: Act, ball: str) -> str:
    pace = act.manner.pace
    if act.verb is Verb.CHECK:
        far = act.target.distance_m if act.target else 0.0
        return f"step away from the ball{f', about {steps(far)}' if far else ''}"
    if act.verb is Verb.SHOW:
        own = scene.exercise.place(scene.round_.bearers[played.bearer].place)
        back = own is not None and distance_m(own.at, played.path[-1]) < 0.01
        return "come back and ask for it" if back else "step towards the ball and ask for it"
    if act.verb is Verb.FETCH:
        return f"fetch {ball}"
    if act.verb is Verb.RUN:
        verb = RUNS.get(pace, "run") if pace else "run"
        verb += " with the ball" if played.with_ball else ""
    else:
        verb = "dribble" + _foot(act.manner) + (PACES.get(pace, "") if pace else "")
    return f"{verb}{_through(scene, act)}{_end(scene, played, act)}"


def _end(scene: Scene, played: Played, act: Act) -> str:
    if played.to_place:
        return f"{',' if act.via and act.manner.outside else ''} {goal(scene, played)}"
    target = act.target
    if target is None:
        return ""
    if target.kind is TargetKind.OWN:
        return " back to where you started"
    if target.kind is TargetKind.TOWARDS and target.name:
        return f" {steps(target.distance_m)} towards {named(scene, target.name)}"
    if target.kind is TargetKind.THING or scene.exercise.thing(scene.meant(target.name)):
        return f" to {named(scene, target.name)}"
    if act.via and _just_behind(scene, played, act):
        return ""
    outside = " round the outside" if act.manner.outside else ""
    if not act.via:
        return f"{outside} {spot(scene, played)}"
    last = scene.meant(act.via[-1].name)
    one = scene.exercise.thing(last) or scene.exercise.place(last)
    behind = replace(played, path=(one.at, played.path[-1])) if one is not None else played
    return f"{outside}, {spot(scene, behind, bent=True)}"


def _just_behind(scene: Scene, played: Played, act: Act) -> bool:
    last = scene.meant(act.via[-1].name)
    one = scene.exercise.thing(last) or scene.exercise.place(last)
    return one is not None and distance_m(one.at, played.path[-1]) < AFTER_GATE_M


def goal(scene: Scene, played: Played) -> str:
    """Where a way to a place leads: "round the outside to the end of the line at Base", "back to your place"."""
    act = played.act
    outside = "round the outside " if act is not None and act.manner.outside else ""
    place = scene.exercise.place(played.to_place)
    if place is None:
        return f"{outside}to {played.to_place}"
    if played.to_place == scene.round_.bearers[played.bearer].place:
        return f"{outside}back to {own(place)}"
    if after_own_pass(scene, played):
        thrown = any(one.bearer == played.bearer and one.verb is Verb.THROW for one in scene.round_.acts)
        after = f"after your {'throw' if thrown else 'pass'}"
        return f"{outside}{after}, to the end of that line" if place.holds is Holds.LINE else after
    return f"{outside}to {line_or_spot(place)}"


def own(place: Place) -> str:
    """The place somebody comes from, as it hears it."""
    return "the end of your own line" if place.holds is Holds.LINE else "your own place"


def after_own_pass(scene: Scene, played: Played) -> bool:
    """Whether a way leads to one of the sides that take turns, to which its own last pass went."""
    if played.to_place not in scene.sides:
        return False
    kicks = [one for one in scene.round_.acts if one.bearer == played.bearer and one.receiver is not None]
    return bool(kicks) and scene.round_.bearers[kicks[-1].receiver or 0].place == played.to_place


# --- neither ---


def _still(act: Act, ball: str) -> str:
    if act.verb is Verb.TURN:
        with_ball = "" if act.manner.touches == 1 else f" with {ball}"
        return f"turn{with_ball}{_touches(act.manner)}"
    if act.verb is Verb.CALL:
        return f'call "{act.what}"'
    if act.verb is Verb.WAIT:
        return f"wait {seconds(act.seconds or 0)}"
    if act.verb is Verb.TASK:
        counted = act.seconds is None or _is_counted(act.what)
        return f"do {act.what}" + ("" if counted else f" for {seconds(act.seconds or 0)}")
    return f"fetch {ball}" if act.verb is Verb.FETCH else "stay where you are"


def _is_counted(what: str) -> bool:
    """Whether a small task says itself when it is done: "six toe taps"."""
    first = re.match(r"[^\W_]+", what.lower())
    return first is not None and (first[0].isdecimal() or first[0] in NUMBERS)


def ball_brought(place: Place | None) -> str:
    """What becomes of a ball that is brought to a place."""
    if place is None:
        return ""
    many = place.holds is Holds.LINE
    return {
        SupplyKind.EACH: ", and keep your ball",
        SupplyKind.STOCK: ", and leave the ball with the others there",
        SupplyKind.BALL: f", and give the ball to the {'first in line' if many else 'one there'}",
        SupplyKind.NONE: ", and keep the ball",
    }[place.supply.kind]
