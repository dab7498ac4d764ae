"""Reads a football exercise in plain sentences, proves that it runs, rehearses it, draws it and fits it to who came.

The main flow in five words: `read`, `check`, `rehearse`, `fit_session`, `draw`. Each is fetched when it is first used,
so that a command that needs one does not wait for the others.
"""

from importlib import import_module

__version__ = "0.1.0"

FLOW = {
    "read": "conewright.notation.reader.read",
    "write": "conewright.notation.printer.write",
    "check": "conewright.checks.check.check",
    "rehearse": "conewright.rehearsal.rehearse.rehearse",
    "fit_session": "conewright.fit.fit.fit",
    "draw": "conewright.drawing.picture.exercise_picture",
    "svg": "conewright.drawing.svg.svg",
    "Exercise": "conewright.model.exercise.Exercise",
    "Problem": "conewright.model.problem.Problem",
    "Severity": "conewright.model.problem.Severity",
    "Rehearsal": "conewright.model.rehearsed.Rehearsal",
    "Session": "conewright.model.session.Session",
    "Tonight": "conewright.model.session.Tonight",
    "load_figures": "conewright.store.figures.load_figures",
    "load_shelf": "conewright.store.shelf.load_shelf",
}
__all__ = ["__version__", *FLOW]


def __getattr__(name: str) -> object:
    """Fetch a name of the main flow where it is defined; AttributeError for any other."""
    if name not in FLOW:
        raise AttributeError(f"conewright has no {name!r}; it has {', '.join(FLOW)}")
    module, _, attribute = FLOW[name].rpartition(".")
    return getattr(import_module(module), attribute)
