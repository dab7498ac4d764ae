"""What a rehearsal found: moments, tracks and figures; must not know how they were computed or how they are shown."""

from dataclasses import dataclass
from enum import StrEnum
from typing import NamedTuple

from conewright.model.exercise import Verb


class Doing(StrEnum):
    """What a child is doing at a moment."""

    WAITING = "waiting"
    MOVING = "moving"
    ON_BALL = "on the ball"


class Knot(NamedTuple):
    """Where something is at a moment: seconds from the first start, metres. Between knots it moves straight."""

    time_s: float
    x_m: float
    y_m: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Spell:
    """A stretch of time in which one child does one thing; `step` is the number of the sentence, 0 where none."""

    start_s: float
    end_s: float
    doing: Doing
    step: int = 0
    round: int = 0
    way_back: bool = False  # on the way to the next place after the last act on the ball


@dataclass(frozen=True, slots=True, kw_only=True)
class PersonTrack:
    """One child: where it starts, where it is at every moment, what it does (spells without a gap)."""

    person: int
    place: str
    knots: tuple[Knot, ...]
    spells: tuple[Spell, ...]


class FlightKind(StrEnum):
    """What moves a ball along a stretch of its track."""

    PASS = "pass"
    FIRM = "firm pass"
    SHOT = "shot"
    HAND = "thrown"


@dataclass(frozen=True, slots=True, kw_only=True)
class Flight:
    """A ball on its way without a foot on it: act number within the round's acts, knots along the way."""

    kind: FlightKind
    act: int
    step: int
    round: int
    passer: int  # the person who plays it
    receiver: int  # the person it is for, -1 where there is none
    knots: tuple[Knot, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class BallTrack:
    """One ball: where it is at every moment, and its flights."""

    ball: int
    knots: tuple[Knot, ...]
    flights: tuple[Flight, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Happening:
    """One act in one round: when it starts, when its ball leaves (acts with a ball), when it is over; seconds."""

    round: int
    act: int  # number in the flat list of the round's acts, `Rehearsal.acts`
    person: int
    start_s: float
    release_s: float | None
    end_s: float


@dataclass(frozen=True, slots=True, kw_only=True)
class ActName:
    """An act of the round as the rehearsal knows it: the step's number, who, the verb, a few words for the coach."""

    step: int
    who: str
    verb: Verb
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ChildFigures:
    """What one child gets in the bout. Shares are 0 to 1 of the bout; `roles` counts turns by place."""

    person: int
    turns: int
    contacts: int
    passes: int
    metres: float
    waiting_share: float
    longest_wait_s: float
    roles: tuple[tuple[str, int], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Gain:
    """What 0.1 s less in one act gives: more rounds a minute. `label` says the act in the coach's words."""

    act: int
    label: str
    rounds_a_minute: float


@dataclass(frozen=True, slots=True, kw_only=True)
class PaceReport:
    """What decides the pace: the circuit of acts and waits that takes longest a token, and what a shorter one gives."""

    cycle_s: float
    rounds_in_circuit: int
    circuit: tuple[str, ...]  # labels, in the order of time
    gains: tuple[Gain, ...]  # the best first
    sentence: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Rehearsal:
    """A fixed script played if all goes cleanly: no chance in it, so no band. Times in seconds, lengths in metres.

    `cycle_s` is the long-run mean time between starts of rounds. Children's figures are counted over the bout.
    """

    exercise: str
    size: int
    age: int
    surface: str
    bout_s: float
    acts: tuple[ActName, ...]
    happenings: tuple[Happening, ...]
    children: tuple[ChildFigures, ...]
    people: tuple[PersonTrack, ...]
    balls: tuple[BallTrack, ...]
    round_starts_s: tuple[float, ...]
    cycle_s: float
    pace: PaceReport
    contacts_a_minute: float  # foot contacts a child a minute, mean
    passes_a_minute: float  # a child, mean
    metres_a_minute: float
    waiting_share: float  # mean
    longest_wait_s: float
    rolling_share: float  # share of the bout in which at least one ball is in play
    longest_line: int  # the most children in one line at any moment, its head counted
    longest_line_at: str

    @property
    def rounds_a_minute(self) -> float:
        """Rounds a minute in the long run."""
        return 60.0 / self.cycle_s if self.cycle_s else 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Estimate:
    """What published figures say about open play or a contest: a range, never a rehearsal. Shown as an estimate."""

    exercise: str
    size: int
    what: str  # "foot contacts a child a minute"
    low: float
    high: float
    source: str
    grade: str


@dataclass(frozen=True, slots=True, kw_only=True)
class NotRehearsed:
    """Where neither a script nor a published figure serves; `why` says so in words."""

    exercise: str
    size: int
    why: str


Rehearsed = Rehearsal | Estimate | NotRehearsed
