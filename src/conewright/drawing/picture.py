"""The picture of one copy of an exercise; must not know where on the coach's ground it lies."""

import math
from dataclasses import replace

from conewright.drawing.canvas import Area, Canvas
from conewright.drawing.copies import put_copy
from conewright.drawing.courses import OUTSIDE_M
from conewright.drawing.options import PictureOptions
from conewright.drawing.people import SHOWN_WAITING
from conewright.drawing.view import View, fitted, grid, room
from conewright.model.exercise import Exercise
from conewright.model.geometry import Box, Point, box_round
from conewright.model.ground import MARGIN_M, ground_used
from conewright.model.layout import one_copy, standing
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
    put_copy(canvas, exercise, size, view=view, options=options, bib=options.bib)
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
    """Whole metres of ground round everything the copy uses; long lines are cut to what is drawn of them."""
    own = one_copy(exercise, size)
    counts = standing(exercise, size)
    drawn = replace(own, places=own.places)
    rounds, _ = rounds_of(own)
    shown = min(size, sum(min(count, SHOWN_WAITING + 1) for count in counts.values()) or size)
    used = ground_used(drawn, shown if shown >= exercise.numbers.least else size, rounds)
    if own.open_play is not None:
        play = own.open_play
        top = Point(play.middle.x_m, play.middle.y_m + play.depth_m / 2 + WORDS_M + MARGIN_M / 2)
        used = box_round((Point(used.left_m, used.bottom_m), Point(used.right_m, used.top_m), top))
        used = Box(
            left_m=used.left_m - MARGIN_M,
            bottom_m=used.bottom_m - MARGIN_M,
            right_m=used.right_m + MARGIN_M,
            top_m=used.top_m,
        )
    for contest in (round_.contest for round_ in rounds if round_.contest is not None):
        reach = contest.width_m / 2 + OUTSIDE_M + MARGIN_M
        low = Point(min(used.left_m, contest.middle.x_m - reach), used.bottom_m)
        used = box_round((low, Point(max(used.right_m, contest.middle.x_m + reach), used.top_m + MARGIN_M / 2)))
    return whole(_roomy(used))


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
