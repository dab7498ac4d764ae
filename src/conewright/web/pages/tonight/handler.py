"""Requests to the page Tonight: answers kept, the evening shown, the sheet, a round to play; must not know its look."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import datetime
from functools import partial
from urllib.parse import urlencode

import msgspec
from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response

from conewright.model.session import Session, Tonight
from conewright.store.answers import NUMBERS, Wrong, read_answers, read_hour, read_number
from conewright.store.evening import Evening, keep_evening, last_evening
from conewright.store.fitted import keep_fitted
from conewright.store.squad import first_squad
from conewright.web.frame import page
from conewright.web.pages.tonight.clock import begins_at, when_words
from conewright.web.pages.tonight.clock_styles import clock_styles
from conewright.web.pages.tonight.picture import draw_ahead, moving, narrow, wide
from conewright.web.pages.tonight.sentence import Said, words_of
from conewright.web.pages.tonight.view import evening_view
from conewright.web.press import pressed
from conewright.web.state import State

PATH = "/tonight"
TEMPLATE = "pages/tonight/template.html"
SEE_OTHER, UNPROCESSABLE, NOT_FOUND = 303, 422, 404
HERE = next(asked for asked in NUMBERS if asked.field == "here")
STEPS = {"fewer": -1, "more": 1}


def asked(request: Request) -> Response:
    """The page for the answers kept last, and the head count of the address where it names one."""
    evening = _evening(request)
    opened = request.query_params.get("open", "")
    said = Said(tonight=evening.tonight, starts=evening.starts)
    return _page(request, evening, said, opened=opened)


async def answered(request: Request) -> Response:
    """Keep what was said and show the evening for it; where something cannot be used, show what and why."""
    async with request.form() as form:
        written = {name: value for name, value in form.items() if isinstance(value, str)}
    return await run_in_threadpool(_answer, request, written)


def _answer(request: Request, written: Mapping[str, str]) -> Response:
    state: State = request.app.state.conewright
    before = last_evening(state.keep)
    tonight, wrong = read_answers(written, before.tonight)
    starts = read_hour(written.get("starts", before.starts))
    if isinstance(starts, Wrong):
        wrong = (*wrong, starts)
    if wrong or isinstance(starts, Wrong):
        said = Said(tonight=before.tonight, starts=before.starts, written=written, wrong=wrong)
        return _page(request, before, said, status=UNPROCESSABLE)
    tonight = _stepped(tonight, written.get("step", ""))
    evening = Evening(tonight=tonight, planned=_planned(before, tonight, written), starts=starts)
    if evening != before:
        keep_evening(state.keep, evening)
    return RedirectResponse(_address(evening, written), SEE_OTHER)


def _stepped(tonight: Tonight, step: str) -> Tonight:
    here = min(max(tonight.here + STEPS.get(step, 0), HERE.least), HERE.most)
    return replace(tonight, here=here, keepers=min(tonight.keepers, here))


def _planned(before: Evening, tonight: Tonight, written: Mapping[str, str]) -> int:
    """Another head count is fitted into the evening as planned; other answers, or a wish, plan it anew."""
    same = replace(tonight, here=before.tonight.here, keepers=before.tonight.keepers) == before.tonight
    return before.planned if same and "anew" not in written and before.planned else tonight.here


def _address(evening: Evening, written: Mapping[str, str]) -> str:
    block = written.get("block", "")
    words = {"here": str(evening.tonight.here)} | ({"block": block} if block.isdecimal() else {})
    return f"{PATH}?{urlencode(words)}"


def _evening(request: Request) -> Evening:
    """The answers kept last, with the head count of the address."""
    state: State = request.app.state.conewright
    evening = last_evening(state.keep)
    here = read_number(request.query_params.get("here", str(evening.tonight.here)), HERE)
    if isinstance(here, Wrong):
        return evening
    keepers = min(evening.tonight.keepers, int(here))
    return replace(evening, tonight=replace(evening.tonight, here=int(here), keepers=keepers))


def _begins(request: Request, evening: Evening) -> datetime:
    state: State = request.app.state.conewright
    squad = first_squad(state.keep)
    return begins_at(state.now(), evening.starts, squad.days if squad else ())


def _session(request: Request, evening: Evening) -> Session:
    state: State = request.app.state.conewright
    return state.planner.session(evening.tonight, planned=evening.planned)


def _number(request: Request, name: str, most: int, usual: int = 1) -> int:
    """A number in the address from 1 to `most`; the usual one for anything else."""
    said = request.query_params.get(name, "")
    number = int(said) if said.isdecimal() and len(said) < 4 else usual
    return number if 1 <= number <= most else min(usual, max(most, 1))


def _page(request: Request, evening: Evening, said: Said, *, opened: str = "", status: int = 200) -> Response:
    state: State = request.app.state.conewright
    session = _session(request, evening)
    begins = _begins(request, evening)
    number = _number(request, "block", len(session.blocks), _main(session))
    block = session.blocks[number - 1] if session.blocks else None
    view = evening_view(
        session,
        begins=begins,
        number=number,
        copy=_number(request, "copy", len(block.copies) if block else 1),
        planned=evening.planned,
        figures=state.planner.figures(),
        text=state.planner.text(block.exercise) if block else "",
    )
    state.planner.make_ready(
        evening.tonight,
        planned=evening.planned,
        then=partial(_draw_ahead, number=number),
        last=partial(keep_fitted, state.keep, evening.tonight, evening.planned, session),
    )
    return page(
        request,
        TEMPLATE,
        status=status,
        tonight=evening.tonight,
        when=when_words(begins, evening.tonight.minutes),
        words=words_of(replace(said, aims=state.planner.aims()), opened),
        evening=view,
        least=HERE.least,
        most=HERE.most,
        unsaved=bool(state.keep.unsaved),
    )


def _draw_ahead(session: Session, *, number: int) -> None:
    """Draw the block that would be in hand, so that it is there when it is asked for."""
    if len(session.blocks) >= number:
        draw_ahead(session.blocks[number - 1], session.tonight)


def _main(session: Session) -> int:
    """The block that is in hand where nobody has chosen one: the longest before the game."""
    longest = max(range(len(session.blocks)), key=lambda place: session.blocks[place].minutes, default=0)
    mains = (place for place, block in enumerate(session.blocks) if block.job.value == "main")
    return next(mains, longest) + 1


def sheet(request: Request) -> Response:
    """The evening on one sheet, as a PDF file."""
    state: State = request.app.state.conewright
    evening = _evening(request)
    session = _session(request, evening)
    if not session.blocks:
        return RedirectResponse(PATH, SEE_OTHER)
    squad = first_squad(state.keep)
    begins = _begins(request, evening)
    title = squad.name if squad else "Tonight"
    pdf = pressed(session, title=title, when=when_words(begins, evening.tonight.minutes))
    name = f"tonight-{begins:%Y-%m-%d}-{evening.tonight.here}.pdf"
    return Response(pdf, media_type="application/pdf", headers={"content-disposition": f'inline; filename="{name}"'})


def clock_css(request: Request) -> Response:
    """The styles of the clock."""
    return Response(clock_styles(), media_type="text/css")


def round_played(request: Request) -> Response:
    """What moves in the pictures of a block, as JSON; nothing where it was not rehearsed."""
    session = _session(request, _evening(request))
    if not session.blocks:
        return Response(status_code=NOT_FOUND)
    block = session.blocks[_number(request, "block", len(session.blocks), _main(session)) - 1]
    number = _number(request, "copy", len(block.copies)) - 1
    films = {
        "copy": number,
        "wide": moving(wide(block, session.tonight)),
        "phone": moving(narrow(block, session.tonight, number)),
    }
    return Response(msgspec.json.encode(films), media_type="application/json")
