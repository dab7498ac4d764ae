"""The invented team a new data file starts with; must not know how it is shown."""

import sqlite3

from conewright.model.exercise import Bib
from conewright.model.session import Tonight

SQUAD = {
    "id": "tansyholt-lane",
    "name": "Tansyholt Lane, under 11",
    "age": 11,
    "days": "Tuesday,Thursday",
    "starts": "17:45",
    "ends": "18:55",
    "ground": "a third of a grass pitch",
    "width_m": 30.0,
    "depth_m": 22.0,
    "surface": "grass_club",
    "adults": 2,
    "adults_words": "one coach and one parent",
    "balls": 12,
    "cones": 24,
    "mini_goals": 2,
    "goals": 0,
    "bibs": "Y7,B7,R6",
}
FIRST_NAMES = (
    *("Brisa", "Corin", "Dunya", "Eskil", "Ferelith", "Lumi", "Marek"),
    *("Anouk", "Bram", "Ilsabet", "Jory", "Nerys", "Osric", "Tamsin"),
)
TONIGHT = Tonight(
    here=13,
    minutes=70,
    width_m=30.0,
    depth_m=22.0,
    age=11,
    adults=2,
    balls=12,
    cones=24,
    mini_goals=2,
    bibs=((Bib.YELLOW, 7), (Bib.BLUE, 7), (Bib.RED, 6)),
    surface="grass_club",
    aim="turning out, passing ahead of a runner",
)
STARTS = "17:45"


def add_demo(connection: sqlite3.Connection) -> None:
    """Put the invented squad and its children into a new file; the caller holds the transaction."""
    columns = ", ".join(SQUAD)
    connection.execute(f"insert into squad ({columns}) values ({', '.join('?' * len(SQUAD))})", tuple(SQUAD.values()))
    children = [(f"{SQUAD['id']}-{name.lower()}", SQUAD["id"], name, None) for name in FIRST_NAMES]
    connection.executemany("insert into child (id, squad_id, first_name, age) values (?, ?, ?, ?)", children)
