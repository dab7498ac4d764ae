"""Moments remember what decided them."""

import pytest

from conewright.rehearsal.moments import Moment, Moments, after, later, seen, settled


def test_a_sum_remembers_what_it_was_added_to() -> None:
    moments = Moments()
    start = moments.node(2.0, -1, -1, "start")
    end = moments.plus(start, 1.5, 7, "flight")
    assert end.time_s == 3.5
    node = moments.nodes[end.node]
    assert (node.time_s, node.cause, node.act, node.stage, node.round) == (3.5, start.node, 7, "flight", 0)


def test_the_latest_remembers_which_and_of_equals_the_first() -> None:
    moments = Moments()
    early, late = moments.node(1.0, -1, 0, "a"), moments.node(4.0, -1, 1, "b")
    again = moments.node(4.0, -1, 2, "c")
    known = len(moments.nodes)
    assert moments.latest([seen(early), seen(late), seen(again)]) == late
    assert later(early, late) == later(late, early) == late
    assert later(late, again) == late
    assert len(moments.nodes) == known


def test_a_signal_is_remembered_only_where_it_counts() -> None:
    moments = Moments()
    early, late = moments.node(1.0, -1, 0, "a"), moments.node(4.0, -1, 1, "b")
    known = len(moments.nodes)
    assert moments.latest([seen(late), after(early, 2.0, 9, "reacting")]) == late
    assert len(moments.nodes) == known
    reacted = moments.latest([seen(late), after(early, 5.0, 9, "reacting")])
    assert reacted.time_s == 6.0
    node = moments.nodes[reacted.node]
    assert (node.cause, node.act, node.stage) == (early.node, 9, "reacting")


@pytest.mark.parametrize(
    ("gaps", "period", "repeats"),
    [
        ([3.0] * 9, 1, True),
        ([2.0, 4.0] * 6, 2, True),
        ([2.0, 4.0] * 6, 1, True),  # a multiple of the period will do
        ([9.0, 1.0, *[3.0] * 9], 1, True),  # what came first does not count
        ([3.0, 3.1, 3.2, 3.3, 3.4, 3.5, 3.6, 3.7, 3.8], 1, False),
        ([2.0, 4.0, 2.1, 3.9, 2.2, 3.8, 2.3, 3.7, 2.4, 3.6], 2, False),
        ([3.0], 1, False),
        ([], 1, False),
    ],
)
def test_rounds_have_settled_when_they_repeat_themselves(gaps: list[float], period: int, repeats: bool) -> None:
    times = [sum(gaps[:number]) for number in range(len(gaps) + 1)]
    assert settled([Moment(time_s, -1) for time_s in times], period) is repeats


def test_moments_belong_to_the_round_being_played_and_can_be_moved() -> None:
    moments = Moments()
    moments.round = 3
    moment = moments.node(1.0, -1, 0, "")
    assert moments.nodes[moment.node].round == 3
    moments.move_to_round(moment, 4)
    assert moments.nodes[moment.node].round == 4
    assert moment == Moment(1.0, moment.node)
