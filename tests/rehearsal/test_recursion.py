"""A script played round after round: nobody does two things at once, balls are kept, lines take turns."""

from collections import Counter
from itertools import pairwise
from random import Random

import pytest

from conewright.model.exercise import Verb
from conewright.model.unroll import rounds_of
from conewright.notation.reader import read
from conewright.rehearsal.durations import pupil
from conewright.rehearsal.recursion import LEAST_ROUNDS, MOST_ROUNDS, Done, Play, played_out
from conewright.rehearsal.spells import act_of
from tests.rehearsal.invented import chain
from tests.rehearsal.played import CHILD, FACING, FIGURES, SURFACE, exercise_of, play_of

SEEDS, ALL_SEEDS = 60, 1500
NEARLY_S = 1e-6


def invented(seed: int) -> tuple[str, Play]:
    """A pattern made up from a seed, played with some children of some age; the text for the message of a failure."""
    random = Random(seed)
    text = chain(random)
    exercise, problems = read(text)
    assert exercise is not None
    assert not problems, (text, problems)
    size, age = random.randint(2, 14), random.randint(6, 19)
    child = pupil(FIGURES, age=age, surface=SURFACE)
    play = played_out(exercise, rounds_of(exercise)[0], child, size=size, bout_s=120)
    assert play is not None
    return text, play


@pytest.fixture(scope="module")
def plays(long: bool) -> list[tuple[str, Play]]:
    return [invented(seed) for seed in range(ALL_SEEDS if long else SEEDS)]


@pytest.fixture(scope="session")
def long(request: pytest.FixtureRequest) -> bool:
    return bool(request.config.getoption("--long"))


def busy_until(play: Play, done: Done) -> float:
    act = act_of(play, done)
    return done.start_s + act.still_s if act is not None and act.kick else done.end_s


def test_nobody_does_two_things_at_once(plays: list[tuple[str, Play]]) -> None:
    for text, play in plays:
        for person in range(len(play.homes)):
            own = sorted((done for done in play.done if done.person == person), key=lambda done: done.start_s)
            for before, after in pairwise(own):
                assert after.start_s >= busy_until(play, before) - NEARLY_S, (text, before, after)


def test_a_ball_is_in_one_act_at_a_time(plays: list[tuple[str, Play]]) -> None:
    for text, play in plays:
        for ball in range(len(play.balls)):
            used = [done for done in play.done if done.ball == ball and not fetched(play, done)]
            for before, after in pairwise(sorted(used, key=lambda done: done.start_s)):
                assert after.start_s >= before.end_s - NEARLY_S, (text, before, after)


def fetched(play: Play, done: Done) -> bool:
    """Whoever fetches a ball runs while it still rolls."""
    act = act_of(play, done)
    return act is not None and act.played.verb is Verb.FETCH


def test_acts_of_a_person_begin_in_the_order_of_the_text(plays: list[tuple[str, Play]]) -> None:
    for text, play in plays:
        starts: dict[tuple[int, int], float] = {}
        for done in play.done:
            if done.act < 0:
                continue
            before = starts.get((done.round, done.person), -1000.0)
            assert done.start_s >= before - NEARLY_S, (text, done)
            starts[done.round, done.person] = done.start_s


def test_children_and_balls_are_neither_made_nor_lost(plays: list[tuple[str, Play]]) -> None:
    for text, play in plays:
        if play.problems:
            continue
        waiting = Counter(one.person for line in play.lines.waiting.values() for one in line)
        assert set(waiting) == set(range(len(play.homes))), text
        assert set(waiting.values()) == {1}, text
        lying = [ball for balls in play.supply.lying.values() for _, ball, _ in balls]
        held = list(play.supply.held.values())
        assert sorted([*lying, *held]) == list(range(len(play.balls))), text


def test_rounds_start_in_order_and_end_after_they_start(plays: list[tuple[str, Play]]) -> None:
    for text, play in plays:
        starts = [moment.time_s for moment in play.starts]
        assert starts == sorted(starts), text
        assert all(end.time_s >= start.time_s for start, end in zip(play.starts, play.ends, strict=False)), text


# --- by hand ------------------------------------------------------------------------------------------------------


def test_the_line_goes_round_in_order() -> None:
    play = play_of(FACING, 6)
    at_base = [person for round_, person, place in play.roles if place == "Base" and round_ >= 0]
    passers = [done.person for done in play.done if done.act == 0]
    assert passers[:3] == [0, 1, 2]
    assert passers[3:6] == [3, 4, 5]  # the other line has come across
    assert set(at_base) == set(range(6))


def test_enough_rounds_are_played_to_know_the_long_run() -> None:
    assert len(play_of(FACING, 6, bout_s=0.5).starts) == LEAST_ROUNDS
    assert len(play_of(FACING, 6, bout_s=1e6).starts) == MOST_ROUNDS
    text = """Base at 0, 0 is a line with 6 balls.
Left at -6, 9 and Right at 6, 9 are lines.
Each round, Left and Right in turn (call it Side):
1. Base passes to Side, then runs to Side.
2. Side dribbles to Base.
Every 3 rounds: Left to Right, Right to Left.
"""
    play = play_of(text, 6, bout_s=0.5)
    assert play.period() == 6
    assert len(play.starts) == 6 * LEAST_ROUNDS
    assert play.side_of[:4] == [0, 1, 0, 1]


def test_a_change_every_so_many_rounds_takes_the_heads_across() -> None:
    play = play_of(FACING + "Every 2 rounds: Base to Far, Far to Base.\n", 8)
    changes = [done for done in play.done if done.act < 0]
    assert [done.round for done in changes[:4]] == [1, 1, 3, 3]
    assert changes[0].person != changes[1].person


def test_sides_from_half_time_change_once() -> None:
    text = """Base at 0, 0 is a line with 6 balls.
Left at -6, 9 and Right at 6, 9 are lines.
Start with two at Left, two at Right, the rest at Base.
Each round, Left, then Right from half time (call it Side):
1. Base passes to Side, then runs to Side.
2. Side dribbles to Base.
"""
    play = play_of(text, 8)
    within = [side for side, start in zip(play.side_of, play.starts, strict=True) if start.time_s <= play.bout_s]
    assert within == sorted(within)
    assert set(within) == {0, 1}
    half = next(start.time_s for side, start in zip(play.side_of, play.starts, strict=True) if side == 1)
    assert half >= play.bout_s / 2


def test_two_rounds_at_once_start_sooner_and_no_third() -> None:
    text = """Base at 0, 0 is a line with 6 balls.
Far at 0, 12 holds one.
Start with one at Far, the rest at Base.
Each round:
1. Base passes to Far, then runs to Far.
2. Far dribbles to the end of Base round the outside.
{next}"""
    alone = play_of(text.format(next=""), 6)
    both = play_of(text.format(next="The next round starts when Far has the ball. Two rounds may run at once.\n"), 6)
    assert both.starts[6].time_s < alone.starts[6].time_s
    for number, start in enumerate(both.starts[2:-1], start=2):
        assert start.time_s >= both.ends[number - 2].time_s - NEARLY_S


def test_a_ball_left_at_its_place_is_the_next_ones() -> None:
    text = """Base at 0, 0 is a line with the ball.
Wing at 8, 5 is a line.
Each round:
1. Base passes to Wing, then runs to 0, 9.
2. Wing passes to Base.
3. Base dribbles to Base, then runs to Wing.
Rotation: Base to Wing, Wing to Base.
"""
    play = play_of(text, 6)
    assert not play.problems
    assert len(play.balls) == 1
    assert len(play.starts) > 10
    brought = next(done for done in play.done if done.round == 0 and play.rounds[0].acts[done.act].played.leaves_ball)
    first_pass = next(done for done in play.done if done.round == 1)
    assert first_pass.ready_s >= brought.end_s + play.hand_over_s


@pytest.mark.parametrize("first", ["", '1. Base calls "go".\n'])
def test_a_call_comes_with_the_start_of_its_round(first: str) -> None:
    steps = "{n}. Base passes to Far, then runs to Far.\n{m}. Far dribbles to Base.\n"
    text = "Base at 0, 0 is a line with 6 balls.\nFar at 0, 10 is a line.\nEach round:\n" + first
    play = play_of(text + steps.format(n=2 if first else 1, m=3 if first else 2), 6)
    calls = [done for done in play.done if play.rounds[0].acts[done.act].played.verb is Verb.CALL]
    assert [done.start_s for done in calls] == [start.time_s for start in play.starts[: len(calls)]]
    assert bool(calls) == bool(first)
    kicks = [done for done in play.done if play.rounds[0].acts[done.act].kick]
    assert kicks[0].start_s == pytest.approx(CHILD.reaction_s)


def test_no_script_no_play() -> None:
    exercise = exercise_of("Open play in 12 by 12 m: everyone has a ball.\n")
    assert played_out(exercise, (), CHILD, size=6, bout_s=60) is None
