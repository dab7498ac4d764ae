"""One copy of an exercise put on a canvas: boxes, kit, people, lines of play, numbers and names.

It must not know how many copies there are or what the picture is for.
"""

from dataclasses import dataclass

from conewright.drawing.canvas import Canvas
from conewright.drawing.courses import courses, kept_apart
from conewright.drawing.ink import Stroke, inked, stroke
from conewright.drawing.kit import corners, put_boxes, put_things
from conewright.drawing.letters import width_of
from conewright.drawing.marks import meeting, step_mark, word
from conewright.drawing.options import Meeting, PictureOptions
from conewright.drawing.people import people
from conewright.drawing.placing import name_spot, step_spot, step_spot_at, words_spot
from conewright.drawing.players import put_players
from conewright.drawing.stands import Stand, mark_radius, put_balls, put_stand, stands_of, tails
from conewright.drawing.view import View
from conewright.model.exercise import Bib, Contest, Exercise, OpenPlay, PlayKind
from conewright.model.ground import hub
from conewright.model.layout import Side, one_copy, sides_for
from conewright.model.round import Round
from conewright.model.scene import Dot
from conewright.model.unroll import unroll

APART_M = 0.7  # two lines between the same two places keep this far apart


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawn:
    """A copy whose marks and lines are drawn and whose numbers and words are still to come."""

    exercise: Exercise
    round: Round
    stands: tuple[Stand, ...]
    strokes: tuple[Stroke, ...]
    sides: tuple[Side, ...]
    view: View


def put_copy(
    canvas: Canvas,
    exercise: Exercise,
    size: int,
    *,
    view: View,
    options: PictureOptions,
    bib: Bib | None = None,
    sides: tuple[Side, ...] = (),
    adults: int = 0,
) -> Drawn:
    """Draw one copy of `size` children up to its balls; `put_words` does the rest once all copies stand.

    `sides` are those of an open-play box where their bibs have been chosen; `adults` have their letters already.
    """
    own = one_copy(exercise, size)
    round_, _ = unroll(own, options.side)
    put_boxes(canvas, own, round_, view)
    put_things(canvas, own, view)
    stands = stands_of(own, people(own, size, bib, adults=adults), view=view, options=options)
    for stand in stands:
        put_stand(canvas, stand, options)
    sides = sides or sides_for(own, size)
    if own.open_play is not None and own.script is None:
        radius = mark_radius(view.scale, canvas.measures)
        put_players(canvas, own.open_play, sides, view=view, options=options, radius=radius)
    strokes = _put_lines(canvas, own, round_, stands, view=view, options=options)
    for stand in stands:
        put_balls(canvas, stand)
    return Drawn(exercise=own, round=round_, stands=stands, strokes=strokes, sides=sides, view=view)


def put_words(canvas: Canvas, drawn: Drawn, options: PictureOptions) -> None:
    """Put the numbers of sentences, the words of boxes and the names of places where there is room for them."""
    for met in options.meetings:
        _put_meeting(canvas, met, drawn.view)
    _put_box_words(canvas, drawn.exercise, drawn.round, drawn.sides, drawn.view)
    _put_steps(canvas, drawn.round, drawn.strokes, drawn.view, options)
    if options.names:
        _put_names(canvas, drawn.stands)


# --- lines of play ----------------------------------------------------------------------------------------------------


def _put_lines(
    canvas: Canvas, exercise: Exercise, round_: Round, stands: tuple[Stand, ...], *, view: View, options: PictureOptions
) -> tuple[Stroke, ...]:
    measures = canvas.measures
    keep_m = (mark_radius(view.scale, measures) + measures.gap) / view.metre
    unit_m = max(APART_M, measures.between / view.metre)
    found = courses(exercise, round_, tails(exercise, stands, view))
    found = kept_apart(found, unit_m, tuple((stand.place.at, keep_m) for stand in stands), hub(exercise))
    marks = tuple((stand.spot, stand.radius) for stand in stands)
    strokes = []
    for course in sorted(found, key=lambda course: course.loop):  # a loop goes where the other lines are not
        drawn = stroke(course, view, canvas, marks)
        if drawn is None:
            continue
        strokes.append(drawn)
        canvas.lines.append(drawn.line)
        band, line = inked(drawn, measures, options.tradition, _state(course.step, options))
        canvas.add("band", band)
        canvas.add("line", line)
    return tuple(strokes)


def _state(step: int, options: PictureOptions) -> str:
    return "" if options.lit is None else "lit" if step == options.lit else "dim"


def _put_steps(canvas: Canvas, round_: Round, strokes: tuple[Stroke, ...], view: View, options: PictureOptions) -> None:
    numbered: set[int] = set()
    for drawn in strokes:
        course = drawn.course
        if course.numbered:
            numbered.add(course.step)
            _put_step(canvas, step_spot(canvas, drawn), course.step, course.act, options)
    for played in round_.acts:
        if played.step not in numbered and not (played.implied and played.way_back):
            numbered.add(played.step)
            at = step_spot_at(canvas, view.dot(played.path[-1]), played.step)
            _put_step(canvas, at, played.step, played.number, options)
    if round_.contest is not None and round_.contest_step not in numbered:
        at = step_spot_at(canvas, view.dot(round_.contest.middle), round_.contest_step)
        _put_step(canvas, at, round_.contest_step, -1, options)


def _put_step(canvas: Canvas, at: Dot, step: int, act: int, options: PictureOptions) -> None:
    data = (("step", str(step)), ("act", str(act)))
    canvas.add("step", step_mark(at, step, canvas.measures, state=_state(step, options), data=data))


# --- words ------------------------------------------------------------------------------------------------------------


def _put_names(canvas: Canvas, stands: tuple[Stand, ...]) -> None:
    for stand in stands:
        found = name_spot(canvas, stand.spot, stand.radius, stand.place.name)
        if found is not None:
            at, anchor = found
            size = canvas.measures.name_size
            canvas.add("label", word(at, stand.place.name, size=size, anchor=anchor, kind="nm"))


def _put_meeting(canvas: Canvas, met: Meeting, view: View) -> None:
    at, measures = view.dot(met.at), canvas.measures
    canvas.discs.append((at, measures.meeting_half))
    canvas.add("warn", meeting(at, reach=view.metre, measures=measures))
    words = f"{met.distance_m:.1f} m, {met.apart_s:.1f} s apart"
    shift = measures.meeting_half + measures.name_clear
    options = (
        (Dot(at.x + shift, at.y - shift / 2), "start"),
        (Dot(at.x - shift, at.y - shift / 2), "end"),
        (Dot(at.x + shift, at.y + shift), "start"),
        (Dot(at.x - shift, at.y + shift), "end"),
    )
    found = words_spot(canvas, options, words, measures.name_size) or options[0]
    canvas.add("label", word(found[0], words, size=measures.name_size, anchor=found[1], kind="wt"))


def _put_box_words(canvas: Canvas, exercise: Exercise, round_: Round, sides: tuple[Side, ...], view: View) -> None:
    if round_.contest is not None:
        contest = round_.contest
        low, high = corners(view, contest.middle, contest.width_m, contest.depth_m)
        _put_words(canvas, low, high, contest_words(contest), inside_first=True)
    if exercise.open_play is not None:
        play = exercise.open_play
        low, high = corners(view, play.middle, play.width_m, play.depth_m)
        _put_words(canvas, low, high, open_words(play, sides, view.shrink), inside_first=False)


def _put_words(canvas: Canvas, low: Dot, high: Dot, tries: tuple[str, ...], *, inside_first: bool) -> None:
    """The longest of some words that is no wider than its box and finds free ground on its edge or inside it."""
    size, clear = canvas.measures.name_size, canvas.measures.name_clear
    left, right = low.x + clear, high.x - clear
    inside = [(low.y + 1.4 * size), (high.y - 0.7 * size)]
    outside = [(low.y - 0.5 * size), (high.y + 1.1 * size)]
    heights = [*inside, *outside] if inside_first else [outside[0], inside[0], outside[1], inside[1]]
    options = tuple(spot for y in heights for spot in ((Dot(left, y), "start"), (Dot(right, y), "end")))
    for words in tries:
        fits = width_of(words, size) <= high.x - low.x - clear
        found = words_spot(canvas, options, words, size) if fits else None
        if found is not None:
            canvas.add("label", word(found[0], words, size=size, anchor=found[1], kind="bx"))
            return


def contest_words(contest: Contest) -> tuple[str, ...]:
    """ "contest: 1 v 1, at most 8 s", and shorter where that is too wide."""
    sides = f"{len(contest.attackers)} v {len(contest.defenders)}"
    limit = f", at most {contest.limit_s:g} s" if contest.limit_s else ""
    return tuple(dict.fromkeys((f"contest: {sides}{limit}", f"{sides}{limit}", sides)))


def open_words(play: OpenPlay, sides: tuple[Side, ...], scale: float = 1.0) -> tuple[str, ...]:
    """ "open play: 4 v 2, 12 by 12 m" at the size it is laid out, and shorter where that is too wide."""
    full = tuple(side.count for side in sides if side.team.name not in ("neutral", "rests in turn", "shares"))
    size = f"{play.width_m * scale:.3g} by {play.depth_m * scale:.3g} m"
    if play.kind is PlayKind.BALL_EACH or len(full) < 2:
        return f"open play, {size}", size
    counts = " v ".join(str(count) for count in full)
    return f"open play: {counts}, {size}", f"{counts}, {size}", size, counts
