"""Moments and what decided them: sums and latest-ofs, each remembered; must not know what happens at them."""

from dataclasses import dataclass, field
from operator import itemgetter
from typing import NamedTuple


class Moment(NamedTuple):
    """A time and the node that carries it."""

    time_s: float
    node: int


class Node(NamedTuple):
    """A moment as it is remembered: its time, the node that decided it (-1: none), act and stage, round."""

    time_s: float
    cause: int
    act: int
    stage: str
    round: int


class Signal(NamedTuple):
    """A moment that may count: its time, what it comes from, act and stage; "" where it is remembered already."""

    time_s: float
    cause: int
    act: int
    stage: str


NEARLY_S = 1e-7
_time = itemgetter(0)


def later(first: Moment, second: Moment) -> Moment:
    """The later of two moments, the first where they are one."""
    return second if second[0] > first[0] else first


def seen(moment: Moment) -> Signal:
    """A moment as a signal of its own."""
    return tuple.__new__(Signal, (moment[0], moment[1], -1, ""))


def after(moment: Moment, seconds: float, act: int, stage: str) -> Signal:
    """What comes so many seconds after a moment, as a signal."""
    return tuple.__new__(Signal, (moment[0] + seconds, moment[1], act, stage))


def settled(starts: list[Moment], period: int) -> bool:
    """True where the last third of some starts repeats the third before it, after so many rounds or a multiple."""
    last = len(starts) - 1
    for rounds in range(period, len(starts) // 3 + 1, period):
        lasts_s = starts[last][0] - starts[last - rounds][0]
        earlier = range(last - 2 * rounds + 1, last)
        if all(abs(starts[at][0] - starts[at - rounds][0] - lasts_s) < NEARLY_S for at in earlier):
            return True
    return False


@dataclass(slots=True)
class Moments:
    """All moments of a play, in the order in which they were found: real state with a life of one rehearsal."""

    nodes: list[Node] = field(default_factory=list)
    round: int = 0

    def plus(self, moment: Moment, seconds: float, act: int, stage: str) -> Moment:
        """The moment so many seconds later."""
        time_s, cause = moment
        return self.node(time_s + seconds, cause, act, stage)

    def latest(self, signals: list[Signal]) -> Moment:
        """The moment of the last of some signals, remembered only now that it is known to count."""
        time_s, cause, act, stage = max(signals, key=_time)
        return self.node(time_s, cause, act, stage) if stage else tuple.__new__(Moment, (time_s, cause))

    def node(self, time_s: float, cause: int, act: int, stage: str) -> Moment:
        """A moment with what decided it: the busiest line of a rehearsal, so that records are made the short way."""
        nodes = self.nodes
        nodes.append(tuple.__new__(Node, (time_s, cause, act, stage, self.round)))
        return tuple.__new__(Moment, (time_s, len(nodes) - 1))

    def move_to_round(self, moment: Moment, round_: int) -> None:
        """Count a moment to another round than the one in which it was found."""
        self.nodes[moment.node] = self.nodes[moment.node]._replace(round=round_)
