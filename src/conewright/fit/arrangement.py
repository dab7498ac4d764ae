"""How many copies of an exercise, and of what sizes, could hold the children here; must not know of ground or kit."""

from collections.abc import Iterator
from dataclasses import dataclass

from conewright.model.exercise import Exercise
from conewright.model.layout import APART_M, forms_for, layout_for, split_evenly

MOST_COPIES = 10  # more places than this nobody can set out or watch
MOST_RESTING = 4  # children who rest in turn, at most


@dataclass(frozen=True, slots=True, kw_only=True)
class Arrangement:
    """Sizes of the copies without keepers, the largest first; `said` where the text itself lays it out so."""

    sizes: tuple[int, ...]
    keepers: int = 0
    resting: int = 0
    apart_m: float = APART_M
    mirrored: bool = True
    said: bool = False

    @property
    def holds(self) -> int:
        """How many children it holds, those who rest and the keepers counted."""
        return sum(self.sizes) + self.keepers + self.resting


def runs_alone(exercise: Exercise, size: int) -> bool:
    """Whether one copy may hold so many children, going by its numbers and its own forms."""
    within = exercise.numbers.least <= size <= exercise.numbers.most
    return size > 0 and (within or any(form.copies == 1 for form in forms_for(exercise, size)))


def keeper_places(exercise: Exercise) -> int:
    """How many places of one copy are a keeper's."""
    return sum(1 for place in exercise.places if place.keeper)


def arrangements(exercise: Exercise, here: int, keepers: int) -> tuple[Arrangement, ...]:
    """Every way worth a look to hold all who are here: as the text says first, then from one copy upwards."""
    return _each_once(_arrangements(exercise, here, keepers, resting=0))


def with_rest(exercise: Exercise, here: int, keepers: int) -> Iterator[tuple[Arrangement, ...]]:
    """The same with one child resting in turn, then two and so on, for when nothing holds them all."""
    for resting in range(1, min(MOST_RESTING, here // 3) + 1):
        found = _each_once(_arrangements(exercise, here - resting, keepers, resting=resting))
        if found:
            yield found


def _each_once(ways: Iterator[Arrangement]) -> tuple[Arrangement, ...]:
    """Each set of sizes once, the first way that gives it."""
    found: dict[tuple[int, ...], Arrangement] = {}
    for way in ways:
        found.setdefault(way.sizes, way)
    return tuple(found.values())


def _arrangements(exercise: Exercise, here: int, keepers: int, *, resting: int) -> Iterator[Arrangement]:
    goals = keeper_places(exercise)
    for copies in range(1, MOST_COPIES + 1):
        in_goal = min(keepers, goals * copies)
        field = here - in_goal
        layout = layout_for(exercise, field) if field > 0 else None
        if layout is not None and layout.form is not None and len(layout.sizes) == copies > 1:
            yield Arrangement(
                sizes=layout.sizes,
                keepers=in_goal,
                resting=resting,
                apart_m=layout.apart_m,
                mirrored=layout.mirrored,
                said=True,
            )
    apart_m = _apart_said_m(exercise)
    for split in (_even, _uneven):
        for copies in range(1, MOST_COPIES + 1):
            in_goal = min(keepers, goals * copies)
            sizes = split(exercise, here - in_goal, copies)
            if sizes is not None:
                yield Arrangement(sizes=sizes, keepers=in_goal, resting=resting, apart_m=apart_m)


def _apart_said_m(exercise: Exercise) -> float:
    """How far apart copies stand where no form of the text holds this number: as its other forms say."""
    return min((form.apart_m for form in exercise.forms if form.apart_m is not None), default=APART_M)


def _even(exercise: Exercise, field: int, copies: int) -> tuple[int, ...] | None:
    """The most even split, where all of its sizes run alone."""
    sizes = split_evenly(max(0, field), copies)
    return sizes if all(runs_alone(exercise, size) for size in set(sizes)) else None


def _uneven(exercise: Exercise, field: int, copies: int) -> tuple[int, ...] | None:
    """The most even split into two sizes that differ by two or more, or None.

    It serves exercises in which only some numbers run, such as even ones.
    """
    share = field // copies
    best: tuple[int, ...] | None = None
    for larger in range(1, copies):
        for more in range(1, 4):
            rest = field - larger * (share + more)
            smaller, over = divmod(rest, copies - larger)
            if over or smaller < 1 or share + more - smaller < 2:
                continue
            sizes = (share + more,) * larger + (smaller,) * (copies - larger)
            if all(runs_alone(exercise, size) for size in set(sizes)) and (best is None or _gap(sizes) < _gap(best)):
                best = sizes
    return best


def _gap(sizes: tuple[int, ...]) -> int:
    return sizes[0] - sizes[-1]
