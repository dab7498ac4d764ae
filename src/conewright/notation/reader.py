"""Reading a text into an exercise and the problems found on the way; must not know how long anything takes.

`read` never raises for any text. A sentence that is not understood costs that sentence; the rest is read.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from conewright.model.exercise import Exercise, Step
from conewright.model.problem import Problem, Span
from conewright.notation.boxes import balls, bouts, odd_one, open_play, sees_balls
from conewright.notation.cursor import Asked, Cursor, Findings
from conewright.notation.draft import Draft
from conewright.notation.forms import form
from conewright.notation.header import keyed_line
from conewright.notation.lacking import tell_impossible, tell_lacking
from conewright.notation.lexer import Keyed
from conewright.notation.names import Names, declared, names_of, side_words
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
from conewright.notation.sentences import VARIANT_KEYS, Sentence, pieces_of
from conewright.notation.starts import start
from conewright.notation.strangers import repaired, unknown
from conewright.notation.variants import Ladder, behind_variant, numbers_of_variant, variant
from conewright.notation.vocabulary import JOINERS


def read(text: str) -> tuple[Exercise | None, tuple[Problem, ...]]:
    """The exercise a text says as far as it was understood, and the problems in the order of the text.

    None only where there is no name and nothing that could be read. Reads any text without raising.
    """
    findings = Findings()
    pieces = tuple(repaired(piece, findings) for piece in pieces_of(text))
    draft = Draft()
    names = _names_in(pieces, draft, findings)
    _read_sentences(pieces, names, draft, findings)
    findings.at_declarations(draft.declared())
    tell_lacking(draft, findings)
    tell_impossible(draft, findings)
    return (None if draft.is_empty() else draft.exercise(_whole(text))), findings.all()


@dataclass(frozen=True, slots=True, kw_only=True)
class Ahead:
    """What may follow the end of a text: the phrases looked for there, the names of the whole, what was read so far."""

    asked: tuple[Asked, ...]
    open: Keyed | Sentence | None  # what the text ends in the middle of
    last: Keyed | Sentence | None  # the last thing it says, whole or not
    draft: Draft
    names: Names


def ahead_of(before: str, whole: str) -> Ahead:
    """What reading would take at the end of `before`, which is the beginning of `whole`. Never raises."""
    draft = Draft()
    names = _names_in(pieces_of(whole), draft, Findings())
    pieces = pieces_of(before)
    last = pieces[-1] if pieces and not _is_over(pieces[-1], before) else None
    findings = Findings(ends_with=last.tokens[-1] if isinstance(last, Sentence) else None)
    changes_steps = isinstance(last, Sentence) and last.key == "variant"
    _read_sentences(pieces if changes_steps else _without_acts(pieces, last, draft), names, draft, findings)
    if isinstance(last, Sentence) and last.key == "declaration":
        _with_cursor(last, names, findings, lambda cursor: declaration(cursor, Draft()))
    return Ahead(asked=tuple(findings.asked), open=last, last=pieces[-1] if pieces else None, draft=draft, names=names)


def _without_acts(
    pieces: tuple[Keyed | Sentence, ...], last: Keyed | Sentence | None, draft: Draft
) -> tuple[Keyed | Sentence, ...]:
    """The pieces without the steps before the last piece, whose numbers go into the draft: saves most of the time."""
    kept = []
    for piece in pieces:
        in_step = isinstance(piece, Sentence) and piece.key == "" and (piece.number is not None or not piece.leads)
        if piece is last or not isinstance(piece, Sentence) or not in_step:
            kept.append(piece)
        elif piece.number is not None:
            draft.steps.append(Step(number=piece.number))
    return tuple(kept)


def _is_over(last: Keyed | Sentence, before: str) -> bool:
    """True where nothing can be added to the last piece of a text."""
    new_line = not before.rsplit("\n", 1)[-1].strip()
    if isinstance(last, Keyed):
        return new_line
    return last.stopped or (new_line and last.tokens[-1].lower not in JOINERS)


def _names_in(pieces: tuple[Keyed | Sentence, ...], draft: Draft, findings: Findings) -> Names:
    """Read the declarations into the draft, and give all names with what they stand for."""
    known = declared(pieces)
    _read_declarations(pieces, names_of(known), draft, findings)
    names = names_of(known, draft.places, draft.things)
    return names_of(known, draft.places, draft.things, side_words(pieces, names))


def _read_sentences(pieces: tuple[Keyed | Sentence, ...], names: Names, draft: Draft, findings: Findings) -> None:
    """Read everything but the declarations."""
    for piece in pieces:
        if isinstance(piece, Keyed):
            keyed_line(piece, draft, findings)
        elif piece.key not in ("declaration", *VARIANT_KEYS):
            _sentence(piece, names, draft, findings)
    _read_variants(pieces, names, draft, findings)


def _read_declarations(pieces: tuple[Keyed | Sentence, ...], names: Names, draft: Draft, findings: Findings) -> None:
    for piece in pieces:
        if isinstance(piece, Sentence) and piece.key == "declaration":
            _with_cursor(piece, names, findings, lambda cursor: declaration(cursor, draft))


def _read_variants(pieces: tuple[Keyed | Sentence, ...], names: Names, draft: Draft, findings: Findings) -> None:
    """Steps up and down say what changes, so all the rest is read before them."""
    found = tuple(piece for piece in pieces if isinstance(piece, Sentence) and piece.key in VARIANT_KEYS)
    ladder = Ladder(exercise=draft.exercise(), names=names) if found else None
    for piece in found:
        if piece.key == "variant" and ladder:
            _with_cursor(piece, names, findings, lambda cursor: variant(cursor, draft, ladder), declares=False)
        elif piece.key == "variant numbers":
            _with_cursor(piece, names, findings, lambda cursor: numbers_of_variant(cursor, draft), declares=False)
        else:
            _with_cursor(piece, names, findings, behind_variant, declares=False)


def _with_cursor(
    piece: Sentence, names: Names, findings: Findings, reads: Callable[[Cursor], None], *, declares: bool = True
) -> None:
    """Read one sentence; where it failed and may declare, names may be lost with it; else its full stop may lack."""
    cursor = Cursor(piece.tokens, names, findings, slips=piece.slips)
    reads(cursor)
    if cursor.failed and declares:
        findings.lose(piece.tokens)
    last = piece.tokens[-1]
    if not piece.stopped and last.lower != ":" and cursor.slips == 0 and not cursor.failed:
        span = Span(line=last.line, column=last.end, end_line=last.line, end_column=last.end + 1)
        mark = "colon" if piece.key == "round" else "full stop"
        findings.add(
            "no-colon" if piece.key == "round" else "no-full-stop",
            span,
            f'A {mark} is missing after "{last.text}".',
            f"End the sentence with a {mark}.",
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
        _with_cursor(piece, names, findings, lambda cursor: unknown(cursor, draft))


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
    found = form(cursor, draft.play)
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


def _whole(text: str) -> Span:
    rows = text.split("\n")
    return Span(line=1, column=1, end_line=len(rows), end_column=len(rows[-1]) + 1)
