"""Passes against the table of times and arrivals, against a step-by-step twin, and turned back on themselves."""

from math import isclose

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conewright.model.figures import SURFACES, UnknownFigure
from conewright.rehearsal.rolling import Ground, ground_on, pass_release_m_s, release_for_arrival, roll
from conewright.store.figures import load_figures

SHORT_GRASS = Ground(mu=0.45, a_roll=1.0, spin0=0.3, k=0.66667)
GONE = (None, 0.0)

PASSES = [
    # release, then time and arrival at each distance; U17 firm at 15 m is 8.249, printed elsewhere as 8.3
    pytest.param(4.5, {4: (1.36, 2.2), 6: (2.68, 0.8), 8: GONE, 10: GONE}, id="U7 short"),
    pytest.param(5.5, {4: (0.99, 3.3), 6: (1.67, 2.6), 8: (2.58, 1.7), 10: GONE}, id="U9 short"),
    pytest.param(6.4, {4: (0.81, 4.2), 6: (1.31, 3.7), 8: (1.90, 3.1), 10: (2.63, 2.4)}, id="U11 short"),
    pytest.param(7.2, {4: (0.69, 5.0), 6: (1.11, 4.5), 8: (1.58, 4.1), 10: (2.10, 3.5)}, id="U13 short"),
    pytest.param(8.0, {4: (0.60, 5.7), 6: (0.96, 5.3), 8: (1.35, 4.9), 10: (1.78, 4.5)}, id="U15 short"),
    pytest.param(8.5, {4: (0.55, 6.1), 6: (0.89, 5.8), 8: (1.24, 5.4), 10: (1.63, 5.0)}, id="U17 short"),
    pytest.param(9.0, {4: (0.51, 6.8), 6: (0.82, 6.2), 8: (1.15, 5.9), 10: (1.50, 5.6)}, id="adult short"),
    pytest.param(5.5, {6: (1.67, 2.6), 10: GONE, 15: GONE, 20: GONE}, id="U7 firm"),
    pytest.param(7.0, {6: (1.15, 4.3), 10: (2.21, 3.3), 15: (4.62, 0.9), 20: GONE}, id="U9 firm"),
    pytest.param(8.5, {6: (0.89, 5.8), 10: (1.63, 5.0), 15: (2.74, 3.9), 20: (4.35, 2.3)}, id="U11 firm"),
    pytest.param(10.0, {6: (0.71, 7.1), 10: (1.30, 6.5), 15: (2.11, 5.7), 20: (3.06, 4.8)}, id="U13 firm"),
    pytest.param(11.5, {6: (0.59, 8.9), 10: (1.07, 7.9), 15: (1.73, 7.3), 20: (2.45, 6.6)}, id="U15 firm"),
    pytest.param(12.5, {6: (0.53, 10.2), 10: (0.96, 8.8), 15: (1.54, 8.2), 20: (2.17, 7.6)}, id="U17 firm"),
    pytest.param(13.5, {6: (0.48, 11.4), 10: (0.86, 9.7), 15: (1.39, 9.2), 20: (1.95, 8.6)}, id="adult firm"),
]
STOPS = [(4.5, 6.4), (5.5, 9.5), (6.4, 12.9), (7.2, 16.3), (8.0, 20.1), (8.5, 22.7), (9.0, 25.4)]

grounds = st.builds(
    Ground, mu=st.floats(0.1, 0.7), a_roll=st.floats(0.2, 2.5), spin0=st.floats(0, 1), k=st.floats(0.3, 0.7)
)
releases = st.floats(0.5, 25)
shares = st.floats(0.001, 0.999)


@pytest.mark.parametrize(("release", "printed"), PASSES)
def test_times_and_arrivals_are_those_of_the_table(
    release: float, printed: dict[float, tuple[float | None, float]]
) -> None:
    ball = roll(release, SHORT_GRASS)
    for distance, (time, arrival) in printed.items():
        reached = ball.travel_time_s(distance)
        assert (reached if reached is None else round(reached, 2)) == time
        assert round(ball.speed_at(distance), 1) == arrival


@pytest.mark.parametrize(("release", "stop"), STOPS)
def test_a_ball_stops_where_the_table_says(release: float, stop: float) -> None:
    assert round(roll(release, SHORT_GRASS).stop_distance_m, 1) == stop


@pytest.mark.parametrize(("spin", "kept"), [(0.0, 0.60), (0.3, 0.72), (0.5, 0.80), (1.0, 1.0)])
def test_rolling_begins_at_the_share_the_spin_leaves(spin: float, kept: float) -> None:
    assert roll(8.0, Ground(mu=0.45, a_roll=1.0, spin0=spin, k=2 / 3)).rolling_m_s == pytest.approx(8 * kept)


def test_a_ball_slowed_step_by_step_goes_as_far() -> None:
    ball, ground = roll(8.5, SHORT_GRASS), SHORT_GRASS
    spin, speed, travelled, step = ground.spin0 * 8.5, 8.5, 0.0, 1e-4
    for _ in range(20000):
        if spin < speed:
            after = speed - ground.mu * 9.81 * step
            spin += ground.mu * 9.81 * step / ground.k
        else:
            after = speed - ground.a_roll * step
            spin = after
        travelled += (speed + after) / 2 * step
        speed = after
    assert isclose(ball.distance_at(2.0), travelled, abs_tol=2e-3)
    assert isclose(ball.speed_at(travelled), speed, abs_tol=2e-3)


@given(release=releases, ground=grounds, share=shares)
def test_the_time_to_a_distance_leads_back_to_it(release: float, ground: Ground, share: float) -> None:
    ball = roll(release, ground)
    distance = share * ball.stop_distance_m
    t = ball.travel_time_s(distance)
    assert t is not None
    assert isclose(ball.distance_at(t), distance, rel_tol=1e-9, abs_tol=1e-9)


@given(release=releases, ground=grounds, share=shares)
def test_the_release_for_an_arrival_arrives_so(release: float, ground: Ground, share: float) -> None:
    ball = roll(release, ground)
    distance = share * ball.stop_distance_m
    assert isclose(release_for_arrival(distance, ball.speed_at(distance), ground), release, rel_tol=1e-6)


@given(release=releases, ground=grounds)
def test_a_ball_lies_still_at_its_end(release: float, ground: Ground) -> None:
    ball = roll(release, ground)
    end = ball.stop_distance_m
    assert ball.travel_time_s(end * 1.001) is None
    assert ball.speed_at(end * 1.001) == 0
    assert ball.distance_at(ball.stop_time_s + 5) == pytest.approx(end)


def test_at_the_foot_no_time_has_passed() -> None:
    ball = roll(6.4, SHORT_GRASS)
    assert ball.travel_time_s(0) == 0
    assert ball.speed_at(0) == 6.4
    assert ball.distance_at(-1) == 0


def test_a_ball_not_struck_goes_nowhere() -> None:
    ball = roll(0, SHORT_GRASS)
    assert ball.travel_time_s(0) == 0
    assert ball.travel_time_s(0.1) is None
    assert ball.stop_distance_m == 0


@pytest.mark.parametrize(
    ("spin", "release", "time"), [(0.0, 8.0, 2.02), (1.0, 5.68, 2.18)], ids=["skidding", "rolling"]
)
def test_ten_metres_at_the_same_arrival_take_about_as_long(spin: float, release: float, time: float) -> None:
    ground = Ground(mu=0.45, a_roll=1.0, spin0=spin, k=2 / 3)
    struck = release_for_arrival(10, 3.5, ground)
    assert struck == pytest.approx(release, abs=0.01)
    assert roll(struck, ground).travel_time_s(10) == pytest.approx(time, abs=0.01)


@pytest.mark.parametrize(
    ("distance", "release"),
    [(2, 6.4), (8, 6.4), (12, 7.2), (30, 8.5)],
    ids=["short is enough", "still enough", "a longer one needs more", "never beyond firm"],
)
def test_a_passer_picks_enough_between_short_and_firm(distance: float, release: float) -> None:
    picked = pass_release_m_s(distance, short=6.4, firm=8.5, arrival=3.0, ground=SHORT_GRASS)
    assert picked == pytest.approx(release, abs=0.1)


def test_a_pass_between_the_two_arrives_as_wished() -> None:
    picked = pass_release_m_s(11, short=6.4, firm=8.5, arrival=3.0, ground=SHORT_GRASS)
    assert 6.4 < picked < 8.5
    assert roll(picked, SHORT_GRASS).speed_at(11) == pytest.approx(3.0)


def test_the_ground_comes_from_the_figures() -> None:
    figures = load_figures()
    assert ground_on(figures, "grass_short") == SHORT_GRASS
    stops = [roll(6.0, ground_on(figures, surface)).stop_distance_m for surface in SURFACES]
    assert stops == sorted(stops, reverse=True)
    with pytest.raises(UnknownFigure):
        ground_on(figures, "gravel")


@pytest.mark.parametrize("wrong", [{"mu": 0}, {"a_roll": -1}, {"k": 0}, {"spin0": 1.2}, {"spin0": -0.1}])
def test_ground_that_cannot_be_is_refused(wrong: dict[str, float]) -> None:
    with pytest.raises(ValueError, match="must be above nought"):
        Ground(**({"mu": 0.45, "a_roll": 1.0, "spin0": 0.3, "k": 0.667} | wrong))


def test_a_ball_cannot_be_struck_backwards() -> None:
    with pytest.raises(ValueError, match="less than nought"):
        roll(-1, SHORT_GRASS)
