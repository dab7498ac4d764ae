"""Sets the one-page sheet as PDF: the edge where fonts, the template and the type-setter are met.

It must not know what stands on the sheet beyond its texts and how high its pictures are.
"""

import json
from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache
from importlib.resources import as_file, files
from pathlib import Path

import msgspec
import typst
from fontTools.ttLib import TTFont  # type: ignore[import-untyped]  # it ships no types

from conewright.drawing.glyphs import legible, missing_letters
from conewright.drawing.sheet import BARE, BRIEF, FULL, Sheet, each_text, sheet, texts_of
from conewright.model.problem import Problem
from conewright.model.session import Session

PICTURES_MM = (72.0, 66.0, 61.0, 56.0, 52.0, 48.0, 44.0, 40.0, 36.0, 32.0, 28.0)
LEAST_MM = {FULL: 48.0, BRIEF: 40.0, BARE: 28.0}  # rather tell less than draw smaller


class CannotSet(Exception):
    """The sheet cannot be put on one page, or the type-setter refused it; the message says which."""


def sheet_pdf(session: Session, *, title: str, when: str, tradition: str = "A") -> bytes:
    """The session on one page A4, black and white, as a tagged PDF with real text.

    Pictures shrink until everything has room; where that is not enough the blocks are told in brief. Raises CannotSet
    where even that does not fit on a page.
    """
    known = letters()
    for detail in (FULL, BRIEF, BARE):
        heights = tuple(height for height in PICTURES_MM if height >= LEAST_MM[detail])
        page = _largest(session, heights, known, title=title, when=when, tradition=tradition, detail=detail)
        if page is not None:
            return _compile(page)
    raise CannotSet("this evening has more blocks than one page holds")


def sheet_findings(session: Session, *, title: str, when: str) -> tuple[Problem, ...]:
    """What cannot be printed as it was written: letters the font for paper lacks."""
    return missing_letters(texts_of(sheet(session, title=title, when=when)), letters())


def _largest(
    session: Session,
    heights: tuple[float, ...],
    known: frozenset[int],
    *,
    title: str,
    when: str,
    tradition: str,
    detail: int,
) -> Sheet | None:
    """The sheet with the largest pictures that stays on one page, None where none does; heights fall."""
    found: Sheet | None = None
    low, high = 0, len(heights)
    while low < high:
        middle = (low + high) // 2
        page = sheet(session, title=title, when=when, tradition=tradition, picture_mm=heights[middle], detail=detail)
        page = each_text(page, lambda text: legible(text, known))
        if _pages(page) == 1:
            found, high = page, middle
        else:
            low = middle + 1
    return found


@cache
def letters() -> frozenset[int]:
    """The code points the fonts for paper can show."""
    known: frozenset[int] | None = None
    for file in files("conewright.data").joinpath("fonts").iterdir():
        if file.name.endswith(".ttf"):
            with as_file(file) as path, TTFont(path, lazy=True) as font:
                own = frozenset(font.getBestCmap())
            known = own if known is None else known & own
    return known or frozenset()


@contextmanager
def _places() -> Iterator[tuple[Path, Path]]:
    """The template and the folder of fonts as files."""
    with as_file(files("conewright.data")) as data:
        yield data / "sheet.typ", data / "fonts"


def _pages(page: Sheet) -> int:
    with _places() as (template, fonts):
        found = typst.query(
            str(template),
            "<pages>",
            field="value",
            one=True,
            font_paths=[str(fonts)],
            ignore_system_fonts=True,
            sys_inputs=_inputs(page),
        )
    return int(json.loads(found))


def _compile(page: Sheet) -> bytes:
    with _places() as (template, fonts):
        made = typst.compile(
            str(template),
            format="pdf",
            font_paths=[str(fonts)],
            ignore_system_fonts=True,
            sys_inputs=_inputs(page),
        )
    if not isinstance(made, bytes):
        raise CannotSet("the type-setter gave no PDF")
    return made


def _inputs(page: Sheet) -> dict[str, str]:
    """The sheet as the template takes it: one value, never pasted into the template."""
    return {"sheet": msgspec.json.encode(page).decode()}
