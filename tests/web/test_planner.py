"""Evenings are fitted once, another count keeps the plan, and what may be asked next is made ready aside."""

import threading
from dataclasses import replace

from conewright.model.exercise import Exercise
from conewright.model.session import Session
from conewright.store.demo import TONIGHT
from conewright.store.figures import load_figures
from conewright.store.shelf import load_shelf, shelf_texts
from conewright.web.planner import MOST_SESSIONS, NEAR, Planner


def test_the_same_evening_is_fitted_once(planner: Planner) -> None:
    first = planner.session(TONIGHT, planned=13)
    assert planner.session(replace(TONIGHT), planned=13) is first


def test_another_count_keeps_the_exercises_that_still_run(planner: Planner) -> None:
    plan = planner.session(TONIGHT, planned=13)
    more = planner.session(replace(TONIGHT, here=14), planned=13)
    kept = [block.exercise.name for block in more.blocks]
    assert all(block.players == 14 for block in more.blocks)
    before = [block.exercise.name for block in plan.blocks]
    assert sum(one == other for one, other in zip(kept, before, strict=True)) >= len(before) - 1


def test_the_way_to_a_count_does_not_matter(planner: Planner) -> None:
    other = Planner(load_shelf=load_shelf, load_figures=load_figures, load_texts=shelf_texts)
    for here in (14, 15, 12):
        planner.session(replace(TONIGHT, here=here), planned=13)
    there = other.session(replace(TONIGHT, here=12), planned=13)
    assert planner.session(replace(TONIGHT, here=12), planned=13) == there
    other.close()


def test_counts_near_by_are_made_ready(planner: Planner) -> None:
    tonight = replace(TONIGHT, minutes=65)
    ready: list[int] = []
    done = threading.Event()

    def note(session: Session) -> None:
        ready.append(session.tonight.here)
        if len(ready) == len(NEAR):
            done.set()

    last: list[int] = []
    planner.make_ready(tonight, planned=13, then=note, last=lambda: last.append(len(ready)))
    assert done.wait(30)
    planner.waiting[-1].result(timeout=30)
    assert last == [len(NEAR)]
    assert sorted(ready) == [11, 12, 14, 15]
    assert ready[0] == 14


def test_nobody_fewer_than_one_is_made_ready(planner: Planner) -> None:
    ready: list[int] = []
    planner.make_ready(
        replace(TONIGHT, here=1), planned=1, then=lambda session: ready.append(session.tonight.here), last=int
    )
    for future in planner.waiting:
        future.result(timeout=30)
    assert sorted(ready) == [2, 3]


def test_an_evening_that_was_fitted_before_is_taken_over(planner: Planner) -> None:
    fresh = Planner(load_shelf=_fail, load_figures=load_figures, load_texts=shelf_texts)
    before = planner.session(TONIGHT, planned=13)
    fresh.know(TONIGHT, 13, before)
    assert fresh.session(TONIGHT, planned=13) is before
    fresh.close()


def _fail() -> tuple[Exercise, ...]:
    raise AssertionError("the shelf is not needed")


def test_what_is_held_stays_bounded() -> None:
    planner = Planner(load_shelf=lambda: (), load_figures=load_figures, load_texts=lambda: ())
    for minutes in range(10, 10 + MOST_SESSIONS + 5):
        assert planner.session(replace(TONIGHT, minutes=minutes), planned=13).blocks == ()
    assert len(planner.sessions) == MOST_SESSIONS
    planner.close()
