"""What the tests of fitting share: the figures, the shelf that ships, and one memory as a shell keeps one."""

import pytest

from conewright.fit.memory import Memory
from conewright.model.exercise import Exercise
from conewright.model.figures import Figures
from conewright.store.figures import load_figures
from conewright.store.shelf import load_shelf


@pytest.fixture(scope="session")
def figures() -> Figures:
    """The figures that ship."""
    return load_figures()


@pytest.fixture(scope="session")
def shelf() -> tuple[Exercise, ...]:
    """The exercises that ship."""
    return load_shelf()


@pytest.fixture(scope="session")
def memory() -> Memory:
    """One memory for all tests."""
    return Memory()
