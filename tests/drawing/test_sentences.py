"""Exercises told in short: who does what in each sentence, and what comes after."""

import pytest

from conewright.drawing.sentences import sentence, start_words, told, told_play
from conewright.model.exercise import Bib, OpenPlay, PlayKind, Team
from conewright.model.layout import Side, standing
from conewright.store.shelf import load_shelf
from tests.drawing.evening import shelved
from tests.drawing.looking import GATE, exercise_of


def test_the_sentences_of_a_pattern() -> None:
    assert told(exercise_of(GATE)) == (
        ("1", "Base passes to Stem, runs to Stem."),
        ("2", "Stem passes to Post, runs to Post."),
        ("3", "Post dribbles to Base round the outside."),
    )


@pytest.mark.parametrize(
    ("said", "short"),
    [
        ("Base passes firmly to Stem, first time.", "Base passes first time firmly to Stem."),
        ("Base checks away, then shows.", "Base checks away, shows."),
        ("Base dribbles to Stem when Post passes.", "Base dribbles to Stem when Post passes."),
        ("Base runs to 3, 4.", "Base runs on."),
    ],
)
def test_manners_triggers_and_spots(said: str, short: str) -> None:
    lines = GATE.splitlines()
    text = "\n".join([*lines[:8], f"1. {said}", "2. Post passes to Base."]) + "\n"
    assert told(exercise_of(text))[0] == ("1", short)


def test_outcomes_are_told_once_for_endings_that_send_people_the_same_way() -> None:
    lines = dict.fromkeys(words for _, words in told(shelved("Gate house")))
    then = [words for words in lines if "takes the ball to" in words]
    assert len(then) >= 1
    assert all("to Gate House" in words for words in then)


def test_every_exercise_is_told() -> None:
    for exercise in load_shelf():
        numbers = [number for number, _ in told(exercise) if number]
        steps = exercise.script.steps if exercise.script else ()
        assert numbers == [str(step.number) for step in steps]
        for _, words in told(exercise):
            assert words[0] == words[0].upper()
            assert words.endswith(".")
            assert "  " not in words
            assert "None" not in words


def test_open_play_says_sides_size_and_rules() -> None:
    play = OpenPlay(width_m=12, depth_m=10, kind=PlayKind.KEEP, bout_s=120, swap="who lost it goes in")
    sides = tuple(Side(team=Team(name=bib.value, bib=bib), count=4) for bib in (Bib.YELLOW, Bib.RED))
    assert told_play(play, sides) == (
        "Yellow keep it from Red, 12 by 10 m, bouts of 2 min.",
        "Swap: who lost it goes in.",
    )
    assert told_play(play, sides, scale=0.5)[0].startswith("Yellow keep it from Red, 6 by 5 m")


def test_who_starts_where() -> None:
    exercise = exercise_of(GATE)
    assert start_words(exercise, standing(exercise, 5)) == "Three at Base, one at Stem, one at Post; one ball at Base."


def test_a_sentence_has_a_capital_and_a_stop() -> None:
    assert [sentence(words) for words in ("", "one", "Two.", " three! ")] == ["", "One.", "Two.", "Three!"]


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("Stem and branch", "Left and Right in turn (Side)."),
        ("Mouse hole", "Cat chooses: Left Hole and Right Hole (Shut, the other: Open)."),
    ],
)
def test_sides_say_who_decides(name: str, words: str) -> None:
    exercise = next(exercise for exercise in load_shelf() if exercise.name == name)
    assert told(exercise)[0] == ("", words)
