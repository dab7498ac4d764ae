"""The data file: where it lies, whether it can be used, and what is read from and written to it.

A file that cannot be used is named and left as it is, byte for byte. This module must not know pages or commands.
"""

import os
import secrets
import sqlite3
import stat
from collections.abc import Iterator, Mapping
from contextlib import closing, contextmanager, suppress
from dataclasses import dataclass, field
from pathlib import Path
from threading import Lock

import msgspec
import platformdirs

from conewright.store.demo import add_demo
from conewright.store.migrations import MIGRATIONS, migrate, version

FILE_NAME = "conewright.db"
VARIABLE = "CONEWRIGHT_DATA"
MAGIC = b"SQLite format 3\x00"
SMALLEST = 512  # bytes: no whole file is smaller
MARK = 0x436F6E65  # "Cone", in the header of every file of ours
BUSY_S = 2.0  # how long another program's lock is waited for
GO_ON = "Nothing in it was changed. To go on without it: conewright serve --data OTHER.db"


class UnusableFile(Exception):
    """The data file cannot be used; the message names the file, what is wrong and how to go on."""


@dataclass(slots=True, kw_only=True)
class Keep:
    """An open data file. Where `notice` is not empty, nothing outlasts this run, and it says why."""

    path: Path
    connection: sqlite3.Connection
    notice: str = ""
    unsaved: dict[str, object] = field(default_factory=dict)  # answers the file would not take yet
    lock: Lock = field(default_factory=Lock)

    def close(self) -> None:
        """Let the file go."""
        with self.lock:
            self.connection.close()

    @contextmanager
    def writing(self) -> Iterator[sqlite3.Connection]:
        """One transaction: all of it is kept, or nothing. Raises sqlite3.Error where the file cannot be written."""
        with self.lock:
            self.connection.execute("begin immediate")
            try:
                yield self.connection
                self.connection.execute("commit")
            except BaseException:
                with suppress(sqlite3.Error):
                    self.connection.execute("rollback")
                raise

    @contextmanager
    def reading(self) -> Iterator[sqlite3.Connection]:
        """The connection, for one thread at a time."""
        with self.lock:
            yield self.connection


def data_file(named: str | None, environ: Mapping[str, str]) -> Path:
    """Where the data lies: the file named, else what CONEWRIGHT_DATA names, else the user's data folder.

    The variable may name a file or a folder; a name without an ending is a folder.
    """
    if named is not None:
        return Path(named)
    if environ.get(VARIABLE):
        place = Path(environ[VARIABLE])
        return place / FILE_NAME if place.is_dir() or not place.suffix else place
    return Path(platformdirs.user_data_dir("conewright", appauthor=False)) / FILE_NAME


def open_keep(path: Path, *, make_folder: bool) -> Keep:
    """Open the data file, or make it with the demo squad in it. Raises UnusableFile.

    Where it cannot be written to, a copy of it is held in memory, and the notice says so.
    """
    if make_folder:
        with suppress(OSError):
            path.parent.mkdir(parents=True, exist_ok=True)
    elif not path.parent.is_dir():
        raise UnusableFile(f'There is no folder "{path.parent}". Make it first, or name a file in another one.')
    if not os.path.lexists(path):
        return _new(path)
    try:
        _look_at(path)
        return _existing(path)
    except OSError as error:
        raise _unusable(path, f"cannot be read ({(error.strerror or 'it is out of reach').lower()})") from error
    except sqlite3.OperationalError as error:
        if _is_busy(error):
            raise _unusable(path, "is in use by another program that has locked it") from error
        raise _unusable(path, f"cannot be opened ({error})") from error
    except sqlite3.DatabaseError as error:
        raise _unusable(path, "is damaged") from error


def _unusable(path: Path, what: str) -> UnusableFile:
    return UnusableFile(f'The data file "{path}" {what}. {GO_ON}')


def _is_busy(error: sqlite3.Error) -> bool:
    return error.sqlite_errorcode & 0xFF in (sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED)


def _new(path: Path) -> Keep:
    """Make the file whole beside its place and then move it there, so that a half-made one is never found."""
    if not _may_write(path.parent):
        return _in_memory(path, "this folder cannot be written to")
    draft = path.with_name(f"{path.name}.{secrets.token_hex(4)}.new")
    try:
        with closing(_connect(draft)) as connection:
            _fill(connection)
        _move_unless_there(draft, path)
    except (OSError, sqlite3.OperationalError):
        return _in_memory(path, "the file cannot be made there")
    finally:
        draft.unlink(missing_ok=True)
    return _existing(path)


def _move_unless_there(draft: Path, path: Path) -> None:
    with suppress(FileExistsError):  # another start was quicker: its file is as good
        try:
            os.link(draft, path)
        except FileExistsError:
            raise
        except OSError:  # a disk without links
            draft.rename(path)


def _fill(connection: sqlite3.Connection) -> None:
    connection.execute(f"pragma application_id = {MARK}")
    migrate(connection)
    connection.execute("begin immediate")
    add_demo(connection)
    connection.execute("commit")


def _in_memory(path: Path, why: str) -> Keep:
    connection = _connect(":memory:")
    _fill(connection)
    return Keep(path=path, connection=connection, notice=_notice(path, why))


def _notice(path: Path, why: str) -> str:
    return f'Nothing is remembered after you close Conewright: {why} ("{path}").'


def _connect(place: Path | str) -> sqlite3.Connection:
    connection = sqlite3.connect(place, timeout=BUSY_S, isolation_level=None, check_same_thread=False)
    connection.execute("pragma foreign_keys = on")
    return connection


def _look_at(path: Path) -> None:
    """Refuse what is not ours, without opening it to write. Raises UnusableFile, OSError, sqlite3.DatabaseError."""
    if path.is_dir():
        raise _unusable(path, "is a folder")
    if not path.is_file():
        raise _unusable(path, "is not an ordinary file")
    size = path.stat().st_size
    with path.open("rb") as file:
        head = file.read(len(MAGIC))
    if not size:
        raise _unusable(path, "is empty, so something has gone wrong with it")
    if head != MAGIC:
        raise _unusable(path, "is not a data file of Conewright")
    if size < SMALLEST:
        raise _unusable(path, "is damaged")
    with closing(_only_looking(path)) as connection:
        _refuse_strangers(path, connection)


def _only_looking(path: Path) -> sqlite3.Connection:
    """Open so that nothing is written: where no other file goes along with it, even without a lock."""
    beside = path.with_name(path.name + "-wal")
    how = "mode=ro" if beside.exists() and beside.stat().st_size else "mode=ro&immutable=1"
    return sqlite3.connect(f"{path.absolute().as_uri()}?{how}", uri=True, timeout=BUSY_S, isolation_level=None)


def _refuse_strangers(path: Path, connection: sqlite3.Connection) -> None:
    if connection.execute("pragma application_id").fetchone()[0] != MARK:
        raise _unusable(path, "belongs to another program")
    if version(connection) > len(MIGRATIONS):
        raise _unusable(path, "was written by a newer version of Conewright")
    if connection.execute("pragma quick_check(1)").fetchone()[0] != "ok":
        raise _unusable(path, "is damaged")


def _existing(path: Path) -> Keep:
    if not (_may_write(path) and _may_write(path.parent)):
        return _copy(path)
    connection = _connect(path)
    try:
        connection.execute("pragma journal_mode = wal")
        connection.execute("pragma synchronous = normal")
        migrate(connection)
        connection.execute("select 1 from squad, child, answer limit 0")  # is what we need in it?
        connection.execute("begin immediate")  # is it ours to write to?
        connection.execute("rollback")
    except sqlite3.OperationalError as error:
        connection.close()
        if error.sqlite_errorcode & 0xFF in (sqlite3.SQLITE_READONLY, sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_IOERR):
            return _copy(path)
        raise
    except sqlite3.Error:
        connection.close()
        raise
    return Keep(path=path, connection=connection)


def _copy(path: Path) -> Keep:
    connection = _connect(":memory:")
    with closing(_only_looking(path)) as source:
        source.backup(connection)
    migrate(connection)
    return Keep(path=path, connection=connection, notice=_notice(path, "the data file is read-only"))


def _may_write(path: Path) -> bool:
    """Whether this user may write there; what nobody may write to is left alone even by one who may do anything."""
    anybody = stat.S_IWUSR | stat.S_IWGRP | stat.S_IWOTH
    try:
        return bool(path.stat().st_mode & anybody) and os.access(path, os.W_OK)
    except OSError:
        return False


def recall(keep: Keep, key: str) -> object:
    """What was last kept under a key; None where nothing was. What cannot be read counts as nothing."""
    if key in keep.unsaved:
        return keep.unsaved[key]
    with keep.reading() as connection:
        row = connection.execute("select json from answer where key = ?", (key,)).fetchone()
    if row is None:
        return None
    with suppress(msgspec.DecodeError, TypeError):
        return msgspec.json.decode(row[0])
    return None


def remember(keep: Keep, answers: Mapping[str, object]) -> bool:
    """Keep answers under their keys, all or none.

    False where the file would not take them just now: they are held until the next time and hold meanwhile.
    """
    pending = keep.unsaved | dict(answers)
    rows = [(key, msgspec.json.encode(value).decode()) for key, value in pending.items()]
    try:
        with keep.writing() as connection:
            for key, text in rows:
                connection.execute(
                    "insert into answer (key, json) values (?, ?) on conflict (key) do update set json = excluded.json",
                    (key, text),
                )
    except sqlite3.OperationalError:
        keep.unsaved = pending
        return False
    keep.unsaved = {}
    return True
