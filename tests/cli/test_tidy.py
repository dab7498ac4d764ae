"""`tidy`: the one form, written whole or not at all, and never at the cost of what a text says."""

import os
import stat
from pathlib import Path

import pytest

from conewright.model.problem import Problem
from conewright.notation.printer import write
from conewright.notation.reader import read
from conewright.notation.spans import without_spans
from conewright.store.shelf import shelf_texts
from tests.cli.asking import answer

LOOSE = """\
kind: passing pattern
exercise:   Two  banks
for 4 to 8 children, under 9 to under 14
Near Bank at 0, 0 is a queue with the ball.   Far Bank at 0, 8 is a line.

Each round:
1. Near Bank plays to Far Bank, then follows the pass.
2. Far Bank passes to Near Bank. Far Bank runs to Near Bank.
"""
TIDY = """\
exercise: Two banks
kind: passing pattern
for 4 to 8 players, under 9 to under 14

Near Bank at 0, 0 is a line with the ball.
Far Bank at 0, 8 is a line.

Each round:
1. Near Bank passes to Far Bank, then runs to Far Bank.
2. Far Bank passes to Near Bank, then runs to Near Bank.
"""


@pytest.fixture
def loose(tmp_path: Path) -> Path:
    path = tmp_path / "two-banks.exercise"
    path.write_text(LOOSE, encoding="utf-8")
    return path


def test_it_rewrites_the_file_and_twice_changes_nothing(capsys: pytest.CaptureFixture[str], loose: Path) -> None:
    loose.chmod(0o640)
    code, out, err = answer(capsys, "tidy", loose)
    assert (code, err) == (0, "")
    assert out == f"{loose}: Two banks, in its tidy form.\n"
    assert loose.read_text(encoding="utf-8") == TIDY
    assert stat.S_IMODE(loose.stat().st_mode) == 0o640
    before = loose.stat().st_mtime_ns
    assert answer(capsys, "tidy", loose) == (0, f"{loose}: tidy already.\n", "")
    assert loose.stat().st_mtime_ns == before
    assert os.listdir(loose.parent) == [loose.name]


def test_line_ends_of_another_system_become_plain(capsys: pytest.CaptureFixture[str], loose: Path) -> None:
    loose.write_bytes(TIDY.replace("\n", "\r\n").encode())
    assert answer(capsys, "tidy", loose, "--check")[0] == 1
    assert answer(capsys, "tidy", loose)[0] == 0
    assert loose.read_bytes() == TIDY.encode()


def test_check_only_says_so(capsys: pytest.CaptureFixture[str], loose: Path) -> None:
    assert answer(capsys, "tidy", "--check", loose) == (1, f"{loose}: would be changed, first at line 1.\n", "")
    assert loose.read_text(encoding="utf-8") == LOOSE
    loose.write_text(TIDY, encoding="utf-8")
    assert answer(capsys, "tidy", "--check", loose) == (0, f"{loose}: tidy already.\n", "")
    loose.write_text(f"{TIDY}# late\n", encoding="utf-8")
    code, out, _ = answer(capsys, "tidy", "--check", loose)
    assert code == 1
    assert "first at line 11" in out
    assert "comments, the first at line 11" in out


def test_it_writes_elsewhere_and_leaves_the_file(capsys: pytest.CaptureFixture[str], loose: Path) -> None:
    elsewhere = loose.with_name("tidy.exercise")
    code, out, _ = answer(capsys, "tidy", loose, "-o", elsewhere)
    assert (code, out) == (0, f"{elsewhere}: Two banks, in its tidy form.\n")
    assert elsewhere.read_text(encoding="utf-8") == TIDY
    assert loose.read_text(encoding="utf-8") == LOOSE
    answer(capsys, "tidy", elsewhere, "-o", loose)
    assert loose.read_text(encoding="utf-8") == TIDY


def test_a_link_still_leads_to_its_file(capsys: pytest.CaptureFixture[str], loose: Path) -> None:
    link = loose.with_name("link.exercise")
    link.symlink_to(loose)
    assert answer(capsys, "tidy", link)[0] == 0
    assert link.is_symlink()
    assert loose.read_text(encoding="utf-8") == TIDY


@pytest.mark.parametrize("words", [(), ("--check",), ("--drop-comments",)])
def test_a_text_to_be_mended_is_left_as_it_is(
    capsys: pytest.CaptureFixture[str], loose: Path, words: tuple[str, ...]
) -> None:
    broken = LOOSE.replace("to Far Bank,", "to Fra Bank,")
    loose.write_text(broken, encoding="utf-8")
    code, out, err = answer(capsys, "tidy", loose, *words)
    assert (code, err) == (1, "")
    assert "line 7" in out
    assert "left as it is" in out
    assert loose.read_text(encoding="utf-8") == broken


def test_comments_are_not_lost_unasked(capsys: pytest.CaptureFixture[str], loose: Path) -> None:
    noted = f"# mine\n{LOOSE}# too\n"
    loose.write_text(noted, encoding="utf-8")
    code, out, err = answer(capsys, "tidy", loose)
    assert (code, out) == (2, "")
    assert "has comments (2 lines from line 1 on)" in err
    assert len(err.splitlines()) == 1
    assert loose.read_text(encoding="utf-8") == noted
    assert answer(capsys, "tidy", loose, "--drop-comments")[0] == 0
    assert loose.read_text(encoding="utf-8") == TIDY


def test_a_form_that_would_say_something_else_is_not_written(
    capsys: pytest.CaptureFixture[str], loose: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("conewright.cli.tidy.written", lambda exercise: write(exercise).replace("Far", "Fat"))
    code, out, _ = answer(capsys, "tidy", loose)
    assert code == 1
    assert "no tidy form" in out
    assert loose.read_text(encoding="utf-8") == LOOSE


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("--check", "-o", "x.exercise"), "leave one of them out"),
        (("-o", "no/x.exercise"), "there is no folder"),
        (("-o", "."), "is a folder"),
    ],
)
def test_wrong_words(capsys: pytest.CaptureFixture[str], loose: Path, words: tuple[str, ...], told: str) -> None:
    code, out, err = answer(capsys, "tidy", loose, *words)
    assert (code, out) == (2, "")
    assert told in err
    assert len(err.splitlines()) == 1


def test_a_file_with_nothing_in_it(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    path = tmp_path / "empty.exercise"
    path.write_text("", encoding="utf-8")
    code, _, err = answer(capsys, "tidy", path)
    assert code == 2
    assert "conewright check says why" in err


@pytest.mark.parametrize(("name", "text"), shelf_texts())
def test_every_shipped_exercise_has_a_tidy_form(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, name: str, text: str
) -> None:
    path = tmp_path / name
    path.write_text(text, encoding="utf-8")
    assert answer(capsys, "tidy", path, "--drop-comments")[0] == 0
    tidied = path.read_text(encoding="utf-8")
    problems: tuple[Problem, ...] = read(tidied)[1]
    assert problems == ()
    assert without_spans(read(tidied)[0]) == without_spans(read(text)[0])
    assert answer(capsys, "tidy", path, "--check")[0] == 0
