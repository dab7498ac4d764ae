"""Reading a text into an exercise and the problems found on the way; must not know how long anything takes.

`read` never raises for any text. A sentence that is not understood costs that sentence; the rest is read.
"""

from collections.abc import Callable, Mapping
from dataclasses import replace

from conewright.model.exercise import Exercise, Holds, Trigger
from conewright.model.problem import Problem, Span
from conewright.notation.amounts import capital
from conewright.notation.boxes import balls, bouts, odd_one, open_play, sees_balls
from conewright.notation.cursor import Cursor, Findings
from conewright.notation.draft import ANY_NUMBERS, Draft
from conewright.notation.forms import form
from conewright.notation.guesses import closest
from conewright.notation.header import keyed_line
from conewright.notation.lexer import NUMBER, Keyed
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
from conewright.notation.sentences import Sentence, meant_opener, pieces_of
from conewright.notation.starts import start
from conewright.notation.words import HEADERS, NEVER_NAMES, SENTENCES

_PLACE_EXAMPLE = next(form.example for form in SENTENCES if form.key == "place")


def read(text: str) -> tuple[Exercise | None, tuple[Problem, ...]]:
    """The exercise a text says as far as it was understood, and the problems in the order of the text.

    None only where there is no name and nothing that could be read. Reads any text without raising.
    """
    findings = Findings()
    pieces = tuple(_repaired(piece, findings) for piece in pieces_of(text))
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
    return (None if draft.is_empty() else draft.exercise(_whole(text))), findings.all()


def _repaired(piece: Keyed | Sentence, findings: Findings) -> Keyed | Sentence:
    """A sentence whose opening is a slip, with the right opening; and a step whose number lacks its stop. Both told."""
    if isinstance(piece, Keyed) or piece.key or piece.number is not None or not piece.leads:
        return piece
    first = piece.tokens[0]
    if first.text.isdigit() and len(first.text) <= 3 and len(piece.tokens) > 1 and piece.tokens[1].text[:1].isupper():
        hint = f'Write "{first.text}. {piece.tokens[1].text} ...".'
        findings.add("no-step-stop", first.span, f"A full stop is missing after the number {first.text}.", hint)
        return replace(piece, tokens=piece.tokens[1:], number=int(first.text), slips=1)
    meant = meant_opener(piece.tokens)
    if meant is None:
        return piece
    length = len(meant.opener) - (1 if meant.lacks else 0)
    Cursor(piece.tokens, Names(), findings).slip(capital(" ".join(meant.opener)), "sentence that begins", length)
    mended = tuple(first._replace(text=word, lower=word) for word in meant.opener)
    return replace(piece, tokens=(*mended, *piece.tokens[length:]), key=meant.key, slips=1)


def _read_declarations(pieces: tuple[Keyed | Sentence, ...], names: Names, draft: Draft, findings: Findings) -> None:
    for piece in pieces:
        if isinstance(piece, Sentence) and piece.key == "declaration":
            _with_cursor(piece, names, findings, lambda cursor: declaration(cursor, draft))


def _with_cursor(
    piece: Sentence, names: Names, findings: Findings, reads: Callable[[Cursor], None], *, declares: bool = True
) -> None:
    """Read one sentence; where it failed and may declare, names may be lost with it; else its full stop may lack."""
    cursor = Cursor(piece.tokens, names, findings, slips=piece.slips)
    reads(cursor)
    if cursor.failed and declares:
        findings.lost |= {token.lower for token in piece.tokens}
        findings.lost |= {"open play"} if findings.lost & {"open", "play"} else set()
    last = piece.tokens[-1]
    if not piece.stopped and last.lower != ":" and cursor.slips == 0 and not cursor.failed:
        span = Span(line=last.line, column=last.end, end_line=last.line, end_column=last.end + 1)
        findings.add(
            "no-full-stop", span, f'A full stop is missing after "{last.text}".', "End the sentence with a full stop."
        )


def _sentence(piece: Sentence, names: Names, draft: Draft, findings: Findings) -> None:
    reader = _READERS.get(piece.key)
    number = piece.number
    if piece.key == "empty step" and number is not None:
        _with_cursor(piece, names, findings, lambda cursor: empty_step(cursor, draft, number), declares=False)
    elif reader is not None:
        declares = piece.key in ("round", "play")
        _with_cursor(piece, names, findings, lambda cursor: reader(cursor, draft), declares=declares)
    elif number is not None or (draft.steps and not piece.leads):
        _with_cursor(piece, names, findings, lambda cursor: step_sentence(cursor, draft, number), declares=False)
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
    if cursor.sees_name() and (draft.round_opened or cursor.peek(cursor.sees_name()).lower in NEVER_NAMES):
        number = draft.steps[-1].number + 1 if draft.steps else 1
        hint = f'Begin it with its number: "{number}. {first.text} ...", or write it behind the step it belongs to.'
        hint = hint if draft.round_opened else f'Write "Each round:" and below it "{number}. {first.text} ...".'
        draft.round_opened = True
        cursor.findings.add("no-step-number", where, "This sentence belongs to no step.", hint)
        cursor.slips += 1
        step_sentence(cursor, draft, number)
        return
    openers = [opener for form in SENTENCES for opener in form.opens if " " not in opener]
    near = closest(first.lower, openers)
    near = near or closest(first.lower, HEADERS) or ("for" if _tells_numbers(cursor) else "")
    example = next((form.example for form in SENTENCES if near and near in form.opens), HEADERS.get(near, ""))
    example = example or (_PLACE_EXAMPLE if any(token.kind == NUMBER for token in cursor.tokens[:6]) else "")
    hint = (
        f"Write it like this: {example}" if example else 'Begin it with a known form, or make it a note: "note: ...".'
    )
    if first.lower in ("harder", "easier"):
        hint = 'Variants are not read: make it a note: "note: harder: ...".'
    if _is_above(first.line, draft):
        cursor.findings.header_lost = True
    cursor.fail("unknown-sentence", f'The sentence that begins "{_beginning(cursor)}" is not understood.', hint, where)


def _tells_numbers(cursor: Cursor) -> bool:
    return any(token.lower in ("players", "children", "under") for token in cursor.tokens)


def _is_above(line: int, draft: Draft) -> bool:
    """True for a line above everything that is no header."""
    if draft.round_opened or draft.play is not None:
        return False
    spans = (*(place.span for place in draft.places), *(thing.span for thing in draft.things))
    return all(line < span.line for span in spans if span)


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
        if key not in draft.seen and not findings.header_lost:
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
        if trigger.step is not None and trigger.step > max(numbers, default=0):
            findings.add(
                "no-such-step", trigger.span, f"There is no step {trigger.step}.", "Name a step by its number."
            )


def _triggers(draft: Draft) -> tuple[Trigger, ...]:
    of_acts = tuple(act.start for act in draft.acts() if act.start is not None)
    return of_acts if draft.next_trigger is None else (*of_acts, draft.next_trigger)


def _whole(text: str) -> Span:
    rows = text.split("\n")
    return Span(line=1, column=1, end_line=len(rows), end_column=len(rows[-1]) + 1)
