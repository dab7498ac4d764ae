"""Ready answers from two fewer to two more."""

from dataclasses import replace

from conewright.fit.answers import answers_for
from conewright.fit.clock import Slot
from conewright.fit.options import choice_for
from conewright.model.exercise import Exercise
from conewright.model.session import HeadAnswer, Job
from tests.fit.evenings import USUAL, bench_for, written

LANE = """exercise: {name}
for {numbers} players, under 9 to under 14
Near at 0, 0 is a line with the ball.
Far at 0, 8 is a line.

Each round:
1. Near passes to Far, then jogs to the end of Far round the outside.
2. Far passes to Near, then jogs to the end of Near round the outside.
"""
OWN = """exercise: Own
kind: warm-up
for 4 to 20 players, under 7 to under 14

Open play in 12 by 12 m: everyone has a ball.
"""
SLOT = Slot(job=Job.MAIN, start_min=10, minutes=12)


def lane(name: str, numbers: str) -> Exercise:
    return written(LANE.format(name=name, numbers=numbers))


def answers(here: int, own: Exercise, *others: Exercise) -> tuple[HeadAnswer, ...]:
    bench = bench_for(replace(USUAL, here=here))
    option = choice_for(own, bench).option
    assert option is not None
    return answers_for(SLOT, option, bench, others=others)


def test_five_answers_with_sizes_and_figures() -> None:
    found = answers(9, lane("Lane", "4 to 9"))
    assert [answer.here for answer in found] == [7, 8, 9, 10, 11]
    assert [sum(answer.sizes) for answer in found] == [7, 8, 9, 10, 11]
    assert all(answer.waiting_share is not None and answer.rounds_a_minute is not None for answer in found)
    assert found[3].words == "two copies of 5"
    waits = [answer.waiting_share or 0 for answer in found[:3] if len(answer.sizes) == 1]
    assert waits == sorted(waits)


def test_rounds_of_all_copies_are_added_up() -> None:
    one = answers(6, lane("Lane", "6 to 6"))[2]
    two = answers(12, lane("Lane", "6 to 6"))[2]
    assert one.rounds_a_minute is not None
    assert two.rounds_a_minute == 2 * one.rounds_a_minute
    assert two.waiting_share == one.waiting_share


def test_another_exercise_answers_where_the_own_one_does_not_run() -> None:
    found = answers(6, lane("Lane", "5 to 6"), lane("Other", "3 to 4"))
    fewer = found[0]
    assert (fewer.here, fewer.exercise, fewer.sizes) == (4, "Other", (4,))
    assert fewer.words == "Other instead, one group of 4"


def test_where_nothing_runs_the_answer_says_why() -> None:
    fewer = answers(6, lane("Lane", "5 to 6"))[0]
    assert (fewer.exercise, fewer.sizes, fewer.waiting_share) == ("Lane", (), None)
    assert "5 to 6" in fewer.words


def test_nobody_is_no_answer() -> None:
    assert [answer.here for answer in answers(2, written(OWN.replace("4 to 20", "2 to 6")))] == [1, 2, 3, 4]


def test_published_figures_are_a_range_and_called_an_estimate() -> None:
    answer = answers(10, written(OWN))[2]
    assert answer.estimated
    assert answer.waiting_share is None
    assert answer.contacts_a_minute is not None
    assert answer.contacts_high is not None
    assert answer.contacts_a_minute < answer.contacts_high


def test_two_who_share_a_ball_touch_it_half_as_often() -> None:
    text = OWN.replace("has a ball.", "has a ball. One over shares a ball.")
    bench = bench_for(replace(USUAL, here=12, balls=6))
    option = choice_for(written(text), bench).option
    plenty = choice_for(written(text), bench_for(USUAL)).option
    assert option is not None
    assert plenty is not None
    few = answers_for(SLOT, option, bench, others=())[2].contacts_a_minute
    many = answers_for(SLOT, plenty, bench_for(USUAL), others=())[2].contacts_a_minute
    assert few is not None
    assert many is not None
    assert few == many / 2
