"""What each child gets in a bout, counted by hand on two facing lines, and sums that have to agree."""

from collections import Counter

import pytest

from conewright.model.exercise import Verb
from conewright.model.rehearsed import ChildFigures
from conewright.rehearsal.counting import children_of, rolling_share
from conewright.rehearsal.recursion import Play
from conewright.rehearsal.spells import act_of, spells_by_person
from tests.rehearsal.played import CHILD, FACING, play_of, rehearsal_of

RELAY = """Home at 0, 0 is a line with the ball.
Each round:
1. Home dribbles to 0, 8, then dribbles home.
"""


def figures_of(play: Play) -> tuple[ChildFigures, ...]:
    return children_of(play, spells_by_person(play, play.bout_s))


@pytest.mark.parametrize("n", [3, 4, 6, 7])
def test_facing_lines_by_hand(n: int) -> None:
    """Every pass counts one pass, two contacts and ten metres for whoever plays it."""
    play = play_of(FACING, n)
    passes = Counter(
        done.person for done in play.done if done.start_s <= play.bout_s and (act := act_of(play, done)) and act.kick
    )
    runs = Counter(
        done.person for done in play.done if done.start_s <= play.bout_s and (act := act_of(play, done)) and act.moves
    )
    children = figures_of(play)
    assert len(children) == n
    for child in children:
        assert child.passes == passes[child.person]
        assert child.contacts == 2 * passes[child.person]
        assert child.metres == pytest.approx(10 * runs[child.person])
        assert sum(count for _, count in child.roles) == child.turns
    flight_s = next(act.flight_s for act in play.rounds[0].acts if act.kick)
    one_pass_s = CHILD.control_s + flight_s
    if n > 3:  # with three the ball waits for who runs
        assert sum(passes.values()) == pytest.approx(play.bout_s / one_pass_s, abs=2)


def test_nothing_after_the_end_of_the_bout_counts() -> None:
    for bout_s in (0.1, 20.0, 240.0):
        play = play_of(FACING, 4, bout_s=bout_s)
        begun = [done for done in play.done if done.act in (0, 2) and done.start_s <= bout_s]
        assert sum(child.passes for child in figures_of(play)) == len(begun)
        assert len(begun) < sum(done.act in (0, 2) for done in play.done)


def test_everybody_waits_or_does_something() -> None:
    for child in figures_of(play_of(FACING, 6)):
        assert 0 < child.waiting_share < 1
        assert 0 < child.longest_wait_s <= 240 * child.waiting_share


def test_dribbling_counts_metres_and_touches() -> None:
    play = play_of(RELAY, 3)
    acts = play.rounds[0].acts
    for child in figures_of(play):
        starts = Counter(done.act for done in play.done if done.person == child.person and done.start_s <= play.bout_s)
        assert child.metres == pytest.approx(sum(acts[act].length_m * times for act, times in starts.items()))
        assert child.contacts == pytest.approx(sum(acts[act].contacts * times for act, times in starts.items()), abs=1)
        assert child.passes == 0


def test_a_throw_is_a_pass_and_no_foot_contact() -> None:
    text = """Base at 0, 0 is a line with 4 balls.
Mate at 0, 6 is a line.
Each round:
1. Base throws to Mate, then runs to Mate.
2. Mate dribbles to Base.
"""
    play = play_of(text, 4)
    thrown = next(act for act in play.rounds[0].acts if act.played.verb is Verb.THROW)
    assert thrown.contacts == 0
    assert all(child.passes > 0 for child in figures_of(play))


def test_a_ball_that_is_always_played_or_controlled_always_rolls() -> None:
    assert rolling_share(play_of(FACING, 6)) == pytest.approx(1, abs=0.01)


def test_a_ball_that_is_set_right_from_a_stock_does_not_roll() -> None:
    """Pass there, dribble back; the next ball lies there set right, and its passer reacts to the one come home."""
    text = """Base at 0, 0 is a line with 6 balls.
Far at 0, 10 is a line.
Each round:
1. Base passes to Far, then runs to Far.
2. Far dribbles to Base.
"""
    play = play_of(text, 6)
    cycle_s = play.starts[8].time_s - play.starts[7].time_s
    assert rolling_share(play) == pytest.approx((cycle_s - CHILD.reaction_s) / cycle_s, abs=0.01)


def test_a_ball_that_waits_at_a_foot_does_not_roll() -> None:
    """Controlled, held until the other has come back, then played on."""
    text = """Base at 0, 0 is a line with the ball.
Far at 0, 10 is a line.
Each round:
1. Base waits 20 s, then passes to Far, then runs to Far.
2. Far dribbles to Base.
"""
    play = play_of(text, 6)
    cycle_s = play.starts[8].time_s - play.starts[7].time_s
    assert cycle_s > 20
    assert rolling_share(play) < (cycle_s - 18) / cycle_s


def test_the_means_of_a_rehearsal_are_those_of_its_children() -> None:
    found = rehearsal_of(FACING, 5)
    count = len(found.children)
    assert found.passes_a_minute == pytest.approx(sum(child.passes for child in found.children) / count / 4)
    assert found.contacts_a_minute == pytest.approx(sum(child.contacts for child in found.children) / count / 4)
    assert found.metres_a_minute == pytest.approx(sum(child.metres for child in found.children) / count / 4)
    assert found.waiting_share == pytest.approx(sum(child.waiting_share for child in found.children) / count)
    assert found.longest_wait_s == max(child.longest_wait_s for child in found.children)
