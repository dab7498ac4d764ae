"""What speaks for one way of using an exercise tonight, each 0 to 1; must not know the other blocks of the evening.

Every merit holds the rehearsed or published figure against the mark of the same kind of activity. A merit of one half
is the mark itself. Nothing here is a figure to show: shown figures come from the rehearsal.
"""

from dataclasses import dataclass

from conewright.fit.bench import Bench
from conewright.fit.colours import RESTS
from conewright.fit.placing import area_wanted_m2
from conewright.fit.rules import Attempt
from conewright.fit.suiting import is_game, is_opposed, relevance
from conewright.model.exercise import Exercise, PlayKind
from conewright.model.layout import one_copy, sides_for
from conewright.model.rehearsed import Estimate, Rehearsal, Rehearsed
from conewright.model.unroll import rounds_of

AT_THE_MARK = 0.5


@dataclass(frozen=True, slots=True, kw_only=True)
class Merits:
    """0 to 1 each. `rolling` is a share of the block's minutes, the rest are grades; `own` weighs those of a layout."""

    rolling: float
    contacts: float
    waiting: float
    aim: float
    opposed: float
    game: float
    everybody: float
    as_written: float
    ground: float
    one_place: float

    @property
    def own(self) -> float:
        """What tells ways of laying out the same exercise from one another."""
        return 2 * self.waiting + self.contacts + 3 * self.everybody + self.as_written + self.ground + self.one_place


def merits_of(attempt: Attempt, bench: Bench) -> Merits:
    """The merits of a layout that runs."""
    arrangement, placing = attempt.arrangement, attempt.placing
    if arrangement is None or placing is None:
        raise ValueError("only a layout that stands on the ground has merits")
    exercise, asked = attempt.exercise, bench.asked
    trials = tuple((size, bench.trial(exercise, size, placing.scale).rehearsed) for size in arrangement.sizes)
    resting = arrangement.resting / asked.here
    waits = _mean(tuple((size, _waiting(exercise, size, rehearsed, bench)) for size, rehearsed in trials))
    return Merits(
        rolling=_mean(tuple((size, rolling_share(exercise, rehearsed, bench)) for size, rehearsed in trials)),
        contacts=_mean(tuple((size, _contacts(attempt, size, rehearsed, bench)) for size, rehearsed in trials)),
        waiting=waits * (1 - resting),
        aim=relevance(exercise, asked.aim),
        opposed=float(is_opposed(exercise)),
        game=float(is_game(exercise)),
        everybody=1.0 if not arrangement.resting else AT_THE_MARK * (1 - resting),
        as_written=_as_written(attempt, placing.scale),
        ground=_ground(exercise, arrangement.sizes, placing.scale, bench),
        one_place=1 / len(arrangement.sizes) if asked.adults < 2 else 1.0,
    )


def _mean(weighed: tuple[tuple[int, float], ...]) -> float:
    return sum(size * value for size, value in weighed) / sum(size for size, _ in weighed)


def _as_written(attempt: Attempt, scale: float) -> float:
    """Made smaller, stand-ins and colours the text does not name each cost a little; room to spare costs nothing."""
    tight = max(0.0, 1 - scale)
    odd = len(attempt.taken.stand_ins) + bool(attempt.colours and attempt.colours.short)
    return 1 / (1 + 2 * tight + 0.25 * odd)


def _ground(exercise: Exercise, sizes: tuple[int, ...], scale: float, bench: Bench) -> float:
    """How much of the ground that the figures ask for a child has in a game or possession box; 1 elsewhere."""
    play, wanted_m2 = exercise.open_play, area_wanted_m2(exercise, bench)
    if play is None or wanted_m2 is None:
        return 1.0
    has_m2 = play.width_m * play.depth_m * scale * scale / max(sizes)
    return min(1.0, has_m2 / wanted_m2)


def in_play_share(bench: Bench) -> float:
    """The middle of the published range of how long a ball is in play in open play: an estimate."""
    return (bench.figures.value("in_play_share_low") + bench.figures.value("in_play_share_high")) / 2


def rolling_share(exercise: Exercise, rehearsed: Rehearsed, bench: Bench) -> float:
    """The share of the time in which a ball rolls: rehearsed, all of it where everyone has one, else an estimate."""
    if isinstance(rehearsed, Rehearsal):
        return min(1.0, max(0.0, rehearsed.rolling_share))
    play = exercise.open_play
    if play is not None and (play.kind is PlayKind.BALL_EACH or any(team.has_ball_each for team in play.teams)):
        return 1.0
    return in_play_share(bench)


def _waiting(exercise: Exercise, size: int, rehearsed: Rehearsed, bench: Bench) -> float:
    """1 with no waiting, one half at the age's mark, 0 at twice the mark; unrehearsed, those not in the round wait."""
    mark = bench.figures.at("waiting_mark_share", age=bench.asked.age)
    if isinstance(rehearsed, Rehearsal):
        return max(0.0, 1 - AT_THE_MARK * rehearsed.waiting_share / mark)
    if exercise.open_play is None:
        return max(0.0, 1 - AT_THE_MARK * _out_of_the_round(exercise, size) / mark)
    resting = sum(side.count for side in sides_for(exercise, size) if side.team.name == RESTS) / size
    return max(0.0, 1 - AT_THE_MARK * resting / mark)


def _out_of_the_round(exercise: Exercise, size: int) -> float:
    """The share of the children who have no part in a round while it is played."""
    rounds, _ = rounds_of(one_copy(exercise, size))
    busy = max((sum(1 for bearer in one.bearers if not bearer.adult) for one in rounds), default=0)
    return max(0.0, 1 - busy / size)


def _contacts(attempt: Attempt, size: int, rehearsed: Rehearsed, bench: Bench) -> float:
    """0 with no contacts, one half at the mark of the same kind, 1 at twice the mark and beyond."""
    found = contacts_a_minute(rehearsed)
    if found is None:
        return AT_THE_MARK
    middle = balls_share(attempt) * (found[0] + found[1]) / 2
    ratio = middle / contacts_mark(attempt.exercise, size, bench)
    return min(1.0, AT_THE_MARK * ratio)


def contacts_a_minute(rehearsed: Rehearsed) -> tuple[float, float] | None:
    """Foot contacts a child a minute, low and high; equal where rehearsed, None where nobody knows."""
    if isinstance(rehearsed, Rehearsal):
        return rehearsed.contacts_a_minute, rehearsed.contacts_a_minute
    if isinstance(rehearsed, Estimate):
        return rehearsed.low, rehearsed.high
    return None


def contacts_mark(exercise: Exercise, size: int, bench: Bench) -> float:
    """The mark of foot contacts for this kind of activity; that of a line pattern is shared by those at a ball."""
    figures, age = bench.figures, bench.asked.age
    play = exercise.open_play
    if play is not None:
        key = {
            PlayKind.KEEP: "contacts_possession_mark_per_min",
            PlayKind.GAME: "contacts_game_mark_per_min",
        }.get(play.kind, "contacts_ball_each_mark_per_min")
        return figures.at(key, age=age)
    return figures.at("contacts_pattern_mark_per_min", age=age) * figures.value("pattern_mark_per_ball") / size


def balls_share(attempt: Attempt) -> float:
    """How many of the balls wanted there are, at most 1: two who share a ball touch it half as often."""
    wanted = attempt.needs.balls
    return min(1.0, attempt.taken.kit.balls / wanted) if wanted else 1.0
