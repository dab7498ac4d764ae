"""What ends a command early: words that cannot be used. One line each, with how to mend it; never a traceback."""

from collections.abc import Iterable
from typing import TypeVar

from conewright.store.answers import Wrong

Answer = TypeVar("Answer")

CLEAN, MEND, WRONG_USAGE = 0, 1, 2


class WrongUsage(Exception):
    """What was asked cannot be done as written; the message is for the person who wrote it, one line for each."""


def refuse(wrong: Iterable[Wrong]) -> None:
    """Raise WrongUsage where an answer cannot be used, naming the option each was given with."""
    lines = [f"{option_of(one.field)}: {one.message}; {one.hint}" for one in wrong]
    if lines:
        raise WrongUsage("\n".join(lines))


def sound(answer: Answer | Wrong) -> Answer:
    """An answer that can be used. Raises WrongUsage."""
    if isinstance(answer, Wrong):
        raise WrongUsage(f"{option_of(answer.field)}: {answer.message}; {answer.hint}")
    return answer


def option_of(field: str) -> str:
    """The option that gives an answer: "mini_goals" is --mini-goals."""
    return f"--{field.replace('_', '-')}"
