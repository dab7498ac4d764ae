"""The picture of one copy of an exercise; must not know where on the coach's ground it lies."""

import math
from dataclasses import replace

from conewright.drawing.canvas import Area, Canvas
from conewright.drawing.copies import put_copy, put_words
from conewright.drawing.courses import OUTSIDE_M
from conewright.drawing.options import PictureOptions
from conewright.drawing.people import SHOWN_WAITING
from conewright.drawing.stands import LEAST_STEP, mark_radius
from conewright.drawing.view import View, fitted, grid, room
from conewright.model.exercise import Exercise, Holds, Place
from conewright.model.geometry import Box, Point, box_round, toward
from conewright.model.ground import LINE_STEP_M, MARGIN_M, ground_used, line_heading_rad
from conewright.model.layout import one_copy, standing
from conewright.model.round import Round
from conewright.model.scene import Dot, Scene
from conewright.model.unroll import rounds_of

MOST_SCALE = {"px": 46.0, "mm": 6.0}  # a small exercise is not blown up further
LEAST_SHARE = 0.5  # a narrow piece of ground is shown at least this wide for its depth, and the other way about
USUAL = PictureOptions()
WORDS_M = 1.0  # room above an open-play box for its words


def exercise_picture(exercise: Exercise, size: int, *, options: PictureOptions = USUAL) -> Scene:
    """One copy of an exercise as `size` children stand at the start, with the round of `options.side`.

    `size` is a number of children within one copy; where it needs several copies, draw the largest one.
    """
    box = _box(exercise, size, options)
    view = fitted(box, options, most_scale=MOST_SCALE[options.measures.unit])
    canvas = canvas_for(view, options)
    canvas.add("grid", grid(view, options.measures, numbers=options.numbers))
    put_words(canvas, put_copy(canvas, exercise, size, view=view, options=options, bib=options.bib), options)
    return scene_of(canvas, view, options, title=exercise.name, description=described(exercise, size))


def canvas_for(view: View, options: PictureOptions) -> Canvas:
    """An empty canvas as large as the view."""
    high = Dot(view.corner.x + view.width, view.corner.y + view.height)
    return Canvas(measures=options.measures, extent=Area(low=view.corner, high=high))


def scene_of(canvas: Canvas, view: View, options: PictureOptions, *, title: str, description: str) -> Scene:
    """The finished picture."""
    _, right, _, below = room(options)
    return Scene(
        width=view.corner.x + view.width + right,
        height=view.corner.y + view.height + below,
        shapes=canvas.groups(),
        title=title,
        description=description,
        unit=options.measures.unit,
        name=f"pic trad{options.tradition}",
    )


def _box(exercise: Exercise, size: int, options: PictureOptions) -> Box:
    """Whole metres of ground round everything that is drawn of the copy; smaller pictures need more of it for lines."""
    own = one_copy(exercise, size)
    rounds, _ = rounds_of(own)
    box = _around(own, size, rounds, LINE_STEP_M, MARGIN_M)
    scale = fitted(box, options, most_scale=MOST_SCALE[options.measures.unit]).scale
    radius = mark_radius(scale, options.measures)
    step_m = max(LINE_STEP_M, LEAST_STEP * radius / scale)
    return _around(own, size, rounds, step_m, max(MARGIN_M, 1.2 * radius / scale))


def _around(exercise: Exercise, size: int, rounds: tuple[Round, ...], step_m: float, margin_m: float) -> Box:
    alone = replace(exercise, places=tuple(replace(place, holds=Holds.ONE) for place in exercise.places))
    used = ground_used(alone, size, rounds)
    spots = [Point(used.left_m, used.bottom_m), Point(used.right_m, used.top_m)]
    counts = standing(exercise, size)
    lines = [
        box_round((spot,), margin_m) for place in exercise.places for spot in _line(exercise, place, counts, step_m)
    ]
    boxes = [*lines, *(_round_contest(round_) for round_ in rounds if round_.contest is not None)]
    spots += [corner for box in boxes for corner in (Point(box.left_m, box.bottom_m), Point(box.right_m, box.top_m))]
    if exercise.open_play is not None:
        play = exercise.open_play
        above = play.middle.y_m + play.depth_m / 2 + WORDS_M + MARGIN_M / 2
        spots += [Point(used.left_m - MARGIN_M, used.bottom_m - MARGIN_M), Point(used.right_m + MARGIN_M, above)]
    return whole(_roomy(box_round(tuple(spots))))


def _line(exercise: Exercise, place: Place, counts: dict[str, int], step_m: float) -> tuple[Point, Point]:
    """The head of a line and where a comer joins what is drawn of it."""
    waiting = min(counts.get(place.name, 1), SHOWN_WAITING + 1)
    reach = step_m * (waiting if waiting > 1 else 0)
    return place.at, toward(place.at, line_heading_rad(exercise, place), reach)


def _round_contest(round_: Round) -> Box:
    contest = round_.contest
    if contest is None:
        return box_round(())
    half = Point(contest.width_m / 2 + OUTSIDE_M + MARGIN_M / 2, contest.depth_m / 2 + MARGIN_M)
    low = Point(contest.middle.x_m - half.x_m, contest.middle.y_m - half.y_m)
    return box_round((low, Point(contest.middle.x_m + half.x_m, contest.middle.y_m + half.y_m)))


def _roomy(box: Box) -> Box:
    """The box widened so that neither side is much shorter than the other."""
    wider = max(0.0, LEAST_SHARE * box.depth_m - box.width_m) / 2
    deeper = max(0.0, LEAST_SHARE * box.width_m - box.depth_m) / 2
    return Box(
        left_m=box.left_m - wider, bottom_m=box.bottom_m - deeper, right_m=box.right_m + wider, top_m=box.top_m + deeper
    )


def whole(box: Box) -> Box:
    """The box grown to whole metres."""
    return Box(
        left_m=math.floor(box.left_m + 1e-6),
        bottom_m=math.floor(box.bottom_m + 1e-6),
        right_m=math.ceil(box.right_m - 1e-6),
        top_m=math.ceil(box.top_m - 1e-6),
    )


def described(exercise: Exercise, size: int) -> str:
    """The picture in words for those who cannot see it."""
    counts = standing(exercise, size)
    places = [
        f"{place.name} at {place.at.x_m:g}, {place.at.y_m:g}"
        + (f" with {counts[place.name]}" if place.name in counts else "")
        for place in exercise.places
    ]
    steps = len(exercise.script.steps) if exercise.script else 0
    parts = [f"{size} children"]
    parts += ["; ".join(places)] if places else []
    parts += [f"{steps} numbered sentences drawn as lines"] if steps else []
    if exercise.open_play is not None:
        parts.append(f"open play in {exercise.open_play.width_m:g} by {exercise.open_play.depth_m:g} m")
    return ". ".join(parts) + "."
