"""Tonight's answers as words and back: what may be said, what was meant, and what is wrong with it.

The command line and the pages read the same table. This module must not know where words come from or go to.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from conewright.model.exercise import Bib
from conewright.model.session import Tonight

SURFACES = (
    ("grass", "grass_club"),
    ("short grass", "grass_short"),
    ("long grass", "grass_long"),
    ("turf", "turf"),
    ("fast turf", "turf_fast"),
    ("hall", "hall"),
)
"""What a coach calls the ground, and its column in the figures."""

YOUNGEST, OLDEST = 6, 19
LONGEST_AIM = 120  # characters


@dataclass(frozen=True, slots=True, kw_only=True)
class Wrong:
    """An answer that cannot be used: which one, what was written, what is wrong with it and how to mend it."""

    field: str
    message: str
    hint: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """One number the coach may say: its name in `Tonight`, what it counts, its bounds and an example."""

    field: str
    counts: str
    least: int
    most: int
    example: str
    whole: bool = True


NUMBERS = (
    Asked(field="here", counts="children", least=0, most=60, example="13"),
    Asked(field="minutes", counts="minutes", least=5, most=360, example="70"),
    Asked(field="width_m", counts="metres", least=2, most=200, example="30", whole=False),
    Asked(field="depth_m", counts="metres", least=2, most=200, example="22", whole=False),
    Asked(field="adults", counts="adults", least=0, most=20, example="2"),
    Asked(field="keepers", counts="keepers", least=0, most=10, example="1"),
    Asked(field="balls", counts="balls", least=0, most=200, example="12"),
    Asked(field="cones", counts="cones", least=0, most=300, example="24"),
    Asked(field="mini_goals", counts="mini goals", least=0, most=20, example="2"),
    Asked(field="goals", counts="goals", least=0, most=10, example="0"),
    Asked(field="seed", counts="draws", least=0, most=999_999, example="1"),
)

COLOURS = {bib.value.lower(): bib for bib in Bib} | {bib.value[0].lower(): bib for bib in Bib}
MOST_BIBS = 60


def read_answers(said: Mapping[str, str], usual: Tonight) -> tuple[Tonight, tuple[Wrong, ...]]:
    """Put what was said in the place of the usual; what cannot be used is left as usual and told.

    The names are the fields of `Tonight`; beside them "space" stands for width and depth, and bibs are said in one
    word ("Y7,B7") or one number a colour ("bibs_yellow").
    """
    readings = {asked.field: read_number(said[asked.field], asked) for asked in NUMBERS if asked.field in said}
    words: dict[str, Any] = {
        name: read(said[name])
        for name, read in (("age", read_age), ("surface", read_surface), ("bibs", read_bibs), ("aim", read_aim))
        if name in said
    }
    colours = {bib: read_number(said[_field(bib)], _colour(bib)) for bib in Bib if _field(bib) in said}
    space = read_space(said["space"]) if "space" in said else None
    heard = (*readings.values(), *words.values(), *colours.values(), space)
    wrong = tuple(one for one in heard if isinstance(one, Wrong))
    changes = _sound(readings) | _sound(words) | (_sides(space) if space else {})
    if colours:
        counts = dict(usual.bibs) | {bib: int(one) for bib, one in colours.items() if not isinstance(one, Wrong)}
        changes["bibs"] = tuple((bib, counts[bib]) for bib in Bib if counts.get(bib))
    tonight = replace(usual, **changes)
    return tonight, wrong or _too_many_keepers(tonight)


def _sound(readings: Mapping[str, Any]) -> dict[str, Any]:
    whole = {asked.field for asked in NUMBERS if asked.whole}
    sound = {name: one for name, one in readings.items() if not isinstance(one, Wrong)}
    return {name: int(one) if name in whole else one for name, one in sound.items()}


def _sides(space: tuple[float, float] | Wrong) -> dict[str, Any]:
    return {} if isinstance(space, Wrong) else {"width_m": space[0], "depth_m": space[1]}


def _field(bib: Bib) -> str:
    return f"bibs_{bib.value.lower()}"


def _colour(bib: Bib) -> Asked:
    return Asked(field=_field(bib), counts=f"{bib.value.lower()} bibs", least=0, most=MOST_BIBS, example="7")


def _too_many_keepers(tonight: Tonight) -> tuple[Wrong, ...]:
    if tonight.keepers <= tonight.here:
        return ()
    message = f"{tonight.keepers} keepers cannot be among {tonight.here} children"
    return (Wrong(field="keepers", message=message, hint="keepers are counted among the children"),)


def read_number(said: str, asked: Asked) -> float | Wrong:
    """A number within its bounds; whole where it counts things, else with one decimal at most."""
    words = said.strip().replace(",", ".")
    pattern = r"[+-]?[0-9]{1,9}" if asked.whole else r"[+-]?[0-9]{1,9}(\.[0-9]+)?"
    kind = "a whole number" if asked.whole else "a number"
    hint = f"write {kind} from {asked.least} to {asked.most}, such as {asked.example}"
    if not words:
        return Wrong(field=asked.field, message=f"the number of {asked.counts} is missing", hint=hint)
    if re.fullmatch(pattern, words) is None:
        return Wrong(field=asked.field, message=f"{quoted(said)} is not {kind} of {asked.counts}", hint=hint)
    if not asked.least <= float(words) <= asked.most:
        return Wrong(field=asked.field, message=f"{words} {asked.counts} cannot be planned for", hint=hint)
    return round(float(words), 1)


def read_age(said: str) -> int | Wrong:
    """An age group: "U11", "under 11" or "11"."""
    found = re.fullmatch(r"(?:u|under)?[ -]?([0-9]{1,2})s?", said.strip().lower())
    if found and YOUNGEST <= int(found[1]) <= OLDEST:
        return int(found[1])
    message = f"{quoted(said)} is not an age group"
    return Wrong(field="age", message=message, hint=f"write one from U{YOUNGEST} to U{OLDEST}, such as U11")


def read_surface(said: str) -> str | Wrong:
    """A surface by the coach's word or by the name of its column."""
    words = " ".join(said.lower().replace("_", " ").split())
    known = dict(SURFACES) | {key.replace("_", " "): key for _, key in SURFACES}
    if words in known:
        return known[words]
    names = ", ".join(name for name, _ in SURFACES[:-1])
    return Wrong(
        field="surface",
        message=f"{quoted(said)} is not a surface known here",
        hint=f"write one of {names} or {SURFACES[-1][0]}",
    )


def surface_words(surface: str) -> str:
    """What a coach calls a surface."""
    return next((words for words, key in SURFACES if key == surface), surface)


def read_space(said: str) -> tuple[float, float] | Wrong:
    """Width by depth in metres: "30x22", "30 by 22 m"."""
    found = re.fullmatch(r"([0-9.]+) ?m? ?(?:x|×|\*|by) ?([0-9.]+) ?m?", said.strip().lower())
    hint = "write width and depth in metres, such as 30x22"
    if found is None:
        return Wrong(field="space", message=f"{quoted(said)} is not a space", hint=hint)
    sides = tuple(read_number(word, asked) for word, asked in zip(found.groups(), _SIDES, strict=True))
    if isinstance(sides[0], Wrong) or isinstance(sides[1], Wrong):
        bounds = f"each side from {_SIDES[0].least} to {_SIDES[0].most} m"
        return Wrong(field="space", message=f"{quoted(said)} is not a space that can be used", hint=f"{hint}, {bounds}")
    return sides[0], sides[1]


_SIDES = tuple(asked for asked in NUMBERS if asked.field in ("width_m", "depth_m"))


def read_bibs(said: str) -> tuple[tuple[Bib, int], ...] | Wrong:
    """Bibs by colour: "Y7,B7,R6", or "7 yellow, 6 blue"; "none" or nothing means there are none."""
    counts: dict[Bib, int] = {}
    words = said.strip().lower()
    for part in () if words in ("", "none", "0") else re.split(r"[,;]", words):
        found = re.fullmatch(r"([a-z]+) ?([0-9]{1,3})|([0-9]{1,3}) ?([a-z]+)", part.strip())
        colour = COLOURS.get(found[1] or found[4]) if found else None
        number = int(found[2] or found[3]) if found else MOST_BIBS + 1
        if colour is None or number > MOST_BIBS or colour in counts:
            hint = f"write a letter of {', '.join(bib.value for bib in Bib)} and a number each, such as Y7,B7,R6"
            return Wrong(field="bibs", message=f"{quoted(said)} does not say the bibs", hint=hint)
        counts[colour] = number
    return tuple((bib, counts[bib]) for bib in Bib if counts.get(bib))


def read_aim(said: str) -> str | Wrong:
    """What to work on, in the coach's words; empty for anything."""
    words = " ".join(said.split())
    hint = "say it in a few words, such as passing ahead of a runner"
    if not words.isprintable():
        return Wrong(field="aim", message="the aim is not plain text", hint=hint)
    if len(words) > LONGEST_AIM:
        return Wrong(field="aim", message=f"the aim is longer than {LONGEST_AIM} letters", hint=hint)
    return words


def is_hour(said: str) -> bool:
    """Whether this is an hour of the day, written like 17:45."""
    return re.fullmatch(r"([01][0-9]|2[0-3]):[0-5][0-9]", said) is not None


def read_hour(said: str) -> str | Wrong:
    """An hour of the day, as "17:45" or "9.30"."""
    found = re.fullmatch(r"([0-9]{1,2})[:.]([0-9]{2})", said.strip())
    hour = f"{int(found[1]):02}:{found[2]}" if found else ""
    if is_hour(hour):
        return hour
    return Wrong(field="starts", message=f"{quoted(said)} is not an hour of the day", hint="write it like 17:45")


def quoted(said: str) -> str:
    """What was written, in quotation marks, cut short and on one line."""
    words = "".join(letter if letter.isprintable() else " " for letter in said)
    return f'"{words[:40]}..."' if len(words) > 40 else f'"{words}"'
