"""Starts the whole: the command line, and with it the pages; must not know what either does."""

import gc
import sys

from conewright.cli import main as command


def serve(*, data: str | None, port: int | None, open_browser: bool) -> int:
    """Serve the pages until told to stop; they are imported only now, for they are slow to start."""
    from conewright.web.server import serve as serve_pages

    return serve_pages(data=data, port=port, open_browser=open_browser)


def main() -> int:
    """Run the command that the words of this process name, and give its exit code."""
    gc.disable()  # a start makes only what it keeps: looking for what it does not takes a tenth of its time
    return command(serve=serve)


if __name__ == "__main__":
    sys.exit(main())
