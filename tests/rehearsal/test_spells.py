"""What every child does when: stretches that cover the time without gap or overlap."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conewright.model.rehearsed import Doing
from conewright.rehearsal.spells import Stretch, clipped, filled, spells_by_person, waits
from tests.rehearsal.played import CHILD, FACING, play_of

UNTIL_S = 60.0
TIMES = st.floats(-20, 80)
STRETCHES = st.lists(
    st.builds(
        Stretch,
        start_s=TIMES,
        end_s=TIMES,
        doing=st.sampled_from((Doing.MOVING, Doing.ON_BALL)),
        step=st.integers(0, 5),
        round=st.integers(0, 9),
        way_back=st.booleans(),
    ),
    max_size=12,
).map(sorted)


@given(stretches=STRETCHES)
def test_clipped_stretches_follow_each_other_inside_the_time(stretches: list[Stretch]) -> None:
    kept = clipped(stretches, UNTIL_S)
    assert all(0 <= one.start_s < one.end_s <= UNTIL_S for one in kept)
    assert all(before.end_s <= after.start_s for before, after in pairwise(kept))


@given(stretches=STRETCHES)
def test_spells_cover_the_time_and_the_waits_are_what_is_left(stretches: list[Stretch]) -> None:
    spells = filled(stretches, UNTIL_S)
    assert spells[0].start_s == 0
    assert spells[-1].end_s == UNTIL_S
    assert all(before.end_s == after.start_s for before, after in pairwise(spells))
    waiting = [spell.end_s - spell.start_s for spell in spells if spell.doing is Doing.WAITING]
    total, longest = waits(stretches, UNTIL_S)
    assert total == pytest.approx(sum(waiting))
    assert longest == pytest.approx(max(waiting, default=0.0))


def test_nothing_done_is_one_long_wait() -> None:
    assert waits([], 30) == (30, 30)
    (spell,) = filled([], 30)
    assert (spell.start_s, spell.end_s, spell.doing) == (0, 30, Doing.WAITING)


def test_a_passer_controls_follows_through_and_runs() -> None:
    """The second of the facing lines: control and pass, then follow-through and run as one stretch of moving."""
    play = play_of(FACING, 4)
    far = play.homes.index("Far")
    first = [one for one in spells_by_person(play, UNTIL_S)[far] if one.round == 0]
    assert [one.doing for one in first] == [Doing.ON_BALL, Doing.MOVING, Doing.MOVING]
    assert first[0].end_s - first[0].start_s == pytest.approx(CHILD.control_s)
    assert first[1].end_s - first[1].start_s == pytest.approx(CHILD.follow_through_s)
    assert first[2].start_s == pytest.approx(first[1].end_s)
    assert first[2].way_back
    assert not first[0].way_back


def test_a_wait_asked_for_is_waiting() -> None:
    text = """Base at 0, 0 is a line with the ball.
Each round:
1. Base waits 3 s, then dribbles to 0, 6, then dribbles home.
"""
    play = play_of(text, 2)
    first = [one for one in spells_by_person(play, UNTIL_S)[0] if one.round == 0]
    assert {one.doing for one in first} == {Doing.ON_BALL}
    assert first[0].start_s > 3


def test_a_change_every_so_many_rounds_is_a_way_of_its_own() -> None:
    text = FACING + "Every 2 rounds: Base to Far, Far to Base.\n"
    play = play_of(text, 8)
    changes = [one for spells in spells_by_person(play, UNTIL_S).values() for one in spells if one.step == 0]
    assert changes
    assert all(one.way_back and one.doing is Doing.MOVING for one in changes)
