"""A block says who is where, why it is there and what fitting changed."""

from dataclasses import replace

import pytest

from conewright.fit.blocks import block_of
from conewright.fit.clock import Slot
from conewright.fit.options import choice_for
from conewright.fit.parts import Chosen, cones_of
from conewright.model.exercise import Bib
from conewright.model.session import Block, Job, Tonight
from tests.fit.evenings import USUAL, bench_for, written

GAME = """exercise: Game
kind: small-sided game
for 4 to 8 players, under 7 to under 14
aim: scoring goals

North at 0, 9 is a mini goal.
South at 0, -9 is a mini goal.
Open play in 16 by 20 m: Yellow against Blue on North and South. One over is neutral.
"""
LANE = """exercise: Lane
good for: main
for 5 to 8 players, under 9 to under 14
aim: passing, moving
Near at 0, 0 is a line with the ball.
Far at 0, 8 is a line.

Each round:
1. Near passes to Far, then jogs to the end of Far round the outside.
2. Far passes to Near, then jogs to the end of Near round the outside.
"""


def block(text: str, asked: Tonight, job: Job = Job.GAME) -> Block:
    bench = bench_for(asked)
    option = choice_for(written(text), bench).option
    assert option is not None
    slot = Slot(job=job, start_min=10, minutes=12)
    return block_of(Chosen(slot=slot, option=option, cones=cones_of(option)), bench)


def codes(one: Block) -> list[str]:
    return [finding.code for finding in one.findings]


@pytest.mark.parametrize(
    ("text", "said", "groups"),
    [
        (GAME, {"here": 7}, "Yellow three, Blue three, one neutral"),
        (GAME, {"here": 13}, "One copy of Yellow three, Blue three, one neutral; one copy of Yellow three, Blue three"),
        (GAME, {"here": 14}, "Two copies of Yellow three, Blue three, one neutral"),
        (LANE, {"here": 7}, "All seven together"),
        (LANE, {"here": 13}, "Yellow seven, Blue six"),
        (LANE.replace("5 to 8", "8 to 8"), {"here": 16}, "Two copies of eight"),
        (LANE.replace("5 to 8", "6 to 6"), {"here": 13}, "Yellow six, Blue six, one rests in turn"),
    ],
)
def test_groups_are_told_in_words(text: str, said: dict[str, int], groups: str) -> None:
    asked = replace(USUAL, width_m=60.0, depth_m=40.0, **said)  # type: ignore[arg-type]
    assert block(text, asked).groups == groups


def test_a_block_holds_everybody_and_its_copies_are_rehearsed() -> None:
    one = block(LANE, replace(USUAL, here=13))
    assert one.players == 13
    assert [copy.size for copy in one.copies] == [7, 6]
    assert [copy.rehearsed.size for copy in one.copies if copy.rehearsed] == [7, 6]
    assert one.kit.bibs == ((Bib.YELLOW, 7), (Bib.BLUE, 6))
    assert (one.start_min, one.minutes) == (10.0, 12.0)


def test_the_reason_names_the_part_the_aim_and_a_figure() -> None:
    why = block(LANE, replace(USUAL, here=6, aim="passing on the move"), Job.MAIN).why
    assert why.startswith("It is made for main work and speaks of passing and move; a child waits ")
    assert why.endswith("the mark of 60 %.")
    assert "the game" in block(GAME, replace(USUAL, here=8)).why


@pytest.mark.parametrize(
    ("text", "asked", "job", "code"),
    [
        (GAME, replace(USUAL, here=8, mini_goals=0), Job.GAME, "stand-in-kit"),
        (GAME, replace(USUAL, here=8, bibs=()), Job.GAME, "bibs-short"),
        (GAME, replace(USUAL, here=8, depth_m=18.0, width_m=20.0), Job.GAME, "scaled"),
        (GAME, replace(USUAL, here=8, bibs=((Bib.RED, 6), (Bib.YELLOW, 4))), Job.GAME, "recoloured"),
        (LANE.replace("5 to 8", "6 to 6"), replace(USUAL, here=7), Job.MAIN, "rests"),
        (LANE, replace(USUAL, here=6), Job.GAME, "stands-in"),
    ],
)
def test_what_fitting_changed_is_found_in_the_findings(text: str, asked: Tonight, job: Job, code: str) -> None:
    assert code in codes(block(text, asked, job))


def test_nothing_is_said_where_nothing_was_changed() -> None:
    asked = replace(USUAL, here=6)
    assert not {"stand-in-kit", "bibs-short", "scaled", "recoloured", "rests", "stands-in", "no-keeper"} & set(
        codes(block(LANE, asked, Job.MAIN))
    )


def test_what_is_not_said_alike_of_all_copies_names_the_copy() -> None:
    messages = [finding.message for finding in block(LANE, replace(USUAL, here=13), Job.MAIN).findings]
    waits = [message for message in messages if "wait" in message]
    assert len(waits) == 2
    assert [message.split(":")[0] for message in waits] == ["Copy of 7", "Copy of 6"]
    alike = [finding.message for finding in block(LANE, replace(USUAL, here=14), Job.MAIN).findings]
    assert not any(message.startswith("Copy of") for message in alike)


def test_a_goal_without_a_keeper_says_where_to_aim() -> None:
    text = """exercise: Kept
kind: finishing
for 4 to 6 players, under 9 to under 16
Line at 0, 0 is a line with 3 balls.
Goal at 0, 16 is a goal.
Keeper at 0, 15 is the keeper.

Each round:
1. Line dribbles to 0, 6, then shoots at Goal.
2. Line fetches the ball, then dribbles to the end of Line round the outside.
"""
    without = block(text, replace(USUAL, here=6, goals=1), Job.MAIN)
    assert "no-keeper" in codes(without)
    kept = block(text, replace(USUAL, here=6, goals=1, keepers=1), Job.MAIN)
    assert "no-keeper" not in codes(kept)
    assert (kept.keepers, kept.players, kept.groups) == (1, 6, "All five together, one in goal")
