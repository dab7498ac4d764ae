"""A page as the list of pages holds it."""

from dataclasses import dataclass
from pathlib import Path

from starlette.routing import Route


@dataclass(frozen=True, slots=True, kw_only=True)
class Page:
    """One page: its name, its address, what answers there, and the folder of its own styles and scripts."""

    name: str
    path: str
    routes: tuple[Route, ...]
    static: Path
