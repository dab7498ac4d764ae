"""The hard rules: each says why a way of laying out an exercise cannot be used tonight; must not know taste.

RULES hold for a layout whatever its part of the evening, SLOT_RULES for an exercise in one slot. Both stand in the
order in which a coach would ask, the cheap ones first.
"""

from dataclasses import dataclass, replace
from enum import StrEnum
from math import ceil
from typing import Protocol

from conewright.fit.arrangement import Arrangement
from conewright.fit.bag import Taken
from conewright.fit.bench import Bench
from conewright.fit.clock import Slot
from conewright.fit.colours import Colours
from conewright.fit.needs import Needs
from conewright.fit.placing import Placing, least_ground
from conewright.fit.suiting import suit
from conewright.fit.wording import children, counted, metres
from conewright.model.exercise import Exercise
from conewright.model.problem import Severity
from conewright.model.session import Tonight


class Lack(StrEnum):
    """What more of would help; NOTHING where no more of anything would."""

    CHILDREN = "children"
    BALLS = "balls"
    CONES = "cones"
    ADULTS = "adults"
    SPACE = "space"
    NOTHING = "nothing"


@dataclass(frozen=True, slots=True, kw_only=True)
class Failure:
    """Why a layout cannot be used: which rule, the reason in words, and how much of what would do."""

    code: str
    reason: str
    lack: Lack = Lack.NOTHING
    wants: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Attempt:
    """An exercise laid out for tonight as far as it goes; None where it got no further."""

    exercise: Exercise
    arrangement: Arrangement | None
    needs: Needs
    taken: Taken
    colours: Colours | None = None
    placing: Placing | None = None


class Rule(Protocol):
    """One reason a layout may fail."""

    def __call__(self, attempt: Attempt, bench: Bench) -> Failure | None:
        """The failure, or None where the rule holds."""
        ...


def age(attempt: Attempt, bench: Bench) -> Failure | None:
    """The exercise is for other ages."""
    ages = attempt.exercise.ages
    if ages.youngest <= bench.asked.age <= ages.oldest:
        return None
    return Failure(code="age", reason=f"it is for under {ages.youngest} to under {ages.oldest}")


def something_to_do(attempt: Attempt, bench: Bench) -> Failure | None:
    """The text has neither a round nor an open play."""
    if attempt.exercise.script is not None or attempt.exercise.open_play is not None:
        return None
    return Failure(code="empty", reason="its text has no round and no open play")


def numbers(attempt: Attempt, bench: Bench) -> Failure | None:
    """No number of copies holds who is here."""
    if attempt.arrangement is not None:
        return None
    said = attempt.exercise.numbers
    nearest = said.least if bench.asked.here < said.least else said.most
    return Failure(
        code="numbers",
        reason=f"it is for {said.least} to {said.most}, and no copies of it hold {children(bench.asked.here)}",
        lack=Lack.CHILDREN,
        wants=(float(nearest),),
    )


def servers(attempt: Attempt, bench: Bench) -> Failure | None:
    """Adults serve in it, and too few are here."""
    needed = attempt.needs.adults
    if needed <= bench.asked.adults:
        return None
    reason = f"it needs {counted(needed, 'adult')} to serve, {bench.asked.adults} here"
    return Failure(code="adults", reason=reason, lack=Lack.ADULTS, wants=(float(needed),))


def balls(attempt: Attempt, bench: Bench) -> Failure | None:
    """Too few balls at one time."""
    if not attempt.taken.balls_short:
        return None
    needed = attempt.needs.least_balls
    reason = f"it needs {counted(needed, 'ball')}, {bench.asked.balls} here"
    return Failure(code="balls", reason=reason, lack=Lack.BALLS, wants=(float(needed),))


def cones(attempt: Attempt, bench: Bench) -> Failure | None:
    """Too few cones at one time, even with bottles for some."""
    short = attempt.taken.cones_short
    if not short:
        return None
    needed = bench.asked.cones + short
    reason = f"it needs {counted(needed, 'cone')} even with bottles for some, {bench.asked.cones} here"
    return Failure(code="cones", reason=reason, lack=Lack.CONES, wants=(float(needed),))


def space(attempt: Attempt, bench: Bench) -> Failure | None:
    """The copies do not fit the ground, either way round, at any scale allowed."""
    if attempt.placing is not None or attempt.arrangement is None:
        return None
    width, depth = least_ground(attempt.exercise, attempt.arrangement, bench)
    reason = (
        f"it needs {metres(width)} by {metres(depth)} m as written, and does not fit"
        f" {metres(bench.asked.width_m)} by {metres(bench.asked.depth_m)} m even made smaller"
    )
    return Failure(code="space", reason=reason, lack=Lack.SPACE, wants=(float(ceil(width)), float(ceil(depth))))


def runs(attempt: Attempt, bench: Bench) -> Failure | None:
    """A copy of that size has something to mend: it cannot run, or breaks a safety rule."""
    if attempt.arrangement is None or attempt.placing is None:
        return None
    for size in sorted(set(attempt.arrangement.sizes)):
        findings = bench.trial(attempt.exercise, size, attempt.placing.scale).findings
        mend = next((finding for finding in findings if finding.severity is Severity.MEND), None)
        if mend is not None:
            return Failure(code="mend", reason=f"with {size} it does not run: {mend.message}")
    return None


BEFORE_GROUND: tuple[Rule, ...] = (age, something_to_do, numbers, servers, balls, cones)
ON_GROUND: tuple[Rule, ...] = (space, runs)
RULES: tuple[Rule, ...] = (*BEFORE_GROUND, *ON_GROUND)
SAID_SHORT = {
    "age": "for other ages",
    "empty": "without anything to do",
    "numbers": "for other numbers",
    "adults": "short of adults to serve",
    "balls": "short of balls",
    "cones": "short of cones",
    "space": "short of space",
    "mend": "with something to mend at this size",
    "part": "meant for another part of the evening",
    "bout": "with a longer bout than the block",
}


def first_failure(attempt: Attempt, bench: Bench, rules: tuple[Rule, ...] = RULES) -> tuple[int, Failure] | None:
    """The first rule that fails, with its position among the rules; None where all hold."""
    for position, rule in enumerate(rules):
        failure = rule(attempt, bench)
        if failure is not None:
            return position, failure
    return None


class SlotRule(Protocol):
    """One reason an exercise that runs tonight may not fill a slot."""

    def __call__(self, exercise: Exercise, slot: Slot) -> Failure | None:
        """The failure, or None where the rule holds."""
        ...


def part(exercise: Exercise, slot: Slot) -> Failure | None:
    """It does not suit that part of the evening at all."""
    if suit(exercise, slot.job) > 0:
        return None
    return Failure(code="part", reason=f"it is not meant for {slot.job.value}")


def bout(exercise: Exercise, slot: Slot) -> Failure | None:
    """One bout is longer than the block."""
    bout_s = exercise.open_play.bout_s if exercise.open_play else None
    if bout_s is None or bout_s <= 60 * slot.minutes:
        return None
    return Failure(code="bout", reason=f"a bout takes {bout_s / 60:g} min, the block has {slot.minutes}")


SLOT_RULES: tuple[SlotRule, ...] = (part, bout)


def slot_failure(exercise: Exercise, slot: Slot) -> Failure | None:
    """The first slot rule that fails; None where all hold."""
    found = (rule(exercise, slot) for rule in SLOT_RULES)
    return next((failure for failure in found if failure is not None), None)


def with_more(asked: Tonight, failure: Failure) -> Tonight | None:
    """Tonight with what the failure lacks put right; None where nothing would."""
    wants = tuple(round(want) for want in failure.wants)
    if failure.lack is Lack.SPACE:
        return replace(
            asked, width_m=max(asked.width_m, failure.wants[0]), depth_m=max(asked.depth_m, failure.wants[1])
        )
    if failure.lack is Lack.BALLS:
        return replace(asked, balls=wants[0])
    if failure.lack is Lack.CONES:
        return replace(asked, cones=wants[0])
    if failure.lack is Lack.ADULTS:
        return replace(asked, adults=wants[0])
    if failure.lack is Lack.CHILDREN:
        return replace(asked, here=wants[0], keepers=min(asked.keepers, wants[0]))
    return None
