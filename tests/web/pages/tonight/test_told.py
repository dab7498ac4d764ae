"""The sentences children are told are those of the text, each once, in its order."""

import pytest

from conewright.model.exercise import Exercise
from conewright.notation.reader import read
from conewright.store.demo import TONIGHT
from conewright.store.shelf import file_name, load_shelf, shelf_texts
from conewright.web.pages.tonight.sources import origins_of
from conewright.web.pages.tonight.told import sentences_of
from conewright.web.planner import Planner

TEXTS = dict(shelf_texts())
TEXT = """\
exercise: Two ways
kind: passing pattern
for 4 to 8 players

Base at 0, 0 is a line with the ball.
Stem at 0, 8 is a line.

Each round:
1. Base passes firmly to Stem,
   then runs to the end of Stem.
2. Stem dribbles to the end of Base.
The next round starts when Base has the ball.

score: clean rounds in a minute
"""


def test_numbers_stand_apart_and_lines_are_joined() -> None:
    exercise, _ = read(TEXT)
    assert exercise is not None
    told = sentences_of(exercise, TEXT)
    assert [(one.step, one.words) for one in told] == [
        (1, "Base passes firmly to Stem, then runs to the end of Stem."),
        (2, "Stem dribbles to the end of Base."),
        (0, "The next round starts when Base has the ball."),
        (0, "Score: clean rounds in a minute."),
    ]


@pytest.mark.parametrize("exercise", load_shelf(), ids=lambda exercise: exercise.name)
def test_every_shipped_exercise_says_what_happens(exercise: Exercise) -> None:
    text = " ".join(TEXTS[file_name(exercise.name)].split())
    told = sentences_of(exercise, TEXTS[file_name(exercise.name)])
    assert told
    assert len(set(told)) == len(told)
    if exercise.script:
        assert [one.step for one in told if one.step] == [step.number for step in exercise.script.steps]
    for one in told:
        if one.step:
            assert f"{one.step}. {one.words.rstrip('.')}" in text


def test_a_text_that_is_not_at_hand_tells_nothing_of_the_round() -> None:
    exercise, _ = read(TEXT)
    assert exercise is not None
    assert [one.step for one in sentences_of(exercise, "")] == [0]


def test_every_figure_that_is_named_has_a_source_and_a_grade(planner: Planner) -> None:
    for age in (6, 11, 19):
        for block in planner.session(TONIGHT, planned=TONIGHT.here).blocks:
            for origin in origins_of(block, planner.figures(), age=age, surface="turf"):
                assert origin.title
                assert origin.value
                assert origin.source
                assert ", " in origin.grade
