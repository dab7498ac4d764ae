"""An exercise as a coach tells it to the children; must not know how the sentences are found or shown."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class RoleTold:
    """What one of the children is told: where it starts ("You start at Base"), and what it does, sentence by sentence.

    The first sentence goes on where `start` ends, and so begins with a small letter.
    """

    start: str
    sentences: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """A question that shows whether they know where to run, and its answer."""

    asks: str
    answer: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """Three sentences to open with, then role by role, then what holds for all, then two or three questions."""

    opening: tuple[str, ...]
    roles: tuple[RoleTold, ...]
    everybody: tuple[str, ...]
    questions: tuple[Question, ...]
