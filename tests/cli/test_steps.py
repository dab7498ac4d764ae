"""Steps up and down on the command line: proved with every number, and asked for by name."""

import json
from pathlib import Path

import pytest

from tests.cli.asking import answer

TEXT = """\
exercise: Stem and branch
kind: passing pattern
for 5 to 6 players, under 9 to under 13

Base at 0, 0 is a line, a ball each.
Stem at 0, 8 holds one.
Left at -6, 15 and Right at 6, 15 are lines.
Start with two at Base, one at Stem, the rest shared between Left and Right.

Each round, Left and Right in turn (call it Side):
1. Stem checks away, then shows.
2. Base passes firmly to Stem, then runs to Stem.
3. Stem turns in two touches, passes ahead of Side, then runs to Side.
4. Side dribbles to the end of Base round the outside.

With 10 to 12: two copies.

harder "first time": as before, but in 3 Stem turns first time.
harder "closed down": as written, but one more: Shadow at 0, 10 is passive;
Shadow changes with Left every 6 rounds. For 6 to 8.
"""
BROKEN = """
easier "no turn": as before, but leave out 2.
"""


@pytest.fixture
def stem(tmp_path: Path) -> Path:
    path = tmp_path / "stem-and-branch.exercise"
    path.write_text(TEXT, encoding="utf-8")
    return path


def test_every_number_and_every_step_is_proved(capsys: pytest.CaptureFixture[str], stem: Path) -> None:
    code, out, _ = answer(capsys, "check", "--every-n", stem, "--json")
    (file,) = json.loads(out)["files"]
    assert code == 0
    assert [one["here"] for one in file["answers"]] == [5, 6, 10, 11, 12]
    assert [(step["kind"], step["step"]) for step in file["steps"]] == [
        ("harder", "first time"),
        ("harder", "closed down"),
    ]
    first, closed = file["steps"]
    assert [one["here"] for one in first["answers"]] == [5, 6, 10, 11, 12]
    assert [one["here"] for one in closed["answers"]] == [6, 7, 8]
    assert first["clean"]
    assert closed["clean"]
    _, words, _ = answer(capsys, "check", "--every-n", stem)
    assert 'harder "first time", for 5 to 6 and 10 to 12: runs with every number' in words
    assert 'harder "closed down", for 6 to 8: runs with every number' in words
    assert words.endswith(
        "with 5 to 6 and 10 to 12 children under 11 on grass: runs with every number, and so do its 2 steps.\n"
    )


def test_one_number_leaves_the_steps_alone(capsys: pytest.CaptureFixture[str], stem: Path) -> None:
    _, out, _ = answer(capsys, "check", stem, "--json")
    assert json.loads(out)["files"][0]["steps"] == []


def test_a_step_that_does_not_run_is_to_be_mended(capsys: pytest.CaptureFixture[str], stem: Path) -> None:
    stem.write_text(TEXT + BROKEN, encoding="utf-8")
    assert answer(capsys, "check", stem)[0] == 0
    code, out, _ = answer(capsys, "check", "--every-n", stem)
    assert code == 1
    assert "(no-ball)" in out
    assert out.endswith('runs with every number; to mend in easier "no turn".\n')
    code, out, _ = answer(capsys, "check", stem, "--step", "no turn")
    assert code == 1
    assert "Stem and branch, no turn with 5 children" in out


def test_a_step_has_its_own_numbers(capsys: pytest.CaptureFixture[str], stem: Path) -> None:
    code, out, _ = answer(capsys, "rehearse", stem, "--n", 8, "--step", "Closed  Down", "--json")
    form = json.loads(out)
    assert code == 0
    assert form["exercise"] == "Stem and branch, closed down"
    assert form["copies"][0]["players"] == 8
    assert answer(capsys, "rehearse", stem, "--n", 8)[0] == 1


def test_a_step_plays_otherwise(capsys: pytest.CaptureFixture[str], stem: Path) -> None:
    rounds = []
    for words in ((), ("--step", "first time")):
        _, out, _ = answer(capsys, "rehearse", stem, "--n", 6, "--json", *words)
        rounds.append(json.loads(out)["copies"][0]["rounds_a_minute"])
    assert rounds[0] < rounds[1]


def test_a_step_is_drawn_and_told(capsys: pytest.CaptureFixture[str], stem: Path) -> None:
    path = stem.with_suffix(".svg")
    code, out, _ = answer(capsys, "draw", stem, "-o", path, "--step", "closed down", "--n", 6)
    assert code == 0
    assert "Stem and branch, closed down, 6 children" in out
    assert "Shadow" in path.read_text(encoding="utf-8")
    code, out, _ = answer(capsys, "explain", stem, "--step", "closed down")
    assert code == 0
    assert "You start at Shadow: stay close and get in the way" in out


@pytest.mark.parametrize("command", [("check",), ("rehearse", "--n", "6"), ("draw", "-o", "x.svg"), ("explain",)])
def test_a_step_that_is_not_there(
    capsys: pytest.CaptureFixture[str], stem: Path, monkeypatch: pytest.MonkeyPatch, command: tuple[str, ...]
) -> None:
    monkeypatch.chdir(stem.parent)
    for name, told in (("frist time", 'did you mean "first time"'), ("zzz", 'it has "first time" and "closed down"')):
        code, out, err = answer(capsys, *command, stem, "--step", name)
        assert (code, out) == (2, "")
        assert f'has no step "{name}"; {told}' in err
        assert len(err.splitlines()) == 1
    stem.write_text(TEXT.split("harder")[0], encoding="utf-8")
    assert "it has none" in answer(capsys, *command, stem, "--step", "first time")[2]
