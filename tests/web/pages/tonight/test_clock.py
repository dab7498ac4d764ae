"""The evening along the clock: which day it is, hours, widths, and when names have room in a row."""

from datetime import datetime

import pytest

from conewright.web.pages.tonight.clock import Piece, begins_at, ticks_of, when_words
from conewright.web.pages.tonight.clock_styles import BREAKS_PX, clock_styles, row_class

DAYS = ("Tuesday", "Thursday")
MONDAY = datetime(2025, 6, 2, 9, 0)


@pytest.mark.parametrize(
    ("now", "begins"),
    [
        (MONDAY, datetime(2025, 6, 3, 17, 45)),
        (datetime(2025, 6, 3, 12, 0), datetime(2025, 6, 3, 17, 45)),
        (datetime(2025, 6, 3, 18, 30), datetime(2025, 6, 3, 17, 45)),
        (datetime(2025, 6, 3, 22, 0), datetime(2025, 6, 5, 17, 45)),
        (datetime(2025, 6, 7, 9, 0), datetime(2025, 6, 10, 17, 45)),
        (datetime(2025, 12, 31, 23, 0), datetime(2026, 1, 1, 17, 45)),
    ],
)
def test_tonight_is_the_next_training(now: datetime, begins: datetime) -> None:
    assert begins_at(now, "17:45", DAYS) == begins


def test_without_days_it_is_today_or_this_day_next_week() -> None:
    assert begins_at(MONDAY, "17:45", ()) == datetime(2025, 6, 2, 17, 45)
    assert begins_at(datetime(2025, 6, 2, 23, 30), "17:45", ("Someday",)) == datetime(2025, 6, 9, 17, 45)


def test_the_day_is_said_in_words() -> None:
    assert when_words(datetime(2025, 6, 3, 17, 45), 70) == "Tuesday 3 June, 17:45 to 18:55"
    assert when_words(datetime(2025, 12, 31, 23, 30), 60) == "Wednesday 31 December, 23:30 to 00:30"


@pytest.mark.parametrize("minutes", [5, 7, 10, 11, 15, 20, 59, 60, 61, 66, 70, 75, 119, 120, 121, 180, 360])
def test_ticks_fill_the_minutes_and_end_at_the_end(minutes: int) -> None:
    ticks = ticks_of(minutes, datetime(2025, 6, 3, 17, 0))
    assert sum(tick.minutes for tick in ticks) == minutes
    assert all(tick.minutes > 0 for tick in ticks)
    assert ticks[0].words == "17:00"
    assert [tick.last for tick in ticks] == [False] * (len(ticks) - 1) + [True]
    assert ticks[-1].words == f"{17 + minutes // 60:02}:{minutes % 60:02}"


def pieces(*parts: tuple[str, int]) -> tuple[Piece, ...]:
    return tuple(
        Piece(minutes=minutes, begins="", name=name or "drinks", does="", number=place if name else 0)
        for place, (name, minutes) in enumerate(parts, 1)
    )


def test_names_with_room_stand_in_a_row_and_others_in_a_list() -> None:
    assert row_class(pieces(("Kite", 30), ("", 2), ("Ferry", 30))) == f"row{BREAKS_PX[0]}"
    assert row_class(pieces(("Drawbridge", 60), ("", 2), ("Lantern walk", 3))) == "tall"
    five = row_class(pieces(("Drawbridge", 12), ("Stem and branch", 16), ("Farm gates", 37), ("Lantern walk", 5)))
    assert five in {f"row{px}" for px in BREAKS_PX[1:]}
    styles = clock_styles()
    assert all(f".row{px} .blk" in styles for px in BREAKS_PX)
    assert ".m360 { flex-grow: 360; }" in styles
