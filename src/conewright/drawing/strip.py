"""The strip: a row a child, time to the right, waiting, moving and on the ball told apart by height alone.

It must not know how the rehearsal was made. Drawing units are px; the strip is redrawn for a phone, never scaled.
"""

import math
from dataclasses import dataclass, replace
from itertools import pairwise

from conewright.drawing.boxes import slanted
from conewright.drawing.letters import width_of
from conewright.drawing.marks import RISE, person
from conewright.drawing.measures import SCREEN
from conewright.drawing.people import Person
from conewright.model.rehearsed import Doing, PersonTrack, Rehearsal, Spell
from conewright.model.scene import Dot, Group, Path, Rect, Scene, Shape, Text

ROW, ROW_TOUCH = 28.0, 34.0
HEAD, FOOT = 24.0, 28.0
NAME_AT, NAME_GAP, WAITS_WIDE = 30.0, 14.0, 52.0
MARK_RADIUS = 9.5
MOVE_HIGH, BALL_HIGH = 10.0, 18.0
NUMBERED_WIDE = 9.0  # a box on the ball carries its number from this width on
SIZE, SMALL = 13.0, 12.0
TICK_S, FIGURE_S = 5, 10
HIDES = 38.0  # the moment's time hides a figure nearer than this
ROUND_LEAST = 14.0  # a round narrower than this on the ruler goes without its number
STILL_S = 0.05  # spells nearer to each other than this are one


@dataclass(frozen=True, slots=True, kw_only=True)
class StripOptions:
    """Choices for one strip. `people` gives marks and letters by number; `most_wait` is the mark on waiting, 0 to 1."""

    people: tuple[Person, ...] = ()
    touch: bool = False
    moment_s: float | None = None
    followed: int | None = None
    most_wait: float | None = None
    title: str = "The strip"

    @property
    def row(self) -> float:
        """How high a row is."""
        return ROW_TOUCH if self.touch else ROW


@dataclass(frozen=True, slots=True, kw_only=True)
class _Ruled:
    """Where time lies: from `left` to `right` px lie `seconds`; rows start at `top`."""

    left: float
    right: float
    seconds: float
    top: float
    row: float
    rows: int

    @property
    def bottom(self) -> float:
        return self.top + self.row * self.rows

    def x(self, time_s: float) -> float:
        return self.left + (self.right - self.left) * min(max(time_s, 0.0), self.seconds) / self.seconds

    def middle(self, row: int) -> float:
        return self.top + self.row * (row + 0.5)


USUAL = StripOptions()


def strip(
    rehearsal: Rehearsal,
    *,
    seconds: float = 60.0,
    names: tuple[str, ...] | None = None,
    width: float = 786.0,
    options: StripOptions = USUAL,
) -> Scene:
    """What each child does from second 0 to `seconds`; `names` by number, else they are counted. A phone takes 30 s."""
    called = names or tuple(f"child {track.person + 1}" for track in rehearsal.people)
    widest = max((width_of(name, SIZE) for name in called), default=0.0)
    left = min(NAME_AT + widest + NAME_GAP, 0.35 * width)
    ruled = _Ruled(
        left=left, right=width - WAITS_WIDE - 4, seconds=seconds, top=HEAD, row=options.row, rows=len(rehearsal.people)
    )
    shapes: list[Shape] = [Group(shapes=_rulers(rehearsal, ruled, width, options), name="l-ruler")]
    longest = _longest(rehearsal, seconds)
    for row, track in enumerate(rehearsal.people):
        shapes.append(_row(rehearsal, track, row, ruled, called, width=width, options=options, longest=longest))
    if options.moment_s is not None:
        shapes.append(_moment(options.moment_s, ruled))
    return Scene(
        width=width,
        height=ruled.bottom + FOOT,
        shapes=tuple(shapes),
        title=options.title,
        description=_told(rehearsal, called, longest),
        name="pic strip",
    )


# --- rulers -----------------------------------------------------------------------------------------------------------


def _rulers(rehearsal: Rehearsal, ruled: _Ruled, width: float, options: StripOptions) -> tuple[Shape, ...]:
    low = ruled.bottom
    shapes: list[Shape] = [
        Text(at=Dot(0, 14), words="round", size=SMALL, name="st soft", anchor="start"),
        Text(at=Dot(0, low + 19), words="seconds", size=SMALL, name="st soft", anchor="start"),
        Text(at=Dot(width, 14), words="waits", size=SMALL, name="st soft", anchor="end"),
    ]
    rules = [
        (Dot(0, ruled.top + ruled.row * row), Dot(width, ruled.top + ruled.row * row)) for row in range(1, ruled.rows)
    ]
    shapes.append(Path(pieces=tuple(rules), name="row"))
    shapes += _rounds(rehearsal, ruled)
    ticks = [(Dot(ruled.left, ruled.top), Dot(ruled.right, ruled.top)), (Dot(ruled.left, low), Dot(ruled.right, low))]
    for second in range(0, math.floor(ruled.seconds) + 1, TICK_S):
        x = ruled.x(second)
        ticks.append((Dot(x, low), Dot(x, low + (7 if second % FIGURE_S == 0 else 4))))
        hidden = options.moment_s is not None and abs(ruled.x(options.moment_s) - x) < HIDES
        if second % FIGURE_S == 0 and not hidden:
            last = " s" if second + FIGURE_S > ruled.seconds else ""
            shapes.append(Text(at=Dot(x, low + 20), words=f"{second}{last}", size=SMALL, name="st soft"))
    return (*shapes, Path(pieces=tuple(ticks), name="tick"))


def _rounds(rehearsal: Rehearsal, ruled: _Ruled) -> list[Shape]:
    starts = [start for start in rehearsal.round_starts_s if start < ruled.seconds]
    shapes: list[Shape] = [
        Path(pieces=tuple((Dot(ruled.x(s), ruled.top), Dot(ruled.x(s), ruled.bottom)) for s in starts), name="round"),
        Path(pieces=tuple((Dot(ruled.x(s), 5.0), Dot(ruled.x(s), ruled.top)) for s in starts), name="tick"),
    ]
    for number, (start, end) in enumerate(pairwise((*starts, ruled.seconds)), start=1):
        if ruled.x(end) - ruled.x(start) >= ROUND_LEAST:
            at = Dot((ruled.x(start) + ruled.x(end)) / 2, 15)
            shapes.append(Text(at=at, words=str(number), size=SIZE, name="st strong"))
    return shapes


def _moment(time_s: float, ruled: _Ruled) -> Group:
    x, low, words = ruled.x(time_s), ruled.bottom, f"{time_s:.1f} s"
    half = width_of(words, SMALL) / 2 + 6
    box = Rect(at=Dot(x - half, low + 4), width=2 * half, height=20, name="now-box")
    time = Text(at=Dot(x, low + 18.4), words=words, size=SMALL, name="now-time")
    return Group(shapes=(Path(pieces=((Dot(x, ruled.top), Dot(x, low + 4)),), name="now"), box, time), name="moment")


# --- rows -------------------------------------------------------------------------------------------------------------


def _row(
    rehearsal: Rehearsal,
    track: PersonTrack,
    row: int,
    ruled: _Ruled,
    called: tuple[str, ...],
    *,
    width: float,
    options: StripOptions,
    longest: tuple[int, float, float] | None,
) -> Group:
    middle, followed = ruled.middle(row), options.followed == track.person
    band = Rect(at=Dot(0, middle - ruled.row / 2), width=width, height=ruled.row, name="row-band")
    name = called[track.person] if track.person < len(called) else ""
    share = next((child.waiting_share for child in rehearsal.children if child.person == track.person), 0.0)
    over = options.most_wait is not None and share > options.most_wait
    waits = f"{share * 100:.0f} %"
    rise = RISE * SIZE
    shapes: list[Shape] = [
        band,
        _mark(track.person, Dot(MARK_RADIUS + 2, middle), options),
        Text(at=Dot(NAME_AT, middle + rise), words=name, size=SIZE, name="st", anchor="start"),
        Path(pieces=((Dot(ruled.left, middle), Dot(ruled.right, middle)),), name="wait"),
        *_spells(_joined(track.spells), middle, ruled),
        Text(at=Dot(width, middle + rise), words=waits, size=SIZE, name="st strong" if over else "st", anchor="end"),
    ]
    if longest is not None and longest[0] == track.person:
        shapes += _bracket(longest[1], longest[2], middle, ruled)
    data = (("person", str(track.person)),)
    return Group(shapes=tuple(shapes), name="row-of lit" if followed else "row-of", data=data)


def _mark(number: int, at: Dot, options: StripOptions) -> Group:
    one = next((one for one in options.people if one.number == number), None)
    group = one.group if one else "n"
    letters = (one.letter or one.name) if one else str(number + 1)
    return person(at, MARK_RADIUS, group=group, letters=letters, direction=None, measures=SCREEN)


def _spells(spells: tuple[Spell, ...], middle: float, ruled: _Ruled) -> list[Shape]:
    moves: list[Shape] = []
    hatch: list[tuple[Dot, ...]] = []
    on_ball: list[Shape] = []
    for spell in spells:
        if spell.start_s >= ruled.seconds or spell.doing is Doing.WAITING:
            continue
        left, right = ruled.x(spell.start_s), ruled.x(spell.end_s)
        if spell.doing is Doing.MOVING:
            low, high = Dot(left, middle - MOVE_HIGH / 2), Dot(right, middle + MOVE_HIGH / 2)
            moves.append(Rect(at=low, width=right - left, height=MOVE_HIGH, name="move"))
            hatch += slanted(low, high, 5.0).pieces
        else:
            on_ball += _ball_box(spell, left, right, middle)
    return [*moves, *([Path(pieces=tuple(hatch), name="move-hatch")] if hatch else []), *on_ball]


def _joined(spells: tuple[Spell, ...]) -> tuple[Spell, ...]:
    """Spells on the ball in one sentence that follow each other, as one."""
    found: list[Spell] = []
    for spell in spells:
        last = found[-1] if found else None
        same = last is not None and last.doing is spell.doing is Doing.ON_BALL and last.step == spell.step
        if last is not None and same and last.round == spell.round and spell.start_s - last.end_s < STILL_S:
            found[-1] = replace(last, end_s=spell.end_s)
        else:
            found.append(spell)
    return tuple(found)


def _ball_box(spell: Spell, left: float, right: float, middle: float) -> list[Shape]:
    data = (("step", str(spell.step)),)
    box = Rect(at=Dot(left, middle - BALL_HIGH / 2), width=right - left, height=BALL_HIGH, name="on-ball", data=data)
    if right - left < NUMBERED_WIDE or not spell.step:
        return [box]
    at = Dot((left + right) / 2, middle + RISE * SMALL)
    return [box, Text(at=at, words=str(spell.step), size=SMALL, name="on-ball-number")]


def _bracket(start_s: float, end_s: float, middle: float, ruled: _Ruled) -> list[Shape]:
    left, right = ruled.x(start_s) + 1, ruled.x(end_s) - 1
    ends = tuple((Dot(x, middle - 5), Dot(x, middle + 5)) for x in (left, right))
    bracket = Path(pieces=ends, name="longest")
    at = Dot((left + right) / 2, middle + RISE * SMALL)
    tries = (f"longest, {end_s - start_s:.0f} s", f"{end_s - start_s:.0f} s")
    fits = next((words for words in tries if right - left > width_of(words, SMALL) + 12), None)
    return [bracket, *([Text(at=at, words=fits, size=SMALL, name="longest-words")] if fits else [])]


def waits_of(track: PersonTrack, seconds: float) -> tuple[tuple[float, float], ...]:
    """The stretches in which somebody waits between 0 and `seconds`, those that follow each other as one."""
    found: list[tuple[float, float]] = []
    for spell in track.spells:
        start, end = spell.start_s, min(spell.end_s, seconds)
        if spell.doing is not Doing.WAITING or end <= start:
            continue
        if found and start - found[-1][1] < STILL_S:
            found[-1] = (found[-1][0], end)
        else:
            found.append((start, end))
    return tuple(found)


def _longest(rehearsal: Rehearsal, seconds: float) -> tuple[int, float, float] | None:
    """Who waits longest without a break in what is shown, from when to when."""
    waits = [(track.person, *wait) for track in rehearsal.people for wait in waits_of(track, seconds)]
    return max(waits, key=lambda wait: (wait[2] - wait[1], -wait[0]), default=None)


def _told(rehearsal: Rehearsal, called: tuple[str, ...], longest: tuple[int, float, float] | None) -> str:
    shares = ", ".join(
        f"{called[child.person]} waits {child.waiting_share * 100:.0f} %"
        for child in rehearsal.children
        if child.person < len(called)
    )
    if longest is None or longest[0] >= len(called):
        return shares
    return f"{shares}. Longest wait: {called[longest[0]]}, {longest[2] - longest[1]:.0f} s from second {longest[1]:.0f}"
