"""What fitting remembers between calls, keyed by content; a shell makes one, keeps it and hands it in each time.

An exercise is known by a digest of its whole content, worked out once for each record. Nothing here is needed for an
answer, only for its speed. This module must not know what is remembered for what.
"""

from dataclasses import dataclass, field
from hashlib import blake2b
from typing import Any

from conewright.model.exercise import Exercise
from conewright.model.figures import Figures
from conewright.model.geometry import Box
from conewright.model.problem import Problem
from conewright.model.rehearsed import Rehearsed
from conewright.model.session import Tonight

MOST_TRIALS = 600
MOST_BOXES = 20000
MOST_CHOICES = 4000


@dataclass(frozen=True, slots=True, kw_only=True)
class Trial:
    """What rehearsing and checking a copy gave; tracks lie in the coordinates of the written exercise."""

    rehearsed: Rehearsed
    findings: tuple[Problem, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class TrialKey:
    """Everything a trial rests on."""

    exercise: str
    size: int
    age: int
    surface: str
    scale: float
    figures: str


@dataclass(frozen=True, slots=True, kw_only=True)
class BoxKey:
    """Everything the ground of a copy rests on."""

    exercise: str
    size: int
    scale: float


@dataclass(frozen=True, slots=True, kw_only=True)
class ChoiceKey:
    """Everything that what an exercise offers on an evening rests on."""

    exercise: str
    asked: Tonight
    figures: str
    copies: int | None


@dataclass(slots=True)
class Memory:
    """Trials, grounds, choices and digests; the oldest go when there are too many.

    What rehearses and what checks is not part of a key: a memory serves one pair of them.
    """

    trials: dict[TrialKey, Trial] = field(default_factory=dict)
    boxes: dict[BoxKey, Box] = field(default_factory=dict)
    choices: dict[ChoiceKey, Any] = field(default_factory=dict)
    marks: dict[int, tuple[Exercise | Figures, str]] = field(default_factory=dict)

    def mark(self, record: Exercise | Figures) -> str:
        """A digest of the record's content, worked out once for each record held."""
        known = self.marks.get(id(record))
        if known is not None and known[0] is record:
            return known[1]
        mark = blake2b(repr(record).encode(), digest_size=16).hexdigest()
        _make_room(self.marks, MOST_BOXES)
        self.marks[id(record)] = (record, mark)
        return mark

    def keep_trial(self, key: TrialKey, trial: Trial) -> None:
        """Remember a trial."""
        _make_room(self.trials, MOST_TRIALS)
        self.trials[key] = trial

    def keep_box(self, key: BoxKey, box: Box) -> None:
        """Remember the ground of a copy."""
        _make_room(self.boxes, MOST_BOXES)
        self.boxes[key] = box

    def keep_choice(self, key: ChoiceKey, choice: object) -> None:
        """Remember what an exercise offers."""
        _make_room(self.choices, MOST_CHOICES)
        self.choices[key] = choice


def _make_room(held: dict[Any, Any], most: int) -> None:
    for key in list(held)[: max(0, len(held) - most + 1)]:
        held.pop(key, None)
