"""The parts of an evening and when each begins, in whole minutes; must not know what is done in them.

Parts share the minutes by weight within bounds. A short evening drops the close, then joins main and opposed work; a
long one adds a warm-up and more of the same parts. Drinks come at changeovers, at least as often as the figures ask.
"""

from dataclasses import dataclass

from conewright.model.figures import Figures
from conewright.model.problem import Problem, Severity
from conewright.model.session import Job, Pause, PauseKind

DRINKS_MIN = 2
CHANGE_MIN = 1
WEIGHTS = {Job.ARRIVAL: 10, Job.WARM_UP: 10, Job.MAIN: 14, Job.OPPOSED: 12, Job.GAME: 15, Job.CLOSE: 4}
LEAST = {Job.MAIN: 10, Job.OPPOSED: 8, Job.GAME: 8, Job.CLOSE: 3}
MOST = {Job.ARRIVAL: 12, Job.WARM_UP: 14, Job.CLOSE: 6}
LONGER = (Job.MAIN, Job.OPPOSED, Job.GAME)  # what a long evening adds after a warm-up, in this order, then again
USUAL = (Job.ARRIVAL, Job.MAIN, Job.OPPOSED, Job.GAME, Job.CLOSE)
JOINED = (Job.ARRIVAL, Job.OPPOSED, Job.GAME)
SHORTEST = (Job.ARRIVAL, Job.GAME)


@dataclass(frozen=True, slots=True, kw_only=True)
class Slot:
    """A stretch of the evening that wants an exercise; `also` is a second part it serves."""

    job: Job
    start_min: int
    minutes: int
    also: Job | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Clock:
    """Slots and the pauses between them fill the minutes exactly; `problems` says what was left out and why."""

    slots: tuple[Slot, ...]
    pauses: tuple[Pause, ...]
    problems: tuple[Problem, ...] = ()


def clock_for(minutes: int, figures: Figures, *, without: frozenset[Job] = frozenset()) -> Clock:
    """The clock of an evening of so many minutes, without the parts that cannot be filled."""
    jobs, problems = _jobs(minutes, figures, without)
    drinks = _drinks(jobs)
    lengths = _lengths(jobs, minutes - sum(drinks), figures)
    fewer = _fewer_drinks(jobs, lengths, drinks, figures)
    longer = _lengths(jobs, minutes - sum(fewer), figures)
    if _gaps_hold(longer, fewer, figures):
        drinks, lengths = fewer, longer
    return _laid_out(jobs, lengths, drinks, problems)


def _least(job: Job, figures: Figures) -> int:
    return LEAST.get(job, round(figures.value("warm_up_min")))


def _most(job: Job, figures: Figures) -> int:
    """A part and the drinks after it stay within the time between drinks."""
    return min(MOST.get(job, 10**6), round(figures.value("drinks_interval_min")) - DRINKS_MIN)


def _drinks(jobs: tuple[Job, ...]) -> tuple[int, ...]:
    return (DRINKS_MIN,) * (len(jobs) - 1)


def _jobs(minutes: int, figures: Figures, without: frozenset[Job]) -> tuple[tuple[Job, ...], tuple[Problem, ...]]:
    for jobs, problems in _forms(minutes):
        kept = tuple(job for job in jobs if job not in without)
        if kept and sum(_least(job, figures) for job in kept) + sum(_drinks(kept)) <= minutes:
            return _lengthened(kept, minutes, figures, without), problems
    return (Job.WARM_UP,), (_alone(minutes, figures),)


def _forms(minutes: int) -> tuple[tuple[tuple[Job, ...], tuple[Problem, ...]], ...]:
    short = _know("no-close", f"{minutes} minutes are short: there is no close, the game ends the evening.")
    joined = _know("joined", f"{minutes} minutes are short: main work and opposed work are one block.")
    shortest = _know("warm-up-and-game", f"{minutes} minutes hold a warm-up with the ball and a game, no more.")
    return ((USUAL, ()), (USUAL[:-1], (short,)), (JOINED, (short, joined)), (SHORTEST, (shortest,)))


def _alone(minutes: int, figures: Figures) -> Problem:
    least = _least(Job.WARM_UP, figures)
    if minutes >= least:
        return _know("warm-up-alone", f"{minutes} minutes hold one block: a warm-up with the ball.")
    return Problem(
        code="warm-up-short",
        severity=Severity.LOOK,
        message=f"{minutes} minutes are less than the {least} a warm-up with the ball should have.",
        hint="Keep it gentle, or find a few more minutes.",
    )


def _know(code: str, message: str) -> Problem:
    return Problem(code=code, severity=Severity.KNOW, message=message)


def _lengthened(jobs: tuple[Job, ...], minutes: int, figures: Figures, without: frozenset[Job]) -> tuple[Job, ...]:
    """More parts until their longest lengths can fill the minutes, each put after the last of its kind."""
    order = tuple(WEIGHTS)
    more = tuple(job for job in LONGER if job not in without) or LONGER
    added = 0
    while sum(_most(job, figures) for job in jobs) + CHANGE_MIN * (len(jobs) - 1) < minutes:
        job = Job.WARM_UP if Job.WARM_UP not in jobs else more[added % len(more)]
        added += job is not Job.WARM_UP
        before = sum(1 for other in jobs if order.index(other) <= order.index(job))
        jobs = (*jobs[:before], job, *jobs[before:])
    return jobs


def _lengths(jobs: tuple[Job, ...], minutes: int, figures: Figures) -> tuple[int, ...]:
    """Whole minutes by weight within the bounds; what the bounds leave over goes one by one to whoever is furthest off.

    Where even the bounds cannot hold it (an evening of one short part) the first part takes the rest.
    """
    if len(jobs) == 1:
        return (minutes,)
    lengths = [_least(job, figures) for job in jobs]
    most = [_most(job, figures) for job in jobs]
    for _ in range(minutes - sum(lengths)):
        open_jobs = [at for at, length in enumerate(lengths) if length < most[at]]
        if not open_jobs:
            break
        neediest = min(open_jobs, key=lambda at: (lengths[at] / WEIGHTS[jobs[at]], at))
        lengths[neediest] += 1
    lengths[0] += minutes - sum(lengths)
    return tuple(lengths)


def _fewer_drinks(
    jobs: tuple[Job, ...], lengths: tuple[int, ...], drinks: tuple[int, ...], figures: Figures
) -> tuple[int, ...]:
    """Plain changeovers, from the last backwards, wherever drinks still come often enough."""
    fewer = drinks
    for at in reversed(range(len(drinks))):
        tried = (*fewer[:at], CHANGE_MIN, *fewer[at + 1 :])
        if _gaps_hold(_lengths(jobs, sum(lengths) + sum(drinks) - sum(tried), figures), tried, figures):
            fewer = tried
    return fewer


def _gaps_hold(lengths: tuple[int, ...], pauses: tuple[int, ...], figures: Figures) -> bool:
    """Whether no stretch from one start of drinks to the next, from the start or to the end is longer than asked."""
    longest = figures.value("drinks_interval_min")
    now = last = 0
    for length, pause in zip(lengths, (*pauses, DRINKS_MIN), strict=True):
        now += length
        if pause == DRINKS_MIN:
            if now - last > longest:
                return False
            last = now
        now += pause
    return True


def also_serves(job: Job, jobs: tuple[Job, ...]) -> Job | None:
    """The arrival warms up where no warm-up follows it."""
    return Job.WARM_UP if job is Job.ARRIVAL and Job.WARM_UP not in jobs else None


def _laid_out(
    jobs: tuple[Job, ...], lengths: tuple[int, ...], pauses: tuple[int, ...], problems: tuple[Problem, ...]
) -> Clock:
    slots: list[Slot] = []
    breaks: list[Pause] = []
    now = 0
    for job, length, pause in zip(jobs, lengths, (*pauses, 0), strict=True):
        slots.append(Slot(job=job, start_min=now, minutes=length, also=also_serves(job, jobs)))
        now += length
        if pause:
            kind = PauseKind.DRINKS if pause == DRINKS_MIN else PauseKind.CHANGEOVER
            breaks.append(Pause(kind=kind, start_min=float(now), minutes=float(pause)))
            now += pause
    return Clock(slots=tuple(slots), pauses=tuple(breaks), problems=problems)
