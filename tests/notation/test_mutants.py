"""Damaged texts: whatever one slip of the hand does to an exercise of the shelf, it is told where it happened."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from pathlib import Path
from random import Random
from re import finditer

import pytest

from conewright.model.problem import Problem
from conewright.notation.reader import read

SHELF = sorted((Path(__file__).parents[2] / "src" / "conewright" / "data" / "shelf").glob("*.exercise"))
SEED = 20261
SAMPLE = 10  # without --long one of so many is tried
LEAST = 5000
SHARE = 0.95
NEAR = 1  # lines


@dataclass(frozen=True, slots=True, kw_only=True)
class Mutant:
    """A text with one damage, and the lines of it that are damaged."""

    file: str
    sort: str
    text: str
    lines: tuple[int, ...]


def line_of(text: str, at: int) -> int:
    return text.count("\n", 0, at) + 1


def dropped(text: str) -> Iterator[tuple[str, tuple[int, ...]]]:
    for word in finditer(r"\S+", text):
        yield text[: word.start()] + text[word.end() :], (line_of(text, word.start()),)


def swapped(text: str) -> Iterator[tuple[str, tuple[int, ...]]]:
    for one, two in pairwise(finditer(r"\S+", text)):
        mixed = text[: one.start()] + two[0] + text[one.end() : two.start()] + one[0] + text[two.end() :]
        yield mixed, (line_of(text, one.start()), line_of(text, two.start()))


def misspelled(text: str) -> Iterator[tuple[str, tuple[int, ...]]]:
    """Two letters swapped, one left out, or one doubled, in turn."""
    for number, word in enumerate(finditer(r"[A-Za-z]{3,}", text)):
        at = word.start() + len(word[0]) // 2
        slips = (text[at] + text[at - 1], text[at], text[at - 1 : at + 1] + text[at])
        yield text[: at - 1] + slips[number % 3] + text[at + 1 :], (line_of(text, at),)


def cut(text: str) -> Iterator[tuple[str, tuple[int, ...]]]:
    rows = text.split("\n")
    for at in range(len(rows) - 1):
        yield "\n".join(rows[:at] + rows[at + 1 :]), (at + 1,)


DAMAGES = {"drop": dropped, "swap": swapped, "misspell": misspelled, "cut": cut}


def mutants() -> Iterator[Mutant]:
    for path in SHELF:
        text = path.read_text(encoding="utf-8")
        for sort, damage in DAMAGES.items():
            for spoilt, lines in damage(text):
                yield Mutant(file=path.stem, sort=sort, text=spoilt, lines=lines)


def is_near(problem: Problem, lines: tuple[int, ...]) -> bool:
    where = problem.where
    return where is not None and any(where.line - NEAR <= line <= where.end_line + NEAR for line in lines)


def is_told_near(mutant: Mutant) -> bool:
    """True where the mutant still reads without a problem, or one is told at the damage."""
    problems = read(mutant.text)[1]
    return not problems or any(is_near(problem, mutant.lines) for problem in problems)


@pytest.fixture(scope="module")
def tried(long: bool) -> tuple[Mutant, ...]:
    every = tuple(mutants())
    assert len(every) >= LEAST
    return every if long else tuple(Random(SEED).sample(every, len(every) // SAMPLE))


@pytest.fixture(scope="module")
def told_near(tried: tuple[Mutant, ...]) -> tuple[bool, ...]:
    return tuple(is_told_near(mutant) for mutant in tried)


@pytest.mark.parametrize("sort", DAMAGES)
def test_damage_is_told_where_it_is(sort: str, tried: tuple[Mutant, ...], told_near: tuple[bool, ...]) -> None:
    """Over each sort of damage; the figures of all of them together are in the test below."""
    of_sort = [near for mutant, near in zip(tried, told_near, strict=True) if mutant.sort == sort]
    assert len(of_sort) >= LEAST // SAMPLE // SAMPLE
    least = 0.80 if sort == "cut" else SHARE  # a line that is gone shows first where its names are used
    assert sum(of_sort) >= least * len(of_sort)


def test_nearly_all_damage_is_told_where_it_is(tried: tuple[Mutant, ...], told_near: tuple[bool, ...]) -> None:
    far = [f"{m.file}, line {m.lines[0]}, {m.sort}" for m, near in zip(tried, told_near, strict=True) if not near]
    assert len(far) <= (1 - SHARE) * len(tried), far
    assert len(tried) >= LEAST // SAMPLE
