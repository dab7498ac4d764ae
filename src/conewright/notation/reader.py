"""Reading a text into an exercise and the problems found on the way; must not know how long anything takes.

`read` never raises for any text. A sentence that is not understood costs that sentence; the rest is read.
"""

from collections.abc import Callable, Mapping

from conewright.model.exercise import Exercise, Holds, Trigger
from conewright.model.problem import Problem, Span
from conewright.notation.boxes import balls, bouts, odd_one, open_play, sees_balls
from conewright.notation.cursor import Cursor, Findings
from conewright.notation.draft import ANY_NUMBERS, Draft
from conewright.notation.forms import form
from conewright.notation.guesses import closest
from conewright.notation.header import keyed_line
from conewright.notation.lexer import Keyed
from conewright.notation.names import Names, declared, names_of, sides_word
from conewright.notation.places import declaration
from conewright.notation.rounds import (
    empty_step,
    in_flight,
    mirrored,
    next_round,
    opening,
    outcome_sentence,
    rotation_sentence,
    step_sentence,
)
from conewright.notation.sentences import Sentence, pieces_of
from conewright.notation.starts import start
from conewright.notation.words import HEADERS, SENTENCES, VOCABULARY


def read(text: str) -> tuple[Exercise | None, tuple[Problem, ...]]:
    """The exercise a text says as far as it was understood, and the problems in the order of the text.

    None only where there is no name and nothing that could be read. Reads any text without raising.
    """
    pieces = pieces_of(text)
    findings = Findings()
    draft = Draft()
    known = declared(pieces)
    _read_declarations(pieces, names_of(known), draft, findings)
    names = names_of(known, draft.places, draft.things, sides_word(pieces))
    for piece in pieces:
        if isinstance(piece, Keyed):
            keyed_line(piece, draft, findings)
        elif piece.key != "declaration":
            _sentence(piece, names, draft, findings)
    _tell_lacking(draft, findings)
    _tell_impossible(draft, findings)
    problems = tuple(sorted(findings.problems, key=_position))
    return (None if draft.is_empty() else draft.exercise(_whole(text))), problems


def _read_declarations(pieces: tuple[Keyed | Sentence, ...], names: Names, draft: Draft, findings: Findings) -> None:
    for piece in pieces:
        if isinstance(piece, Sentence) and piece.key == "declaration":
            _with_cursor(piece, names, findings, lambda cursor: declaration(cursor, draft))


def _with_cursor(piece: Sentence, names: Names, findings: Findings, reads: Callable[[Cursor], None]) -> None:
    """Read one sentence; where it failed its words may be names, and where nothing else is wrong its stop may lack."""
    before = len(findings.problems)
    cursor = Cursor(piece.tokens, names, findings, vocabulary=VOCABULARY)
    reads(cursor)
    if cursor.failed:
        findings.lost |= {token.lower for token in piece.tokens if token.text[:1].isupper()}
        findings.lost |= {"contest"} if "contest" in {token.lower for token in piece.tokens} else set()
    if not piece.stopped and len(findings.problems) == before:
        last = piece.tokens[-1]
        span = Span(line=last.line, column=last.end, end_line=last.line, end_column=last.end + 1)
        findings.add(
            "no-full-stop", span, f'A full stop is missing after "{last.text}".', "End the sentence with a full stop."
        )


def _sentence(piece: Sentence, names: Names, draft: Draft, findings: Findings) -> None:
    reader = _READERS.get(piece.key)
    number = piece.number
    if piece.key == "empty step" and number is not None:
        _with_cursor(piece, names, findings, lambda cursor: empty_step(cursor, draft, number))
    elif reader is not None:
        _with_cursor(piece, names, findings, lambda cursor: reader(cursor, draft))
    elif number is not None or (draft.steps and not piece.leads):
        _with_cursor(piece, names, findings, lambda cursor: step_sentence(cursor, draft, number))
    else:
        _with_cursor(piece, names, findings, lambda cursor: _unknown(cursor, draft))


def _unknown(cursor: Cursor, draft: Draft) -> None:
    """Tell a sentence of no known form; one that reads like an act lacks its number."""
    first = cursor.peek()
    where = Span(
        line=first.line,
        column=first.column,
        end_line=cursor.tokens[-1].line,
        end_column=cursor.tokens[-1].end,
    )
    if cursor.sees_name() and draft.round_opened:
        number = draft.steps[-1].number + 1 if draft.steps else 1
        hint = f'Begin it with its number: "{number}. {first.text} ...", or write it behind the step it belongs to.'
        cursor.fail("no-step-number", "This sentence belongs to no step.", hint, where)
        return
    openers = [opener for form in SENTENCES for opener in form.opens]
    two = " ".join(token.lower for token in cursor.tokens[:2])
    near = closest(two, openers) or closest(first.lower, [opener for opener in openers if " " not in opener])
    near = near or closest(first.lower, HEADERS)
    example = next((form.example for form in SENTENCES if near and near in form.opens), HEADERS.get(near, ""))
    hint = (
        f"Write it like this: {example}" if example else 'Begin it with a known form, or make it a note: "note: ...".'
    )
    cursor.fail("unknown-sentence", f'The sentence that begins "{_beginning(cursor)}" is not understood.', hint, where)


def _beginning(cursor: Cursor) -> str:
    return " ".join(token.text for token in cursor.tokens[:4])


def _start(cursor: Cursor, draft: Draft) -> None:
    cursor.at += 2
    if "start" in draft.seen:
        cursor.fail("said-twice", "The start is said twice.", "Leave one of the two out.")
    draft.seen.add("start")
    draft.start = start(cursor)


def _form_or_balls(cursor: Cursor, draft: Draft) -> None:
    if sees_balls(cursor):
        balls(cursor, draft)
        return
    found = form(cursor)
    if found is not None:
        draft.forms.append(found)


_READERS: Mapping[str, Callable[[Cursor, Draft], None]] = {
    "start": _start,
    "round": opening,
    "mirrored": mirrored,
    "next": next_round,
    "in flight": in_flight,
    "outcome": outcome_sentence,
    "rotation": rotation_sentence,
    "every": rotation_sentence,
    "play": open_play,
    "odd one": odd_one,
    "bouts": bouts,
    "form or balls": _form_or_balls,
}


def _tell_lacking(draft: Draft, findings: Findings) -> None:
    """Tell the lines no exercise can do without, at the first line."""
    where = Span(line=1, column=1, end_line=1, end_column=2)
    lacking = (
        ("exercise", "no-name", "The exercise has no name."),
        ("kind", "no-kind", "The exercise does not say of which kind it is."),
        ("for", "no-numbers", "The exercise does not say for how many players it is."),
    )
    for key, code, message in lacking:
        if key not in draft.seen:
            findings.add(code, where, message, f"Write a line like this: {HEADERS[key]}")
    if not draft.steps and draft.play is None and not findings.problems:
        findings.add(
            "nothing-happens",
            where,
            "Nothing happens in this exercise.",
            'Write steps behind "Each round:", or "Open play in 20 by 20 m: ...".',
        )


def _tell_impossible(draft: Draft, findings: Findings) -> None:
    """Tell counts that cannot stand and steps that are not there."""
    most = (draft.numbers or ANY_NUMBERS).most
    begins = draft.start
    if begins is not None:
        one = {place.name for place in draft.places if place.holds is Holds.ONE}
        crowded = next((name for name, count in begins.counts if count > 1 and name in one), None)
        if crowded:
            findings.add(
                "impossible-count", begins.span, f"{crowded} holds one, and more start there.", "Make it a line."
            )
        elif sum(count for _, count in begins.counts) > most:
            findings.add(
                "impossible-count",
                begins.span,
                f"More start than the {most} the exercise is for.",
                'Mend the counts, or the line "for ...".',
            )
    numbers = {step.number for step in draft.steps}
    for trigger in _triggers(draft):
        if trigger.step is not None and trigger.step not in numbers:
            findings.add(
                "no-such-step", trigger.span, f"There is no step {trigger.step}.", "Name a step by its number."
            )


def _triggers(draft: Draft) -> tuple[Trigger, ...]:
    of_acts = tuple(act.start for act in draft.acts() if act.start is not None)
    return of_acts if draft.next_trigger is None else (*of_acts, draft.next_trigger)


def _position(problem: Problem) -> tuple[int, int]:
    return (problem.where.line, problem.where.column) if problem.where else (0, 0)


def _whole(text: str) -> Span:
    rows = text.split("\n")
    return Span(line=1, column=1, end_line=len(rows), end_column=len(rows[-1]) + 1)
