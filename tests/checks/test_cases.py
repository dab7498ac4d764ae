"""Every code has a case: a text that gives it where it says, and the same text mended as the hint says."""

import re

import pytest

from conewright.checks.check import MET_ON_THE_WAY, REHEARSED_CHECKS, TEXT_CHECKS, whys
from conewright.model.problem import Severity
from conewright.notation.reader import read
from scripts.checks_page import CASES, PAGE, Example, checks_page, examples, finding, found_in

EXAMPLES = examples()
QUOTED = re.compile(r'"([^"]+)"')
WORDS = re.compile(r"[\w,-]+")


def each(example: Example) -> str:
    return example.name


@pytest.mark.parametrize("example", EXAMPLES, ids=each)
def test_the_bad_text_gives_its_code_where_it_says(example: Example) -> None:
    assert finding(example).code == example.code


@pytest.mark.parametrize("example", EXAMPLES, ids=each)
def test_the_mended_text_gives_it_no_more(example: Example) -> None:
    assert example.code not in {problem.code for problem in found_in(example.good, example)}


@pytest.mark.parametrize("example", EXAMPLES, ids=each)
def test_both_texts_read_without_a_slip(example: Example) -> None:
    for text in (example.bad, example.good):
        exercise, slips = read(text)
        assert exercise is not None
        assert slips == ()


@pytest.mark.parametrize("example", EXAMPLES, ids=each)
def test_mending_one_thing_does_not_break_another(example: Example) -> None:
    weights = {problem.code: problem.severity for problem in found_in(example.good, example)}
    assert Severity.MEND not in weights.values(), weights


@pytest.mark.parametrize("example", EXAMPLES, ids=each)
def test_one_mistake_is_one_thing_to_mend(example: Example) -> None:
    mends = {problem.code for problem in found_in(example.bad, example) if problem.severity is Severity.MEND}
    assert mends <= {example.code}


@pytest.mark.parametrize("example", EXAMPLES, ids=each)
def test_what_the_hint_says_to_write_stands_in_the_mended_text(example: Example) -> None:
    """Each hint that quotes a sentence: one of them is in the mended text, word for word but for what is left open."""
    proposals = QUOTED.findall(finding(example).hint)
    if not proposals:
        return
    wanted = [[part for part in re.split(r"\s*\.\.\.\s*", proposal) if WORDS.search(part)] for proposal in proposals]
    assert any(all(part.rstrip(".") in example.good for part in parts) for parts in wanted), proposals


@pytest.mark.parametrize("example", EXAMPLES, ids=each)
def test_a_finding_says_what_and_where_and_a_thing_to_mend_says_how(example: Example) -> None:
    problem = finding(example)
    assert problem.message[0].isupper() or not problem.message[0].isalpha()
    assert problem.message.endswith(".")
    assert problem.where is not None
    assert problem.hint or problem.severity is Severity.KNOW


def test_every_code_has_a_case_and_every_case_a_code() -> None:
    assert {example.code for example in EXAMPLES} == set(whys())
    assert {path.name.split(".")[0] for path in CASES.iterdir()} == set(whys())


def test_every_check_says_why() -> None:
    for source in (*TEXT_CHECKS, *REHEARSED_CHECKS, *MET_ON_THE_WAY):
        assert source.codes
        assert source.why.endswith(".")
        assert set(source.codes) <= set(whys())


def test_the_page_of_checks_is_up_to_date() -> None:
    """If not: `python scripts/checks_page.py` writes it anew."""
    assert PAGE.read_text(encoding="utf-8") == checks_page()


def test_the_page_has_every_code() -> None:
    page = PAGE.read_text(encoding="utf-8")
    assert [code for code in whys() if f"\n## {code}\n" not in page] == []
