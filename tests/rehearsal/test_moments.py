"""Moments remember what decided them."""

from conewright.rehearsal.moments import Moment, Moments


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
    last = moments.latest([early, late, again], 9, "go")
    assert last.time_s == 4.0
    assert moments.nodes[last.node].cause == late.node
    assert moments.latest([early], 9, "go").time_s == 1.0


def test_moments_belong_to_the_round_being_played_and_can_be_moved() -> None:
    moments = Moments()
    moments.round = 3
    moment = moments.node(1.0, -1, 0, "")
    assert moments.nodes[moment.node].round == 3
    moments.move_to_round(moment, 4)
    assert moments.nodes[moment.node].round == 4
    assert moment == Moment(1.0, moment.node)
