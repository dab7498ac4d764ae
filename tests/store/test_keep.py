"""The data file: made with the demo squad, remembered, and left alone where it cannot be used."""

import os
import sqlite3
import threading
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest

from conewright.model.session import Tonight
from conewright.store.demo import FIRST_NAMES, TONIGHT
from conewright.store.evening import Evening, keep_evening, keep_light, last_evening, last_light
from conewright.store.keep import Keep, UnusableFile, data_file, open_keep, recall, remember
from conewright.store.migrations import MIGRATIONS
from conewright.store.squad import first_squad

DEMO = Evening(tonight=TONIGHT, planned=13, starts="17:45")
CHANGED = Evening(tonight=Tonight(here=9, minutes=60, width_m=20, depth_m=20), planned=12, starts="18:00")


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "club.db"


def made(path: Path) -> Path:
    open_keep(path, make_folder=False).close()
    return path


def rows(path: Path, question: str) -> list[tuple[object, ...]]:
    with closing(sqlite3.connect(path)) as connection:
        return connection.execute(question).fetchall()


def test_a_new_file_holds_the_demo_squad(path: Path) -> None:
    keep = open_keep(path, make_folder=False)
    squad = first_squad(keep)
    assert squad is not None
    assert squad.name == "Tansyholt Lane, under 11"
    assert squad.days == ("Tuesday", "Thursday")
    assert squad.first_names == tuple(sorted(FIRST_NAMES))
    assert len(squad.first_names) == 14
    assert keep.notice == ""
    assert last_evening(keep) == DEMO
    keep.close()
    assert os.listdir(path.parent) == [path.name]


def test_the_version_counts_the_steps_and_the_journal_is_ahead(path: Path) -> None:
    assert rows(made(path), "pragma user_version") == [(len(MIGRATIONS),)]
    assert rows(path, "pragma journal_mode") == [("wal",)]


def test_answers_and_light_outlast_the_run(path: Path) -> None:
    keep = open_keep(path, make_folder=False)
    assert keep_evening(keep, CHANGED)
    assert keep_light(keep, "sun")
    keep.close()
    again = open_keep(path, make_folder=False)
    assert last_evening(again) == CHANGED
    assert last_light(again) == "sun"
    again.close()


def test_the_demo_does_not_come_back_once_it_is_erased(path: Path) -> None:
    with closing(sqlite3.connect(made(path))) as connection:
        connection.execute("pragma foreign_keys = on")
        connection.execute("delete from squad")
        connection.commit()
        assert connection.execute("select count(*) from child").fetchone() == (0,)
    keep = open_keep(path, make_folder=False)
    assert first_squad(keep) is None
    keep.close()


def test_kept_answers_that_make_no_sense_count_as_none(path: Path) -> None:
    keep = open_keep(path, make_folder=False)
    for nonsense in ({"here": "many"}, {"here": 5000, "minutes": 70, "width_m": 30, "depth_m": 22}, [1, 2], "x"):
        remember(keep, {"tonight": nonsense, "light": "glitter", "starts": 7, "planned": -1})
        assert last_evening(keep) == DEMO
        assert last_light(keep) == ""
    with keep.writing() as connection:
        connection.execute("update answer set json = '{' where key = 'tonight'")
    assert recall(keep, "tonight") is None
    keep.close()


def test_a_failed_transaction_leaves_nothing(path: Path) -> None:
    keep = open_keep(path, make_folder=False)
    with pytest.raises(TypeError):
        remember(keep, {"good": 1, "bad": object()})
    assert recall(keep, "good") is None
    keep.close()


def spoil_to_text(path: Path) -> None:
    path.write_text("these are my notes of Tuesday\n" * 50)


def spoil_to_nothing(path: Path) -> None:
    path.write_bytes(b"")


def spoil_short(path: Path) -> None:
    path.write_bytes(made(path).read_bytes()[:5000])


def spoil_head_only(path: Path) -> None:
    path.write_bytes(made(path).read_bytes()[:60])


def spoil_middle(path: Path) -> None:
    data = bytearray(made(path).read_bytes())
    data[4096:8192] = b"\xff" * 4096
    path.write_bytes(data)


def spoil_newer(path: Path) -> None:
    with closing(sqlite3.connect(made(path))) as connection:
        connection.execute(f"pragma user_version = {len(MIGRATIONS) + 1}")


def spoil_other_program(path: Path) -> None:
    with closing(sqlite3.connect(path)) as connection:
        connection.execute("create table recipe (name text)")


def spoil_without_tables(path: Path) -> None:
    with closing(sqlite3.connect(made(path))) as connection:
        connection.execute("drop table answer")


@pytest.mark.parametrize(
    ("spoil", "words"),
    [
        (spoil_to_text, "is not a data file of Conewright"),
        (spoil_to_nothing, "is empty"),
        (spoil_short, "is damaged"),
        (spoil_head_only, "is damaged"),
        (spoil_middle, "is damaged"),
        (spoil_newer, "newer version of Conewright"),
        (spoil_other_program, "belongs to another program"),
        (spoil_without_tables, "no such table"),
    ],
)
def test_a_file_that_cannot_be_used_is_named_and_left_as_it_is(
    path: Path, spoil: Callable[[Path], None], words: str
) -> None:
    spoil(path)
    before = path.read_bytes()
    with pytest.raises(UnusableFile) as caught:
        open_keep(path, make_folder=False)
    message = str(caught.value)
    assert words in message
    assert str(path) in message
    assert "--data" in message
    assert "\n" not in message
    assert path.read_bytes() == before
    assert os.listdir(path.parent) == [path.name]


def test_a_locked_file_is_named_and_left_as_it_is(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("conewright.store.keep.BUSY_S", 0.05)
    with closing(sqlite3.connect(made(path), isolation_level=None)) as other:
        other.execute("begin immediate")
        before = path.read_bytes()
        with pytest.raises(UnusableFile, match="in use by another program"):
            open_keep(path, make_folder=False)
        assert path.read_bytes() == before


def test_answers_given_while_the_file_is_locked_are_kept_with_the_next_ones(
    path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("conewright.store.keep.BUSY_S", 0.05)
    keep = open_keep(path, make_folder=False)
    with closing(sqlite3.connect(path, isolation_level=None)) as other:
        other.execute("begin immediate")
        assert not keep_evening(keep, CHANGED)
        assert last_evening(keep) == CHANGED
    assert keep_light(keep, "dark")
    keep.close()
    again = open_keep(path, make_folder=False)
    assert last_evening(again) == CHANGED
    again.close()


def test_a_read_only_file_opens_without_remembering(path: Path) -> None:
    made(path).chmod(0o444)
    before = path.read_bytes()
    keep = open_keep(path, make_folder=False)
    assert "read-only" in keep.notice
    assert str(path) in keep.notice
    assert first_squad(keep) is not None
    assert keep_evening(keep, CHANGED)
    assert last_evening(keep) == CHANGED
    keep.close()
    assert path.read_bytes() == before
    again = open_keep(path, make_folder=False)
    assert last_evening(again) == DEMO
    again.close()


@pytest.mark.parametrize("there", [True, False])
def test_a_read_only_folder_opens_without_remembering(path: Path, there: bool) -> None:
    if there:
        made(path)
    path.parent.chmod(0o555)
    try:
        keep = open_keep(path, make_folder=False)
        assert keep.notice
        assert first_squad(keep) is not None
        keep.close()
        assert os.listdir(path.parent) == ([path.name] if there else [])
    finally:
        path.parent.chmod(0o755)


def test_a_folder_in_the_place_of_the_file_and_a_missing_folder_are_named(tmp_path: Path) -> None:
    with pytest.raises(UnusableFile, match="is a folder"):
        open_keep(tmp_path, make_folder=False)
    with pytest.raises(UnusableFile, match="There is no folder"):
        open_keep(tmp_path / "no" / "club.db", make_folder=False)
    open_keep(tmp_path / "made" / "club.db", make_folder=True).close()
    assert (tmp_path / "made" / "club.db").is_file()


def test_what_a_broken_run_left_in_the_journal_is_taken_over(path: Path) -> None:
    keep = open_keep(path, make_folder=False)
    keep_evening(keep, CHANGED)
    copy = path.parent / "copied" / path.name
    copy.parent.mkdir()
    for name in (path.name, f"{path.name}-wal"):
        (copy.parent / name).write_bytes((path.parent / name).read_bytes())
    keep.close()
    taken = open_keep(copy, make_folder=False)
    assert last_evening(taken) == CHANGED
    taken.close()


def test_two_first_starts_at_once_both_get_the_file(path: Path) -> None:
    keeps: list[Keep] = []
    starts = [threading.Thread(target=lambda: keeps.append(open_keep(path, make_folder=False))) for _ in range(4)]
    for start in starts:
        start.start()
    for start in starts:
        start.join()
    assert [keep.notice for keep in keeps] == [""] * 4
    for keep in keeps:
        keep.close()
    assert rows(path, "select count(*) from child") == [(14,)]


@pytest.mark.parametrize(
    ("named", "environ", "place"),
    [
        ("here.db", {"CONEWRIGHT_DATA": "/other"}, "here.db"),
        (None, {"CONEWRIGHT_DATA": "/club/data.db"}, "/club/data.db"),
        (None, {"CONEWRIGHT_DATA": "/club/folder"}, "/club/folder/conewright.db"),
    ],
)
def test_the_place_is_the_one_named(named: str | None, environ: dict[str, str], place: str) -> None:
    assert data_file(named, environ) == Path(place)


def test_unnamed_it_lies_in_the_users_data_folder() -> None:
    assert data_file(None, {}).name == "conewright.db"
    assert data_file(None, {}).parent.name == "conewright"
