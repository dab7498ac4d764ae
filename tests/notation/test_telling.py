"""What the children are told: it reads like a coach, and it is what the round does."""

import re
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from conewright.cli.explain import told_words
from conewright.model.exercise import Exercise
from conewright.model.layout import layout_for, one_copy, standing
from conewright.model.told import Told
from conewright.model.unroll import rounds_of
from conewright.notation.reader import read
from conewright.notation.telling import told
from conewright.store.shelf import load_shelf
from tests.notation.invented import exercises

GOLDEN = Path(__file__).parents[1] / "data" / "telling"
SHELF = {exercise.name: exercise for exercise in load_shelf()}
SCRIPTED = [exercise for exercise in SHELF.values() if exercise.script]
TOLD_WHOLE = {path.stem: path for path in sorted(GOLDEN.glob("*.exercise"))}
NOT_FOR_CHILDREN = re.compile(
    r"\b(bearer|manner|trigger|rotation|role|verb|path|supply|stock|None|True|False|nan)\b|[{}_\[\]]"
)
COORDINATES = re.compile(r"-?\d+(\.\d+)?, -?\d")


def usual(exercise: Exercise) -> Told:
    return told(exercise, exercise.numbers.best or exercise.numbers.least)


def sentences(one: Told) -> list[str]:
    own = [f"{role.start}: {' '.join(role.sentences)}" for role in one.roles]
    asked = [part for question in one.questions for part in (question.asks, question.answer)]
    return [*one.opening, *own, *one.everybody, *asked]


@pytest.mark.parametrize("name", TOLD_WHOLE)
def test_an_exercise_is_told_as_it_was(name: str, rewrite: bool) -> None:
    exercise, problems = read(TOLD_WHOLE[name].read_text(encoding="utf-8"))
    assert exercise is not None
    assert problems == ()
    words = f"{told_words(usual(exercise), columns=96)}\n"
    path = TOLD_WHOLE[name].with_suffix(".txt")
    if rewrite:
        path.write_text(words, encoding="utf-8")
    assert path.read_text(encoding="utf-8") == words


def test_every_telling_has_its_exercise() -> None:
    assert len(TOLD_WHOLE) >= 8
    assert {path.stem for path in GOLDEN.glob("*.txt")} == set(TOLD_WHOLE)


@pytest.mark.parametrize("exercise", SHELF.values(), ids=lambda exercise: exercise.name)
def test_every_shipped_exercise_opens_in_three_sentences_and_asks_two_or_three(exercise: Exercise) -> None:
    one = usual(exercise)
    assert len(one.opening) == 3
    assert one.roles
    assert 2 <= len(one.questions) <= 3
    assert len({question.asks for question in one.questions}) == len(one.questions)
    for sentence in sentences(one):
        assert sentence[0].isupper() or not sentence[0].isalpha(), sentence
        assert sentence[-1] in ".?!", sentence
        assert not NOT_FOR_CHILDREN.search(sentence.removesuffix(exercise.name)), sentence
        assert not COORDINATES.search(sentence), sentence
        assert "  " not in sentence, sentence
        assert ".." not in sentence, sentence


@pytest.mark.parametrize("exercise", SCRIPTED, ids=lambda exercise: exercise.name)
def test_every_place_where_children_start_has_a_part(exercise: Exercise) -> None:
    size = exercise.numbers.best or exercise.numbers.least
    starts = " ".join(role.start for role in told(exercise, size).roles)
    for name, count in standing(exercise, size).items():
        assert not count or re.search(rf"\b{name}\b", starts), name


@pytest.mark.parametrize("exercise", SCRIPTED, ids=lambda exercise: exercise.name)
def test_where_a_child_ends_is_where_it_is_told_to_go(exercise: Exercise) -> None:
    parts = usual(exercise).roles
    for round_ in rounds_of(one_copy(exercise, exercise.numbers.best or exercise.numbers.least))[0]:
        for bearer in () if round_.contest else round_.bearers:
            if bearer.adult or bearer.number != min(one.number for one in round_.bearers if one.place == bearer.place):
                continue
            own = [part for part in parts if re.search(rf"\b{bearer.place}\b", part.start)]
            words = " ".join(sentence for part in own for sentence in part.sentences)
            if bearer.ends_at == bearer.place:
                assert re.search(r"back to (the end of )?your own|[Ss]tay at", words), bearer
            else:
                assert f"{bearer.ends_at}" in words or "after your pass" in words, bearer
                assert "That is your next place." in words


@pytest.mark.parametrize("exercise", SHELF.values(), ids=lambda exercise: exercise.name)
def test_every_number_can_be_told(exercise: Exercise) -> None:
    for count in range(exercise.numbers.least, exercise.numbers.most + 1):
        layout = layout_for(exercise, count)
        assert layout is not None
        one = told(exercise, layout.sizes[0])
        assert len(one.opening) == 3
        assert all(role.sentences for role in one.roles)


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])
@given(exercises(), st.integers(1, 20))
def test_any_exercise_can_be_told(exercise: Exercise, size: int) -> None:
    one = told(exercise, size)
    assert len(one.opening) == 3
    assert one.questions
    assert all(part.strip() for part in sentences(one))


TWO = """\
exercise: Two
kind: passing pattern
for 4 players

Base at 0, 0 is a line with the ball.
Stem at 0, 8 holds one.
Mast at 0, 10 is a cone.

Each round:
1. {first}
2. {second}
Rotation: {rotation}
"""


def part(start: str, *, first: str, second: str, rotation: str = "follow the pass.") -> str:
    """What the child at a place of a small exercise is told."""
    exercise, problems = read(TWO.format(first=first, second=second, rotation=rotation))
    assert exercise is not None
    assert problems == ()
    parts = {role.start.split(",")[0]: " ".join(role.sentences) for role in told(exercise, 4).roles}
    return parts[start]


@pytest.mark.parametrize(
    ("first", "says"),
    [
        ("Base passes to Stem.", "pass the ball to Stem. Then run to Stem. That is your next place."),
        ("Base passes softly to Stem first time.", "pass the ball softly to Stem with your first touch."),
        ("Base passes to Stem with the left foot.", "pass the ball to Stem with your left foot."),
        ("Base passes to Stem first time with the left foot.", "to Stem with the first touch of your left foot."),
        ("Base turns in two touches, then passes to Stem.", "turn with the ball in two touches, then pass it to Stem."),
        ("Base turns first time, then passes to Stem.", "turn with your first touch, then pass it to Stem."),
        ("Base dribbles to 0, 2 with the weaker foot, then passes to Stem.", "dribble with your weaker foot about two"),
        ("Base throws to Stem.", "throw the ball to Stem."),
        ("Base passes to Stem when Stem is ready.", "when Stem is ready, pass the ball to Stem."),
        ("Base passes to Stem 2 s after Stem starts.", "two seconds after Stem starts, pass the ball to Stem."),
        ('Base calls "turn", then passes to Stem.', 'call "turn", then pass the ball to Stem.'),
        ("Base waits 3 s, then passes to Stem.", "wait three seconds, then pass the ball to Stem."),
        ('Base does "toe taps" for 4 s, then passes to Stem.', "do toe taps for four seconds, then pass the ball"),
        ('Base does "six taps" for 4 s, then passes to Stem.', "do six taps, then pass the ball to Stem."),
        ("Base dribbles to 0, 2, then passes to Stem.", "dribble about two big steps towards Stem, then pass it"),
        ("Base dribbles to 3, 0 walking, then passes to Stem.", "dribble at a walk about three big steps to the right"),
        ("Base dribbles to 0, 9, then passes to Stem.", "dribble up to "),
    ],
)
def test_one_act_is_told_in_plain_words(first: str, says: str) -> None:
    assert says in part("You start at Base", first=first, second="Stem dribbles to the end of Base.")


def test_a_round_a_child_waits_for_is_told_by_what_it_sees() -> None:
    words = part(
        "You start at Stem",
        first="Base passes to Stem.",
        second="Stem dribbles round Mast to the end of Base at full speed.",
    )
    assert words == (
        "when the ball comes from Base, dribble as fast as you can round the Mast cone to the end of the line at Base, "
        "and give the ball to the first in line. That is your next place."
    )


def test_one_who_stays_is_told_so() -> None:
    words = part(
        "You start at Stem",
        first="Base passes to Stem, then runs to the end of Base.",
        second="Stem sets it back to Base.",
        rotation="everyone goes back to their own place.",
    )
    assert words.endswith("You stay at Stem.")


def test_a_passive_one_is_told_not_to_take_the_ball() -> None:
    exercise, problems = read(
        TWO.format(
            first="Base passes to Stem.", second="Stem dribbles to the end of Base.", rotation="follow the pass."
        ).replace("Mast at", "Shadow at 2, 8 is passive.\nMast at")
    )
    assert exercise is not None
    assert problems == ()
    shadow = next(role for role in told(exercise, 5).roles if "Shadow" in role.start)
    assert shadow.sentences == ("stay close and get in the way, but do not take the ball.",)


def test_without_aims_balls_or_a_round_nothing_is_made_up() -> None:
    bare = replace(SHELF["Ferry"], script=None, aims=(), score="", cautions=())
    assert told(bare, 4).opening == (
        "This is Ferry.",
        "It is for 3 to 5 of you.",
        "Watch me walk it once before you start.",
    )
