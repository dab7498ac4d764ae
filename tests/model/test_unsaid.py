"""What a text leaves unsaid, with what to write."""

from conewright.model.exercise import Act, Exercise, Verb
from conewright.model.geometry import Point
from conewright.model.unsaid import asked_where, left_standing, no_ball
from conewright.model.ways import Walker
from conewright.notation.reader import read

TEXT = """exercise: Case
kind: passing pattern
for 2 to 12 players, under 8 to under 16
Base at 0, 0 is a line with 4 balls.
Far at 0, 10 is a line.
Coach at 5, 5 is an adult.
Goalie at 0, 19 is a keeper.
"""


def exercise() -> Exercise:
    found, _ = read(TEXT)
    assert found is not None
    return found


def walker(place: str, **known: object) -> Walker:
    state = Walker(number=0, role=place, place=place, at=Point(0, 0), heading=0)
    for name, value in known.items():
        setattr(state, name, value)
    return state


def test_who_lacks_a_ball_is_named_with_the_step() -> None:
    problem = no_ball(walker("Far"), Act(who="Far", verb=Verb.PASS), 3)
    assert problem.code == "no-ball"
    assert "Far has no ball to pass in step 3" in problem.message
    assert "Far ... is a line with the ball." in problem.hint


def test_who_passes_twice_is_asked() -> None:
    problem = asked_where(walker("Base"), "Far")
    assert "taken as Far" in problem.message
    assert 'Write "Rotation: Base to Far."' in problem.hint


def test_who_is_left_standing_is_sent_where_nobody_comes() -> None:
    lost, comes = walker("Base", moved=True), walker("Far", moved=True, gone_to="Base")
    (problem,) = left_standing(exercise(), [lost, comes])
    assert problem.code == "ends-nowhere"
    assert 'Write "Rotation: Base to Far."' in problem.hint
    (alone,) = left_standing(exercise(), [lost])
    assert 'Write "Rotation: Base to Base."' in alone.hint


def test_who_stays_joins_or_serves_is_not_left_standing() -> None:
    fine = [
        walker("Base"),
        walker("Far", moved=True, gone_to="Base"),
        walker("Coach", moved=True),
        walker("Goalie", moved=True),
    ]
    assert left_standing(exercise(), fine) == []
