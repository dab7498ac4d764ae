"""What every page of one run shares; must not know the pages' contents."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime
from typing import NamedTuple

from conewright.store.keep import Keep
from conewright.web.planner import Planner


class PageName(NamedTuple):
    """A page as the head of every page names it."""

    words: str
    path: str


@dataclass(frozen=True, slots=True, kw_only=True)
class State:
    """The data file, the one who plans, the clock on the wall, and the pages there are."""

    keep: Keep
    planner: Planner
    now: Callable[[], datetime]
    pages: tuple[PageName, ...]
