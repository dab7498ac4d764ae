"""The words of the notation as tables, for pages about it; must not know what the pages say beside them."""

from collections.abc import Iterable

from conewright.model.exercise import KINDS
from conewright.notation.amounts import listed
from conewright.notation.meanings import meaning
from conewright.notation.shapes import CHANGES, FREE_LINES, HEADERS, LINES_MEAN, SENTENCES
from conewright.notation.words import (
    AT_ONCE,
    FEET,
    FIRST_TIME,
    JOBS,
    LOFTED,
    MANNER_SYNONYMS,
    OUTSIDE,
    PACES,
    TRIGGERS,
    VERBS,
    WEIGHTS,
    TriggerForm,
)


def tables() -> dict[str, str]:
    """Every table by its name, as Markdown; the kinds as a sentence."""
    return {
        "kinds": f"Kinds are {listed(KINDS)}. `good for:` takes {listed(JOBS)}.",
        "lines": _table(
            ("line", "what it says", "example"),
            ((_code(f"{key}:"), LINES_MEAN[key], _code(line)) for key, line in _LINES.items()),
        ),
        "sentences": _table(("form", "example"), ((_code(form.shape), _code(form.example)) for form in SENTENCES)),
        "changes": _table(
            ("change", "what it does", "example"),
            ((_code(change.shape), change.means, _code(change.example)) for change in CHANGES),
        ),
        "verbs": _table(
            ("verb", "what it is", "what may follow", "also understood"),
            ((_code(verb.phrase), verb.means, _code(verb.shape), _codes(verb.also)) for verb in VERBS),
        ),
        "manners": _table(
            ("how", "what it is", "also understood"),
            ((_code(how), meaning(how), _codes(_meaning(how))) for how in _MANNERS),
        ),
        "starts": _table(
            ("start", "what it waits for", "with a delay", "also understood"),
            (
                *(
                    (_said(form.alone), form.means, _said(f"1 s after {form.clause}"), _saids(form.also))
                    for form in TRIGGERS
                ),
                (_code(AT_ONCE), meaning(AT_ONCE), _code("after 1 s"), ""),
            ),
        ),
    }


_LINES = HEADERS | FREE_LINES
_MANNERS = (
    *WEIGHTS.values(),
    FIRST_TIME,
    "in two touches",
    *FEET.values(),
    LOFTED,
    OUTSIDE,
    *PACES.values(),
)


def _start(form: TriggerForm) -> tuple[str, ...]:
    return _said(form.alone), form.means, _said(f"1 s after {form.clause}"), _saids(form.also)


def _meaning(how: str) -> tuple[str, ...]:
    return tuple(word for word, meant in MANNER_SYNONYMS.items() if meant == how)


def _said(pattern: str) -> str:
    """A phrase with its holes filled by examples."""
    return _code(pattern.format(who="Base", name="Mast", step="2").replace(" 's", "'s"))


def _saids(patterns: Iterable[str]) -> str:
    return ", ".join(_said(pattern) for pattern in patterns)


def _code(words: str) -> str:
    return f"`{words}`".replace("|", "\\|") if words else ""


def _codes(words: Iterable[str]) -> str:
    return ", ".join(_code(word) for word in words)


def _table(heads: tuple[str, ...], rows: Iterable[tuple[str, ...]]) -> str:
    lines = (heads, tuple("---" for _ in heads), *rows)
    return "\n".join(f"| {' | '.join(cells)} |" for cells in lines)
