"""Runs against the printed table of sprint times, against a step-by-step twin, and turned back on themselves."""

from math import inf, isclose, pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conewright.rehearsal.running import distance_at_m, run_time_s, running_knots, speed_at_m_s, turn_cost_s

SPRINTS = [
    # top speed, time constant, times at 5, 10, 20 and 30 m
    pytest.param(5.0, 0.92, (1.79, 2.88, 4.92, 6.92), id="U7"),
    pytest.param(5.8, 0.98, (1.66, 2.64, 4.42, 6.15), id="U9"),
    pytest.param(6.3, 1.03, (1.61, 2.53, 4.19, 5.79), id="U11"),
    pytest.param(6.9, 1.08, (1.55, 2.41, 3.95, 5.42), id="U13"),
    pytest.param(7.7, 1.17, (1.49, 2.31, 3.72, 5.05), id="U15"),
    pytest.param(8.3, 1.23, (1.46, 2.23, 3.57, 4.82), id="U17"),
    pytest.param(8.6, 1.25, (1.43, 2.20, 3.50, 4.71), id="adult"),
]

speeds = st.floats(0.5, 12)
constants = st.floats(0.2, 3)
caps = st.floats(0.3, 15)


@pytest.mark.parametrize(("top", "tau", "printed"), SPRINTS)
def test_sprint_times_are_those_of_the_table(top: float, tau: float, printed: tuple[float, ...]) -> None:
    times = tuple(round(run_time_s(d, top_m_s=top, tau_s=tau, cap_m_s=inf), 2) for d in (5, 10, 20, 30))
    assert times == printed


@given(distance=st.floats(0, 500), top=speeds, tau=constants, cap=caps)
def test_the_time_to_a_distance_leads_back_to_it(distance: float, top: float, tau: float, cap: float) -> None:
    t = run_time_s(distance, top_m_s=top, tau_s=tau, cap_m_s=cap)
    back = distance_at_m(t, top_m_s=top, tau_s=tau, cap_m_s=cap)
    assert isclose(back, distance, rel_tol=1e-12, abs_tol=1e-12)


@given(t=st.floats(1e-9, 60), top=speeds, tau=constants, cap=caps)
def test_the_distance_at_a_time_leads_back_to_it(t: float, top: float, tau: float, cap: float) -> None:
    distance = distance_at_m(t, top_m_s=top, tau_s=tau, cap_m_s=cap)
    assert isclose(run_time_s(distance, top_m_s=top, tau_s=tau, cap_m_s=cap), t, rel_tol=1e-12, abs_tol=1e-12)


def test_the_smallest_of_distances_is_run_in_no_time() -> None:
    assert run_time_s(5e-324, top_m_s=1.0, tau_s=2.0, cap_m_s=1.0) == 0


@pytest.mark.parametrize("cap", [2.0, 4.1, 6.2999, 6.3, 9.0])
def test_the_distance_is_the_speed_added_up(cap: float) -> None:
    step, travelled = 1e-3, 0.0
    for count in range(8000):
        travelled += step * speed_at_m_s((count + 0.5) * step, top_m_s=6.3, tau_s=1.03, cap_m_s=cap)
    assert isclose(distance_at_m(8.0, top_m_s=6.3, tau_s=1.03, cap_m_s=cap), travelled, abs_tol=1e-5)


def test_beyond_the_cap_a_run_is_even() -> None:
    def time(distance: float) -> float:
        return run_time_s(distance, top_m_s=6.3, tau_s=1.03, cap_m_s=2.5)

    assert isclose(time(30) - time(20), 10 / 2.5)
    assert speed_at_m_s(time(20), top_m_s=6.3, tau_s=1.03, cap_m_s=2.5) == 2.5


def test_a_cap_at_the_top_speed_or_above_changes_nothing() -> None:
    times = {run_time_s(40, top_m_s=6.3, tau_s=1.03, cap_m_s=cap) for cap in (6.3, 7.0, inf)}
    assert len(times) == 1


@given(top=speeds, tau=constants, cap=caps, near=st.floats(0, 100), more=st.floats(0.001, 100))
def test_further_takes_longer(top: float, tau: float, cap: float, near: float, more: float) -> None:
    assert run_time_s(near + more, top_m_s=top, tau_s=tau, cap_m_s=cap) > run_time_s(
        near, top_m_s=top, tau_s=tau, cap_m_s=cap
    )


def test_no_way_takes_no_time() -> None:
    assert run_time_s(0, top_m_s=6.3, tau_s=1.03, cap_m_s=6.3) == 0
    assert distance_at_m(-1, top_m_s=6.3, tau_s=1.03, cap_m_s=6.3) == 0


@pytest.mark.parametrize(
    ("distance", "top", "tau", "cap"), [(-1, 6, 1, 6), (5, 0, 1, 6), (5, 6, 0, 6), (5, 6, 1, 0), (5, 6, 1, -2)]
)
def test_a_run_that_cannot_be_is_refused(distance: float, top: float, tau: float, cap: float) -> None:
    with pytest.raises(ValueError, match="a run needs"):
        run_time_s(distance, top_m_s=top, tau_s=tau, cap_m_s=cap)


@pytest.mark.parametrize(("degrees", "share"), [(0, 0), (45, 0.146), (90, 0.5), (120, 0.75), (180, 1), (-90, 0.5)])
def test_a_turn_costs_its_share_of_a_half_turn(degrees: float, share: float) -> None:
    assert turn_cost_s(degrees * pi / 180, 0.85) == pytest.approx(0.85 * share, abs=1e-3)


def test_knots_are_the_times_at_which_each_corner_is_reached() -> None:
    knots = running_knots((0, 4, 9, 15), start_s=2.5, top_m_s=6.3, tau_s=1.03, cap_m_s=4.1)
    assert knots[0] == 2.5
    back = [distance_at_m(t - 2.5, top_m_s=6.3, tau_s=1.03, cap_m_s=4.1) for t in knots]
    assert back == pytest.approx([0, 4, 9, 15], abs=1e-12)
