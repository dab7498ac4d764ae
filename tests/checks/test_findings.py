"""The findings a coach most needs: each at the right line, with a way to mend it."""

import pytest

from conewright.checks.check import check
from conewright.model.problem import Problem, Severity
from conewright.notation.reader import read
from conewright.store.figures import load_figures

FIGURES = load_figures()
HEAD = """exercise: Case
kind: passing pattern
for 3 to 12 players, under 8 to under 16
"""
HEAD_LINES = HEAD.count("\n")


def found(text: str, n: int, age: int = 11) -> tuple[Problem, ...]:
    exercise, problems = read(HEAD + text)
    assert exercise is not None
    assert not problems, problems
    return check(exercise, n, figures=FIGURES, age=age, surface="grass_club")


def mends(problems: tuple[Problem, ...]) -> list[tuple[str, int]]:
    """Codes of all mends with the line they point at, counted in the text after the head."""
    return [
        (problem.code, (problem.where.line if problem.where else 0) - HEAD_LINES)
        for problem in problems
        if problem.severity is Severity.MEND
    ]


def codes(problems: tuple[Problem, ...]) -> set[str]:
    return {problem.code for problem in problems}


SOUND = """Base at 0, 0 is a line with the ball.
Post at 0, 8 is a line.
Start with the same number in each line.
Each round:
1. Base passes to Post, then runs to Post.
2. Post passes to Base, then runs to Base.
"""


def test_a_sound_pattern_has_nothing_to_mend() -> None:
    assert mends(found(SOUND, 6)) == []


def test_a_broken_rotation_is_found_where_it_sends_the_child() -> None:
    text = SOUND.replace("2. Post passes to Base, then runs to Base.", "2. Post passes to Base, then runs to Post.")
    assert mends(found(text, 6)) == [("flow-open", 6)]


def test_a_stranded_ball_is_found_where_it_was_played() -> None:
    text = """Base at 0, 0 is a line with 6 balls.
Post at 0, 8 holds one.
Goal at 0, 14 is a mini goal.
Start with one at Post, the rest at Base.
Each round:
1. Base passes to Post, then runs to Post.
2. Post passes to 5, 9, then jogs to Base.
"""
    assert ("ball-stranded", 7) in mends(found(text, 6))


def test_a_ball_nobody_brings_home_runs_out() -> None:
    text = """Base at 0, 0 is a line with 6 balls.
Post at 0, 8 is a line with 1 balls.
Start with two at Post, the rest at Base.
Each round:
1. Base passes to Post, then runs to Post.
2. Post jogs to Base.
""".replace("1 balls", "2 balls").replace("2. Post jogs to Base.", "2. Post passes to Far, then jogs to Base.")
    text = "Far at 0, 14 is a line with 2 balls.\n" + text
    assert any(code in ("balls-run-out", "ball-stranded") for code, _ in mends(found(text, 8)))


def test_an_absent_receiver_is_found_at_the_pass() -> None:
    text = """Base at 0, 0 is a line with the ball.
Post at 0, 8 is a line.
Away at 8, 8 is a line.
Start with three at Base, one at Post.
Each round:
1. Base passes to Post, then runs to Post.
2. Post passes to Away, then runs to Away.
3. Away passes to Base, then runs to Base.
"""
    assert mends(found(text, 4)) == [("nobody-there", 7)]


def test_a_shot_across_a_way_back_is_found_at_the_shot() -> None:
    text = """Base at 0, 0 is a line with 12 balls.
Goal at 0, 14 is a mini goal.
Each round:
1. Base dribbles to 0, 5.
2. Base shoots at Goal.
3. Base fetches the ball, then dribbles to {home}.
The next round starts when {next}.
"""
    through_the_middle = found(text.format(home="Base", next="Base's shot is over"), 6)
    assert mends(through_the_middle) == [("shot-across-way-back", 5)]
    assert "round the outside" in next(p.hint for p in through_the_middle if p.code == "shot-across-way-back")
    round_the_outside = text.format(home="the end of Base round the outside", next="Base is halfway home")
    assert mends(found(round_the_outside, 6)) == []


def test_a_line_over_four_proposes_copies() -> None:
    problems = [problem for problem in found(SOUND, 12) if problem.code == "line-long"]
    assert len(problems) == 1
    assert "two copies" in problems[0].hint


def test_heading_is_stopped_by_age_and_not_by_a_head_up() -> None:
    assert ("header-asked", 1 - HEAD_LINES) in mends(found("score: headers count double\n" + SOUND, 6))
    assert "header-asked" not in codes(found("cue: head up before the pass\n" + SOUND, 6))
    assert "header-asked" not in codes(found("score: no headers\n" + SOUND, 6))


def test_pass_lengths_against_the_age() -> None:
    long = SOUND.replace("Post at 0, 8", "Post at 0, 13")
    assert "pass-long" in codes(found(long, 6))
    assert "pass-long" not in codes(found(long, 6, age=13))


@pytest.mark.parametrize(("n", "code"), [(2, "too-few"), (13, "too-many")])
def test_head_counts_beyond_the_range(n: int, code: str) -> None:
    assert code in codes(found(SOUND, n))


def test_the_space_is_held_against_what_is_used() -> None:
    assert ("space-too-small", 1 - HEAD_LINES) in mends(found("space: 4 by 6 m\n" + SOUND, 6))


def test_one_sided_patterns_are_told_and_half_time_cures_them() -> None:
    ring = """One at 0, 0 is a line with the ball.
Two at 0, 8 is a line.
Three at 8, 8 is a line.
Four at 8, 0 is a line.
Each round:
1. One passes to Two, then runs to Two.
2. Two passes to Three, then runs to Three.
3. Three passes to Four, then runs to Four.
4. Four passes to One, then runs to One.
"""
    assert "one-sided" in codes(found(ring, 6))
    assert "one-sided" not in codes(found(ring + "Change sides at half time.\n", 6))
