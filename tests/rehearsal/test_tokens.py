"""Lines and balls: who comes first is first, and a ball is taken in the order in which balls came."""

from hypothesis import given
from hypothesis import strategies as st

from conewright.rehearsal.moments import Moment
from conewright.rehearsal.tokens import Balls, Lines


def test_the_head_is_who_came_first_and_of_equals_who_joined_first() -> None:
    lines = Lines()
    for person, time_s in enumerate((5.0, 2.0, 2.0)):
        lines.join("Base", Moment(time_s, person), person)
    taken = [lines.take_head("Base") for _ in range(3)]
    assert [head.person for head in taken if head] == [1, 2, 0]
    assert lines.take_head("Base") is None


def test_who_never_left_its_place_is_still_the_head() -> None:
    lines = Lines()
    lines.join("Base", Moment(1.0, 0), 0)
    lines.join("Base", Moment(9.0, 1), 1, stands=True)
    head = lines.take_head("Base")
    assert head is not None
    assert head.person == 1


def test_places_do_not_mix() -> None:
    lines = Lines()
    lines.join("Base", Moment(1.0, 0), 0)
    assert lines.anybody_at("Base")
    assert not lines.anybody_at("Far")
    assert lines.take_head("Far") is None


@given(times=st.lists(st.floats(0, 100), min_size=1, max_size=12))
def test_a_line_gives_everybody_once_in_the_order_of_coming(times: list[float]) -> None:
    lines = Lines()
    for person, time_s in enumerate(times):
        lines.join("Base", Moment(time_s, -1), person)
    heads = [head for head in (lines.take_head("Base") for _ in times) if head]
    assert sorted(head.person for head in heads) == list(range(len(times)))
    assert [head.time_s for head in heads] == sorted(times)


def test_the_ball_that_has_lain_longest_goes_first() -> None:
    balls = Balls()
    balls.lay("Base", Moment(4.0, 10), 0)
    balls.lay("Base", Moment(1.0, 11), 1)
    assert balls.take("Base") == (1, Moment(1.0, 11))
    assert balls.take("Base") == (0, Moment(4.0, 10))
    assert balls.take("Base") is None
    assert balls.take("Far") is None
