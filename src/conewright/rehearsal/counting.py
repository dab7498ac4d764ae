"""What each child and the group get in a bout, counted from what was done; must not know how it was timed."""

from collections import Counter
from dataclasses import dataclass

from conewright.model.exercise import SupplyKind, Verb
from conewright.model.rehearsed import ChildFigures
from conewright.model.unroll import PASSES
from conewright.rehearsal.durations import TimedAct
from conewright.rehearsal.recursion import Play
from conewright.rehearsal.spells import Stretch, act_of, waits


@dataclass(slots=True)
class _Tally:
    turns: int = 0
    contacts: float = 0.0
    passes: int = 0
    metres: float = 0.0


def children_of(play: Play, spells: dict[int, list[Stretch]]) -> tuple[ChildFigures, ...]:
    """The figures of every child over the bout, from what was done and the stretches of doing it."""
    tallies = [_Tally() for _ in play.homes]
    roles: list[Counter[str]] = [Counter() for _ in play.homes]
    started = [moment.time_s for moment in play.starts]
    for round_, person, place in play.roles:
        if started[round_] <= play.bout_s:
            roles[person][place] += 1
    for done in play.done:
        if done.person < 0 or done.start_s > play.bout_s:
            continue
        tally, act = tallies[done.person], act_of(play, done)
        if act is None:
            continue
        tally.contacts += act.contacts
        tally.metres += act.length_m
        if act.played.verb in PASSES:
            tally.passes += 1
    return tuple(_child(play, person, tallies[person], roles[person], spells[person]) for person in spells)


def _child(play: Play, person: int, tally: _Tally, roles: Counter[str], stretches: list[Stretch]) -> ChildFigures:
    waiting_s, longest_s = waits(stretches, play.bout_s)
    return ChildFigures(
        person=person,
        turns=sum(roles.values()),
        contacts=round(tally.contacts),
        passes=tally.passes,
        metres=tally.metres,
        waiting_share=waiting_s / play.bout_s if play.bout_s else 0.0,
        longest_wait_s=longest_s,
        roles=tuple(sorted(roles.items())),
    )


def _lay_still(play: Play, act: TimedAct) -> bool:
    """True where the ball of an act is set right from a stock, or is the bearer's own: it was not in play before."""
    place = play.places.get(act.played.takes_from)
    return place is not None and place.supply.kind is not SupplyKind.BALL


def rolling_share(play: Play) -> float:
    """The share of the bout in which at least one ball is in play: in flight, carried or being controlled."""
    spans = []
    for done in play.done:
        act = act_of(play, done)
        if done.ball < 0 or act is None or done.start_s > play.bout_s or act.played.verb is Verb.WAIT:
            continue
        if act.prepare_s and not _lay_still(play, act):
            spans.append((max(0.0, done.ready_s - act.prepare_s), min(done.ready_s, play.bout_s)))
        spans.append((max(0.0, done.start_s), min(done.end_s, play.bout_s)))
    spans.sort()
    covered, at = 0.0, 0.0
    for begun, end in spans:
        if end > at:
            covered += end - max(begun, at)
            at = end
    return covered / play.bout_s if play.bout_s else 0.0
