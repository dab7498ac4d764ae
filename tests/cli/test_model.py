"""`model`: an exercise as JSON on paper and back, with nothing lost on the way."""

import json
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings

from conewright.model.exercise import Exercise
from conewright.notation.printer import write
from conewright.notation.reader import read
from conewright.notation.spans import without_spans
from conewright.store.interchange import form_of
from conewright.store.shelf import load_shelf, shelf_texts
from tests.cli.asking import answer
from tests.notation.invented import exercises

NAME = "stem-and-branch.exercise"
TEXT = dict(shelf_texts())[NAME]
EXERCISE = next(one for one in load_shelf() if one.name == "Stem and branch")


@pytest.fixture
def shelved(tmp_path: Path) -> Path:
    path = tmp_path / NAME
    path.write_text(TEXT, encoding="utf-8")
    return path


def test_it_prints_the_model_with_its_places_in_the_text(capsys: pytest.CaptureFixture[str], shelved: Path) -> None:
    code, out, err = answer(capsys, "model", shelved)
    assert (code, err) == (0, "")
    assert json.loads(out) == json.loads(json.dumps(form_of(EXERCISE)))
    assert json.loads(out)["exercise"]["places"][0]["span"]["line"] > 1


def test_or_without_them(capsys: pytest.CaptureFixture[str], shelved: Path) -> None:
    code, out, _ = answer(capsys, "model", shelved, "--no-spans")
    assert code == 0
    assert '"span"' not in out
    assert out.isascii()


def test_there_and_back_is_the_same_exercise(capsys: pytest.CaptureFixture[str], shelved: Path) -> None:
    held, text = shelved.with_suffix(".json"), shelved.with_name("again.exercise")
    assert answer(capsys, "model", shelved, "-o", held) == (0, "", "")
    code, out, err = answer(capsys, "model", "--read", held)
    assert (code, err) == (0, "")
    assert out == write(EXERCISE)
    assert answer(capsys, "model", "--read", held, "-o", text)[0] == 0
    assert without_spans(read(text.read_text(encoding="utf-8"))[0]) == without_spans(EXERCISE)


@settings(
    max_examples=40,
    deadline=None,
    suppress_health_check=[
        HealthCheck.too_slow,
        HealthCheck.data_too_large,
        HealthCheck.function_scoped_fixture,  # the file is written anew for each
    ],
)
@given(exercise=exercises())
def test_any_exercise_comes_back_from_json_as_its_text(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, exercise: Exercise
) -> None:
    held = tmp_path / "held.json"
    held.write_text(json.dumps(form_of(exercise)), encoding="utf-8")
    code, out, _ = answer(capsys, "model", "--read", held)
    assert code != 2
    assert without_spans(read(out)[0]) == without_spans(exercise)


def test_what_is_to_be_mended_is_told_beside_the_json(capsys: pytest.CaptureFixture[str], shelved: Path) -> None:
    shelved.write_text(f"{TEXT}nonsense here.\n", encoding="utf-8")
    code, out, err = answer(capsys, "model", shelved)
    assert code == 1
    assert json.loads(out)["exercise"]["name"] == EXERCISE.name
    assert "nonsense here" in err


@pytest.mark.parametrize(
    ("path", "value", "told"),
    [
        (("kind",), "drill", "at exercise.kind: invalid enum value 'drill'; docs/exercise.schema.json"),
        (("name",), "two\nlines", "at exercise.name that no sentence says"),
        (("places", 0, "name"), "", "at exercise.places"),
        (("numbers", "least"), 10**30, "at exercise.numbers"),
    ],
)
def test_json_that_no_text_can_say_is_told_in_a_line(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, path: tuple[str | int, ...], value: object, told: str
) -> None:
    form = json.loads(json.dumps(form_of(EXERCISE)))
    inner = form["exercise"]
    for part in path[:-1]:
        inner = inner[part]
    inner[path[-1]] = value
    held = tmp_path / "held.json"
    held.write_text(json.dumps(form), encoding="utf-8")
    code, out, err = answer(capsys, "model", "--read", held)
    assert (code, out) == (2, "")
    assert told in err
    assert len(err.splitlines()) == 1


@pytest.mark.parametrize(
    "words",
    [
        (),
        ("a.exercise", "--read", "a.json"),
        ("--read", "a.json", "--no-spans"),
        ("--read", "gone.json"),
        ("gone.exercise",),
    ],
)
def test_wrong_words(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch, words: tuple[str, ...]
) -> None:
    monkeypatch.chdir(tmp_path)
    code, out, err = answer(capsys, "model", *words)
    assert (code, out) == (2, "")
    assert len(err.splitlines()) == 1
    assert ";" in err
