"""Measures how long an evening takes to fit, cold and warm, and to fit again for one child more.

Run it from the folder of the project, in its environment: python bench/evening.py [--json]. Each row is the median of
some runs in one process; the ratio is to a fixed loop of plain Python timed in the same run, so that machines compare.
"""

import json
import statistics
import sys
import time
from collections.abc import Callable
from dataclasses import replace

from conewright.fit.fit import fit, refit
from conewright.fit.memory import Memory
from conewright.model.session import Session, Tonight
from conewright.store.figures import load_figures
from conewright.store.shelf import load_shelf

EVENING = Tonight(here=11, minutes=60, width_m=30.0, depth_m=20.0)
RUNS = 5
LOOPS = 200_000


def reference() -> None:
    """A fixed amount of plain work."""
    total = 0
    for number in range(LOOPS):
        total += number % 7


def median_ms(act: Callable[[], object]) -> float:
    """Milliseconds of the middle one of some runs."""
    spent = []
    for _ in range(RUNS):
        began = time.perf_counter()
        act()
        spent.append((time.perf_counter() - began) * 1000)
    return statistics.median(spent)


def rows() -> list[tuple[str, float, float | None]]:
    """What was measured: words, milliseconds, the goal in milliseconds where there is one."""
    figures, shelf = load_figures(), load_shelf()
    sixteen, memory = shelf[:16], Memory()
    session: Session = fit(EVENING, sixteen, figures=figures, memory=memory)
    more = replace(EVENING, here=12)
    refit(session, more, sixteen, figures=figures, memory=memory)
    whole = Memory()
    fit(EVENING, shelf, figures=figures, memory=whole)
    return [
        ("fit, 16 exercises, cold", median_ms(lambda: fit(EVENING, sixteen, figures=figures)), None),
        ("fit, 16 exercises, warm", median_ms(lambda: fit(EVENING, sixteen, figures=figures, memory=memory)), 1000.0),
        (f"fit, all {len(shelf)} exercises, cold", median_ms(lambda: fit(EVENING, shelf, figures=figures)), None),
        (
            f"fit, all {len(shelf)} exercises, warm",
            median_ms(lambda: fit(EVENING, shelf, figures=figures, memory=whole)),
            None,
        ),
        (
            "fit again, one child more, warm",
            median_ms(lambda: refit(session, more, sixteen, figures=figures, memory=memory)),
            300.0,
        ),
    ]


def main() -> None:
    """Print the table, or the same as JSON."""
    loop = median_ms(reference)
    measured = rows()
    if "--json" in sys.argv:
        print(
            json.dumps([{"what": what, "ms": ms, "ratio": ms / loop, "goal_ms": goal} for what, ms, goal in measured])
        )
        return
    print(f"{'what':40} {'ms':>8} {'goal':>8} {'ratio to a fixed loop':>22}")
    for what, ms, goal in measured:
        print(f"{what:40} {ms:8.1f} {goal if goal else '':>8} {ms / loop:22.1f}")


if __name__ == "__main__":
    main()
