"""Makes docs/checks.md from the checks and their cases; `--check` only says whether it is up to date.

A case is a pair of files, `CODE.bad.exercise` and `CODE.good.exercise`, or `CODE.WORDS.bad.exercise` for another one
of the same code. The first line says for whom ("# with 6, under 11"), the last of the bad one what is found
("# finds: flow-open at line 9"); the good one is the bad one mended as the hint says.
"""

from __future__ import annotations

import re
import sys
from dataclasses import dataclass
from difflib import ndiff
from pathlib import Path

from conewright.checks.check import check, whys
from conewright.model.problem import Problem
from conewright.notation.reader import read
from conewright.store.figures import load_figures

ROOT = Path(__file__).parent.parent
PAGE = ROOT / "docs" / "checks.md"
CASES = ROOT / "tests" / "data" / "checks"
SURFACE = "grass_club"
FOR_WHOM = re.compile(r"# with (\d+), under (\d+)\n")
FINDS = re.compile(r"# finds: (\S+) at line (\d+)\n\Z")

_HEAD = """# Checks

What Conewright looks for in an exercise, before anybody stands on the grass. Made from the checks and from
`tests/data/checks` by `scripts/checks_page.py`; every example below is read and checked by a test.

A finding has one of three weights: `mend` (it cannot run as written, or breaks a safety rule about the exercise
itself), `look` (it runs, but misses a mark or may go wrong), `know` (good to know). Marks and ranges are figures of
[figures.md](figures.md), most of them estimates; they are lower lines to compare with, not judgements.

Under each code stands an exercise that gives it, what is said, and what changes when the hint is followed: lines
taken out begin with a minus, lines put in with a plus.

"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Example:
    """A pair of texts: the bad one gives `code` at `line` with `size` children of an age, the good one does not."""

    code: str
    name: str
    size: int
    age: int
    line: int
    bad: str
    good: str


def examples(folder: Path = CASES) -> tuple[Example, ...]:
    """Read every pair of files. Raises ValueError for a file that does not say for whom it is, or what it finds."""
    read_all = (_example(path) for path in folder.glob("*.bad.exercise"))
    return tuple(sorted(read_all, key=lambda example: (example.code, len(example.name), example.name)))


def _example(path: Path) -> Example:
    name = path.name.removesuffix(".bad.exercise")
    bad = path.read_text(encoding="utf-8")
    good = path.with_name(f"{name}.good.exercise").read_text(encoding="utf-8")
    whom, finds = FOR_WHOM.match(bad), FINDS.search(bad)
    if whom is None or finds is None or not good.startswith(whom.group()):
        raise ValueError(f"{path.name}: the first line says for whom, in both files; the last one what is found")
    size, age = (int(number) for number in whom.groups())
    code, line = finds.groups()
    return Example(code=code, name=name, size=size, age=age, line=int(line), bad=bad, good=good)


def found_in(text: str, example: Example) -> tuple[Problem, ...]:
    """Give everything that is said of a text with the children of an example; a text that reads badly is told too."""
    exercise, slips = read(text)
    if exercise is None:
        return slips
    return slips + check(exercise, example.size, figures=load_figures(), age=example.age, surface=SURFACE)


def checks_page() -> str:
    """Give the page of Markdown: every code with its weight, why it matters, and its examples."""
    by_code: dict[str, list[Example]] = {}
    for example in examples():
        by_code.setdefault(example.code, []).append(example)
    parts = [_HEAD, _contents(by_code)]
    for code, why in whys().items():
        parts.append(f"\n## {code}\n\n{why}\n")
        parts += [_shown(example) for example in by_code.get(code, [])]
    return "".join(parts)


def _contents(by_code: dict[str, list[Example]]) -> str:
    rows = ["| code | weight | what is said |\n| --- | --- | --- |\n"]
    for code in whys():
        for example in by_code.get(code, [])[:1]:
            problem = finding(example)
            rows.append(f"| [{code}](#{code}) | {problem.severity.value} | {problem.message} |\n")
    return "".join(rows)


def finding(example: Example) -> Problem:
    """Give the finding that a bad text is an example of. Raises ValueError where it is not found."""
    for problem in found_in(example.bad, example):
        if problem.code == example.code and problem.where is not None and problem.where.line == example.line:
            return problem
    raise ValueError(f"{example.name}: {example.code} is not found at line {example.line}")


def _shown(example: Example) -> str:
    problem = finding(example)
    said = f"Line {example.line}, `{problem.severity.value}`: {problem.message}"
    hint = f"\n\n> {problem.hint}" if problem.hint else ""
    bad, good = _plain(example.bad), _plain(example.good)
    changed = "".join(line for line in ndiff(bad, good) if line[0] in "+-")
    return f"\n```\n{''.join(bad)}```\n\n{said}{hint}\n\n```diff\n{changed}```\n"


def _plain(text: str) -> list[str]:
    """The lines of a case without the last, which is for the test."""
    return FINDS.sub("", text).splitlines(keepends=True)


def main(arguments: list[str]) -> int:
    """Write the page, or with `--check` compare it; give 0 if it is up to date or written, else 1."""
    page = checks_page()
    if arguments == ["--check"]:
        return 0 if PAGE.is_file() and PAGE.read_text(encoding="utf-8") == page else 1
    PAGE.parent.mkdir(exist_ok=True)
    PAGE.write_text(page, encoding="utf-8", newline="\n")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
