"""Which colour each side and each copy wears, with the bibs in the bag; must not know ground or time.

Sides keep the colours the text gives them while the bibs last. Where they do not, another colour takes over, then one
side of a copy plays without bibs; what is still short is said and never decides whether an exercise runs.
"""

from collections import Counter
from dataclasses import dataclass, replace

from conewright.fit.needs import added_bibs, bib_of
from conewright.model.exercise import Bib
from conewright.model.layout import Side

PLAIN = "without bibs"
RESTS = "rests in turn"


@dataclass(frozen=True, slots=True, kw_only=True)
class Colours:
    """The sides of each copy as they are dressed, the colour of each copy, the bibs used and how many are short."""

    sides: tuple[tuple[Side, ...], ...]
    copies: tuple[Bib | None, ...]
    bibs: tuple[tuple[Bib, int], ...]
    short: tuple[tuple[Bib, int], ...] = ()
    changed: bool = False


def colour_copies(sizes: tuple[int, ...], bag: tuple[tuple[Bib, int], ...]) -> Colours:
    """A colour for each of several copies, one of which may go without; none where the bag has too few of a colour."""
    left = Counter(dict(bag))
    copies: list[Bib | None] = []
    for size in sizes:
        bib = next((bib for bib in Bib if left[bib] >= size), None)
        copies.append(bib)
        if bib is not None:
            left[bib] = 0
    if len(sizes) == 1 or copies.count(None) > 1:
        copies = [None for _ in sizes]
    worn = tuple((bib, size) for bib, size in zip(copies, sizes, strict=True) if bib is not None)
    return Colours(sides=tuple(() for _ in sizes), copies=tuple(copies), bibs=added_bibs(worn))


def colour_places(
    copies: tuple[tuple[Side, ...], ...], wanted: tuple[tuple[Bib, int], ...], bag: tuple[tuple[Bib, int], ...]
) -> Colours:
    """Places that wear colours get what the bag holds of each; what is short is said."""
    have = Counter(dict(bag))
    worn = Counter({bib: min(count, have[bib]) for bib, count in wanted})
    short = Counter({bib: count - worn[bib] for bib, count in wanted})
    return Colours(sides=copies, copies=tuple(None for _ in copies), bibs=_bag(worn), short=_bag(short))


def colour_sides(copies: tuple[tuple[Side, ...], ...], bag: tuple[tuple[Bib, int], ...]) -> Colours:
    """The sides of each copy dressed from the bag."""
    wanted = added_bibs(*(((bib, side.count),) for sides in copies for side, bib in _dressed(sides)))
    have = Counter(dict(bag))
    if all(count <= have[bib] for bib, count in wanted):
        return Colours(sides=copies, copies=tuple(None for _ in copies), bibs=wanted)
    return _dress_anew(copies, have)


def _dressed(sides: tuple[Side, ...]) -> tuple[tuple[Side, Bib], ...]:
    pairs = ((side, bib_of(side.team)) for side in sides if side.count)
    return tuple((side, bib) for side, bib in pairs if bib is not None)


def _dress_anew(copies: tuple[tuple[Side, ...], ...], have: Counter[Bib]) -> Colours:
    """Copy by copy: each side its own colour or any with enough; where that fails, the largest goes without bibs."""
    left, used, short = Counter(have), Counter[Bib](), Counter[Bib]()
    dressed: list[tuple[Side, ...]] = []
    for sides in copies:
        wear = _wear(sides, left, plain=None)
        if any(count > left[bib] for bib, count in _counts(sides, wear).items()):
            wear = _wear(sides, left, plain=_largest(sides))
        for bib, count in _counts(sides, wear).items():
            taken = min(count, left[bib])
            used[bib] += taken
            short[bib] += count - taken
            left[bib] -= taken
        dressed.append(tuple(_redressed(side, wear) for side in sides))
    none_named = tuple(None for _ in copies)
    return Colours(sides=tuple(dressed), copies=none_named, bibs=_bag(used), short=_bag(short), changed=True)


def _largest(sides: tuple[Side, ...]) -> str | None:
    """The side that may go without bibs: the largest, where no other goes without already."""
    dressed = tuple(side for side, _ in _dressed(sides))
    if len(dressed) < sum(1 for side in sides if side.count and side.team.name != RESTS):
        return None
    return max(dressed, key=lambda side: side.count).team.name


def _wear(sides: tuple[Side, ...], left: Counter[Bib], *, plain: str | None) -> dict[str, Bib | None]:
    """What each side that is to be told apart wears, by the name of its team."""
    wear: dict[str, Bib | None] = {}
    for side, own in _dressed(sides):
        taken = frozenset(bib for bib in wear.values() if bib is not None)
        wear[side.team.name] = None if side.team.name == plain else _colour_for(own, side.count, left, taken)
    return wear


def _counts(sides: tuple[Side, ...], wear: dict[str, Bib | None]) -> Counter[Bib]:
    counts = Counter[Bib]()
    for side in sides:
        bib = wear.get(side.team.name)
        if bib is not None:
            counts[bib] += side.count
    return counts


def _bag(counts: Counter[Bib]) -> tuple[tuple[Bib, int], ...]:
    return tuple((bib, counts[bib]) for bib in Bib if counts[bib])


def _colour_for(own: Bib, count: int, left: Counter[Bib], taken: frozenset[Bib]) -> Bib:
    free = tuple(bib for bib in (own, *Bib) if bib not in taken)
    enough = (bib for bib in free if left[bib] >= count)
    return next(enough, max(free, key=lambda bib: left[bib], default=own))


def _redressed(side: Side, wear: dict[str, Bib | None]) -> Side:
    if side.team.name not in wear:
        return side
    bib = wear[side.team.name]
    name = PLAIN if bib is None else bib.value
    return replace(side, team=replace(side.team, name=name, bib=bib))
