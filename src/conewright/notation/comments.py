"""Which lines of a text are comments, since no exercise keeps them; must not know what the other lines say."""

COMMENT = "#"


def comment_lines(text: str) -> tuple[int, ...]:
    """The numbers of the lines that reading leaves out as comments, counted from 1."""
    rows = text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n").split("\n")
    return tuple(number for number, row in enumerate(rows, start=1) if row.lstrip().startswith(COMMENT))
