"""Which option goes into which slot: a beam from the first slot to the last, then single changes while they help.

It must not know what makes an evening good, only that `worth` says so. Equal evenings are told apart by the seed.
"""

from collections.abc import Sequence
from hashlib import blake2b

from conewright.fit.bench import Stop
from conewright.fit.clock import Slot
from conewright.fit.options import Option
from conewright.fit.parts import Chosen, Evening, cones_of, worth
from conewright.fit.rules import slot_failure
from conewright.fit.suiting import OF_THE_KIND, suit

BEAM = 24
MOST_FOR_A_SLOT = 14
ROUNDS = 4
Cones = frozenset[tuple[int, int]]
FINE = 6  # decimals of worth below which two evenings are equal


def candidates(
    slots: tuple[Slot, ...], options: Sequence[Option], *, cones: int, explain_min: float, seed: int
) -> tuple[tuple[Chosen, ...], ...]:
    """For each slot what may fill it, the best first, of those to be preferred."""
    shuffled = sorted(options, key=lambda option: lot(seed, option.exercise.name))
    laid = tuple((option, cones_of(option)) for option in shuffled)
    return tuple(_for_slot(slot, laid, cones=cones, explain_min=explain_min) for slot in slots)


def lot(seed: int, name: str) -> bytes:
    """The lot an exercise draws with a seed: an order that changes with the seed and with nothing else."""
    return blake2b(f"{seed} {name}".encode(), digest_size=8).digest()


def _for_slot(
    slot: Slot, laid: tuple[tuple[Option, Cones], ...], *, cones: int, explain_min: float
) -> tuple[Chosen, ...]:
    able = tuple(
        Chosen(slot=slot, option=option, cones=lying)
        for option, lying in laid
        if slot_failure(option.exercise, slot) is None
    )
    alone = sorted(preferred(able), key=lambda one: -round(_worth((one,), cones=cones, explain_min=explain_min), FINE))
    return tuple(alone[:MOST_FOR_A_SLOT])


def preferred(able: tuple[Chosen, ...]) -> tuple[Chosen, ...]:
    """Those made for the part with everybody in; failing that with some resting, then stand-ins likewise."""
    made = tuple(one for one in able if suit(one.option.exercise, one.slot.job) >= OF_THE_KIND)
    everybody = tuple(one for one in made if not one.option.arrangement.resting)
    stand_ins = tuple(one for one in able if not one.option.arrangement.resting)
    return everybody or made or stand_ins or able


def _worth(chosen: tuple[Chosen, ...], *, cones: int, explain_min: float) -> float:
    return worth(Evening(chosen=chosen, cones=cones, explain_min=explain_min))


def best_evening(
    offered: tuple[tuple[Chosen, ...], ...], *, cones: int, explain_min: float, stop: Stop | None = None
) -> Evening:
    """The best evening found; every slot must have something on offer."""
    beam: list[tuple[Chosen, ...]] = [()]
    for slot_offers in offered:
        longer = [(*so_far, one) for so_far in beam for one in slot_offers]
        longer.sort(key=lambda chosen: -round(_worth(chosen, cones=cones, explain_min=explain_min), FINE))
        beam = longer[: 1 if stop is not None and stop() else BEAM]
    best = Evening(chosen=beam[0], cones=cones, explain_min=explain_min)
    for _ in range(ROUNDS):
        better = _one_change(best, offered)
        if better is None or (stop is not None and stop()):
            break
        best = better
    return best


def _one_change(evening: Evening, offered: tuple[tuple[Chosen, ...], ...]) -> Evening | None:
    """The best evening that differs in one slot and is worth more, or None."""
    best, most = None, round(worth(evening), FINE)
    for at, slot_offers in enumerate(offered):
        for one in slot_offers:
            chosen = (*evening.chosen[:at], one, *evening.chosen[at + 1 :])
            tried = Evening(chosen=chosen, cones=evening.cones, explain_min=evening.explain_min)
            gained = round(worth(tried), FINE)
            if gained > most:
                best, most = tried, gained
    return best
