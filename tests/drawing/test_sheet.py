"""The sheet as data: aim, clock, blocks, cautions, kit, all from the session and nothing of a child."""

import xml.etree.ElementTree as ET
from dataclasses import replace

import pytest

from conewright.drawing.sheet import BARE, BRIEF, FULL, each_text, sheet, texts_of
from tests.drawing.evening import session

WHO, WHEN = "Tansyholt Lane, under 11", "Tuesday 3 June, 17:45 to 18:45"


def test_the_aim_leads_and_who_and_when_stand_above_it() -> None:
    page = sheet(session(), title=WHO, when=WHEN)
    assert page.heading == "Passing and moving"
    assert page.above == f"{WHO}. {WHEN}"
    assert page.here == "11 children, 2 adults"
    aimless = replace(session(), tonight=replace(session().tonight, aim=""))
    assert sheet(aimless, title=WHO, when=WHEN).heading == WHO


def test_the_clock_counts_from_the_hour_said() -> None:
    page = sheet(session(), title=WHO, when=WHEN)
    assert [(part.at, part.minutes, part.hatched) for part in page.clock] == [
        ("17:45", 10, False),
        ("", 2, True),
        ("17:57", 18, False),
        ("", 2, True),
        ("18:17", 28, False),
    ]
    assert [block.when for block in page.blocks] == ["17:45, 10 min", "17:57, 18 min", "18:17, 28 min"]
    assert [block.when for block in sheet(session(), title=WHO, when="").blocks][1] == "minute 12, 18 min"


def test_words_in_the_clock_only_where_they_fit() -> None:
    evening = session()
    short = replace(evening, blocks=(replace(evening.blocks[0], minutes=1), *evening.blocks[1:]))
    assert sheet(evening, title=WHO, when=WHEN).clock[2].words == "Small gate"
    assert sheet(short, title=WHO, when=WHEN).clock[0].words == ""


def test_a_block_tells_everything_a_coach_needs() -> None:
    block = sheet(session(), title=WHO, when=WHEN).blocks[1]
    assert block.name == "2 Small gate"
    assert block.groups.startswith("Yellow six, Blue five.")
    assert "2 balls, 6 cones, 6 yellow and 5 blue bibs" in block.groups
    assert ("1", "Base passes to Stem, runs to Stem.") in block.lines
    assert (
        block.others
        == "9: two copies, 5 and 4. 10: two copies, 5 and 5. 12: two copies, 6 and 6. 13: two copies, 7 and 6."
    )


@pytest.mark.parametrize("detail", [FULL, BRIEF, BARE])
def test_less_detail_keeps_sentences_and_answers(detail: int) -> None:
    page = sheet(session(), title=WHO, when=WHEN, detail=detail)
    numbered = [line for line in page.blocks[1].lines if line[0]]
    assert len(numbered) == 3
    assert page.blocks[1].others.startswith("9: two copies")
    assert sum(map(len, texts_of(page))) <= sum(map(len, texts_of(sheet(session(), title=WHO, when=WHEN))))


def test_adults_come_first_among_the_cautions() -> None:
    page = sheet(session(), title=WHO, when=WHEN)
    assert page.cautions[0] == "2 adults for 11 children. Local rules come first."
    assert page.cautions[1].startswith("A ball rolls for 60")
    assert not any("most in use" in words for words in page.cautions)
    assert page.kit == "12 balls, 6 cones, 6 yellow and 5 blue bibs"


def test_pictures_keep_to_their_height_and_are_black_and_white() -> None:
    for high in (72.0, 40.0, 28.0):
        page = sheet(session(), title=WHO, when=WHEN, picture_mm=high)
        for block in page.blocks:
            assert block.picture.height_mm <= high + 0.01
            assert block.picture.width_mm <= 91.01
            assert block.picture.alt.startswith(block.name[2:])
            ET.fromstring(block.picture.svg)
            assert "var(" not in block.picture.svg
    assert "one square is 1 m" in page.legend.svg


def test_words_in_pictures_are_large_enough_to_read() -> None:
    page = sheet(session(), title=WHO, when=WHEN, picture_mm=28.0)
    for block in page.blocks:
        for text in ET.fromstring(block.picture.svg).iter("{http://www.w3.org/2000/svg}text"):
            words = text.text or ""
            if " " in words:  # a mark's letters and a sentence's number have their own measures
                assert float(text.get("font-size", "0")) >= 2.99


def test_tradition_reaches_the_pictures_and_the_legend() -> None:
    usual, other = (sheet(session(), title=WHO, when=WHEN, tradition=word) for word in "AB")
    assert usual.blocks[1].picture.svg != other.blocks[1].picture.svg
    assert usual.legend.svg != other.legend.svg


def test_every_text_can_be_changed() -> None:
    page = sheet(session(), title=WHO, when=WHEN)
    shouted = each_text(page, str.upper)
    assert shouted.heading == "PASSING AND MOVING"
    assert [text.upper() for text in texts_of(page)] == list(texts_of(shouted))
