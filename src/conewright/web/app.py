"""The app: pages, what they load, and the guard before them; must not know what a page shows."""

from collections.abc import Callable
from datetime import datetime
from importlib.resources import files
from pathlib import Path

from starlette.applications import Starlette
from starlette.exceptions import HTTPException
from starlette.middleware import Middleware
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import BaseRoute, Mount, Route
from starlette.staticfiles import StaticFiles

from conewright.drawing.style import stylesheet
from conewright.store.evening import LIGHTS, keep_light
from conewright.store.keep import Keep
from conewright.web.frame import page
from conewright.web.guard import guarded
from conewright.web.pages import PAGES
from conewright.web.planner import Planner
from conewright.web.state import PageName, State

SEE_OTHER = 303


def make_app(keep: Keep, planner: Planner, *, now: Callable[[], datetime]) -> Starlette:
    """The pages over an open data file; `now` is the clock on the wall."""
    names = tuple(PageName(one.name, one.path) for one in PAGES)
    app = Starlette(
        routes=_routes(),
        middleware=[Middleware(guarded)],
        exception_handlers={404: _not_found, 405: _not_found, 500: _broken},
    )
    app.state.conewright = State(keep=keep, planner=planner, now=now, pages=names)
    return app


def _routes() -> list[BaseRoute]:
    own = [route for one in PAGES for route in one.routes]
    statics = [Mount(f"{one.path}/static", StaticFiles(directory=one.static)) for one in PAGES]
    return [
        Route("/", lambda request: RedirectResponse(PAGES[0].path, SEE_OTHER)),
        Route("/light", _light, methods=["POST"]),
        Route("/static/picture.css", _picture_styles),
        Mount("/static/fonts", StaticFiles(directory=str(files("conewright.data").joinpath("fonts")))),
        Mount("/static", StaticFiles(directory=Path(__file__).parent / "static")),
        *statics,
        *own,
    ]


async def _light(request: Request) -> Response:
    """Remember the light, and go back to the page it was chosen on."""
    async with request.form() as form:
        light, back = str(form.get("light", "")), str(form.get("back", "/"))
    state: State = request.app.state.conewright
    if light in LIGHTS:
        keep_light(state.keep, light)
    own = back.startswith("/") and not back.startswith(("//", "/\\"))
    return RedirectResponse(back if own else "/", SEE_OTHER)


def _picture_styles(request: Request) -> Response:
    return Response(stylesheet(), media_type="text/css")


def _not_found(request: Request, error: Exception) -> Response:
    status = error.status_code if isinstance(error, HTTPException) else 404
    return page(request, "message.html", status=status, title="Nothing is here", words="There is no such page.")


def _broken(request: Request, error: Exception) -> Response:
    words = "Something in Conewright went wrong. What you kept is as it was; the words on the terminal say more."
    return page(request, "message.html", status=500, title="That did not work", words=words)
