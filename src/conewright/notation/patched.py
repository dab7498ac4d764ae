"""Whether what a change names is there in the exercise it changes; must not know how the change is written."""

from collections.abc import Callable

from conewright.model.exercise import Act, Exercise, Step
from conewright.model.stepped import apply
from conewright.model.variant import (
    AfterStep,
    ChangeManner,
    InsteadOf,
    LeaveOut,
    OneMore,
    OtherLength,
    OtherTeams,
    Patch,
    Resize,
    Shift,
)
from conewright.notation.cursor import Cursor
from conewright.notation.phrases import acts_phrase
from conewright.notation.words import VERBS


def patched(cursor: Cursor, below: Exercise, patch: Patch) -> Exercise:
    """The exercise with a change carried out; what it names and is not there is told."""
    if cursor.slips == 0:
        _TELLERS[type(patch)](cursor, below, patch)
    return apply(below, patch)


def _steps(exercise: Exercise) -> tuple[Step, ...]:
    return exercise.script.steps if exercise.script else ()


def _tell(cursor: Cursor, code: str, message: str, hint: str) -> None:
    """Tell what is not there, once a text."""
    if message not in cursor.findings.said:
        cursor.findings.said.add(message)
        cursor.note(code, 0, message, hint)


def _step(cursor: Cursor, below: Exercise, number: int) -> Step | None:
    """The step of that number; told where there is none, unless it may be one that could not be read."""
    steps = _steps(below)
    found = next((step for step in steps if step.number == number), None)
    if found is None and not cursor.findings.steps_unsure:
        _tell(cursor, "no-such-step", f"There is no step {number}.", _steps_there(len(steps)))
    return found


def _steps_there(count: int) -> str:
    if count == 0:
        return "There are no numbered steps here."
    return f"The steps are 1 to {count} here." if count > 1 else "There is one step here."


def _tell_manner(cursor: Cursor, below: Exercise, patch: ChangeManner) -> None:
    step = _step(cursor, below, patch.step)
    if step is None or cursor.findings.steps_unsure:
        return
    if any(act.who == patch.who and act.verb is patch.verb for act in step.acts):
        return
    base = next(word.base for word in VERBS if word.verb is patch.verb)
    said = f'"{acts_phrase(below, step.acts)}"' if step.acts else "a contest"
    told = f"{patch.who} does not {base} in step {patch.step}."
    _tell(cursor, "no-such-act", told, f"Step {patch.step} has {said}.")


def _tell_instead(cursor: Cursor, below: Exercise, patch: InsteadOf) -> None:
    if _step(cursor, below, patch.step.number) is not None:
        _tell_starts(cursor, len(_steps(below)), patch.step.acts)


def _tell_after(cursor: Cursor, below: Exercise, patch: AfterStep) -> None:
    if _step(cursor, below, patch.after) is not None:
        _tell_starts(cursor, len(_steps(below)) + 1, patch.step.acts)


def _tell_starts(cursor: Cursor, last: int, acts: tuple[Act, ...]) -> None:
    named = (act.start.step for act in acts if act.start is not None and act.start.step is not None)
    missing = next((number for number in named if number > last), None)
    if missing is not None and not cursor.findings.steps_unsure:
        _tell(cursor, "no-such-step", f"There is no step {missing}.", _steps_there(last))


def _tell_leave_out(cursor: Cursor, below: Exercise, patch: LeaveOut) -> None:
    _step(cursor, below, patch.number)


def _tell_one_more(cursor: Cursor, below: Exercise, patch: OneMore) -> None:
    name = patch.place.name
    if below.place(name) is not None or below.thing(name) is not None or cursor.names.is_word(name):
        told = f'There are two places or things called "{name}".'
        cursor.note("name-twice", 0, told, "Give one of them another name.")


def _tell_shift(cursor: Cursor, below: Exercise, patch: Shift) -> None:
    if cursor.names.is_word(patch.name):
        cursor.note("not-a-place", 0, f"{patch.name} is a word for one of the sides.", "Name the place itself.")


def _may_have_box(cursor: Cursor, below: Exercise) -> bool:
    """True where there is open play or a contest, or one that could not be read."""
    lost = cursor.findings.lost.intersection(("contest", "open play"))
    return below.open_play is not None or bool(lost) or any(step.contest for step in _steps(below))


def _tell_resize(cursor: Cursor, below: Exercise, patch: Resize) -> None:
    if not _may_have_box(cursor, below):
        hint = 'Only a contest and open play have one. Places are moved one by one: "Stem stands at 0, 6".'
        _tell(cursor, "no-box", "There is no box here that could have another size.", hint)


def _tell_length(cursor: Cursor, below: Exercise, patch: OtherLength) -> None:
    if not _may_have_box(cursor, below):
        hint = "Only open play has bouts, and only a contest lasts so long at most. Leave it out."
        _tell(cursor, "no-box", "There is nothing here that lasts so long.", hint)


def _tell_teams(cursor: Cursor, below: Exercise, patch: OtherTeams) -> None:
    if below.open_play is None and "open play" not in cursor.findings.lost:
        _tell(cursor, "no-open-play", "There are no teams: this is no open play.", "Leave the teams out.")


_TELLERS: dict[type, Callable[..., None]] = {
    ChangeManner: _tell_manner,
    InsteadOf: _tell_instead,
    AfterStep: _tell_after,
    LeaveOut: _tell_leave_out,
    OneMore: _tell_one_more,
    Shift: _tell_shift,
    Resize: _tell_resize,
    OtherTeams: _tell_teams,
    OtherLength: _tell_length,
}
