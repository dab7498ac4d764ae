"""An exercise told in short, for paper: who does what in each numbered sentence; must not know the written notation."""

from itertools import groupby

from conewright.drawing.numerals import in_words, listed
from conewright.model.exercise import (
    Act,
    Contest,
    Event,
    Exercise,
    Foot,
    Move,
    NextRound,
    OpenPlay,
    Pace,
    PlayKind,
    Rotation,
    RotationKind,
    Script,
    SideOrder,
    Sides,
    SupplyKind,
    TargetKind,
    Trigger,
    Verb,
    Via,
    Weight,
)
from conewright.model.layout import Side

VERBS = {
    Verb.PASS: "passes",
    Verb.SET_BACK: "sets it back",
    Verb.CROSS: "crosses",
    Verb.THROW: "throws",
    Verb.SHOOT: "shoots",
    Verb.DRIBBLE: "dribbles",
    Verb.RUN: "runs",
    Verb.CHECK: "checks away",
    Verb.SHOW: "shows",
    Verb.TURN: "turns",
    Verb.FETCH: "fetches the ball",
    Verb.WAIT: "waits",
    Verb.CALL: "calls",
    Verb.TASK: "",
}
TO = {TargetKind.AHEAD: "ahead of", TargetKind.TOWARDS: "towards"}
EVENTS = {
    Event.RELEASED: "when {who} passes",
    Event.CONTROLLED: "when {who} has the ball",
    Event.SHOT: "when {who} shoots",
    Event.OVER: "when the shot of {who} is over",
    Event.ARRIVED: "when {who} gets there",
    Event.HALFWAY: "when {who} is halfway",
    Event.PASSED: "when {who} passes {name}",
    Event.STARTED: "when {who} starts",
    Event.STEP: "after {step}",
    Event.BACK: "when the ball is back at {name}",
    Event.READY: "when {who} is ready",
    Event.BOX_CLEAR: "when the box is clear",
    Event.TOGETHER: "when all are there",
    Event.CALL: "when the coach calls",
}


def told(exercise: Exercise) -> tuple[tuple[str, str], ...]:
    """The sentences of the round, each with its number, "" where it has none: sides, steps, outcomes, what is next."""
    script = exercise.script
    if script is None:
        return ()
    lines = [("", _sides(script.sides))] if script.sides else []
    for step in script.steps:
        parts = [words for words in (_acts(step.acts), _contest(step.contest)) if words]
        lines.append((str(step.number), sentence("; ".join(parts))))
    lines += [
        ("", words) for words in (*_outcomes(script), _rotations(script.rotations), _next(script.next_round)) if words
    ]
    return tuple(lines)


def _sides(sides: Sides) -> str:
    """How the sides are told apart: in turn, from half time, by whoever chooses or calls."""
    places = listed(sides.places)
    said = {
        SideOrder.IN_TURN: f"{places} in turn",
        SideOrder.HALF_TIME: f"{places}, changed at half time",
        SideOrder.CHOICE: f"{sides.chooser} chooses: {places}",
        SideOrder.CALL: f"The coach calls: {places}",
    }
    other = f", the other: {sides.other}" if sides.other else ""
    return f"{said[sides.order]} ({sides.word}{other})."


def told_play(play: OpenPlay, sides: tuple[Side, ...], *, scale: float = 1.0) -> tuple[str, ...]:
    """What an open-play box is about, its swap, restart, score and bouts, each a sentence; sizes as laid out."""
    names = [side.team.name for side in sides if side.team.name not in ("neutral", "rests in turn", "shares")]
    size = f"{play.width_m * scale:g} by {play.depth_m * scale:g} m"
    what = {
        PlayKind.BALL_EACH: "A ball each",
        PlayKind.KEEP: f"{names[0]} keep it from {listed(names[1:])}" if len(names) > 1 else "Keep the ball",
        PlayKind.GAME: " against ".join(names) if len(names) > 1 else "A game",
        PlayKind.CHASE: f"{listed(names)}, chasing" if names else "A chase",
    }[play.kind]
    bouts = f", bouts of {play.bout_s / 60:g} min" if play.bout_s else ""
    on = (
        f", on {in_words(len(play.on))} goals or gates"
        if len(play.on) > 2
        else f", on {listed(play.on)}"
        if play.on
        else ""
    )
    first = f"{what}, {size}{on}{bouts}"
    more = (("Swap: ", play.swap), ("Restart: ", play.restart), *(("", rule) for rule in play.rules))
    return (sentence(first), *(sentence(label + words) for label, words in more if words))


def sentence(words: str) -> str:
    """Words with a capital first and a full stop last."""
    words = words.strip()
    if not words:
        return ""
    return words[0].upper() + words[1:] + ("" if words[-1] in ".!?" else ".")


def _acts(acts: tuple[Act, ...]) -> str:
    by_one = [(who, tuple(own)) for who, own in groupby(acts, key=lambda act: act.who)]
    return "; ".join(f"{who} {', '.join(_act(act) for act in own)}" for who, own in by_one)


def _act(act: Act) -> str:
    parts = [
        act.what if act.verb is Verb.TASK else VERBS[act.verb],
        f'"{act.what}"' if act.verb is Verb.CALL and act.what else "",
        *_manner(act),
        *(_via(via) for via in act.via),
        _target(act),
        "round the outside" if act.manner.outside else "",
        f"{act.seconds:g} s" if act.seconds is not None and act.verb is Verb.WAIT else "",
        _trigger(act.start) if act.start else "",
    ]
    return " ".join(part for part in parts if part)


def _manner(act: Act) -> tuple[str, ...]:
    manner = act.manner
    touches = {None: "", 1: "first time"}.get(manner.touches, f"in {in_words(manner.touches or 0)} touches")
    weight = {Weight.FIRM: "firmly", Weight.SOFT: "softly"}.get(manner.weight, "")
    foot = (
        {Foot.LEFT: "left foot", Foot.RIGHT: "right foot", Foot.WEAK: "weaker foot"}.get(manner.foot, "")
        if manner.foot
        else ""
    )
    pace = (
        {Pace.WALK: "at a walk", Pace.JOG: "at a jog", Pace.SPRINT: "flat out"}.get(manner.pace, "")
        if manner.pace
        else ""
    )
    return touches, weight, foot, pace, "lofted" if manner.lofted else ""


def _via(via: Via) -> str:
    return f"{via.how} {via.name}"


def _target(act: Act) -> str:
    target = act.target
    if target is None:
        return ""
    if target.kind is TargetKind.OWN:
        return "home"
    if target.kind is TargetKind.POINT:
        return "on" if act.verb in (Verb.RUN, Verb.DRIBBLE) else "into space"
    if target.kind is TargetKind.AHEAD and target.at is not None:
        return f"ahead of {target.name}"
    if target.distance_m and target.kind is TargetKind.TOWARDS:
        return f"{target.distance_m:g} m towards {target.name}"
    aim = "at" if act.verb is Verb.SHOOT else TO.get(target.kind, "to")
    return f"{aim} {'the end of ' if target.end else ''}{target.name}"


def _trigger(trigger: Trigger) -> str:
    words = EVENTS[trigger.event].format(who=trigger.who, name=trigger.name, step=trigger.step)
    return words + (f" and {trigger.delay_s:g} s" if trigger.delay_s else "")


def _contest(contest: Contest | None) -> str:
    if contest is None:
        return ""
    on = f", on {listed(contest.on)}" if contest.on else ""
    limit = f", at most {contest.limit_s:g} s" if contest.limit_s else ""
    size = f"{contest.width_m:g} by {contest.depth_m:g} m"
    return f"contest in {size}: {listed(contest.attackers)} against {listed(contest.defenders)}{on}{limit}"


def _outcomes(script: Script) -> tuple[str, ...]:
    """One sentence for all endings that send people the same way; where every ending does, it needs no endings."""
    outcomes = [outcome for step in script.steps if step.contest is not None for outcome in step.contest.outcomes]
    ways = dict.fromkeys(outcome.moves for outcome in outcomes)
    told_ways = []
    for moves in ways:
        endings = [ending.value for outcome in outcomes if outcome.moves == moves for ending in outcome.endings]
        when = "then" if len(ways) == 1 else ", ".join(endings)
        told_ways.append(sentence(f"{when}: {_moves(moves)}"))
    return tuple(told_ways)


def _moves(moves: tuple[Move, ...]) -> str:
    return ", ".join(_move(move) for move in moves)


def _move(move: Move) -> str:
    if move.brings_ball_to is None:
        return f"{move.who} to {move.to}"
    if move.brings_ball_to == move.to:
        return f"{move.who} with the ball to {move.to}"
    return f"{move.who} takes the ball to {move.brings_ball_to}, goes to {move.to}"


def _rotations(rotations: tuple[Rotation, ...]) -> str:
    return " ".join(_rotation(rotation) for rotation in rotations)


def _rotation(rotation: Rotation) -> str:
    often = f"every {rotation.every_s:g} s" if rotation.every_s else ""
    often = often or (f"every {in_words(rotation.every_rounds)} rounds" if rotation.every_rounds > 1 else "")
    what = {RotationKind.FOLLOW: "follow your pass", RotationKind.STAY: "everybody back to the own place"}.get(
        rotation.kind, _moves(rotation.moves)
    )
    return sentence(f"{often}, {what}" if often else what)


def _next(next_round: NextRound | None) -> str:
    if next_round is None:
        return ""
    when = f"next round {_trigger(next_round.trigger)}" if next_round.trigger else ""
    many = next_round.in_flight or 1
    flight = f"{in_words(many)} rounds at once" if many > 1 else ""
    return sentence(", ".join(part for part in (when, flight) if part))


def start_words(exercise: Exercise, counts: dict[str, int]) -> str:
    """Who stands where, and the balls: "Two at Base, one at Stem; a ball each at Base"."""
    standing = [f"{in_words(count)} at {name}" for name, count in counts.items() if count]
    balls = []
    for place in exercise.places:
        kind, count = place.supply.kind, place.supply.count
        if kind is SupplyKind.EACH:
            balls.append(f"a ball each at {place.name}")
        elif kind is not SupplyKind.NONE:
            balls.append(f"{in_words(max(count, 1))} {'ball' if count <= 1 else 'balls'} at {place.name}")
    return sentence("; ".join(part for part in (", ".join(standing), ", ".join(balls)) if part))
