"""What decides the pace: the chain of moments walked back from the end; must not know how the moments were computed.

In the long run the last start hangs on a chain that goes round and round one circuit: the one with the largest ratio
of time to rounds (tokens). That ratio is the cycle time, and the stages on the circuit are what everyone waits for.
"""

from collections import Counter
from dataclasses import dataclass
from itertools import pairwise

from conewright.model.rehearsed import Gain, PaceReport
from conewright.rehearsal.moments import Node
from conewright.rehearsal.recursion import CHANGING, Play

GAIN_STEP_S = 0.1
SAID_STEP_S = 0.3  # the sentence to the coach speaks of this much, more is hardly coached in an evening
QUIET = frozenset({"go", "together", "round", "end", "receiving", "reacting", "change", "start", ""})


@dataclass(frozen=True, slots=True, kw_only=True)
class Circuit:
    """The deciding circuit: seconds a round, the rounds it spans, and its stages (act, stage, seconds) in order."""

    cycle_s: float
    rounds: int
    stages: tuple[tuple[int, str, float], ...]


def deciding_circuit(play: Play) -> Circuit | None:
    """The circuit with the largest ratio of time to rounds on the chain behind the last start; None without one."""
    if len(play.starts) < 2:
        return None
    chain = _chain(play, play.starts[-1].node)
    period = play.period()
    seen: dict[tuple[int, str, int], int] = {}
    best: tuple[float, int, int] | None = None
    by_clock = any(rotation.every_s is not None for rotation in play.script.rotations)
    settled = play.round // 3  # the first rounds start from a standstill and are not what comes again and again
    for position, node in enumerate(chain):
        if node.round < settled:
            break
        key = (node.act, node.stage, node.round % period)
        if key in seen:
            later = chain[seen[key]]
            rounds = later.round - node.round
            if rounds > 0 and not (by_clock and _holds_change(chain[seen[key] : position])):
                ratio = (later.time_s - node.time_s) / rounds
                if best is None or ratio > best[0] + 1e-12:
                    best = (ratio, seen[key], position)
        seen[key] = position
    if best is None:
        return None
    ratio, first, last = best
    return Circuit(
        cycle_s=ratio,
        rounds=chain[first].round - chain[last].round,
        stages=_stages(chain[first : last + 1]),
    )


def _holds_change(chain: list[Node]) -> bool:
    """True where a change of places is on a chain: by the clock it comes in some rounds and not in others."""
    return any(CHANGING in node.stage for node in chain)


def _chain(play: Play, number: int) -> list[Node]:
    chain = []
    while number >= 0:
        node = play.moments.nodes[number]
        chain.append(node)
        number = node.cause
    return chain


def _stages(chain: list[Node]) -> tuple[tuple[int, str, float], ...]:
    stages = []
    for later, earlier in pairwise(chain):
        seconds = later.time_s - earlier.time_s
        if seconds > 0:
            stages.append((later.act, later.stage, seconds))
    return tuple(reversed(stages))


def cycle_of(play: Play, circuit: Circuit | None) -> float:
    """The long-run mean time between starts, seconds: of the deciding circuit, else the mean over the second half.

    A change by the clock falls on no fixed round, so that no circuit holds it: there the mean counts too.
    """
    by_clock = any(rotation.every_s is not None for rotation in play.script.rotations)
    if circuit is not None and not by_clock:
        return circuit.cycle_s
    starts = play.starts
    half = len(starts) // 2
    if len(starts) < 2:
        return 0.0
    return (starts[-1].time_s - starts[half].time_s) / max(1, len(starts) - 1 - half)


def pace_of_play(play: Play, circuit: Circuit | None) -> PaceReport:
    """What decides the pace, in numbers and in one sentence."""
    if circuit is None or circuit.cycle_s <= 0:
        return PaceReport(cycle_s=cycle_of(play, circuit), rounds_in_circuit=0, circuit=(), gains=(), sentence="")
    gains = _gains(play, circuit)
    named = tuple(f"{_label(play, act, stage)} {seconds:.1f} s" for act, stage, seconds in circuit.stages)
    return PaceReport(
        cycle_s=circuit.cycle_s,
        rounds_in_circuit=circuit.rounds,
        circuit=named,
        gains=gains,
        sentence=_sentence(play, circuit, gains),
    )


def _gains(play: Play, circuit: Circuit) -> tuple[Gain, ...]:
    """Rounds a minute more if one stage took 0.1 s less, as long as this circuit stays the one that decides."""
    times: Counter[tuple[int, str]] = Counter()
    spent: Counter[tuple[int, str]] = Counter()
    for act, stage, seconds in circuit.stages:
        times[act, stage] += 1
        spent[act, stage] += seconds  # type: ignore[assignment]
    gains = []
    for (act, stage), count in times.items():
        if stage in QUIET:
            continue
        less = circuit.cycle_s - GAIN_STEP_S * count / circuit.rounds
        more = 60 / less - 60 / circuit.cycle_s if less > 0 else 0.0
        gains.append((more, spent[act, stage], Gain(act=act, label=_label(play, act, stage), rounds_a_minute=more)))
    gains.sort(key=lambda entry: (-entry[0], -entry[1]))
    return tuple(gain for _, _, gain in gains)


def _label(play: Play, act: int, stage: str) -> str:
    if act < 0:
        return stage
    played = play.rounds[0].acts[act].played
    place = play.exercise.place(played.takes_from)
    said = {
        "flight": played.words,
        "moving": played.words,
        "on the way": played.words,
        "preparing": f"{played.words}: {'setting it' if place and place.supply.count > 1 else 'control before it'}",
        "turning": played.words,
        "reacting": f"{played.words}: reacting",
        "follow-through": f"{played.words}: follow-through",
    }
    return said.get(stage, f"{played.words}: {stage}")


def _sentence(play: Play, circuit: Circuit, gains: tuple[Gain, ...]) -> str:
    if not gains:
        return ""
    best = gains[0]
    count = best.rounds_a_minute
    times = _times_in(play, circuit, best)
    less = circuit.cycle_s - SAID_STEP_S * times / circuit.rounds
    more = 60 / less - 60 / circuit.cycle_s if less > 0 else count
    subject = best.label[0].upper() + best.label[1:]
    return f"{subject} decides the pace. {SAID_STEP_S:.1f} s quicker gives {more:.1f} more rounds a minute."


def _times_in(play: Play, circuit: Circuit, gain: Gain) -> int:
    return sum(1 for act, stage, _ in circuit.stages if _label(play, act, stage) == gain.label)
