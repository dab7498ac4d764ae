"""Steps up and down: what each changes, and whether it changes more than one demand at once; must not know of time."""

from collections.abc import Hashable, Iterator
from dataclasses import fields, replace

from conewright.checks.case import Case, Check, know, look
from conewright.model.exercise import Act, Exercise, Manner, Step, TargetKind
from conewright.model.problem import Problem
from conewright.model.stepped import apply, stepped
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
from conewright.notation.amounts import capital, listed
from conewright.notation.spans import without_spans
from conewright.notation.variant_phrases import patch_phrase

NOTHING = Step(number=0)
SPACE = "space"
CHOSEN = (VariantKind.HARDER, VariantKind.EASIER)  # the others answer to what is lacking, and change what they must


def steps_change_one_demand(exercise: Exercise) -> tuple[Problem, ...]:
    """What every step changes (`know`), and which changes more than one demand at once though nobody asks (`look`).

    Demands are an adverb, other acts of a child in a sentence, one more place, the space, the teams, the time.
    """
    return tuple(problem for variant in exercise.variants for problem in _problems(exercise, variant))


def _problems(exercise: Exercise, variant: Variant) -> Iterator[Problem]:
    below = stands_on(exercise, variant)
    count = len(set(demands(below, variant)))
    phrases = _phrases(below, variant)
    name = f'{capital(variant.kind.value)} "{variant.name}"'
    if count > 1 and variant.kind in CHOSEN:
        told = listed([f'"{phrase}"' for phrase in phrases])
        yield look(
            "step-two-demands", f"{name} changes {count} demands at once: {told}.", variant.span, _apart(phrases)
        )
    else:
        told = listed([f'"{phrase}"' for phrase in phrases]) if count else "nothing that is asked of anybody"
        yield know("step-changes", f"{name} changes {told}.", variant.span)


def _apart(phrases: tuple[str, ...]) -> str:
    """How to make two steps of one."""
    if len(phrases) > 1:
        return f'Keep "{phrases[0]}" and put the rest into a step of its own below it, "as before, but ...".'
    return 'Change what one child does first, and put the rest into a step of its own below it, "as before, but ...".'


def stands_on(exercise: Exercise, variant: Variant) -> Exercise:
    """The exercise a step changes: with the step below it, or as it is written."""
    above = exercise.variants[: exercise.variants.index(variant)]
    below = next((other for other in reversed(above) if other.kind is variant.kind), None)
    if below is None or not variant.as_before:
        return exercise
    return stepped(exercise, below.name) or exercise


def _phrases(below: Exercise, variant: Variant) -> tuple[str, ...]:
    told = []
    for patch in variant.patches:
        told.append(patch_phrase(below, patch))
        below = apply(below, patch)
    return tuple(told)


# --- what is asked anew ---


def demands(below: Exercise, variant: Variant) -> Iterator[Hashable]:
    """A mark for each thing that is asked anew or no more; the same mark twice is one demand.

    The same adverb asked of several children is one demand, and so are several places that move.
    """
    for patch in variant.patches:
        yield from _demands(below, patch)
        below = apply(below, patch)


def _demands(below: Exercise, patch: Patch) -> Iterator[Hashable]:
    if isinstance(patch, ChangeManner):
        yield from _other_acts(_step(below, patch.step), _step(apply(below, patch), patch.step))
    elif isinstance(patch, InsteadOf):
        yield from _other_acts(_step(below, patch.step.number), patch.step)
    elif isinstance(patch, AfterStep):
        yield from _other_acts(NOTHING, patch.step)
    elif isinstance(patch, LeaveOut):
        yield "less", patch.number
    elif isinstance(patch, OneMore):
        yield "one more", patch.place.name
    elif isinstance(patch, Shift | Resize):
        yield SPACE
    elif isinstance(patch, OtherTeams):
        yield "teams"
    elif isinstance(patch, OtherLength):
        yield "length"


def _step(exercise: Exercise, number: int) -> Step:
    steps = exercise.script.steps if exercise.script else ()
    return next((step for step in steps if step.number == number), NOTHING)


def _other_acts(old: Step, new: Step) -> Iterator[Hashable]:
    """What one sentence asks and the other does not: child by child, and its contest."""
    if old == new:
        return
    for who in dict.fromkeys(act.who for act in (*old.acts, *new.acts)):
        before, after = _acts_of(old, who), _acts_of(new, who)
        verbs = tuple(act.verb for act in before), tuple(act.verb for act in after)
        if verbs[0] != verbs[1]:
            yield "acts", *verbs
            continue
        for one, other in zip(before, after, strict=True):
            if one != other:
                yield from _another_way(one, other)
    if without_spans(old.contest) != without_spans(new.contest):
        yield "contest"


def _acts_of(step: Step, who: str) -> tuple[Act, ...]:
    return tuple(act for act in step.acts if act.who == who)


def _another_way(old: Act, new: Act) -> Iterator[Hashable]:
    """How two acts of one child with one verb differ: each adverb by itself, a spot that has moved, all the rest."""
    for field in fields(Manner):
        value = getattr(new.manner, field.name)
        if value != getattr(old.manner, field.name):
            yield "manner", field.name, value
    if old.target != new.target:
        spots = [act.target is not None and act.target.kind is TargetKind.POINT for act in (old, new)]
        yield SPACE if all(spots) else ("target", new.verb)
    starts = [replace(act.start, span=None) if act.start else None for act in (old, new)]
    if starts[0] != starts[1] or (old.via, old.seconds, old.what) != (new.via, new.seconds, new.what):
        yield "when and how", new.verb


def _check(case: Case) -> tuple[Problem, ...]:
    return steps_change_one_demand(case.exercise)


CHECKS = (
    Check(
        codes=("step-two-demands", "step-changes"),
        why="One new demand at a time: where two come at once, nobody sees which one made it break down.",
        run=_check,
    ),
)
