"""What the tests of fitting share: exercises written in the test, and a bench for an evening."""

from conewright.checks.check import check_copy
from conewright.fit.bench import Bench
from conewright.fit.memory import Memory
from conewright.model.exercise import Exercise
from conewright.model.problem import is_clean
from conewright.model.session import Tonight
from conewright.notation.reader import read
from conewright.rehearsal.rehearse import rehearse
from conewright.store.figures import load_figures

FIGURES = load_figures()
USUAL = Tonight(here=12, minutes=60, width_m=30.0, depth_m=20.0)  # club grass, under 11, the usual bag


def written(text: str) -> Exercise:
    """An exercise read from text, a passing pattern where it does not say; only such as have nothing to mend."""
    name, rest = text.split("\n", 1)
    exercise, problems = read(text if "kind:" in rest else f"{name}\nkind: passing pattern\n{rest}")
    assert exercise is not None, problems
    assert is_clean(problems), problems
    return exercise


def bench_for(asked: Tonight = USUAL) -> Bench:
    """A bench with an empty memory, and the real rehearsal and checks."""
    return Bench(asked=asked, figures=FIGURES, memory=Memory(), rehearse=rehearse, check=check_copy)
