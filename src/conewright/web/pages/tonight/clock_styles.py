"""The styles of the clock: widths by the minute and the row of blocks, since pages carry no styles of their own."""

from functools import cache

from conewright.web.pages.tonight.clock import Piece

LONGEST_MIN = 360
BREAKS_PX = (901, 1000, 1120, 1250, 1360, 1440)  # of the page: a row may begin at one of these widths
MARGINS_PX = 96.0
LETTER_PX, PADDING_PX = 9.0, 24.0  # of a name
ROW = """
@media screen and (min-width: {px}px) {{
  .row{px} .ticks, .row{px} .pieces {{ display: flex; flex-direction: row; border: 0; }}
  .row{px} .ticks > *, .row{px} .pieces > * {{ flex-basis: 0; min-width: 0; }}
  .row{px} .blk {{ flex-direction: column; align-items: flex-start; justify-content: space-between; gap: 4px; }}
  .row{px} .blk {{ min-height: 96px; border-width: 1px 0 1px 1px; }}
  .row{px} .blk:last-child {{ border-right-width: 1px; }}
  .row{px} .blk .tm {{ order: 0; min-width: 0; font-size: var(--t-xs); }}
  .row{px} .blk .kd {{ margin-left: 0; }}
  .row{px} .chg {{ border-width: 1px 0 1px 1px; }}
}}
"""


@cache
def clock_styles() -> str:
    """A class for each number of minutes, and one for each width of the page from which blocks stand in a row."""
    widths = "".join(f".m{minutes} {{ flex-grow: {minutes}; }}\n" for minutes in range(1, LONGEST_MIN + 1))
    return widths + "".join(ROW.format(px=px) for px in BREAKS_PX)


def row_class(pieces: tuple[Piece, ...]) -> str:
    """From which width of the page every name has room in a row of blocks; "tall" where none will do."""
    minutes = sum(piece.minutes for piece in pieces)
    shares = (_name_px(piece) * minutes / piece.minutes for piece in pieces if piece.number)
    needed = max(shares, default=0.0) + MARGINS_PX
    return next((f"row{px}" for px in BREAKS_PX if px >= needed), "tall")


def _name_px(piece: Piece) -> float:
    return LETTER_PX * max(len(word) for word in piece.name.split()) + PADDING_PX
