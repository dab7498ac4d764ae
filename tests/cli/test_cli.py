"""The command line as a person uses it: what it prints, what it gives back, and how it takes what is wrong."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from conewright.cli import COMMANDS, main
from conewright.cli.command import Serve
from conewright.model.exercise import Exercise
from conewright.store.shelf import load_shelf, shelf_texts

ROOT = Path(__file__).parents[2]
SHELF = dict(shelf_texts())
SCRIPTED = next(one for one in load_shelf() if one.script and all(step.contest is None for step in one.script.steps))
PLAYED = next(one for one in load_shelf() if one.open_play and not one.script)
BROKEN = """\
exercise: Nowhere
kind: passing pattern
for 4 to 8 players

Base at 0, 0 is a line with the ball.
Stem at 0, 8 holds one.

Each round:
1. Base passes to Stemm, then runs to Stem.
"""


def file_for(folder: Path, exercise: Exercise) -> Path:
    name = "-".join(exercise.name.lower().split()) + ".exercise"
    path = folder / name
    path.write_text(SHELF[name], encoding="utf-8")
    return path


@pytest.fixture
def scripted(tmp_path: Path) -> Path:
    return file_for(tmp_path, SCRIPTED)


@pytest.fixture
def broken(tmp_path: Path) -> Path:
    path = tmp_path / "nowhere.exercise"
    path.write_text(BROKEN, encoding="utf-8")
    return path


def answer(capsys: pytest.CaptureFixture[str], *words: object) -> tuple[int, str, str]:
    code = main([str(word) for word in words])
    printed = capsys.readouterr()
    return code, printed.out, printed.err


# What is asked right


def test_check_says_that_a_shipped_exercise_runs(capsys: pytest.CaptureFixture[str], scripted: Path) -> None:
    code, out, err = answer(capsys, "check", scripted)
    assert (code, err) == (0, "")
    count = SCRIPTED.numbers.best or SCRIPTED.numbers.least
    assert f"{SCRIPTED.name} with {count} children" in out
    assert "runs" in out


def test_check_names_the_wrong_word_and_gives_one(capsys: pytest.CaptureFixture[str], broken: Path) -> None:
    code, out, _ = answer(capsys, "check", broken)
    assert code == 1
    assert "line 9" in out
    assert "Stemm" in out
    assert "^" in out
    assert "to be mended" in out


def test_check_of_several_files_looks_at_all_of_them(
    capsys: pytest.CaptureFixture[str], scripted: Path, broken: Path
) -> None:
    code, out, err = answer(capsys, "check", broken, scripted, broken.with_name("gone.exercise"))
    assert code == 2
    assert "nowhere.exercise" in out
    assert SCRIPTED.name in out
    assert "gone.exercise" in err


def test_check_with_every_number_has_a_row_for_each(capsys: pytest.CaptureFixture[str], scripted: Path) -> None:
    code, out, _ = answer(capsys, "check", scripted, "--every-n", "--json")
    (file,) = json.loads(out)["files"]
    heres = [one["here"] for one in file["answers"]]
    assert code == 0
    assert heres[0] <= SCRIPTED.numbers.least
    assert heres == list(range(heres[0], heres[-1] + 1))
    assert all(sum(one["copies"]) == one["here"] for one in file["answers"])
    _, words, _ = answer(capsys, "check", scripted, "--every-n")
    assert sum(line.strip().startswith(tuple(map(str, heres))) for line in words.splitlines()) >= len(heres)


def test_check_as_json_says_where(capsys: pytest.CaptureFixture[str], broken: Path) -> None:
    code, out, _ = answer(capsys, "check", broken, "--json")
    (file,) = json.loads(out)["files"]
    mends = [problem for problem in file["problems"] if problem["severity"] == "mend"]
    assert code == 1
    assert file["clean"] is False
    assert (mends[0]["line"], mends[0]["column"]) == (9, 19)
    assert mends[0]["hint"]


def test_rehearse_says_what_every_child_gets(capsys: pytest.CaptureFixture[str], scripted: Path) -> None:
    count = SCRIPTED.numbers.least
    code, out, err = answer(capsys, "rehearse", scripted, "--n", count)
    assert (code, err) == (0, "")
    assert "If all goes cleanly" in out
    assert "decides the pace" in out
    assert "rounds a minute" in out


def test_rehearse_as_json_has_the_figures_of_each_child(capsys: pytest.CaptureFixture[str], scripted: Path) -> None:
    count = SCRIPTED.numbers.least
    _, out, _ = answer(capsys, "rehearse", scripted, "--n", count, "--age", "U9", "--surface", "hall", "--json")
    form = json.loads(out)
    assert (form["here"], form["age"], form["surface"]) == (count, 9, "hall")
    children = [child for copy in form["copies"] for child in copy["children"]]
    assert len(children) == count
    assert all(0 <= child["waiting_share"] <= 1 for child in children)


def test_what_is_not_rehearsed_is_called_an_estimate(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    path = file_for(tmp_path, PLAYED)
    code, out, _ = answer(capsys, "rehearse", path, "--n", PLAYED.numbers.least)
    assert code == 0
    assert "estimate" in out
    assert "If all goes cleanly" not in out


def test_rehearse_for_a_number_it_is_not_for_is_a_mend(capsys: pytest.CaptureFixture[str], scripted: Path) -> None:
    code, out, _ = answer(capsys, "rehearse", scripted, "--n", "59", "--json")
    form = json.loads(out)
    assert code == 1
    assert form["copies"] == []
    assert [problem["code"] for problem in form["problems"]] == ["numbers"]


def test_fit_fills_the_minutes_for_all_who_are_here(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = answer(capsys, "fit", "--here", 13, "--minutes", 70, "--space", "30x22", "--json")
    form = json.loads(out)
    assert code == 0
    assert form["minutes"] == 70
    parts = sorted([*form["blocks"], *form["pauses"]], key=lambda part: part["start"])
    assert parts[0]["start"] == 0
    assert sum(part["minutes"] for part in parts) == 70
    for block in form["blocks"]:
        assert block["players"] == 13
        assert sum(copy["players"] for copy in block["copies"]) + block["resting"] + block["keepers"] == 13
        assert [one["here"] for one in block["answers"]] == [11, 12, 13, 14, 15]
        assert all({"severity", "code", "message", "hint", "line", "column"} <= set(one) for one in block["findings"])
        assert block["kit"]["balls"] <= 12


def test_fit_in_words_names_every_block_at_its_hour(capsys: pytest.CaptureFixture[str]) -> None:
    words = ("fit", "--here", 11, "--minutes", 60, "--starts", "18:00")
    _, out, _ = answer(capsys, *words, "--json")
    blocks = json.loads(out)["blocks"]
    code, out, _ = answer(capsys, *words)
    assert code == 0
    for block in blocks:
        hour = f"18:{block['start']:02.0f}"
        assert any(hour in line and block["exercise"] in line for line in out.splitlines())
    assert "19:00" in out


def test_the_same_words_fit_the_same_evening_and_another_seed_may_not(capsys: pytest.CaptureFixture[str]) -> None:
    words = ("fit", "--here", 12, "--minutes", 70, "--space", "30x22", "--json")
    evenings = [answer(capsys, *words, "--seed", seed)[1] for seed in (1, 1, 2, 3, 4)]
    assert evenings[0] == evenings[1]
    assert all(json.loads(evening)["blocks"] for evening in evenings)


def test_where_nothing_fits_the_reason_is_said(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = answer(capsys, "fit", "--here", 3, "--space", "6x5", "--balls", 0, "--json")
    form = json.loads(out)
    assert code == 1
    assert form["blocks"] == []
    assert any(problem["severity"] == "mend" and problem["hint"] for problem in form["problems"])


def test_draw_writes_a_picture_that_stands_alone(capsys: pytest.CaptureFixture[str], scripted: Path) -> None:
    path = scripted.with_name("out.svg")
    code, out, _ = answer(capsys, "draw", scripted, "-o", path)
    assert code == 0
    assert str(path) in out
    picture = path.read_text(encoding="utf-8")
    assert picture.startswith("<svg")
    assert f"<title>{SCRIPTED.name}</title>" in picture
    answer(capsys, "draw", scripted, "-o", path, "--tradition", "b")
    assert path.read_text(encoding="utf-8") != picture
    assert set(os.listdir(path.parent)) == {"out.svg", scripted.name}
    assert "one square is 1 m" in picture


def test_sheet_writes_a_pdf(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    path = tmp_path / "tonight.pdf"
    code, out, _ = answer(capsys, "sheet", "--here", 12, "--minutes", 60, "-o", path)
    assert code == 0
    assert "17:45 to 18:45" in out
    assert path.read_bytes().startswith(b"%PDF")


def test_serve_hands_its_words_on(capsys: pytest.CaptureFixture[str]) -> None:
    heard: list[tuple[str | None, int | None, bool]] = []

    def hear(*, data: str | None, port: int | None, open_browser: bool) -> int:
        heard.append((data, port, open_browser))
        return 0

    serve: Serve = hear
    assert main(["serve"], serve=serve) == 0
    assert main(["serve", "--port", "0", "--no-browser", "--data", "x.db"], serve=serve) == 0
    assert heard == [(None, None, True), ("x.db", 0, False)]


# What is asked wrong


def wrong_words(folder: Path, good: Path) -> list[tuple[str, ...]]:
    (folder / "binary.exercise").write_bytes(b"\x7fELF\x00\x01")
    (folder / "latin.exercise").write_bytes("exercise: Gr\xfcn\n".encode("latin-1"))
    (folder / "huge.exercise").write_bytes(b"# \n" * 400_000)
    shelved = str(good)
    return [
        (),
        ("bogus",),
        ("fit",),
        ("fit", "--here", "-3"),
        ("fit", "--here", "12.5"),
        ("fit", "--here", "12", "--space", "30by"),
        ("fit", "--here", "12", "--age", "banana"),
        ("fit", "--here", "12", "--minutes", "many"),
        ("fit", "--here", "12", "--bibs", "X9"),
        ("fit", "--here", "12", "--surface", "lava"),
        ("fit", "--here", "12", "--keepers", "13"),
        ("fit", "--here", "12", "--starts", "25:00"),
        ("fit", "--here", "12", "--mintes", "70"),
        ("fit", "--here"),
        ("check",),
        ("check", str(folder / "gone.exercise")),
        ("check", str(folder)),
        ("check", str(folder / "binary.exercise")),
        ("check", str(folder / "latin.exercise")),
        ("check", str(folder / "huge.exercise")),
        ("check", "nul\x00byte"),
        ("check", shelved, "--n", "0"),
        ("check", shelved, "--n", "6", "--every-n"),
        ("rehearse", shelved),
        ("rehearse", shelved, "--n", "six"),
        ("draw", shelved),
        ("draw", shelved, "-o", str(folder / "no" / "out.svg")),
        ("draw", shelved, "-o", str(folder)),
        ("draw", shelved, "-o", str(folder / "x.svg"), "--tradition", "C"),
        ("draw", shelved, "-o", str(folder / "x.svg"), "--n", "59"),
        ("sheet", "--here", "12", "-o", str(folder / "no" / "out.pdf")),
        ("serve", "--port", "99999"),
        ("serve", "--port", "-1"),
    ]


def test_wrong_words_get_a_line_with_how_to_mend_them(capsys: pytest.CaptureFixture[str], scripted: Path) -> None:
    for words in wrong_words(scripted.parent, scripted):
        code, out, err = answer(capsys, *words)
        assert code == 2, words
        assert out == "", words
        assert err.startswith("conewright: "), words
        assert len(err.splitlines()) == 1, words
        assert any(sign in err for sign in (";", "see conewright")), words
    assert not (scripted.parent / "x.svg").exists()


def test_every_wrong_word_is_named(capsys: pytest.CaptureFixture[str]) -> None:
    _, _, err = answer(capsys, "fit", "--here", "x", "--balls", "y")
    assert [line.split(":")[1].strip() for line in err.splitlines()] == ["--here", "--balls"]


def test_an_empty_file_is_told_what_it_lacks(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    path = tmp_path / "empty.exercise"
    path.write_text("", encoding="utf-8")
    code, out, _ = answer(capsys, "check", path)
    assert code == 1
    assert "no exercise could be read" in out


# Help


@pytest.mark.parametrize("name", [*(command.name for command in COMMANDS), "serve"])
def test_every_command_has_help_with_an_example_and_exit_codes(capsys: pytest.CaptureFixture[str], name: str) -> None:
    code, out, _ = answer(capsys, name, "--help")
    assert code == 0
    assert f"example:\n  conewright {name} " in out
    assert "exit codes:" in out


def test_the_help_names_every_command(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = answer(capsys, "--help")
    assert code == 0
    for name in (*(command.name for command in COMMANDS), "serve"):
        assert f"\n    {name} " in out


# Whole runs of the process


def process(*words: str, **environ: str) -> subprocess.CompletedProcess[str]:
    paths = {"PYTHONPATH": str(ROOT / "src"), **environ}
    return subprocess.run(
        [sys.executable, "-m", "conewright", *words],
        env={**os.environ, **paths},
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )


def test_the_process_gives_the_exit_code() -> None:
    assert process("--version").stdout.startswith("Conewright ")
    wrong = process("fit", "--here", "-3")
    assert (wrong.returncode, wrong.stdout) == (2, "")
    assert "Traceback" not in wrong.stderr


def test_a_terminal_without_these_letters_gets_a_question_mark(tmp_path: Path) -> None:
    path = tmp_path / "snow.exercise"
    path.write_text("exercise: Schneesturm \u2744\nkind: nothing\n", encoding="utf-8")
    done = process("check", str(path), PYTHONIOENCODING="ascii", PYTHONUTF8="0")
    assert done.returncode == 1
    assert "Schneesturm ?" in done.stdout


def test_the_command_line_never_loads_the_pages(scripted: Path) -> None:
    watch = (
        "import sys; from conewright.cli import main; main(sys.argv[1:]); "
        "print(sorted({'starlette', 'uvicorn', 'jinja2', 'conewright.web'} & set(sys.modules)))"
    )
    for words in (["--help"], ["fit", "--here", "12", "--json"], ["check", str(scripted)]):
        done = subprocess.run(
            [sys.executable, "-c", watch, *words],
            env={**os.environ, "PYTHONPATH": str(ROOT / "src")},
            capture_output=True,
            text=True,
            timeout=60,
            check=True,
        )
        assert done.stdout.splitlines()[-1] == "[]"


def test_a_reader_that_stops_early_is_no_error() -> None:
    first = subprocess.Popen(
        [sys.executable, "-m", "conewright", "fit", "--here", "12", "--json"],
        env={**os.environ, "PYTHONPATH": str(ROOT / "src")},
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
    )
    assert first.stdout is not None
    assert first.stderr is not None
    first.stdout.read(1)
    first.stdout.close()
    errors = first.stderr.read().decode()
    first.stderr.close()
    assert first.wait(timeout=60) == 0
    assert errors == ""
