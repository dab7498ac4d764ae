"""The shipped exercises: each reads, runs for every head count and age it names, and together they fill an evening."""

from collections import Counter
from dataclasses import replace
from pathlib import Path

import pytest

from conewright.checks.check import check, check_copy
from conewright.fit.bench import Bench
from conewright.fit.memory import Memory
from conewright.fit.options import choice_for
from conewright.model.exercise import KINDS, Exercise, ThingKind, Verb
from conewright.model.layout import layout_for
from conewright.model.problem import Severity
from conewright.model.session import Job, Tonight
from conewright.model.stepped import stepped
from conewright.notation.printer import write
from conewright.notation.reader import read
from conewright.rehearsal.rehearse import rehearse
from conewright.store.figures import load_figures
from conewright.store.shelf import DamagedShelf, file_name, load_shelf, read_shelved, shelf_texts

FIGURES = load_figures()
SHELF = load_shelf()
SURFACE = "grass_club"
STEPS = [(exercise, variant.name) for exercise in SHELF for variant in exercise.variants]
PAGE = Path(__file__).parents[2] / "docs" / "shelf.md"
GOALS = (ThingKind.MINI_GOAL, ThingKind.GOAL)


def head_counts(exercise: Exercise) -> tuple[int, ...]:
    """Every number of children for which the text itself says how it is laid out."""
    most = max((exercise.numbers.most, *(form.most for form in exercise.forms)))
    return tuple(n for n in range(exercise.numbers.least, most + 1) if layout_for(exercise, n))


def not_running(exercise: Exercise) -> list[str]:
    """What keeps an exercise from running, for every head count and the youngest, usual and oldest age it names."""
    ages = {exercise.ages.youngest, min(max(11, exercise.ages.youngest), exercise.ages.oldest), exercise.ages.oldest}
    return [
        f"{n} under {age}: {problem.message}"
        for age in sorted(ages)
        for n in head_counts(exercise)
        for problem in check(exercise, n, figures=FIGURES, age=age, surface=SURFACE)
        if problem.severity is Severity.MEND or problem.code in ("space-tight", "shot-across-way-back")
    ]


def page_row(exercise: Exercise) -> str:
    """The row of an exercise in the table of the page on the shelf."""
    counts = head_counts(exercise)
    one = f"{exercise.numbers.least} to {exercise.numbers.most}"
    one = one if exercise.numbers.least < exercise.numbers.most else str(exercise.numbers.least)
    copies = f", in copies up to {counts[-1]}" if counts[-1] > exercise.numbers.most else ""
    ages = f"under {exercise.ages.youngest} to under {exercise.ages.oldest}"
    cells = (exercise.name, exercise.kind, ", ".join(exercise.aims), one + copies, ages, ", ".join(exercise.good_for))
    return f"| {' | '.join(cells)} |"


def test_the_shelf_holds_many_kinds_under_names_of_their_own() -> None:
    assert len(SHELF) >= 50
    assert {exercise.kind for exercise in SHELF} == set(KINDS)
    assert max(Counter(exercise.name.lower() for exercise in SHELF).values()) == 1
    assert [file_name(exercise.name) for exercise in SHELF] == [name for name, _ in shelf_texts()]


@pytest.mark.parametrize(("name", "text"), shelf_texts())
def test_a_shipped_text_reads_without_a_word_to_say(name: str, text: str) -> None:
    exercise, problems = read(text)
    assert exercise is not None
    assert [f"{problem.where}: {problem.message}" for problem in problems] == []


@pytest.mark.parametrize("exercise", SHELF, ids=lambda exercise: exercise.name)
def test_a_shipped_exercise_says_what_a_coach_needs(exercise: Exercise) -> None:
    assert exercise.aims
    assert exercise.good_for
    assert exercise.space is not None
    assert 2 <= len(exercise.cues) <= 3
    assert 1 <= len(exercise.faults) <= 2
    assert all(fault.remedy for fault in exercise.faults)
    assert exercise.score or exercise.kind == "cool-down"
    assert (exercise.script is None) is not (exercise.open_play is None)


@pytest.mark.parametrize("exercise", SHELF, ids=lambda exercise: exercise.name)
def test_shots_and_goals_come_with_a_caution(exercise: Exercise) -> None:
    steps = exercise.script.steps if exercise.script else ()
    shoots = any(act.verb is Verb.SHOOT for step in steps for act in step.acts)
    goals = any(thing.kind in GOALS for thing in exercise.things)
    assert exercise.cautions or not (shoots or goals)


@pytest.mark.parametrize("exercise", SHELF, ids=lambda exercise: exercise.name)
def test_it_runs_for_every_head_count_and_age_it_names(exercise: Exercise) -> None:
    assert not_running(exercise) == []


@pytest.mark.parametrize("exercise", SHELF, ids=lambda exercise: exercise.name)
def test_written_back_it_says_the_same(exercise: Exercise) -> None:
    once = write(exercise)
    again, problems = read(once)
    assert problems == ()
    assert again is not None
    assert write(again) == once


@pytest.mark.parametrize(("exercise", "name"), STEPS, ids=lambda said: said if isinstance(said, str) else said.name)
def test_a_step_up_or_down_changes_something_and_runs(exercise: Exercise, name: str) -> None:
    changed = stepped(exercise, name)
    assert changed is not None
    assert replace(changed, name=exercise.name, variants=exercise.variants) != exercise
    assert not_running(changed) == []


def test_most_exercises_have_steps() -> None:
    assert len([exercise for exercise in SHELF if exercise.variants]) >= 45


def test_the_page_on_the_shelf_has_a_row_for_each() -> None:
    rows = [line for line in PAGE.read_text("utf-8").splitlines() if line.startswith("| ")]
    assert rows[2:] == [page_row(exercise) for exercise in sorted(SHELF, key=lambda exercise: exercise.name)]


@pytest.mark.parametrize("here", range(2, 25))
def test_every_part_of_an_evening_has_a_choice(here: int) -> None:
    asked = Tonight(here=here, minutes=70, width_m=30, depth_m=20)
    bench = Bench(asked=asked, figures=FIGURES, memory=Memory(), rehearse=rehearse, check=check_copy)
    usable = [exercise for exercise in SHELF if choice_for(exercise, bench).option is not None]
    offered = Counter(part for exercise in usable for part in exercise.good_for)
    assert {job.value: offered[job.value] for job in Job if offered[job.value] < 2} == {}


def test_a_text_that_cannot_run_is_refused_with_its_file_and_line() -> None:
    text = shelf_texts()[0][1]
    name = shelf_texts()[0][0]
    broken = text.replace("kind: ", "kind: no such ", 1)
    with pytest.raises(DamagedShelf, match=rf"{name}, line 2: .*no such"):
        read_shelved(name, broken)


def test_a_text_under_another_name_is_refused() -> None:
    _, text = shelf_texts()[0]
    with pytest.raises(DamagedShelf, match="not named like the file"):
        read_shelved("somewhere-else.exercise", text)
