"""Asks the command line and hears what it says, for its tests."""

import pytest

from conewright.cli import main


def answer(capsys: pytest.CaptureFixture[str], *words: object) -> tuple[int, str, str]:
    """The exit code, and what was printed and complained about."""
    code = main([str(word) for word in words])
    printed = capsys.readouterr()
    return code, printed.out, printed.err
