"""Why nothing fits, and what would help, in a coach's words; must not know what was chosen."""

from collections import Counter
from dataclasses import replace
from math import ceil

from conewright.fit.bench import Bench, Stop
from conewright.fit.clock import Slot
from conewright.fit.options import Choice, choice_for
from conewright.fit.rules import SAID_SHORT, Failure, Lack, slot_failure, with_more
from conewright.fit.suiting import OF_THE_KIND, suit
from conewright.fit.wording import PART_NAMES, children, counted, listed, metres, number
from conewright.model.problem import Problem, Severity
from conewright.model.session import Tonight

LARGE_GROUP = 30  # children beyond which parting the group is tried first
MOST_REMEDIES = 4  # amounts tried out for the hint


def nothing_fits(choices: tuple[Choice, ...], bench: Bench, *, stop: Stop | None = None) -> Problem:
    """Nothing on the shelf runs tonight: how many fail for what, and the least that would make some run."""
    asked = bench.asked
    if not choices:
        return Problem(
            code="shelf-empty",
            severity=Severity.MEND,
            message="There is no exercise on the shelf.",
            hint="Write one, or take those that come with Conewright.",
        )
    failures = tuple(choice.failure for choice in choices if choice.failure is not None)
    ground = f"{metres(asked.width_m)} by {metres(asked.depth_m)} m"
    balls = counted(asked.balls, "ball") if asked.balls else "no ball"
    return Problem(
        code="nothing-fits",
        severity=Severity.MEND,
        message=f"Nothing fits {children(asked.here)} under {asked.age} on {ground} with {balls}: {_counts(failures)}.",
        hint=_remedy(choices, bench, stop) or "Write one for this number, or change what is said about tonight.",
    )


def _counts(failures: tuple[Failure, ...]) -> str:
    counts = Counter(failure.code for failure in failures)
    return listed(tuple(f"{count} {SAID_SHORT[code]}" for code, count in counts.most_common()))


def _remedy(choices: tuple[Choice, ...], bench: Bench, stop: Stop | None) -> str:
    """The least amount of what is lacking most that makes something run, tried out."""
    for words, asked in _amounts(choices, bench.asked)[:MOST_REMEDIES]:
        if stop is not None and stop():
            return ""
        richer = replace(bench, asked=asked)
        running = sum(1 for choice in choices if choice_for(choice.exercise, richer).option is not None)
        if running:
            return f"With {words} there {'is' if running == 1 else 'are'} {number(running)}."
    return ""


def _amounts(choices: tuple[Choice, ...], asked: Tonight) -> list[tuple[str, Tonight]]:
    """What more of what might help: the commonest lack first, each in small amounts first; parts of a large group."""
    lacking = tuple(choice.failure for choice in choices if choice.failure and choice.failure.lack is not Lack.NOTHING)
    common = Counter(failure.lack for failure in lacking)
    ordered = sorted(lacking, key=lambda failure: (-common[failure.lack], _size(failure, asked)))
    tried = ((_words(failure), with_more(asked, failure)) for failure in ordered)
    richer = dict.fromkeys((words, more) for words, more in tried if more is not None)
    return [*(_parted(asked) if asked.here > LARGE_GROUP else ()), *richer]


def _parted(asked: Tonight) -> tuple[tuple[str, Tonight], ...]:
    """A large group in parts, each with everything there is: one after the other, or each with its own."""
    return tuple(
        (
            f"{number(parts)} groups of at most {ceil(asked.here / parts)}, each with this ground and kit,",
            replace(asked, here=ceil(asked.here / parts), keepers=0),
        )
        for parts in (2, 3, 4)
    )


def _size(failure: Failure, asked: Tonight) -> float:
    if failure.lack is Lack.SPACE:
        return failure.wants[0] * failure.wants[1]
    return abs(failure.wants[0] - asked.here) if failure.lack is Lack.CHILDREN else failure.wants[0]


def _words(failure: Failure) -> str:
    first = round(failure.wants[0])
    return {
        Lack.CHILDREN: children(first),
        Lack.BALLS: counted(first, "ball"),
        Lack.CONES: counted(first, "cone"),
        Lack.ADULTS: counted(first, "adult"),
        Lack.SPACE: f"{first} by {round(failure.wants[-1])} m",
        Lack.NOTHING: "",
    }[failure.lack]


def nothing_made_for(slot: Slot, choices: tuple[Choice, ...], bench: Bench) -> Problem:
    """Why no exercise made for a part of the evening can fill it tonight."""
    part = PART_NAMES[slot.job]
    made = tuple(choice for choice in choices if suit(choice.exercise, slot.job) >= OF_THE_KIND)
    if not made:
        message = f"No exercise on the shelf is made for {part}."
    else:
        failures = tuple(failure for failure in (_why_not(choice, slot) for choice in made) if failure is not None)
        counts = _counts(failures) or "all are needed elsewhere"
        message = f"Nothing made for {part} fits {children(bench.asked.here)} tonight: {counts}."
    return Problem(
        code="part-unfilled",
        severity=Severity.LOOK,
        message=message,
        hint=f'Write "good for: {slot.job.value}" in an exercise that serves.',
    )


def _why_not(choice: Choice, slot: Slot) -> Failure | None:
    return choice.failure if choice.option is None else slot_failure(choice.exercise, slot)


def failures_by_name(choices: tuple[Choice, ...]) -> tuple[tuple[str, str], ...]:
    """For each exercise that cannot be used tonight its name and the reason."""
    return tuple((choice.exercise.name, choice.failure.reason) for choice in choices if choice.failure is not None)
