"""Where nothing fits, the reasons are counted and the remedy is one that was tried out."""

from dataclasses import replace

from conewright.fit.clock import Slot
from conewright.fit.options import choice_for
from conewright.fit.reasons import nothing_fits, nothing_made_for
from conewright.model.exercise import Exercise
from conewright.model.problem import Problem, Severity
from conewright.model.session import Job, Tonight
from tests.fit.evenings import USUAL, bench_for, written

OWN = """exercise: {name}
kind: {kind}
for {numbers} players, under 7 to under 14

Open play in {box} m: everyone has a ball.
"""


def own(name: str, *, numbers: str = "2 to 12", box: str = "10 by 8", kind: str = "warm-up") -> Exercise:
    return written(OWN.format(name=name, numbers=numbers, box=box, kind=kind))


def said(asked: Tonight, *exercises: Exercise) -> Problem:
    bench = bench_for(asked)
    return nothing_fits(tuple(choice_for(exercise, bench) for exercise in exercises), bench)


def test_reasons_are_counted_and_the_remedy_comes_with_its_number() -> None:
    asked = replace(USUAL, here=5, balls=0, width_m=10.0, depth_m=8.0)
    problem = said(asked, own("A"), own("B"), own("C", numbers="6 to 12"))
    assert (problem.code, problem.severity) == ("nothing-fits", Severity.MEND)
    assert problem.message == (
        "Nothing fits 5 children under 11 on 10 by 8 m with no ball: 2 short of balls and 1 for other numbers."
    )
    assert problem.hint == "With 5 balls there are two."


def test_the_remedy_is_the_least_that_helps() -> None:
    asked = replace(USUAL, here=5, width_m=6.0, depth_m=6.0)
    problem = said(asked, own("A", box="20 by 18"), own("B", box="12 by 10"))
    assert problem.hint == "With 12 by 10 m there is one."


def test_other_children_help_where_numbers_do_not() -> None:
    assert said(replace(USUAL, here=1), own("A"), own("B")).hint == "With 2 children there are two."


def test_a_large_group_is_parted() -> None:
    problem = said(replace(USUAL, here=36, balls=12), own("A"))
    assert problem.hint == "With three groups of at most 12, each with this ground and kit, there is one."


def test_an_empty_shelf_says_so() -> None:
    assert said(USUAL).code == "shelf-empty"


def test_a_part_says_why_nothing_made_for_it_fits() -> None:
    bench = bench_for(replace(USUAL, here=5))
    slot = Slot(job=Job.WARM_UP, start_min=0, minutes=10)
    choices = tuple(
        choice_for(one, bench) for one in (own("A", numbers="6 to 8"), own("B", kind="relay", box="90 by 9"))
    )
    problem = nothing_made_for(slot, choices, bench)
    assert problem.message == (
        "Nothing made for warming up fits 5 children tonight: 1 for other numbers and 1 short of space."
    )
    assert nothing_made_for(slot, (), bench).message == "No exercise on the shelf is made for warming up."
