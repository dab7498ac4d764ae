"""The problems that a play meets: somebody lacking, a ball lacking, a signal that never comes; knows no moments."""

from conewright.model.exercise import Exercise, Script
from conewright.model.layout import standing
from conewright.model.problem import Problem, Severity, Span
from conewright.model.round import Played
from conewright.rehearsal.triggers import said


def _mend(code: str, message: str, where: Span | None, hint: str) -> Problem:
    return Problem(code=code, severity=Severity.MEND, message=message, where=where, hint=hint)


def nobody_there(exercise: Exercise, size: int, *, number: int, name: str, role: str, played: Played) -> Problem:
    """Nobody stands at a place when round `number` (from 1) needs its head."""
    if number > 1:
        which = f"In round {number} nobody stands at {name} any more"
        hint = f'Say who goes to {name} after a round: "Rotation: ... to {name}."'
    else:
        which = f"With {size} children nobody stands at {name}"
        hint = f'Start with one more there: "Start with {_start_words(exercise, size, name)}."'
    return _mend("nobody-there", f"{which}, and step {played.step} needs {role}.", played.span, hint)


def _start_words(exercise: Exercise, size: int, short: str) -> str:
    """Who stands where at the start, with one more at a place and one fewer where most stand."""
    counts = standing(exercise, size)
    fullest = max(counts, key=lambda name: counts[name], default="")
    if counts.get(fullest, 0) > 1:
        counts[fullest] -= 1
    counts[short] = counts.get(short, 0) + 1
    return ", ".join(f"{count} at {name}" for name, count in counts.items() if count)


def no_ball_left(*, number: int, name: str, played: Played) -> Problem:
    """No ball lies at a place when round `number` (from 1) takes one."""
    return _mend(
        "no-ball-left",
        f"In round {number} no ball is at {name} for {played.words} in step {played.step}.",
        played.span,
        f"Say who brings a ball to {name}, or give {name} more balls.",
    )


def never_happens(played: Played) -> Problem:
    """An act waits for what has not happened by then in its round."""
    trigger = played.start
    when = f'"when {said(trigger)}"' if trigger else "something"
    return _mend(
        "never-happens",
        f"Step {played.step} waits for {when}, and that has not happened by then.",
        (trigger.span if trigger else None) or played.span,
        "Name something that happens in an earlier step of the same round.",
    )


def no_time(script: Script) -> Problem:
    """Rounds follow each other and nobody does anything that takes time."""
    hint = "Let somebody play the ball or move."
    return _mend("no-time", "No time passes from round to round.", script.span, hint)
