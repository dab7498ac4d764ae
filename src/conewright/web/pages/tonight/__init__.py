"""The page Tonight: who is here, and the evening fitted to them."""

from pathlib import Path

from starlette.routing import Route

from conewright.web.pages.page import Page
from conewright.web.pages.tonight.handler import answered, asked, clock_css, round_played, sheet

PATH = "/tonight"

TONIGHT = Page(
    name="Tonight",
    path=PATH,
    routes=(
        Route(PATH, asked, methods=["GET"]),
        Route(PATH, answered, methods=["POST"]),
        Route(f"{PATH}/clock.css", clock_css, methods=["GET"]),
        Route(f"{PATH}/sheet.pdf", sheet, methods=["GET"]),
        Route(f"{PATH}/round.json", round_played, methods=["GET"]),
    ),
    static=Path(__file__).parent / "static",
)
