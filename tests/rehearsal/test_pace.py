"""What decides the pace: the circuit is that of the long run, and what it promises comes when a stage is cut."""

from dataclasses import replace
from itertools import pairwise
from random import Random

import pytest

from conewright.model.exercise import Exercise
from conewright.model.layout import one_copy
from conewright.model.rehearsed import PaceReport
from conewright.model.unroll import rounds_of
from conewright.notation.reader import read
from conewright.rehearsal.durations import TimedRound, pupil
from conewright.rehearsal.pace import GAIN_STEP_S, cycle_of, deciding_circuit, pace_of_play
from conewright.rehearsal.recursion import Play, played_out
from conewright.store.shelf import load_shelf
from tests.rehearsal.invented import chain
from tests.rehearsal.played import CHILD, FACING, FIGURES, SURFACE, play_of

SEEDS, ALL_SEEDS = 40, 1500
LONGEST_PERIOD = 120
SHELF = tuple(
    exercise
    for exercise in load_shelf()
    if exercise.script is not None and not any(step.contest for step in exercise.script.steps)
)
FIELD_OF = {"flight": "flight_s", "preparing": "prepare_s", "moving": "move_s", "turning": "still_s"}
FIELD_OF |= {"follow-through": "still_s", "doing": "still_s"}


def long_run_s(play: Play) -> float | None:
    """The mean time between starts once they repeat: the least p after which every later start comes as much later."""
    starts = [moment.time_s for moment in play.starts]
    for period in range(1, LONGEST_PERIOD):
        later = [starts[at + period] - starts[at] for at in range(len(starts) - 3 * period - 5, len(starts) - period)]
        if len(starts) > 4 * period + 10 and max(later) - min(later) < 1e-9:
            return later[0] / period
    return None


def cycle(play: Play) -> float:
    return cycle_of(play, deciding_circuit(play))


def report(play: Play) -> PaceReport:
    return pace_of_play(play, deciding_circuit(play))


def played(exercise: Exercise, size: int, age: int, bout_s: float) -> Play:
    own = one_copy(exercise, size)
    child = pupil(FIGURES, age=age, surface=SURFACE)
    play = played_out(own, rounds_of(own)[0], child, size=size, bout_s=bout_s)
    assert play is not None
    return play


def assert_cycle_is_the_long_run(exercise: Exercise, size: int, age: int, text: str = "") -> bool:
    """Compare what a bout of four minutes says with six hundred rounds played; False where a round stalls."""
    if (play := played(exercise, size, age, 240)).problems:
        return False
    expected = long_run_s(played(exercise, size, age, 1e9))
    assert expected is not None, text
    assert cycle(play) == pytest.approx(expected, abs=1e-6), (exercise.name, size, age, text)
    return True


@pytest.mark.parametrize("exercise", SHELF, ids=lambda exercise: exercise.name)
def test_the_cycle_is_the_long_run_for_every_size_on_the_shelf(exercise: Exercise, long: bool) -> None:
    for size in range(exercise.numbers.least, exercise.numbers.most + 1):
        for age in (8, 11, 14) if long else (11,):
            assert assert_cycle_is_the_long_run(exercise, size, age)


def test_the_cycle_is_the_long_run_for_invented_patterns(long: bool) -> None:
    compared = 0
    for seed in range(ALL_SEEDS if long else SEEDS):
        random = Random(seed)
        text = chain(random)
        exercise, _ = read(text)
        assert exercise is not None
        compared += assert_cycle_is_the_long_run(exercise, random.randint(2, 14), random.randint(6, 19), text)
    assert compared > (ALL_SEEDS if long else SEEDS) / 2


# --- gains --------------------------------------------------------------------------------------------------------


def cut(play: Play, act: int, stage: str) -> Play | None:
    """The same play with one stage of one act a tenth of a second shorter; None where it has no such stage."""
    field = FIELD_OF.get(stage)
    if field is None:
        return None
    rounds = tuple(_cut(round_, act, field) for round_ in play.rounds)
    if rounds == play.rounds:
        return None
    again = Play(
        exercise=play.exercise,
        script=play.script,
        rounds=rounds,
        child=play.child,
        size=play.size,
        bout_s=play.bout_s,
    )
    again.run()
    return again


def _cut(round_: TimedRound, act: int, field: str) -> TimedRound:
    acts = tuple(
        replace(one, **{field: getattr(one, field) - GAIN_STEP_S})
        if number == act and getattr(one, field) > GAIN_STEP_S
        else one
        for number, one in enumerate(round_.acts)
    )
    return replace(round_, acts=acts)


def gains_measured(play: Play) -> int:
    """Compare every gain of a play with the play cut short; how many were the same circuit before and after."""
    circuit = deciding_circuit(play)
    if circuit is None:
        return 0
    gains = {gain.act: gain for gain in report(play).gains}
    same = 0
    for act, stage in {(act, stage) for act, stage, _ in circuit.stages}:
        shorter = cut(play, act, stage)
        if shorter is None or act not in gains:
            continue
        times = sum(1 for one in circuit.stages if one[:2] == (act, stage))
        promised = circuit.cycle_s - GAIN_STEP_S * times / circuit.rounds
        found = cycle(shorter)
        assert found >= promised - 1e-9  # another circuit may take over, none is faster than promised
        after = deciding_circuit(shorter)
        names = [one[:2] for one in circuit.stages]
        if after is not None and sorted(one[:2] for one in after.stages) == sorted(names):
            assert found == pytest.approx(promised, abs=1e-9)
            same += 1
    return same


def test_gains_are_what_comes_when_a_stage_is_cut_on_the_shelf() -> None:
    assert sum(gains_measured(played(exercise, exercise.numbers.least, 11, 240)) for exercise in SHELF) > len(SHELF)


def test_gains_are_what_comes_when_a_stage_is_cut_in_invented_patterns(long: bool) -> None:
    same = 0
    for seed in range(ALL_SEEDS if long else SEEDS):
        random = Random(seed)
        exercise, _ = read(chain(random))
        assert exercise is not None
        play = played(exercise, random.randint(2, 14), random.randint(6, 19), 240)
        if not play.problems:
            same += gains_measured(play)
    assert same > SEEDS


# --- in words -----------------------------------------------------------------------------------------------------


def test_facing_lines_hang_on_the_ball_and_say_so() -> None:
    play = play_of(FACING, 6)
    found = report(play)
    flight = next(act.flight_s for act in play.rounds[0].acts if act.kick)
    assert found.cycle_s == pytest.approx(2 * (CHILD.control_s + flight))
    assert found.rounds_in_circuit == 1
    assert len(found.circuit) == 4
    assert all(label.endswith(" s") for label in found.circuit)
    assert "decides the pace" in found.sentence
    shorter = found.cycle_s - 0.3
    assert f"{60 / shorter - 60 / found.cycle_s:.1f} more rounds a minute" in found.sentence


def test_a_ball_from_a_stock_is_set_and_one_that_comes_is_controlled() -> None:
    coming = report(play_of(FACING, 6)).circuit
    assert sum("control before it" in label for label in coming) == 2
    assert not any("setting it" in label for label in coming)
    lying = """Base at 0, 0 is a line with 2 balls.
Far at 0, 6 holds one.
Each round:
1. Base passes to Far, then runs to Far.
2. Far dribbles to Base.
The next round starts when Base passes. Nine rounds may run at once.
"""
    assert any("setting it" in label for label in report(play_of(lying, 9)).circuit)


def test_gains_come_with_the_best_first_and_are_never_losses() -> None:
    gains = report(play_of(FACING, 6)).gains
    assert gains
    assert all(gain.rounds_a_minute > 0 for gain in gains)
    assert all(before.rounds_a_minute >= after.rounds_a_minute for before, after in pairwise(gains))


def test_every_pass_of_a_circuit_is_an_act_of_its_own() -> None:
    text = """Base at 0, 0 is a line with the ball.
Post at 0, 8 is a line.
Each round:
1. Base passes to Post.
2. Post passes to Base.
3. Base passes to Post.
4. Post dribbles to Base.
Rotation: Base to Post, Post to Base.
"""
    play = play_of(text, 5)
    circuit = deciding_circuit(play)
    assert circuit is not None
    passes = [one for one in circuit.stages if one[1] == "flight"]
    assert len({act for act, _, _ in passes}) == 3


def test_a_play_that_stops_has_no_circuit_and_no_sentence() -> None:
    text = """Base at 0, 0 is a line with the ball.
Away at 0, 8 is a line.
Start with four at Base.
Each round:
1. Base passes to Away, then runs to Away.
2. Away dribbles to Base.
"""
    play = play_of(text, 4)
    assert play.problems
    found = report(play)
    assert (found.circuit, found.gains, found.sentence) == ((), (), "")
    assert cycle(play) == 0


def test_a_change_by_the_clock_counts_in_the_mean() -> None:
    still = cycle(play_of(FACING, 6))
    text = FACING + "Every 1 minutes: Base to Far, Far to Base.\n"
    play = play_of(text, 6)
    starts = [moment.time_s for moment in play.starts]
    assert cycle(play) >= still
    half = len(starts) // 2
    assert cycle(play) == pytest.approx((starts[-1] - starts[half]) / (len(starts) - 1 - half))
