"""The command line: words in, sentences or JSON out, an exit code; must not know the pages."""

import os
import sys
from collections.abc import Sequence

from conewright.cli.check import CHECK
from conewright.cli.command import Command, Serve
from conewright.cli.draw import DRAW
from conewright.cli.explain import EXPLAIN
from conewright.cli.fit import FIT
from conewright.cli.model import MODEL
from conewright.cli.parser import parser_for
from conewright.cli.rehearse import REHEARSE
from conewright.cli.serve import serve_command, without_pages
from conewright.cli.sheet import SHEET
from conewright.cli.shelf import SHELF
from conewright.cli.tidy import TIDY
from conewright.cli.wrong import WRONG_USAGE, WrongUsage

COMMANDS: tuple[Command, ...] = (CHECK, REHEARSE, EXPLAIN, SHELF, FIT, DRAW, SHEET, TIDY, MODEL)
STOPPED = 130  # as a shell counts a process that was interrupted


def main(words: Sequence[str] | None = None, *, serve: Serve = without_pages) -> int:
    """Run one command and give its exit code: 0 nothing to mend, 1 something to mend, 2 wrong usage.

    Unsaid, the words are those of this process. `serve` serves the pages; only the whole program has them.
    """
    _print_what_the_terminal_can()
    try:
        chosen = parser_for((*COMMANDS, serve_command(serve))).parse_args(None if words is None else list(words))
        command: Command = chosen.chosen
        return command.run(chosen)
    except WrongUsage as wrong:
        for line in str(wrong).splitlines():
            print(f"conewright: {line}", file=sys.stderr)
        return WRONG_USAGE
    except SystemExit as left:  # --help and --version have answered
        return int(left.code or 0)
    except BrokenPipeError:  # whoever read us has heard enough
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0
    except KeyboardInterrupt:
        return STOPPED


def _print_what_the_terminal_can() -> None:
    """Put a question mark for a letter that the terminal does not have, rather than stop."""
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(errors="replace")
