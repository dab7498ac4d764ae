"""Which form serves a number of children, and who stands where at the start."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conewright.model.exercise import Exercise
from conewright.model.layout import (
    APART_M,
    ball_starters,
    first_ball_place,
    forms_for,
    layout_for,
    one_copy,
    places_in_order,
    sides_for,
    split_evenly,
    standing,
)
from conewright.notation.reader import read

HEAD = """exercise: Case
kind: passing pattern
for 3 to 12 players, under 8 to under 16
"""


def exercise_of(text: str) -> Exercise:
    exercise, problems = read(HEAD + text)
    assert exercise is not None
    assert not problems, problems
    return exercise


PLACES = """Base at 0, 0 is a line with 4 balls.
Stem at 0, 8 holds one.
Left at -6, 14 and Right at 6, 14 are lines.
"""
ROUND = """Each round, Left and Right in turn (call it Side):
1. Base passes to Stem, then runs to Stem.
2. Stem passes to Side, then runs to Side.
3. Side dribbles to Base.
"""


# --- who stands where ---------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("size", "expected"),
    [
        (4, (1, 1, 1, 1)),
        (5, (2, 1, 1, 1)),
        (6, (3, 1, 1, 1)),
        (7, (3, 1, 2, 1)),
        (8, (3, 1, 2, 2)),
        (9, (3, 1, 3, 2)),
        (10, (3, 1, 3, 3)),
        (11, (4, 1, 3, 3)),
    ],
)
def test_unsaid_one_each_then_the_line_with_the_ball_up_to_three_then_the_shortest(
    size: int, expected: tuple[int, ...]
) -> None:
    counts = standing(exercise_of(PLACES + ROUND), size)
    assert tuple(counts[name] for name in ("Base", "Stem", "Left", "Right")) == expected


def test_with_too_few_the_first_places_of_the_steps_are_taken() -> None:
    assert standing(exercise_of(PLACES + ROUND), 2) == {"Base": 1, "Stem": 1, "Left": 0, "Right": 0}


def test_two_lines_that_start_with_a_ball_fill_up_together() -> None:
    text = """North at 0, 8 is a line with the ball.
East at 8, 8 is a line.
South at 8, 0 is a line with the ball.
West at 0, 0 is a line.
Each round:
1. North passes to East; South passes to West.
2. East passes to South; West passes to North.
"""
    exercise = exercise_of(text)
    assert ball_starters(exercise) == ("North", "South")
    assert standing(exercise, 6) == {"North": 2, "East": 1, "South": 2, "West": 1}
    assert standing(exercise, 8) == {"North": 3, "East": 1, "South": 3, "West": 1}
    assert standing(exercise, 9) == {"North": 3, "East": 2, "South": 3, "West": 1}


def test_what_the_start_says_comes_first_and_the_rest_where_it_says() -> None:
    said = PLACES + "Start with two at Base, one at Stem, the rest shared between Left and Right.\n" + ROUND
    assert standing(exercise_of(said), 8) == {"Base": 2, "Stem": 1, "Left": 3, "Right": 2}
    assert standing(exercise_of(said), 3) == {"Base": 2, "Stem": 1, "Left": 0, "Right": 0}
    assert standing(exercise_of(said), 2) == {"Base": 2, "Stem": 0, "Left": 0, "Right": 0}
    assert standing(exercise_of(said), 1) == {"Base": 1, "Stem": 0, "Left": 0, "Right": 0}


def test_the_same_number_in_each_line_spreads_what_is_left_from_the_first() -> None:
    text = "Left at -6, 14 and Right at 6, 14 are lines.\nBase at 0, 0 is a line with the ball.\n"
    text += "Start with the same number in each line.\nEach round:\n1. Base passes to Left.\n2. Left passes to Right.\n"
    assert standing(exercise_of(text), 8) == {"Left": 3, "Right": 3, "Base": 2}


def test_adults_and_keepers_are_not_counted_among_the_children() -> None:
    text = """Coach at 5, 5 is an adult.
Goalie at 0, 19 is a keeper.
Base at 0, 0 is a line, a ball each.
Goal at 0, 20 is a goal.
Each round:
1. Base passes to Coach.
2. Coach passes ahead of Base to 0, 10.
3. Base shoots at Goal.
"""
    assert standing(exercise_of(text), 5) == {"Base": 5}


@given(size=st.integers(0, 40))
def test_nobody_is_lost_where_there_is_a_line(size: int) -> None:
    counts = standing(exercise_of(PLACES + ROUND), size)
    assert sum(counts.values()) == size
    assert counts["Stem"] <= 1


def test_the_first_ball_and_the_order_of_places_follow_the_steps() -> None:
    text = """Far at 0, 10 is a line with 2 balls.
Base at 0, 0 is a line with the ball.
Each round:
1. Base passes to Far.
2. Far passes to Base.
"""
    exercise = exercise_of(text)
    assert first_ball_place(exercise) == "Base"
    assert places_in_order(exercise) == ("Base", "Far")
    assert places_in_order(exercise_of(PLACES + ROUND)) == ("Base", "Stem", "Left", "Right")


# --- forms and copies ---------------------------------------------------------------------------------------------


@given(n=st.integers(0, 200), parts=st.integers(1, 12))
def test_split_evenly_gives_every_child_once_and_differs_by_one_at_most(n: int, parts: int) -> None:
    shares = split_evenly(n, parts)
    assert sum(shares) == n
    assert len(shares) == parts
    assert list(shares) == sorted(shares, reverse=True)
    assert shares[0] - shares[-1] <= 1


def test_copies_and_how_far_apart() -> None:
    text = PLACES + ROUND + "With 13 to 20: two copies, 6 m apart, mirrored.\nWith 21 to 24: three copies.\n"
    exercise = exercise_of(text)
    assert layout_for(exercise, 2) is None
    one = layout_for(exercise, 12)
    assert one is not None
    assert (one.sizes, one.apart_m, one.mirrored) == ((12,), APART_M, False)
    two = layout_for(exercise, 15)
    assert two is not None
    assert (two.sizes, two.apart_m, two.mirrored) == ((8, 7), 6.0, True)
    three = layout_for(exercise, 23)
    assert three is not None
    assert (three.sizes, three.apart_m) == ((8, 8, 7), APART_M)
    assert layout_for(exercise, 25) is None


def test_the_narrowest_form_wins_and_its_start_holds_for_the_copy() -> None:
    text = PLACES + ROUND + "With 4 to 6: start with two at Base, one at Stem, the rest at Left.\n"
    exercise = exercise_of(text + "With 5: start with one at Base, one at Stem, the rest at Right.\n")
    assert [(form.least, form.most) for form in forms_for(exercise, 5)] == [(5, 5), (4, 6)]
    assert standing(exercise, 5)["Right"] == 3
    assert standing(exercise, 6)["Left"] == 3
    assert one_copy(exercise, 9) is exercise


# --- sides of a box -----------------------------------------------------------------------------------------------


def counts_of(text: str, size: int) -> dict[str, int]:
    return {side.team.name: side.count for side in sides_for(exercise_of(text), size)}


GAME = "Open play in 30 by 20 m: Yellow against Blue.\n"


def test_sides_share_whoever_is_here() -> None:
    assert counts_of(GAME, 8) == {"Yellow": 4, "Blue": 4}


def test_the_odd_one_plays_where_the_text_says() -> None:
    assert counts_of(GAME + "One over is neutral.\n", 9) == {"Yellow": 4, "Blue": 4, "neutral": 1}
    assert counts_of(GAME + "One over joins Yellow.\n", 9) == {"Yellow": 5, "Blue": 4}
    assert counts_of(GAME + "One over rests in turn.\n", 9) == {"Yellow": 4, "Blue": 4, "rests in turn": 1}


def test_fixed_teams_take_their_number_and_a_form_changes_it() -> None:
    text = "Open play in 12 by 12 m: four Yellow keep it from two Red.\n"
    assert counts_of(text, 6) == {"Yellow": 4, "Red": 2}
    assert sum(counts_of(text, 8).values()) == 8
    assert counts_of(text + "With 5: four Yellow, one Red.\n", 5) == {"Yellow": 4, "Red": 1}


def test_everyone_with_a_ball_is_one_side_that_has_balls() -> None:
    (side,) = sides_for(exercise_of("Open play in 15 by 20 m: everyone has a ball.\n"), 9)
    assert (side.count, side.team.has_ball_each) == (9, True)


def test_no_box_has_no_sides() -> None:
    assert sides_for(exercise_of(PLACES + ROUND), 6) == ()
