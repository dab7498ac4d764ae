"""The sheet is set in a process of its own, and the server stays small."""

import pytest

from conewright.store.demo import TONIGHT
from conewright.web.planner import Planner
from conewright.web.press import PressFailed, pressed


def test_a_sheet_comes_back(planner: Planner) -> None:
    session = planner.session(TONIGHT, planned=TONIGHT.here)
    assert pressed(session, title="Tonight", when="Tuesday 3 June").startswith(b"%PDF")


def test_a_failure_is_told_in_its_own_words() -> None:
    with pytest.raises(PressFailed, match="Error"):
        pressed("no session", title="Tonight", when="")  # type: ignore[arg-type]
