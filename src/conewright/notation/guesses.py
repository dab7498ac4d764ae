"""Which word was meant by one that is not known; must not know what the words are for."""

from collections.abc import Iterable
from difflib import SequenceMatcher, get_close_matches

_ALIKE = 0.72  # share of letters in common from which a word may be a slip of another
_SHORT = 4  # words of so few letters have most of them in common by chance


def closest(word: str, known: Iterable[str]) -> str:
    """The known word most like `word`, in whatever letter case; "" where none is like it."""
    if len(word) > 60:
        return ""
    by_lower = {candidate.lower(): candidate for candidate in known}
    lower = word.lower()
    near = get_close_matches(lower, by_lower, n=1, cutoff=_ALIKE) if len(lower) > _SHORT or lower in by_lower else []
    if near:
        return by_lower[near[0]]
    return next((by_lower[candidate] for candidate in by_lower if _one_slip(lower, candidate)), "")


def slipped(word: str, known: Iterable[str]) -> str:
    """The known word (in small letters) that one slip makes of `word`; "" for a known word and where none is near."""
    words = tuple(known)
    return "" if word in words else next((candidate for candidate in words if _one_slip(word, candidate)), "")


def _one_slip(word: str, known: str) -> bool:
    """True where one letter too many, too few, wrong or two swapped make the difference; short words need this."""
    if abs(len(word) - len(known)) > 1 or min(len(word), len(known)) < 3:
        return False
    if len(word) == len(known):
        wrong = [at for at, (one, other) in enumerate(zip(word, known, strict=True)) if one != other]
        swapped = len(wrong) == 2 and wrong[1] == wrong[0] + 1 and word[wrong[0]] == known[wrong[1]]
        return len(wrong) == 1 or (swapped and word[wrong[1]] == known[wrong[0]])
    blocks = SequenceMatcher(None, word, known).get_matching_blocks()
    return sum(block.size for block in blocks) == min(len(word), len(known))


def slip_of(words: tuple[str, ...], phrase: tuple[str, ...]) -> bool:
    """True where words are a phrase with one word wrong, one left out before its last, or one too many inside it."""
    if len(words) == len(phrase):
        wrong = [(one, other) for one, other in zip(words, phrase, strict=True) if one != other]
        return len(wrong) == 1 and closest(wrong[0][0], (wrong[0][1],)) != ""
    if len(phrase) > 2 and len(words) == len(phrase) - 1:
        return any(words == (*phrase[:at], *phrase[at + 1 :]) for at in range(len(phrase) - 1))
    if len(phrase) > 1 and len(words) == len(phrase) + 1:
        return any(phrase == (*words[:at], *words[at + 1 :]) for at in range(1, len(words) - 1))
    return False
