"""How a passed ball travels along the ground: it skids first, slowing hard, then rolls, slowing gently.

A struck ball leaves the foot with less spin than rolling has; friction turns it until it grips. Everything is a closed
form. This module must not know who passes, how old they are, nor what the pass is for.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt

from conewright.model.figures import Figures

GRAVITY_M_S2 = 9.81


@dataclass(frozen=True, slots=True, kw_only=True)
class Ground:
    """What a ball meets: sliding friction and rolling deceleration, and the spin and inertia it comes with."""

    mu: float
    a_roll: float
    spin0: float
    k: float

    def __post_init__(self) -> None:
        """Refuse ground on which a ball would never slow, and spin beyond rolling."""
        if self.mu <= 0 or self.a_roll <= 0 or self.k <= 0 or not 0 <= self.spin0 <= 1:
            raise ValueError("friction, deceleration and inertia must be above nought, and the spin between 0 and 1")

    @property
    def a_skid(self) -> float:
        """Give the deceleration while the ball skids, in m/s2."""
        return self.mu * GRAVITY_M_S2

    @property
    def kept(self) -> float:
        """Give the share of the release speed left when rolling begins: (1 + k s) / (1 + k)."""
        return (1 + self.k * self.spin0) / (1 + self.k)

    @property
    def skid_s_per_m_s(self) -> float:
        """Give the seconds of skid for each m/s of release: (1 - s) / (mu g (1 + 1 / k))."""
        return (1 - self.spin0) / (self.a_skid * (1 + 1 / self.k))


@dataclass(frozen=True, slots=True, kw_only=True)
class Roll:
    """A ball struck along the ground, in its two parts."""

    release_m_s: float
    rolling_m_s: float
    skid_s: float
    skid_m: float
    a_skid: float
    a_roll: float

    @property
    def stop_distance_m(self) -> float:
        """Give the metres after which the ball lies still."""
        return self.skid_m + self.rolling_m_s**2 / (2 * self.a_roll)

    @property
    def stop_time_s(self) -> float:
        """Give the seconds after which the ball lies still."""
        return self.skid_s + self.rolling_m_s / self.a_roll

    def travel_time_s(self, distance_m: float) -> float | None:
        """Give the seconds to a distance, or None if the ball stops short of it."""
        if distance_m < self.skid_m:
            return _slowing_time_s(distance_m, self.release_m_s, self.a_skid)
        if distance_m > self.stop_distance_m:
            return None
        return self.skid_s + _slowing_time_s(distance_m - self.skid_m, self.rolling_m_s, self.a_roll)

    def speed_at(self, distance_m: float) -> float:
        """Give the speed in m/s at a distance; nought where the ball has stopped short of it."""
        if distance_m < self.skid_m:
            return sqrt(self.release_m_s**2 - 2 * self.a_skid * distance_m)
        return sqrt(max(0.0, self.rolling_m_s**2 - 2 * self.a_roll * (distance_m - self.skid_m)))

    def distance_at(self, t: float) -> float:
        """Give the metres travelled after so many seconds; it stays at the end once the ball lies still."""
        if t <= 0:
            return 0.0
        if t < self.skid_s:
            return t * (self.release_m_s - self.a_skid * t / 2)
        rolled_s = min(t, self.stop_time_s) - self.skid_s
        return self.skid_m + rolled_s * (self.rolling_m_s - self.a_roll * rolled_s / 2)


def ground_on(figures: Figures, surface: str) -> Ground:
    """Give what a passed ball meets on a surface, from the figures. Raises UnknownFigure for an unknown surface."""
    return Ground(
        mu=figures.on("slide_friction", surface),
        a_roll=figures.on("roll_deceleration_m_s2", surface),
        spin0=figures.value("ball_spin_share"),
        k=figures.value("ball_shell_share"),
    )


def roll(release_m_s: float, ground: Ground) -> Roll:
    """Strike a ball along the ground at a release speed in m/s. Raises ValueError for a negative one."""
    if release_m_s < 0:
        raise ValueError("a ball cannot be released at less than nought")
    rolling_m_s = ground.kept * release_m_s
    skid_s = ground.skid_s_per_m_s * release_m_s
    return Roll(
        release_m_s=release_m_s,
        rolling_m_s=rolling_m_s,
        skid_s=skid_s,
        skid_m=skid_s * (release_m_s + rolling_m_s) / 2,
        a_skid=ground.a_skid,
        a_roll=ground.a_roll,
    )


def release_for_arrival(distance_m: float, arrival_m_s: float, ground: Ground) -> float:
    """Give the release speed in m/s with which a ball still has an arrival speed at a distance.

    Where it rolls on arrival, v_arrival^2 = v0^2 (kept^2 + 2 a c) - 2 a d, with c v0^2 the length of the skid; where
    it still skids, v_arrival^2 = v0^2 - 2 mu g d.
    """
    skid_m_per_square = ground.skid_s_per_m_s * (1 + ground.kept) / 2
    left = ground.kept**2 + 2 * ground.a_roll * skid_m_per_square
    rolling = sqrt((arrival_m_s**2 + 2 * ground.a_roll * distance_m) / left)
    if skid_m_per_square * rolling**2 <= distance_m:
        return rolling
    return sqrt(arrival_m_s**2 + 2 * ground.a_skid * distance_m)


def pass_release_m_s(distance_m: float, *, short: float, firm: float, arrival: float, ground: Ground) -> float:
    """Give the release speed a passer picks: enough to arrive as wished, never softer than short nor beyond firm."""
    return min(firm, max(short, release_for_arrival(distance_m, arrival, ground)))


def _slowing_time_s(distance_m: float, speed_m_s: float, slowing_m_s2: float) -> float:
    """Give the time to a distance while slowing evenly, in the form that loses no digits for a short way."""
    left_m_s = sqrt(max(0.0, speed_m_s**2 - 2 * slowing_m_s2 * distance_m))
    return 2 * distance_m / (speed_m_s + left_m_s) if distance_m > 0 else 0.0
