"""The squad and its children as they are kept; must not know how they are shown."""

from dataclasses import dataclass

from conewright.store.keep import Keep


@dataclass(frozen=True, slots=True, kw_only=True)
class Squad:
    """One team: its name, the days it trains on and the hour it starts."""

    id: str
    name: str
    days: tuple[str, ...]
    starts: str
    ground: str
    adults_words: str
    first_names: tuple[str, ...]


def first_squad(keep: Keep) -> Squad | None:
    """The first squad by name with its children in the order of their names; None where none is kept."""
    with keep.reading() as connection:
        row = connection.execute(
            "select id, name, days, starts, ground, adults_words from squad order by name, id limit 1"
        ).fetchone()
        if row is None:
            return None
        names = connection.execute("select first_name from child where squad_id = ? order by first_name", (row[0],))
        first_names = tuple(name for (name,) in names)
    days = tuple(day.strip() for day in row[2].split(",") if day.strip())
    return Squad(
        id=row[0], name=row[1], days=days, starts=row[3], ground=row[4], adults_words=row[5], first_names=first_names
    )
