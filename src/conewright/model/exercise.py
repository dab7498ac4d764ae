"""An exercise, whole, with the steps up and down from it; must not know how it is written, timed or drawn."""

from dataclasses import dataclass

from conewright.model.problem import Span
from conewright.model.variant import Variant
from conewright.model.written import (
    Act as Act,
)
from conewright.model.written import (
    Ages as Ages,
)
from conewright.model.written import (
    Bib as Bib,
)
from conewright.model.written import (
    Contest as Contest,
)
from conewright.model.written import (
    Ending as Ending,
)
from conewright.model.written import (
    Event as Event,
)
from conewright.model.written import (
    Fault as Fault,
)
from conewright.model.written import (
    Foot as Foot,
)
from conewright.model.written import (
    Form as Form,
)
from conewright.model.written import (
    Holds as Holds,
)
from conewright.model.written import (
    Manner as Manner,
)
from conewright.model.written import (
    Move as Move,
)
from conewright.model.written import (
    NextRound as NextRound,
)
from conewright.model.written import (
    Numbers as Numbers,
)
from conewright.model.written import (
    OpenPlay as OpenPlay,
)
from conewright.model.written import (
    Outcome as Outcome,
)
from conewright.model.written import (
    Pace as Pace,
)
from conewright.model.written import (
    Place as Place,
)
from conewright.model.written import (
    PlayKind as PlayKind,
)
from conewright.model.written import (
    Rotation as Rotation,
)
from conewright.model.written import (
    RotationKind as RotationKind,
)
from conewright.model.written import (
    Script as Script,
)
from conewright.model.written import (
    SideOrder as SideOrder,
)
from conewright.model.written import (
    Sides as Sides,
)
from conewright.model.written import (
    Space as Space,
)
from conewright.model.written import (
    Start as Start,
)
from conewright.model.written import (
    Step as Step,
)
from conewright.model.written import (
    Supply as Supply,
)
from conewright.model.written import (
    SupplyKind as SupplyKind,
)
from conewright.model.written import (
    Target as Target,
)
from conewright.model.written import (
    TargetKind as TargetKind,
)
from conewright.model.written import (
    Team as Team,
)
from conewright.model.written import (
    Thing as Thing,
)
from conewright.model.written import (
    ThingKind as ThingKind,
)
from conewright.model.written import (
    Trigger as Trigger,
)
from conewright.model.written import (
    Verb as Verb,
)
from conewright.model.written import (
    Via as Via,
)
from conewright.model.written import (
    Weight as Weight,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Exercise:
    """One exercise, whole. `kind` is one of `KINDS`; `good_for` names the parts of an evening it suits, or is empty."""

    name: str
    kind: str
    numbers: Numbers
    ages: Ages
    aims: tuple[str, ...] = ()
    good_for: tuple[str, ...] = ()
    space: Space | None = None
    places: tuple[Place, ...] = ()
    things: tuple[Thing, ...] = ()
    start: Start | None = None
    script: Script | None = None
    open_play: OpenPlay | None = None
    forms: tuple[Form, ...] = ()
    variants: tuple[Variant, ...] = ()  # steps up and down, as they are written
    cues: tuple[str, ...] = ()
    faults: tuple[Fault, ...] = ()
    notes: tuple[str, ...] = ()
    score: str = ""
    cautions: tuple[str, ...] = ()
    span: Span | None = None

    def place(self, name: str) -> Place | None:
        """The place of that name, if there is one."""
        for place in self.places:
            if place.name == name:
                return place
        return None

    def thing(self, name: str) -> Thing | None:
        """The thing of that name, if there is one."""
        for thing in self.things:
            if thing.name == name:
                return thing
        return None

    def variant(self, name: str) -> Variant | None:
        """The step of that name, if there is one."""
        return next((variant for variant in self.variants if variant.name == name), None)


KINDS = (
    "passing pattern",
    "receiving and turning",
    "dribbling",
    "finishing",
    "crossing",
    "goalkeeping",
    "duel",
    "rondo",
    "possession",
    "transition game",
    "small-sided game",
    "fun game",
    "warm-up",
    "relay",
    "set piece",
    "circuit",
    "cool-down",
)
