"""Writing an exercise in its one canonical form; must not know how it is read.

Reading what is written here gives the same exercise, apart from spans; comments are not kept.
"""

from dataclasses import replace
from itertools import groupby

from conewright.model.exercise import (
    Contest,
    Exercise,
    Form,
    NextRound,
    OpenPlay,
    Place,
    Script,
    SideOrder,
    Sides,
    Start,
    Step,
    Thing,
)
from conewright.model.geometry import ORIGIN
from conewright.notation.amounts import capital, figure, listed, minutes, one_line, people, point, size
from conewright.notation.boxes import usual_balls
from conewright.notation.clauses import (
    beside,
    contest_clause,
    meeting_clause,
    outcome_clause,
    places_clause,
    range_clause,
    rotation_clause,
    team_clause,
    team_name,
    things_clause,
)
from conewright.notation.draft import ANY_AGE
from conewright.notation.phrases import acts_phrase, trigger_phrase
from conewright.notation.variant_phrases import variant_phrases
from conewright.notation.words import (
    CHOICES,
    COACH,
)


def write(exercise: Exercise) -> str:
    """The text of an exercise: header, ground, round, open play, other numbers, steps up and down, remarks.

    A blank line stands between them.
    """
    parts = (
        _header(exercise),
        _ground(exercise),
        _script(exercise, exercise.script) if exercise.script else [],
        _play(exercise.open_play) if exercise.open_play else [],
        [_form(form) for form in exercise.forms],
        variant_phrases(exercise),
        _remarks(exercise),
    )
    return "\n\n".join("\n".join(lines) for lines in parts if lines) + "\n"


def _header(exercise: Exercise) -> list[str]:
    lines = [
        _keyed("exercise", exercise.name),
        _keyed("kind", exercise.kind),
        _for(exercise),
        _keyed("aim", ", ".join(exercise.aims)),
        _keyed("good for", ", ".join(exercise.good_for)),
        _keyed("space", size(exercise.space.width_m, exercise.space.depth_m) if exercise.space else ""),
    ]
    return [line for line in lines if line]


def _keyed(key: str, value: str) -> str:
    value = one_line(value)
    return f"{key}: {value}" if value else ""


def _for(exercise: Exercise) -> str:
    held = exercise.numbers
    ages = exercise.ages
    told = range_clause(held.least, held.most)
    told += " player" if held.most == 1 else " players"
    if ages != ANY_AGE:
        older = "" if ages.oldest == ages.youngest else f" to under {ages.oldest}"
        told += f", under {ages.youngest}{older}"
    return f"for {told}" + (f"; best with {held.best}" if held.best is not None else "")


def _remarks(exercise: Exercise) -> list[str]:
    faults = (f"{fault.fault} -> {fault.remedy}" if fault.remedy else fault.fault for fault in exercise.faults)
    lines = [
        *(_keyed("cue", cue) for cue in exercise.cues),
        *(_keyed("fault", fault) for fault in faults),
        _keyed("score", exercise.score),
        *(_keyed("caution", caution) for caution in exercise.cautions),
        *(_keyed("note", note) for note in exercise.notes),
    ]
    return [line for line in lines if line]


# --- the ground ---


def _ground(exercise: Exercise) -> list[str]:
    places = [f"{places_clause(tuple(alike))}." for _, alike in groupby(exercise.places, key=_place_kind)]
    things = [f"{things_clause(tuple(alike))}." for _, alike in groupby(exercise.things, key=_thing_kind)]
    start = [f"{capital(_start(exercise.start))}."] if exercise.start else []
    return [*places, *things, *start]


def _place_kind(place: Place) -> Place:
    """What neighbouring places must share to stand in one sentence."""
    return replace(place, name="", at=ORIGIN, span=None)


def _thing_kind(thing: Thing) -> Thing:
    return replace(thing, name="", at=ORIGIN, span=None)


def _start(start: Start) -> str:
    """Who stands where, beginning with a small letter, without the full stop."""
    if start.even:
        return "start with the same number in each line"
    told = [f"{people(count)} at {name}" for name, count in start.counts]
    rest = "the rest" if told else "everyone"
    if len(start.rest) > 1:
        told.append(f"{rest} shared between {listed(start.rest)}")
    elif start.rest:
        told.append(f"{rest} at {start.rest[0]}")
    return f"start with {', '.join(told)}"


# --- the round ---


def _script(exercise: Exercise, script: Script) -> list[str]:
    lines = [_opening(script.sides)]
    for step in script.steps:
        lines.append(_step(exercise, step))
        lines += _outcomes(step.contest) if step.contest else []
    lines += [_next_round(script.next_round)] if script.next_round else []
    lines += [f"{capital(rotation_clause(rotation))}." for rotation in script.rotations]
    lines += ["Change sides at half time."] if script.mirrored_at_half_time else []
    return lines


def _opening(sides: Sides | None) -> str:
    if sides is None:
        return "Each round:"
    words = f"(call it {sides.word}{f', the other {sides.other}' if sides.other else ''})"
    if sides.order is SideOrder.HALF_TIME:
        return f"Each round, {', then '.join(sides.places)} from half time {words}:"
    if sides.order is SideOrder.IN_TURN:
        return f"Each round, {listed(sides.places)} in turn {words}:"
    return f"Each round, {sides.chooser or COACH} {CHOICES[sides.order][0]} {listed(sides.places, last='or')} {words}:"


def _step(exercise: Exercise, step: Step) -> str:
    acts = f" {acts_phrase(exercise, step.acts)}." if step.acts else ""
    return f"{step.number}.{acts}{f' {capital(contest_clause(step.contest))}.' if step.contest else ''}"


def _outcomes(contest: Contest) -> list[str]:
    return [f"{capital(outcome_clause(contest, outcome))}." for outcome in contest.outcomes]


def _next_round(following: NextRound) -> str:
    told = [f"The next round starts {trigger_phrase(following.trigger)}."] if following.trigger else []
    if following.in_flight == 1:
        told.append("Only one round runs at a time.")
    elif following.in_flight is not None:
        told.append(f"{capital(people(following.in_flight))} rounds may run at once.")
    return " ".join(told)


# --- open play and other numbers ---


def _play(play: OpenPlay) -> list[str]:
    middle = "" if play.middle == ORIGIN else f", middle at {point(play.middle)}"
    told = f"Open play in {size(play.width_m, play.depth_m)}{middle}: {meeting_clause(play)}"
    told += f"{',' if beside(play) else ''} on {listed(play.on)}" if play.on else ""
    lines = [f"{told}.", " ".join(_details(play)), _free("Swap", play.swap), _free("Restart", play.restart)]
    return [line for line in (*lines, *(_free("Rule", rule) for rule in play.rules)) if line]


def _details(play: OpenPlay) -> list[str]:
    odd = {"shares": "One over shares a ball.", "rests in turn": "One over rests in turn.", "neutral": ""}
    told = [odd.get(play.odd_one, f"One over joins {team_name(play.odd_one)}.")]
    told.append(f"Bouts of {minutes(play.bout_s)}." if play.bout_s is not None else "")
    if play.balls != usual_balls(play.kind, play.teams):
        number = "no" if play.balls == 0 else str(play.balls)
        told.append(f"With {number} {'ball' if play.balls < 2 else 'balls'}.")
    return [sentence for sentence in told if sentence]


def _free(key: str, text: str) -> str:
    line = _keyed(key, text)
    return f"{line}." if line else ""


def _form(form: Form) -> str:
    told = []
    if form.copies != 1 or form.apart_m is not None or form.mirrored:
        told.append(f"{people(form.copies)} {'copy' if form.copies == 1 else 'copies'}")
    told += [f"{figure(form.apart_m)} m apart"] if form.apart_m is not None else []
    told += ["mirrored"] if form.mirrored else []
    told += [team_clause(team) for team in form.teams]
    told += [_start(form.start)] if form.start else []
    return f"With {range_clause(form.least, form.most)}: {', '.join(told) or 'as it stands'}."
