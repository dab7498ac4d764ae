"""The table from two fewer to two more: honest about what was rehearsed, what is an estimate and what is neither."""

from dataclasses import replace

import pytest

from conewright.model.session import Block, HeadAnswer, Job, Kit
from conewright.store.figures import load_figures
from conewright.store.shelf import load_shelf
from conewright.web.pages.tonight.numbers import UNKNOWN, Numbers, numbers_of

FIGURES = load_figures()
EXERCISE = load_shelf()[0]
PLAYED = HeadAnswer(
    here=12,
    exercise=EXERCISE.name,
    words="two copies of 6",
    sizes=(6, 6),
    waiting_share=0.5,
    contacts_a_minute=16.0,
    longest_wait_s=12.0,
    rounds_a_minute=15.5,
)
PUBLISHED = replace(
    PLAYED,
    waiting_share=None,
    longest_wait_s=None,
    rounds_a_minute=None,
    contacts_a_minute=5.4,
    contacts_high=8.6,
    estimated=True,
)
NOTHING = replace(PLAYED, waiting_share=None, longest_wait_s=None, rounds_a_minute=None, contacts_a_minute=None)


def table(*answers: HeadAnswer, here: int = 12) -> Numbers:
    block = Block(
        job=Job.MAIN,
        exercise=EXERCISE,
        start_min=0,
        minutes=10,
        copies=(),
        kit=Kit(),
        groups="",
        why="",
        findings=(),
        answers=answers,
    )
    numbers = numbers_of(block, here, FIGURES, 11)
    assert numbers is not None
    return numbers


def test_what_was_rehearsed_has_no_band() -> None:
    numbers = table(PLAYED, replace(PLAYED, here=13, waiting_share=0.7))
    assert [row.cells[0].words for row in numbers.rows] == ["50 %", "16", "12", "15.5"]
    for row in numbers.rows:
        for cell in row.cells:
            assert cell.scale is not None
            assert cell.scale.at
            assert not cell.scale.wide
    assert "Rehearsed, if all goes cleanly." in numbers.notes
    assert not any("estimate" in note for note in numbers.notes)


def test_an_estimate_is_a_range_and_called_one() -> None:
    numbers = table(PUBLISHED)
    (row,) = numbers.rows
    scale = row.cells[0].scale
    assert row.cells[0].words == "5 to 9"
    assert scale is not None
    assert float(scale.wide) > 0
    assert not scale.at
    assert any("estimate" in note for note in numbers.notes)
    assert not any("Rehearsed" in note for note in numbers.notes)


def test_what_is_not_known_keeps_its_row_and_says_so() -> None:
    numbers = table(NOTHING)
    assert [cell.words for row in numbers.rows for cell in row.cells] == [UNKNOWN] * 2


def test_one_scale_a_row_with_the_mark_on_it_and_a_miss_in_bold() -> None:
    mark = FIGURES.at("waiting_mark_share", age=11)
    under, over = replace(PLAYED, waiting_share=mark - 0.1), replace(PLAYED, here=13, waiting_share=mark + 0.1)
    waiting = table(under, over).rows[0]
    first, second = (cell.scale for cell in waiting.cells)
    assert first is not None
    assert second is not None
    assert first.mark == second.mark
    assert float(first.at) < float(first.mark) < float(second.at) <= 61
    assert [cell.over for cell in waiting.cells] == [False, True]


def test_tonights_column_stands_out_and_far_ones_give_way_on_a_phone() -> None:
    numbers = table(*(replace(PLAYED, here=here) for here in range(10, 15)))
    assert [cell.here for cell in numbers.heads] == [False, False, True, False, False]
    assert [cell.far for cell in numbers.heads] == [True, False, False, False, True]


def test_a_count_for_which_another_comes_instead_is_told() -> None:
    other = replace(PLAYED, here=13, exercise="Ferry", words="Ferry instead, one group of 13")
    none = replace(NOTHING, here=14, sizes=(), words="does not run: its numbers do not hold them")
    numbers = table(PLAYED, other, none)
    assert numbers.others == (
        "With 13: Ferry instead, one group of 13.",
        "With 14: does not run: its numbers do not hold them.",
    )
    assert numbers.groups.cells[2].words == "does not run"


@pytest.mark.parametrize("answers", [()])
def test_without_answers_there_is_no_table(answers: tuple[HeadAnswer, ...]) -> None:
    block = Block(
        job=Job.MAIN, exercise=EXERCISE, start_min=0, minutes=10, copies=(), kit=Kit(), groups="", why="", findings=()
    )
    assert numbers_of(replace(block, answers=answers), 12, FIGURES, 11) is None
