"""The `key: value` lines of an exercise: its name, kind, numbers, aims, cues; must not know its sentences."""

from collections.abc import Callable, Mapping
from dataclasses import replace

from conewright.model.exercise import KINDS, Ages, Fault, Numbers, Space
from conewright.model.problem import Span
from conewright.notation.amounts import one_line
from conewright.notation.cursor import Cursor, Findings
from conewright.notation.draft import Draft
from conewright.notation.guesses import closest
from conewright.notation.lexer import KEYS, Keyed, tokens_of
from conewright.notation.measures import size_m
from conewright.notation.names import Names
from conewright.notation.shapes import FREE_LINES, HEADERS
from conewright.notation.words import JOB_SYNONYMS, JOBS

YOUNGEST, OLDEST = 4, 21  # "under 4" and "under 21": ages beyond them are a slip in a text about youth football
MOST_PLAYERS = 60
_ONCE = ("exercise", "kind", "for", "space", "score", "swap", "restart")


def keyed_line(line: Keyed, draft: Draft, findings: Findings) -> None:
    """Read a `key: value` line into the draft; a key that is a slip of another is told and read as that."""
    key = line.key
    if key not in KEYS:
        key = closest(key, KEYS)
        hint = f'Did you mean "{key}:"?' if key else f'Known are {", ".join(HEADERS)}. Notes begin with "note:".'
        findings.add("unknown-line", line.key_span, f'There is no line "{line.key}:".', hint)
        if not key:
            return
    if not line.value:
        findings.add(
            "empty-line", line.span, f'Nothing stands behind "{key}:".', f"Write it like this: {_example(key)}"
        )
        draft.seen.add(key)
        return
    if key in _ONCE and key in draft.seen:
        findings.add("said-twice", line.key_span, f'"{key}" is said twice.', "Leave one of the two lines out.")
        return
    draft.seen.add(key)
    _READERS[key](line, draft, findings)


def _example(key: str) -> str:
    return (HEADERS | FREE_LINES)[key]


def _name(line: Keyed, draft: Draft, findings: Findings) -> None:
    draft.name = one_line(line.value)


def _kind(line: Keyed, draft: Draft, findings: Findings) -> None:
    value = " ".join(line.value.lower().split()).removesuffix(".")
    if value not in KINDS:
        near = closest(value, KINDS)
        hint = f'Did you mean "{near}"?' if near else f"Known are {', '.join(KINDS)}."
        findings.add("unknown-kind", line.value_span, f'There is no kind "{line.value}".', hint)
        value = near
    draft.kind = value


def _aims(line: Keyed, draft: Draft, findings: Findings) -> None:
    draft.aims += _listed(one_line(line.value))


def _good_for(line: Keyed, draft: Draft, findings: Findings) -> None:
    for word in _listed(line.value.removesuffix(".")):
        lower = " ".join(word.lower().split())
        job = JOB_SYNONYMS.get(lower, lower)
        if job not in JOBS:
            near = closest(job, JOBS)
            hint = f'Did you mean "{near}"?' if near else f"Known are {', '.join(JOBS)}."
            findings.add("unknown-part", _part_span(line, word), f'There is no part of an evening "{word}".', hint)
            job = near
        if job and job not in draft.good_for:
            draft.good_for.append(job)


def _part_span(line: Keyed, part: str) -> Span:
    column = line.value_column + max(line.value.find(part), 0)
    return replace(line.value_span, column=column, end_column=column + len(part))


def _listed(value: str) -> list[str]:
    return [part.strip() for part in value.split(",") if part.strip()]


def _space(line: Keyed, draft: Draft, findings: Findings) -> None:
    cursor = _cursor(line, findings, _example("space"))
    width, depth = size_m(cursor, "the space")
    if not cursor.failed:
        cursor.finish()
        draft.space = Space(width_m=width, depth_m=depth)


def _for(line: Keyed, draft: Draft, findings: Findings) -> None:
    """`5 to 9 players, under 9 to under 13; best with 6`."""
    cursor = _cursor(line, findings, _example("for"))
    least, most = number_range(cursor)
    cursor.takes("players", "player", "children", "child")
    ages = None
    best = None
    while cursor.takes(",", ";") or cursor.sees("under") or cursor.sees("best"):
        if cursor.sees("under"):
            ages = _ages(cursor)
        else:
            best = best_of(cursor, (least, most))
    cursor.finish()
    draft.numbers = Numbers(least=least, most=most, best=best)
    draft.numbers_sure = not cursor.failed and cursor.slips == 0
    draft.ages = ages or draft.ages


def best_of(cursor: Cursor, held: tuple[int, int]) -> int | None:
    """Take `best with 6`; a number outside those it is for is told and left out."""
    cursor.must("best")
    cursor.must("with")
    start = cursor.at
    best = cursor.count("players", most=MOST_PLAYERS)
    if held[0] <= best <= held[1]:
        return best
    cursor.note(
        "best-outside", start, f"Best with {best} lies outside {held[0]} to {held[1]}.", "Write a number between them."
    )
    return None


def number_range(cursor: Cursor) -> tuple[int, int]:
    """Take `6` or `5 to 9`; the two the wrong way round are told and turned."""
    start = cursor.at
    least = cursor.count("players", most=MOST_PLAYERS)
    if not cursor.takes("to", "-", "\u2013"):
        return least, least
    most = cursor.count("players", most=MOST_PLAYERS)
    if most < least and cursor.slips == 0:
        cursor.note(
            "numbers-upside-down", start, f"{least} to {most} players is upside down.", f"Write {most} to {least}."
        )
    return min(least, most), max(least, most)


def _ages(cursor: Cursor) -> Ages:
    start = cursor.at
    cursor.at += 1
    youngest = cursor.count("years", least=YOUNGEST, most=OLDEST)
    oldest = youngest
    if cursor.takes("and up", "and over"):
        oldest = max(youngest, Ages(youngest=6, oldest=19).oldest)
    elif cursor.takes("to"):
        cursor.takes("under")
        oldest = cursor.count("years", least=YOUNGEST, most=OLDEST)
        if oldest < youngest and cursor.slips == 0:
            cursor.note(
                "ages-upside-down",
                start,
                f"Under {youngest} to under {oldest} is upside down.",
                f"Write under {oldest} to under {youngest}.",
            )
    return Ages(youngest=min(youngest, oldest), oldest=max(youngest, oldest))


def _cursor(line: Keyed, findings: Findings, example: str) -> Cursor:
    tokens = tokens_of(line.value, line.line, line.value_column - 1)
    if len(tokens) > 1 and tokens[-1].lower == ".":
        tokens = tokens[:-1]
    return Cursor(tokens=tokens, names=Names(), findings=findings, example=example)


def _cue(line: Keyed, draft: Draft, findings: Findings) -> None:
    draft.cues.append(one_line(line.value))


def _fault(line: Keyed, draft: Draft, findings: Findings) -> None:
    fault, _, remedy = one_line(line.value.replace("\u2192", "->")).partition("->")
    draft.faults.append(Fault(fault=fault.strip(), remedy=remedy.strip()))


def _score(line: Keyed, draft: Draft, findings: Findings) -> None:
    draft.score = one_line(line.value)


def _caution(line: Keyed, draft: Draft, findings: Findings) -> None:
    draft.cautions.append(one_line(line.value))


def _note(line: Keyed, draft: Draft, findings: Findings) -> None:
    draft.notes.append(one_line(line.value))


def _swap(line: Keyed, draft: Draft, findings: Findings) -> None:
    if _has_play(line, draft, findings) and draft.play:
        draft.play = replace(draft.play, swap=_unstopped(line.value))


def _restart(line: Keyed, draft: Draft, findings: Findings) -> None:
    if _has_play(line, draft, findings) and draft.play:
        draft.play = replace(draft.play, restart=_unstopped(line.value))


def _unstopped(value: str) -> str:
    return one_line(value).removesuffix(".").strip()


def _rule(line: Keyed, draft: Draft, findings: Findings) -> None:
    if _has_play(line, draft, findings):
        draft.rules.append(_unstopped(line.value))


def _has_play(line: Keyed, draft: Draft, findings: Findings) -> bool:
    if draft.play is None and "play" not in draft.seen and "open play" not in findings.lost:
        findings.lost.add("open play")
        findings.add(
            "no-open-play",
            line.key_span,
            f'"{line.key}" belongs to open play, and none stands before it.',
            'Write "Open play in 20 by 20 m: Yellow against Blue." before it, or make it a note.',
        )
    return draft.play is not None


_READERS: Mapping[str, Callable[[Keyed, Draft, Findings], None]] = {
    "exercise": _name,
    "kind": _kind,
    "for": _for,
    "aim": _aims,
    "good for": _good_for,
    "space": _space,
    "cue": _cue,
    "fault": _fault,
    "score": _score,
    "caution": _caution,
    "note": _note,
    "swap": _swap,
    "restart": _restart,
    "rule": _rule,
}
