"""Steps up and down: "harder "first time": as before, but ..."; must not know the forms of their changes."""

from dataclasses import dataclass, field, replace
from functools import reduce

from conewright.model.exercise import Exercise, Numbers
from conewright.model.stepped import apply
from conewright.model.variant import Patch, Variant, VariantKind
from conewright.notation.cursor import Cursor, indexed
from conewright.notation.draft import Draft
from conewright.notation.header import best_of, number_range
from conewright.notation.lexer import Token
from conewright.notation.names import Names, name_of, names_of
from conewright.notation.patched import patched
from conewright.notation.patches import change, change_key, parts_of
from conewright.notation.shapes import EXAMPLES
from conewright.notation.words import BASES, VARIANT_SYNONYMS, VARIANTS

_PHRASES = {phrase: kind for kind, phrase in VARIANTS.items()} | VARIANT_SYNONYMS
_KINDS = indexed({phrase: kind.name for phrase, kind in _PHRASES.items()})
_BASES = indexed(BASES.keys())


@dataclass(slots=True, kw_only=True)
class Ladder:
    """The steps that were read so far: the exercise, and what the last step of each kind makes of it."""

    exercise: Exercise
    names: Names
    rungs: dict[VariantKind, Exercise] = field(default_factory=dict)


def variant(cursor: Cursor, draft: Draft, ladder: Ladder) -> None:
    """Read a step up or down into the draft."""
    cursor.example = EXAMPLES["variant"]
    kind = cursor.one_of(_KINDS)
    if not kind:
        cursor.unexpected('"harder", "easier" or another kind of step')
    name = _name(cursor, draft)
    cursor.must(":")
    base = cursor.guessed(_BASES, "beginning")
    if not base:
        cursor.unexpected('"as before, but" or "as written, but"')
    cursor.takes(",")
    cursor.must("but")
    if not cursor.failed and cursor.done():
        hint = f"Write a change, or leave the step out: {EXAMPLES['variant']}"
        cursor.fail("no-change", 'Nothing stands behind "but".', hint)
    if cursor.failed:
        cursor.findings.lost.add("variant")
        return
    as_before = BASES[base]
    below = ladder.rungs.get(VariantKind[kind], ladder.exercise) if as_before else ladder.exercise
    patches, numbers = _changes(cursor, below, ladder)
    cursor.findings.lost.discard("variant")
    ladder.rungs[VariantKind[kind]] = reduce(apply, patches, below)
    draft.variants.append(
        Variant(
            kind=VariantKind[kind],
            name=name,
            patches=patches,
            as_before=as_before,
            numbers=numbers,
            span=cursor.span_from(0),
        )
    )


def _name(cursor: Cursor, draft: Draft) -> str:
    start = cursor.at
    name = " ".join(cursor.quoted("the name of the step").split())
    if any(other.name == name for other in draft.variants):
        cursor.note("name-twice", start, f'There are two steps called "{name}".', "Give one of them another name.")
    return name


def _changes(cursor: Cursor, base: Exercise, ladder: Ladder) -> tuple[tuple[Patch, ...], Numbers | None]:
    """Read every change behind "but"; each is read by itself, so that one that fails costs none of the others."""
    tokens = cursor.tokens[cursor.at :]
    below = base
    news = _new_names(tokens)
    parts = parts_of(tokens)
    patches: tuple[Patch, ...] = ()
    numbers = None
    failed = False
    for part in parts:
        own = Cursor(part, _known(ladder, below, news), cursor.findings)
        if change_key(part) == "for":
            numbers = _numbers(own)
        elif change_key(part) or not failed:  # what follows one that was not understood may belong to it
            known, patches = len(patches), change(own, patches, below)
            if len(patches) == known:  # it went into the change before it
                below = reduce(apply, patches, base)
            for patch in patches[known:]:
                below = patched(own, below, patch)
        failed = own.failed
        if failed:
            cursor.findings.lose(part)
        cursor.slips += own.slips + own.failed
    cursor.at = len(cursor.tokens)
    return patches, numbers


def _known(ladder: Ladder, below: Exercise, news: tuple[str, ...]) -> Names:
    """The names of the text and those that are new in this step or below it, with what stands where by now."""
    added = (*(place.name for place in below.places), *news)
    return names_of((*ladder.names.all, *added), below.places, below.things, ladder.names.stands_for)


def _new_names(tokens: tuple[Token, ...]) -> tuple[str, ...]:
    """The names that "one more: NAME at ..." brings; they may be used in the changes before it."""
    found = []
    words = tuple(token.lower for token in tokens)
    for at in range(len(tokens) - 1):
        if words[at : at + 2] == ("one", "more") and (at == 0 or words[at - 1] == ";"):
            start = at + 2 + (words[at + 2 : at + 3] in ((":",), (",",)))
            end = next((end for end in range(start, len(words)) if words[end] in ("at", ",", "stands")), start)
            found.append(name_of(tokens[start:end]))
    return tuple(name for name in found if name)


def numbers_of_variant(cursor: Cursor, draft: Draft) -> None:
    """Read "For 6 to 9", which stands behind a step up or down, into that step."""
    cursor.example = EXAMPLES["variant numbers"]
    if not draft.variants or "variant" in cursor.findings.lost:
        if "variant" not in cursor.findings.lost:
            hint = f"Write it behind a step up or down, or in the first lines: {EXAMPLES['variant numbers']}"
            cursor.fail("no-variant", "These numbers belong to no step up or down.", hint)
        return
    last = draft.variants[-1]
    if last.numbers is not None:
        cursor.fail("said-twice", f'"{last.name}" has its numbers already.', "Leave one of the two out.")
        return
    draft.variants[-1] = replace(last, numbers=_numbers(cursor))


def behind_variant(cursor: Cursor) -> None:
    """Tell a sentence that follows a step up or down in its line and is none of its numbers."""
    if "variant" not in cursor.findings.lost:
        beginning = " ".join(token.text for token in cursor.tokens[:4])
        told = f'The sentence that begins "{beginning}" stands behind a step up or down.'
        cursor.fail("unknown-sentence", told, 'Part changes with ";", or begin a new line.')


def _numbers(cursor: Cursor) -> Numbers:
    cursor.takes("for")
    least, most = number_range(cursor)
    cursor.takes("players", "children")
    best = None
    if cursor.takes(",", ";") or cursor.sees("best"):
        best = best_of(cursor, (least, most))
    cursor.finish()
    return Numbers(least=least, most=most, best=best)
