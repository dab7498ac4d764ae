"""Parts of the evening by what the text says, else by kind; the aim by stems of words."""

from dataclasses import replace

import pytest

from conewright.fit.suiting import (
    JOBS_OF_KIND,
    MADE_FOR,
    OF_THE_KIND,
    STANDS_IN,
    is_game,
    is_opposed,
    relevance,
    spoken_of,
    stem,
    stems,
    suit,
)
from conewright.model.exercise import KINDS, Ages, Exercise, Numbers, OpenPlay, PlayKind
from conewright.model.session import Job

PLAIN = Exercise(
    name="Stem and branch",
    kind="passing pattern",
    numbers=Numbers(least=5, most=9),
    ages=Ages(youngest=9, oldest=14),
    aims=("turning out", "passing ahead of a runner"),
)


def test_what_the_text_says_counts_before_the_kind() -> None:
    said = replace(PLAIN, good_for=("main work", "Warm up"))
    assert suit(said, Job.MAIN) == suit(said, Job.WARM_UP) == MADE_FOR
    assert suit(said, Job.GAME) == STANDS_IN


def test_the_kind_counts_where_the_text_is_silent() -> None:
    assert suit(PLAIN, Job.MAIN) == OF_THE_KIND
    assert suit(PLAIN, Job.OPPOSED) == STANDS_IN


def test_a_close_is_never_filled_with_something_lively_nor_the_evening_with_something_calm() -> None:
    assert suit(PLAIN, Job.CLOSE) == 0.0
    calm = replace(PLAIN, kind="cool-down")
    assert suit(calm, Job.CLOSE) == OF_THE_KIND
    assert suit(calm, Job.MAIN) == 0.0


def test_every_kind_suits_some_part() -> None:
    assert set(JOBS_OF_KIND) == set(KINDS)
    assert all(JOBS_OF_KIND.values())


@pytest.mark.parametrize(
    ("word", "bare"),
    [
        ("turning", "turn"),
        ("turns", "turn"),
        ("running", "run"),
        ("runner", "run"),
        ("passing", "pass"),
        ("passes", "pass"),
        ("pass", "pass"),
        ("dribbling", "dribbl"),
        ("dribble", "dribbl"),
        ("speed", "speed"),
        ("use", "use"),
        ("red", "red"),
    ],
)
def test_words_lose_their_endings(word: str, bare: str) -> None:
    assert stem(word) == bare


def test_an_aim_is_spoken_of_in_other_forms_of_its_words() -> None:
    assert spoken_of(PLAIN, "Turns and a pass to the runner") == ("turns", "pass", "runner")
    assert relevance(PLAIN, "turn, shoot") == 0.5
    assert relevance(PLAIN, "") == relevance(PLAIN, "  and the ") == 1.0
    assert relevance(PLAIN, "heading") == 0.0
    assert stems("42 !?") == frozenset()


def test_opposed_and_game() -> None:
    keep = replace(PLAIN, open_play=OpenPlay(width_m=10, depth_m=10, kind=PlayKind.KEEP))
    free = replace(PLAIN, open_play=OpenPlay(width_m=10, depth_m=10, kind=PlayKind.BALL_EACH))
    game = replace(PLAIN, open_play=OpenPlay(width_m=10, depth_m=10, kind=PlayKind.GAME))
    assert [is_opposed(one) for one in (PLAIN, keep, free, game)] == [False, True, False, True]
    assert [is_game(one) for one in (PLAIN, keep, free, game)] == [False, False, False, True]
