"""Starts the whole: the command line, and with it the pages; must not know what either does."""

import sys

from conewright.cli import run


def serve(**settings: object) -> int:
    """Serve the pages until told to stop; the pages are imported only now, for they are slow to start."""
    from conewright.web.server import serve as serve_pages

    return serve_pages(**settings)  # type: ignore[arg-type]


def main() -> int:
    """Run the command that the words of this process name, and give its exit code."""
    return run(sys.argv[1:], serve=serve)


if __name__ == "__main__":
    sys.exit(main())
