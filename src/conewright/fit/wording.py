"""Small words for numbers, lists and parts of the evening, as a coach would say them; must not know what is counted."""

from conewright.model.session import Job

WORDS = (
    "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
    "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen", "twenty",
)  # fmt: skip

PART_NAMES = {
    Job.ARRIVAL: "arriving",
    Job.WARM_UP: "warming up",
    Job.MAIN: "main work",
    Job.OPPOSED: "opposed work",
    Job.GAME: "the game",
    Job.CLOSE: "the close",
}


def number(count: int) -> str:
    """A count in words up to twenty, in figures beyond."""
    return WORDS[count] if 0 <= count < len(WORDS) else str(count)


def counted(count: int, noun: str, plural: str = "") -> str:
    """A count with its noun: "1 ball", "12 balls"."""
    return f"{count} {noun}" if count == 1 else f"{count} {plural or noun + 's'}"


def children(count: int) -> str:
    """So many children, in figures."""
    return counted(count, "child", "children")


def listed(parts: tuple[str, ...]) -> str:
    """Words joined by commas and "and"."""
    if len(parts) < 2:
        return "".join(parts)
    return f"{', '.join(parts[:-1])} and {parts[-1]}"


def sentence(words: str) -> str:
    """The words with a capital and a full stop."""
    return f"{words[:1].upper()}{words[1:]}." if words else ""


def percent(share: float) -> str:
    """A share as a whole number of per cent."""
    return f"{round(100 * share)} %"


def metres(length_m: float) -> str:
    """A length without needless decimals."""
    return f"{length_m:.1f}".removesuffix(".0")
