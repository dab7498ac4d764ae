"""Every hard rule has an exercise that breaks it, and says so with what would help."""

from dataclasses import replace

import pytest

from conewright.fit.clock import Slot
from conewright.fit.options import choice_for
from conewright.fit.rules import RULES, SAID_SHORT, SLOT_RULES, Failure, Lack, slot_failure, with_more
from conewright.model.exercise import Ages, Exercise, Numbers
from conewright.model.problem import Problem, Severity
from conewright.model.session import Job, Tonight
from tests.fit.evenings import USUAL, bench_for, written

BOX = "exercise: Box\nfor {numbers} players, under 7 to under 14\n\nOpen play in {box} m: {play}.\n"
SERVED = """exercise: Served
for 4 to 12 players, under 7 to under 14
Server at 0, 0 is the coach, with 6 balls.
Line at 0, 8 is a line.

Each round:
1. Server passes to Line.
2. Line passes to Server, then jogs to the end of Line round the outside.
"""

GATES = (
    "exercise: Gates\nfor 4 to 12 players, under 7 to under 14\n"
    + "".join(
        f"Gate {name} at {at}, 8 is a gate 2 m wide.\n"
        for at, name in zip((-9, -3, 3, 9), ("A", "B", "C", "D"), strict=True)
    )
    + "\nOpen play in 20 by 18 m: everyone has a ball.\n"
)


def box(numbers: str = "4 to 12", size: str = "10 by 10", play: str = "everyone has a ball") -> Exercise:
    return written(BOX.format(numbers=numbers, box=size, play=play))


def failure(exercise: Exercise, asked: Tonight = USUAL) -> Failure:
    choice = choice_for(exercise, bench_for(asked))
    assert choice.option is None
    assert choice.failure is not None
    return choice.failure


EMPTY = Exercise(name="E", kind="warm-up", numbers=Numbers(least=4, most=12), ages=Ages(youngest=7, oldest=14))
BROKEN: dict[str, tuple[Exercise, Tonight, Lack, tuple[float, ...]]] = {
    "age": (box(), replace(USUAL, age=15), Lack.NOTHING, ()),
    "empty": (EMPTY, USUAL, Lack.NOTHING, ()),
    "numbers": (box(), replace(USUAL, here=3), Lack.CHILDREN, (4.0,)),
    "adults": (written(SERVED), replace(USUAL, adults=0), Lack.ADULTS, (1.0,)),
    "balls": (box(), replace(USUAL, balls=5), Lack.BALLS, (12.0,)),
    "cones": (written(GATES), replace(USUAL, cones=3), Lack.CONES, (4.0,)),
    "space": (box(size="60 by 40"), USUAL, Lack.SPACE, (60.0, 40.0)),
}


@pytest.mark.parametrize("code", BROKEN)
def test_a_broken_rule_says_why_and_what_would_help(code: str) -> None:
    exercise, asked, lack, wants = BROKEN[code]
    found = failure(exercise, asked)
    assert (found.code, found.lack) == (code, lack)
    assert found.reason
    assert found.wants == wants
    more = with_more(asked, found)
    if lack is Lack.NOTHING:
        assert more is None
    else:
        assert more is not None
        assert choice_for(exercise, bench_for(more)).option is not None


def test_something_to_mend_is_never_used_and_another_split_is_tried() -> None:
    def odd_sizes_break(exercise: Exercise, size: int, **named: object) -> tuple[Problem, ...]:
        broken = Problem(code="odd", severity=Severity.MEND, message="one has no partner")
        return (broken,) if size % 2 else ()

    keep = box(numbers="4 to 8")
    bench = replace(bench_for(replace(USUAL, here=10)), check=odd_sizes_break)
    option = choice_for(keep, bench).option
    assert option is not None
    assert option.arrangement.sizes == (6, 4)
    alone = choice_for(keep, replace(bench, asked=replace(USUAL, here=7)))
    assert alone.option is not None
    assert (alone.option.arrangement.sizes, alone.option.arrangement.resting) == ((6,), 1)
    only_odd = choice_for(box(numbers="7 to 7"), replace(bench, asked=replace(USUAL, here=7)))
    assert only_odd.failure is not None
    assert only_odd.failure.code == "mend"
    assert "no partner" in only_odd.failure.reason


def test_children_rest_only_where_no_copies_hold_them() -> None:
    option = choice_for(box(numbers="6 to 6"), bench_for(replace(USUAL, here=13, balls=20))).option
    assert option is not None
    assert (option.arrangement.sizes, option.arrangement.resting) == ((6, 6), 1)
    option = choice_for(box(numbers="6 to 7"), bench_for(replace(USUAL, here=13, balls=20))).option
    assert option is not None
    assert option.arrangement.resting == 0


def slot(job: Job, minutes: int = 10) -> Slot:
    return Slot(job=job, start_min=0, minutes=minutes)


def test_a_slot_refuses_what_is_for_another_part_and_what_takes_longer() -> None:
    long_bout = box(play="Yellow against Blue. Bouts of 6 minutes")
    assert slot_failure(long_bout, slot(Job.GAME)) is None
    too_short = slot_failure(long_bout, slot(Job.GAME, minutes=5))
    assert too_short is not None
    assert too_short.code == "bout"
    lively = slot_failure(long_bout, slot(Job.CLOSE))
    assert lively is not None
    assert lively.code == "part"


def test_every_rule_has_a_short_name_for_the_counts() -> None:
    assert {*BROKEN, "mend", "part", "bout"} == set(SAID_SHORT)
    assert len(RULES) + len(SLOT_RULES) == len(SAID_SHORT)
