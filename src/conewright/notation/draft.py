"""What was read of an exercise so far; must not know how it was written."""

from dataclasses import dataclass, field, replace

from conewright.model.exercise import (
    Act,
    Ages,
    Exercise,
    Fault,
    Form,
    NextRound,
    Numbers,
    OpenPlay,
    Place,
    Rotation,
    Script,
    Sides,
    Space,
    Start,
    Step,
    Thing,
    Trigger,
)
from conewright.model.problem import Span
from conewright.model.variant import Variant

ANY_AGE = Ages(youngest=6, oldest=19)
ANY_NUMBERS = Numbers(least=1, most=30)


@dataclass(slots=True)
class Draft:
    """An exercise while it is read: real state with a life of one text."""

    name: str = ""
    kind: str = ""
    numbers: Numbers | None = None
    numbers_sure: bool = False  # nothing was wrong with them
    ages: Ages = ANY_AGE
    aims: list[str] = field(default_factory=list)
    good_for: list[str] = field(default_factory=list)
    space: Space | None = None
    places: list[Place] = field(default_factory=list)
    things: list[Thing] = field(default_factory=list)
    start: Start | None = None
    round_opened: bool = False
    sides: Sides | None = None
    steps: list[Step] = field(default_factory=list)
    next_trigger: Trigger | None = None
    in_flight: int | None = None
    next_span: Span | None = None
    rotations: list[Rotation] = field(default_factory=list)
    mirrored: bool = False
    play: OpenPlay | None = None
    rules: list[str] = field(default_factory=list)
    forms: list[Form] = field(default_factory=list)
    variants: list[Variant] = field(default_factory=list)
    cues: list[str] = field(default_factory=list)
    faults: list[Fault] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)
    score: str = ""
    cautions: list[str] = field(default_factory=list)
    seen: set[str] = field(default_factory=set)  # what may be said once and was said

    def acts(self) -> tuple[Act, ...]:
        """The acts of the round so far."""
        return tuple(act for step in self.steps for act in step.acts)

    def taken(self) -> frozenset[str]:
        """The names of the places and things so far."""
        return frozenset(place.name for place in self.places) | frozenset(thing.name for thing in self.things)

    def declared(self) -> dict[str, Span | None]:
        """Where each name is declared: places, things and the words for sides."""
        words = (self.sides.word, self.sides.other) if self.sides else ()
        sides = {word: self.sides.span for word in words if word} if self.sides else {}
        places = {place.name: place.span for place in self.places}
        return sides | places | {thing.name: thing.span for thing in self.things}

    def is_empty(self) -> bool:
        """True where nothing was read that makes an exercise."""
        return not (self.name or self.places or self.things or self.steps or self.play)

    def exercise(self, span: Span | None = None) -> Exercise:
        """The exercise as far as it was read."""
        return Exercise(
            name=self.name,
            kind=self.kind,
            numbers=self.numbers or ANY_NUMBERS,
            ages=self.ages,
            aims=tuple(self.aims),
            good_for=tuple(self.good_for),
            space=self.space,
            places=tuple(self.places),
            things=tuple(self.things),
            start=self.start,
            script=self._script(),
            open_play=replace(self.play, rules=tuple(self.rules)) if self.play else None,
            forms=tuple(self.forms),
            variants=tuple(self.variants),
            cues=tuple(self.cues),
            faults=tuple(self.faults),
            notes=tuple(self.notes),
            score=self.score,
            cautions=tuple(self.cautions),
            span=span,
        )

    def _script(self) -> Script | None:
        if not (self.steps or self.round_opened):
            return None
        spans = tuple(step.span for step in self.steps if step.span)
        whole = None
        if spans:
            first, last = spans[0], spans[-1]
            whole = replace(first, end_line=last.end_line, end_column=last.end_column)
        opened = self.next_trigger is not None or self.in_flight is not None
        following = NextRound(trigger=self.next_trigger, in_flight=self.in_flight, span=self.next_span)
        return Script(
            steps=tuple(self.steps),
            sides=self.sides,
            next_round=following if opened else None,
            rotations=tuple(self.rotations),
            mirrored_at_half_time=self.mirrored,
            span=whole,
        )
