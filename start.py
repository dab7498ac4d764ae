"""Starts Conewright from a fresh copy of its folder, with nothing on the machine but Python 3.11 or newer.

It makes an environment in `.venv`, fills it from the locked requirements, and hands over to the package; `test` runs
every check the same way for people and for machines. Standard library only. It must not know what the package does:
it names the package, its sources and its checks, and nothing inside them. An older Python must still be able to read
this file, so that it can say what is wrong: nothing newer than 3.8 in its grammar.
"""

from __future__ import annotations

import hashlib
import os
import re
import shutil
import subprocess
import sys
import time
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from typing import NamedTuple

ROOT = Path(__file__).resolve().parent
NEEDED = (3, 11)
ON_WINDOWS = os.name == "nt"
RUNTIME_LOCK = "requirements.lock"
TEST_LOCK = "requirements-dev.lock"

USAGE = """\
python3 start.py [OPTIONS]              start Conewright and open it in the browser
python3 start.py run WORD ...           run one command of Conewright; `run --help` lists them
python3 start.py test [--long] [...]    run every check; what follows goes to pytest, --long runs the full counts
"""


class SetupFailed(Exception):
    """Conewright cannot be made ready on this machine; the message says what to do."""


# What was asked for


def split_words(words: Sequence[str]) -> tuple[str, tuple[str, ...]]:
    """Tell what was asked for: one of serve, run, test, help and wrong, with the words that go along."""
    if not words:
        return "serve", ()
    first, rest = words[0], tuple(words[1:])
    if first in ("-h", "--help"):
        return "help", ()
    if first.startswith("-"):
        return "serve", tuple(words)
    return (first, rest) if first in ("run", "test") else ("wrong", (first,))


def too_old(version: Sequence[int], python: str) -> str:
    """Say what to do where this Python is too old; empty where it will do."""
    if tuple(version[:2]) >= NEEDED:
        return ""
    have, need = ".".join(map(str, version[:3])), ".".join(map(str, NEEDED))
    return (
        f"Conewright needs Python {need} or newer; {python} is Python {have}.\n"
        f"Install a newer one and name it, for example: python{need} start.py"
    )


# The environment in .venv


def python_in(venv: Path, windows: bool = ON_WINDOWS) -> Path:
    """Name the Python of an environment."""
    return venv / "Scripts" / "python.exe" if windows else venv / "bin" / "python"


def stamp(lock: bytes, version: str, place: str) -> str:
    """Name a set-up by the hash of its lock file, the Python and the folder, which the launcher holds."""
    return hashlib.sha256(b"\0".join((lock, version.encode(), place.encode()))).hexdigest()


def venv_fits(settings: str, version: Sequence[int]) -> bool:
    """Tell from the text of its pyvenv.cfg whether an environment belongs to this version of Python."""
    found = re.search(r"^version\w*\s*=\s*(\d+)\.(\d+)", settings, re.MULTILINE)
    return found is not None and tuple(map(int, found.groups())) == tuple(version[:2])


def pip_can_reach(version: str) -> bool:
    """Tell whether this pip can install into another environment; it can from 22.3 on."""
    return tuple(map(int, re.findall(r"\d+", version)[:2])) >= (22, 3)


def pip_install(pip: Sequence[str], lock: Path) -> list[str]:
    """Spell out the installation of a lock file: only what is locked, nothing built, nothing compiled beforehand."""
    return [
        *(*pip, "install", "-qq", "--no-input", "--no-user", "--disable-pip-version-check"),
        *("--require-hashes", "--only-binary", ":all:", "--no-deps", "--no-compile", "-r", str(lock)),
    ]


def pip_package(which: Callable[[str], str | None]) -> str:
    """Name what to install where Python came without pip."""
    if which("apt-get"):
        return "python3-venv (sudo apt-get install python3-venv)"
    if which("dnf"):
        return "python3-pip (sudo dnf install python3-pip)"
    if which("pacman"):
        return "python-pip (sudo pacman -S python-pip)"
    return "pip for this Python"


def launcher(python: Path) -> str:
    """Write the script `conewright`; a path that the system cannot take after `#!` goes by way of the shell."""
    first = f"#!{python}"
    if " " in first or len(first) > 120:
        first = f"#!/bin/sh\n'''exec' \"{python}\" \"$0\" \"$@\"\n' '''"
    return f"{first}\nimport sys\n\nfrom conewright.__main__ import main\n\nsys.exit(main())\n"


def set_up(root: Path, lock: str) -> None:
    """Bring `.venv` to what a lock file asks for; costs next to nothing where nothing has changed."""
    venv = root / ".venv"
    mark = venv / f"{lock}.stamp"
    wanted = stamp((root / lock).read_bytes(), sys.version, str(root))
    if python_in(venv).exists() and text_of(mark) == wanted:
        return
    print(f"Making Conewright ready by {lock}. This happens once, and after a change of it.", flush=True)
    if not (python_in(venv).exists() and venv_fits(text_of(venv / "pyvenv.cfg"), sys.version_info[:2])):
        make_venv(venv)
    mark.unlink(missing_ok=True)
    if subprocess.call(pip_install(pip_for(venv), root / lock)) != 0:
        raise SetupFailed("The packages could not be installed; pip's own words are above. Is there a network?")
    link_package(root, venv)
    mark.write_text(wanted, encoding="utf-8")


def text_of(path: Path) -> str:
    """Read a small text; empty where there is none."""
    return path.read_text(encoding="utf-8") if path.exists() else ""


def make_venv(venv: Path) -> None:
    """Make the environment without pip in it, which is the fast way."""
    if subprocess.call([sys.executable, "-m", "venv", "--clear", "--without-pip", str(venv)]) != 0:
        raise SetupFailed(f"Python could not make the environment {venv}. Install {pip_package(shutil.which)}.")


def pip_for(venv: Path) -> list[str]:
    """Find a pip that can fill the environment: the machine's own, else the one that Python carries along."""
    from importlib import metadata  # takes longer than all the rest of a later start

    python = str(python_in(venv))
    try:
        if pip_can_reach(metadata.version("pip")):
            return [sys.executable, "-m", "pip", "--python", python]
    except metadata.PackageNotFoundError:
        pass
    carried = subprocess.run([python, "-m", "ensurepip"], capture_output=True, check=False)
    if carried.returncode != 0:
        raise SetupFailed(f"This Python came without pip. Install {pip_package(shutil.which)} and start again.")
    return [python, "-m", "pip"]


def link_package(root: Path, venv: Path) -> None:
    """Make the package importable where it lies, and write its launcher: nothing is built."""
    python = python_in(venv)
    ask = [str(python), "-c", "import sysconfig; print(sysconfig.get_path('purelib'))"]
    packages = Path(subprocess.run(ask, capture_output=True, text=True, check=True).stdout.strip())
    # By a relative path, since the encoding of such a file differs between systems and folders have all sorts of names.
    (packages / "conewright.pth").write_text(f"{os.path.relpath(root / 'src', packages)}\n", encoding="utf-8")
    script = python.with_name("conewright.py" if ON_WINDOWS else "conewright")
    script.write_text(launcher(python), encoding="utf-8")
    script.chmod(0o755)


# Handing over


def hand_over(command: Sequence[str]) -> int:
    """Become the command where the system can; else run it and give back its exit code."""
    sys.stdout.flush()
    if not ON_WINDOWS:
        os.execve(command[0], list(command), os.environ)
    return subprocess.call(command)


# What the checks need from the machine


class Installer(NamedTuple):
    """A system's package manager: its words, and its names for a browser and for the tool that reads PDF pages."""

    tool: str
    refresh: tuple[str, ...]
    install: tuple[str, ...]
    browser: str
    paper: str
    as_root: bool = True


INSTALLERS = (
    Installer("apt-get", ("update",), ("install", "-y"), "chromium", "poppler-utils"),
    Installer("dnf", (), ("install", "-y"), "chromium", "poppler-utils"),
    Installer("pacman", (), ("-Sy", "--noconfirm"), "chromium", "poppler"),
    Installer("brew", (), ("install",), "google-chrome", "poppler", as_root=False),
    Installer("winget", (), ("install", "--exact", "--id"), "Google.Chrome", "", as_root=False),
)
BROWSER_WORDS = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome", "microsoft-edge")
BROWSER_APPLICATIONS = ("Google Chrome", "Chromium", "Microsoft Edge")
BROWSER_PROGRAMS = ("Google/Chrome/Application/chrome.exe", "Microsoft/Edge/Application/msedge.exe")
PROGRAM_FOLDERS = ("PROGRAMFILES", "PROGRAMFILES(X86)", "LOCALAPPDATA")


def browser_places(environ: Mapping[str, str]) -> tuple[str, ...]:
    """List where browsers lie on systems that do not put programs on the path."""
    applications = [f"/Applications/{name}.app/Contents/MacOS/{name}" for name in BROWSER_APPLICATIONS]
    folders = [environ[name] for name in PROGRAM_FOLDERS if environ.get(name)]
    return (*applications, *(f"{folder}/{program}" for program in BROWSER_PROGRAMS for folder in folders))


def find_browser(
    environ: Mapping[str, str] = os.environ,
    which: Callable[[str], str | None] = shutil.which,
    is_file: Callable[[str], bool] = os.path.isfile,
) -> str | None:
    """Find a browser for the tests: the one that CONEWRIGHT_BROWSER names, else one in the usual places."""
    named = environ.get("CONEWRIGHT_BROWSER")
    if named:
        if not which(named):
            raise SetupFailed(f"CONEWRIGHT_BROWSER names {named}, and no program is there.")
        return which(named)
    on_path = (which(word) for word in BROWSER_WORDS)
    in_places = (place for place in browser_places(environ) if is_file(place))
    return next((found for found in (*on_path, *in_places) if found), None)


def installation(installer: Installer, packages: Sequence[str], before: Sequence[str]) -> list[list[str]]:
    """Spell out how packages are installed, one at a time, so that one which is not to be had stops no other."""
    refresh = [[*before, installer.tool, *installer.refresh]] if installer.refresh else []
    return refresh + [[*before, installer.tool, *installer.install, package] for package in packages]


def root_words() -> list[str] | None:
    """Say what goes before a command that needs the rights of root; None where they are not to be had."""
    if not hasattr(os, "geteuid") or os.geteuid() == 0:
        return []
    if shutil.which("sudo") and subprocess.call(["sudo", "-n", "true"], stderr=subprocess.DEVNULL) == 0:
        return ["sudo", "-n"]
    return None


def install_tools(browser: bool, paper: bool) -> None:
    """Install a browser and the tool that reads PDF pages by the system's package manager, where that can be done."""
    installer = next((one for one in INSTALLERS if shutil.which(one.tool)), None)
    before = root_words() if installer and installer.as_root else []
    if installer is None or before is None:
        return
    packages = [name for name, wanted in ((installer.browser, browser), (installer.paper, paper)) if wanted and name]
    environ = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
    for command in installation(installer, packages, before):
        print(f"Installing for the tests: {' '.join(command)}", flush=True)
        done = subprocess.run(command, env=environ, stdin=subprocess.DEVNULL, capture_output=True, check=False)
        if done.returncode != 0:
            print((done.stdout + done.stderr).decode(errors="replace")[-600:])


def tools_for_tests() -> str | None:
    """Find the browser for the tests, after installing what is missing; say plainly what stays missing."""
    if find_browser() is None or shutil.which("pdftoppm") is None:
        install_tools(browser=find_browser() is None, paper=shutil.which("pdftoppm") is None)
    if shutil.which("pdftoppm") is None:
        print("Missing: pdftoppm, of the package poppler-utils or poppler. Tests that look at PDF pages cannot run.")
    browser = find_browser()
    if browser is None:
        print("Missing: a browser. Install Chromium, or name one by CONEWRIGHT_BROWSER. Browser tests cannot run.")
    return browser


# The checks


class Check(NamedTuple):
    """One check; where it cannot run, why not."""

    name: str
    command: tuple[str, ...] = ()
    why_not: str = ""


class Result(NamedTuple):
    """How a check ended: its exit code (None where it did not run), seconds, and the last line that it printed."""

    check: Check
    code: int | None
    seconds: float = 0.0
    last_line: str = ""


NO_NODE = "Node and npm are not here; install Node 20 or newer (apt-get install nodejs npm) to check the scripts"


def python_checks(python: str) -> tuple[Check, ...]:
    """List the checks of the Python sources."""
    return (
        Check("format", (python, "-m", "ruff", "format", "--check", ".")),
        Check("lint", (python, "-m", "ruff", "check", ".")),
        Check("types", (python, "-m", "mypy", "--strict", "src", "start.py")),
    )


def script_checks(node: str | None, npm: str | None, stale: bool, scripts: bool, tests: Sequence[str]) -> list[Check]:
    """List the checks of the scripts in the pages; the first one fetches the type checker where it is stale."""
    if node is None or npm is None:
        return [Check("script types", why_not=NO_NODE), Check("script tests", why_not=NO_NODE)]
    fetch = Check("script tools", (npm, "ci", "--ignore-scripts", "--no-audit", "--no-fund", "--loglevel=error"))
    types = Check("script types", (node, "node_modules/typescript/bin/tsc", "--project", "tsconfig.json"))
    trials = Check("script tests", (node, "--test", "--test-reporter=spec", *tests))
    return [
        *([fetch] if scripts and stale else []),
        types if scripts else Check("script types", why_not="there is no script yet"),
        trials if tests else Check("script tests", why_not="there is no test yet"),
    ]


def list_checks(root: Path, pytest_words: Sequence[str]) -> tuple[Check, ...]:
    """List every check in the order they run; pytest comes last, and its closing line with it."""
    python = str(python_in(root / ".venv"))
    scripts = any((root / "src" / "conewright" / "web").rglob("*.js"))
    tests = sorted(str(path.relative_to(root)) for path in root.glob("tests/js/*.test.mjs"))
    fetched, locked = root / "node_modules" / ".package-lock.json", root / "package-lock.json"
    stale = not fetched.exists() or fetched.stat().st_mtime < locked.stat().st_mtime
    return (
        *python_checks(python),
        *script_checks(shutil.which("node"), shutil.which("npm"), stale, scripts, tests),
        Check("pytest", (python, "-m", "pytest", *pytest_words)),
    )


def run_check(check: Check, environ: Mapping[str, str]) -> Result:
    """Run one check, pass on what it prints as it comes, and keep its last line."""
    if check.why_not:
        return Result(check, None)
    print(f"\n== {check.name}", flush=True)
    began, tail = time.monotonic(), b""
    with subprocess.Popen(
        check.command, cwd=ROOT, env=environ, stdout=subprocess.PIPE, stderr=subprocess.STDOUT
    ) as process:
        assert process.stdout is not None
        while chunk := os.read(process.stdout.fileno(), 65536):
            sys.stdout.buffer.write(chunk)
            sys.stdout.flush()
            tail = (tail + chunk)[-4000:]
    lines = tail.decode(errors="replace").strip().splitlines() or [""]
    return Result(check, process.returncode, time.monotonic() - began, lines[-1])


def summary(results: Sequence[Result]) -> str:
    """Put the checks into one line each, and the closing line of the last one below."""
    states = {None: "not run", 0: "passed"}
    rows = [
        f"{result.check.name:<14}{states.get(result.code, 'FAILED'):<9}"
        + (result.check.why_not or f"{result.seconds:6.1f} s")
        for result in results
    ]
    return "\n".join(("", *rows, "", results[-1].last_line))


def run_checks(pytest_words: Sequence[str]) -> int:
    """Run every check, whatever the ones before it said. Exit code 1 where one failed."""
    set_up(ROOT, TEST_LOCK)
    browser = tools_for_tests()
    environ = {**os.environ, "CONEWRIGHT_BROWSER": browser or ""}
    if sys.stdout.isatty() and "NO_COLOR" not in environ:
        environ["FORCE_COLOR"] = "1"
    results = [run_check(check, environ) for check in list_checks(ROOT, pytest_words)]
    print(summary(results), flush=True)
    return 1 if any(result.code for result in results) else 0


def main(words: Sequence[str]) -> int:
    """Do what the words ask for and give back the exit code."""
    complaint = too_old(sys.version_info[:3], sys.executable)
    if complaint:
        print(complaint, file=sys.stderr)
        return 1
    asked, rest = split_words(words)
    if asked == "help":
        print(USAGE, end="")
        return 0
    if asked == "wrong":
        print(f"There is no word {rest[0]!r}.\n{USAGE}", end="", file=sys.stderr)
        return 2
    try:
        if asked == "test":
            return run_checks(rest)
        set_up(ROOT, RUNTIME_LOCK)
        word = ("serve",) if asked == "serve" else ()
        return hand_over((str(python_in(ROOT / ".venv")), "-m", "conewright", *word, *rest))
    except SetupFailed as failure:
        print(failure, file=sys.stderr)
        return 1
    except KeyboardInterrupt:
        return 130


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
