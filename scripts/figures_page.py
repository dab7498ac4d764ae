"""Makes docs/figures.md from the figures that ship with Conewright; `--check` only says whether it is up to date."""

from __future__ import annotations

import sys
from collections.abc import Iterable
from pathlib import Path

from conewright.model.figures import AgeBand, AgeRule, Figure, Figures, Grade, Source
from conewright.store.figures import load_figures

PAGE = Path(__file__).parent.parent / "docs" / "figures.md"

GRADES: dict[Grade, str] = {
    "A": "seen in the source",
    "A*": "seen only as an index record",
    "A>C": "worked out from figures seen, with assumptions",
    "B+": "from memory of the named work, fairly sure",
    "B": "from memory of the named work",
    "B-": "from memory of the named work, roughly",
    "C": "an estimate, with its reason",
}

_HEAD = """# Figures

Every number from sport science that Conewright uses. It is made from `src/conewright/data/figures.json` by
`scripts/figures_page.py`. Children differ from one another by as much as two or three years of age: these are starting
points for a coach's own counts. In everything about safety, local rules come first.

Ages are "under N"; between two columns the mean of both holds, and under 6 is as under 7. Grades:

"""
_TITLES = {
    "all": "The same for everybody",
    "age": "By age",
    "surface": "By surface",
    "format": "By format of play",
    "contest": "By kind of duel",
    "level": "By level",
    "ball": "By size of ball",
}
_TAIL = ("spread", "grade", "source", "note")


def figures_page(figures: Figures) -> str:
    """Give the table as a page of Markdown: every row with its values, spread, grade, source and note."""
    parts = [_HEAD, *(f"- `{grade}`: {meaning}\n" for grade, meaning in GRADES.items())]
    by_column: dict[tuple[str, ...], list[Figure]] = {}
    for row in figures.rows:
        by_column.setdefault(row.columns, []).append(row)
    for columns, rows in by_column.items():
        parts.append(f"\n## {_TITLES[rows[0].by]}\n\n")
        parts += _table(("figure", "unit", *columns, *_TAIL), [_figure_cells(row) for row in rows])
    parts.append('\n## Exact ranges of age\n\nNever a mean of neighbours. Ages are "under N".\n\n')
    parts += _table(("rule", "unit", "ages", *_TAIL[1:]), [_rule_cells(rule) for rule in figures.rules])
    parts.append("\n## Sources\n\n")
    parts += _table(("name", "where", "seen"), [_source_cells(source) for source in figures.sources])
    return "".join(parts)


def _table(head: tuple[str, ...], rows: list[tuple[str, ...]]) -> list[str]:
    return [_line(head), _line(("---",) * len(head)), *(_line(row) for row in rows)]


def _line(cells: Iterable[str]) -> str:
    return f"| {' | '.join(cells)} |\n"


def _figure_cells(row: Figure) -> tuple[str, ...]:
    values = tuple(f"{value:g}" for value in row.values)
    return (f"{row.title} `{row.key}`", row.unit, *values, _spread_words(row), row.grade, row.source, row.note)


def _spread_words(row: Figure) -> str:
    if row.spread is None:
        return ""
    share = row.spread.kind == "cv"
    ends = dict.fromkeys((min(row.spread.values), max(row.spread.values)))
    return " to ".join(f"{end * 100 if share else end:g}" for end in ends) + (" %" if share else "")


def _rule_cells(rule: AgeRule) -> tuple[str, ...]:
    bands = "; ".join(_band_words(band) for band in rule.bands)
    return (f"{rule.title} `{rule.key}`", rule.unit, bands, rule.grade, rule.source, rule.note)


def _band_words(band: AgeBand) -> str:
    ends = f"U{band.youngest}" if band.oldest == band.youngest else f"U{band.youngest}-U{band.oldest}"
    ages = f"from U{band.youngest}" if band.oldest is None else ends
    numbers = " to ".join(dict.fromkeys(f"{end:g}" for end in (band.low, band.high) if end is not None))
    return f"{ages}: {band.text or numbers}"


def _source_cells(source: Source) -> tuple[str, ...]:
    return (source.name, source.where, "yes" if source.seen else "from memory")


def main(arguments: list[str]) -> int:
    """Write the page, or with `--check` compare it; give 0 if it is up to date or written, else 1."""
    page = figures_page(load_figures())
    if arguments == ["--check"]:
        return 0 if PAGE.is_file() and PAGE.read_text(encoding="utf-8") == page else 1
    PAGE.parent.mkdir(exist_ok=True)
    PAGE.write_text(page, encoding="utf-8", newline="\n")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
