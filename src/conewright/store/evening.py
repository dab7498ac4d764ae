"""The last answers of Tonight, as they are kept between two runs; must not know how they were asked."""

from dataclasses import dataclass

import msgspec

from conewright.model.session import Tonight
from conewright.store.answers import NUMBERS, OLDEST, SURFACES, YOUNGEST, is_hour
from conewright.store.demo import STARTS, TONIGHT
from conewright.store.keep import Keep, recall, remember

KEY, STARTS_KEY, PLANNED_KEY, LIGHT_KEY = "tonight", "starts", "planned", "light"
LIGHTS = ("paper", "dark", "sun")


@dataclass(frozen=True, slots=True, kw_only=True)
class Evening:
    """What the coach said last: tonight, for how many it was planned, and the hour it starts ("17:45")."""

    tonight: Tonight
    planned: int
    starts: str = STARTS


def last_evening(keep: Keep) -> Evening:
    """The answers kept last; the demo's where none are, or where they cannot be used."""
    tonight = _tonight(recall(keep, KEY))
    planned, starts = recall(keep, PLANNED_KEY), recall(keep, STARTS_KEY)
    most = next(asked.most for asked in NUMBERS if asked.field == "here")
    return Evening(
        tonight=tonight,
        planned=planned if isinstance(planned, int) and 0 <= planned <= most else tonight.here,
        starts=starts if isinstance(starts, str) and is_hour(starts) else STARTS,
    )


def keep_evening(keep: Keep, evening: Evening) -> bool:
    """Keep the answers for the next time; False where the file would not take them."""
    return remember(
        keep,
        {
            KEY: msgspec.to_builtins(evening.tonight),
            PLANNED_KEY: evening.planned,
            STARTS_KEY: evening.starts,
        },
    )


def last_light(keep: Keep) -> str:
    """The light chosen for the pages; empty where the machine's own is followed."""
    light = recall(keep, LIGHT_KEY)
    return light if isinstance(light, str) and light in LIGHTS else ""


def keep_light(keep: Keep, light: str) -> bool:
    """Keep the light chosen for the pages."""
    return remember(keep, {LIGHT_KEY: light})


def _tonight(kept: object) -> Tonight:
    try:
        tonight = msgspec.convert(kept, Tonight)
    except msgspec.ValidationError:
        return TONIGHT
    return tonight if _within_bounds(tonight) else TONIGHT


def _within_bounds(tonight: Tonight) -> bool:
    numbers = all(asked.least <= getattr(tonight, asked.field) <= asked.most for asked in NUMBERS)
    return numbers and YOUNGEST <= tonight.age <= OLDEST and tonight.surface in dict(SURFACES).values()
