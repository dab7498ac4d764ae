"""What a page plays: everybody is where the rehearsal had them, on the coach's ground, in short lists."""

from dataclasses import replace
from itertools import pairwise

import msgspec
import pytest

from conewright.drawing.playback import at_time, duration, playback, playback_of
from conewright.model.geometry import Point, distance_m
from conewright.model.rehearsed import Knot
from tests.drawing.evening import gate_block, rehearsed
from tests.drawing.looking import GATE, exercise_of


def knots(flat: tuple[float, ...]) -> list[Knot]:
    assert len(flat) % 3 == 0
    return [Knot(*flat[index : index + 3]) for index in range(0, len(flat), 3)]


def test_everybody_is_where_the_rehearsal_had_them() -> None:
    block = gate_block()
    film = playback(block)
    for copy, played in zip(block.copies, film.copies, strict=True):
        rehearsal = rehearsed(copy.size)
        for track, person in zip(rehearsal.people, played.people, strict=True):
            for tenth in range(int(played.seconds * 10)):
                true = copy.on_ground(at_time(track.knots, tenth / 10))
                shown = at_time(tuple(knots(person.knots)), tenth / 10)
                assert distance_m(true, shown) < 0.12


def test_numbers_are_short() -> None:
    film = playback(gate_block())
    every = [number for copy in film.copies for person in copy.people for number in person.knots]
    assert all(number == round(number, 2) for number in every)
    assert len(msgspec.json.encode(film)) < 60_000


def test_it_plays_until_it_repeats_or_a_minute() -> None:
    rehearsal = rehearsed(6)
    seconds, repeats = duration(rehearsal)
    assert 0 < seconds <= 60
    first = [at_time(track.knots, rehearsal.round_starts_s[0]) for track in rehearsal.people]
    now = [at_time(track.knots, seconds) for track in rehearsal.people]
    back = all(distance_m(one, other) < 0.35 for one, other in zip(first, now, strict=True))
    assert back is repeats


def test_sentences_under_way_are_known_at_every_moment() -> None:
    film = playback_of(exercise_of(GATE), rehearsed(5))
    steps = film.copies[0].steps
    stretches = [steps[index : index + 4] for index in range(0, len(steps), 4)]
    assert {int(step) for _, _, step, _ in stretches} == {1, 2, 3}
    assert all(start <= end <= film.seconds for start, end, _, _ in stretches)


def test_spells_cover_the_whole_film() -> None:
    film = playback_of(exercise_of(GATE), rehearsed(5))
    for person in film.copies[0].people:
        spells = [person.spells[index : index + 4] for index in range(0, len(person.spells), 4)]
        assert spells[0][0] == 0
        assert spells[-1][1] == pytest.approx(film.seconds, abs=0.02)
        assert all(one[1] == pytest.approx(other[0], abs=0.011) for one, other in pairwise(spells))
        assert {what for _, _, what, _ in spells} <= {0, 1, 2}


def test_a_copy_that_was_not_rehearsed_holds_nobody() -> None:
    block = gate_block()
    film = playback(replace(block, copies=tuple(replace(copy, rehearsed=None) for copy in block.copies)))
    assert film.seconds == 0
    assert [copy.people for copy in film.copies] == [(), ()]


def test_where_something_is_between_its_knots() -> None:
    track = (Knot(1, 0, 0), Knot(3, 4, 2))
    assert at_time(track, 0) == Point(0, 0)
    assert at_time(track, 2) == Point(2, 1)
    assert at_time(track, 9) == Point(4, 2)
    assert at_time((), 1) == Point(0, 0)
