"""The server as a process: it says where it is, answers this machine only, stops when told, and names what is wrong."""

import os
import re
import signal
import socket
import subprocess
import sys
import time
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
FIRST_PAGE_S = 6.0  # far above what it takes, for a machine that is busy
MOST_MB = 150


@contextmanager
def started(*words: str, **environ: str) -> Iterator[tuple[subprocess.Popen[str], str, str]]:
    """A running server with its address and all it has said at the start."""
    process = subprocess.Popen(
        [sys.executable, "-m", "conewright", "serve", "--no-browser", *words],
        env={**os.environ, "PYTHONPATH": str(ROOT / "src"), "PYTHONUNBUFFERED": "1", **environ},
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
    )
    assert process.stdout is not None
    said = process.stdout.readline() + process.stdout.readline()
    found = re.search(r"http://127\.0\.0\.1:\d+", said)
    try:
        yield process, found[0] if found else "", said
    finally:
        process.kill()
        process.wait(timeout=20)
        process.stdout.close()


def get(address: str) -> str:
    with urllib.request.urlopen(address, timeout=20) as answer:
        return str(answer.read().decode())


def stopped(process: subprocess.Popen[str], sign: int) -> tuple[int, str]:
    process.send_signal(sign)
    out, _ = process.communicate(timeout=20)
    return process.returncode, out


@pytest.mark.parametrize("sign", [signal.SIGINT, signal.SIGTERM])
def test_it_answers_soon_in_little_memory_and_stops_when_told(tmp_path: Path, sign: int) -> None:
    began = time.monotonic()
    with started("--port", "0", "--data", str(tmp_path / "club.db")) as (process, address, _):
        assert "Tonight" in get(f"{address}/tonight")
        assert time.monotonic() - began < FIRST_PAGE_S
        status = Path(f"/proc/{process.pid}/status")
        if status.exists():
            held = next(line for line in status.read_text().splitlines() if line.startswith("VmRSS"))
            assert int(held.split()[1]) / 1024 < MOST_MB
        code, out = stopped(process, sign)
    assert code == 0
    assert "Traceback" not in out
    assert os.listdir(tmp_path) == ["club.db"]


def test_other_machines_are_not_answered(tmp_path: Path) -> None:
    with started("--port", "0", "--data", str(tmp_path / "club.db")) as (_, address, _):
        port = int(address.rsplit(":", 1)[1])
        for other in ("127.0.0.2", "::1"):
            with pytest.raises(OSError):  # noqa: PT011 - how it is refused differs between systems
                socket.create_connection((other, port), timeout=2)
        socket.create_connection(("127.0.0.1", port), timeout=2).close()


def test_a_port_that_is_taken_is_named(tmp_path: Path) -> None:
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = str(taken.getsockname()[1])
        code, err = refused("--port", port, "--data", str(tmp_path / "club.db"))
    assert code == 2
    assert f"Port {port} is taken" in err
    assert "--port" in err


def refused(*words: str, **environ: str) -> tuple[int, str]:
    done = subprocess.run(
        [sys.executable, "-m", "conewright", "serve", "--no-browser", *words],
        env={**os.environ, "PYTHONPATH": str(ROOT / "src"), **environ},
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )
    assert "Traceback" not in done.stderr
    assert len(done.stderr.splitlines()) == 1
    return done.returncode, done.stderr


@pytest.mark.parametrize("content", [b"", b"not a database at all", b"SQLite format 3\x00" + b"\x00" * 50])
def test_a_file_that_cannot_be_used_is_named_and_left_alone(tmp_path: Path, content: bytes) -> None:
    path = tmp_path / "club.db"
    path.write_bytes(content)
    code, err = refused("--data", str(path))
    assert code == 2
    assert str(path) in err
    assert "--data OTHER.db" in err
    assert path.read_bytes() == content


def test_a_read_only_file_is_served_and_said(tmp_path: Path) -> None:
    path = tmp_path / "club.db"
    with started("--port", "0", "--data", str(path)) as (process, _, _):
        stopped(process, signal.SIGINT)
    path.chmod(0o444)
    with started("--port", "0", "--data", str(path)) as (process, address, _):
        assert "Nothing is remembered" in get(f"{address}/tonight")
        assert process.stdout is not None
        assert "Nothing is remembered" in process.stdout.readline()


def test_the_variable_names_the_folder(tmp_path: Path) -> None:
    folder = tmp_path / "mine"
    with started("--port", "0", CONEWRIGHT_DATA=str(folder)) as (process, address, _):
        get(f"{address}/tonight")
        stopped(process, signal.SIGINT)
    assert (folder / "conewright.db").is_file()
