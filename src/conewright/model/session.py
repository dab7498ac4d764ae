"""Tonight and the session fitted to it; must not know how it was chosen or how it is shown. Minutes, metres."""

from dataclasses import dataclass
from enum import StrEnum

from conewright.model.exercise import Bib, Exercise
from conewright.model.geometry import Point
from conewright.model.layout import Side
from conewright.model.problem import Problem
from conewright.model.rehearsed import Rehearsed


@dataclass(frozen=True, slots=True, kw_only=True)
class Tonight:
    """What the coach says about the evening. `age` 11 means under 11; `here` counts keepers too."""

    here: int
    minutes: int
    width_m: float
    depth_m: float
    age: int = 11
    adults: int = 2
    keepers: int = 0
    balls: int = 12
    cones: int = 24
    mini_goals: int = 2
    goals: int = 0
    bibs: tuple[tuple[Bib, int], ...] = ((Bib.YELLOW, 7), (Bib.BLUE, 7), (Bib.RED, 6))
    surface: str = "grass_club"
    aim: str = ""
    seed: int = 1


class Job(StrEnum):
    """What a block does in the evening."""

    ARRIVAL = "arrival"
    WARM_UP = "warm-up"
    MAIN = "main"
    OPPOSED = "opposed"
    GAME = "game"
    CLOSE = "close"


@dataclass(frozen=True, slots=True, kw_only=True)
class Copy:
    """One copy of an exercise on the ground: its own origin in the coach's rectangle (0, 0 its lower left corner).

    `size` leaves keepers out. `rehearsed` was played at `scale`, its tracks lie in the exercise's written coordinates.

    A point p of the exercise lies at `origin + scale * mirror(turn(p))`: first turned a quarter anticlockwise if
    `turned`, then flipped left-right if `mirrored`, then scaled, then moved.
    """

    size: int
    origin: Point
    turned: bool = False
    mirrored: bool = False
    scale: float = 1.0
    bib: Bib | None = None
    sides: tuple[Side, ...] = ()
    rehearsed: Rehearsed | None = None

    def on_ground(self, point: Point) -> Point:
        """Where a point of the exercise lies in the coach's rectangle, metres."""
        across, up = (-point.y_m, point.x_m) if self.turned else point
        across = -across if self.mirrored else across
        return Point(self.origin.x_m + self.scale * across, self.origin.y_m + self.scale * up)


@dataclass(frozen=True, slots=True, kw_only=True)
class Kit:
    """Kit in use at one time."""

    balls: int = 0
    cones: int = 0
    mini_goals: int = 0
    goals: int = 0
    bibs: tuple[tuple[Bib, int], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class HeadAnswer:
    """What a block does for another head count, in words, with its figures where it was rehearsed."""

    here: int
    exercise: str
    words: str
    sizes: tuple[int, ...]
    waiting_share: float | None
    contacts_a_minute: float | None
    longest_wait_s: float | None
    rounds_a_minute: float | None
    estimated: bool = False  # contacts are a published range's middle, not rehearsed
    contacts_high: float | None = None  # the upper end where estimated; `contacts_a_minute` is then the lower


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """One exercise of the evening: when, what, how laid out, for whom; `answers` from two fewer to two more."""

    job: Job
    exercise: Exercise
    start_min: float
    minutes: float
    copies: tuple[Copy, ...]
    kit: Kit
    groups: str  # "Yellow seven, Blue six"
    why: str  # why this exercise, in a sentence
    findings: tuple[Problem, ...]
    answers: tuple[HeadAnswer, ...] = ()
    resting: int = 0  # children who rest in turn because the numbers do not come out
    keepers: int = 0  # children in goal at the keepers' places, beyond the sizes of the copies

    @property
    def players(self) -> int:
        """How many children the block holds."""
        return sum(copy.size for copy in self.copies) + self.keepers + self.resting


class PauseKind(StrEnum):
    """What happens between blocks."""

    CHANGEOVER = "changeover"
    DRINKS = "drinks"


@dataclass(frozen=True, slots=True, kw_only=True)
class Pause:
    """Between two blocks: changing over, or drinks while changing over."""

    kind: PauseKind
    start_min: float
    minutes: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Session:
    """The evening: blocks and pauses fill the minutes; `problems` concerns the whole evening, most urgent first.

    `head_counts` are the counts for which answers stand ready; where no block stands, `problems` says why.
    """

    tonight: Tonight
    blocks: tuple[Block, ...]
    pauses: tuple[Pause, ...]
    problems: tuple[Problem, ...]
    rolling_share: float = 0.0  # share of the evening planned with a ball rolling
    score: tuple[tuple[str, float], ...] = ()  # the named parts of what makes a good evening, each 0 to 1
