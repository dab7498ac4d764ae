"""The problems of what a text leaves unsaid of a round: balls, ways after the last act; must not know of time."""

from conewright.model.exercise import Act
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
        hint=f'Write "Rotation: {walker.role} to {proposal}." or end the sentence with ", then runs to ...".',
    )


def left_standing(walker: Walker) -> Problem:
    """Somebody ends the round away from any place."""
    return Problem(
        code="ends-nowhere",
        severity=Severity.MEND,
        message=f"{walker.role} ends the round away from any place, and nothing says where it goes.",
        where=walker.last_span,
        hint=f'Write "Rotation: {walker.role} to {walker.place}." or end the sentence with ", then runs to ...".',
    )
