"""The search finds what trying everything finds, and breaks no rule of a slot."""

from dataclasses import replace
from itertools import product

import pytest

from conewright.fit.clock import clock_for
from conewright.fit.options import Option, choice_for
from conewright.fit.parts import Chosen, Evening, worth
from conewright.fit.rules import slot_failure
from conewright.fit.search import best_evening, candidates, preferred
from conewright.model.exercise import Exercise
from tests.fit.evenings import FIGURES, USUAL, bench_for

MINUTES = 60


def options(shelf: tuple[Exercise, ...], here: int) -> tuple[Option, ...]:
    bench = bench_for(replace(USUAL, here=here, aim="passing"))
    found = (choice_for(exercise, bench).option for exercise in shelf)
    return tuple(option for option in found if option is not None)


def offered(shelf: tuple[Exercise, ...], here: int, seed: int = 1) -> tuple[tuple[Chosen, ...], ...]:
    slots = clock_for(MINUTES, FIGURES).slots
    return candidates(slots, options(shelf, here), cones=24, explain_min=1.0, seed=seed)


@pytest.mark.parametrize("here", [6, 11, 14, 20])
def test_the_beam_finds_the_best_of_all_evenings(shelf: tuple[Exercise, ...], here: int) -> None:
    few = tuple(slot_offers[:5] for slot_offers in offered(shelf, here))
    most = max(worth(Evening(chosen=chosen, cones=24, explain_min=1.0)) for chosen in product(*few))
    assert worth(best_evening(few, cones=24, explain_min=1.0)) == pytest.approx(most)


def test_the_best_of_each_slot_comes_first_and_holds_its_rules(shelf: tuple[Exercise, ...]) -> None:
    for slot_offers in offered(shelf, 14):
        assert slot_offers
        worths = [worth(Evening(chosen=(one,), cones=24, explain_min=1.0)) for one in slot_offers]
        assert worths == pytest.approx(sorted(worths, reverse=True), abs=1e-6)
        assert all(slot_failure(one.option.exercise, one.slot) is None for one in slot_offers)


def test_the_seed_decides_between_equals_alone(shelf: tuple[Exercise, ...]) -> None:
    evenings = {seed: best_evening(offered(shelf, 14, seed), cones=24, explain_min=1.0) for seed in range(4)}
    assert len({round(worth(evening), 6) for evening in evenings.values()}) == 1
    assert evenings[2] == best_evening(offered(shelf, 14, 2), cones=24, explain_min=1.0)


def test_a_kept_exercise_stays_in_its_slot(shelf: tuple[Exercise, ...]) -> None:
    first, *rest = offered(shelf, 14)
    kept = first[-1:]
    assert best_evening((kept, *rest), cones=24, explain_min=1.0).chosen[0] == kept[0]


def test_those_made_for_the_part_with_everybody_in_are_preferred(shelf: tuple[Exercise, ...]) -> None:
    game = offered(shelf, 21)[3]
    assert game
    resting = [one for one in game if one.option.arrangement.resting]
    made = [one for one in game if "game" in one.option.exercise.good_for]
    assert made == list(game)
    assert len(resting) in (0, len(game))
    assert preferred(()) == ()
