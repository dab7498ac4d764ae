"""The tables of the data file, as ordered steps; must not know what is kept in them or who asks.

A step is never changed once it has shipped: a new one is added at the end. `user_version` counts the steps done.
"""

import sqlite3

FIRST_TABLES = (
    """
    create table squad (
        id text primary key,
        name text not null,
        age integer not null,
        days text not null,
        starts text not null,
        ends text not null,
        ground text not null,
        width_m real not null,
        depth_m real not null,
        surface text not null,
        adults integer not null,
        adults_words text not null,
        balls integer not null,
        cones integer not null,
        mini_goals integer not null,
        goals integer not null,
        bibs text not null
    )
    """,
    """
    create table child (
        id text primary key,
        squad_id text not null references squad (id) on delete cascade,
        first_name text not null,
        age integer
    )
    """,
    "create index child_of_squad on child (squad_id, first_name)",
    "create table answer (key text primary key, json text not null)",
)

MIGRATIONS: tuple[tuple[str, ...], ...] = (FIRST_TABLES,)


def version(connection: sqlite3.Connection) -> int:
    """How many steps the file has had."""
    return int(connection.execute("pragma user_version").fetchone()[0])


def migrate(connection: sqlite3.Connection) -> None:
    """Do the steps the file has not had, each in a transaction of its own."""
    for number, statements in enumerate(MIGRATIONS, 1):
        if number > version(connection):
            _step(connection, number, statements)


def _step(connection: sqlite3.Connection, number: int, statements: tuple[str, ...]) -> None:
    connection.execute("begin immediate")
    try:
        if version(connection) < number:  # another start may have been quicker
            for statement in statements:
                connection.execute(statement)
            connection.execute(f"pragma user_version = {number}")
        connection.execute("commit")
    except sqlite3.Error:
        connection.execute("rollback")
        raise
