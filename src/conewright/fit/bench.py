"""The bench an evening is worked out on: what is asked, the figures, the memory, and who rehearses and who checks.

It must not know how a choice is made, only how to find out about a copy of an exercise.
"""

from dataclasses import dataclass
from typing import Protocol

from conewright.fit.memory import BoxKey, Memory, Trial, TrialKey
from conewright.fit.scaling import laid_back, scaled
from conewright.model.exercise import Exercise
from conewright.model.figures import Figures
from conewright.model.geometry import Box
from conewright.model.ground import ground_used
from conewright.model.problem import Problem
from conewright.model.rehearsed import Rehearsed
from conewright.model.session import Tonight
from conewright.model.unroll import rounds_of

BOUT_S = 240.0  # a bout of four minutes, as every figure of an exercise is given for


class Rehearser(Protocol):
    """Plays a copy of so many children and gives its figures, with what it found on the way."""

    def __call__(
        self, exercise: Exercise, size: int, *, figures: Figures, age: int, surface: str, bout_s: float = BOUT_S
    ) -> tuple[Rehearsed, tuple[Problem, ...]]:
        """Rehearse one copy."""
        ...


class Checker(Protocol):
    """Reads a copy of so many children and its rehearsal for what is wrong or good to know."""

    def __call__(
        self,
        exercise: Exercise,
        size: int,
        *,
        figures: Figures,
        age: int,
        surface: str,
        rehearsed: tuple[Rehearsed, tuple[Problem, ...]] | None = None,
    ) -> tuple[Problem, ...]:
        """Check one copy; what the rehearsal found is handed in with it and told along with the rest."""
        ...


class Stop(Protocol):
    """Says whether to make do with what has been found so far."""

    def __call__(self) -> bool:
        """True once it is time to stop."""
        ...


@dataclass(frozen=True, slots=True, kw_only=True)
class Bench:
    """Everything needed to try an exercise out for tonight."""

    asked: Tonight
    figures: Figures
    memory: Memory
    rehearse: Rehearser
    check: Checker

    def mark(self, exercise: Exercise) -> str:
        """The digest by which an exercise is known."""
        return self.memory.mark(exercise)

    def trial(self, exercise: Exercise, size: int, scale: float) -> Trial:
        """The rehearsal and the findings of a copy at a scale, from memory where it was tried before."""
        key = TrialKey(
            exercise=self.mark(exercise),
            size=size,
            age=self.asked.age,
            surface=self.asked.surface,
            scale=scale,
            figures=self.memory.mark(self.figures),
        )
        known = self.memory.trials.get(key)
        if known is None:
            known = self._try(exercise, size, scale)
            self.memory.keep_trial(key, known)
        return known

    def _try(self, exercise: Exercise, size: int, scale: float) -> Trial:
        laid = scaled(exercise, scale)
        age, surface = self.asked.age, self.asked.surface
        played = self.rehearse(laid, size, figures=self.figures, age=age, surface=surface, bout_s=BOUT_S)
        findings = self.check(laid, size, figures=self.figures, age=age, surface=surface, rehearsed=played)
        return Trial(rehearsed=laid_back(played[0], scale), findings=findings)

    def box(self, exercise: Exercise, size: int, scale: float) -> Box:
        """The ground a copy at a scale uses, in metres round the exercise's own origin."""
        key = BoxKey(exercise=self.mark(exercise), size=size, scale=scale)
        known = self.memory.boxes.get(key)
        if known is None:
            laid = scaled(exercise, scale)
            known = ground_used(laid, size, rounds_of(laid)[0]) if _stands(laid) else _said(exercise, scale)
            self.memory.keep_box(key, known)
        return known


def _stands(exercise: Exercise) -> bool:
    return bool(exercise.places or exercise.things or exercise.open_play)


def _said(exercise: Exercise, scale: float) -> Box:
    """The ground an exercise says it needs, for one that places nothing."""
    width, depth = (exercise.space.width_m, exercise.space.depth_m) if exercise.space else (0.0, 0.0)
    across, up = width * scale / 2, depth * scale / 2
    return Box(left_m=-across, bottom_m=-up, right_m=across, top_m=up)
