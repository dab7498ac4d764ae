"""What the ball is asked to do: pass lengths for the age, headers, the same side always; must not know of time."""

import re
from math import ceil, sin

from conewright.checks.case import Case, Check, look, mend
from conewright.model.exercise import Verb, Weight
from conewright.model.geometry import heading_rad, path_length_m
from conewright.model.problem import Problem
from conewright.model.round import Played
from conewright.model.unroll import PASSES

SHORT_IS_MEANT = frozenset({Verb.SET_BACK, Verb.THROW})
HEADER = re.compile(r"\bhead(?:er|ers|ing)\b|\bheads? (?:it|the ball|in|home)\b", re.IGNORECASE)
NOT_ONE = re.compile(r"\b(?:no|never|without|not|instead of)\b[^.;]{0,24}$", re.IGNORECASE)
SLACK_M = 0.05  # lengths are told to a tenth of a metre
STRAIGHT = 0.05  # a ball that goes on within about 3 degrees of straight turns to no side


def pass_length(case: Case) -> tuple[Problem, ...]:
    """Every pass against the comfortable range of the age (an estimate), and what the age can reach at all."""
    low = case.figures.at("pass_range_min_m", age=case.age)
    high = case.figures.at("pass_range_max_m", age=case.age)
    found = []
    for act in _each_act(case):
        if act.verb not in PASSES or len(act.flight) != 2:
            continue
        length = path_length_m(act.flight)
        lofted = act.verb is Verb.CROSS or (act.act is not None and act.act.manner.lofted)
        if length > high + SLACK_M and not lofted:
            found.append(_too_long(case, act, length, high))
        elif length < low - SLACK_M and not _meant_short(act):
            found.append(
                look(
                    "pass-short",
                    f"{act.words[:1].upper()}{act.words[1:]} in step {act.step} is {length:.1f} m long; "
                    f"under {case.age}, {low:g} to {high:g} m is usual (an estimate).",
                    act.span,
                    f'Move the places {ceil(low - length)} m further apart, or write "passes softly" if it is meant.',
                )
            )
    return tuple(dict.fromkeys(found))


def _meant_short(act: Played) -> bool:
    soft = act.act is not None and act.act.manner.weight is Weight.SOFT
    return act.verb in SHORT_IS_MEANT or soft


def _too_long(case: Case, act: Played, length: float, high: float) -> Problem:
    return look(
        "pass-long",
        f"{act.words[:1].upper()}{act.words[1:]} in step {act.step} is {length:.1f} m long; "
        f"under {case.age}, up to {high:g} m is usual (an estimate).",
        act.span,
        f"Move the places {ceil(length - high)} m closer together.",
    )


def _each_act(case: Case) -> list[Played]:
    return [act for round_ in case.rounds for act in round_.acts]


def heading(case: Case) -> tuple[Problem, ...]:
    """A header asked for, or invited by a lofted ball, against the heading rule: the strictest unless one is chosen."""
    band = case.figures.band("heading", age=case.age)
    rule = band.text if band is not None else "None unless your federation's table allows it."
    found = []
    exercise = case.exercise
    rules = exercise.open_play.rules if exercise.open_play else ()
    said = (exercise.score, *rules, *exercise.cues, *exercise.notes, *exercise.aims, *exercise.cautions)
    for text in said:
        match = HEADER.search(text)
        if match and not _says_none(text):
            found.append(
                mend(
                    "header-asked",
                    f'"{match.group()}" asks for headers under {case.age}. Heading: {rule}',
                    exercise.span,
                    "Let the ball be played with the foot, thigh or chest. Local rules come first.",
                )
            )
    none_said = any(_says_none(text) for text in said)
    for act in _each_act(case):
        lofted = act.act is not None and act.act.manner.lofted
        if (act.verb is Verb.CROSS or lofted) and act.receiver is not None and not none_said:
            found.append(
                look(
                    "header-invited",
                    f"The lofted ball in step {act.step} may be headed. Heading under {case.age}: {rule}",
                    act.span,
                    'Play it along the ground ("passes firmly ahead of ..."), or write "caution: no headers". '
                    "Local rules come first.",
                )
            )
    return tuple(dict.fromkeys(found))


def _says_none(text: str) -> bool:
    """True where a text rules headers out."""
    match = HEADER.search(text)
    return match is not None and NOT_ONE.search(text[: match.start()]) is not None


def both_sides(case: Case) -> tuple[Problem, ...]:
    """Every ball that is received and played on turns to the same side, and nothing changes it."""
    script = case.exercise.script
    if script is None or not case.rounds or len(case.rounds) > 1 or script.mirrored_at_half_time:
        return ()
    turns = _turns(case.rounds[0].acts)
    if len(turns) < 2 or len({turn > 0 for turn in turns}) > 1:
        return ()
    side = "left" if turns[0] > 0 else "right"
    return (
        look(
            "one-sided",
            f"Every ball is turned to the {side}: one foot and one way of turning get all the practice.",
            script.span or case.exercise.span,
            'Write "Change sides at half time.", or let two places take turns.',
        ),
    )


def _turns(acts: tuple[Played, ...]) -> list[float]:
    """For each bearer that receives and plays on: the sine of the turn of the ball's way, left positive."""
    turns = []
    came: dict[int, float] = {}
    for act in acts:
        if act.flight:
            if act.bearer in came and act.verb is not Verb.SET_BACK:
                turn = sin(heading_rad(act.flight[0], act.flight[1]) - came[act.bearer])
                if abs(turn) > STRAIGHT:
                    turns.append(turn)
            if act.receiver is not None:
                came[act.receiver] = heading_rad(act.flight[-2], act.flight[-1])
    return turns


CHECKS = (
    Check(
        codes=("pass-long", "pass-short"),
        why="A pass beyond the age's range dies on the way or comes too hard, and the pattern with it.",
        run=pass_length,
    ),
    Check(
        codes=("header-asked", "header-invited"),
        why="Heading is limited by age; unless a federation's table says otherwise there is none.",
        run=heading,
    ),
    Check(
        codes=("one-sided",),
        why="A pattern that always turns one way trains one foot.",
        run=both_sides,
    ),
)
