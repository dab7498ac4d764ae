"""Ready answers: what a block does when fewer or more children come; must not know the rest of the evening."""

from collections.abc import Iterable
from dataclasses import replace

from conewright.fit.bench import Bench, Stop
from conewright.fit.blocks import by_size, contacts_of, dressed_copies
from conewright.fit.clock import Slot
from conewright.fit.options import Choice, Option, choice_for, choice_like
from conewright.fit.rules import slot_failure
from conewright.fit.suiting import OF_THE_KIND, suit
from conewright.fit.wording import listed, number
from conewright.model.exercise import Exercise
from conewright.model.rehearsed import Estimate, Rehearsal
from conewright.model.session import HeadAnswer

SPREAD = (-2, -1, 0, 1, 2)
MOST_INSTEAD = 8  # other exercises tried where the block's own does not run


def answers_for(
    slot: Slot, option: Option, bench: Bench, *, others: tuple[Exercise, ...], stop: Stop | None = None
) -> tuple[HeadAnswer, ...]:
    """From two fewer to two more; `others` are the exercises that may come instead, the best first."""
    answers: list[HeadAnswer] = []
    for more in SPREAD:
        here = bench.asked.here + more
        if here < 1 or (stop is not None and stop()):
            continue
        answers.append(_answer(slot, option, bench_with(bench, here), others))
    return tuple(answers)


def bench_with(bench: Bench, here: int) -> Bench:
    """The same evening with another number of children here."""
    asked = bench.asked
    return replace(bench, asked=replace(asked, here=here, keepers=min(asked.keepers, here)))


def _answer(slot: Slot, option: Option, bench: Bench, others: tuple[Exercise, ...]) -> HeadAnswer:
    if bench.asked.here == option.arrangement.holds:
        return written(option, bench)
    own = choice_like(option.exercise, bench, copies=len(option.arrangement.sizes))
    everybody = own.option is not None and own.option.arrangement.resting <= option.arrangement.resting
    if own.option is not None and everybody:
        return written(own.option, bench)
    instead = _instead(slot, bench, others)
    if instead is not None:
        answer = written(instead, bench)
        return replace(answer, words=f"{instead.exercise.name} instead, {answer.words}")
    return written(own.option, bench) if own.option is not None else _none(own, bench)


def _instead(slot: Slot, bench: Bench, others: Iterable[Exercise]) -> Option | None:
    """The first other exercise made for the part that runs with everybody in."""
    able = (exercise for exercise in others if suit(exercise, slot.job) >= OF_THE_KIND)
    fitting = tuple(exercise for exercise in able if slot_failure(exercise, slot) is None)
    tried = (choice_for(exercise, bench).option for exercise in fitting[:MOST_INSTEAD])
    return next((option for option in tried if option is not None and not option.arrangement.resting), None)


def _none(own: Choice, bench: Bench) -> HeadAnswer:
    reason = own.failure.reason if own.failure is not None else "its numbers do not hold them"
    return HeadAnswer(
        here=bench.asked.here,
        exercise=own.exercise.name,
        words=f"does not run: {reason}",
        sizes=(),
        waiting_share=None,
        contacts_a_minute=None,
        longest_wait_s=None,
        rounds_a_minute=None,
    )


def written(option: Option, bench: Bench) -> HeadAnswer:
    """An option as an answer, with its figures where all of its copies have them."""
    copies = dressed_copies(option, bench)
    played = tuple(copy.rehearsed for copy in copies if isinstance(copy.rehearsed, Rehearsal))
    whole = len(played) == len(copies)
    low, high = contacts_of(option, copies)
    estimated = any(isinstance(copy.rehearsed, Estimate) for copy in copies)
    return HeadAnswer(
        here=bench.asked.here,
        exercise=option.exercise.name,
        words=laid_out(option),
        sizes=option.arrangement.sizes,
        waiting_share=by_size(copies, tuple(one.waiting_share for one in played)) if whole else None,
        contacts_a_minute=low,
        longest_wait_s=max(one.longest_wait_s for one in played) if whole else None,
        rounds_a_minute=sum(one.rounds_a_minute for one in played) if whole else None,
        estimated=estimated,
        contacts_high=high if estimated else None,
    )


def laid_out(option: Option) -> str:
    """How many copies of what sizes, in words."""
    arrangement = option.arrangement
    sizes = arrangement.sizes
    if len(sizes) == 1:
        words = f"one group of {sizes[0]}"
    elif len(set(sizes)) == 1:
        words = f"{number(len(sizes))} copies of {sizes[0]}"
    else:
        words = f"{number(len(sizes))} copies, {listed(tuple(str(size) for size in sizes))}"
    keepers = f", {number(arrangement.keepers)} in goal" if arrangement.keepers else ""
    resting = arrangement.resting
    rest = f", {number(resting)} {'rests' if resting == 1 else 'rest'} in turn" if resting else ""
    return words + keepers + rest
