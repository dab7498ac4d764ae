"""Numbers in words, as a coach says them; must not know what is counted."""

from collections.abc import Sequence

WORDS = (
    *("none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"),
    *("eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen", "twenty"),
)


def in_words(count: int) -> str:
    """A whole number in words up to twenty, in figures beyond."""
    return WORDS[count] if 0 <= count < len(WORDS) else str(count)


def listed(names: Sequence[str]) -> str:
    """Words with commas and a last "and"."""
    return " and ".join([*([", ".join(names[:-1])] if names[:-1] else []), *names[-1:]])


def counted(count: int, one: str, more: str) -> str:
    """A count in figures with its noun: "1 child", "13 children"."""
    return f"{count} {one if count == 1 else more}"
