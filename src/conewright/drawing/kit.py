"""Kit on a canvas: cones, gates, goals, walls, and the boxes of contest and open play; must not know who is there."""

import math

from conewright.drawing.boxes import contest_box, corner_cones, open_box
from conewright.drawing.canvas import Area, Canvas
from conewright.drawing.marks import NET_SHARE, cone, gate, goal, wall
from conewright.drawing.view import View
from conewright.model.exercise import Exercise, Thing, ThingKind
from conewright.model.geometry import Point, heading_rad, middle
from conewright.model.ground import hub
from conewright.model.round import Round
from conewright.model.scene import Dot, Shape

DRAWN_WIDTH_M = {ThingKind.GATE: 2.0, ThingKind.MINI_GOAL: 2.0, ThingKind.GOAL: 5.0, ThingKind.WALL: 2.0}
"""How wide a thing without a stated width is drawn: a picture's choice, not a figure of the trade."""


def put_things(canvas: Canvas, exercise: Exercise, view: View) -> None:
    """Draw all kit of an exercise."""
    for thing in exercise.things:
        canvas.add("kit", _thing(canvas, exercise, thing, view))


def _thing(canvas: Canvas, exercise: Exercise, thing: Thing, view: View) -> Shape:
    data = (("thing", thing.name),)
    if thing.kind is ThingKind.CONE:
        at = view.dot(thing.at)
        canvas.discs.append((at, canvas.measures.cone_width / 2))
        return cone(at, canvas.measures, data)
    half_m = (thing.width_m or DRAWN_WIDTH_M[thing.kind]) / 2
    if thing.kind in (ThingKind.GOAL, ThingKind.MINI_GOAL):
        return _goal(canvas, exercise, thing, view, half_m)
    shift = Point(0.0, half_m) if thing.upright else Point(half_m, 0.0)
    first = view.dot(Point(thing.at.x_m - shift.x_m, thing.at.y_m - shift.y_m))
    second = view.dot(Point(thing.at.x_m + shift.x_m, thing.at.y_m + shift.y_m))
    reach = canvas.measures.cone_width / 2
    canvas.discs += [(first, reach), (second, reach)]
    if thing.kind is ThingKind.GATE:
        canvas.lines.append((first, second))
        return gate(first, second, canvas.measures, data)
    _take(canvas, (first, second), reach / 2)
    return wall(first, second, data)


def _goal(canvas: Canvas, exercise: Exercise, thing: Thing, view: View, half_m: float) -> Shape:
    direction = view.direction(thing.at, mouth_rad(exercise, thing))
    at, half = view.dot(thing.at), half_m * view.scale  # a goal stays as large as it is where the shape is scaled
    depth = max(NET_SHARE * view.scale, canvas.measures.goal_depth_least)
    across = (math.cos(direction + math.pi / 2) * half, math.sin(direction + math.pi / 2) * half)
    back = Dot(at.x - math.cos(direction) * depth, at.y - math.sin(direction) * depth)
    corners = tuple(
        Dot(spot.x + sign * across[0], spot.y + sign * across[1]) for spot in (at, back) for sign in (1, -1)
    )
    _take(canvas, corners, 0.0)
    name = "goal-mark mini" if thing.kind is ThingKind.MINI_GOAL else "goal-mark full"
    return goal(at, half=half, direction=direction, depth=depth, name=name, data=(("thing", thing.name),))


def _take(canvas: Canvas, spots: tuple[Dot, ...], clear: float) -> None:
    low = Dot(min(spot.x for spot in spots) - clear, min(spot.y for spot in spots) - clear)
    high = Dot(max(spot.x for spot in spots) + clear, max(spot.y for spot in spots) + clear)
    canvas.areas.append(Area(low=low, high=high))


def mouth_rad(exercise: Exercise, thing: Thing) -> float:
    """Where a goal opens: to the play, squarely along the page or across it."""
    boxes = [exercise.open_play.middle] if exercise.open_play else []
    steps = exercise.script.steps if exercise.script else ()
    boxes += [step.contest.middle for step in steps if step.contest is not None]
    target = middle(tuple(boxes)) if boxes else hub(exercise)
    heading = heading_rad(thing.at, target)
    return round(heading / (math.pi / 2)) * (math.pi / 2)


def put_boxes(canvas: Canvas, exercise: Exercise, round_: Round, view: View) -> None:
    """Draw the boxes of contest and open play with a cone at each corner."""
    if exercise.open_play is not None:
        play = exercise.open_play
        low, high = corners(view, play.middle, play.width_m, play.depth_m)
        _put_box(canvas, low, high, shaded=False)
    if round_.contest is not None:
        low, high = corners(view, round_.contest.middle, round_.contest.width_m, round_.contest.depth_m)
        _put_box(canvas, low, high, shaded=True)


def _put_box(canvas: Canvas, low: Dot, high: Dot, *, shaded: bool) -> None:
    draw = contest_box if shaded else open_box
    canvas.add("area", draw(low, high, canvas.measures))
    canvas.lines.append((low, Dot(high.x, low.y), high, Dot(low.x, high.y), low))
    cones = corner_cones(low, high, canvas.measures)
    canvas.add("kit", *cones)
    for shape in cones:
        top, right, left = shape.pieces[0]
        canvas.discs.append((Dot(top.x, (top.y + right.y) / 2), (right.x - left.x) / 2))


def corners(view: View, centre: Point, width_m: float, depth_m: float) -> tuple[Dot, Dot]:
    """The upper left and lower right corner of a box on the picture, whichever way the view is turned."""
    one = view.dot(Point(centre.x_m - width_m / 2, centre.y_m - depth_m / 2))
    other = view.dot(Point(centre.x_m + width_m / 2, centre.y_m + depth_m / 2))
    return Dot(min(one.x, other.x), min(one.y, other.y)), Dot(max(one.x, other.x), max(one.y, other.y))
