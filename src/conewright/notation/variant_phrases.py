"""Steps up and down in words: "harder ...: as before, but ..."; must not know how they are read."""

from collections.abc import Callable
from dataclasses import replace

from conewright.model.exercise import Act, Exercise, OpenPlay, PlayKind, Rotation, Step
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
    Variant,
    VariantKind,
)
from conewright.notation.amounts import minutes, point, size
from conewright.notation.clauses import (
    contest_clause,
    how_often,
    meeting_clause,
    numbers_clause,
    outcome_clause,
    places_clause,
    rotation_clause,
)
from conewright.notation.phrases import act_phrase, acts_phrase
from conewright.notation.words import BASES, VARIANTS


def variant_phrases(exercise: Exercise) -> list[str]:
    """Every step up or down as a sentence, with the sentence of its own numbers behind it."""
    below: dict[VariantKind, Exercise] = {}
    told = []
    for variant in exercise.variants:
        base = below.get(variant.kind, exercise) if variant.as_before else exercise
        sentence, below[variant.kind] = _variant(base, variant)
        told.append(sentence)
    return told


def _variant(base: Exercise, variant: Variant) -> tuple[str, Exercise]:
    """The sentence, and the exercise it gives: what a change says depends on what stands before it."""
    changes = []
    for patch in variant.patches:
        changes.append(patch_phrase(base, patch))
        base = apply(base, patch)
    as_it_is = next(phrase for phrase, as_before in BASES.items() if as_before is variant.as_before)
    told = f'{VARIANTS[variant.kind]} "{variant.name}": {as_it_is}, but {"; ".join(changes)}.'
    told += f" For {numbers_clause(variant.numbers)}." if variant.numbers else ""
    return told, base


def patch_phrase(below: Exercise, patch: Patch) -> str:
    """One change, as it is said of the exercise it changes."""
    return _PHRASES[type(patch)](below, patch)


def _manner(below: Exercise, patch: ChangeManner) -> str:
    act = Act(who=patch.who, verb=patch.verb, manner=patch.manner)
    return f"in {patch.step} {patch.who} {act_phrase(below, act)}"


def _instead(below: Exercise, patch: InsteadOf) -> str:
    return f"instead of {patch.step.number}: {_sentence(below, patch.step)}"


def _after(below: Exercise, patch: AfterStep) -> str:
    return f"after {patch.after}: {_sentence(below, patch.step)}"


def _sentence(below: Exercise, step: Step) -> str:
    told = [acts_phrase(below, step.acts)] if step.acts else []
    if step.contest is not None:
        told.append(contest_clause(step.contest))
        told += [outcome_clause(step.contest, outcome) for outcome in step.contest.outcomes]
    return "; ".join(told)


def _leave_out(below: Exercise, patch: LeaveOut) -> str:
    return f"leave out {patch.number}"


def _one_more(below: Exercise, patch: OneMore) -> str:
    told = f"one more: {places_clause((patch.place,))}"
    return f"{told}; {_relief(patch.place.name, patch.rotation)}" if patch.rotation else told


def _relief(name: str, rotation: Rotation) -> str:
    """ "Shadow changes with Left every 6 rounds" where that is all the rotation says."""
    moves = tuple((move.who, move.to, move.brings_ball_to) for move in rotation.moves)
    other = moves[0][1] if moves else ""
    if moves == ((name, other, None), (other, name, None)):
        return f"{name} changes with {other} {how_often(rotation) or 'every round'}"
    return rotation_clause(rotation)


def _shift(below: Exercise, patch: Shift) -> str:
    return f"{patch.name} stands at {point(patch.at)}"


def _resize(below: Exercise, patch: Resize) -> str:
    return f"in {size(patch.width_m, patch.depth_m)}"


def _teams(below: Exercise, patch: OtherTeams) -> str:
    play = below.open_play or OpenPlay(width_m=0.0, depth_m=0.0, kind=PlayKind.GAME)
    return meeting_clause(replace(play, teams=patch.teams))


def _length(below: Exercise, patch: OtherLength) -> str:
    return f"{'bouts of' if below.open_play else 'at most'} {minutes(patch.seconds)}"


_PHRASES: dict[type, Callable[..., str]] = {
    ChangeManner: _manner,
    InsteadOf: _instead,
    AfterStep: _after,
    LeaveOut: _leave_out,
    OneMore: _one_more,
    Shift: _shift,
    Resize: _resize,
    OtherTeams: _teams,
    OtherLength: _length,
}
