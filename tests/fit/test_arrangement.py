"""All who are here are held by copies, as the text says where it says so."""

from hypothesis import given
from hypothesis import strategies as st

from conewright.fit.arrangement import MOST_COPIES, arrangements, runs_alone, with_rest
from conewright.model.exercise import Ages, Exercise, Numbers
from tests.fit.evenings import written

PAIRS = "exercise: Pairs\nfor {} players, under 7 to under 16\n\nOpen play in 10 by 10 m: Yellow against Blue.\n{}"

KEPT = """exercise: Kept
for 4 to 6 players, under 9 to under 16
Line at 0, 0 is a line with 3 balls.
Goal at 0, 16 is a goal.
Keeper at 0, 15 is the keeper.

Each round:
1. Line dribbles to 0, 6, then shoots at Goal.
2. Line fetches the ball, then dribbles to the end of Line round the outside.
"""


def sizes(exercise: Exercise, here: int, keepers: int = 0) -> list[tuple[int, ...]]:
    return [way.sizes for way in arrangements(exercise, here, keepers)]


def test_as_the_text_says_comes_first() -> None:
    exercise = written(PAIRS.format("2 to 9", "\nWith 10 to 18: two copies, 3 m apart.\n"))
    first = arrangements(exercise, 13, 0)[0]
    assert (first.sizes, first.apart_m, first.said) == ((7, 6), 3.0, True)


def test_one_copy_comes_before_more_where_the_text_says_nothing_and_even_before_uneven() -> None:
    exercise = written(PAIRS.format("4 to 8", ""))
    assert sizes(exercise, 8)[:2] == [(8,), (4, 4)]
    assert sizes(exercise, 13) == [(7, 6), (5, 4, 4), (8, 5)]


def test_numbers_that_no_copies_hold_give_nothing() -> None:
    exercise = written(PAIRS.format("4 to 4", ""))
    assert sizes(exercise, 13) == []
    assert [[way.sizes for way in ways] for ways in with_rest(exercise, 13, 0)] == [[(4, 4, 4)]]


def test_keepers_stand_in_goal_beyond_the_sizes() -> None:
    exercise = written(KEPT)
    way = arrangements(exercise, 7, 1)[0]
    assert (way.sizes, way.keepers, way.holds) == ((6,), 1, 7)
    assert arrangements(exercise, 6, 0)[0].keepers == 0


def test_a_form_of_the_text_counts_the_children_in_the_field() -> None:
    exercise = written(f"{KEPT}\nWith 7 to 12: two copies, 6 m apart.\n")
    first = arrangements(exercise, 12, 2)[0]
    assert (first.sizes, first.keepers, first.said) == ((5, 5), 2, True)
    assert arrangements(exercise, 7, 1)[0].said is False


@given(least=st.integers(1, 9), more=st.integers(0, 9), here=st.integers(1, 60), keepers=st.integers(0, 3))
def test_every_arrangement_holds_everybody_in_sizes_that_run(least: int, more: int, here: int, keepers: int) -> None:
    exercise = Exercise(
        name="Any",
        kind="dribbling",
        numbers=Numbers(least=least, most=least + more),
        ages=Ages(youngest=7, oldest=16),
    )
    resting = [way for ways in with_rest(exercise, here, keepers) for way in ways]
    for way in (*arrangements(exercise, here, keepers), *resting):
        assert way.holds == here
        assert len(way.sizes) <= MOST_COPIES
        assert all(runs_alone(exercise, size) for size in way.sizes)
        assert list(way.sizes) == sorted(way.sizes, reverse=True)
    assert all(way.resting for way in resting)
