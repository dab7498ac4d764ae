"""Who waits at each place and which balls lie there: the tokens of a play; must not know what is done with them."""

from dataclasses import dataclass, field
from typing import NamedTuple

from conewright.rehearsal.moments import Moment


class Waiting(NamedTuple):
    """Somebody at a place: when it came, in which order, who, whether it is still the head from before."""

    time_s: float
    order: int
    person: int
    node: int
    stands: bool


@dataclass(slots=True)
class Lines:
    """The children at every place, and when its head last left: real state with a life of one rehearsal."""

    waiting: dict[str, list[Waiting]] = field(default_factory=dict)
    left: dict[str, Moment] = field(default_factory=dict)
    order: int = 0

    def join(self, name: str, moment: Moment, person: int, *, stands: bool = False) -> None:
        """Somebody comes to a place, or stays there as its head."""
        self.order += 1
        self.waiting.setdefault(name, []).append(Waiting(moment.time_s, self.order, person, moment.node, stands))

    def anybody_at(self, name: str) -> bool:
        """True where somebody waits or stands."""
        return bool(self.waiting.get(name))

    def take_head(self, name: str) -> Waiting | None:
        """Whose turn it is: the head that never left, then who came first. It is taken out of the line."""
        line = self.waiting.get(name)
        if not line:
            return None
        head = min(line, key=_turn)
        line.remove(head)
        return head


def _turn(waiting: Waiting) -> tuple[bool, float, int]:
    return not waiting.stands, waiting.time_s, waiting.order


@dataclass(slots=True)
class Balls:
    """Balls that lie at places and balls that people hold: real state with a life of one rehearsal."""

    lying: dict[str, list[tuple[float, int, int]]] = field(default_factory=dict)  # time, ball, node
    held: dict[int, int] = field(default_factory=dict)  # person -> ball

    def lay(self, name: str, moment: Moment, ball: int) -> None:
        """A ball comes to lie at a place."""
        self.lying.setdefault(name, []).append((moment.time_s, ball, moment.node))

    def take(self, name: str) -> tuple[int, Moment] | None:
        """The ball that has lain longest at a place, and since when; None where there is none."""
        lying = self.lying.get(name)
        if not lying:
            return None
        first = min(lying)
        lying.remove(first)
        return first[1], Moment(first[0], first[2])
