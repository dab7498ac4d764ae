"""Measures how long Conewright takes to start and to answer, and how much memory the server holds.

Run it from the folder of the project, in its environment: python bench/start.py
"""

import os
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import partial
from pathlib import Path
from urllib.error import URLError
from urllib.parse import urlencode
from urllib.request import Request, urlopen

ROOT = Path(__file__).parents[1]
ENVIRON = {**os.environ, "PYTHONPATH": str(ROOT / "src")}
RUNS = 5
PORT = 8795
COUNTS = (14, 15, 14, 13, 12, 11, 12, 13)
LOOKING_S = 0.6  # how long somebody looks at the page before the next press


def command_s(*words: str) -> float:
    """Seconds a whole command takes, the median of some runs."""
    return statistics.median(_seconds(lambda: _run(words)) for _ in range(RUNS))


def _run(words: tuple[str, ...]) -> None:
    subprocess.run(
        [sys.executable, "-m", "conewright", *words], env=ENVIRON, stdout=subprocess.DEVNULL, check=True, cwd=ROOT
    )


def _seconds(act: Callable[[], object]) -> float:
    began = time.perf_counter()
    act()
    return time.perf_counter() - began


@contextmanager
def server(data: Path) -> Iterator[subprocess.Popen[bytes]]:
    """A running server, stopped at the end."""
    words = ("serve", "--no-browser", "--port", str(PORT), "--data", str(data))
    running = subprocess.Popen(
        [sys.executable, "-m", "conewright", *words], env=ENVIRON, stdout=subprocess.DEVNULL, cwd=ROOT
    )
    try:
        yield running
    finally:
        running.terminate()
        running.wait(timeout=20)


def first_page() -> bytes:
    """Ask for the page until there is one."""
    while True:
        try:
            return page("/tonight")
        except URLError:
            time.sleep(0.005)


def page(path: str, **answers: object) -> bytes:
    """One page; with answers, the one that comes after they are sent."""
    body = urlencode(answers).encode() if answers else None
    with urlopen(Request(f"http://127.0.0.1:{PORT}{path}", data=body), timeout=30) as answer:
        return bytes(answer.read())


def resident_mb(process: subprocess.Popen[bytes]) -> float | None:
    """Memory held, in MB; None where the system does not say."""
    status = Path(f"/proc/{process.pid}/status")
    if not status.exists():
        return None
    line = next(line for line in status.read_text().splitlines() if line.startswith("VmRSS"))
    return int(line.split()[1]) / 1024


def main() -> None:
    """Measure and print."""
    print(f"--help                            {command_s('--help'):6.2f} s")
    print(f"fit, 13 children                  {command_s('fit', '--here', '13'):6.2f} s")
    with tempfile.TemporaryDirectory() as folder:
        data = Path(folder) / "club.db"
        for name in ("first start to the first page", "second start to the first page"):
            began = time.perf_counter()
            with server(data) as running:
                first_page()
                print(f"{name:<32}  {time.perf_counter() - began:6.2f} s")
                waits = []
                for count in COUNTS:
                    time.sleep(LOOKING_S)
                    waits.append(_seconds(partial(page, "/tonight", here=count, block=2)))
                page("/tonight/sheet.pdf?here=13")
                memory = resident_mb(running)
        print(f"one more or one fewer, slowest    {max(waits):6.2f} s")
        print(f"held after that and a sheet       {memory:6.0f} MB" if memory else "memory is not told here")


if __name__ == "__main__":
    main()
