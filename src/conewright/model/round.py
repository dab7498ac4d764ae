"""One round as it is played: who bears which role, every movement and flight with its path; must not know of time.

`conewright.model.unroll` makes these from an exercise. Rehearsal adds time, drawing adds ink, checks read them.
"""

from dataclasses import dataclass

from conewright.model.exercise import Act, Contest, Trigger, Verb
from conewright.model.geometry import Point
from conewright.model.problem import Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Bearer:
    """Who bears a role in the round: comes from the head of `place`, ends at `ends_at` (a place, or "" where lost)."""

    number: int
    role: str  # the word the text uses, "Side" where sides take turns
    place: str
    ends_at: str
    adult: bool = False
    stays: bool = False  # does not leave its place in the round: still its head in the next one
    ends_with_ball: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Played:
    """One act of the round. `path` is where the bearer's feet go (one point where it stands still), `flight` where the
    ball goes without a foot on it (empty where it does not). `with_ball`: the bearer takes the ball along.

    `receiver` is the number of the bearer who gets the ball, None where nobody does (a shot, a ball to a stock).
    `implied` marks a movement the text does not write: the rotation, fetching the own shot. `way_back` marks the
    movement after the bearer's last act with a ball, which takes it to its next place.
    """

    number: int
    step: int
    bearer: int
    verb: Verb
    path: tuple[Point, ...]
    heading: float = 0.0  # where the bearer looks before it, radians
    flight: tuple[Point, ...] = ()
    receiver: int | None = None
    receives_at: Point | None = None
    with_ball: bool = False
    leaves_ball: bool = False  # the ball is left at `to_place`: its bearer goes on without it
    takes_from: str = ""  # the place whose supply gives the ball this act needs; "" where the bearer has it already
    implied: bool = False
    way_back: bool = False
    homeward: bool = False  # the bearer's last movement of the round, to its next place, with or without a ball
    act: Act | None = None
    start: Trigger | None = None
    to_place: str = ""  # the place whose line or spot the movement ends at
    words: str = ""
    span: Span | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Round:
    """A round with the sides as they are in round `side` (0 where there are none): acts in the order of the text.

    Rotations that come every so many rounds are not part of it.
    """

    side: int
    places: tuple[tuple[str, str], ...]  # role word -> place, for the sides word
    bearers: tuple[Bearer, ...]
    acts: tuple[Played, ...]
    contest: Contest | None = None
    contest_step: int = 0
