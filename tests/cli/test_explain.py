"""`explain`: what a coach tells the children, in a terminal."""

from pathlib import Path

import pytest

from conewright.cli.explain import told_words
from conewright.notation.telling import told
from conewright.store.shelf import load_shelf, shelf_texts
from tests.cli.asking import answer

NAME = "stem-and-branch.exercise"
TEXT = dict(shelf_texts())[NAME]
EXERCISE = next(one for one in load_shelf() if one.name == "Stem and branch")


@pytest.fixture
def shelved(tmp_path: Path) -> Path:
    path = tmp_path / NAME
    path.write_text(TEXT, encoding="utf-8")
    return path


def test_it_tells_the_number_it_is_best_with(capsys: pytest.CaptureFixture[str], shelved: Path) -> None:
    code, out, err = answer(capsys, "explain", shelved)
    assert (code, err) == (0, "")
    assert out == f"Stem and branch, to 6 children\n\n{told_words(told(EXERCISE, 6))}\n"
    assert "\nYou start at Stem: " in out
    assert "\nAsk them:\n  - " in out


def test_it_tells_the_largest_of_several_copies(capsys: pytest.CaptureFixture[str], shelved: Path) -> None:
    code, out, _ = answer(capsys, "explain", shelved, "--n", "13")
    assert code == 0
    assert out.startswith("Stem and branch, to 13 children in 2 copies of 7 and 6, here to the 7\n")
    assert told_words(told(EXERCISE, 7)) in out


def test_what_cannot_be_read_is_told_first(capsys: pytest.CaptureFixture[str], shelved: Path) -> None:
    shelved.write_text(TEXT.replace("4. Side dribbles", "4. Side dribblz"), encoding="utf-8")
    code, out, _ = answer(capsys, "explain", shelved)
    assert code == 1
    assert out.index("dribblz") < out.index("Ask them:")


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("--n", "59"), "is not for 59 children"),
        (("--n", "few"), "--n"),
        (("--step", "upside down"), "has no step"),
    ],
)
def test_wrong_words(capsys: pytest.CaptureFixture[str], shelved: Path, words: tuple[str, ...], told: str) -> None:
    code, out, err = answer(capsys, "explain", shelved, *words)
    assert (code, out) == (2, "")
    assert told in err
    assert len(err.splitlines()) == 1
