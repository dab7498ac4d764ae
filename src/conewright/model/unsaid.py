"""The problems of what a text leaves unsaid of a round: balls, ways after the last act; must not know of time."""

from collections import Counter

from conewright.model.exercise import Act, Exercise
from conewright.model.problem import Problem, Severity
from conewright.model.ways import Walker


def no_ball(walker: Walker, act: Act, step: int) -> Problem:
    """Somebody needs a ball and nobody has played it one."""
    return Problem(
        code="no-ball",
        severity=Severity.MEND,
        message=f"{act.who} has no ball to {act.verb} in step {step}.",
        where=act.span,
        hint=f"Say who plays it to {act.who} before, or give {walker.place} balls: "
        f'"{walker.place} ... is a line with the ball."',
    )


def asked_where(walker: Walker, proposal: str) -> Problem:
    """Somebody passes more than once and nothing says where it goes."""
    return Problem(
        code="where-after-two-passes",
        severity=Severity.LOOK,
        message=f"{walker.role} passes more than once in the round and nothing says where it goes; "
        f"taken as {proposal}, after the last pass.",
        where=walker.last_span,
        hint=f'Write "Rotation: {walker.role} to {proposal}." or end the sentence with ", then runs to {proposal}".',
    )


def left_standing(exercise: Exercise, walkers: list[Walker]) -> list[Problem]:
    """Those who end the round away from any place; proposed is a place that nobody comes to."""
    found = []
    for walker in walkers:
        place = exercise.place(walker.place)
        if walker.gone_to or not walker.moved or place is None or place.adult or place.keeper:
            continue
        goal = _left_empty(walkers) or walker.place
        message = f"{walker.role} ends the round away from any place, and nothing says where it goes."
        hint = f'Write "Rotation: {walker.role} to {goal}." or end the sentence with ", then runs to {goal}".'
        where = walker.last_span
        found.append(Problem(code="ends-nowhere", severity=Severity.MEND, message=message, where=where, hint=hint))
    return found


def _left_empty(walkers: list[Walker]) -> str:
    net = Counter(walker.place for walker in walkers)
    net.subtract(walker.gone_to or ("" if walker.moved else walker.place) for walker in walkers)
    return next((name for name, lacks in net.items() if lacks > 0), "")
