"""Lines: smoothing, trimming, waves and heads keep to their measures."""

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conewright.drawing.measures import PAPER, SCREEN, Measures
from conewright.drawing.strokes import (
    apart,
    at_length,
    distance_to_line,
    filled_head,
    length,
    open_head,
    smoothed,
    spare,
    trimmed,
    wave,
)
from conewright.model.scene import Dot

DOTS = st.lists(
    st.builds(Dot, st.floats(-500, 500).map(lambda v: round(v, 1)), st.floats(-500, 500).map(lambda v: round(v, 1))),
    min_size=2,
    max_size=7,
).map(tuple)
STRAIGHT = (Dot(0, 0), Dot(100, 0))
BENT = (Dot(0, 0), Dot(40, 10), Dot(60, 60), Dot(20, 90))


def test_a_curve_goes_through_all_its_dots() -> None:
    curve = smoothed(BENT)
    assert all(min(apart(dot, on) for on in curve) < 1e-6 for dot in BENT)
    assert length(curve) > length(BENT) * 0.99


@given(DOTS)
def test_a_curve_never_strays_far(dots: tuple[Dot, ...]) -> None:
    reach = max(apart(one, other) for one in dots for other in dots)
    assert all(distance_to_line(on, dots) <= reach + 1e-6 for on in smoothed(dots) if len(smoothed(dots)) > 1)


@given(DOTS, st.floats(0, 60), st.floats(0, 60))
def test_trimming_takes_what_it_says(dots: tuple[Dot, ...], start: float, end: float) -> None:
    whole = length(dots)
    left = trimmed(dots, start, end)
    assert length(left) == pytest.approx(max(whole - start - end, 0.0), abs=1e-4)
    if whole > start + end:
        assert apart(left[0], at_length(dots, start)) < 1e-6


@given(DOTS)
def test_leaving_out_dots_keeps_the_line(dots: tuple[Dot, ...]) -> None:
    kept = spare(dots, 0.5)
    assert kept[0] == dots[0]
    assert kept[-1] == dots[-1]
    assert all(distance_to_line(dot, kept) <= 0.5 + 1e-6 or len(set(kept)) == 1 for dot in dots)


@pytest.mark.parametrize("measures", [SCREEN, PAPER])
def test_a_wave_swings_evenly_and_ends_straight(measures: Measures) -> None:
    line = (Dot(0, 0), Dot(50 * measures.gap, 0))
    bent, rest = wave(line, measures)
    controls = bent[1::2]
    assert {one.y > 0 for one in controls[::2]} == {True}
    assert {one.y > 0 for one in controls[1::2]} == {False}
    assert max(abs(one.y) for one in controls) == pytest.approx(2 * measures.wave_half, rel=1e-6)
    assert all(abs(dot.y) < 1e-9 for dot in bent[::2])
    assert length(rest) == pytest.approx(measures.wave_tail, abs=1e-6)
    assert all(one.x < other.x for one, other in pairwise(bent[::2]))


def test_heads_point_where_the_line_goes() -> None:
    tip, left, right = filled_head(Dot(10, 10), 0.0, SCREEN)
    assert tip == Dot(10, 10)
    assert (left.x, right.x) == pytest.approx((-0.6, -0.6))
    assert abs(left.y - right.y) == pytest.approx(8.8)
    arm, point, other = open_head(Dot(0, 0), math.pi / 2, SCREEN)
    assert point == Dot(0, 0)
    assert (arm.y, other.y) == pytest.approx((-8.5, -8.5))
    assert abs(arm.x - other.x) == pytest.approx(10.6)
