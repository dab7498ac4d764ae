"""The rings of the package: an import goes inward, never outward and never to a neighbour in the same ring."""

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

SOURCES = Path(__file__).parents[1] / "src" / "conewright"
RINGS = (  # innermost first; __init__ and __main__ stand for the package itself and for running it
    {"model"},
    {"notation", "rehearsal", "drawing"},
    {"checks"},
    {"fit"},
    {"data"},
    {"store"},
    {"__init__"},
    {"web", "cli"},
    {"__main__"},
)
RING_OF = {name: number for number, names in enumerate(RINGS) for name in names}
SHELLS = {"web", "cli", "__main__"}
OUTER_WORLD = {"asyncio", "http", "logging", "os", "pathlib", "platformdirs", "random", "secrets", "shutil"}
OUTER_WORLD |= {"socket", "sqlite3", "subprocess", "sys", "tempfile", "threading", "time", "urllib", "uuid"}


def imported(node: ast.Import | ast.ImportFrom, module: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    """Give the full dotted name of everything that an import names, as parts."""
    if isinstance(node, ast.Import):
        yield from (tuple(alias.name.split(".")) for alias in node.names)
        return
    base = ("conewright", *module)[: -node.level] if node.level else ()
    start = (*base, *(node.module.split(".") if node.module else ()))
    yield from ((*start, alias.name) for alias in node.names)


def offences(source: str, module: tuple[str, ...]) -> list[str]:
    """List the imports that a module must not have; ("model", "figures") is the module conewright.model.figures."""
    home, tree, found = module[0], ast.parse(source), []
    inside = {
        id(n) for f in ast.walk(tree) if isinstance(f, ast.FunctionDef | ast.AsyncFunctionDef) for n in ast.walk(f)
    }
    for node in (node for node in ast.walk(tree) if isinstance(node, ast.Import | ast.ImportFrom)):
        if id(node) in inside and home not in SHELLS:
            found.append(f"line {node.lineno}: import inside a function")
        for first, *rest in imported(node, module):
            goal = rest[0] if rest and rest[0] in RING_OF else "__init__"
            if first == "conewright" and goal != home and RING_OF[goal] >= RING_OF[home]:
                found.append(f"line {node.lineno}: {home} must not import {goal}")
            if first in OUTER_WORLD and RING_OF[home] < RING_OF["data"]:
                found.append(f"line {node.lineno}: {home} is pure and must not import {first}")
    return found


def modules() -> list[tuple[str, ...]]:
    return sorted(path.relative_to(SOURCES).with_suffix("").parts for path in SOURCES.rglob("*.py"))


@pytest.mark.parametrize("module", modules(), ids=".".join)
def test_imports_go_inward(module: tuple[str, ...]) -> None:
    assert offences(SOURCES.joinpath(*module).with_suffix(".py").read_text(encoding="utf-8"), module) == []


@pytest.mark.parametrize(
    ("module", "line"),
    [
        ("model.figures", "from conewright.checks import queues"),
        ("notation.reader", "from conewright.drawing.scene import Scene"),
        ("notation.reader", "from ..drawing import scene"),
        ("drawing.__init__", "from ..notation import reader"),
        ("checks.queues", "import conewright.fit.tonight"),
        ("checks.queues", "from conewright import read"),
        ("checks.queues", "from conewright import web"),
        ("fit.tonight", "from conewright.data import figures"),
        ("web.server", "from conewright.cli import words"),
        ("model.figures", "import os.path"),
        ("rehearsal.rolling", "from random import Random"),
        ("store.shelf", "def later():\n    import json"),
    ],
)
def test_a_wrong_import_is_found(module: str, line: str) -> None:
    assert len(offences(line, tuple(module.split(".")))) == 1


@pytest.mark.parametrize(
    ("module", "line"),
    [
        ("checks.queues", "from conewright.rehearsal.rolling import roll"),
        ("checks.queues", "from conewright import model"),
        ("checks.queues", "from . import lanes"),
        ("checks.__init__", "from .queues import check"),
        ("store.shelf", "import os\nfrom ..data import figures"),
        ("__init__", "from .fit import fit"),
        ("__main__", "from conewright.cli import main"),
        ("cli.film", "def film():\n    import os\n    from conewright import draw"),
    ],
)
def test_a_right_import_passes(module: str, line: str) -> None:
    assert offences(line, tuple(module.split("."))) == []
