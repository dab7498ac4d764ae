"""Makes docs/problems.md from the catalogue of what reading finds; `--check` only says whether it is up to date."""

from __future__ import annotations

import sys
from pathlib import Path

from conewright.notation.catalogue import PARTS, Entry, Part
from conewright.notation.reader import read

PAGE = Path(__file__).parent.parent / "docs" / "problems.md"

_HEAD = """# What reading finds

Whatever is wrong with the words of an exercise, with an example that has it and the same example mended. Made from
`src/conewright/notation/catalogue.py` by `scripts/problems_page.py`; every example is read by a test.

All of it has to be mended before the exercise can be trusted; whatever was understood is read all the same. How
sentences are written stands in [notation.md](notation.md). What is found in an exercise that reads well, because it
cannot run or may go wrong on the grass, stands in [checks.md](checks.md).

"""


def problems_page() -> str:
    """Give the page of Markdown: a list of the codes, then each with its why, what is said, and both examples."""
    return "".join((_HEAD, _contents(), *map(_part, PARTS)))


def _contents() -> str:
    rows = ["| code | what is said |\n| --- | --- |\n"]
    for part in PARTS:
        rows += [f"| [{entry.code}](#{entry.code}) | {_said(part, entry)[0]} |\n" for entry in part.entries]
    return "".join(rows)


def _said(part: Part, entry: Entry) -> tuple[str, str]:
    """Message and hint of the bad example. Raises ValueError where its code is not given."""
    found = next((problem for problem in read(part.whole(entry.bad))[1] if problem.code == entry.code), None)
    if found is None:
        raise ValueError(f"{entry.code} is not found in its bad example")
    return found.message.replace("|", "\\|"), found.hint


def _part(part: Part) -> str:
    about = f"\nThe examples stand behind these lines:\n\n```\n{part.before}```\n" if part.before else ""
    return f"\n## {part.title}\n{about}{''.join(_entry(part, entry) for entry in part.entries)}"


def _entry(part: Part, entry: Entry) -> str:
    message, hint = _said(part, entry)
    said = f"{message}\n\n> {hint}\n"
    return f"\n### {entry.code}\n\n{entry.why}\n\n```\n{entry.bad}```\n\n{said}\n```\n{entry.good}```\n"


def main(arguments: list[str]) -> int:
    """Write the page, or with `--check` compare it; give 0 if it is up to date or written, else 1."""
    page = problems_page()
    if arguments == ["--check"]:
        return 0 if PAGE.is_file() and PAGE.read_text(encoding="utf-8") == page else 1
    PAGE.write_text(page, encoding="utf-8", newline="\n")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
