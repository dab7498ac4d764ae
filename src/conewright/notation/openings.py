"""What a coach opens with: what it is, who stands where, which way the ball goes; must not know of time."""

from dataclasses import dataclass, replace

from conewright.model.exercise import Exercise, Place, SupplyKind, Verb
from conewright.model.layout import standing
from conewright.model.round import Played
from conewright.notation.amounts import capital, listed, people
from conewright.notation.duels import odds
from conewright.notation.spoken import Scene, named, thing_or_name, who

SEVERAL = 3  # places from which on they are told together
LONGEST_WAY = 6  # stops of a ball; a longer way is told by its ends


def what_it_is(exercise: Exercise) -> str:
    """The name, and what it is for."""
    if not exercise.aims:
        return f"This is {exercise.name}."
    return f"This is {exercise.name}, and we work on {listed(exercise.aims)}."


def who_stands_where(exercise: Exercise, size: int) -> str:
    """How many start at each place, and whose the balls are."""
    counts = {name: count for name, count in standing(exercise, size).items() if count}
    places = [place for place in exercise.places if place.name in counts]
    with_balls = [place for place in places if place.supply.count]
    inline = len(with_balls) == 1
    told = [
        f"{people(counts[place.name])} at {place.name}{_own_balls(place, counts[place.name], inline=inline)}"
        for place in places
    ]
    told[:1] = [_leading(first) for first in told[:1]]
    each = _each_place(places, counts) if not inline else ""
    told = [each] if each else told
    told += [_grown_up(exercise, place) for place in exercise.places if place.adult]
    told += [f"a keeper goes to {place.name}" for place in exercise.places if place.keeper and not place.adult]
    balls = "" if inline else _lying(with_balls, len(places))
    return f"{capital(listed(told))}{balls}." if told else "Come close and listen."


def _leading(told: str) -> str:
    """The first place as the start of a sentence: "two of you start at Base"."""
    count, rest = told.split(" ", 1)
    return f"{count} of you {'starts' if count == 'one' else 'start'} {rest}"


def _each_place(places: list[Place], counts: dict[str, int]) -> str:
    """Several places with as many at each, nobody with a ball of its own."""
    alike = len({counts[place.name] for place in places}) == 1
    if len(places) < SEVERAL or not alike or any(place.supply.kind is SupplyKind.EACH for place in places):
        return ""
    count = counts[places[0].name]
    names = listed([place.name for place in places])
    return f"{people(count)} of you {'starts' if count == 1 else 'start'} at each place: {names}"


def _own_balls(place: Place, count: int, *, inline: bool) -> str:
    if place.supply.kind is SupplyKind.EACH:
        return " with a ball" if count == 1 else " with a ball each"
    return f" with {_so_many(place.supply.count)}" if inline and place.supply.count else ""


def _lying(places: list[Place], among: int) -> str:
    """Where the balls are, where they are at several places: "; there is one ball at Oak and one at Elm"."""
    if not places:
        return ""
    first, *others = places
    verb = "is" if first.supply.count == 1 else "are"
    if len(places) == among and len({place.supply.count for place in places}) == 1:
        return f"; there {verb} {_so_many(first.supply.count)} at each"
    told = [f"{_so_many(first.supply.count)} at {first.name}"]
    told += [f"{people(place.supply.count)} at {place.name}" for place in others]
    return f"; there {verb} {listed(told)}"


def _so_many(count: int) -> str:
    return "one ball" if count == 1 else f"{people(count)} balls"


def _grown_up(exercise: Exercise, place: Place) -> str:
    name = thing_or_name(exercise, place.name)
    balls = _own_balls(place, 1, inline=True)
    return f"{name} helps{balls}" if name != place.name else f"a grown-up stands at {name}{balls}"


# --- the way of the ball ---


@dataclass(frozen=True, slots=True, kw_only=True)
class _Way:
    """One ball of the round: where it starts, and each stop with the word before it; `step` is where it sets off."""

    step: int
    start: str
    stops: tuple[tuple[str, str], ...] = ()

    def on(self, *stops: tuple[str, str]) -> "_Way":
        """The way with more stops, none twice in a row."""
        told = list(self.stops)
        for stop in stops:
            if stop[1] != (told[-1][1] if told else self.start):
                told.append(stop)
        return replace(self, stops=tuple(told))


def _ways(scene: Scene) -> tuple[_Way, ...]:
    ways: list[_Way] = []
    holds: dict[int, int] = {}  # bearer -> which ball
    loose: list[int] = []  # balls that nobody has received
    for played in scene.round_.acts:
        if played.verb is Verb.FETCH and loose:
            ball = holds[played.bearer] = loose.pop(0)
            ways[ball] = ways[ball] if _ends_at_thing(scene, ways[ball]) else ways[ball].on(("to", _by(scene, played)))
        if not (played.flight or played.with_ball):
            continue
        if played.bearer not in holds:
            holds[played.bearer] = len(ways)
            ways.append(_Way(step=played.step, start=_by(scene, played)))
        ball = holds[played.bearer]
        ways[ball] = ways[ball].on(*_stops(scene, played))
        if played.receiver is not None and played.receiver != played.bearer:
            holds[played.receiver] = holds.pop(played.bearer)
        elif played.flight and played.receiver is None:
            loose.append(holds.pop(played.bearer))
    return tuple(ways)


def _by(scene: Scene, played: Played) -> str:
    return who(scene, played.bearer)


def _ends_at_thing(scene: Scene, way: _Way) -> bool:
    things = {thing_or_name(scene.exercise, thing.name) for thing in scene.exercise.things}
    return bool(way.stops) and way.stops[-1][1] in things


def _stops(scene: Scene, played: Played) -> list[tuple[str, str]]:
    act = played.act
    stops = [(via.how, named(scene, via.name)) for via in act.via] if act else []
    if played.receiver is not None and played.receiver != played.bearer:
        return [*stops, ("to", who(scene, played.receiver))]
    if played.flight and act is not None and act.target is not None and act.target.name:
        return [*stops, ("to", named(scene, act.target.name))]
    place = scene.exercise.place(played.to_place)
    return [*stops, ("to", place.name)] if place is not None and played.homeward else stops


def which_way(scene: Scene) -> str:
    """The way of the ball, or of the balls, and what is played for at its end."""
    ways = _ways(scene)
    contest = scene.round_.contest
    duel = f"it is {odds(contest)}" if contest else ""
    if not ways:
        return f"{capital(duel)}." if duel else "Watch me walk it once before you start."
    if len(ways) == 1:
        told = _one_way(ways[0])
        return f"{told}, and then {duel}." if duel else f"{told}."
    starts = listed(list(dict.fromkeys(way.start for way in ways)))
    at_once = all(way.step == ways[0].step for way in ways)
    told = f"{capital(people(len(ways)))} balls are on their way{' at the same time' if at_once else ''}"
    return f"{told}: they start at {starts}{f', and then {duel}' if duel else ''}."


def _one_way(way: _Way) -> str:
    if not way.stops:
        return f"The ball starts at {way.start}"
    if len(way.stops) > LONGEST_WAY:
        return f"The ball starts at {way.start} and ends at {way.stops[-1][1]}"
    told, been = f"The ball goes from {way.start}", [way.start]
    for place, (how, stop) in enumerate(way.stops):
        back = "back " if how == "to" and stop in been else ""
        told += f"{', then' if place else ''} {back}{how} {stop}"
        been.append(stop)
    return told
