"""Fits the ground the exercise says it needs, and gives each child enough of it; must not know of time."""

from math import ceil, floor

from conewright.checks.case import Case, Check, look, mend
from conewright.model.exercise import PlayKind
from conewright.model.geometry import Box
from conewright.model.ground import MARGIN_M, ground_used
from conewright.model.problem import Problem

SLACK_M = 0.05


def fits_space(case: Case) -> tuple[Problem, ...]:
    """Places, lines, ways back, flights and boxes against the stated space, either way round."""
    space = case.exercise.space
    if space is None or not (case.exercise.places or case.exercise.open_play):
        return ()
    used = ground_used(case.exercise, case.size, case.rounds)
    inner = (used.width_m - 2 * MARGIN_M, used.depth_m - 2 * MARGIN_M)
    stated = f"{space.width_m:g} by {space.depth_m:g} m"
    if not _holds(inner, (space.width_m, space.depth_m)):
        return (
            mend(
                "space-too-small",
                f"With {case.size} it uses {_said(used)} with 1 m round it, and the space is {stated}.",
                case.exercise.span,
                f'Write "space: {_up(used.width_m)} by {_up(used.depth_m)} m", or move the places closer together.',
            ),
        )
    if not _holds((used.width_m, used.depth_m), (space.width_m, space.depth_m)):
        return (
            look(
                "space-tight",
                f"With {case.size} it needs {_said(used)} with 1 m round it; the space of {stated} leaves less.",
                case.exercise.span,
                f'Write "space: {_up(used.width_m)} by {_up(used.depth_m)} m".',
            ),
        )
    return ()


def _holds(used: tuple[float, float], given: tuple[float, float]) -> bool:
    return all(a <= b + SLACK_M for a, b in zip(sorted(used), sorted(given), strict=True))


def _said(box: Box) -> str:
    return f"{box.width_m:.1f} by {box.depth_m:.1f} m"


def _up(metres: float) -> int:
    return ceil(metres - SLACK_M)


def area_each(case: Case) -> tuple[Problem, ...]:
    """Ground per child in open play against the range for keeping the ball or for a small game (estimates)."""
    play = case.exercise.open_play
    if play is None or play.kind not in (PlayKind.KEEP, PlayKind.GAME) or case.size <= 0:
        return ()
    if case.exercise.kind == "duel":  # the ranges are for games of several a side
        return ()
    keep = play.kind is PlayKind.KEEP
    figures, age = case.figures, case.age
    low = figures.at("area_possession_low_m2" if keep else "area_small_game_low_m2", age=age)
    high = figures.at("area_possession_high_m2" if keep else "area_small_game_high_m2", age=age)
    each = play.width_m * play.depth_m / case.size
    if low <= each <= high:
        return ()
    tight = each < low
    factor = (low if tight else high) * case.size / (play.width_m * play.depth_m)
    round_to = ceil if tight else floor
    width, depth = round_to(play.width_m * factor**0.5), round_to(play.depth_m * factor**0.5)
    return (
        look(
            "area-tight" if tight else "area-wide",
            f"{each:.0f} m² a child is {'little' if tight else 'much'}; "
            f"the usual range is {low:.0f} to {high:.0f} (an estimate).",
            play.span,
            f'With {case.size} write "Open play in {width} by {depth} m: ..."',
        ),
    )


CHECKS = (
    Check(
        codes=("space-too-small", "space-tight"),
        why="What does not fit the ground is changed on the spot, and then nothing else fits either.",
        run=fits_space,
    ),
    Check(
        codes=("area-tight", "area-wide"),
        why="Ground per child decides how hard it is to keep the ball and how much everybody runs.",
        run=area_each,
    ),
)
