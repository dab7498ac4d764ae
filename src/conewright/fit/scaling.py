"""An exercise made smaller or larger as a whole, and its rehearsal laid back over the written one; must not know why.

Lines of children keep their metre, goals and gates their width: only where things stand changes.
"""

from dataclasses import replace

from conewright.model.exercise import Act, Contest, Exercise, OpenPlay, Script, Step, Target
from conewright.model.geometry import Point
from conewright.model.rehearsed import BallTrack, Flight, Knot, PersonTrack, Rehearsal, Rehearsed


def scaled(exercise: Exercise, scale: float) -> Exercise:
    """The exercise with every distance between its places, things and boxes multiplied by `scale`.

    The ground it says it needs is left out: that was said of the written lengths.
    """
    if scale == 1.0:
        return exercise
    return replace(
        exercise,
        space=None,
        places=tuple(replace(place, at=_point(place.at, scale)) for place in exercise.places),
        things=tuple(replace(thing, at=_point(thing.at, scale)) for thing in exercise.things),
        script=_script(exercise.script, scale) if exercise.script else None,
        open_play=_play(exercise.open_play, scale) if exercise.open_play else None,
    )


def _point(point: Point, scale: float) -> Point:
    return Point(point.x_m * scale, point.y_m * scale)


def _play(play: OpenPlay, scale: float) -> OpenPlay:
    return replace(play, width_m=play.width_m * scale, depth_m=play.depth_m * scale, middle=_point(play.middle, scale))


def _script(script: Script, scale: float) -> Script:
    return replace(script, steps=tuple(_step(step, scale) for step in script.steps))


def _step(step: Step, scale: float) -> Step:
    contest = _contest(step.contest, scale) if step.contest else None
    return replace(step, acts=tuple(_act(act, scale) for act in step.acts), contest=contest)


def _contest(contest: Contest, scale: float) -> Contest:
    return replace(
        contest,
        width_m=contest.width_m * scale,
        depth_m=contest.depth_m * scale,
        middle=_point(contest.middle, scale),
    )


def _act(act: Act, scale: float) -> Act:
    return replace(act, target=_target(act.target, scale)) if act.target else act


def _target(target: Target, scale: float) -> Target:
    at = _point(target.at, scale) if target.at is not None else None
    return replace(target, at=at, distance_m=target.distance_m * scale)


def laid_back(rehearsed: Rehearsed, scale: float) -> Rehearsed:
    """A rehearsal of the scaled exercise with its tracks laid over the written one; times and figures stay."""
    if scale == 1.0 or not isinstance(rehearsed, Rehearsal):
        return rehearsed
    return replace(
        rehearsed,
        people=tuple(_person(track, scale) for track in rehearsed.people),
        balls=tuple(_ball(track, scale) for track in rehearsed.balls),
    )


def _knots(knots: tuple[Knot, ...], scale: float) -> tuple[Knot, ...]:
    return tuple(Knot(knot.time_s, knot.x_m / scale, knot.y_m / scale) for knot in knots)


def _person(track: PersonTrack, scale: float) -> PersonTrack:
    return replace(track, knots=_knots(track.knots, scale))


def _flight(flight: Flight, scale: float) -> Flight:
    return replace(flight, knots=_knots(flight.knots, scale))


def _ball(track: BallTrack, scale: float) -> BallTrack:
    flights = tuple(_flight(flight, scale) for flight in track.flights)
    return replace(track, knots=_knots(track.knots, scale), flights=flights)
