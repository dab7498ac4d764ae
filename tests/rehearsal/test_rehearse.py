"""A rehearsal never raises for anything that was read, whatever the size, the age or the surface."""

from importlib.resources import files
from itertools import pairwise
from math import isfinite
from random import Random

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from conewright.model.exercise import Verb
from conewright.model.figures import SURFACES
from conewright.model.problem import Problem
from conewright.model.rehearsed import Estimate, NotRehearsed, Rehearsal, Rehearsed
from conewright.notation.reader import read
from conewright.rehearsal.rehearse import MOST_CHILDREN, rehearse
from conewright.rehearsal.tracks import TRACK_S
from tests.rehearsal.invented import chain, nonsense
from tests.rehearsal.played import AGE, FACING, FIGURES, SURFACE, exercise_of, rehearsal_of

SIZES, AGES = st.integers(0, 30), st.integers(5, 20)
SEEDS = st.integers(0, 10**9)
SHELF = tuple(
    path.read_text(encoding="utf-8")
    for path in sorted((files("conewright") / "data" / "shelf").iterdir(), key=lambda path: path.name)
    if path.name.endswith(".exercise")
)
THOROUGH = settings(max_examples=60, deadline=None)


def mutated(text: str, random: Random) -> str:
    """A text with lines left out, doubled or exchanged, and words taken from elsewhere in it."""
    lines = text.splitlines()
    words = text.split()
    for _ in range(random.randint(1, 4)):
        at, other = random.randrange(len(lines)), random.randrange(len(lines))
        change = random.choice(("leave out", "double", "exchange", "word", "word"))
        if change == "leave out" and len(lines) > 3:
            del lines[at]
        elif change == "double":
            lines.insert(other, lines[at])
        elif change == "exchange":
            lines[at], lines[other] = lines[other], lines[at]
        elif lines[at].split():
            own = lines[at].split(" ")
            own[random.randrange(len(own))] = random.choice(words)
            lines[at] = " ".join(own)
    return "\n".join(lines) + "\n"


def assert_sound(text: str, size: int, age: int, surface: str) -> tuple[Rehearsed, tuple[Problem, ...]] | None:
    """Rehearse a text and look that the answer is one that can be shown."""
    exercise, _ = read(text)
    if exercise is None:
        return None
    result, problems = rehearse(exercise, size, figures=FIGURES, age=age, surface=surface)
    assert all(problem.message and problem.code for problem in problems)
    if isinstance(result, Rehearsal):
        _assert_figures(result)
    elif isinstance(result, Estimate):
        assert 0 <= result.low <= result.high
    else:
        assert result.why
    return result, problems


def _assert_figures(found: Rehearsal) -> None:
    shares = (found.waiting_share, found.rolling_share, *(child.waiting_share for child in found.children))
    assert all(-1e-9 <= share <= 1 + 1e-9 for share in shares)
    numbers = (found.cycle_s, found.contacts_a_minute, found.passes_a_minute, found.metres_a_minute)
    assert all(isfinite(number) and number >= 0 for number in numbers)
    assert len(found.children) == len(found.people) <= found.size  # fewer where somebody has nowhere to stand
    for track in found.people:
        assert all(before.time_s < after.time_s for before, after in pairwise(track.knots))
        assert all(before.end_s == after.start_s for before, after in pairwise(track.spells))
    for ball in found.balls:
        assert all(before.time_s < after.time_s for before, after in pairwise(ball.knots))


@THOROUGH
@given(seed=SEEDS, size=SIZES, age=AGES, surface=st.sampled_from(SURFACES))
def test_patterns_that_make_sense(seed: int, size: int, age: int, surface: str) -> None:
    assert assert_sound(chain(Random(seed)), size, age, surface) is not None


@settings(max_examples=200, deadline=None)
@given(seed=SEEDS, size=SIZES, age=AGES, surface=st.sampled_from(SURFACES))
@example(seed=274, size=1, age=9, surface="turf")
@example(seed=301, size=11, age=5, surface="turf_fast")
def test_sentences_that_make_none(seed: int, size: int, age: int, surface: str) -> None:
    assert_sound(nonsense(Random(seed)), size, age, surface)


@settings(max_examples=120, deadline=None)
@given(text=st.sampled_from(SHELF), seed=SEEDS, size=SIZES, age=AGES, surface=st.sampled_from(SURFACES))
def test_texts_of_the_shelf_with_slips_in_them(text: str, seed: int, size: int, age: int, surface: str) -> None:
    assert_sound(mutated(text, Random(seed)), size, age, surface)


@pytest.mark.parametrize("size", [0, 1, 2, 5, 17, 30])
def test_every_text_of_the_shelf_with_any_number(size: int) -> None:
    for text in SHELF:
        for age in (5, 20):
            assert assert_sound(text, size, age, "hall") is not None


# --- what comes back ----------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("size", "bout_s", "why"),
    [(0, 240, "a copy of 0 children"), (MOST_CHILDREN + 1, 240, "a copy of 61 children"), (6, 0, "a copy of 6")],
)
def test_what_cannot_be_played_says_why(size: int, bout_s: float, why: str) -> None:
    result, _ = rehearse(exercise_of(FACING), size, figures=FIGURES, age=AGE, surface=SURFACE, bout_s=bout_s)
    assert isinstance(result, NotRehearsed)
    assert result.why.startswith(why)


def test_a_round_that_stops_gives_what_was_played_and_why_it_stopped() -> None:
    text = FACING.replace("2. Far passes to Base, then runs to Base.", "2. Far passes to Base, then runs to Far.")
    result, problems = rehearse(exercise_of(text, 4), 4, figures=FIGURES, age=AGE, surface=SURFACE)
    assert isinstance(result, Rehearsal)
    assert [problem.code for problem in problems] == ["nobody-there"]
    assert 0 < len(result.round_starts_s) < 6


def test_a_round_that_cannot_start_is_not_rehearsed() -> None:
    text = FACING.replace("Start with the same number in each line.", "Start with four at Far.")
    result, problems = rehearse(exercise_of(text, 4), 4, figures=FIGURES, age=AGE, surface=SURFACE)
    assert isinstance(result, NotRehearsed)
    assert [problem.code for problem in problems] == ["nobody-there"]


def test_the_same_every_time() -> None:
    assert rehearsal_of(FACING, 7) == rehearsal_of(FACING, 7)


def test_happenings_name_the_acts_of_the_round() -> None:
    found = rehearsal_of(FACING, 6)
    assert [act.verb for act in found.acts] == [Verb.PASS, Verb.RUN, Verb.PASS, Verb.RUN]
    assert [act.who for act in found.acts] == ["Base", "Base", "Far", "Far"]
    for happening in found.happenings:
        act = found.acts[happening.act]
        assert (happening.release_s is not None) == (act.verb is Verb.PASS)
        assert happening.start_s <= happening.end_s
    starts = [happening.start_s for happening in found.happenings if happening.act == 0]
    assert len(starts) == len(found.round_starts_s)


def test_older_children_are_quicker_and_the_surface_counts() -> None:
    cycles = [rehearsal_of(FACING, 6, age=age).cycle_s for age in (7, 9, 11, 13, 15, 17, 20)]
    assert cycles == sorted(cycles, reverse=True)
    on = [rehearse(exercise_of(FACING, 6), 6, figures=FIGURES, age=AGE, surface=surface)[0] for surface in SURFACES]
    assert len({found.cycle_s for found in on if isinstance(found, Rehearsal)}) == len(SURFACES)


def test_more_children_at_one_ball_wait_longer() -> None:
    waits = [rehearsal_of(FACING, size).waiting_share for size in range(4, 13)]
    assert waits == sorted(waits)


def test_a_ball_brought_to_its_place_lies_there() -> None:
    text = """Home at 0, 0 is a line with 2 balls.
Each round:
1. Home dribbles to 0, 8, then dribbles to Home.
"""
    found = rehearsal_of(text, 5)
    ball = found.balls[0]
    home = [knot for knot in ball.knots if abs(knot.x_m) < 1e-6 and abs(knot.y_m) < 1e-6]
    behind = [knot for knot in ball.knots if knot.y_m < -1e-6]
    assert len(home) > 2
    assert not behind
    assert found.people[0].knots[-1].time_s == TRACK_S
