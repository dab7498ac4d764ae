"""The ways each exercise of the shelf can be used tonight, or why it cannot; must not know the clock."""

from dataclasses import dataclass, replace

from conewright.fit.arrangement import Arrangement, arrangements, with_rest
from conewright.fit.bag import take
from conewright.fit.bench import Bench
from conewright.fit.colours import Colours, colour_copies, colour_places, colour_sides
from conewright.fit.memory import ChoiceKey
from conewright.fit.merits import Merits, merits_of
from conewright.fit.needs import Needs, added_bibs, needs_of
from conewright.fit.placing import place
from conewright.fit.rules import BEFORE_GROUND, ON_GROUND, Attempt, Failure, first_failure
from conewright.model.exercise import Exercise
from conewright.model.layout import sides_for

AS_SAID = 0.2
A_COPY = 0.05
MOST_TRIED = 3  # ways of laying out one exercise that are rehearsed


@dataclass(frozen=True, slots=True, kw_only=True)
class Option:
    """An exercise laid out for tonight in a way that breaks no rule, with what speaks for it."""

    attempt: Attempt
    arrangement: Arrangement
    merits: Merits

    @property
    def exercise(self) -> Exercise:
        """The exercise as written."""
        return self.attempt.exercise


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """What an exercise offers tonight: its best option, or the failure that stopped the way that got furthest."""

    exercise: Exercise
    option: Option | None = None
    failure: Failure | None = None


def choice_like(exercise: Exercise, bench: Bench, *, copies: int) -> Choice:
    """The best way to use an exercise tonight in so many copies, where they run; else the best way of all."""
    best = choice_for(exercise, bench)
    if best.option is None or len(best.option.arrangement.sizes) == copies:
        return best
    return choice_for(exercise, bench, copies=copies)


def choice_for(exercise: Exercise, bench: Bench, *, copies: int | None = None) -> Choice:
    """The best way to use an exercise tonight: everybody in if at all possible, in `copies` copies where they run."""
    memory = bench.memory
    key = ChoiceKey(exercise=bench.mark(exercise), asked=bench.asked, figures=memory.mark(bench.figures), copies=copies)
    known: Choice | None = memory.choices.get(key)
    if known is None:
        known = _choice(exercise, bench, copies)
        memory.keep_choice(key, known)
    return known


def _choice(exercise: Exercise, bench: Bench, copies: int | None) -> Choice:
    asked = bench.asked
    everybody = arrangements(exercise, asked.here, asked.keepers)
    choice = _best(exercise, everybody, bench, copies)
    if choice.option is not None:
        return choice
    for some_rest in with_rest(exercise, asked.here, asked.keepers):
        resting = _best(exercise, some_rest, bench, copies)
        if resting.option is not None or not everybody:
            choice = resting
        if resting.option is not None:
            break
    return choice


def _best(exercise: Exercise, ways: tuple[Arrangement, ...], bench: Bench, copies: int | None) -> Choice:
    """The best of the ways that break no rule; one empty way stands for none, for the rules to say why."""
    options: list[Option] = []
    furthest: tuple[int, Failure] | None = None
    for arrangement in _in_order(ways, copies) or (None,):
        if len(options) == MOST_TRIED or (options and not _as_wished(arrangement, copies)):
            break
        attempt, failed = _tried(exercise, arrangement, bench)
        if failed is None and attempt.arrangement is not None:
            options.append(Option(attempt=attempt, arrangement=attempt.arrangement, merits=merits_of(attempt, bench)))
        elif failed is not None and (furthest is None or failed[0] > furthest[0]):
            furthest = failed
    if options:
        return Choice(exercise=exercise, option=max(options, key=_liking))
    return Choice(exercise=exercise, failure=furthest[1] if furthest else None)


def _as_wished(arrangement: Arrangement | None, copies: int | None) -> bool:
    return copies is None or (arrangement is not None and len(arrangement.sizes) == copies)


def _tried(
    exercise: Exercise, arrangement: Arrangement | None, bench: Bench
) -> tuple[Attempt, tuple[int, Failure] | None]:
    """The attempt as far as it goes, and the rule that fails: ground is looked for only once the bag holds enough."""
    attempt = attempt_at(exercise, arrangement, bench)
    failed = first_failure(attempt, bench, BEFORE_GROUND)
    if failed is not None or arrangement is None:
        return attempt, failed
    attempt = replace(attempt, placing=place(exercise, arrangement, bench))
    failed = first_failure(attempt, bench, ON_GROUND)
    return attempt, (failed[0] + len(BEFORE_GROUND), failed[1]) if failed is not None else None


def _liking(option: Option) -> float:
    """What the layout offers, with a little for doing as the text says and for fewer copies to set out."""
    return option.merits.own + AS_SAID * option.arrangement.said - A_COPY * len(option.arrangement.sizes)


def _in_order(ways: tuple[Arrangement, ...], copies: int | None) -> tuple[Arrangement, ...]:
    """The wished number of copies first, else as they come."""
    return ways if copies is None else tuple(sorted(ways, key=lambda way: len(way.sizes) != copies))


def attempt_at(exercise: Exercise, arrangement: Arrangement | None, bench: Bench) -> Attempt:
    """The exercise laid out for tonight in one arrangement, not yet on the ground."""
    if arrangement is None:
        return Attempt(exercise=exercise, arrangement=None, needs=Needs(), taken=take(Needs(), bench.asked))
    colours = _colours(exercise, arrangement, bench)
    one = {size: needs_of(exercise, size) for size in set(arrangement.sizes)}
    needs = Needs()
    for size in arrangement.sizes:
        needs = needs + one[size]
    needs = replace(needs, bibs=colours.bibs)
    return Attempt(
        exercise=exercise,
        arrangement=arrangement,
        needs=needs,
        taken=take(needs, bench.asked),
        colours=colours,
    )


def _colours(exercise: Exercise, arrangement: Arrangement, bench: Bench) -> Colours:
    """Sides wear their colours; copies without sides a colour each, unless places of the exercise wear some."""
    bag = bench.asked.bibs
    sides = tuple(sides_for(exercise, size) for size in arrangement.sizes)
    if any(len(own) > 1 for own in sides):
        return colour_sides(sides, bag)
    if any(place.bib for place in exercise.places):
        return colour_places(sides, added_bibs(*(needs_of(exercise, size).bibs for size in arrangement.sizes)), bag)
    dressed = colour_copies(arrangement.sizes, bag)
    return Colours(sides=sides, copies=dressed.copies, bibs=dressed.bibs)
