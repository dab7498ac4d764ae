"""Moments and what decided them: sums and latest-ofs, each remembered; must not know what happens at them."""

from dataclasses import dataclass, field
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


@dataclass(slots=True)
class Moments:
    """All moments of a play, in the order in which they were found: real state with a life of one rehearsal."""

    nodes: list[Node] = field(default_factory=list)
    round: int = 0

    def plus(self, moment: Moment, seconds: float, act: int, stage: str) -> Moment:
        """The moment so many seconds later."""
        return self.node(moment.time_s + seconds, moment.node, act, stage)

    def latest(self, moments: list[Moment], act: int, stage: str) -> Moment:
        """The last of some moments, remembering which."""
        last = moments[0]
        for moment in moments:
            if moment.time_s > last.time_s:
                last = moment
        return self.node(last.time_s, last.node, act, stage)

    def node(self, time_s: float, cause: int, act: int, stage: str) -> Moment:
        nodes = self.nodes
        nodes.append(Node(time_s, cause, act, stage, self.round))
        return Moment(time_s, len(nodes) - 1)

    def move_to_round(self, moment: Moment, round_: int) -> None:
        """Count a moment to another round than the one in which it was found."""
        self.nodes[moment.node] = self.nodes[moment.node]._replace(round=round_)
