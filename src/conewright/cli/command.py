"""A command as the list of commands holds it; must not know any of them."""

from argparse import ArgumentParser, Namespace
from collections.abc import Callable
from dataclasses import dataclass
from typing import Protocol


class Serve(Protocol):
    """Serves the pages until told to stop, and gives the exit code. It is handed in: the pages are another shell."""

    def __call__(self, *, data: str | None, port: int | None, open_browser: bool) -> int:
        """Serve."""
        ...


@dataclass(frozen=True, slots=True, kw_only=True)
class Command:
    """One word of the command line: what it does, an example, its words, and what runs it and gives the exit code."""

    name: str
    does: str
    example: str
    add_words: Callable[[ArgumentParser], None]
    run: Callable[[Namespace], int]
