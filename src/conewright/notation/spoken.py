"""Who, what, where and when in words for children; must not know the sentences they stand in."""

from dataclasses import dataclass
from math import pi, tau

from conewright.model.exercise import Event, Exercise, Holds, Place, SideOrder, ThingKind, Trigger, Verb
from conewright.model.geometry import Point, angle_between_rad, distance_m, heading_rad
from conewright.model.round import Bearer, Played, Round
from conewright.notation.amounts import figure, listed, people

NEAR_M = 1.5  # a spot nearer than this to something named is told by its name
TOWARDS_RAD = pi / 9  # a way that misses something named by less than this goes towards it
AHEAD = 0.17  # of half a turn: less than 30 degrees off is straight on
ASIDE = 0.34
ABREAST = 0.67
BEHIND = 0.84


@dataclass(frozen=True, slots=True, kw_only=True)
class Scene:
    """What is told of: the exercise, and one of its rounds."""

    exercise: Exercise
    round_: Round

    @property
    def sides(self) -> tuple[str, ...]:
        """The places or things that take turns; empty where none do."""
        script = self.exercise.script
        return script.sides.places if script and script.sides else ()

    def meant(self, word: str) -> str:
        """The place or thing a word stands for in this round."""
        return dict(self.round_.places).get(word, word)

    def is_side(self, word: str) -> bool:
        """Whether a word of the text stands for one of several that take turns."""
        script = self.exercise.script
        return bool(script and script.sides and word == script.sides.word)

    def is_other(self, word: str) -> bool:
        """Whether a word of the text stands for the side whose turn it is not."""
        script = self.exercise.script
        return bool(script and script.sides and script.sides.other and word == script.sides.other)


def either(words: tuple[str, ...]) -> str:
    """`A`, `A or B`, `A, B or C`."""
    return f"{', '.join(words[:-1])} or {words[-1]}" if len(words) > 1 else "".join(words)


def named(scene: Scene, word: str) -> str:
    """Who or what a word of the text means, as a child hears it."""
    if scene.is_side(word):
        return either(tuple(thing_or_name(scene.exercise, side) for side in scene.sides))
    if scene.is_other(word):
        return _other(scene)
    return thing_or_name(scene.exercise, word)


def _other(scene: Scene) -> str:
    """The side that is not meant; where sides are things, nobody stands there who could be the other one."""
    script = scene.exercise.script
    sides = script.sides if script else None
    things = sides is not None and all(scene.exercise.thing(name) for name in sides.places)
    if things and sides is not None and sides.order is SideOrder.CALL:
        return "the one I do not call"
    if things and sides is not None and sides.order is SideOrder.CHOICE and sides.chooser:
        return f"the one that {sides.chooser} does not choose"
    return "the other one"


def thing_or_name(exercise: Exercise, name: str) -> str:
    """ "the Toll gate", "the goal", "Base", "the coach", "the keeper"."""
    thing, place = exercise.thing(name), exercise.place(name)
    if thing is not None:
        kind = "goal" if thing.kind is ThingKind.MINI_GOAL else thing.kind.value
        if name.lower() == kind:
            return f"the {kind}"
        return f"the {name}" if kind in name.lower().split() else f"the {name} {kind}"
    if place is not None and place.adult and name.lower() in ("coach", "helper"):
        return f"the {name.lower()}"
    return name


def who(scene: Scene, number: int) -> str:
    """A bearer as the others call it: by its place; one that comes after another there is the next one."""
    bearer = scene.round_.bearers[number]
    if scene.is_side(bearer.role) or scene.is_other(bearer.role):
        return named(scene, bearer.role)
    name = named(scene, bearer.place)
    return f"the next one at {name}" if comes_second(scene, bearer) else name


def comes_second(scene: Scene, bearer: Bearer) -> bool:
    """Whether another child came before it at its place in the round."""
    return any(other.place == bearer.place and other.number < bearer.number for other in scene.round_.bearers)


def steps(length_m: float) -> str:
    """A length in big steps of a metre."""
    count = max(1, round(length_m))
    return "one big step" if count == 1 else f"{people(count)} big steps"


def spot(scene: Scene, played: Played, *, bent: bool = False) -> str:
    """Where a way ends that the text gives in metres: by what stands there, or by steps and direction.

    `bent` ways have been round or through something, and nobody knows which way is straight on.
    """
    start, end = played.path[0], played.path[-1]
    length = distance_m(start, end)
    if length < 0.5:
        return "on the spot"
    own = scene.round_.bearers[played.bearer].place
    known = (one for one in _standing(scene.exercise) if one[0] not in (own, *scene.sides))
    stands = {name: at for name, at in known if at != start}
    near = min(stands, key=lambda name: distance_m(stands[name], end), default="")
    if near and distance_m(stands[near], end) < NEAR_M:
        return f"up to {thing_or_name(scene.exercise, near)}"
    heading = heading_rad(start, end)
    on_the_way = [
        name for name, at in stands.items() if angle_between_rad(heading_rad(start, at), heading) < TOWARDS_RAD
    ]
    goal = min(on_the_way, key=lambda name: distance_m(stands[name], end), default="")
    if not goal:
        return f"about {steps(length)} {_direction(heading - played.heading)}" if not bent else "and on"
    told = thing_or_name(scene.exercise, goal)
    beyond = distance_m(start, stands[goal]) < length
    return f"past {told}" if beyond else f"about {steps(length)} towards {told}"


def _standing(exercise: Exercise) -> tuple[tuple[str, Point], ...]:
    things = tuple((thing.name, thing.at) for thing in exercise.things)
    return (*things, *((place.name, place.at) for place in exercise.places))


def _direction(turn: float) -> str:
    """Which way that is for somebody who looks straight on; a turn in radians, anticlockwise."""
    left = (turn % tau) < pi
    share = angle_between_rad(turn, 0.0) / pi
    side = "left" if left else "right"
    if share < AHEAD:
        return "straight on"
    if share < ASIDE:
        return f"forward and to the {side}"
    if share < ABREAST:
        return f"to the {side}"
    return f"back and to the {side}" if share < BEHIND else "straight back"


def line_or_spot(place: Place) -> str:
    """Where one who joins a place ends up."""
    return f"the end of the line at {place.name}" if place.holds is Holds.LINE else place.name


# --- starts ---

SEEN = {
    Event.CONTROLLED: "{who} {has} the ball",
    Event.SHOT: "{who} {shoots}",
    Event.HALFWAY: "{who} {is} halfway back",
    Event.READY: "{who} {is} ready",
    Event.BACK: "the ball is back at {name}",
    Event.BOX_CLEAR: "the box is empty",
    Event.CALL: "the coach calls",
    Event.TOGETHER: "everybody is in place",
}
KICKED = {
    Verb.THROW: ("throw", "throws"),
    Verb.CROSS: ("cross the ball", "crosses the ball"),
    Verb.SET_BACK: ("play the ball back", "plays the ball back"),
    Verb.SHOOT: ("shoot", "shoots"),
}
PASSED = ("pass", "passes")


def seen(scene: Scene, trigger: Trigger, hearer: int | None = None) -> str:
    """What somebody waits to see, as a clause: "Base passes"; `hearer` is the bearer it is told to."""
    own = hearer is not None and scene.meant(trigger.who) == scene.round_.bearers[hearer].place
    name = "you" if own else named(scene, trigger.who)
    words = {"has": "have", "is": "are", "shoots": "shoot", "reaches": "reach", "starts": "start"} if own else {}
    said = {word: words.get(word, word) for word in ("has", "is", "shoots", "reaches", "starts")}
    where = named(scene, trigger.name) if trigger.name else ""
    if trigger.event is Event.RELEASED:
        return f"{name} {_kicked(scene, trigger)[not own]}"
    if trigger.event is Event.OVER:
        return f"{'your' if own else name + chr(39) + 's'} shot is over"
    if trigger.event is Event.ARRIVED:
        return f"{name} {said['reaches']} {where}" if where else f"{name} {said['is']} back in place"
    if trigger.event is Event.PASSED:
        return f"{name} {said['is']} past {where}"
    if trigger.event is Event.STARTED:
        return f"{name} {said['starts']}"
    if trigger.event is Event.STEP:
        return _step_over(scene, trigger.step or 0, hearer)
    return SEEN[trigger.event].format(who=name, name=where, **said)


def _kicked(scene: Scene, trigger: Trigger) -> tuple[str, str]:
    """What a kick of somebody is called, as "you pass" and "Base passes"."""
    place = scene.meant(trigger.who)
    kicks = (one for one in scene.round_.acts if one.flight and scene.round_.bearers[one.bearer].place == place)
    first = next(kicks, None)
    return KICKED.get(first.verb, PASSED) if first else PASSED


def _step_over(scene: Scene, step: int, hearer: int | None) -> str:
    """The last thing that happens in a numbered sentence, which the children do not know by its number."""
    acts = [one for one in scene.round_.acts if one.step == step and not one.implied]
    if not acts:
        return "that is done"
    last = acts[-1]
    you = last.bearer == hearer
    name, has = ("you", "have") if you else (who(scene, last.bearer), "has")
    kicks = [one for one in acts if one.bearer == last.bearer and one.flight]
    kicked = {Verb.SHOOT: "shot", Verb.THROW: "thrown"}.get(kicks[-1].verb, "passed") if kicks else ""
    if last.flight:
        return f"{name} {has} {kicked}"
    moved = "moved on" if len(last.path) > 1 else f"finished {'your' if you else 'that'} bit"
    return f"{name} {has} {f'{kicked} and ' if kicked else ''}{moved}"


def when(scene: Scene, trigger: Trigger, hearer: int | None = None) -> str:
    """ "when Base passes", "two seconds after Base passes"."""
    if not trigger.delay_s:
        lead = "as soon as" if trigger.event is Event.TOGETHER else "when"
        return f"{lead} {seen(scene, trigger, hearer)}"
    return f"{seconds(trigger.delay_s)} after {seen(scene, trigger, hearer)}"


def until(scene: Scene, trigger: Trigger, hearer: int | None = None) -> str:
    """ "Base passes", "two seconds after Base passes"."""
    told = when(scene, trigger, hearer)
    return told.removeprefix("when ").removeprefix("as soon as ")


def seconds(count: float) -> str:
    """ "two seconds"."""
    if count != int(count):
        return f"{figure(count)} seconds"
    return "one second" if count == 1 else f"{people(int(count))} seconds"


def turns(scene: Scene) -> str:
    """How the sides take turns, as a sentence; empty where there are none."""
    script = scene.exercise.script
    sides = script.sides if script else None
    if sides is None or not sides.places:
        return ""
    names = tuple(thing_or_name(scene.exercise, side) for side in sides.places)
    if sides.order is SideOrder.HALF_TIME:
        return f"Until half time it is {names[0]}, then it is {either(names[1:])}."
    if sides.order is SideOrder.CHOICE:
        return f"{named(scene, sides.chooser)} chooses {either(names)} each time."
    if sides.order is SideOrder.CALL:
        return f"I call {either(names)}, and that is where it goes."
    return f"{listed(names)} take turns: {names[0]} goes first."
