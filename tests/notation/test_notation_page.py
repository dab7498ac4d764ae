"""The page that teaches the notation: each example is read and written back, each table is made from the words."""

import re
from pathlib import Path

import pytest

from conewright.notation.printer import write
from conewright.notation.reader import read
from conewright.notation.shapes import CHANGES, FREE_LINES, HEADERS, SENTENCES
from conewright.notation.spans import without_spans
from conewright.notation.tables import tables
from conewright.notation.words import VARIANTS, VERBS

PAGE = Path(__file__).parents[2] / "docs" / "notation.md"
EXAMPLES = re.findall(r"```exercise ([a-z ]+)\n(.*?)```", PAGE.read_text(encoding="utf-8"), re.DOTALL)
TABLE = re.compile(r"(<!-- table: (\w+) -->\n).*?(<!-- end -->)", re.DOTALL)

HEAD = "exercise: Example\nkind: passing pattern\nfor 4 to 12 players\n"
GROUND = (
    "Base at 0, 0 is a line, a ball each.\nStem at 0, 8 holds one.\nLeft at -6, 15 and Right at 6, 15 are lines.\n"
    "Coach at -3, -2 is an adult with 6 balls.\nMast at 2, 6 is a cone.\nDoor at 0, 10 is a gate.\n"
    "Side Door at 8, 10 and Far Door at -8, 10 are gates, upright.\n"
    "Goal at 0, 22 is a goal.\nBench at 4, 10 is a wall.\n"
)
OPENING = "Each round, Left and Right in turn (call it Side):\n"
STEP = "1. Base passes to Stem.\n"
FRAMES = {  # what stands before an example of a sort, and after it
    "whole": ("", ""),
    "header": ("", f"{GROUND}Each round:\n{STEP}"),
    "ground": (HEAD, "Open play in 9 by 9 m: everyone has a ball.\n"),
    "round": (HEAD + GROUND, ""),
    "step": (HEAD + GROUND + OPENING, ""),
    "step synonym": (HEAD + GROUND + OPENING, ""),
    "script": (HEAD + GROUND + OPENING + STEP, ""),
    "contest": (f"{HEAD}{GROUND}Each round:\n", ""),
    "play": (f"{HEAD}North at 0, 20 and South at 0, 0 are mini goals.\n", ""),
    "variant": (
        f"{HEAD}{GROUND}{OPENING}1. Stem checks away, then shows.\n2. Base passes firmly to Stem, then runs to Stem.\n"
        "3. Stem turns in two touches, passes ahead of Side, then runs to Side.\n4. Side dribbles home.\n",
        "",
    ),
    "remarks": (HEAD + GROUND + OPENING + STEP, ""),
}


def framed(sort: str, example: str) -> str:
    before, after = FRAMES[sort]
    needs_round = sort == "round" and "Each round" not in example
    return f"{before}{example}{f'Each round:{chr(10)}{STEP}' if needs_round else ''}{after}"


def named(example: tuple[str, str]) -> str:
    return f"{example[0]}: {example[1][:30]}"


@pytest.mark.parametrize("example", EXAMPLES, ids=named)
def test_examples_are_read_and_written_back_as_they_stand(example: tuple[str, str]) -> None:
    sort, words = example
    exercise, problems = read(framed(sort, words))
    assert problems == ()
    assert exercise is not None
    written = write(exercise)
    again, problems = read(written)
    assert problems == ()
    assert without_spans(again) == without_spans(exercise)
    if sort != "step synonym":
        lines = [line for line in words.split("\n") if line and not line.startswith("#")]
        assert [line for line in lines if line not in written.split("\n")] == []


def test_the_tables_are_made_from_the_words(rewrite: bool) -> None:
    page = PAGE.read_text(encoding="utf-8")
    made = tables()
    fresh = TABLE.sub(lambda found: f"{found[1]}{made[found[2]]}\n{found[3]}", page)
    if rewrite:
        PAGE.write_text(fresh, encoding="utf-8")
    assert PAGE.read_text(encoding="utf-8") == fresh
    assert sorted(found[1] for found in TABLE.findall(fresh)) == sorted(made)


def test_the_page_shows_an_example_of_every_construct() -> None:
    shown = "\n".join(words for _, words in EXAMPLES)
    missing = [verb.phrase for verb in VERBS if f" {verb.phrase}" not in shown]
    missing += [form.key for form in SENTENCES for opener in form.opens[:1] if opener.lower() not in shown.lower()]
    missing += [phrase for phrase in VARIANTS.values() if f'\n{phrase} "' not in shown]
    missing += [change.key for change in CHANGES for opener in change.opens if f"{opener}" not in shown]
    missing += [key for key in HEADERS if f"\n{key}" not in f"\n{shown}"]
    missing += [key for key in FREE_LINES if f"\n{key.capitalize()}:" not in shown]
    assert missing == []
