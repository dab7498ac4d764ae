"""The pages over a fresh data file, asked as a browser on this machine asks."""

from collections.abc import Iterator
from datetime import datetime
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from conewright.store.figures import load_figures
from conewright.store.keep import Keep, open_keep
from conewright.store.shelf import load_shelf, shelf_texts
from conewright.web.app import make_app
from conewright.web.planner import Planner

ADDRESS = "http://127.0.0.1:8017"
NOW = datetime(2025, 6, 2, 20, 15)  # a Monday evening; the squad trains on Tuesday


@pytest.fixture(scope="session")
def planner() -> Iterator[Planner]:
    """One planner for all tests: it remembers what it has fitted."""
    one = Planner(load_shelf=load_shelf, load_figures=load_figures, load_texts=shelf_texts)
    yield one
    one.close()


@pytest.fixture
def keep(tmp_path: Path) -> Iterator[Keep]:
    """A fresh data file with the demo squad."""
    one = open_keep(tmp_path / "club.db", make_folder=False)
    yield one
    one.close()


@pytest.fixture
def client(keep: Keep, planner: Planner) -> TestClient:
    """A browser without scripts."""
    return TestClient(make_app(keep, planner, now=lambda: NOW), base_url=ADDRESS)
