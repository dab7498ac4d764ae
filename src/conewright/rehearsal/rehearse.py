"""An exercise rehearsed with so many children of an age on a surface; must not know of checks or the evening."""

from collections.abc import Iterable

from conewright.model.exercise import Exercise
from conewright.model.figures import Figures
from conewright.model.layout import one_copy
from conewright.model.problem import Problem
from conewright.model.rehearsed import ActName, Happening, NotRehearsed, Rehearsal, Rehearsed
from conewright.model.round import Round
from conewright.model.unroll import Unrolled, rounds_of
from conewright.rehearsal.counting import children_of, rolling_share
from conewright.rehearsal.durations import pupil
from conewright.rehearsal.estimates import estimate
from conewright.rehearsal.pace import cycle_of, deciding_circuit, pace_of_play
from conewright.rehearsal.recursion import Play, played_out
from conewright.rehearsal.spells import spells_by_person
from conewright.rehearsal.tracks import TRACK_S, ball_tracks, people_tracks

BOUT_S = 240.0
MOST_CHILDREN = 60  # one copy of more is not rehearsed: a bound on work


def rehearse(
    exercise: Exercise,
    size: int,
    *,
    figures: Figures,
    age: int,
    surface: str,
    bout_s: float = BOUT_S,
    unrolled: Unrolled | None = None,
) -> tuple[Rehearsed, tuple[Problem, ...]]:
    """Play one copy of `size` children for a bout of seconds, if all goes cleanly, and count what everyone gets.

    A fixed script is played exactly; open play and contests give an estimate from published figures or the reason
    why there is none. Problems found on the way (nobody there, no ball left) come back beside it. Never raises for
    an exercise that was read; where a script stalls the figures cover what was played. The rounds may be passed in
    where they are at hand (`conewright.model.unroll.rounds_of`): they are the same for every size.
    """
    own = one_copy(exercise, size)
    if own.script is None or any(step.contest for step in own.script.steps):
        return estimate(own, size, figures=figures, age=age), ()
    if not 0 < size <= MOST_CHILDREN or not own.script.steps or bout_s <= 0:
        why = f"a copy of {size} children is not played out" if own.script.steps else "the round has no step"
        return NotRehearsed(exercise=exercise.name, size=size, why=why), ()
    rounds, found = unrolled or rounds_of(own)
    play = played_out(own, rounds, pupil(figures, age=age, surface=surface), size=size, bout_s=bout_s)
    if play is None or not play.done:
        problems = (*found, *(play.problems if play else ()))
        return NotRehearsed(exercise=exercise.name, size=size, why="the round cannot start"), problems
    return _report(play, rounds[0], surface), (*found, *play.problems)


def rehearse_sizes(
    exercise: Exercise, sizes: Iterable[int], *, figures: Figures, age: int, surface: str, bout_s: float = BOUT_S
) -> dict[int, tuple[Rehearsed, tuple[Problem, ...]]]:
    """Rehearse copies of many sizes, each once however often it is asked for: the rounds are laid out once."""
    unrolled = rounds_of(exercise) if exercise.script is not None else None
    return {
        size: rehearse(exercise, size, figures=figures, age=age, surface=surface, bout_s=bout_s, unrolled=unrolled)
        for size in dict.fromkeys(sizes)
    }


def _report(play: Play, first: Round, surface: str) -> Rehearsal:
    spells = spells_by_person(play, max(play.bout_s, TRACK_S))
    people, longest = people_tracks(play, spells)
    children = children_of(play, spells)
    circuit = deciding_circuit(play)
    count = max(1, len(children))
    minutes = play.bout_s / 60
    return Rehearsal(
        exercise=play.exercise.name,
        size=play.size,
        age=play.child.age,
        surface=surface,
        bout_s=play.bout_s,
        acts=tuple(
            ActName(step=act.step, who=first.bearers[act.bearer].role, verb=act.verb, words=act.words)
            for act in first.acts
        ),
        happenings=_happenings(play),
        children=children,
        people=people,
        balls=ball_tracks(play, people),
        round_starts_s=tuple(moment.time_s for moment in play.starts if moment.time_s <= play.bout_s),
        cycle_s=cycle_of(play, circuit),
        pace=pace_of_play(play, circuit),
        contacts_a_minute=sum(child.contacts for child in children) / count / minutes,
        passes_a_minute=sum(child.passes for child in children) / count / minutes,
        metres_a_minute=sum(child.metres for child in children) / count / minutes,
        waiting_share=sum(child.waiting_share for child in children) / count,
        longest_wait_s=max((child.longest_wait_s for child in children), default=0.0),
        rolling_share=rolling_share(play),
        longest_line=longest[0],
        longest_line_at=longest[1],
    )


def _happenings(play: Play) -> tuple[Happening, ...]:
    return tuple(
        Happening(
            round=done.round,
            act=done.act,
            person=done.person,
            start_s=done.start_s,
            release_s=done.start_s if done.ball >= 0 and done.receiver >= 0 else None,
            end_s=done.end_s,
        )
        for done in play.done
        if done.act >= 0 and done.start_s <= play.bout_s
    )
