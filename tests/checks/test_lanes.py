"""Shots past somebody: who stands in the line is told, who keeps the goal or stands behind is not."""

import pytest

from conewright.checks.check import check_copy
from conewright.checks.lanes import at
from conewright.model.geometry import Point
from conewright.model.problem import Problem, Severity
from conewright.model.rehearsed import Knot
from conewright.notation.reader import read
from conewright.store.figures import load_figures

FIGURES = load_figures()
TEXT = """exercise: Case
kind: finishing
for 3 to 8 players, under 8 to under 16
Base at 0, 0 is a line with 4 balls.
Post at {post} holds one.
Goal at 0, 14 is a mini goal.
Start with one at Post, the rest at Base.
Each round:
1. Base shoots at Goal, then runs to Post.
2. Post fetches the ball when Base's shot is over, then dribbles to the end of Base round the outside.
The next round starts when Post is home.
"""


def told(post: str) -> Problem | None:
    exercise, problems = read(TEXT.format(post=post))
    assert exercise is not None
    assert not problems, problems
    found = check_copy(exercise, 5, figures=FIGURES, age=11, surface="grass_club")
    return next((problem for problem in found if problem.code == "shot-past-somebody"), None)


@pytest.mark.parametrize("post", ["0, 7", "0.8, 7", "-0.8, 9"])
def test_who_stands_in_the_line_is_told_with_where_to_stand(post: str) -> None:
    problem = told(post)
    assert problem is not None
    assert problem.severity is Severity.LOOK
    assert "somebody at Post" in problem.message
    near = problem.hint.split("near ")[1].split(", or")[0]
    assert told(near) is None


@pytest.mark.parametrize("post", ["2, 7", "-3, 9", "0, 13", "0, -3"])
def test_who_stands_aside_in_the_goal_or_behind_is_not(post: str) -> None:
    assert told(post) is None


def test_where_a_track_is_at_a_moment() -> None:
    knots = (Knot(1.0, 0.0, 0.0), Knot(3.0, 4.0, 2.0), Knot(5.0, 4.0, 2.0))
    assert at(knots, 2.0) == Point(2, 1)
    assert at(knots, 0.0) == Point(0, 0)
    assert at(knots, 9.0) == Point(4, 2)
    assert at(knots, 3.0) == Point(4, 2)
