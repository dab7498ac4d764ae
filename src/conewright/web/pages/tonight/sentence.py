"""The sentence at the top of Tonight: its words, and the fields that each word opens; must not know the evening."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from conewright.model.exercise import Bib
from conewright.model.session import Tonight
from conewright.store.answers import NUMBERS, OLDEST, SURFACES, YOUNGEST, Wrong, surface_words

Choice = tuple[str, str]  # value, words


@dataclass(frozen=True, slots=True, kw_only=True)
class Field:
    """One answer on the page: what was written, what is wrong with it, and what may be chosen or is offered."""

    name: str
    label: str
    value: str
    unit: str = ""
    wrong: str = ""
    choices: tuple[Choice, ...] = ()
    offers: tuple[str, ...] = ()
    number: bool = True
    least: int = 0
    most: int = 0
    wide: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Word:
    """A word of the sentence that opens its fields; `before` and `after` are the plain words round it."""

    key: str
    before: str
    words: str
    after: str
    fields: tuple[Field, ...]
    open: bool = False

    @property
    def wrong(self) -> bool:
        """Whether an answer behind this word has to be mended."""
        return any(one.wrong for one in self.fields)


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """What was written into the fields, over the answers that hold, and what is wrong with it."""

    tonight: Tonight
    starts: str
    written: Mapping[str, str] = field(default_factory=dict)
    wrong: tuple[Wrong, ...] = ()
    aims: tuple[str, ...] = ()

    def value(self, name: str) -> str:
        """What stands in a field: what was written, else the answer that holds."""
        if name in self.written:
            return self.written[name]
        if name == "starts":
            return self.starts
        if name.startswith("bibs_"):
            counts = {f"bibs_{bib.value.lower()}": count for bib, count in self.tonight.bibs}
            return str(counts.get(name, 0))
        value = getattr(self.tonight, name)
        return f"{value:g}" if isinstance(value, float) else str(value)

    def wrong_with(self, name: str) -> str:
        """What is wrong with a field, as a sentence with its remedy."""
        found = (one for one in self.wrong if one.field == name)
        return next((f"{one.message[:1].upper()}{one.message[1:]}: {one.hint}." for one in found), "")


def words_of(said: Said, opened: str) -> tuple[Word, ...]:
    """The words of the sentence after the head count, with the one that is opened."""
    tonight = said.tonight
    age = f"under {tonight.age}"
    keepers = f", {_counted(tonight.keepers, 'keeper')} among them" if tonight.keepers else ""
    ground = f"{tonight.width_m:g} by {tonight.depth_m:g} m of {surface_words(tonight.surface)}"
    rows = (
        ("who", "children ", age + keepers, ", ", _who(said)),
        ("time", "", f"{tonight.minutes} minutes", ", ", _time(said)),
        ("ground", "", ground, ", ", _ground(said)),
        ("kit", "", _kit_words(tonight), " and ", _kit(said)),
        ("adults", "", _counted(tonight.adults, "adult"), ", we work on ", (_number(said, "adults", "Adults"),)),
        ("aim", "", tonight.aim or "whatever fits best", ".", (_aim(said),)),
    )
    words = (
        Word(key=key, before=before, words=shown, after=after, fields=fields, open=key == opened)
        for key, before, shown, after, fields in rows
    )
    return tuple(words)


def _counted(count: int, noun: str) -> str:
    return f"{count or 'no'} {noun}{'' if count == 1 else 's'}"


def _kit_words(tonight: Tonight) -> str:
    bibs = sum(count for _, count in tonight.bibs)
    parts = [_counted(tonight.balls, "ball"), _counted(tonight.cones, "cone")]
    parts += [_counted(tonight.mini_goals, "mini goal")] if tonight.mini_goals else []
    parts += [_counted(tonight.goals, "goal")] if tonight.goals else []
    return ", ".join([*parts, _counted(bibs, "bib")])


BOUNDS = {asked.field: (asked.least, asked.most) for asked in NUMBERS} | {
    f"bibs_{bib.value.lower()}": (0, 60) for bib in Bib
}


def _number(said: Said, name: str, label: str, unit: str = "") -> Field:
    least, most = BOUNDS[name]
    return Field(
        name=name,
        label=label,
        value=said.value(name),
        unit=unit,
        wrong=said.wrong_with(name),
        least=least,
        most=most,
    )


def _who(said: Said) -> tuple[Field, ...]:
    ages = tuple((str(age), f"under {age}") for age in range(YOUNGEST, OLDEST + 1))
    age = said.value("age")
    choices = ages if age in dict(ages) else ((age, age), *ages)
    return (
        _number(said, "here", "Children here"),
        Field(name="age", label="Age group", value=age, wrong=said.wrong_with("age"), choices=choices),
        _number(said, "keepers", "Keepers among them"),
    )


def _time(said: Said) -> tuple[Field, ...]:
    starts = said.value("starts")
    return (
        _number(said, "minutes", "How long", "minutes"),
        Field(name="starts", label="Starts at", value=starts, wrong=said.wrong_with("starts"), number=False),
    )


def _ground(said: Said) -> tuple[Field, ...]:
    surface = said.value("surface")
    surfaces = tuple((key, words) for words, key in SURFACES)
    choices = surfaces if surface in dict(surfaces) else ((surface, surface), *surfaces)
    return (
        _number(said, "width_m", "Width", "m"),
        _number(said, "depth_m", "Depth", "m"),
        Field(name="surface", label="Surface", value=surface, wrong=said.wrong_with("surface"), choices=choices),
    )


def _kit(said: Said) -> tuple[Field, ...]:
    return (
        _number(said, "balls", "Balls"),
        _number(said, "cones", "Cones"),
        _number(said, "mini_goals", "Mini goals"),
        _number(said, "goals", "Full goals"),
        *(_number(said, f"bibs_{bib.value.lower()}", f"{bib.value} bibs") for bib in Bib),
    )


def _aim(said: Said) -> Field:
    return Field(
        name="aim",
        label="What to work on, in your words; leave it empty for anything",
        value=said.value("aim"),
        wrong=said.wrong_with("aim"),
        offers=said.aims,
        number=False,
        wide=True,
    )
