"""What starts an act: every event, seen when it happens in the round."""

import pytest

from conewright.model.exercise import Event, Trigger
from conewright.rehearsal.recursion import Done, Play
from conewright.rehearsal.triggers import said
from tests.rehearsal.played import CHILD, play_of

TEXT = """Base at 0, 0 is a line with 6 balls.
Far at 0, 10 is a line.
Watch at 8, 5 is a line.
Mast at 0, 5 is a cone.
Goal at 6, 20 is a mini goal.
Start with the same number in each line.
Each round:
1. Base passes to Far, then jogs to Far.
2. Far shoots at Goal.
3. Far dribbles to the end of Base.
4. Watch walks to 8, 9 {when}.
Rotation: Watch to Watch.
"""


def played(when: str) -> Play:
    play = play_of(TEXT.format(when=when), 6)
    assert not play.problems, play.problems
    return play


def done_by(play: Play, words: str) -> Done:
    """The act of those words in the first round."""
    acts = play.rounds[0].acts
    return next(done for done in play.done if done.round == 0 and acts[done.act].played.words == words)


PASS, SHOT, HOME, AWAY = "Base's pass", "Far's shot", "Far's dribble to Base", "Base's run to Far"


@pytest.mark.parametrize(
    ("when", "words", "moment"),
    [
        ("when Base passes", PASS, "start_s"),
        ("when Far has the ball", PASS, "end_s"),
        ("on Far's first touch", PASS, "end_s"),
        ("when Far shoots", SHOT, "start_s"),
        ("when Far's shot is over", SHOT, "end_s"),
        ("when Far is home", HOME, "end_s"),
        ("when Base starts", AWAY, "start_s"),
    ],
)
def test_an_event_is_reacted_to_when_it_is_seen(when: str, words: str, moment: str) -> None:
    play = played(when)
    seen = getattr(done_by(play, words), moment)
    assert done_by(play, "Watch's run").start_s == pytest.approx(seen + CHILD.reaction_s)


def test_a_pause_after_an_event_comes_before_the_reaction() -> None:
    play = played("2 s after Base passes")
    assert done_by(play, "Watch's run").start_s == pytest.approx(done_by(play, PASS).start_s + 2 + CHILD.reaction_s)


def test_after_a_step_nobody_has_to_react() -> None:
    play = played("after 2")
    assert done_by(play, "Watch's run").start_s == pytest.approx(done_by(play, SHOT).end_s)


def test_halfway_and_past_something_are_seen_on_the_way() -> None:
    run = done_by(played("when Base starts"), AWAY)
    past = done_by(played("when Base is past Mast"), "Watch's run").start_s - CHILD.reaction_s
    reaches = done_by(played("when Base reaches Mast"), "Watch's run").start_s - CHILD.reaction_s
    assert run.start_s < past < run.end_s
    assert reaches == pytest.approx(past)
    first_half, second_half = past - run.start_s, run.end_s - past
    assert first_half > second_half  # the same five metres, from standing and on the move
    halfway = done_by(played("when Base is halfway home"), "Watch's run").start_s - CHILD.reaction_s
    assert halfway == pytest.approx(past)


def test_what_does_not_happen_in_the_round_is_told_once() -> None:
    play = play_of(TEXT.format(when="when Watch shoots"), 6)
    assert [problem.code for problem in play.problems] == ["never-happens"]
    assert "when Watch shoots" in play.problems[0].message


def test_sides_are_meant_by_their_word() -> None:
    text = """Base at 0, 0 is a line with 6 balls.
Left at -6, 10 and Right at 6, 10 are lines.
Each round, Left and Right in turn (call it Side):
1. Base passes to Side, then runs to Side.
2. Side dribbles to Base.
The next round starts when Side is halfway home. Two rounds may run at once.
"""
    play = play_of(text, 6)
    assert not play.problems
    first = next(done for done in play.done if done.round == 0 and done.act == 2)
    assert first.start_s < play.starts[1].time_s < first.end_s


@pytest.mark.parametrize("event", list(Event))
def test_every_event_can_be_said(event: Event) -> None:
    words = said(Trigger(event=event, who="Base", name="Mast", step=2))
    assert words
    assert "{" not in words
    assert "None" not in words
