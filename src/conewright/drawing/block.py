"""The coach's ground with all copies of a block on it; must not know how the copies were laid out."""

import math

from conewright.drawing.canvas import Canvas
from conewright.drawing.copies import put_copy, put_words
from conewright.drawing.marks import word
from conewright.drawing.numerals import in_words
from conewright.drawing.options import PictureOptions
from conewright.drawing.people import adult, resting
from conewright.drawing.picture import canvas_for, scene_of, whole
from conewright.drawing.placing import words_spot
from conewright.drawing.stands import mark_radius, put_mark, put_thread
from conewright.drawing.strokes import angle, distance_to_line
from conewright.drawing.view import View, fitted, grid
from conewright.model.geometry import Box, Point, box_round
from conewright.model.ground import ground_used
from conewright.model.layout import one_copy
from conewright.model.scene import Dot, Scene
from conewright.model.session import Block, Copy, Tonight
from conewright.model.unroll import rounds_of

INSET_M = 1.1  # an adult stands this far inside the corner
CROP_M = 1.0  # ground shown round what is in use
WORDS_M = 1.0  # and above a box, for its words


def block_picture(block: Block, tonight: Tonight, *, options: PictureOptions | None = None) -> Scene:
    """All copies of a block where they lie on the coach's rectangle, its lower left corner at 0, 0, with the adults."""
    options = options or PictureOptions()
    view = view_of(block, tonight, options)
    canvas = canvas_for(view, options)
    canvas.add("grid", grid(view, options.measures, numbers=options.numbers))
    servers = sum(1 for place in block.exercise.places if place.adult)
    drawn = tuple(
        put_copy(
            canvas,
            block.exercise,
            copy.size,
            view=on_ground(view, copy),
            options=options,
            bib=copy.bib,
            sides=copy.sides,
            adults=index * servers,
        )
        for index, copy in _shown(block, options)
    )
    for one in drawn:
        put_words(canvas, one, options)
    if options.only is None:
        _put_resting(canvas, block, view, options)
        _put_adults(canvas, view, taken=servers * len(block.copies), count=tonight.adults)
    if len(block.copies) > 1 and options.only is None:
        for copy in (copy for copy in block.copies if copy.bib or block.exercise.open_play is None):
            _put_copy_words(canvas, block, copy, view)
    return scene_of(canvas, view, options, title=block.exercise.name, description=_described(block))


def view_of(block: Block, tonight: Tonight, options: PictureOptions) -> View:
    """The view of the coach's rectangle, or of the ground in use, with which a block is drawn."""
    ground = Box(left_m=0.0, bottom_m=0.0, right_m=tonight.width_m, top_m=tonight.depth_m)
    return fitted(_cropped(block, ground, options) if options.cropped else ground, options)


def _shown(block: Block, options: PictureOptions) -> tuple[tuple[int, Copy], ...]:
    copies = tuple(enumerate(block.copies))
    return copies if options.only is None else copies[options.only : options.only + 1]


def on_ground(view: View, copy: Copy) -> View:
    """The view as a copy sees it: points of the exercise laid on the coach's ground."""
    return View(
        box=view.box,
        scale=view.scale,
        corner=view.corner,
        turned=view.turned,
        place=copy.on_ground,
        shrink=copy.scale,
    )


def ground_of(block: Block, copy: Copy) -> Box:
    """The ground a copy uses, in the coach's rectangle."""
    own = one_copy(block.exercise, copy.size)
    rounds, _ = rounds_of(own)
    used = ground_used(own, copy.size, rounds)
    low, high = Point(used.left_m, used.bottom_m), Point(used.right_m, used.top_m)
    return box_round((copy.on_ground(low), copy.on_ground(high)))


def _cropped(block: Block, ground: Box, options: PictureOptions) -> Box:
    """The ground in use in whole metres, with room for words above a box, as far as the coach's ground goes."""
    boxes = tuple(ground_of(block, copy) for _, copy in _shown(block, options))
    lows = tuple(Point(box.left_m, box.bottom_m) for box in boxes)
    highs = tuple(Point(box.right_m, box.top_m) for box in boxes)
    used = box_round((*lows, *highs) or (ground.middle,), CROP_M)
    words_m = WORDS_M if block.exercise.open_play is not None else 0.0
    used = whole(Box(left_m=used.left_m, bottom_m=used.bottom_m, right_m=used.right_m, top_m=used.top_m + words_m))
    cut = Box(
        left_m=max(used.left_m, ground.left_m),
        bottom_m=max(used.bottom_m, ground.bottom_m),
        right_m=min(used.right_m, ground.right_m),
        top_m=min(used.top_m, ground.top_m),
    )
    return cut if cut.width_m > 0 and cut.depth_m > 0 else ground


def _put_adults(canvas: Canvas, view: View, *, taken: int, count: int) -> None:
    """Adults who serve nowhere stand in free corners and look at the ground, the coach first."""
    radius = mark_radius(view.scale, canvas.measures)
    low, high = canvas.extent.low, canvas.extent.high
    inset = max(INSET_M * view.scale, 1.9 * radius)
    left, right, top, bottom = low.x + inset, high.x - inset, low.y + inset, high.y - inset
    corners = [Dot(left, bottom), Dot(right, top), Dot(right, bottom), Dot(left, top)]
    corners += [Dot(left, (top + bottom) / 2), Dot(right, (top + bottom) / 2)]
    corners += [Dot((left + right) / 2, bottom), Dot((left + right) / 2, top)]
    for number in range(taken + 1, min(count, taken + 2) + 1):
        clear = [at for at in corners if canvas.disc_free(at, 1.4 * radius)]
        apart = [at for at in clear if all(distance_to_line(at, line) > 1.2 * radius for line in canvas.lines)]
        if not clear:
            return  # no free spot is left at the edge: the words beside the picture name the adults
        at = (apart or clear)[0]
        corners.remove(at)
        one = adult(number)
        put_mark(canvas, one, at, radius=radius, letters=one.letter, looks=angle(at, canvas.extent.middle))


def _put_resting(canvas: Canvas, block: Block, view: View, options: PictureOptions) -> None:
    """Those who rest in turn stand by the lower right corner."""
    if not block.resting:
        return
    radius = mark_radius(view.scale, canvas.measures)
    high = canvas.extent.high
    start = Dot(high.x - 1.4 * radius, high.y - 1.4 * radius)
    line = resting(block.resting, after=sum(copy.size for copy in block.copies))
    put_thread(canvas, line, start=start, grows=-math.pi / 2, radius=radius, options=options)


def _put_copy_words(canvas: Canvas, block: Block, copy: Copy, view: View) -> None:
    size, box = canvas.measures.name_size, ground_of(block, copy)
    one, other = view.ground(Point(box.left_m, box.bottom_m)), view.ground(Point(box.right_m, box.top_m))
    left, right = sorted((one.x, other.x))
    top, bottom = sorted((one.y, other.y))
    middle = (left + right) / 2
    options = (
        (Dot(middle, top + 0.9 * size), "middle"),
        (Dot(middle, top - 0.4 * size), "middle"),
        (Dot(left + 0.5 * size, top + 0.9 * size), "start"),
        (Dot(right - 0.5 * size, top + 0.9 * size), "end"),
        (Dot(middle, bottom - 0.3 * size), "middle"),
        (Dot(left + 0.5 * size, bottom - 0.3 * size), "start"),
        (Dot(middle, top + 2.2 * size), "middle"),
    )
    words = copy_words(copy, block)
    found = words_spot(canvas, options, words, size)
    if found is not None:  # the letters on the marks say it too
        canvas.add("label", word(found[0], words, size=size, anchor=found[1], kind="bx"))


def copy_words(copy: Copy, block: Block) -> str:
    """ "Yellow copy, seven"; "no bibs, four" beside copies in bibs."""
    if copy.bib is not None:
        return f"{copy.bib.value} copy, {in_words(copy.size)}"
    return (
        f"no bibs, {in_words(copy.size)}"
        if any(other.bib for other in block.copies)
        else f"{in_words(copy.size)} children"
    )


def _described(block: Block) -> str:
    copies = len(block.copies)
    counts = ", ".join(copy_words(copy, block) for copy in block.copies)
    rests = f" {in_words(block.resting).capitalize()} rest in turn." if block.resting else ""
    return f"{in_words(copies).capitalize()} {'copy' if copies == 1 else 'copies'}: {counts}.{rests}"
