"""Measures the engine on the shelf: one exercise read, checked and rehearsed, and rehearsed for every number.

Run it from the folder of the project, in its environment: python bench/engine_table.py [--json]. Each figure is the
median of some runs in one process, in processor time, so that what else the machine does counts less; the ratio is to
a fixed loop of plain Python timed in the same run, so that machines compare.

The columns: `read` the text; `one` reads, checks and rehearses it with the number it is best with, on one call of the
check; `every` rehearses it for every number from 4 to 24 that it can be laid out for, in as many copies as it says,
each size of a copy once.
"""

import json
import statistics
import sys
import time
from collections.abc import Callable
from dataclasses import asdict, dataclass

from conewright.checks.check import check
from conewright.model.exercise import Exercise
from conewright.model.figures import Figures
from conewright.model.layout import layout_for
from conewright.notation.reader import read
from conewright.rehearsal.rehearse import rehearse_sizes
from conewright.store.figures import load_figures
from conewright.store.shelf import shelf_texts

AGE, SURFACE = 11, "grass_club"
NUMBERS = range(4, 25)
RUNS = 7
LOOPS = 200_000
GOAL_ONE_MS, GOAL_EVERY_MS = 10.0, 100.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """What one exercise takes, milliseconds."""

    exercise: str
    steps: int
    read_ms: float
    one_ms: float
    sizes: int
    every_ms: float


def reference() -> None:
    """A fixed amount of plain work."""
    total = 0
    for number in range(LOOPS):
        total += number % 7


def median_ms(act: Callable[[], object]) -> float:
    """Milliseconds of the middle one of some runs."""
    spent = []
    for _ in range(RUNS):
        began = time.process_time()
        act()
        spent.append((time.process_time() - began) * 1000)
    return statistics.median(spent)


def checked(text: str, n: int, figures: Figures) -> None:
    """Read a text and check it, which rehearses it."""
    exercise, _ = read(text)
    if exercise is not None:
        check(exercise, n, figures=figures, age=AGE, surface=SURFACE)


def sizes_of(exercise: Exercise) -> tuple[int, ...]:
    """Every size of a copy that a number from 4 to 24 leads to."""
    layouts = (layout_for(exercise, n) for n in NUMBERS)
    return tuple(dict.fromkeys(size for layout in layouts if layout for size in layout.sizes))


def measured(text: str, figures: Figures) -> Row | None:
    """The row of a text; None where it holds nothing that is rehearsed."""
    exercise, _ = read(text)
    script = exercise.script if exercise else None
    if exercise is None or script is None or any(step.contest for step in script.steps):
        return None
    n = exercise.numbers.best or exercise.numbers.least
    sizes = sizes_of(exercise)
    return Row(
        exercise=exercise.name,
        steps=len(script.steps),
        read_ms=median_ms(lambda: read(text)),
        one_ms=median_ms(lambda: checked(text, n, figures)),
        sizes=len(sizes),
        every_ms=median_ms(lambda: rehearse_sizes(exercise, sizes, figures=figures, age=AGE, surface=SURFACE)),
    )


def main() -> None:
    """Print the table, or the same as JSON."""
    figures = load_figures()
    loop = median_ms(reference)
    rows = [row for _, text in shelf_texts() if (row := measured(text, figures)) is not None]
    rows.sort(key=lambda row: -row.one_ms)
    if "--json" in sys.argv:
        goals = {"one_ms": GOAL_ONE_MS, "every_ms": GOAL_EVERY_MS}
        print(json.dumps({"loop_ms": loop, "goals": goals, "rows": [asdict(row) for row in rows]}))
        return
    print(f"A fixed loop of plain Python takes {loop:.1f} ms; ratios are to it.\n")
    print("| exercise | steps | read ms | one ms | ratio | sizes | every ms | ratio |")
    print("| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |")
    for row in rows:
        print(
            f"| {row.exercise} | {row.steps} | {row.read_ms:.2f} | {row.one_ms:.1f} | {row.one_ms / loop:.2f} "
            f"| {row.sizes} | {row.every_ms:.0f} | {row.every_ms / loop:.1f} |"
        )
    slow = [row.exercise for row in rows if row.one_ms > GOAL_ONE_MS or row.every_ms > GOAL_EVERY_MS]
    print(f"\nGoals: one under {GOAL_ONE_MS:g} ms, every under {GOAL_EVERY_MS:g} ms: ", end="")
    print("missed by " + ", ".join(slow) + "." if slow else "met by all.")


if __name__ == "__main__":
    main()
