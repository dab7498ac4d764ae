"""What a copy needs is counted from its text."""

from conewright.fit.needs import Needs, balls_in_play, cone_spots, needs_of
from conewright.model.exercise import Bib
from tests.fit.evenings import written

HEAD = "for 4 to 16 players, under 7 to under 16; best with 8\n"


def test_places_cones_and_gates_are_marked_with_cones_and_goals_are_not() -> None:
    exercise = written(
        f"""exercise: Marks
{HEAD}
Base at 0, 0 is a line with 3 balls.
Far at 0, 8 holds one.
Post at 4, 4 is a cone.
Door at -4, 4 is a gate 2 m wide.
Goal at 0, 16 is a mini goal.

Each round:
1. Base passes to Far, then runs to Far.
2. Far shoots at Goal.
3. Far fetches the ball, then dribbles to the end of Base round the outside.
"""
    )
    assert needs_of(exercise, 8) == Needs(balls=3, least_balls=3, cones=5, mini_goals=1)


def test_a_box_has_a_cone_at_each_corner_and_shares_those_that_lie_there_already() -> None:
    exercise = written(
        f"""exercise: Corner gate
{HEAD}
Top at 4, 5 is a gate 2 m wide.
Open play in 10 by 10 m: Yellow against Blue on Top.
"""
    )
    assert len(cone_spots(exercise)) == 5
    assert needs_of(exercise, 8).balls == 1


def test_a_ball_each_at_a_line_is_one_for_each_who_stands_there() -> None:
    exercise = written(
        f"""exercise: Each
{HEAD}
Base at 0, 0 is a line, a ball each.
Far at 0, 8 is a line.
Start with the same number in each line.

Each round:
1. Base passes to Far, then runs to Far.
2. Far dribbles to the end of Base round the outside.
"""
    )
    assert needs_of(exercise, 8).balls == 4
    assert needs_of(exercise, 9).balls == 5


def test_where_two_may_share_a_ball_half_as_many_are_enough() -> None:
    sharing = written(
        f"exercise: Sharing\n{HEAD}\nOpen play in 18 by 18 m: everyone has a ball. One over shares a ball.\n"
    )
    own = written(f"exercise: Own\n{HEAD}\nOpen play in 18 by 18 m: everyone has a ball.\n")
    assert balls_in_play(sharing, 13) == (13, 7)
    assert balls_in_play(own, 13) == (13, 13)


def test_chasers_need_no_ball() -> None:
    exercise = written(
        f"exercise: Chase\n{HEAD}\nOpen play in 18 by 18 m: two Red chase the others, who have a ball each.\n"
    )
    assert balls_in_play(exercise, 12)[0] == 10


def test_needs_of_several_copies_add_up() -> None:
    one = Needs(balls=2, least_balls=1, cones=4, adults=1, bibs=((Bib.RED, 2),))
    both = one + Needs(balls=1, cones=3, mini_goals=2, bibs=((Bib.YELLOW, 3), (Bib.RED, 1)))
    assert both == Needs(balls=3, least_balls=1, cones=7, mini_goals=2, adults=1, bibs=((Bib.YELLOW, 3), (Bib.RED, 3)))


def test_an_adult_who_serves_is_counted() -> None:
    exercise = written(
        f"""exercise: Served
{HEAD}
Server at 0, 0 is the coach, with 6 balls.
Line at 0, 8 is a line.

Each round:
1. Server passes to Line.
2. Line passes to Server, then jogs to the end of Line round the outside.
"""
    )
    assert needs_of(exercise, 6).adults == 1
