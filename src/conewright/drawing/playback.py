"""What a page needs to play a round: where everybody and every ball is, as short lists of numbers.

It must not know the page. Times are seconds to a hundredth, lengths metres to the centimetre on the coach's ground.
"""

from bisect import bisect_right
from dataclasses import dataclass

from conewright.drawing.people import people
from conewright.model.exercise import Exercise
from conewright.model.geometry import ORIGIN, Point, distance_m
from conewright.model.rehearsed import Doing, Knot, Rehearsal, Spell
from conewright.model.session import Block, Copy

MOST_S = 60.0  # no film is longer
SAME_M = 0.35  # a person this near to where it stood is back
DOINGS = (Doing.WAITING, Doing.MOVING, Doing.ON_BALL)

Numbers = tuple[float, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PlayedPerson:
    """One child: `knots` time, x, y, and so on; `spells` start, end, what (0 waiting, 1 moving, 2 on ball), step."""

    number: int
    group: str  # the word of the form: "y", "b", "r", "g", "n"
    letters: str
    knots: Numbers
    spells: Numbers


@dataclass(frozen=True, slots=True, kw_only=True)
class PlayedCopy:
    """One copy: people, knots of its balls, and `steps`, what is under way: start, end, step, act again and again."""

    people: tuple[PlayedPerson, ...]
    balls: tuple[Numbers, ...]
    steps: Numbers
    round_starts: Numbers
    seconds: float
    repeats: bool  # everybody is back where they started: the film may run on without a jump


@dataclass(frozen=True, slots=True, kw_only=True)
class Playback:
    """Everything that moves in a picture; `seconds` is a minute, like the strip: copies that repeat run on in it."""

    seconds: float
    copies: tuple[PlayedCopy, ...]


def playback(block: Block) -> Playback:
    """All rehearsed copies of a block on the coach's ground; a copy that was not rehearsed holds nobody."""
    copies = tuple(
        played_copy(block.exercise, copy.rehearsed, copy) if isinstance(copy.rehearsed, Rehearsal) else NOBODY
        for copy in block.copies
    )
    return Playback(seconds=_film_s(copies), copies=copies)


def playback_of(exercise: Exercise, rehearsal: Rehearsal) -> Playback:
    """One rehearsal in the exercise's own metres."""
    copy = played_copy(exercise, rehearsal, Copy(size=rehearsal.size, origin=ORIGIN))
    return Playback(seconds=_film_s((copy,)), copies=(copy,))


def _film_s(copies: tuple[PlayedCopy, ...]) -> float:
    return MOST_S if any(copy.seconds for copy in copies) else 0.0


NOBODY = PlayedCopy(people=(), balls=(), steps=(), round_starts=(), seconds=0.0, repeats=False)


def played_copy(exercise: Exercise, rehearsal: Rehearsal, copy: Copy) -> PlayedCopy:
    """A rehearsal laid on the ground of a copy, cut where it repeats or after a minute."""
    seconds, repeats = duration(rehearsal)
    marks = {one.number: one for one in people(exercise, rehearsal.size, copy.bib) if one.number >= 0}
    played = tuple(
        PlayedPerson(
            number=track.person,
            group=marks[track.person].group if track.person in marks else "n",
            letters=marks[track.person].name if track.person in marks else str(track.person + 1),
            knots=_knots(track.knots, copy, seconds),
            spells=_spells(track.spells, seconds),
        )
        for track in rehearsal.people
    )
    steps = [
        number
        for happening in rehearsal.happenings
        if happening.start_s < seconds
        for number in (
            _hundredth(happening.start_s),
            _hundredth(min(happening.end_s, seconds)),
            rehearsal.acts[happening.act].step,
            happening.act,
        )
    ]
    return PlayedCopy(
        people=played,
        balls=tuple(_knots(ball.knots, copy, seconds) for ball in rehearsal.balls),
        steps=tuple(steps),
        round_starts=tuple(_hundredth(start) for start in rehearsal.round_starts_s if start < seconds),
        seconds=_hundredth(seconds),
        repeats=repeats,
    )


def duration(rehearsal: Rehearsal) -> tuple[float, bool]:
    """How long to play: until everybody stands at the start of a round where they stood at the first, else a minute."""
    starts = [start for start in rehearsal.round_starts_s if start <= MOST_S]
    if not starts:
        return 0.0, False
    first = [at_time(track.knots, starts[0]) for track in rehearsal.people]
    for start in starts[1:]:
        now = [at_time(track.knots, start) for track in rehearsal.people]
        if all(distance_m(one, other) < SAME_M for one, other in zip(first, now, strict=True)):
            return start, True
    return MOST_S, False


def at_time(knots: tuple[Knot, ...], time_s: float) -> Point:
    """Where something is at a moment; before its first and after its last knot it stands there."""
    if not knots:
        return ORIGIN
    after = bisect_right(knots, time_s, key=lambda knot: knot.time_s)
    if after == 0:
        return Point(knots[0].x_m, knots[0].y_m)
    if after == len(knots):
        return Point(knots[-1].x_m, knots[-1].y_m)
    one, other = knots[after - 1], knots[after]
    share = (time_s - one.time_s) / (other.time_s - one.time_s)
    return Point(one.x_m + (other.x_m - one.x_m) * share, one.y_m + (other.y_m - one.y_m) * share)


def _knots(knots: tuple[Knot, ...], copy: Copy, seconds: float) -> Numbers:
    """Knots up to the end, on the ground, without those in the middle of a stand."""
    end = at_time(knots, seconds)
    kept = [knot for knot in knots if knot.time_s < seconds] + [Knot(seconds, end.x_m, end.y_m)]
    flat: list[float] = []
    for index, knot in enumerate(kept):
        still = 0 < index < len(kept) - 1 and kept[index - 1][1:] == knot[1:] == kept[index + 1][1:]
        if not still:
            spot = copy.on_ground(Point(knot.x_m, knot.y_m))
            flat += (_hundredth(knot.time_s), _hundredth(spot.x_m), _hundredth(spot.y_m))
    return tuple(flat)


def _spells(spells: tuple[Spell, ...], seconds: float) -> Numbers:
    return tuple(
        number
        for spell in spells
        if spell.start_s < seconds
        for number in (
            _hundredth(spell.start_s),
            _hundredth(min(spell.end_s, seconds)),
            DOINGS.index(spell.doing),
            spell.step,
        )
    )


def _hundredth(value: float) -> float:
    return round(value, 2) + 0.0
