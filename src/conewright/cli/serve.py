"""`serve`: the pages, on this machine only; must not know the pages themselves, which are handed in."""

from argparse import ArgumentParser, Namespace

from conewright.cli.command import Command, Serve
from conewright.cli.wrong import WrongUsage
from conewright.store.answers import quoted

HIGHEST_PORT = 65535


def _add_words(parser: ArgumentParser) -> None:
    parser.add_argument("--port", metavar="N", help="where to serve; unsaid: 8017, or any free one")
    parser.add_argument("--no-browser", action="store_true", help="do not open a browser")
    parser.add_argument(
        "--data",
        metavar="FILE",
        help="the data file; unsaid: the one CONEWRIGHT_DATA names, else in your own data folder",
    )


def _port(said: str) -> int:
    if said.isascii() and said.isdecimal() and len(said) < 6 and int(said) <= HIGHEST_PORT:
        return int(said)
    hint = f"write a whole number from 0 to {HIGHEST_PORT}, such as 8018"
    raise WrongUsage(f"--port: {quoted(said)} is not a port; {hint}")


def without_pages(*, data: str | None, port: int | None, open_browser: bool) -> int:
    """Stands in where the command line runs without the pages. Raises WrongUsage."""
    raise WrongUsage("the pages are not here; start them by: python -m conewright serve")


def serve_command(serve: Serve) -> Command:
    """The command that serves the pages by the function handed in."""

    def run(words: Namespace) -> int:
        port = None if words.port is None else _port(words.port)
        return serve(data=words.data, port=port, open_browser=not words.no_browser)

    return Command(
        name="serve",
        does="open the page Tonight in your browser; it is served to this machine only",
        example="conewright serve --port 8017 --data club.db",
        add_words=_add_words,
        run=run,
    )
