"""The clock fills the minutes exactly, warms up first, and gives drinks often enough."""

from itertools import pairwise

import pytest

from conewright.fit.clock import Clock, clock_for
from conewright.model.figures import Figures
from conewright.model.session import Job, PauseKind

USUAL = [Job.ARRIVAL, Job.MAIN, Job.OPPOSED, Job.GAME, Job.CLOSE]


def jobs(clock: Clock) -> list[Job]:
    return [slot.job for slot in clock.slots]


def stretches(clock: Clock) -> list[tuple[float, float]]:
    slots = [(float(slot.start_min), float(slot.minutes)) for slot in clock.slots]
    return sorted([*slots, *((pause.start_min, pause.minutes) for pause in clock.pauses)])


def test_slots_and_pauses_fill_the_minutes_without_gap(figures: Figures) -> None:
    for minutes in range(1, 361):
        laid = stretches(clock_for(minutes, figures))
        assert laid[0][0] == 0
        assert sum(laid[-1]) == minutes
        assert all(start + length == following for (start, length), (following, _) in pairwise(laid))
        assert all(length > 0 for _, length in laid)


def test_no_more_than_twenty_minutes_pass_without_drinks(figures: Figures) -> None:
    for minutes in range(1, 361):
        drinks = [p.start_min for p in clock_for(minutes, figures).pauses if p.kind is PauseKind.DRINKS]
        assert all(later - sooner <= 20 for sooner, later in pairwise([0.0, *drinks, float(minutes)])), minutes


def test_the_evening_begins_with_eight_minutes_or_more_to_warm_up(figures: Figures) -> None:
    for minutes in range(8, 361):
        slots = clock_for(minutes, figures).slots
        warming = next(slot for slot in slots if Job.WARM_UP in (slot.job, slot.also))
        assert warming in slots[:2], minutes
        assert warming.minutes >= 8, minutes


def test_an_hour_has_the_usual_parts(figures: Figures) -> None:
    clock = clock_for(60, figures)
    assert jobs(clock) == USUAL
    assert [slot.minutes for slot in clock.slots] == [10, 13, 11, 14, 4]
    assert clock.problems == ()


@pytest.mark.parametrize(
    ("minutes", "parts", "codes"),
    [
        (5, [Job.WARM_UP], ["warm-up-short"]),
        (10, [Job.WARM_UP], ["warm-up-alone"]),
        (25, [Job.ARRIVAL, Job.GAME], ["warm-up-and-game"]),
        (32, [Job.ARRIVAL, Job.OPPOSED, Job.GAME], ["no-close", "joined"]),
        (42, USUAL[:-1], ["no-close"]),
        (90, [Job.ARRIVAL, Job.WARM_UP, *USUAL[1:]], []),
    ],
)
def test_short_evenings_drop_and_join_parts_and_say_so(
    figures: Figures, minutes: int, parts: list[Job], codes: list[str]
) -> None:
    clock = clock_for(minutes, figures)
    assert jobs(clock) == parts
    assert [problem.code for problem in clock.problems] == codes


def test_without_a_close_its_minutes_go_to_the_others(figures: Figures) -> None:
    clock = clock_for(60, figures, without=frozenset({Job.CLOSE}))
    assert jobs(clock) == USUAL[:-1]
    assert sum(stretches(clock)[-1]) == 60
