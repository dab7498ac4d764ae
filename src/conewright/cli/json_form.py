"""Answers as JSON: the names that other programs read; must not know how anything was found.

Times in seconds or minutes and lengths in metres, as the names say; shares from 0 to 1; what is not known is null.
"""

import json
from math import isfinite
from typing import Any

from conewright.model.problem import Problem
from conewright.model.rehearsed import Estimate, Rehearsal, Rehearsed
from conewright.model.session import Block, Copy, HeadAnswer, Kit, Pause, Session

Form = dict[str, Any]


def print_json(form: Form) -> None:
    """Print an answer as JSON."""
    print(json_text(form))


def json_text(form: Form) -> str:
    """An answer as JSON, in plain ASCII so that every terminal and pipe takes it."""
    return json.dumps(form, indent=2, allow_nan=False)


def problem_form(problem: Problem) -> Form:
    """A finding; line and column count from 1 and are null where it is not about one spot of the text."""
    where = problem.where
    return {
        "code": problem.code,
        "severity": problem.severity.value,
        "message": problem.message,
        "hint": problem.hint,
        "line": where.line if where else None,
        "column": where.column if where else None,
        "end_line": where.end_line if where else None,
        "end_column": where.end_column if where else None,
    }


def rehearsed_form(rehearsed: Rehearsed | None) -> Form | None:
    """What was rehearsed, what is an estimate, or why there is neither, told apart by "is"."""
    if rehearsed is None:
        return None
    if isinstance(rehearsed, Rehearsal):
        return _rehearsal_form(rehearsed)
    if isinstance(rehearsed, Estimate):
        return {
            "is": "estimate",
            "players": rehearsed.size,
            "what": rehearsed.what,
            "low": _short(rehearsed.low),
            "high": _short(rehearsed.high),
            "source": rehearsed.source,
            "grade": rehearsed.grade,
        }
    return {"is": "not rehearsed", "players": rehearsed.size, "why": rehearsed.why}


def _rehearsal_form(rehearsal: Rehearsal) -> Form:
    return {
        "is": "rehearsal, if all goes cleanly",
        "players": rehearsal.size,
        "age": rehearsal.age,
        "surface": rehearsal.surface,
        "bout_s": rehearsal.bout_s,
        "cycle_s": _short(rehearsal.cycle_s),
        "rounds_a_minute": _short(rehearsal.rounds_a_minute),
        "contacts_a_minute": _short(rehearsal.contacts_a_minute),
        "passes_a_minute": _short(rehearsal.passes_a_minute),
        "metres_a_minute": _short(rehearsal.metres_a_minute),
        "waiting_share": _short(rehearsal.waiting_share),
        "longest_wait_s": _short(rehearsal.longest_wait_s),
        "rolling_share": _short(rehearsal.rolling_share),
        "longest_line": rehearsal.longest_line,
        "longest_line_at": rehearsal.longest_line_at,
        "pace": {
            "sentence": rehearsal.pace.sentence,
            "circuit": list(rehearsal.pace.circuit),
            "gains": [
                {"label": gain.label, "rounds_a_minute_for_a_tenth": _short(gain.rounds_a_minute)}
                for gain in rehearsal.pace.gains
            ],
        },
        "children": [
            {
                "child": child.person,
                "turns": child.turns,
                "contacts": child.contacts,
                "passes": child.passes,
                "metres": _short(child.metres),
                "waiting_share": _short(child.waiting_share),
                "longest_wait_s": _short(child.longest_wait_s),
                "roles": dict(child.roles),
            }
            for child in rehearsal.children
        ],
    }


def session_form(session: Session) -> Form:
    """A fitted evening."""
    tonight = session.tonight
    return {
        "minutes": tonight.minutes,
        "here": tonight.here,
        "age": tonight.age,
        "adults": tonight.adults,
        "keepers": tonight.keepers,
        "space": {"width_m": tonight.width_m, "depth_m": tonight.depth_m},
        "surface": tonight.surface,
        "aim": tonight.aim,
        "seed": tonight.seed,
        "blocks": [block_form(block) for block in session.blocks],
        "pauses": [_pause_form(pause) for pause in session.pauses],
        "problems": [problem_form(problem) for problem in session.problems],
        "rolling_share": _short(session.rolling_share),
        "score": {name: _short(value) for name, value in session.score},
    }


def block_form(block: Block) -> Form:
    """One block of the evening."""
    return {
        "exercise": block.exercise.name,
        "kind": block.exercise.kind,
        "job": block.job.value,
        "start": _short(block.start_min),
        "minutes": _short(block.minutes),
        "players": block.players,
        "resting": block.resting,
        "keepers": block.keepers,
        "groups": block.groups,
        "why": block.why,
        "cues": list(block.exercise.cues),
        "copies": [_copy_form(copy) for copy in block.copies],
        "kit": _kit_form(block.kit),
        "findings": [problem_form(problem) for problem in block.findings],
        "answers": [_answer_form(answer) for answer in block.answers],
    }


def _copy_form(copy: Copy) -> Form:
    rehearsed = rehearsed_form(copy.rehearsed)
    if rehearsed is not None:
        rehearsed.pop("children", None)
    return {
        "players": copy.size,
        "at": {"x_m": _short(copy.origin.x_m), "y_m": _short(copy.origin.y_m)},
        "turned": copy.turned,
        "mirrored": copy.mirrored,
        "scale": _short(copy.scale),
        "bib": copy.bib.value if copy.bib else None,
        "sides": [{"name": side.team.name, "players": side.count} for side in copy.sides],
        "rehearsed": rehearsed,
    }


def _kit_form(kit: Kit) -> Form:
    return {
        "balls": kit.balls,
        "cones": kit.cones,
        "mini_goals": kit.mini_goals,
        "goals": kit.goals,
        "bibs": {bib.value: count for bib, count in kit.bibs},
    }


def _answer_form(answer: HeadAnswer) -> Form:
    return {
        "here": answer.here,
        "exercise": answer.exercise,
        "words": answer.words,
        "players": list(answer.sizes),
        "waiting_share": _short(answer.waiting_share),
        "contacts_a_minute": _short(answer.contacts_a_minute),
        "contacts_high": _short(answer.contacts_high),
        "longest_wait_s": _short(answer.longest_wait_s),
        "rounds_a_minute": _short(answer.rounds_a_minute),
        "estimate": answer.estimated,
    }


def _pause_form(pause: Pause) -> Form:
    return {"kind": pause.kind.value, "start": _short(pause.start_min), "minutes": _short(pause.minutes)}


def _short(value: float | None) -> float | None:
    return None if value is None or not isfinite(value) else round(value, 3)
