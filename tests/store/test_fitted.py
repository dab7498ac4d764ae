"""A fitted evening comes back whole, and only while everything it rests on is as it was."""

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from conewright.fit.fit import fit
from conewright.model.rehearsed import Rehearsal
from conewright.model.session import Session
from conewright.store.demo import TONIGHT
from conewright.store.figures import load_figures
from conewright.store.fitted import KEY, from_plain, keep_fitted, last_fitted, to_plain
from conewright.store.keep import Keep, open_keep, recall, remember
from conewright.store.shelf import load_shelf


@pytest.fixture(scope="module")
def evening() -> Session:
    return fit(TONIGHT, load_shelf(), figures=load_figures())


@pytest.fixture
def keep(tmp_path: Path) -> Iterator[Keep]:
    one = open_keep(tmp_path / "club.db", make_folder=False)
    yield one
    one.close()


def test_it_comes_back_whole_after_the_next_start(keep: Keep, evening: Session) -> None:
    assert any(isinstance(copy.rehearsed, Rehearsal) for block in evening.blocks for copy in block.copies)
    assert keep_fitted(keep, TONIGHT, 13, evening)
    keep.close()
    again = open_keep(keep.path, make_folder=False)
    assert last_fitted(again, TONIGHT, 13) == evening
    again.close()


def test_an_evening_where_nothing_fits_comes_back_too(keep: Keep) -> None:
    tonight = replace(TONIGHT, here=3, width_m=6.0, depth_m=5.0, balls=0)
    nothing = fit(tonight, load_shelf(), figures=load_figures())
    assert keep_fitted(keep, tonight, 3, nothing)
    assert last_fitted(keep, tonight, 3) == nothing


def test_it_counts_only_for_the_same_answers(keep: Keep, evening: Session) -> None:
    keep_fitted(keep, TONIGHT, 13, evening)
    assert last_fitted(keep, replace(TONIGHT, here=14), 13) is None
    assert last_fitted(keep, TONIGHT, 12) is None


def test_it_does_not_count_once_the_program_or_its_data_have_changed(
    keep: Keep, evening: Session, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    package = tmp_path / "package"
    package.mkdir()
    (package / "kite.exercise").write_text("one", encoding="utf-8")
    monkeypatch.setattr("conewright.store.fitted.PACKAGE", package)
    keep_fitted(keep, TONIGHT, 13, evening)
    assert last_fitted(keep, TONIGHT, 13) == evening
    (package / "kite.exercise").write_text("two!", encoding="utf-8")
    assert last_fitted(keep, TONIGHT, 13) is None


def test_a_number_that_json_does_not_have_is_not_kept(keep: Keep, evening: Session) -> None:
    assert not keep_fitted(keep, TONIGHT, 13, replace(evening, rolling_share=float("inf")))
    assert last_fitted(keep, TONIGHT, 13) is None


@pytest.mark.parametrize(
    "text",
    [
        "{",
        "[]",
        "7",
        '{"record": "session.Session", "is": {}}',
        '{"record": "subprocess.Popen", "is": {"args": "true"}}',
        '{"record": "session.Session"}',
        '{"one of": "exercise.Bib", "is": "Mauve"}',
        '{"rows": "rehearsed.Knot", "is": [[1]]}',
    ],
)
def test_what_is_damaged_counts_as_nothing(keep: Keep, evening: Session, text: str) -> None:
    keep_fitted(keep, TONIGHT, 13, evening)
    kept = recall(keep, KEY)
    assert isinstance(kept, dict)
    remember(keep, {KEY: {**kept, "evening": text}})
    assert last_fitted(keep, TONIGHT, 13) is None


def test_every_record_of_an_evening_is_known(evening: Session) -> None:
    assert from_plain(to_plain(evening)) == evening
