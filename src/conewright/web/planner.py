"""Fits evenings for the pages, remembers those it has fitted, and makes ready what may be asked for next.

It must not know requests or pages.
"""

from collections import OrderedDict
from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor
from dataclasses import dataclass, field, replace
from threading import Lock

from conewright.fit.fit import fit, refit
from conewright.fit.memory import Memory
from conewright.model.exercise import Exercise
from conewright.model.figures import Figures
from conewright.model.session import Session, Tonight
from conewright.store.shelf import file_name

MOST_SESSIONS = 20
MOST_TRIALS = 500  # some 45 kB each
NEAR = (1, -1, 2, -2)  # what may be asked for next, the likeliest first

Plan = tuple[Tonight, int]  # what is asked tonight, and for how many it was planned


@dataclass(slots=True, kw_only=True)
class Planner:
    """One at a time; what is made ready in the background gives way to what is asked."""

    load_shelf: Callable[[], tuple[Exercise, ...]]
    load_figures: Callable[[], Figures]
    load_texts: Callable[[], tuple[tuple[str, str], ...]]
    texts: dict[str, str] = field(default_factory=dict)
    shelf: tuple[Exercise, ...] = ()
    known_figures: Figures | None = None
    memory: Memory = field(default_factory=Memory)
    sessions: OrderedDict[Plan, Session] = field(default_factory=OrderedDict)
    lock: Lock = field(default_factory=Lock)
    aside: ThreadPoolExecutor = field(default_factory=lambda: ThreadPoolExecutor(1, "ready"))
    waiting: tuple[Future[object], ...] = ()

    def figures(self) -> Figures:
        """The figures, read once."""
        if self.known_figures is None:
            self.known_figures = self.load_figures()
        return self.known_figures

    def text(self, exercise: Exercise) -> str:
        """The text of an exercise of the shelf, as it was written; empty for any other."""
        self.texts = self.texts or dict(self.load_texts())
        return self.texts.get(file_name(exercise.name), "")

    def aims(self) -> tuple[str, ...]:
        """What the exercises of the shelf can be worked on, each once, in the order of the letters."""
        self.shelf = self.shelf or self.load_shelf()
        return tuple(sorted({aim for exercise in self.shelf for aim in exercise.aims}))

    def session(self, tonight: Tonight, *, planned: int) -> Session:
        """The evening planned for `planned` children, fitted again to who is here tonight."""
        with self.lock:
            return self._session(tonight, planned)

    def know(self, tonight: Tonight, planned: int, fitted: Session) -> None:
        """Take over an evening that was fitted before."""
        with self.lock:
            self.sessions[(tonight, planned)] = fitted

    def make_ready(
        self, tonight: Tonight, *, planned: int, then: Callable[[Session], object], last: Callable[[], object]
    ) -> None:
        """Fit the evening for one and two more and fewer in the background.

        `then` is done with each, and `last` when all of them are there; both give way where something else is asked.
        """
        for future in self.waiting:
            future.cancel()
        near = tuple(replace(tonight, here=tonight.here + more) for more in NEAR if tonight.here + more > 0)
        ready = tuple(self.aside.submit(self._ready, other, planned, then) for other in near)
        self.waiting = (*ready, self.aside.submit(last))

    def close(self) -> None:
        """Drop what is not yet made ready."""
        self.aside.shutdown(wait=False, cancel_futures=True)

    def _ready(self, tonight: Tonight, planned: int, then: Callable[[Session], object]) -> object:
        return then(self.session(tonight, planned=planned))

    def _session(self, tonight: Tonight, planned: int) -> Session:
        plan = (tonight, planned)
        if plan not in self.sessions:
            self.sessions[plan] = self._fitted(tonight, planned)
            while len(self.sessions) > MOST_SESSIONS:
                self.sessions.popitem(last=False)
        self.sessions.move_to_end(plan)
        return self.sessions[plan]

    def _fitted(self, tonight: Tonight, planned: int) -> Session:
        self.shelf = self.shelf or self.load_shelf()
        figures = self.figures()
        if len(self.memory.trials) > MOST_TRIALS:
            self.memory = Memory()
        if tonight.here == planned:
            return fit(tonight, self.shelf, figures=figures, memory=self.memory)
        before = self._session(replace(tonight, here=planned, keepers=min(tonight.keepers, planned)), planned)
        return refit(before, tonight, self.shelf, figures=figures, memory=self.memory)
