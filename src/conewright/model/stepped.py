"""The exercise a step up or down gives: patches carried out; must not know how it is written, checked or timed."""

from collections.abc import Callable
from dataclasses import replace

from conewright.model.exercise import Exercise
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
    Variant,
)
from conewright.model.written import Act, Contest, Manner, Script, Step

USUAL = Manner()


def stepped(exercise: Exercise, name: str) -> Exercise | None:
    """The exercise with the step of that name put in, its own steps left out; None where there is no such step.

    "As before" builds on the step of the same kind that is written above it, or on the exercise where there is none;
    "as written" always on the exercise. The name of the result is that of the exercise with the step's behind it.
    """
    variant = exercise.variant(name)
    if variant is None:
        return None
    patched = exercise
    for below in (*_below(exercise, variant), variant):
        for patch in below.patches:
            patched = apply(patched, patch)
        if below.numbers is not None:
            patched = replace(patched, numbers=below.numbers, forms=())
    return replace(patched, name=f"{exercise.name}, {variant.name}", variants=())


def _below(exercise: Exercise, variant: Variant) -> tuple[Variant, ...]:
    """The steps a step stands on, the lowest first."""
    if not variant.as_before:
        return ()
    same = [other for other in exercise.variants if other.kind is variant.kind]
    place = same.index(variant)
    if place == 0:
        return ()
    before = same[place - 1]
    return (*_below(exercise, before), before)


def apply(exercise: Exercise, patch: Patch) -> Exercise:
    """The exercise with one patch carried out; what a patch names and is not there leaves the exercise as it is."""
    return CARRIED_OUT[type(patch)](exercise, patch)


def _with_steps(exercise: Exercise, change: Callable[[tuple[Step, ...]], tuple[Step, ...]]) -> Exercise:
    script = exercise.script
    if script is None:
        return exercise
    return replace(exercise, script=replace(script, steps=_numbered(change(script.steps))))


def _with_contests(exercise: Exercise, change: Callable[[Contest], Contest]) -> Exercise:
    return _with_steps(
        exercise,
        lambda steps: tuple(replace(step, contest=change(step.contest)) if step.contest else step for step in steps),
    )


def _numbered(steps: tuple[Step, ...]) -> tuple[Step, ...]:
    return tuple(replace(step, number=number) for number, step in enumerate(steps, start=1))


def _change_manner(exercise: Exercise, patch: ChangeManner) -> Exercise:
    def act(one: Act) -> Act:
        meant = one.who == patch.who and one.verb is patch.verb
        return replace(one, manner=_laid_over(one.manner, patch.manner)) if meant else one

    def change(steps: tuple[Step, ...]) -> tuple[Step, ...]:
        return tuple(
            replace(step, acts=tuple(map(act, step.acts))) if step.number == patch.step else step for step in steps
        )

    return _with_steps(exercise, change)


def _laid_over(manner: Manner, said: Manner) -> Manner:
    """The adverbs that are said now, the others as they were."""
    fields = ("touches", "weight", "foot", "pace", "outside", "lofted")
    new = {name: getattr(said, name) for name in fields if getattr(said, name) != getattr(USUAL, name)}
    return replace(manner, **new)


def _instead_of(exercise: Exercise, patch: InsteadOf) -> Exercise:
    return _with_steps(
        exercise, lambda steps: tuple(patch.step if step.number == patch.step.number else step for step in steps)
    )


def _after_step(exercise: Exercise, patch: AfterStep) -> Exercise:
    def change(steps: tuple[Step, ...]) -> tuple[Step, ...]:
        return tuple(one for step in steps for one in ((step, patch.step) if step.number == patch.after else (step,)))

    return _with_steps(exercise, change)


def _leave_out(exercise: Exercise, patch: LeaveOut) -> Exercise:
    return _with_steps(exercise, lambda steps: tuple(step for step in steps if step.number != patch.number))


def _one_more(exercise: Exercise, patch: OneMore) -> Exercise:
    script: Script | None = exercise.script
    if script is not None and patch.rotation is not None:
        script = replace(script, rotations=(*script.rotations, patch.rotation))
    start = exercise.start
    if start is not None and (start.counts or start.rest):
        start = replace(start, counts=(*start.counts, (patch.place.name, 1)))
    return replace(exercise, places=(*exercise.places, patch.place), script=script, start=start)


def _shift(exercise: Exercise, patch: Shift) -> Exercise:
    places = tuple(replace(p, at=patch.at) if p.name == patch.name else p for p in exercise.places)
    things = tuple(replace(t, at=patch.at) if t.name == patch.name else t for t in exercise.things)
    return replace(exercise, places=places, things=things)


def _resize(exercise: Exercise, patch: Resize) -> Exercise:
    play = exercise.open_play
    if play is not None:
        return replace(exercise, open_play=replace(play, width_m=patch.width_m, depth_m=patch.depth_m))
    return _with_contests(exercise, lambda contest: replace(contest, width_m=patch.width_m, depth_m=patch.depth_m))


def _other_teams(exercise: Exercise, patch: OtherTeams) -> Exercise:
    play = exercise.open_play
    return exercise if play is None else replace(exercise, open_play=replace(play, teams=patch.teams))


def _other_length(exercise: Exercise, patch: OtherLength) -> Exercise:
    play = exercise.open_play
    if play is not None:
        return replace(exercise, open_play=replace(play, bout_s=patch.seconds))
    return _with_contests(exercise, lambda contest: replace(contest, limit_s=patch.seconds))


CARRIED_OUT: dict[type, Callable[..., Exercise]] = {
    ChangeManner: _change_manner,
    InsteadOf: _instead_of,
    AfterStep: _after_step,
    LeaveOut: _leave_out,
    OneMore: _one_more,
    Shift: _shift,
    Resize: _resize,
    OtherTeams: _other_teams,
    OtherLength: _other_length,
}
