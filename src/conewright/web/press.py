"""Sets the sheet in a process of its own, since the type-setter keeps some 10 MB of every sheet it has ever set.

Run as a module it is that process: what to set comes in on its input, the PDF goes out. It must not know the page.
"""

import os
import pickle
import subprocess
import sys

from conewright.model.session import Session

PATIENCE_S = 60.0


class PressFailed(Exception):
    """The sheet could not be set; the message holds the words of the process that tried."""


def pressed(session: Session, *, title: str, when: str) -> bytes:
    """The session as a PDF of one sheet. Raises PressFailed."""
    done = subprocess.run(
        [sys.executable, "-m", "conewright.web.press"],
        input=pickle.dumps((session, title, when)),
        env={**os.environ, "PYTHONPATH": os.pathsep.join(path for path in sys.path if path)},
        capture_output=True,
        timeout=PATIENCE_S,
        check=False,
    )
    if done.returncode != 0:
        raise PressFailed(done.stderr.decode(errors="replace")[-2000:])
    return done.stdout


def main() -> None:
    """Set what comes in on the input; it comes from `pressed` and from nowhere else."""
    from conewright.store.paper import sheet_pdf  # the server itself never loads the type-setter

    session, title, when = pickle.load(sys.stdin.buffer)
    sys.stdout.buffer.write(sheet_pdf(session, title=title, when=when, tradition="A"))


if __name__ == "__main__":
    main()
