"""The words of the command line and their help; must not know what a command does."""

from argparse import ArgumentParser, RawDescriptionHelpFormatter
from collections.abc import Sequence
from typing import NoReturn

from conewright import __version__
from conewright.cli.command import Command
from conewright.cli.wrong import WrongUsage

INTRODUCTION = """\
Conewright reads a football exercise written in plain sentences, proves that it runs, rehearses it,
draws it and fits an evening to whoever came."""
EXIT_CODES = """\
exit codes:
  0  nothing has to be mended ("look" and "know" are no reason to stop)
  1  something has to be mended, or nothing fits
  2  wrong usage: a word, a number or a file that cannot be used"""


class PlainParser(ArgumentParser):
    """A parser whose complaint is one line with how to mend it, and no recital of all options."""

    def error(self, message: str) -> NoReturn:
        """Raise WrongUsage instead of leaving the process."""
        raise WrongUsage(f"{message.removeprefix('argument COMMAND: ')}; see {self.prog} --help")


def parser_for(commands: Sequence[Command]) -> ArgumentParser:
    """The whole parser; the chosen command stands in `chosen`."""
    parser = PlainParser(
        prog="conewright",
        description=INTRODUCTION,
        epilog=f"Each command has its own help: conewright fit --help\n\n{EXIT_CODES}",
        formatter_class=RawDescriptionHelpFormatter,
        allow_abbrev=False,
    )
    parser.add_argument("--version", action="version", version=f"Conewright {__version__}")
    words = parser.add_subparsers(title="commands", metavar="COMMAND", dest="command", required=True)
    for command in commands:
        own = words.add_parser(
            command.name,
            help=command.does,
            description=f"{command.does[:1].upper()}{command.does[1:]}.",
            epilog=f"example:\n  {command.example}\n\n{EXIT_CODES}",
            formatter_class=RawDescriptionHelpFormatter,
            allow_abbrev=False,
        )
        command.add_words(own)
        own.set_defaults(chosen=command)
    return parser
