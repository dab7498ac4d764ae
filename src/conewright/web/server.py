"""Opens the data file, a port of this machine and the browser, and serves until stopped; must not know the pages."""

import gc
import os
import signal
import socket
import sys
import threading
import time
import webbrowser
from datetime import datetime

import uvicorn

from conewright.store.evening import last_evening
from conewright.store.figures import load_figures
from conewright.store.fitted import last_fitted
from conewright.store.keep import Keep, UnusableFile, data_file, open_keep
from conewright.store.shelf import load_shelf, shelf_texts
from conewright.web.app import make_app
from conewright.web.planner import Planner

HOST = "127.0.0.1"
USUAL_PORT = 8017
WRONG_USAGE = 2
UNTIL_OPEN_S = 20.0  # a browser is not opened on a server that is slower than this


def serve(*, data: str | None, port: int | None, open_browser: bool) -> int:
    """Serve the pages to this machine until it is told to stop. Gives 0, or 2 where it cannot start."""
    try:
        keep = open_keep(data_file(data, os.environ), make_folder=data is None)
    except UnusableFile as unusable:
        return _cannot(str(unusable))
    try:
        listening = _listen(port)
    except OSError as error:
        keep.close()
        return _cannot(f"Port {port} is taken ({error.strerror}). Say another one: --port {USUAL_PORT + 1}")
    planner = Planner(load_shelf=load_shelf, load_figures=load_figures, load_texts=shelf_texts)
    evening = last_evening(keep)
    fitted = last_fitted(keep, evening.tonight, evening.planned)
    if fitted is not None:
        planner.know(evening.tonight, evening.planned, fitted)
    try:
        _run(keep, planner, listening, open_browser)
    finally:
        planner.close()
        keep.close()
        listening.close()
    return 0


def _cannot(message: str) -> int:
    print(f"conewright: {message}", file=sys.stderr)
    return WRONG_USAGE


def _listen(port: int | None) -> socket.socket:
    """A socket on the port asked for; on the usual one or any free one where none was."""
    for wanted in (USUAL_PORT, 0) if port is None else (port,):
        listening = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
        if os.name == "posix":
            listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            listening.bind((HOST, wanted))
            listening.listen()  # who comes before the pages are ready waits and is not turned away
            return listening
        except OSError:
            listening.close()
            if wanted == 0 or port is not None:
                raise
    raise OSError("no free port")


def _run(keep: Keep, planner: Planner, listening: socket.socket, open_browser: bool) -> None:
    address = f"http://{HOST}:{listening.getsockname()[1]}/"
    app = make_app(keep, planner, now=datetime.now)
    settings = uvicorn.Config(
        app,
        lifespan="off",
        ws="none",
        loop="asyncio",
        http="h11",
        log_level="warning",
        access_log=False,
        server_header=False,
        timeout_graceful_shutdown=2,
    )
    server = uvicorn.Server(settings)
    print(f"Conewright is at {address}\nIt answers this machine only. Ctrl+C stops it.", flush=True)
    if keep.notice:
        print(keep.notice, flush=True)
    threading.Thread(target=_get_ready, args=(keep, planner), daemon=True).start()
    if open_browser:
        threading.Thread(target=_open_when_up, args=(server, address), daemon=True).start()
    signal.signal(signal.SIGTERM, signal.default_int_handler)  # stop as by Ctrl+C, so that the data file is shut
    try:
        server.run(sockets=[listening])
    except KeyboardInterrupt:  # told to stop
        print("Conewright has stopped.")


def _get_ready(keep: Keep, planner: Planner) -> None:
    """Fit the evening that will be asked for first, before it is."""
    evening = last_evening(keep)
    try:
        planner.session(evening.tonight, planned=evening.planned)
    finally:
        gc.freeze()
        gc.enable()  # the start is over


def _open_when_up(server: uvicorn.Server, address: str) -> None:
    started = time.monotonic()
    while not server.started and time.monotonic() - started < UNTIL_OPEN_S:
        time.sleep(0.02)
    if server.started:
        webbrowser.open(address)
