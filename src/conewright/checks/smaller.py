"""Whether an exercise can be laid out in smaller copies that run, and how that is written; must not know of lines."""

from conewright.checks.case import Case
from conewright.model.layout import layout_for, one_copy
from conewright.model.problem import is_clean
from conewright.rehearsal.durations import pupil
from conewright.rehearsal.recursion import played_out


def two_copies(case: Case) -> str:
    """The sentence that makes two copies of a case, where its numbers hold half and half runs; else ""."""
    halves = {case.size - case.size // 2, case.size // 2}
    if 0 in halves or not all(layout_for(case.exercise, half) and _runs(case, half) for half in halves):
        return ""
    return f'"With {case.size}: two copies, 5 m apart."'


def _runs(case: Case, size: int) -> bool:
    """True where a copy of `size` plays on for some rounds; a contest is taken to."""
    if case.contest:
        return True
    own = one_copy(case.exercise, size)
    child = pupil(case.figures, age=case.age, surface=case.surface)
    play = played_out(own, case.rounds, child, size=size, bout_s=0.0)
    return play is not None and is_clean(tuple(play.problems))
