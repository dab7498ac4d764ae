"""Cycle times worked by hand, from the same stages the rehearsal adds up, agree to 1e-9.

The notation of the comments: T(d) seconds a pass of d metres rolls, R(d) seconds a run of d metres takes, D(d) the
same with the ball, C the control before a pass with two touches, F the follow-through, Q the reaction to something
seen, U a half turn, S the step up in a line. All at under 11 on average club grass, from the figures file.
"""

from dataclasses import dataclass

import pytest

from conewright.model.exercise import Pace
from conewright.model.rehearsed import Rehearsal
from conewright.notation.reader import read
from conewright.rehearsal.durations import HAND_OVER_M, Pupil, pupil
from conewright.rehearsal.rehearse import rehearse
from conewright.rehearsal.rolling import pass_release_m_s, roll
from conewright.store.figures import load_figures

FIGURES = load_figures()
AGE, SURFACE = 11, "grass_club"
CHILD: Pupil = pupil(FIGURES, age=AGE, surface=SURFACE)

HEAD = """exercise: Case
kind: passing pattern
for 2 to 12 players, under 8 to under 16
"""


@dataclass(frozen=True)
class Stages:
    """The stages named in the comments."""

    control: float = CHILD.control_s
    follow: float = CHILD.follow_through_s
    react: float = CHILD.reaction_s
    half_turn: float = CHILD.turn_180_s

    def ball(self, metres: float) -> float:
        """T(d): an ordinary pass to feet."""
        release = pass_release_m_s(
            metres, short=CHILD.short_m_s, firm=CHILD.firm_m_s, arrival=CHILD.arrival_m_s, ground=CHILD.ground
        )
        seconds = roll(release, CHILD.ground).travel_time_s(metres)
        assert seconds is not None
        return seconds

    def firm(self, metres: float) -> float:
        seconds = roll(CHILD.firm_m_s, CHILD.ground).travel_time_s(metres)
        assert seconds is not None
        return seconds

    def shot(self, metres: float) -> float:
        seconds = roll(CHILD.shot_m_s, CHILD.ground).travel_time_s(metres)
        assert seconds is not None
        return seconds

    def run(self, metres: float) -> float:
        return CHILD.run_s(metres, pace=Pace.RUN)

    def walk(self, metres: float) -> float:
        return metres / CHILD.walk_m_s

    def dribble(self, metres: float) -> float:
        return CHILD.run_s(metres, pace=Pace.RUN, with_ball=True)

    @property
    def hand_over(self) -> float:
        seconds = roll(CHILD.short_m_s, CHILD.ground).travel_time_s(HAND_OVER_M)
        assert seconds is not None
        return seconds


BY = Stages()


def rehearsed(text: str, n: int) -> Rehearsal:
    exercise, problems = read(HEAD + text)
    assert exercise is not None
    assert not problems, problems
    result, stalled = rehearse(exercise, n, figures=FIGURES, age=AGE, surface=SURFACE)
    assert not stalled, stalled
    assert isinstance(result, Rehearsal), result
    return result


FACING = """
Near at 0, 0 is a line with the ball.
Far at 0, 10 is a line.
Start with the same number in each line.
Each round:
1. Near passes to Far, then {goes} to Far.
2. Far passes to Near, then {goes} to Near.
"""


@pytest.mark.parametrize("n", [4, 5, 6, 9, 12])
def test_facing_lines_hang_on_the_ball(n: int) -> None:
    """With enough children only the ball counts: control, flight, control, flight. 2 (C + T(10))."""
    expected = 2 * (BY.control + BY.ball(10))
    assert rehearsed(FACING.format(goes="runs"), n).cycle_s == pytest.approx(expected, abs=1e-9)


def test_facing_lines_with_three_who_walk_hang_on_the_walk() -> None:
    """Three children, and the ball has to wait for the walker.

    Whoever passes at Near in one round is the receiver at Far in the next: it leaves F after its pass and walks
    10 m. So two starts are at least F + 10/walk apart, which is more than 2 (C + T(10)).
    """
    expected = BY.follow + BY.walk(10)
    assert expected > 2 * (BY.control + BY.ball(10))
    assert rehearsed(FACING.format(goes="walks"), 3).cycle_s == pytest.approx(expected, abs=1e-9)


@pytest.mark.parametrize("n", [3, 4, 7])
def test_relay_there_and_back(n: int) -> None:
    """One ball, there and back: the next reacts to the ball handed over.

    Q, D(9) out, a half turn, D(9) back, then the hand-over to the head of the line.
    """
    text = """
Home at 0, 0 is a line with the ball.
Mast at 0, 9 is a cone.
Each round:
1. Home dribbles to Mast, then dribbles to Home.
"""
    expected = BY.react + 2 * BY.dribble(9) + BY.half_turn + BY.hand_over
    assert rehearsed(text, n).cycle_s == pytest.approx(expected, abs=1e-9)


def test_triangle_one_touch() -> None:
    """Three corners, first time, follow the pass; the third pass ends the round at the first corner.

    Each pass is played first time (0.1 s) and rolls; sides 6, 8 and 10 m. With five at it nobody is late:
    the one who passes 10 m away has a round of rolling balls to run it.
    """
    text = """
One at 0, 0 is a line with the ball.
Two at 6, 0 is a line.
Three at 6, 8 is a line.
Start with three at One, one at Two, one at Three.
Each round:
1. One passes first time to Two, then runs to Two.
2. Two passes first time to Three, then runs to Three.
3. Three passes first time to One, then runs to One.
"""
    expected = 3 * CHILD.first_time_s + BY.ball(6) + BY.ball(8) + BY.ball(10)
    assert rehearsed(text, 5).cycle_s == pytest.approx(expected, abs=1e-9)


def test_set_back_and_shot_hang_on_the_shooter_becoming_the_front() -> None:
    """A pass, a set-back, a shot; the next ball when the shot is over and the shooter is the new front player.

    A firm pass of 8 m, set back first time (but not before the passer is at the spot: F, R(3)), 5 m to the shooter,
    who controls it with two touches and shoots over 11 m. Then the next pass waits for the later of two things: the
    next in the queue reacting to the shot's end (T over 11 m, then Q), and the shooter having run on to Front
    (F, then R(5) straight ahead). The queue's next ball is set right long before.
    """
    text = """
Queue at 0, 0 is a line with 12 balls.
Front at 0, 8 holds one.
Goal at 0, 14 is a mini goal.
Start with one at Front, the rest at Queue.
Each round:
1. Queue passes firmly to Front, then runs to 0, 3.
2. Front sets it back to Queue.
3. Queue shoots at Goal, then runs to Front.
4. Front fetches the ball, then dribbles to the end of Queue round the outside.
The next round starts when Queue's shot is over.
"""
    found = rehearsed(text, 8)
    ready = BY.follow + BY.run(3)
    set_back = max(BY.firm(8) + CHILD.first_time_s, ready)
    after = max(BY.shot(11) + BY.react, BY.follow + BY.run(5))
    assert found.cycle_s == pytest.approx(set_back + BY.ball(5) + BY.control + after, abs=1e-9)


def test_sides_in_turn_take_the_mean_of_both() -> None:
    """Left is 6 m away, Right 9 m, in turn: two rounds take both, the cycle is their mean.

    Each round: Q, T(d), then the receiver controls the ball with two touches and dribbles home; the next starts when
    it is home. The way home is straight because it is written to the place, not to its end.
    """
    text = """
Base at 0, 0 is a line with 4 balls.
Left at -6, 0 is a line, facing Base.
Right at 9, 0 is a line, facing Base.
Start with four at Base, two at Left, two at Right.
Each round, Left and Right in turn (call it Side):
1. Base passes to Side, then runs to Side.
2. Side dribbles to Base.
The next round starts when Side is home.
"""
    left = BY.react + BY.ball(6) + BY.control + BY.dribble(6)
    right = BY.react + BY.ball(9) + BY.control + BY.dribble(9)
    found = rehearsed(text, 8)
    assert found.cycle_s == pytest.approx((left + right) / 2, abs=1e-9)


def test_two_rounds_in_flight_halve_the_wait() -> None:
    """Out and back 12 m with a ball each, the next when the first is halfway home; at most two at once.

    Halfway home: Q, D(12), a half turn, and D over the first 6 m of the way back (gathering speed anew).
    """
    text = """
Gate at 0, 0 is a line, a ball each.
Oak at 0, 12 is a cone.
Each round:
1. Gate dribbles to Oak, then dribbles to Gate.
The next round starts when Gate is halfway home. Two rounds may run at once.
"""
    expected = BY.react + BY.dribble(12) + BY.half_turn + BY.dribble(6)
    assert rehearsed(text, 6).cycle_s == pytest.approx(expected, abs=1e-9)


def test_too_few_balls_decide_the_pace() -> None:
    """Two balls in a stock, many rounds allowed at once: the balls are the tokens.

    A ball is out for the pass T(10), the control C and the dribble home D(10); then the next child sets it right
    (the dead ball) and plays it again. Two balls: two rounds in that time. Slower than that is only the reaction to
    the ball before (Q, T(10)), or the follower on its way to Hut (F, R(10)) whom the next pass but one waits for.
    """
    text = """
Well at 0, 0 is a line with 2 balls.
Hut at 0, 10 holds one.
Start with one at Hut, the rest at Well.
Each round:
1. Well passes to Hut, then runs to Hut.
2. Hut dribbles to Well.
The next round starts when Hut has the ball. Five rounds may run at once.
"""
    found = rehearsed(text, 8)
    ball_round = CHILD.dead_ball_s + BY.ball(10) + BY.control + BY.dribble(10)
    follower = BY.follow + BY.run(10)
    by_event = BY.react + BY.ball(10)
    assert found.cycle_s == pytest.approx(max(ball_round / 2, by_event, follower), abs=1e-9)
