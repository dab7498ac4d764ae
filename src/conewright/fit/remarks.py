"""What is to be said about the evening as a whole; must not know how it was chosen."""

from collections import Counter

from conewright.fit.bench import Bench
from conewright.fit.needs import added_bibs
from conewright.fit.suiting import spoken_of, stems
from conewright.fit.wording import counted, listed, percent
from conewright.model.exercise import Bib
from conewright.model.problem import Problem, Severity
from conewright.model.session import Block


def remarks(
    blocks: tuple[Block, ...], bench: Bench, *, rolling_share: float, close_left_out: bool
) -> tuple[Problem, ...]:
    """Remarks on aim, repetition, the ball rolling, the close and the kit of the evening."""
    return (
        *_aim(blocks, bench),
        *_twice(blocks),
        *_rolling(rolling_share, bench),
        *_close(close_left_out),
        _kit(blocks),
    )


def _aim(blocks: tuple[Block, ...], bench: Bench) -> tuple[Problem, ...]:
    aim = bench.asked.aim
    if not stems(aim) or any(spoken_of(block.exercise, aim) for block in blocks):
        return ()
    problem = Problem(
        code="aim-unmet",
        severity=Severity.LOOK,
        message=f'No exercise of this evening speaks of "{aim.strip()}".',
        hint="Say the aim in other words, or write an exercise for it.",
    )
    return (problem,)


def _twice(blocks: tuple[Block, ...]) -> tuple[Problem, ...]:
    counts = Counter(block.exercise.name for block in blocks)
    return tuple(
        Problem(
            code="comes-again",
            severity=Severity.LOOK,
            message=f"{name} comes {count} times: too little else on the shelf fits tonight.",
            hint="Change one thing about it the next time, or write an exercise for this number.",
        )
        for name, count in counts.items()
        if count > 1
    )


def _rolling(share: float, bench: Bench) -> tuple[Problem, ...]:
    mark = bench.figures.value("rolling_share_mark")
    if share >= mark:
        return ()
    problem = Problem(
        code="rolling-low",
        severity=Severity.LOOK,
        message=f"A ball rolls for {percent(share)} of the evening, an estimate; the mark is {percent(mark)}.",
        hint="Explain in less than a minute, and let the game run on.",
    )
    return (problem,)


def _close(left_out: bool) -> tuple[Problem, ...]:
    if not left_out:
        return ()
    message = "Nothing made for the close fits tonight: its minutes go to the other parts."
    return (Problem(code="close-left-out", severity=Severity.KNOW, message=message),)


def _kit(blocks: tuple[Block, ...]) -> Problem:
    kits = tuple(block.kit for block in blocks)
    bibs = tuple((bib, max(dict(kit.bibs).get(bib, 0) for kit in kits)) for bib in Bib)
    words = (
        counted(max(kit.balls for kit in kits), "ball"),
        counted(max(kit.cones for kit in kits), "cone"),
        counted(max(kit.mini_goals for kit in kits), "mini goal"),
        counted(max(kit.goals for kit in kits), "goal"),
        *(counted(count, f"{bib.value.lower()} bib") for bib, count in added_bibs(bibs)),
    )
    needed = tuple(word for word in words if not word.startswith("0 "))
    message = f"The most in use at one time: {listed(needed) or 'nothing from the bag'}."
    return Problem(code="kit-at-once", severity=Severity.KNOW, message=message)
