"""The caution about adults that stands first on every plan; must not know exercises. It never blocks a plan."""

from math import ceil

from conewright.fit.wording import children, counted
from conewright.model.figures import ADULT, Figures
from conewright.model.problem import Problem, Severity
from conewright.model.session import Tonight

LOCAL = "Local rules come first."


def adult_cautions(asked: Tonight, figures: Figures) -> tuple[Problem, ...]:
    """Whether the usual figure of adults is met, always told; and what one adult cannot make up for."""
    if asked.age > ADULT:
        return ()
    needed, players = adults_needed(asked, figures)
    figure = f"the usual figure is one for {players} and never fewer than two, so {needed}"
    group = f"{children(asked.here)} under {asked.age}"
    if asked.adults < needed:
        here = counted(asked.adults, "adult") if asked.adults else "No adult"
        ratio = Problem(
            code="adults-few",
            severity=Severity.LOOK,
            message=f"{here} for {group}: {figure}. The plan is given all the same. {LOCAL}",
            hint=f"Fetch {counted(needed - asked.adults, 'more adult')} or make the group smaller;"
            " helpers under 18 do not count.",
        )
    else:
        ratio = Problem(
            code="adults-ratio",
            severity=Severity.LOOK,
            message=f"{counted(asked.adults, 'adult')} for {group}: {figure}. {LOCAL}",
            hint="Have more where there is more risk or a child needs more help; helpers under 18 do not count.",
        )
    return (ratio, _alone(asked.adults)) if asked.adults < 2 else (ratio,)


def adults_needed(asked: Tonight, figures: Figures) -> tuple[int, int]:
    """How many adults the usual figure asks for, and how many children it gives to one."""
    age = min(asked.age, ADULT)
    band, least = figures.band("players_per_adult", age=age), figures.band("adults_least", age=age)
    players = round(band.low) if band is not None and band.low else asked.here
    at_least = round(least.low) if least is not None and least.low else 1
    return max(at_least, ceil(asked.here / max(1, players))), players


def _alone(adults: int) -> Problem:
    watch = "With one adult there is one place to watch" if adults else "With no adult nobody watches"
    return Problem(
        code="one-adult",
        severity=Severity.LOOK,
        message=f"{watch}. Copies that run by themselves save explaining, not watching:"
        f" a missing adult is not made up by them. {LOCAL}",
        hint="Stand where you see everybody, and keep the copies close together.",
    )
