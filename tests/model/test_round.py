"""Rounds as data: what holds for every round of every exercise on the shelf."""

import pytest

from conewright.model.exercise import Exercise
from conewright.model.layout import one_copy
from conewright.model.round import Round
from conewright.model.unroll import rounds_of
from conewright.store.shelf import load_shelf

SCRIPTED = tuple(exercise for exercise in load_shelf() if exercise.script is not None)


def rounds(exercise: Exercise) -> tuple[Round, ...]:
    found, problems = rounds_of(one_copy(exercise, exercise.numbers.least))
    assert not problems, problems
    return found


@pytest.mark.parametrize("exercise", SCRIPTED, ids=lambda exercise: exercise.name)
def test_acts_and_bearers_are_numbered_from_nought(exercise: Exercise) -> None:
    for round_ in rounds(exercise):
        assert [act.number for act in round_.acts] == list(range(len(round_.acts)))
        assert [bearer.number for bearer in round_.bearers] == list(range(len(round_.bearers)))


@pytest.mark.parametrize("exercise", SCRIPTED, ids=lambda exercise: exercise.name)
def test_every_way_begins_where_the_last_one_ended(exercise: Exercise) -> None:
    for round_ in rounds(exercise):
        for bearer in round_.bearers:
            place = exercise.place(bearer.place)
            assert place is not None
            at = place.at
            for act in (act for act in round_.acts if act.bearer == bearer.number):
                assert act.path[0] == pytest.approx(at)
                at = act.path[-1]


@pytest.mark.parametrize("exercise", SCRIPTED, ids=lambda exercise: exercise.name)
def test_a_ball_is_played_from_where_its_passer_stands_to_its_receiver(exercise: Exercise) -> None:
    for round_ in rounds(exercise):
        for act in round_.acts:
            if act.flight:
                assert act.flight[0] == pytest.approx(act.path[-1])
            if act.receiver is not None:
                assert act.receives_at == pytest.approx(act.flight[-1])


@pytest.mark.parametrize("exercise", SCRIPTED, ids=lambda exercise: exercise.name)
def test_there_is_one_way_home_for_each_bearer_at_most_and_it_is_the_last(exercise: Exercise) -> None:
    for round_ in rounds(exercise):
        for bearer in round_.bearers:
            own = [act for act in round_.acts if act.bearer == bearer.number]
            assert [act.homeward for act in own[:-1]] == [False] * (len(own) - 1 if own else 0)
            if own and own[-1].homeward:
                assert own[-1].to_place == bearer.ends_at
