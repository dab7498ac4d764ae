"""Who stands where at the start, with the letters on the marks; must not know metres on the page or lines of play."""

from collections import Counter
from dataclasses import dataclass

from conewright.drawing.marks import GROUP_WORDS
from conewright.model.exercise import Bib, Exercise, Place
from conewright.model.layout import one_copy, standing
from conewright.model.scene import Data

ADULT = "ad"
RESTING = "rests in turn"
SHOWN_WAITING = 3  # marks on a thread; the last says how many more it stands for


@dataclass(frozen=True, slots=True, kw_only=True)
class Person:
    """One person of a copy. `number` counts the children as a rehearsal does, -1 for adults and keepers.

    `group` is the word of the form ("y", "b", "r", "g", "n", "ad"), `letter` stands alone, `name` is letter and number.
    """

    number: int
    place: str
    rank: int
    group: str
    letter: str
    name: str

    @property
    def data(self) -> Data:
        """By which a page finds the mark."""
        return (("person", str(self.number)), ("place", self.place))


def people(exercise: Exercise, size: int, bib: Bib | None = None, *, adults: int = 0) -> tuple[Person, ...]:
    """Everybody of a copy of `size` children, in the order in which a rehearsal numbers them.

    A place's own bib goes before the copy's. Numbers count within a form. `adults` have their letters already.
    """
    own = one_copy(exercise, size)
    counts = standing(exercise, size)
    tally: Counter[str] = Counter({ADULT: adults})
    found: list[Person] = []
    number = 0
    for place in own.places:
        for rank in range(counts.get(place.name, 0) if not (place.adult or place.keeper) else 1):
            found.append(_person(place, rank, number, tally, place.bib or bib))
            number += found[-1].number >= 0
    return tuple(found)


def _person(place: Place, rank: int, number: int, tally: Counter[str], bib: Bib | None) -> Person:
    if place.adult or place.keeper:
        return _extra(place, tally)
    group = GROUP_WORDS[bib]
    tally[group] += 1
    letter = group.upper() if bib else ""
    name = f"{letter}{tally[group]}"
    return Person(number=number, place=place.name, rank=rank, group=group, letter=letter, name=name)


def _extra(place: Place, tally: Counter[str]) -> Person:
    if place.keeper:
        return Person(number=-1, place=place.name, rank=0, group="n", letter="K", name="K")
    tally[ADULT] += 1
    return adult(tally[ADULT], place.name)


def adult(count: int, place: str = "") -> Person:
    """The so-manieth adult: the coach first, then parents who help."""
    letter = "C" if count == 1 else "P"
    return Person(number=-1, place=place, rank=0, group=ADULT, letter=letter, name=letter)


def resting(count: int, *, after: int) -> tuple[Person, ...]:
    """Children who rest in turn, numbered after those who play."""
    return tuple(
        Person(number=after + rank, place=RESTING, rank=rank, group="n", letter="", name=str(after + rank + 1))
        for rank in range(count)
    )


def folded(line: tuple[Person, ...]) -> tuple[tuple[Person, str], ...]:
    """Those of a line who get a mark, each with the words to put instead of the letter ("" for the letter).

    The head and three more; where more than three wait the last mark says how many it stands for.
    """
    shown = line[: SHOWN_WAITING + 1]
    more = len(line) - SHOWN_WAITING
    return tuple((person, f"+{more}" if more > 1 and person is shown[-1] else "") for person in shown)
