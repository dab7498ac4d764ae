"""The frame every page stands in, and the one environment of templates; must not know what a page shows."""

from pathlib import Path
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from starlette.requests import Request
from starlette.responses import HTMLResponse

from conewright.store.evening import last_light

TEMPLATES = Environment(
    loader=FileSystemLoader(Path(__file__).parent),
    autoescape=True,
    undefined=StrictUndefined,
    trim_blocks=True,
    lstrip_blocks=True,
    auto_reload=False,
)
LIGHTS = (("paper", "Paper"), ("dark", "Dark"), ("sun", "Sun"))


def page(request: Request, template: str, *, status: int = 200, **shown: Any) -> HTMLResponse:
    """A page from its template, in the light chosen last."""
    state = request.app.state.conewright
    body = TEMPLATES.get_template(template).render(
        pages=state.pages,
        path=request.url.path,
        light=last_light(state.keep),
        lights=LIGHTS,
        notice=state.keep.notice,
        **shown,
    )
    return HTMLResponse(body, status)
