"""`shelf`: what ships, one a line, filtered by what a coach asks for."""

import json
import re

import pytest

from conewright.fit.suiting import JOBS_OF_KIND
from conewright.model.layout import layout_for
from conewright.model.session import Job
from conewright.store.shelf import load_shelf
from tests.cli.asking import answer

SHELF = {exercise.name: exercise for exercise in load_shelf()}


def found(capsys: pytest.CaptureFixture[str], *words: object) -> list[dict[str, object]]:
    code, out, err = answer(capsys, "shelf", *words, "--json")
    form = json.loads(out)
    assert err == ""
    assert form["of"] == len(SHELF)
    assert form["count"] == len(form["exercises"])
    assert code == (0 if form["exercises"] else 1)
    return list(form["exercises"])


def names(capsys: pytest.CaptureFixture[str], *words: object) -> list[object]:
    return [one["exercise"] for one in found(capsys, *words)]


def test_every_exercise_has_a_line(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = answer(capsys, "shelf")
    lines = out.splitlines()
    assert (code, err) == (0, "")
    assert [line.split("  ")[1] for line in lines[1 : 1 + len(SHELF)]] == list(SHELF)
    assert all(exercise.kind in line for exercise, line in zip(SHELF.values(), lines[1:], strict=False))
    assert lines[-1] == f"{len(SHELF)} of {len(SHELF)} exercises on the shelf."
    assert max(map(len, lines)) <= 100


def test_as_json_it_says_what_it_is(capsys: pytest.CaptureFixture[str]) -> None:
    stem = next(one for one in found(capsys) if one["exercise"] == "Stem and branch")
    exercise = SHELF["Stem and branch"]
    assert stem["kind"] == exercise.kind
    assert (stem["least"], stem["best"]) == (exercise.numbers.least, exercise.numbers.best)
    assert stem["most"] == max(form.most for form in exercise.forms)
    assert stem["aims"] == list(exercise.aims)
    assert "waiting_share" not in stem


@pytest.mark.parametrize("age", [6, 11, 16])
def test_by_age(capsys: pytest.CaptureFixture[str], age: int) -> None:
    wanted = [name for name, one in SHELF.items() if one.ages.youngest <= age <= one.ages.oldest]
    assert names(capsys, "--age", f"U{age}") == wanted


@pytest.mark.parametrize("kind", ["rondo", "Passing Pattern", "set_piece"])
def test_by_kind(capsys: pytest.CaptureFixture[str], kind: str) -> None:
    wanted = [name for name, one in SHELF.items() if one.kind == kind.lower().replace("_", " ")]
    assert names(capsys, "--kind", kind) == wanted


@pytest.mark.parametrize("job", Job)
def test_by_the_part_of_the_evening(capsys: pytest.CaptureFixture[str], job: Job) -> None:
    wanted = [
        name
        for name, one in SHELF.items()
        if job.value in one.good_for or (not one.good_for and job in JOBS_OF_KIND[one.kind])
    ]
    assert names(capsys, "--good-for", job.value) == wanted


def test_by_aim_the_nearest_first(capsys: pytest.CaptureFixture[str]) -> None:
    told = names(capsys, "--aim", "passing ahead of a runner")
    assert "Stem and branch" in told
    both = {name for name, one in SHELF.items() if "passing ahead of a runner" in one.aims}
    assert set(told[: len(both)]) == both
    assert names(capsys, "--aim", "zebra") == []


@pytest.mark.parametrize("here", [1, 2, 13, 24])
def test_by_how_many_are_here_with_what_each_would_get(capsys: pytest.CaptureFixture[str], here: int) -> None:
    told = found(capsys, "--here", here)
    assert [one["exercise"] for one in told] == [name for name, one in SHELF.items() if layout_for(one, here)]
    for one in told:
        copies, waiting = one["copies"], one["waiting_share"]
        assert isinstance(copies, list)
        assert sum(copies) == here
        assert one["estimate"] == (one["contacts_high"] is not None)
        assert waiting is None or (isinstance(waiting, float) and 0 <= waiting <= 1)
        assert not one["estimate"] or waiting is None


def test_what_is_estimated_is_called_about(capsys: pytest.CaptureFixture[str]) -> None:
    told = {one["exercise"]: one for one in found(capsys, "--here", "12")}
    code, out, _ = answer(capsys, "shelf", "--here", "12")
    assert code == 0
    for line in out.splitlines()[1 : 1 + len(told)]:
        name = line.strip().split("  ")[0]
        assert ("about" in line.split("%")[-1]) == told[name]["estimate"], line
    assert 'About" is an estimate' in out
    assert "if all goes cleanly" in out


def test_by_the_ground_either_way_round(capsys: pytest.CaptureFixture[str]) -> None:
    small = names(capsys, "--space", "12x18")
    assert small == names(capsys, "--space", "18 by 12")
    for name, one in SHELF.items():
        assert one.space is not None
        fits = (
            sorted((one.space.width_m, one.space.depth_m)) <= [12, 18]
            and max(one.space.width_m, one.space.depth_m) <= 18
        )
        assert (name in small) == fits, name


def test_copies_need_their_ground_too(capsys: pytest.CaptureFixture[str]) -> None:
    stem = SHELF["Stem and branch"]
    layout = layout_for(stem, 13)
    assert stem.space is not None
    assert layout is not None
    assert len(layout.sizes) == 2
    row = 2 * stem.space.width_m + layout.apart_m
    deep = stem.space.depth_m
    for ground, fits in ((f"{row}x{deep}", True), (f"{deep}x{row}", True), (f"{row - 1}x{deep}", False)):
        assert ("Stem and branch" in names(capsys, "--here", "13", "--space", ground)) == fits


def test_where_nothing_suits_it_says_so(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = answer(capsys, "shelf", "--space", "2x2")
    assert (code, err) == (1, "")
    assert re.match(r"0 of \d+ exercises on the shelf\. ", out)


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("--kind", "rondos"), 'did you mean "rondo"'),
        (("--kind", "chess"), "write one of passing pattern"),
        (("--good-for", "supper"), "write one of arrival"),
        (("--age", "old"), "--age"),
        (("--here", "many"), "--here"),
        (("--space", "big"), "--space"),
        (("--aim", "a" * 200), "--aim"),
    ],
)
def test_wrong_words(capsys: pytest.CaptureFixture[str], words: tuple[str, ...], told: str) -> None:
    code, out, err = answer(capsys, "shelf", *words)
    assert (code, out) == (2, "")
    assert told in err
    assert len(err.splitlines()) == 1
