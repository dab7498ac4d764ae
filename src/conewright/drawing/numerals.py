"""Numbers in words, as a coach says them; must not know what is counted."""

WORDS = (
    *("none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"),
    *("eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen", "twenty"),
)


def in_words(count: int) -> str:
    """A whole number in words up to twenty, in figures beyond."""
    return WORDS[count] if 0 <= count < len(WORDS) else str(count)
