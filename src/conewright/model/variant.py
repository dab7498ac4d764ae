"""Steps up and down from an exercise as it was written: small named changes; must not know how they are carried out.

A variant is a stack of patches on what stands below it ("as before") or on the exercise itself ("as written").
"""

from dataclasses import dataclass
from enum import StrEnum

from conewright.model.geometry import Point
from conewright.model.problem import Span
from conewright.model.written import Manner, Numbers, Place, Rotation, Step, Team, Verb


class VariantKind(StrEnum):
    """What a variant is for."""

    HARDER = "harder"
    EASIER = "easier"
    ODD_NUMBER = "odd number"
    HALF_THE_SPACE = "half the space"
    NO_KEEPER = "no keeper"
    FEW_BALLS = "few balls"


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeManner:
    """In step `step` the same person does the same thing in another way: only the adverbs said here change."""

    step: int
    who: str
    verb: Verb
    manner: Manner
    span: Span | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class InsteadOf:
    """Another sentence in the place of a numbered one."""

    step: Step
    span: Span | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class AfterStep:
    """One sentence more, after a numbered one; the later ones are numbered on."""

    after: int
    step: Step
    span: Span | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class LeaveOut:
    """A numbered sentence less; the later ones are numbered back."""

    number: int
    span: Span | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class OneMore:
    """One place more, with how its holder changes where that is said."""

    place: Place
    rotation: Rotation | None = None
    span: Span | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Shift:
    """A place or thing stands elsewhere."""

    name: str
    at: Point
    span: Span | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Resize:
    """The box of a contest or of open play has another size, metres."""

    width_m: float
    depth_m: float
    span: Span | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherTeams:
    """Open play with other teams."""

    teams: tuple[Team, ...]
    span: Span | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherLength:
    """A bout of open play, or what a contest may last at most, has another length, seconds."""

    seconds: float
    span: Span | None = None


Patch = ChangeManner | InsteadOf | AfterStep | LeaveOut | OneMore | Shift | Resize | OtherTeams | OtherLength


@dataclass(frozen=True, slots=True, kw_only=True)
class Variant:
    """A named step up or down: patches on the step below it, or on the exercise as written; its own numbers if said."""

    kind: VariantKind
    name: str
    patches: tuple[Patch, ...]
    as_before: bool = True
    numbers: Numbers | None = None
    span: Span | None = None
