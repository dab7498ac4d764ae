"""Files the command line reads and writes; every failure is one line that says how to mend it."""

import os
import secrets
import shutil
from contextlib import suppress
from pathlib import Path

from conewright.cli.wrong import WrongUsage

MOST_BYTES = 1_000_000  # an exercise is a page of text


def text_of(name: str) -> str:
    """The text of a file. Raises WrongUsage."""
    try:
        with Path(name).open("rb") as file:
            data = file.read(MOST_BYTES + 1)
    except FileNotFoundError:
        raise WrongUsage(f'there is no file "{name}"; check the name and the folder you are in') from None
    except IsADirectoryError:
        raise WrongUsage(f'"{name}" is a folder; name the files in it, such as "{name}/*.exercise"') from None
    except PermissionError:
        raise WrongUsage(f'"{name}" may not be read by you; change its permissions or copy it') from None
    except (OSError, ValueError) as error:
        raise WrongUsage(f'"{printable(name)}" cannot be read ({_reason(error)}); name another file') from None
    if len(data) > MOST_BYTES:
        raise WrongUsage(f'"{name}" is larger than an exercise can be; name a text file of one exercise')
    return _decoded(name, data)


def _decoded(name: str, data: bytes) -> str:
    hint = "save it as plain text in UTF-8"
    if b"\x00" in data:
        raise WrongUsage(f'"{name}" is not a text file; {hint}')
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        raise WrongUsage(f'"{name}" is not plain text in UTF-8: line {line} holds something else; {hint}') from None


def check_output(name: str) -> Path:
    """Where to write. Raises WrongUsage before any work is done where that cannot be."""
    path = Path(name)
    if path.is_dir():
        raise WrongUsage(f'-o: "{name}" is a folder; name a file in it, such as "{path / "out"}"')
    if not path.parent.is_dir():
        raise WrongUsage(f'-o: there is no folder "{path.parent}"; make it first, or name a file in another one')
    return path


def write(path: Path, data: bytes, *, option: str = "-o") -> None:
    """Write a file whole or not at all, with the permissions it has. Raises WrongUsage, naming what chose the file."""
    draft = path.with_name(f".{path.name}.{secrets.token_hex(4)}")
    try:
        if path.exists() and not os.access(path, os.W_OK):
            raise PermissionError("it may not be written by you")
        draft.write_bytes(data)
        if path.exists():
            shutil.copymode(path, draft)
        os.replace(draft, path)
    except OSError as error:
        with suppress(OSError):
            draft.unlink(missing_ok=True)
        raise WrongUsage(f'{option}: "{path}" cannot be written ({_reason(error)}); name another file') from None


def _reason(error: Exception) -> str:
    reason = error.strerror if isinstance(error, OSError) and error.strerror else str(error)
    return reason[:1].lower() + reason[1:]


def printable(words: str) -> str:
    """Words on one line, whatever is in them."""
    return "".join(letter if letter.isprintable() else "?" for letter in words)
