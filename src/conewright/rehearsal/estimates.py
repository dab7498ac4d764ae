"""What published figures say where nothing is scripted: open play and contests; must not invent a rehearsal."""

from conewright.model.exercise import Exercise, PlayKind
from conewright.model.figures import Figures
from conewright.model.layout import sides_for
from conewright.model.rehearsed import Estimate, NotRehearsed

CONTACTS = "foot contacts a child a minute while the ball rolls"


def estimate(exercise: Exercise, size: int, *, figures: Figures, age: int) -> Estimate | NotRehearsed:
    """The range of foot contacts that figures give for this open play, or why there is none."""
    play = exercise.open_play
    if play is None:
        why = "a contest is left to the children: how long it lasts and who comes next depends on chance"
        return NotRehearsed(exercise=exercise.name, size=size, why=why)
    if play.kind is PlayKind.BALL_EACH or play.kind is PlayKind.CHASE:
        return _ball_each(exercise, size, figures, age)
    if play.kind is PlayKind.KEEP:
        return _possession(exercise, size, figures, play.balls)
    return _game(exercise, size, figures)


def _ball_each(exercise: Exercise, size: int, figures: Figures, age: int) -> Estimate | NotRehearsed:
    sides = sides_for(exercise, size)
    holders = sum(side.count for side in sides if side.team.has_ball_each)
    if not holders:
        why = "no published figure gives contacts where only some have a ball"
        return NotRehearsed(exercise=exercise.name, size=size, why=why)
    row = figures.row("contacts_ball_each_mark_per_min")
    mark = figures.at(row.key, age=age) * holders / size
    cap = 60 / figures.value("touch_gap_s") * holders / size
    low, high = sorted((mark, cap))
    return Estimate(
        exercise=exercise.name, size=size, what=CONTACTS, low=low, high=high, source=row.source, grade=row.grade
    )


def _possession(exercise: Exercise, size: int, figures: Figures, balls: int) -> Estimate:
    low, high = (
        figures.row("possession_ball_touches_low_per_min"),
        figures.row("possession_ball_touches_high_per_min"),
    )
    share = max(1, balls) / max(1, size)
    return Estimate(
        exercise=exercise.name,
        size=size,
        what=CONTACTS,
        low=figures.value(low.key) * share,
        high=figures.value(high.key) * share,
        source=low.source,
        grade=low.grade,
    )


def _game(exercise: Exercise, size: int, figures: Figures) -> Estimate:
    """By format; numbers between two formats lie between their ranges, more than one ball is not counted in."""
    row = figures.row("game_touches_low_per_min")
    a_side = max(1.0, size / 2)
    low = figures.in_format("game_touches_low_per_min", a_side=a_side)
    high = figures.in_format("game_touches_high_per_min", a_side=a_side)
    return Estimate(
        exercise=exercise.name, size=size, what=CONTACTS, low=low, high=high, source=row.source, grade=row.grade
    )
