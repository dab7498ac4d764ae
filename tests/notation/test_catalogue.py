"""The catalogue of what reading finds: complete, true, and on its page."""

import ast
import re
from pathlib import Path

import pytest

from conewright.notation.catalogue import CODES, PARTS, Entry, Part
from conewright.notation.reader import read
from conewright.notation.shapes import SENTENCES
from conewright.notation.words import JOBS, NUMBERS
from scripts.problems_page import PAGE, main, problems_page

ROOT = Path(__file__).parents[2]
SOURCES = ROOT / "src" / "conewright" / "notation"
WRONG = ROOT / "tests" / "data" / "notation" / "wrong"
ENTRIES = [(part, entry) for part in PARTS for entry in part.entries]
CODE = re.compile(r"[a-z]+(-[a-z]+)+")
NO_CODES = {*JOBS, *NUMBERS, "half-time"}


def named(value: Part | Entry) -> str:
    return value.code if isinstance(value, Entry) else ""


@pytest.mark.parametrize(("part", "entry"), ENTRIES, ids=named)
def test_the_bad_example_gives_its_code_once_and_no_other(part: Part, entry: Entry) -> None:
    problems = read(part.whole(entry.bad))[1]
    assert [problem.code for problem in problems] == [entry.code]
    assert problems[0].message.endswith((".", "?"))
    assert problems[0].hint


@pytest.mark.parametrize(("part", "entry"), ENTRIES, ids=named)
def test_the_place_is_in_the_example_or_at_the_first_line(part: Part, entry: Entry) -> None:
    (problem,) = read(part.whole(entry.bad))[1]
    first = part.before.count("\n") + 1
    assert problem.where is not None
    assert problem.where.line == 1 or first <= problem.where.line < first + entry.bad.count("\n")


@pytest.mark.parametrize(("part", "entry"), ENTRIES, ids=named)
def test_the_good_example_reads_without_a_problem(part: Part, entry: Entry) -> None:
    assert read(part.whole(entry.good))[1] == ()
    assert entry.good != entry.bad
    assert entry.why.endswith(".")


def test_no_code_stands_twice() -> None:
    assert len(set(CODES)) == len(CODES)


def constants(path: Path) -> set[str]:
    """The texts of a module that look like a code, without the words of the notation that do."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    texts = {node.value for node in ast.walk(tree) if isinstance(node, ast.Constant) and isinstance(node.value, str)}
    return {text for text in texts if CODE.fullmatch(text)} - NO_CODES


def test_every_code_of_the_sources_stands_in_the_catalogue() -> None:
    sources = [path for path in sorted(SOURCES.glob("*.py")) if path.name not in ("catalogue.py", "words.py")]
    found = set().union(
        *(constants(path) for path in sources if "Problem" in path.read_text() or "cursor" in path.read_text())
    )
    assert found == set(CODES)


def test_every_code_that_wrong_texts_give_stands_in_the_catalogue() -> None:
    found = {problem.code for path in WRONG.glob("*.exercise") for problem in read(path.read_text(encoding="utf-8"))[1]}
    assert len(found) > len(SENTENCES)
    assert found <= set(CODES)


def test_the_page_is_up_to_date_and_has_every_code() -> None:
    """If not: `python scripts/problems_page.py` writes it anew."""
    page = PAGE.read_text(encoding="utf-8")
    assert page == problems_page()
    assert main(["--check"]) == 0
    assert [code for code in CODES if f"\n### {code}\n" not in page] == []
    assert "(checks.md)" in page
