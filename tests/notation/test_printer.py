"""Writing: one canonical form, and reading it gives the same exercise."""

from dataclasses import replace
from pathlib import Path
from re import finditer

import pytest
from hypothesis import HealthCheck, given, settings

from conewright.model.exercise import Exercise
from conewright.notation.printer import write
from conewright.notation.reader import read
from conewright.notation.spans import without_spans
from tests.notation.invented import exercises

DATA = Path(__file__).parents[1] / "data" / "notation"
GOOD = sorted(DATA.glob("*.exercise"))
CANONICAL = DATA / "canonical"


def test_what_is_written_reads_back_the_same(long: bool) -> None:
    @settings(
        max_examples=5000 if long else 150,
        deadline=None,
        suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large],
    )
    @given(exercises())
    def reads_back(exercise: Exercise) -> None:
        text = write(exercise)
        again, problems = read(text)
        assert problems == ()
        assert again is not None
        assert without_spans(again) == exercise
        assert write(again) == text

    reads_back()


@pytest.mark.parametrize("path", GOOD, ids=lambda path: path.stem)
def test_files_in_canonical_form(path: Path, rewrite: bool) -> None:
    exercise, _ = read(path.read_text(encoding="utf-8"))
    assert exercise is not None
    written = write(exercise)
    expected = CANONICAL / path.name
    if rewrite:
        CANONICAL.mkdir(exist_ok=True)
        expected.write_text(written, encoding="utf-8")
    assert written == expected.read_text(encoding="utf-8")
    assert without_spans(read(written)[0]) == without_spans(exercise)


@pytest.mark.parametrize("path", sorted((DATA / "wrong").glob("*.exercise")), ids=lambda path: path.stem)
def test_what_was_understood_of_a_wrong_file_can_be_written(path: Path) -> None:
    exercise, _ = read(path.read_text(encoding="utf-8"))
    assert exercise is None or write(exercise).endswith("\n")


@pytest.mark.parametrize(
    ("written", "canonical"),
    [
        (
            "1. Base passes to Stem. Base then runs to Stem. Stem turns out.",
            "1. Base passes to Stem, then runs to Stem; Stem turns.",
        ),
        (
            "1. When Stem has the ball, Base plays it firmly into space ahead of Stem, who runs to 2, 6.",
            "1. Base passes firmly ahead of Stem to Mast when Stem has the ball.",
        ),
        ("1. base RUNS at full speed home", "1. Base sprints home."),
        (
            "1. Base turns, dribbles 3 yards towards Mast and then shoots at Goal first time with the left.",
            "1. Base turns, dribbles 2.742 m towards Mast, then shoots at Goal first time with the left foot.",
        ),
        ("1. Base waits two seconds after Stem passes.", "1. Base waits 2 s when Stem passes."),
    ],
)
def test_sentences_in_canonical_form(written: str, canonical: str) -> None:
    ground = (
        "exercise: Test\nkind: passing pattern\nfor 4 to 12 players\n\nBase at 0, 0 is a line with the ball.\n"
        "Stem at 0, 8 is a line.\nMast at 2, 6 is a cone.\nGoal at 0, 22 is a goal.\n\nEach round:\n"
    )
    exercise, _ = read(ground + written)
    assert exercise is not None
    assert write(exercise) == f"{ground}{canonical}\n"


def test_remarks_stay_on_one_line() -> None:
    exercise, _ = read("exercise: Test\nkind: rondo\nfor 6 players\nOpen play in 9 by 9 m: everyone has a ball.\n")
    assert exercise is not None
    written = write(replace(exercise, cues=("look\nup",), name="Two\n lines"))
    assert "cue: look up\n" in written
    assert "exercise: Two lines\n" in written


def test_numbers_are_written_in_full() -> None:
    text = (
        "exercise: Test\nkind: rondo\nfor 6 players\nBase at 0.00001, -0 is a line.\nEach round:\n1. Base runs home.\n"
    )
    exercise, _ = read(text)
    assert exercise is not None
    assert "Base at 0.00001, 0 is a line." in write(exercise)


@pytest.mark.parametrize("path", GOOD, ids=lambda path: path.stem)
def test_what_is_read_of_a_text_with_a_word_left_out_reads_back_the_same(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    for word in finditer(r"\S+", text):
        exercise, problems = read(text[: word.start()] + text[word.end() :])
        if exercise is not None and not problems:
            again, problems = read(write(exercise))
            assert problems == ()
            assert without_spans(again) == without_spans(exercise)
