"""What every child does when: stretches of moving, being on the ball and waiting; must not know where that is."""

from typing import NamedTuple

from conewright.model.exercise import Verb
from conewright.model.rehearsed import Doing, Spell
from conewright.rehearsal.durations import TimedAct
from conewright.rehearsal.recursion import Done, Play

KICK_S = 0.1  # the least stretch a kick shows as


class Stretch(NamedTuple):
    """A stretch of doing something, seconds."""

    start_s: float
    end_s: float
    doing: Doing
    step: int
    round: int
    way_back: bool


def act_of(play: Play, done: Done) -> TimedAct | None:
    """The act that was done, None for a change that comes every so many rounds."""
    return play.rounds[play.side_of[done.round]].acts[done.act] if done.act >= 0 else None


def spells_by_person(play: Play, until_s: float) -> dict[int, list[Stretch]]:
    """The stretches of every child that begin before a moment, without the waiting between them."""
    found: dict[int, list[Stretch]] = {person: [] for person in range(len(play.homes))}
    for done in play.done:
        if done.person >= 0 and done.start_s <= until_s:
            found[done.person] += _stretches(done, act_of(play, done))
    for stretches in found.values():
        stretches.sort()
    return found


def _stretches(done: Done, act: TimedAct | None) -> list[Stretch]:
    if act is None:
        return [Stretch(done.start_s, done.end_s, Doing.MOVING, 0, done.round, True)]
    step, round_, back = act.played.step, done.round, act.played.homeward
    if act.kick:
        begun = done.start_s - act.prepare_s if act.played.takes_from else done.ready_s - act.prepare_s
        return [
            Stretch(min(begun, done.start_s - KICK_S), done.start_s, Doing.ON_BALL, step, round_, False),
            Stretch(done.start_s, done.start_s + act.still_s, Doing.MOVING, step, round_, False),
        ]
    if act.played.verb is Verb.WAIT:
        return []
    if act.needs_ball or act.played.verb is Verb.FETCH:
        return [Stretch(done.start_s - act.prepare_s, done.end_s, Doing.ON_BALL, step, round_, back)]
    return [Stretch(done.start_s, done.end_s, Doing.MOVING, step, round_, back)]


def clipped(stretches: list[Stretch], until_s: float) -> list[Stretch]:
    """The stretches, in order of time, from nought to a moment, none overlapping the one before it."""
    kept, at = [], 0.0
    for stretch in stretches:
        if stretch.start_s >= until_s:
            break
        start, end = max(stretch.start_s, at), min(stretch.end_s, until_s)
        if end > start:
            whole = start == stretch.start_s and end == stretch.end_s
            kept.append(stretch if whole else stretch._replace(start_s=start, end_s=end))
            at = end
    return kept


def filled(stretches: list[Stretch], until_s: float) -> tuple[Spell, ...]:
    """The stretches as spells without a gap: what lies between them is waiting."""
    spells, at = [], 0.0
    for stretch in clipped(stretches, until_s):
        if stretch.start_s > at:
            spells.append(Spell(start_s=at, end_s=stretch.start_s, doing=Doing.WAITING))
        spells.append(
            Spell(
                start_s=stretch.start_s,
                end_s=stretch.end_s,
                doing=stretch.doing,
                step=stretch.step,
                round=stretch.round,
                way_back=stretch.way_back,
            )
        )
        at = stretch.end_s
    if at < until_s:
        spells.append(Spell(start_s=at, end_s=until_s, doing=Doing.WAITING))
    return tuple(spells)


def waits(stretches: list[Stretch], until_s: float) -> tuple[float, float]:
    """Seconds of waiting in all, and the longest wait."""
    total, longest, at = 0.0, 0.0, 0.0
    for stretch in clipped(stretches, until_s):
        total += stretch.start_s - at
        longest = max(longest, stretch.start_s - at)
        at = stretch.end_s
    return total + until_s - at, max(longest, until_s - at)
