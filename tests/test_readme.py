"""What the README shows is tried: its exercise reads and runs, its commands are answered."""

import re
import shlex
from pathlib import Path

import pytest

from conewright import check, load_figures, read
from conewright.cli import main
from conewright.model.problem import is_clean

ROOT = Path(__file__).parents[1]
README = (ROOT / "README.md").read_text(encoding="utf-8")
BLOCKS = re.findall(r"```\n(.*?)```", README, flags=re.DOTALL)
EXERCISE = next(block for block in BLOCKS if block.startswith("exercise:"))
COMMANDS = re.findall(r"^python3 start\.py run (.+)$", README, flags=re.MULTILINE)


def test_it_is_short_and_its_links_lead_somewhere() -> None:
    assert len(README.splitlines()) < 100
    for link in re.findall(r"\]\(([^)#]+)\)", README):
        assert (ROOT / link).exists(), link


def test_the_exercise_reads_and_has_nothing_to_mend() -> None:
    exercise, problems = read(EXERCISE)
    assert not problems
    figures = load_figures()
    for n in range(4, 9):
        assert is_clean(check(exercise, n, figures=figures, age=11, surface="grass_club"))


def test_there_are_commands() -> None:
    assert len(COMMANDS) == 5


@pytest.mark.parametrize("command", COMMANDS)
def test_commands_answer(command: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "two-banks.exercise").write_text(EXERCISE, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    assert main(shlex.split(command)) == 0
    if "-o" in command:
        assert (tmp_path / shlex.split(command)[-1]).stat().st_size > 1000


def test_the_test_command_is_what_ci_runs() -> None:
    assert "python3 start.py test" in README
    assert "python3 start.py test" in (ROOT / ".ci" / "run").read_text(encoding="utf-8")
