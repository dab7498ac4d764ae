"""Texts kept to the letters a font has: a missing one would be printed as nothing at all; must not know any font."""

import unicodedata
from collections.abc import Iterable

from conewright.model.problem import Problem, Severity

UNKNOWN = "?"
INSTEAD = {
    "\N{RIGHTWARDS ARROW}": "to",
    "\N{LEFTWARDS ARROW}": "from",
    "\N{LESS-THAN OR EQUAL TO}": "at most",
    "\N{GREATER-THAN OR EQUAL TO}": "at least",
    "\N{NON-BREAKING HYPHEN}": "-",
    "\N{NARROW NO-BREAK SPACE}": " ",
    "\N{NO-BREAK SPACE}": " ",
    "\n": " ",
    "\t": " ",
}


def legible(text: str, known: frozenset[int]) -> str:
    """The text with what the font lacks put otherwise: words for signs, plain letters for marked ones, else "?"."""
    return "".join(letter if ord(letter) in known else _instead(letter, known) for letter in text)


def _instead(letter: str, known: frozenset[int]) -> str:
    if letter in INSTEAD:
        return INSTEAD[letter]
    if unicodedata.category(letter) in ("Mn", "Cc", "Cf"):
        return ""
    plain = "".join(part for part in unicodedata.normalize("NFKD", letter) if ord(part) in known)
    return plain or UNKNOWN


def missing(texts: Iterable[str], known: frozenset[int]) -> str:
    """The letters that can only be shown as "?", each once, in the order they occur."""
    letters = dict.fromkeys(letter for text in texts for letter in text if ord(letter) not in known)
    return "".join(letter for letter in letters if _instead(letter, known) == UNKNOWN)


def missing_letters(texts: Iterable[str], known: frozenset[int]) -> tuple[Problem, ...]:
    """A finding where some letters cannot be printed."""
    letters = missing(texts, known)
    if not letters:
        return ()
    return (
        Problem(
            code="letters-missing",
            severity=Severity.LOOK,
            message=f'The font for paper has no sign for "{letters}": it stands on the sheet as "{UNKNOWN}".',
            hint="Write the name in Latin letters to have it printed.",
        ),
    )
