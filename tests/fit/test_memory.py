"""What is remembered is found again by content, and the oldest goes first."""

from dataclasses import replace

from conewright.fit import memory as remembering
from conewright.fit.memory import Memory, TrialKey
from conewright.fit.options import choice_for
from conewright.model.rehearsed import NotRehearsed
from tests.fit.evenings import FIGURES, USUAL, bench_for, written

TEXT = "exercise: Own ball\nfor 4 to 12 players, under 7 to under 14\n\nOpen play in 12 by 12 m: everyone has a ball.\n"


def key(number: int) -> TrialKey:
    return TrialKey(exercise=str(number), size=1, age=11, surface="hall", scale=1.0, figures="")


def test_the_same_text_read_twice_has_the_same_mark_and_another_text_another() -> None:
    memory = Memory()
    assert memory.mark(written(TEXT)) == memory.mark(written(TEXT))
    assert memory.mark(written(TEXT)) != memory.mark(written(TEXT.replace("12 by 12", "13 by 13")))
    assert memory.mark(FIGURES) != memory.mark(replace(FIGURES, rules=()))


def test_the_oldest_trials_go_when_there_are_too_many() -> None:
    memory = Memory()
    trial = remembering.Trial(rehearsed=NotRehearsed(exercise="", size=1, why=""), findings=())
    for number in range(remembering.MOST_TRIALS + 5):
        memory.keep_trial(key(number), trial)
    assert len(memory.trials) == remembering.MOST_TRIALS
    assert key(4) not in memory.trials
    assert key(5) in memory.trials


def test_a_second_look_rehearses_nothing() -> None:
    bench = bench_for()
    played: list[int] = []

    def counting(*args: object, **named: object) -> object:
        played.append(1)
        return bench.rehearse(*args, **named)  # type: ignore[arg-type]

    watched = replace(bench, rehearse=counting)  # type: ignore[arg-type]
    first = choice_for(written(TEXT), watched)
    assert played
    count = len(played)
    assert choice_for(written(TEXT), watched) == first
    assert len(played) == count
    choice_for(written(TEXT), replace(watched, asked=replace(USUAL, age=9)))
    assert len(played) > count
