"""Remarks on the whole evening."""

from dataclasses import replace

from conewright.fit.fit import fit
from conewright.fit.memory import Memory
from conewright.fit.remarks import remarks
from conewright.model.exercise import Exercise
from conewright.model.problem import Problem
from conewright.model.session import Block
from tests.fit.evenings import FIGURES, USUAL, bench_for

MEMORY = Memory()


def blocks(shelf: tuple[Exercise, ...]) -> tuple[Block, ...]:
    return fit(USUAL, shelf, figures=FIGURES, memory=MEMORY).blocks


def said(of: tuple[Block, ...], *, aim: str = "", rolling: float = 1.0, left_out: bool = False) -> list[Problem]:
    bench = bench_for(replace(USUAL, aim=aim))
    return list(remarks(of, bench, rolling_share=rolling, close_left_out=left_out))


def test_a_good_evening_has_only_its_kit_told(shelf: tuple[Exercise, ...]) -> None:
    (kit,) = said(blocks(shelf))
    assert kit.code == "kit-at-once"
    most = max(block.kit.balls for block in blocks(shelf))
    assert f"{most} balls" in kit.message
    assert " 0 " not in kit.message


def test_each_remark_has_its_occasion(shelf: tuple[Exercise, ...]) -> None:
    good = blocks(shelf)
    twice = (*good[:2], replace(good[2], exercise=good[1].exercise))
    assert [problem.code for problem in said(good, rolling=0.69)] == ["rolling-low", "kit-at-once"]
    assert "69 %" in said(good, rolling=0.69)[0].message
    assert [problem.code for problem in said(good, left_out=True)] == ["close-left-out", "kit-at-once"]
    assert [problem.code for problem in said(twice)] == ["comes-again", "kit-at-once"]
    assert [problem.code for problem in said(good, aim="quidditch")] == ["aim-unmet", "kit-at-once"]
    assert [problem.code for problem in said(good, aim="scoring")] == ["kit-at-once"]
