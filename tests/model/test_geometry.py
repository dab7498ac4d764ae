"""Points, headings and paths: closed forms and properties."""

from itertools import pairwise
from math import hypot, pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conewright.model.geometry import (
    ORIGIN,
    Point,
    ahead,
    along,
    angle_between_rad,
    box_round,
    distance_m,
    heading_rad,
    middle,
    nearest_on_segment,
    path_length_m,
    toward,
)

METRES = st.floats(-100, 100)
POINTS = st.builds(Point, METRES, METRES)
HEADINGS = st.floats(-10, 10)


def test_distances_and_headings_by_hand() -> None:
    assert distance_m(Point(1, 1), Point(4, 5)) == 5
    assert heading_rad(ORIGIN, Point(0, 3)) == pytest.approx(pi / 2)
    assert heading_rad(ORIGIN, ORIGIN) == 0
    assert path_length_m((Point(0, 0), Point(3, 4), Point(3, 10))) == 11
    assert path_length_m((Point(2, 2),)) == 0


@given(first=HEADINGS, second=HEADINGS)
def test_the_angle_between_two_headings_is_at_most_half_a_turn_and_the_same_both_ways(
    first: float, second: float
) -> None:
    angle = angle_between_rad(first, second)
    assert 0 <= angle <= pi + 1e-9
    assert angle == pytest.approx(angle_between_rad(second, first))
    assert angle_between_rad(first, first + 2 * pi) == pytest.approx(0, abs=1e-9)


@given(start=POINTS, heading=HEADINGS, length=st.floats(0.01, 50))
def test_toward_goes_as_far_and_in_the_direction_asked(start: Point, heading: float, length: float) -> None:
    end = toward(start, heading, length)
    assert distance_m(start, end) == pytest.approx(length, abs=1e-9)
    assert angle_between_rad(heading_rad(start, end), heading) == pytest.approx(0, abs=1e-6)


def test_ahead_and_along_by_hand() -> None:
    assert ahead(Point(0, 0), Point(0, 10), 4) == Point(0, 4)
    assert ahead(Point(2, 2), Point(2, 2), 4) == Point(2, 2)
    path = (Point(0, 0), Point(0, 5), Point(5, 5))
    assert along(path, 7) == Point(2, 5)
    assert along(path, 0) == Point(0, 0)
    assert along(path, 99) == Point(5, 5)


@given(path=st.lists(POINTS, min_size=2, max_size=5).map(tuple), share=st.floats(0, 1))
def test_a_point_along_a_path_lies_on_it(path: tuple[Point, ...], share: float) -> None:
    spot = along(path, share * path_length_m(path))
    nearest = min(distance_m(spot, nearest_on_segment(spot, start, end)) for start, end in pairwise(path))
    assert nearest == pytest.approx(0, abs=1e-6)


@given(point=POINTS, start=POINTS, end=POINTS, share=st.floats(0, 1))
def test_no_point_of_a_segment_is_nearer_than_the_nearest(point: Point, start: Point, end: Point, share: float) -> None:
    near = nearest_on_segment(point, start, end)
    other = Point(start.x_m + (end.x_m - start.x_m) * share, start.y_m + (end.y_m - start.y_m) * share)
    assert distance_m(point, near) <= distance_m(point, other) + 1e-7


def test_the_middle_of_nothing_is_the_origin() -> None:
    assert middle(()) == ORIGIN
    assert middle((Point(0, 0), Point(4, 2))) == Point(2, 1)


@given(points=st.lists(POINTS, min_size=1, max_size=6).map(tuple), margin=st.floats(0, 5))
def test_a_box_holds_its_points_with_the_margin(points: tuple[Point, ...], margin: float) -> None:
    box = box_round(points, margin)
    for x, y in points:
        assert box.left_m <= x - margin + 1e-9
        assert box.right_m >= x + margin - 1e-9
        assert box.bottom_m <= y - margin + 1e-9
        assert box.top_m >= y + margin - 1e-9
    assert hypot(box.width_m, box.depth_m) >= 0
    assert box.middle == Point((box.left_m + box.right_m) / 2, (box.bottom_m + box.top_m) / 2)


def test_an_empty_box_lies_at_the_origin() -> None:
    box = box_round(())
    assert (box.width_m, box.depth_m) == (0, 0)
