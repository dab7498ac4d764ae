"""The parts of an exercise as it was read: places, balls, acts, rotation, boxes; must not know how they are drawn.

Person, role and place are three things. A *place* is a spot where one or a line of children stands. A *role* is who
does an act: it carries the name of a place (or of the sides word) and binds, in each round, to whoever stands at the
head of that place when the round first needs it; it is released after its bearer's last act of the round.
"""

from dataclasses import dataclass, field
from enum import StrEnum

from conewright.model.geometry import ORIGIN, Point
from conewright.model.problem import Span


class Bib(StrEnum):
    """Colours of bibs, which name teams and copies."""

    YELLOW = "Yellow"
    BLUE = "Blue"
    RED = "Red"
    GREEN = "Green"


class Holds(StrEnum):
    """How many a place admits: one, or a line that waits behind its head."""

    ONE = "one"
    LINE = "line"


class SupplyKind(StrEnum):
    """Whose the balls at a place are."""

    NONE = "none"  # no ball at the start
    BALL = "ball"  # one ball, used by the head; whoever brings it hands it to the head
    EACH = "each"  # everybody who stands here has a ball of their own
    STOCK = "stock"  # so many balls lie here; who brings one adds to it


class ThingKind(StrEnum):
    """What may stand on the ground beside places."""

    CONE = "cone"
    GATE = "gate"
    MINI_GOAL = "mini goal"
    GOAL = "goal"
    WALL = "wall"  # a bench on its side or a rebound board: a ball comes back from it


class Verb(StrEnum):
    """What a person does; `docs/notation.md` says how each is written."""

    PASS = "pass"  # to feet, or ahead of somebody
    SET_BACK = "set back"  # a first-time pass back to whoever played it
    CROSS = "cross"  # lofted, ahead of somebody or to a point
    THROW = "throw"  # by hand, to feet
    SHOOT = "shoot"
    DRIBBLE = "dribble"
    RUN = "run"
    CHECK = "check"  # a step away from the ball, about 2 m, before showing
    SHOW = "show"  # back to the own place after a check, else a step towards the ball
    TURN = "turn"  # turns with the ball on the spot
    FETCH = "fetch"  # goes to where the ball lies and brings it under control
    CALL = "call"  # gives a signal
    WAIT = "wait"  # does nothing for so many seconds
    TASK = "task"  # does a named small task for so many seconds


class Pace(StrEnum):
    """How fast a movement is."""

    WALK = "walk"
    JOG = "jog"
    RUN = "run"
    SPRINT = "sprint"


class Weight(StrEnum):
    """How hard a ball is played."""

    SOFT = "soft"
    USUAL = "usual"
    FIRM = "firm"


class Foot(StrEnum):
    """Which foot is asked for."""

    LEFT = "left"
    RIGHT = "right"
    WEAK = "weak"


class TargetKind(StrEnum):
    """What an act is aimed at."""

    ROLE = "role"  # the bearer of a role, at feet
    AHEAD = "ahead"  # in front of the bearer of a role, who meets it on the run; `at` or `name`+`thing` may say where
    PLACE = "place"  # a place to go to: its line, or its spot
    POINT = "point"
    THING = "thing"  # a goal, gate, cone or wall
    TOWARDS = "towards"  # so many metres in the direction of a place or thing
    OWN = "own"  # the own place ("home", "own line")


class Event(StrEnum):
    """What may start an act or the next round. `who` in the trigger names the role it is seen on."""

    RELEASED = "released"  # who's ball leaves the foot or hand ("when Base passes")
    CONTROLLED = "controlled"  # who has the ball ("when Stem has the ball", "on Stem's first touch")
    SHOT = "shot"  # who shoots
    OVER = "over"  # who's shot is over
    ARRIVED = "arrived"  # who reaches the end of the movement ("when Side is home", "when Left reaches Gate")
    HALFWAY = "halfway"  # who is halfway along the movement to home
    PASSED = "passed"  # who's track first comes level with a place, thing or point
    STARTED = "started"  # who starts to move
    STEP = "step"  # a numbered step is done
    BACK = "back"  # the ball is back at a place
    READY = "ready"  # who stands ready at the place
    BOX_CLEAR = "box clear"  # the contest is over and the box is empty
    TOGETHER = "together"  # as soon as the people it needs are there
    CALL = "call"  # the coach calls


@dataclass(frozen=True, slots=True, kw_only=True)
class Numbers:
    """How many children an exercise is for."""

    least: int
    most: int
    best: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Ages:
    """From under `youngest` to under `oldest`."""

    youngest: int
    oldest: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Space:
    """The ground the exercise says it needs, metres; either way round."""

    width_m: float
    depth_m: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Supply:
    """The balls of a place at the start; `count` is 1 for BALL and 0 for NONE and EACH."""

    kind: SupplyKind = SupplyKind.NONE
    count: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """A spot where people stand. `waits` is the side a line waits on: behind, left or right as play looks."""

    name: str
    at: Point
    holds: Holds
    supply: Supply = field(default_factory=Supply)
    bib: Bib | None = None
    facing: str | None = None  # name of a place or thing; unsaid: the first ball or the middle of the exercise
    waits: str = "behind"
    adult: bool = False  # the coach or a helper stands here and serves; not counted among the children
    keeper: bool = False  # a keeper's place: an extra person where keepers are here
    passive: bool = False  # an opponent who closes and does not tackle
    span: Span | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Thing:
    """Kit on the ground. `upright` turns a gate or wall so that it lies up the page instead of level."""

    name: str
    kind: ThingKind
    at: Point
    width_m: float = 0.0
    upright: bool = False
    span: Span | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Target:
    """Where an act goes. `name` is a role, place or thing; `distance_m` serves TOWARDS; `end` the end of a line."""

    kind: TargetKind
    name: str = ""
    at: Point | None = None
    distance_m: float = 0.0
    end: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Via:
    """On the way: round a cone or place, or through a gate; `how` is "round" or "through"."""

    how: str
    name: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Manner:
    """How an act is done. `touches` None means unsaid: free for the young, two from under 11."""

    touches: int | None = None
    weight: Weight = Weight.USUAL
    foot: Foot | None = None
    pace: Pace | None = None
    outside: bool = False  # round the outside of the exercise
    lofted: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Trigger:
    """When something starts: an event seen on a role, a step or a place, with a delay in seconds."""

    event: Event
    who: str = ""
    step: int | None = None
    name: str = ""  # the place or thing reached, passed, or where the ball is back
    delay_s: float = 0.0
    span: Span | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Act:
    """One person, one verb. Acts of one person in a step follow each other; acts of different people start together."""

    who: str
    verb: Verb
    target: Target | None = None
    manner: Manner = field(default_factory=Manner)
    via: tuple[Via, ...] = ()
    start: Trigger | None = None
    seconds: float | None = None  # of WAIT and TASK; of CHECK and TASK unsaid means the figure
    what: str = ""  # the words of a CALL or a TASK
    span: Span | None = None


class Ending(StrEnum):
    """How a contest may end."""

    SCORED = "scored"
    OUT = "out"
    WON = "won"  # the defending side wins the ball
    TIME_UP = "time up"


@dataclass(frozen=True, slots=True, kw_only=True)
class Move:
    """After the acts of a round a bearer goes to a place; `brings_ball_to` names where it takes the ball first.

    `who` is a role, or one of the words "winner", "loser", "scorer", "other" in the outcomes of a contest.
    """

    who: str
    to: str
    brings_ball_to: str | None = None
    span: Span | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """What happens after a contest ends in one of `endings`; `ball_to` names a place where nobody brings it."""

    endings: tuple[Ending, ...]
    moves: tuple[Move, ...]
    ball_to: str | None = None
    span: Span | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Contest:
    """A duel or race in a box that is left to the children: never scripted, drawn shaded."""

    width_m: float
    depth_m: float
    middle: Point
    attackers: tuple[str, ...]  # roles
    defenders: tuple[str, ...]
    on: tuple[str, ...] = ()  # goals, gates or lines attacked by the attackers
    counter: tuple[str, ...] = ()  # what the defenders may attack after winning it
    limit_s: float | None = None
    outcomes: tuple[Outcome, ...] = ()
    span: Span | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """A numbered sentence of the round: acts, or a contest."""

    number: int
    acts: tuple[Act, ...] = ()
    contest: Contest | None = None
    span: Span | None = None


class SideOrder(StrEnum):
    """How the sides of an exercise take turns."""

    IN_TURN = "in turn"
    HALF_TIME = "half time"  # the first, then from half time the second
    CHOICE = "choice"  # as a child chooses; a rehearsal takes them in turn
    CALL = "call"  # as the coach calls; a rehearsal takes them in turn


@dataclass(frozen=True, slots=True, kw_only=True)
class Sides:
    """A role word that stands for one of several places or things, in turn: round r uses the one r modulo their number.

    Where there are two, `other` may be a word for the one that is not meant. `chooser` is the role that chooses.
    """

    word: str
    places: tuple[str, ...]
    order: SideOrder = SideOrder.IN_TURN
    chooser: str = ""
    other: str = ""
    span: Span | None = None


class RotationKind(StrEnum):
    """What the rotation sentence says."""

    FOLLOW = "follow"  # everybody follows the own pass
    MOVES = "moves"  # role to place, listed
    STAY = "stay"  # everybody goes back to the own place or line


@dataclass(frozen=True, slots=True, kw_only=True)
class Rotation:
    """Who goes where after a round, `every_rounds` rounds or `every_s` seconds (of which one is set)."""

    kind: RotationKind
    moves: tuple[Move, ...] = ()
    every_rounds: int = 1
    every_s: float | None = None
    span: Span | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class NextRound:
    """What starts the next round and how many may run at once; None means unsaid."""

    trigger: Trigger | None = None
    in_flight: int | None = None
    span: Span | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Start:
    """Who stands where at the start: counts by place, the rest shared between the `rest` places."""

    counts: tuple[tuple[str, int], ...] = ()
    rest: tuple[str, ...] = ()
    even: bool = False  # "the same number in each line"
    span: Span | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Script:
    """The fixed part of an exercise: what happens in each round."""

    steps: tuple[Step, ...]
    sides: Sides | None = None
    next_round: NextRound | None = None
    rotations: tuple[Rotation, ...] = ()
    mirrored_at_half_time: bool = False
    span: Span | None = None


class PlayKind(StrEnum):
    """What an open-play box is about."""

    BALL_EACH = "ball each"  # everyone has a ball
    KEEP = "keep"  # some keep it from others
    GAME = "game"  # two sides, each scores against the other
    CHASE = "chase"  # catchers and dribblers, tags, tails


@dataclass(frozen=True, slots=True, kw_only=True)
class Team:
    """A side in open play; `count` None shares what is left evenly; `job` is what it does in the coach's words."""

    name: str  # a bib colour, or a word such as "neutral", "catchers"
    count: int | None = None
    bib: Bib | None = None
    has_ball_each: bool = False
    span: Span | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class OpenPlay:
    """A game left to the children. Teams with no number share whoever is there; one over is `odd_one`."""

    width_m: float
    depth_m: float
    kind: PlayKind
    middle: Point = ORIGIN
    teams: tuple[Team, ...] = ()
    together: tuple[str, ...] = ()  # teams beside the first that keep or play together with it
    on: tuple[str, ...] = ()  # things at which teams score
    balls: int = 1  # 0 where everyone has a ball
    odd_one: str = "neutral"  # "neutral", a team's name, or "shares" (two share a ball), "rests in turn"
    bout_s: float | None = None
    swap: str = ""
    restart: str = ""
    rules: tuple[str, ...] = ()
    span: Span | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Form:
    """How the exercise is laid out for `least` to `most` children: copies, or other team numbers."""

    least: int
    most: int
    copies: int = 1
    apart_m: float | None = None
    mirrored: bool = False
    teams: tuple[Team, ...] = ()  # replaces the open play's teams
    start: Start | None = None  # replaces the start
    span: Span | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Fault:
    """A common fault and what to say about it."""

    fault: str
    remedy: str = ""
