"""What changed between a session and its refit, in a coach's words; must not know how either was made."""

from conewright.fit.options import Choice
from conewright.fit.wording import children
from conewright.model.problem import Problem, Severity
from conewright.model.session import Block, Session


def changes(before: Session, after: Session, choices: tuple[Choice, ...]) -> tuple[Problem, ...]:
    """One remark for each block that is not as it was, and one where nothing changed."""
    left = list(before.blocks)
    said: list[Problem] = []
    for block in after.blocks:
        old = next((other for other in left if other.job is block.job), None)
        if old is not None:
            left.remove(old)
        said += _change(old, block, choices)
    if not said:
        return (_know("refit-same", f"With {children(after.tonight.here)} everything stays as it was."),)
    return tuple(said)


def _change(old: Block | None, new: Block, choices: tuple[Choice, ...]) -> tuple[Problem, ...]:
    name = new.exercise.name
    if old is None:
        return (_know("refit-new", f"New: {name}, {new.minutes:g} min."),)
    if old.exercise.name != name:
        reason = _reason(old.exercise.name, choices)
        message = f"{name} takes the place of {old.exercise.name}{f': {reason}' if reason else ''}."
        return (_know("refit-replaced", message),)
    if old.groups != new.groups:
        return (_know("refit-groups", f"{name}: {new.groups}. Before: {old.groups}."),)
    if (old.start_min, old.minutes) != (new.start_min, new.minutes):
        return (_know("refit-minutes", f"{name}: {new.minutes:g} min instead of {old.minutes:g}."),)
    if [copy.scale for copy in old.copies] != [copy.scale for copy in new.copies]:
        return (_know("refit-size", f"{name}: laid out at another size than before."),)
    return ()


def _reason(name: str, choices: tuple[Choice, ...]) -> str:
    choice = next((choice for choice in choices if choice.exercise.name == name), None)
    if choice is None:
        return "it is no longer on the shelf"
    if choice.failure is not None:
        return choice.failure.reason
    return "it would leave children resting" if choice.option and choice.option.arrangement.resting else ""


def _know(code: str, message: str) -> Problem:
    return Problem(code=code, severity=Severity.KNOW, message=message)
