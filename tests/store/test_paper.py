"""The sheet as PDF: one page, real text in a tagged document, letters the font has, and nothing set too small."""

import io
from dataclasses import replace

import pypdf
import pytest

from conewright.drawing.sheet import sheet, texts_of
from conewright.fit.fit import fit
from conewright.model.session import Session, Tonight
from conewright.store.figures import load_figures
from conewright.store.paper import letters, sheet_findings, sheet_pdf
from conewright.store.shelf import load_shelf
from tests.drawing.evening import session

WHO, WHEN = "Tansyholt Lane, under 11", "Tuesday 3 June, 17:45 to 18:55"


def page_of(evening: Session, **choice: str) -> pypdf.PageObject:
    """The one page."""
    made = sheet_pdf(evening, title=WHO, when=WHEN, **choice)
    reader = pypdf.PdfReader(io.BytesIO(made))
    assert len(reader.pages) == 1
    return reader.pages[0]


def flat(text: str) -> str:
    """Text without breaks, as a reader would hear it."""
    return " ".join(text.replace("\N{NO-BREAK SPACE}", " ").split())


def test_the_page_holds_what_the_sheet_says() -> None:
    page = page_of(session())
    text = flat(page.extract_text())
    assert (round(float(page.mediabox.width)), round(float(page.mediabox.height))) == (595, 842)
    for words in ("Passing and moving", WHO, "11 children, 2 adults", "2 Small gate", "17:57, 18 min"):
        assert words in text
    for words in ("Base passes to Stem, runs to Stem.", "Say:", "Local rules come first.", "Bring:", "9: two copies"):
        assert words in text
    assert "one square is 1 m" in text  # the legend is text too
    assert "Held, broke down, who needs what" in text


def test_it_is_tagged_titled_and_told_aloud() -> None:
    reader = pypdf.PdfReader(io.BytesIO(sheet_pdf(session(), title=WHO, when=WHEN)))
    root = reader.trailer["/Root"]
    assert root["/MarkInfo"]["/Marked"]
    assert "/StructTreeRoot" in root
    assert root["/Lang"] == "en"
    assert reader.metadata is not None
    assert reader.metadata.title == "Passing and moving"


def test_fonts_are_ours_and_no_text_is_smaller_than_it_may_be() -> None:
    page = page_of(session())
    fonts = {str(font.get_object()["/BaseFont"]) for font in page["/Resources"]["/Font"].values()}
    assert fonts
    assert all("AtkinsonHyperlegibleNext" in font for font in fonts)
    sizes: list[float] = []

    def look(text: str, _cm: object, tm: list[float], _font: object, size: float) -> None:
        if " " in text.strip() and text.strip():
            sizes.append(abs(size * (tm[3] or 1.0)))

    page.extract_text(visitor_text=look)
    assert sizes
    assert min(sizes) >= 8.45


@pytest.mark.parametrize(
    ("here", "minutes", "ground"),
    [(5, 45, (15, 15)), (13, 70, (30, 22)), (20, 90, (40, 30)), (24, 75, (60, 40)), (16, 120, (30, 22))],
)
def test_a_fitted_evening_is_one_page(here: int, minutes: int, ground: tuple[int, int]) -> None:
    tonight = Tonight(here=here, minutes=minutes, width_m=ground[0], depth_m=ground[1], aim="passing", balls=16)
    evening = fit(tonight, load_shelf(), figures=load_figures())
    text = flat(page_of(evening).extract_text())
    assert evening.blocks
    for number, block in enumerate(evening.blocks, start=1):
        assert f"{number} {block.exercise.name}" in text
    assert "Local rules come first" in text


def test_a_session_of_nothing_is_still_a_page() -> None:
    text = page_of(replace(session(), blocks=(), pauses=())).extract_text()
    assert "Passing and moving" in text


def test_letters_the_font_lacks_are_found_and_replaced() -> None:
    strange = "Юлия and Zoë → Łukasz"
    evening = session()
    odd = replace(evening, blocks=tuple(replace(block, groups=strange) for block in evening.blocks))
    found = sheet_findings(odd, title=WHO, when=WHEN)
    assert [problem.code for problem in found] == ["letters-missing"]
    assert "Юлия" in found[0].message
    text = flat(page_of(odd).extract_text())
    assert "???? and Zoë to Łukasz" in text
    assert not sheet_findings(evening, title=WHO, when=WHEN)


def test_every_shipped_text_can_be_printed() -> None:
    known = letters()
    for exercise in load_shelf():
        texts = (exercise.name, *exercise.cues, *exercise.cautions, exercise.score)
        assert {letter for text in texts for letter in text if ord(letter) not in known} == set()
    assert {letter for text in texts_of(sheet(session(), title=WHO, when=WHEN)) for letter in text} <= {
        chr(code) for code in known
    }


def test_nothing_a_coach_writes_is_read_as_typesetting() -> None:
    sly = '#panic("no") $x$ *bold* @ref <label> \\ "quoted" [brackets]'
    evening = session()
    odd = replace(evening, tonight=replace(evening.tonight, aim=sly))
    assert flat(sly).lower() in flat(page_of(odd).extract_text()).lower()
