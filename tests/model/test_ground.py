"""Where a line waits, which way a way back goes, and how much ground is used."""

from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conewright.model.exercise import Exercise
from conewright.model.geometry import Point, distance_m, nearest_on_segment, path_length_m
from conewright.model.ground import (
    BOWS_M,
    CLEAR_M,
    LINE_STEP_M,
    MARGIN_M,
    clearance_m,
    facing_rad,
    ground_used,
    hub,
    line_spots,
    outside_path,
)
from conewright.model.unroll import rounds_of
from conewright.notation.reader import read

HEAD = """exercise: Case
kind: passing pattern
for 2 to 12 players, under 8 to under 16
"""
ROUND = "Each round:\n1. Base passes to Far.\n2. Far passes to Base.\n"


def exercise_of(text: str) -> Exercise:
    exercise, problems = read(HEAD + text)
    assert exercise is not None
    assert not problems, problems
    return exercise


def spots(exercise: Exercise, name: str, count: int) -> list[tuple[float, float]]:
    place = exercise.place(name)
    assert place is not None
    return [(round(x, 6), round(y, 6)) for x, y in line_spots(exercise, place, count)]


FACING = "Base at 0, 0 is a line with the ball{}.\nFar at 0, 10 is a line.\n"


@pytest.mark.parametrize(
    ("said", "second"),
    [
        ("", (0, -1)),
        (", waiting behind", (0, -1)),
        (", waiting on the left", (-1, 0)),
        (", waiting on the right", (1, 0)),
    ],
)
def test_a_line_grows_away_from_play_or_to_the_side_said(said: str, second: tuple[float, float]) -> None:
    exercise = exercise_of(FACING.format(said) + ROUND)
    assert spots(exercise, "Base", 2) == [(0, 0), second]


def test_a_place_faces_what_is_said_else_the_first_ball() -> None:
    text = "Base at 0, 0 is a line with the ball, facing Mast.\nFar at 4, 4 is a line.\nMast at 8, 0 is a cone.\n"
    exercise = exercise_of(text + ROUND)
    base, far = exercise.place("Base"), exercise.place("Far")
    assert base is not None
    assert far is not None
    assert facing_rad(exercise, base) == pytest.approx(0)
    assert facing_rad(exercise, far) == pytest.approx(-3 * pi / 4)


def test_the_place_with_the_first_ball_faces_the_middle_of_the_others() -> None:
    text = "Base at 0, 0 is a line with the ball.\nFar at 4, 8 is a line.\nWing at -4, 8 is a line.\n"
    exercise = exercise_of(text + ROUND)
    base = exercise.place("Base")
    assert base is not None
    assert facing_rad(exercise, base) == pytest.approx(pi / 2)


def test_a_place_alone_looks_up_the_page() -> None:
    exercise = exercise_of(
        "Base at 3, 3 is a line with the ball.\nEach round:\n1. Base dribbles to 5, 5, then dribbles home.\n"
    )
    base = exercise.place("Base")
    assert base is not None
    assert facing_rad(exercise, base) == pytest.approx(pi / 2)


def test_children_in_a_line_stand_a_step_apart() -> None:
    exercise = exercise_of(FACING.format("") + ROUND)
    assert spots(exercise, "Far", 4) == [(0, 10 + LINE_STEP_M * rank) for rank in range(4)]


# --- ways back ----------------------------------------------------------------------------------------------------


def test_a_short_way_is_straight() -> None:
    exercise = exercise_of(FACING.format("") + ROUND)
    start, end = Point(0, 0), Point(0, 2 * CLEAR_M - 0.1)
    assert outside_path(exercise, start, end) == (start, end)


def test_a_way_back_bows_out_on_the_side_away_from_the_middle() -> None:
    text = "Base at 6, 0 is a line with the ball.\nFar at 6, 12 is a line.\nPost at 0, 6 is a line.\n"
    exercise = exercise_of(text + ROUND)
    assert hub(exercise).x_m < 6
    there = outside_path(exercise, Point(6, 12), Point(6, 0))
    back = outside_path(exercise, Point(6, 0), Point(6, 12))
    for path in (there, back):
        assert all(spot.x_m > 6 for spot in path[1:-1])
    assert path_length_m(there) > 12


def test_a_way_back_swings_wider_round_what_stands_in_it() -> None:
    text = "Base at 6, 0 is a line with the ball.\nFar at 6, 12 is a line.\nPost at 0, 6 is a line.\n"
    free = outside_path(exercise_of(text + ROUND), Point(6, 12), Point(6, 0))
    blocked = exercise_of(text + "Mast at 8, 6 is a cone.\n" + ROUND)
    round_it = outside_path(blocked, Point(6, 12), Point(6, 0))
    assert max(x for x, _ in free) == pytest.approx(6 + BOWS_M[0])
    assert max(x for x, _ in round_it) >= 8 + CLEAR_M
    assert clearance_m(round_it, (Point(8, 6),)) >= CLEAR_M


SPOT = st.tuples(st.integers(-12, 12), st.integers(-12, 12))


@given(stands=st.lists(SPOT, min_size=2, max_size=6, unique=True))
def test_a_way_back_keeps_clear_or_is_the_widest_bow(stands: list[tuple[int, int]]) -> None:
    names = ("Base", "Far", "Post", "Wing", "Gate", "Mill")[: len(stands)]
    text = "".join(f"{name} at {x}, {y} is a line.\n" for name, (x, y) in zip(names, stands, strict=True))
    exercise = exercise_of(text.replace("is a line.", "is a line with the ball.", 1) + ROUND)
    start, end = Point(*map(float, stands[0])), Point(*map(float, stands[1]))
    path = outside_path(exercise, start, end)
    assert (path[0], path[-1]) == (start, end)
    if len(path) == 2:
        return
    others = tuple(
        place.at for place in exercise.places if min(distance_m(place.at, start), distance_m(place.at, end)) > CLEAR_M
    )
    bow = max(distance_m(spot, nearest_on_segment(spot, start, end)) for spot in path)
    assert clearance_m(path, others) >= CLEAR_M or bow == pytest.approx(BOWS_M[-1])


def test_clearance_of_nothing_is_endless() -> None:
    assert clearance_m((Point(0, 0), Point(0, 9)), ()) == float("inf")
    assert clearance_m((Point(0, 0), Point(0, 9)), (Point(2, 4), Point(5, 5))) == 2


# --- ground -------------------------------------------------------------------------------------------------------


def test_ground_is_what_stands_and_moves_with_a_margin() -> None:
    exercise = exercise_of(FACING.format("") + ROUND)
    rounds, _ = rounds_of(exercise)
    two = ground_used(exercise, 2, rounds)
    assert (two.width_m, two.depth_m) == (pytest.approx(2 * MARGIN_M), pytest.approx(10 + 2 * MARGIN_M))
    eight = ground_used(exercise, 8, rounds)
    assert eight.depth_m == pytest.approx(10 + 3 + 3 + 2 * MARGIN_M)  # four in each line


def test_ground_holds_flights_ways_and_boxes() -> None:
    text = FACING.format("") + "Each round:\n1. Base passes to 7, 14, then runs to -5, 3.\n"
    exercise = exercise_of(text)
    used = ground_used(exercise, 2, rounds_of(exercise)[0])
    assert used.right_m == pytest.approx(7 + MARGIN_M)
    assert used.left_m == pytest.approx(-5 - MARGIN_M)
    assert used.top_m == pytest.approx(14 + MARGIN_M)
    box = ground_used(exercise_of("Open play in 12 by 14 m, middle at 1, 0: everyone has a ball.\n"), 6)
    assert (box.width_m, box.depth_m, box.middle) == (12, 14, Point(1, 0))


def test_ground_holds_the_box_of_a_contest() -> None:
    text = """Hub at 0, 0 is a line with 4 balls.
Gate House at 0, 16 is a line.
Goal at 0, 17 is a mini goal.
Each round:
1. Hub dribbles to 0, 3.
2. Contest in 14 by 10 m, middle at 0, 10: Hub against Gate House, on Goal, at most 8 s.
Scored, won, out or time up: Hub joins Gate House, Gate House takes the ball to Hub and joins Hub.
"""
    exercise = exercise_of(text)
    assert ground_used(exercise, 2, rounds_of(exercise)[0]).width_m == pytest.approx(14 + 2 * MARGIN_M)
