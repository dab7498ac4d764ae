"""An evening put together by hand for the tests of blocks, sheets and playbacks."""

from functools import cache

from conewright.model.exercise import Bib, Exercise
from conewright.model.geometry import Point
from conewright.model.problem import Problem, Severity
from conewright.model.rehearsed import Rehearsal
from conewright.model.session import Block, Copy, HeadAnswer, Job, Kit, Pause, PauseKind, Session, Tonight
from conewright.rehearsal.rehearse import rehearse
from conewright.store.figures import load_figures
from conewright.store.shelf import load_shelf
from tests.drawing.looking import GATE, exercise_of

TONIGHT = Tonight(here=11, minutes=60, width_m=30, depth_m=22, aim="passing and moving")


@cache
def shelved(name: str) -> Exercise:
    """A shipped exercise."""
    return next(exercise for exercise in load_shelf() if exercise.name == name)


@cache
def rehearsed(size: int) -> Rehearsal:
    """The small gate played by so many."""
    found, _ = rehearse(exercise_of(GATE), size, figures=load_figures(), age=11, surface="grass_club")
    assert isinstance(found, Rehearsal)
    return found


def gate_block() -> Block:
    """Two mirrored copies, one in yellow, one in blue."""
    return Block(
        job=Job.MAIN,
        exercise=exercise_of(GATE),
        start_min=12,
        minutes=18,
        copies=(
            Copy(size=6, origin=Point(7, 4), bib=Bib.YELLOW, rehearsed=rehearsed(6)),
            Copy(size=5, origin=Point(23, 4), mirrored=True, bib=Bib.BLUE, rehearsed=rehearsed(5)),
        ),
        kit=Kit(balls=2, cones=6, bibs=((Bib.YELLOW, 6), (Bib.BLUE, 5))),
        groups="Yellow six, Blue five",
        why="it speaks of passing",
        findings=(),
        answers=tuple(
            HeadAnswer(
                here=here,
                exercise="Small gate",
                words=f"two copies, {here - here // 2} and {here // 2}",
                sizes=(here - here // 2, here // 2),
                waiting_share=0.4,
                contacts_a_minute=12.0,
                longest_wait_s=9.0,
                rounds_a_minute=7.0,
            )
            for here in range(9, 14)
        ),
    )


def open_block(name: str, size: int, *, start: float, minutes: float, job: Job) -> Block:
    """One copy of a shipped open-play exercise in the middle of the ground."""
    return Block(
        job=job,
        exercise=shelved(name),
        start_min=start,
        minutes=minutes,
        copies=(Copy(size=size, origin=Point(15, 11)),),
        kit=Kit(balls=12, cones=4),
        groups=f"all {size} together",
        why="",
        findings=(),
        resting=TONIGHT.here - size,
    )


def session() -> Session:
    """Three blocks with changeovers, and what there is to see to."""
    blocks = (
        open_block("Weather vane", 11, start=0, minutes=10, job=Job.ARRIVAL),
        gate_block(),
        open_block("Borrowed bibs", 8, start=32, minutes=28, job=Job.GAME),
    )
    problems = (
        Problem(code="kit-at-once", severity=Severity.KNOW, message="The most in use at one time: 12 balls."),
        Problem(code="rolling-low", severity=Severity.LOOK, message="A ball rolls for 60 % of the evening"),
        Problem(
            code="adults-ratio", severity=Severity.LOOK, message="2 adults for 11 children. Local rules come first."
        ),
    )
    pauses = (
        Pause(kind=PauseKind.CHANGEOVER, start_min=10, minutes=2),
        Pause(kind=PauseKind.DRINKS, start_min=30, minutes=2),
    )
    return Session(tonight=TONIGHT, blocks=blocks, pauses=pauses, problems=problems)
