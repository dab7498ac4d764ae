"""What the coach asks for, made sound so that the rest of fitting need not doubt a number; must not know the shelf."""

import math
from dataclasses import replace

from conewright.model.exercise import Bib
from conewright.model.figures import SURFACES
from conewright.model.problem import Problem, Severity
from conewright.model.session import Tonight

LONGEST_MIN = 360  # no evening is planned beyond this
WIDEST_M = 500.0  # a side of the ground beyond this is read as this much
USUAL_SURFACE = "grass_club"


def sound(tonight: Tonight) -> tuple[Tonight, tuple[Problem, ...]]:
    """Tonight with every number within reason, and what was changed that the coach should hear of."""
    here = max(0, tonight.here)
    surface = tonight.surface if tonight.surface in SURFACES else USUAL_SURFACE
    asked = replace(
        tonight,
        here=here,
        minutes=max(0, tonight.minutes),
        width_m=_side_m(tonight.width_m),
        depth_m=_side_m(tonight.depth_m),
        age=max(1, tonight.age),
        adults=max(0, tonight.adults),
        keepers=min(max(0, tonight.keepers), here),
        balls=max(0, tonight.balls),
        cones=max(0, tonight.cones),
        mini_goals=max(0, tonight.mini_goals),
        goals=max(0, tonight.goals),
        bibs=_bibs(tonight.bibs),
        surface=surface,
        seed=abs(tonight.seed),
    )
    return asked, _surface_problems(tonight.surface)


def _surface_problems(said: str) -> tuple[Problem, ...]:
    if said in SURFACES or said == "grass":
        return ()
    problem = Problem(
        code="surface-unknown",
        severity=Severity.LOOK,
        message=f'The surface "{said}" is not known; the ball is taken to roll as on club grass.',
        hint=f"Say one of {', '.join(SURFACES)}.",
    )
    return (problem,)


def _side_m(said: float) -> float:
    return min(max(0.0, said), WIDEST_M) if math.isfinite(said) else 0.0


def _bibs(said: tuple[tuple[Bib, int], ...]) -> tuple[tuple[Bib, int], ...]:
    counts = {bib: sum(max(0, count) for colour, count in said if colour is bib) for bib in Bib}
    return tuple((bib, count) for bib, count in counts.items() if count)


def cannot_start(asked: Tonight) -> Problem | None:
    """Why no evening can be planned at all, whatever stands on the shelf; None where one can."""
    if asked.here < 1:
        return _stop("nobody-here", "Nobody is counted yet.", "Say how many you expect.")
    if asked.minutes < 1:
        return _stop("no-minutes", "There are no minutes to fill.", "Say how long the evening lasts.")
    if asked.minutes > LONGEST_MIN:
        message = f"{asked.minutes} minutes are more than one evening; {LONGEST_MIN} are the most planned at once."
        return _stop("too-long", message, "Plan the day in parts.")
    if asked.width_m <= 0 or asked.depth_m <= 0:
        return _stop(
            "no-space", "There is no ground to stand on.", "Say how wide and how deep your space is, in metres."
        )
    return None


def _stop(code: str, message: str, hint: str) -> Problem:
    return Problem(code=code, severity=Severity.MEND, message=message, hint=hint)
