"""What a play meets and cannot go on with, told with what to write."""

from conewright.model.problem import Problem
from tests.rehearsal.played import FACING, play_of


def met(text: str, size: int) -> Problem:
    (problem,) = play_of(text, size).problems
    return problem


TRIANGLE = """Base at 0, 0 is a line with the ball.
Left at -5, 8 is a line.
Right at 5, 8 is a line.
{start}
Each round:
1. Base passes to Left, then runs to Left.
2. Left passes to Right, then runs to Right.
3. Right passes to Base, then runs to Base.
"""


def test_nobody_there_at_the_start_proposes_a_start_that_runs() -> None:
    problem = met(TRIANGLE.format(start="Start with four at Base, one at Left."), 5)
    assert problem.code == "nobody-there"
    assert problem.message == "With 5 children nobody stands at Right, and step 2 needs Right."
    proposal = problem.hint.split('"')[1]
    assert not play_of(TRIANGLE.format(start=proposal), 5).problems


def test_nobody_there_any_more_asks_who_goes_there() -> None:
    problem = met(FACING.replace("then runs to Base.", "then runs to Far."), 4)
    assert problem.code == "nobody-there"
    assert problem.message.startswith("In round 2 nobody stands at Base any more")
    assert "Rotation: ... to Base." in problem.hint


def test_no_ball_left_says_in_which_round() -> None:
    text = """Coach at -4, 6 is an adult with 3 balls.
Base at 0, 0 is a line with 2 balls.
Each round:
1. Coach passes to Base.
2. Base dribbles home.
"""
    problem = met(text, 4)
    assert problem.code == "no-ball-left"
    assert problem.message.startswith("In round 4 no ball is at Coach")


def test_a_signal_that_never_comes_is_quoted_and_told_once() -> None:
    text = FACING.replace("then runs to Far", "then runs to Far when Far shoots")
    problem = met(text, 6)
    assert problem.code == "never-happens"
    assert '"when Far shoots"' in problem.message


def test_rounds_in_which_no_time_passes_are_stopped() -> None:
    text = """Base at 0, 0 is a line with the ball.
Each round:
1. Base calls "now".
The next round starts at once.
"""
    assert met(text, 3).code == "no-time"
