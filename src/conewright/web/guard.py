"""Stands before every page: only this machine is answered, only its own pages may send, and nothing else is loaded.

It must not know the pages.
"""

from starlette.datastructures import Headers, MutableHeaders
from starlette.responses import PlainTextResponse, Response
from starlette.types import ASGIApp, Message, Receive, Scope, Send

MOST_BYTES = 64_000  # of a form
OWN_NAMES = ("127.0.0.1", "localhost", "[::1]")
CHANGING = ("POST", "PUT", "PATCH", "DELETE")
PROMISES = {
    "content-security-policy": (
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; "
        "connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"
    ),
    "x-content-type-options": "nosniff",
    "referrer-policy": "same-origin",
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
    "permissions-policy": "camera=(), geolocation=(), microphone=()",
}


def guarded(app: ASGIApp) -> ASGIApp:
    """The app behind the guard."""

    async def answer(scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] != "http":
            await app(scope, receive, send)
            return
        refusal = refused(scope["method"], Headers(scope=scope))
        inner = refusal if refusal is not None else app
        await inner(scope, receive, _promising(send))

    return answer


def refused(method: str, headers: Headers) -> Response | None:
    """Why a request is turned away, as the answer to it; None where it may pass."""
    if host_name(headers.get("host", "")) not in OWN_NAMES:
        return PlainTextResponse("Conewright answers only to this machine: open http://127.0.0.1/ with its port.", 400)
    if method not in CHANGING:
        return None
    if not _from_own_page(headers):
        return PlainTextResponse("This was not sent by a page of Conewright, so nothing was changed.", 403)
    length = headers.get("content-length", "")
    if not length.isdecimal():
        return PlainTextResponse("Say how long the form is.", 411)
    if int(length) > MOST_BYTES:
        return PlainTextResponse("That is more than a form of Conewright can hold; nothing was changed.", 413)
    return None


def host_name(host: str) -> str:
    """The name in a Host header, without the port."""
    name, colon, port = host.rpartition(":")
    return name.lower() if colon and (port.isdecimal() or not port) else host.lower()


def _from_own_page(headers: Headers) -> bool:
    """Browsers say where a form came from; a program that is none says nothing and harms nobody."""
    origin, site = headers.get("origin"), headers.get("sec-fetch-site")
    if site is not None and site not in ("same-origin", "none"):
        return False
    return origin is None or origin.lower() == f"http://{headers.get('host', '').lower()}"


def _promising(send: Send) -> Send:
    async def sending(message: Message) -> None:
        if message["type"] == "http.response.start":
            headers = MutableHeaders(scope=message)
            for name, value in PROMISES.items():
                headers.setdefault(name, value)
            headers.setdefault("cache-control", "no-cache")
        await send(message)

    return sending
