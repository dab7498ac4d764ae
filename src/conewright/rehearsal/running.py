"""How long a run takes: a sprint that grows towards a top speed, held at a cap, with a cost for each turn.

Everything is a closed form or a Newton step on one number. This module must not know who runs, nor why, nor how
old they are: speeds and times come in as numbers.
"""

from __future__ import annotations

from collections.abc import Iterable
from math import expm1, inf, log1p, sin, sqrt

TOLERANCE = 1e-13
MOST_STEPS = 50


def run_time_s(distance_m: float, *, top_m_s: float, tau_s: float, cap_m_s: float) -> float:
    """Give the seconds a run of so many metres takes from standing.

    The speed is min(cap, top * (1 - exp(-t / tau))); a cap at or above the top is never reached. Raises ValueError
    for a negative distance or a speed or time constant that is not above nought.
    """
    if distance_m <= 0 or top_m_s <= 0 or tau_s <= 0 or cap_m_s <= 0:
        if distance_m == 0:
            return 0.0
        raise ValueError("a run needs a distance of nought or more, and speeds and a time constant above nought")
    if cap_m_s < top_m_s:
        time_to_cap_s = -tau_s * log1p(-cap_m_s / top_m_s)
        beyond_m = distance_m - (top_m_s * time_to_cap_s - tau_s * cap_m_s)
        if beyond_m >= 0:
            return time_to_cap_s + beyond_m / cap_m_s
    return tau_s * _growth_time(distance_m / (top_m_s * tau_s))


def distance_at_m(t: float, *, top_m_s: float, tau_s: float, cap_m_s: float) -> float:
    """Give the metres run after so many seconds from standing; nought before the start."""
    if t <= 0:
        return 0.0
    time_to_cap_s = _time_to_cap_s(top_m_s, tau_s, cap_m_s)
    if t >= time_to_cap_s:
        return top_m_s * time_to_cap_s - tau_s * cap_m_s + cap_m_s * (t - time_to_cap_s)
    return top_m_s * (t + tau_s * expm1(-t / tau_s))


def speed_at_m_s(t: float, *, top_m_s: float, tau_s: float, cap_m_s: float) -> float:
    """Give the speed so many seconds after a start from standing; nought before the start."""
    return 0.0 if t <= 0 else min(cap_m_s, -top_m_s * expm1(-t / tau_s))


def turn_cost_s(angle_rad: float, turn_180_s: float) -> float:
    """Give the seconds a turn adds: that of a half turn times the squared sine of half the angle.

    The energy of a change of velocity goes as sin^2(angle / 2).
    """
    return turn_180_s * sin(angle_rad / 2) ** 2


def running_knots(
    lengths_m: Iterable[float], *, start_s: float, top_m_s: float, tau_s: float, cap_m_s: float
) -> tuple[float, ...]:
    """Give the time at which a run begun at start_s reaches each length along its path, in metres from its start."""
    return tuple(
        start_s + run_time_s(length_m, top_m_s=top_m_s, tau_s=tau_s, cap_m_s=cap_m_s) for length_m in lengths_m
    )


def _time_to_cap_s(top_m_s: float, tau_s: float, cap_m_s: float) -> float:
    return -tau_s * log1p(-cap_m_s / top_m_s) if cap_m_s < top_m_s else inf


def _growth_time(scaled_m: float) -> float:
    """Solve u - 1 + exp(-u) = y for u, by Newton from a start a little off, kept between sqrt(2 y) and 1 + y.

    The left side is convex and rises, and both bounds follow from its series, so no step can leave them for long.
    """
    low = sqrt(2 * scaled_m)
    if low == 0:
        return 0.0
    high = 1 + scaled_m
    u = min(high, low * (1 + low * (1 / 6 + low / 36)))
    for _ in range(MOST_STEPS):
        slope = -expm1(-u)
        step = (u - slope - scaled_m) / slope
        u = min(max(u - step, low), high)
        if abs(step) < TOLERANCE * (1 + u):
            break
    return u
