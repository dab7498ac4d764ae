"""Acts, starts and moves in words, in the one canonical form; must not know the sentences they stand in."""

from itertools import groupby

from conewright.model.exercise import (
    Act,
    Event,
    Exercise,
    Move,
    Pace,
    Target,
    TargetKind,
    ThingKind,
    Trigger,
    Verb,
    Via,
    Weight,
)
from conewright.model.geometry import Point
from conewright.notation.amounts import figure, people, point
from conewright.notation.words import (
    AT_ONCE,
    FEET,
    FIRST_TIME,
    LOFTED,
    MOVERS,
    OUTSIDE,
    PACES,
    TRIGGERS,
    VERBS,
    WEIGHTS,
    TriggerForm,
    VerbWord,
)


def acts_phrase(exercise: Exercise, acts: tuple[Act, ...]) -> str:
    """The acts of a step: one person's verbs with commas and a "then" before the last, different people by "; "."""
    clauses = []
    for who, own in groupby(acts, key=lambda act: act.who):
        *first, last = (act_phrase(exercise, act) for act in own)
        clauses.append(f"{who} {', '.join(first)}{', then ' if first else ''}{last}")
    return "; ".join(clauses)


def act_phrase(exercise: Exercise, act: Act) -> str:
    """What one person does, without its name."""
    word = verb_word(act)
    manner = act.manner
    said = (
        word.phrase,
        "" if manner.weight is Weight.USUAL else WEIGHTS[manner.weight],
        _way(act.via),
        _quoted(act),
        _target(exercise, act, act.target) if act.target else "",
        _touches(manner.touches),
        FEET[manner.foot] if manner.foot else "",
        LOFTED if manner.lofted else "",
        OUTSIDE if manner.outside else "",
        PACES[manner.pace] if manner.pace and manner.pace is not word.pace else "",
        trigger_phrase(act.start) if act.start else "",
    )
    return " ".join(part for part in said if part)


def verb_word(act: Act) -> VerbWord:
    """The word for the verb, for a run that of its pace."""
    pace = act.manner.pace if act.verb is Verb.RUN and act.manner.pace is not Pace.RUN else None
    return next(word for word in VERBS if word.verb is act.verb and word.pace is pace)


def _way(ways: tuple[Via, ...]) -> str:
    return " and ".join(f"{way.how} {way.name}" for way in ways)


def _quoted(act: Act) -> str:
    """What is called or done, and how long it takes."""
    what = f'"{act.what}"' if act.what else ""
    if act.seconds is None:
        return what
    return f"{what} for {figure(act.seconds)} s" if act.what else f"{figure(act.seconds)} s"


def _touches(touches: int | None) -> str:
    if touches is None:
        return ""
    return FIRST_TIME if touches == 1 else f"in {people(touches)} touches"


def _target(exercise: Exercise, act: Act, target: Target) -> str:
    if target.kind is TargetKind.OWN:
        return "home"
    if target.kind is TargetKind.AHEAD:
        return f"ahead of {target.name}" + (f" to {_spot(exercise, target.at)}" if target.at else "")
    if target.kind is TargetKind.TOWARDS:
        way = f"{figure(target.distance_m)} m"
        goal = point(target.at) if target.at else target.name
        return way if act.verb is Verb.CHECK else f"{way} towards {goal}"
    if target.kind is TargetKind.POINT and target.at is not None:
        return f"to {point(target.at)}"
    if act.verb is Verb.SHOOT:
        return f"at {target.name}"
    thing = exercise.thing(_meant(exercise, target.name))
    if act.verb is Verb.PASS and thing is not None and thing.kind is ThingKind.WALL:
        return f"against {target.name}"
    return f"to the end of {target.name}" if target.end else f"to {target.name}"


def _meant(exercise: Exercise, name: str) -> str:
    """The name itself; for a word for the sides, the first of them."""
    sides = exercise.script.sides if exercise.script else None
    return sides.places[0] if sides and sides.places and name in (sides.word, sides.other) else name


def _spot(exercise: Exercise, at: Point) -> str:
    """The name of what stands at a point, else the point."""
    stands = tuple((thing.name, thing.at) for thing in exercise.things)
    stands += tuple((place.name, place.at) for place in exercise.places)
    return next((name for name, its in stands if its == at), point(at))


def trigger_phrase(trigger: Trigger) -> str:
    """When something starts."""
    if trigger.event is Event.TOGETHER:
        return f"after {figure(trigger.delay_s)} s" if trigger.delay_s else AT_ONCE
    form = _trigger_form(trigger)
    step = "" if trigger.step is None else str(trigger.step)
    pattern = f"{figure(trigger.delay_s)} s after {form.clause}" if trigger.delay_s else form.alone
    return pattern.format(who=trigger.who, name=trigger.name, step=step).replace(" 's", "'s")


def _trigger_form(trigger: Trigger) -> TriggerForm:
    forms = tuple(form for form in TRIGGERS if form.event is trigger.event)
    return next((form for form in forms if ("{name}" in form.clause) == bool(trigger.name)), forms[0])


def joins(move: Move) -> str:
    """A move after a contest: "Hub joins Wing", "Gate House takes the ball to Hub and joins Wing"."""
    who = MOVERS.get(move.who, move.who)
    if move.brings_ball_to is None:
        return f"{who} joins {move.to}"
    return f"{who} takes the ball to {move.brings_ball_to} and joins {move.to}"


def goes_to(move: Move) -> str:
    """A move of a rotation: "Base to Stem", "Side to Base with the ball"."""
    if move.brings_ball_to not in (None, move.to):
        return joins(move)
    with_ball = " with the ball" if move.brings_ball_to else ""
    return f"{MOVERS.get(move.who, move.who)} to {move.to}{with_ball}"
