"""The pure parts of start.py, and that what it installs is locked as it should be."""

import ast
import json
import os
import re
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

import conewright
import start

ROOT = Path(start.__file__).parent
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]


# What was asked for


@pytest.mark.parametrize(
    ("words", "asked"),
    [
        ([], ("serve", ())),
        (["--port", "8080"], ("serve", ("--port", "8080"))),
        (["run", "check", "--help"], ("run", ("check", "--help"))),
        (["test", "--long", "-k", "rings"], ("test", ("--long", "-k", "rings"))),
        (["--help"], ("help", ())),
        (["fly"], ("wrong", ("fly",))),
    ],
)
def test_words(words: list[str], asked: tuple[str, tuple[str, ...]]) -> None:
    assert start.split_words(words) == asked


def test_an_unknown_word_is_answered_with_the_usage_and_exit_code_2() -> None:
    done = subprocess.run([sys.executable, start.__file__, "fly"], capture_output=True, text=True, check=False)
    assert done.returncode == 2
    assert "'fly'" in done.stderr
    assert start.USAGE in done.stderr


@pytest.mark.parametrize("version", [(3, 11, 0), (3, 12, 1), (4, 0, 0)])
def test_a_python_that_will_do(version: tuple[int, int, int]) -> None:
    assert start.too_old(version, "python3") == ""


@pytest.mark.parametrize("version", [(3, 10, 14), (2, 7, 18)])
def test_a_python_that_is_too_old(version: tuple[int, int, int]) -> None:
    complaint = start.too_old(version, "/usr/bin/python3")
    assert "3.11 or newer" in complaint
    assert f"/usr/bin/python3 is Python {'.'.join(map(str, version))}" in complaint


def test_an_older_python_can_read_the_file() -> None:
    assert ast.parse(Path(start.__file__).read_text(encoding="utf-8"), feature_version=(3, 8))


def test_only_the_standard_library_is_imported() -> None:
    tree = ast.parse(Path(start.__file__).read_text(encoding="utf-8"))
    named = {alias.name for node in ast.walk(tree) if isinstance(node, ast.Import) for alias in node.names}
    named |= {str(node.module) for node in ast.walk(tree) if isinstance(node, ast.ImportFrom)}
    assert {name.split(".")[0] for name in named} <= sys.stdlib_module_names


# The environment


def test_the_stamp_changes_with_the_lock_the_python_and_the_folder() -> None:
    stamps = {
        start.stamp(b"numpy==2", "3.11", "/here"),
        start.stamp(b"numpy==3", "3.11", "/here"),
        start.stamp(b"numpy==2", "3.12", "/here"),
        start.stamp(b"numpy==2", "3.11", "/there"),
    }
    assert len(stamps) == 4
    assert start.stamp(b"numpy==2", "3.11", "/here") in stamps


@pytest.mark.parametrize(
    ("settings", "fits"),
    [
        ("home = /usr/bin\nversion = 3.12.4\n", True),
        ("version_info = 3.12.4.final.0\n", True),
        ("version = 3.11.9\n", False),
        ("home = /opt/3.12/bin\n", False),
        ("", False),
    ],
)
def test_whether_an_environment_belongs_to_this_python(settings: str, fits: bool) -> None:
    assert start.venv_fits(settings, (3, 12)) is fits


@pytest.mark.parametrize(("version", "can"), [("22.2.2", False), ("22.3", True), ("9.0.1", False), ("26.3.dev0", True)])
def test_whether_a_pip_can_fill_another_environment(version: str, can: bool) -> None:
    assert start.pip_can_reach(version) is can


def test_only_locked_wheels_are_installed() -> None:
    command = start.pip_install(["pip"], Path("requirements.lock"))
    assert command[:2] == ["pip", "install"]
    assert {"--require-hashes", "--no-deps", "--no-compile"} <= set(command)
    assert command[command.index("--only-binary") + 1] == ":all:"
    assert command[command.index("-r") + 1] == "requirements.lock"


def test_where_pip_is_missing_the_package_is_named() -> None:
    assert "python3-venv" in start.pip_package(lambda tool: tool if tool == "apt-get" else None)
    assert "pip" in start.pip_package(lambda tool: None)


@pytest.mark.skipif(os.name == "nt", reason="Windows has no such scripts")
@pytest.mark.parametrize("folder", ["plain", "with a space", "long" * 40])
def test_the_launcher_runs_the_command_line(tmp_path: Path, folder: str) -> None:
    python = tmp_path / folder / "python"
    python.parent.mkdir()
    python.symlink_to(sys.executable)
    (tmp_path / "conewright").mkdir()
    (tmp_path / "conewright" / "__init__.py").touch()
    (tmp_path / "conewright" / "__main__.py").write_text(
        "import sys\ndef main():\n    print(sys.argv[1:])\n    return 3\n"
    )
    script = tmp_path / "launcher"
    script.write_text(start.launcher(python))
    script.chmod(0o755)
    done = subprocess.run(
        [script, "check", "a b"], env={**os.environ, "PYTHONPATH": str(tmp_path)}, stdout=-1, text=True
    )
    assert (done.returncode, done.stdout) == (3, "['check', 'a b']\n")


def test_python_has_its_place_in_an_environment() -> None:
    assert start.python_in(Path("v"), windows=False) == Path("v/bin/python")
    assert start.python_in(Path("v"), windows=True) == Path("v/Scripts/python.exe")


# The browser


def browser_on(path: dict[str, str], files: set[str], environ: dict[str, str]) -> str | None:
    return start.find_browser(environ, path.get, files.__contains__)


def test_the_named_browser_comes_first() -> None:
    path = {"chromium": "/usr/bin/chromium", "/opt/mine": "/opt/mine"}
    assert browser_on(path, set(), {"CONEWRIGHT_BROWSER": "/opt/mine"}) == "/opt/mine"


def test_a_named_browser_that_is_not_there_is_said() -> None:
    with pytest.raises(start.SetupFailed, match="/opt/mine"):
        browser_on({"chromium": "/usr/bin/chromium"}, set(), {"CONEWRIGHT_BROWSER": "/opt/mine"})


def test_a_browser_on_the_path_comes_before_one_among_the_applications() -> None:
    application = "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome"
    assert browser_on({"google-chrome": "/usr/bin/google-chrome"}, {application}, {}) == "/usr/bin/google-chrome"
    assert browser_on({}, {application}, {}) == application


def test_a_browser_among_the_program_files() -> None:
    edge = "C:/Programs (x86)/Microsoft/Edge/Application/msedge.exe"
    environ = {"PROGRAMFILES": "C:/Programs", "PROGRAMFILES(X86)": "C:/Programs (x86)"}
    assert browser_on({}, {edge}, environ) == edge


def test_no_browser() -> None:
    assert browser_on({}, set(), {"CONEWRIGHT_BROWSER": ""}) is None


def test_packages_are_installed_one_at_a_time_after_a_refresh() -> None:
    apt = start.INSTALLERS[0]
    assert start.installation(apt, ("chromium", "poppler-utils"), ("sudo", "-n")) == [
        ["sudo", "-n", "apt-get", "update"],
        ["sudo", "-n", "apt-get", "install", "-y", "chromium"],
        ["sudo", "-n", "apt-get", "install", "-y", "poppler-utils"],
    ]


# The checks


def test_without_node_the_script_checks_say_what_to_install() -> None:
    checks = start.script_checks(None, None, stale=True, scripts=True, tests=("a.test.mjs",))
    assert [check.command for check in checks] == [(), ()]
    assert all("Node 20" in check.why_not for check in checks)


def test_the_script_tools_are_fetched_only_where_they_are_stale() -> None:
    names = [
        [check.name for check in start.script_checks("node", "npm", stale, scripts=True, tests=("a.test.mjs",))]
        for stale in (True, False)
    ]
    assert names == [["script tools", "script types", "script tests"], ["script types", "script tests"]]


def test_without_scripts_nothing_is_fetched() -> None:
    checks = start.script_checks("node", "npm", stale=True, scripts=False, tests=())
    assert [check.command for check in checks] == [(), ()]


def test_pytest_runs_last_and_gets_its_words() -> None:
    last = start.list_checks(ROOT, ("--long", "-k", "rings"))[-1]
    assert last.command[1:] == ("-m", "pytest", "--long", "-k", "rings")


def test_a_check_that_fails_is_told_with_its_last_line(capsys: pytest.CaptureFixture[str]) -> None:
    command = (sys.executable, "-c", "print('one'); print('two'); raise SystemExit(4)")
    result = start.run_check(start.Check("lint", command), dict(os.environ))
    assert (result.code, result.last_line) == (4, "two")
    assert capsys.readouterr().out.splitlines() == ["", "== lint", "one", "two"]


def test_a_check_that_cannot_run_does_not_run() -> None:
    assert start.run_check(start.Check("lint", (), "no reason"), {}).code is None


def test_the_summary_ends_with_the_closing_line_of_the_last_check() -> None:
    lint = start.Result(start.Check("lint"), 1, 0.25, "Found 2 errors.")
    scripts = start.Result(start.Check("script types", why_not="no Node"), None)
    trials = start.Result(start.Check("pytest"), 0, 61.0, "9 passed in 60.9s")
    assert start.summary((lint, scripts, trials)).splitlines() == [
        "",
        "lint          FAILED      0.2 s",
        "script types  not run  no Node",
        "pytest        passed     61.0 s",
        "",
        "9 passed in 60.9s",
    ]


# What is locked


def locked(name: str) -> dict[str, str]:
    """Read the names and versions of a lock file."""
    text = (ROOT / name).read_text(encoding="utf-8")
    return dict(re.findall(r"^([\w.-]+)==([\w.]+)", text, re.MULTILINE))


@pytest.mark.parametrize("name", [start.RUNTIME_LOCK, start.TEST_LOCK])
def test_every_locked_package_has_a_hash_and_no_address(name: str) -> None:
    text = (ROOT / name).read_text(encoding="utf-8")
    parts = re.split(r"^(?=[\w.-]+==)", text, flags=re.MULTILINE)[1:]
    assert len(parts) == len(locked(name))
    assert all("--hash=sha256:" in part for part in parts)
    assert "://" not in text


def test_the_locks_hold_what_the_project_asks_for() -> None:
    runtime, trials = locked(start.RUNTIME_LOCK), locked(start.TEST_LOCK)
    asked = dict(line.split("==") for line in PROJECT["dependencies"])
    asked_for_tests = dict(line.split("==") for line in PROJECT["optional-dependencies"]["dev"])
    assert asked.items() <= runtime.items() <= trials.items()
    assert asked_for_tests.items() <= trials.items()


def test_the_script_tools_are_locked_without_an_address() -> None:
    text = (ROOT / "package-lock.json").read_text(encoding="utf-8")
    asked = json.loads((ROOT / "package.json").read_text(encoding="utf-8"))["devDependencies"]
    packages = json.loads(text)["packages"]
    assert {name: packages[f"node_modules/{name}"]["version"] for name in asked} == asked
    assert all(part.get("integrity") for name, part in packages.items() if name)
    assert "://" not in text


def test_the_version_is_the_same_everywhere() -> None:
    assert conewright.__version__ == PROJECT["version"]
