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

PICTURES_MM = {
    FULL: (72.0, 64.0, 58.0, 52.0, 48.0),
    BRIEF: (58.0, 52.0, 48.0, 44.0, 40.0),
    BARE: (48.0, 44.0, 40.0, 36.0, 32.0, 28.0, 25.0, 22.0),
}
"""How high pictures may be at each detail, the largest first: rather tell less than draw smaller."""


class CannotSet(Exception):
    """The type-setter refused the sheet; the message says why. Nothing a coach may ask for brings this about."""


def sheet_pdf(session: Session, *, title: str, when: str, tradition: str = "A") -> bytes:
    """The session on one page A4, black and white, as a tagged PDF with real text.

    Pictures shrink until everything has room; where that is not enough the blocks are told in brief. Only where even
    that is too much for a page does the sheet run on to a second one. Raises CannotSet where nothing can be set.
    """
    known = letters()

    def page_of(detail: int, height: float) -> Sheet:
        page = sheet(session, title=title, when=when, tradition=tradition, picture_mm=height, detail=detail)
        return each_text(page, lambda text: legible(text, known))

    for detail, heights in PICTURES_MM.items():
        smallest = page_of(detail, heights[-1])
        if _pages(smallest) == 1:
            larger = (page_of(detail, height) for height in heights[:-1])
            return _compile(next((page for page in larger if _pages(page) == 1), smallest))
    return _compile(smallest)


def sheet_findings(session: Session, *, title: str, when: str) -> tuple[Problem, ...]:
    """What cannot be printed as it was written: letters the font for paper lacks."""
    return missing_letters(texts_of(sheet(session, title=title, when=when)), letters())


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
