"""Sentences that open like none of the known forms: what was meant, or what to write; must not know the known forms."""

from dataclasses import replace

from conewright.model.problem import Span
from conewright.notation.amounts import capital
from conewright.notation.cursor import Cursor, Findings
from conewright.notation.draft import Draft
from conewright.notation.guesses import closest
from conewright.notation.lexer import NUMBER, WORD, Keyed, Token
from conewright.notation.names import Names, name_of
from conewright.notation.rounds import step_sentence
from conewright.notation.sentences import Sentence, meant_opener
from conewright.notation.shapes import EXAMPLES, HEADERS, SENTENCES
from conewright.notation.vocabulary import NEVER_NAMES

_PLACE_WORDS = frozenset("line lines holds hold cone cones gate goal wall adult keeper".split())


def repaired(piece: Keyed | Sentence, findings: Findings) -> Keyed | Sentence:
    """A sentence whose opening is a slip, with the right opening; and a step whose number lacks its stop. Both told."""
    if isinstance(piece, Keyed) or piece.key or piece.number is not None or not piece.leads:
        return piece
    numbered = _without_stop(piece, findings)
    if numbered is not None:
        return numbered
    placed = _without_at(piece, findings)
    if placed is not None:
        return placed
    first = piece.tokens[0]
    meant = meant_opener(piece.tokens)
    if meant is None:
        return piece
    length = len(meant.opener) - (1 if meant.lacks else 0)
    Cursor(piece.tokens, Names(), findings).slip(capital(" ".join(meant.opener)), "sentence that begins", length)
    mended = tuple(first._replace(text=word, lower=word) for word in meant.opener)
    return replace(piece, tokens=(*mended, *piece.tokens[length:]), key=meant.key, slips=1)


def _without_stop(piece: Sentence, findings: Findings) -> Sentence | None:
    """The step that begins with `2 Base` or `2) Base`; None for every other sentence."""
    first, *rest = piece.tokens
    rest = rest[1:] if rest and rest[0].lower in (")", ":") else rest
    if first.kind != NUMBER or not first.text.isdigit() or len(first.text) > 3:
        return None
    if not rest or not rest[0].text[0].isupper():
        return None
    told = f"A full stop is missing after the number {first.text}."
    findings.add("no-step-stop", first.span, told, f'Write "{first.text}. {rest[0].text} ...".')
    return replace(piece, tokens=tuple(rest), number=int(first.text), slips=1)


def _without_at(piece: Sentence, findings: Findings) -> Sentence | None:
    """The declaration that begins with `Base 0, 0 is`; None for every other sentence."""
    tokens = piece.tokens
    at = next((at for at in range(1, len(tokens) - 2) if tokens[at + 1].lower == ","), 0)
    is_point = at > 0 and tokens[at].kind == NUMBER and tokens[at + 2].kind == NUMBER
    if not is_point or not all(token.text[0].isupper() for token in tokens[:at] if token.kind == WORD):
        return None
    before = tokens[at - 1]
    told = f'"at" is missing after "{before.text}".'
    hint = f'Write "{name_of(tokens[:at])} at {tokens[at].text}, {tokens[at + 2].text} ...".'
    findings.add("unclear-sentence", before.span, told, hint)
    put_in = before._replace(kind=WORD, text="at", lower="at")
    return replace(piece, tokens=(*tokens[:at], put_in, *tokens[at:]), key="declaration", slips=1)


def unknown(cursor: Cursor, draft: Draft) -> None:
    """Tell a sentence of no known form; one that reads like an act lacks its number and is read as a step."""
    first, last = cursor.tokens[0], cursor.tokens[-1]
    where = Span(line=first.line, column=first.column, end_line=last.line, end_column=last.end)
    length = cursor.sees_name()
    if length and (draft.round_opened or cursor.peek(length).lower in NEVER_NAMES):
        _tell_no_number(cursor, draft, where)
        return
    if _is_above(first.line, draft):
        cursor.findings.header_lost = True
    beginning = " ".join(token.text for token in cursor.tokens[:4])
    cursor.fail(
        "unknown-sentence", f'The sentence that begins "{beginning}" is not understood.', _hint(cursor.tokens), where
    )


def _tell_no_number(cursor: Cursor, draft: Draft, where: Span) -> None:
    number = draft.steps[-1].number + 1 if draft.steps else 1
    numbered = f'"{number}. {cursor.tokens[0].text} ..."'
    hint = f"Begin it with its number: {numbered}, or write it behind the step it belongs to."
    hint = hint if draft.round_opened else f'Write "Each round:" and below it {numbered}.'
    draft.round_opened = True
    cursor.findings.add("no-step-number", where, "This sentence belongs to no step.", hint)
    cursor.slips += 1
    step_sentence(cursor, draft, number)


def _hint(tokens: tuple[Token, ...]) -> str:
    first = tokens[0].lower
    form = next((form for form in SENTENCES if form.key != "variant numbers" and closest(first, form.opens)), None)
    if any(token.lower == "but" for token in tokens[:8]):
        return f"Write it like this: {EXAMPLES['variant']}"
    example = form.example if form else HEADERS.get(closest(first, HEADERS), "")
    example = example or next((line for key, line in HEADERS.items() if key.split()[0] == first), "")
    if tokens[0].kind == NUMBER and any(token.lower == ":" for token in tokens[:5]):
        example = EXAMPLES["form or balls"]
    if not example and any(token.lower in ("players", "children", "under") for token in tokens):
        example = HEADERS["for"]
    if not example and any(token.kind == NUMBER or token.lower in _PLACE_WORDS for token in tokens):
        example = EXAMPLES["place"]
    if not example:
        return 'Begin it with a known form, or make it a note: "note: ...".'
    return f"Write it like this: {example}"


def _is_above(line: int, draft: Draft) -> bool:
    """True for a line above everything that is no header."""
    if draft.round_opened or draft.play is not None:
        return False
    spans = (*(place.span for place in draft.places), *(thing.span for thing in draft.things))
    return all(line < span.line for span in spans if span)
