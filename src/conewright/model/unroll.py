"""An exercise's script unrolled into one round with everything implied made plain; must not know of time or drawing."""

from conewright.model.exercise import Exercise
from conewright.model.problem import Problem
from conewright.model.round import Round


def unroll(exercise: Exercise, side: int = 0) -> tuple[Round, tuple[Problem, ...]]:
    """The round in which the sides stand at `side` (modulo their number), and what could not be understood of it.

    An exercise without a script gives an empty round.
    """
    raise NotImplementedError
