"""What each of the children is told to do in a round, in order, and where it goes next; must not know of time."""

from dataclasses import dataclass, field

from conewright.model.exercise import Exercise, Holds, Place, SupplyKind, TargetKind, Verb
from conewright.model.round import Bearer, Played
from conewright.model.told import RoleTold
from conewright.notation.amounts import capital
from conewright.notation.doing import ball_brought, clause
from conewright.notation.duels import contest_sentences, is_in_contest
from conewright.notation.spoken import Scene, comes_second, either, thing_or_name, until, when, who

WITH_BALL = frozenset({Verb.DRIBBLE, Verb.TURN, Verb.FETCH})
MOST_CLAUSES = 3  # more in one sentence nobody keeps in mind


def roles_told(exercise: Exercise, scenes: tuple[Scene, ...]) -> tuple[RoleTold, ...]:
    """Every child's part, in the order in which they come into play; what differs from side to side is told apart."""
    parts: dict[str, dict[tuple[str, ...], str]] = {}
    for scene in scenes:
        for bearer in scene.round_.bearers:
            if not bearer.adult and (not comes_second(scene, bearer) or _acts_of(scene, bearer)):
                told = parts.setdefault(_starts(scene, bearer), {})
                told.setdefault(bearer_sentences(scene, bearer), _turn_of(scene))
        for role in _waiting(scene):
            told = parts.setdefault(_starts_at(exercise, role, scene), {})
            told.setdefault(_waiting_sentences(scene, role), _turn_of(scene))
    return tuple(
        RoleTold(start=start if len(told) == 1 else f"{start}, {turn}", sentences=_small(sentences))
        for start, told in parts.items()
        for sentences, turn in told.items()
    )


def _turn_of(scene: Scene) -> str:
    sides = scene.sides
    return f"when it is {thing_or_name(scene.exercise, sides[scene.round_.side])}'s turn" if sides else ""


def _small(sentences: tuple[str, ...]) -> tuple[str, ...]:
    return (sentences[0][:1].lower() + sentences[0][1:], *sentences[1:])


def _acts_of(scene: Scene, bearer: Bearer) -> list[Played]:
    return [one for one in scene.round_.acts if one.bearer == bearer.number]


# --- where they start ---


def _starts(scene: Scene, bearer: Bearer) -> str:
    if comes_second(scene, bearer):
        return f"You come next at {bearer.place}"
    return _starts_at(scene.exercise, bearer.role, scene)


def _starts_at(exercise: Exercise, role: str, scene: Scene) -> str:
    where = either(scene.sides) if scene.is_side(role) or scene.is_other(role) else role
    place = exercise.place(scene.meant(role))
    idle = ", and it is not your turn" if scene.is_other(role) else ""
    if place is None:
        return f"You start at {where}{idle}"
    if place.keeper:
        return f"You are the keeper, at {where}"
    bib = f", in {place.bib.value.lower()}" if place.bib and place.bib.value.lower() not in where.lower() else ""
    return f"You start at {where}{bib}{_with_ball(place)}{idle}"


def _with_ball(place: Place) -> str:
    first = ", where the first in line has the ball" if place.holds is Holds.LINE else ", with the ball"
    lies = "ball is" if place.supply.count == 1 else "balls are"
    return {
        SupplyKind.NONE: "",
        SupplyKind.EACH: ", with your own ball",
        SupplyKind.BALL: first,
        SupplyKind.STOCK: f", where the {lies}",
    }[place.supply.kind]


# --- who does nothing in a round by its own ---


def _waiting(scene: Scene) -> list[str]:
    """Places of children that have no bearer in this round, contest roles among them."""
    at_work = {bearer.place for bearer in scene.round_.bearers} | set(scene.sides)
    return [place.name for place in scene.exercise.places if place.name not in at_work and not place.adult]


def _waiting_sentences(scene: Scene, role: str) -> tuple[str, ...]:
    duel = contest_sentences(scene, role, begins=True)
    place = scene.exercise.place(role)
    if duel:
        return duel
    if place is not None and place.passive:
        return ("Stay close and get in the way, but do not take the ball.",)
    return ("Wait there until your turn comes.",)


# --- what they do ---


@dataclass(slots=True, kw_only=True)
class _Telling:
    """Sentences while they are made: real state with a life of one child's part."""

    scene: Scene
    bearer: Bearer
    sentences: list[str] = field(default_factory=list)
    chain: list[str] = field(default_factory=list)
    cue: str = ""
    came: Played | None = None  # the kick that brought the ball since the last own act
    named_ball: bool = False  # whether the sentence has spoken of the ball

    def close(self, after: str = "") -> None:
        """End the sentence that is being made."""
        if self.chain:
            *first, last = self.chain
            told = f"{', '.join(first)}{', then ' if first else ''}{last}"
            told = f"{self.cue}, {told}" if self.cue else told
            self.sentences.append(f"{capital(told)}{after}.")
        self.chain, self.cue, self.named_ball = [], "", False

    def act(self, played: Played) -> None:
        """Tell one act of its own."""
        cue = _cue(self.scene, self.bearer, played, self.came, first=not self.sentences and not self.chain)
        if cue or len(self.chain) == MOST_CLAUSES:
            self.close()
            self.cue, self.named_ball = cue, self.came is not None
            if self.came is not None and played.act is not None and played.act.start is not None:
                self.chain.append(f"wait until {until(self.scene, played.act.start, self.bearer.number)}")
        if played.homeward:
            self.go(played)
        else:
            self.chain.append(self.words(played))
        self.came = played if played.receiver == self.bearer.number else None

    def words(self, played: Played) -> str:
        """The act, with the ball called by what was said of it before."""
        place = self.scene.exercise.place(played.takes_from)
        kind = place.supply.kind if place is not None else SupplyKind.NONE
        ball = "it" if self.named_ball else {SupplyKind.EACH: "your ball"}.get(kind, "the ball")
        taken = ""
        if kind is SupplyKind.STOCK:
            taken, ball = "take a ball and ", "it"
        self.named_ball = self.named_ball or bool(played.flight or taken) or played.verb in WITH_BALL
        return f"{taken}{clause(self.scene, played, ball=ball)}"

    def go(self, played: Played) -> None:
        """Tell the last way, to the next place."""
        if self.chain:
            self.close()
        then = "then " if self.sentences and not self.cue else ""
        self.chain = [f"{then}{self.words(played)}"]
        place = self.scene.exercise.place(played.to_place)
        brought = ball_brought(place) if played.with_ball and not played.leaves_ball else ""
        self.close(brought)
        if place is not None and place.name != self.bearer.place:
            self.sentences.append("That is your next place.")


def bearer_sentences(scene: Scene, bearer: Bearer) -> tuple[str, ...]:
    """What one bearer does in order, each sentence with its full stop."""
    telling = _Telling(scene=scene, bearer=bearer)
    in_duel = is_in_contest(scene, bearer.role)
    for played in scene.round_.acts:
        if played.bearer == bearer.number:
            if not (in_duel and played.implied and played.to_place):  # where it goes is said by the outcomes
                telling.act(played)
        elif played.receiver == bearer.number:
            telling.came = played
    telling.close()
    told = telling.sentences
    if telling.came is not None and telling.came.bearer != bearer.number:
        told.append(f"The ball comes to you from {who(scene, telling.came.bearer)}.")
    duel = contest_sentences(scene, bearer.role, begins=not told)
    if not duel and bearer.stays:
        told.append(f"You stay at {bearer.place}." if told else f"Stay at {bearer.place}.")
    return (*told, *duel) or (f"Wait at {bearer.place} until your turn comes.",)


def _cue(scene: Scene, bearer: Bearer, played: Played, came: Played | None, *, first: bool) -> str:
    """What somebody waits for before an act, if there is something to see."""
    act = played.act
    if came is not None:
        return _ball_comes(scene, bearer, came)
    if act is not None and act.start is not None:
        return when(scene, act.start, bearer.number)
    if first and act is not None and played.receiver is not None:
        before = [one for one in scene.round_.acts[: played.number] if one.bearer == played.receiver]
        if before and before[-1].verb is Verb.SHOW:
            return f"when {who(scene, played.receiver)} asks for it"
    return ""


def _ball_comes(scene: Scene, bearer: Bearer, came: Played) -> str:
    if came.bearer == bearer.number:
        return "when it comes back"
    passer = who(scene, came.bearer)
    ahead = came.act is not None and came.act.target is not None and came.act.target.kind is TargetKind.AHEAD
    if ahead:
        return f"when {passer} plays the ball in front of you"
    if came.verb is Verb.THROW:
        return f"when {passer} throws you the ball"
    return f"when the ball comes from {passer}"
