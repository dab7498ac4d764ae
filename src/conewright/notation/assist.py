"""Help while an exercise is written: what may come next, and what a word means; must not know how it is shown.

What may come next is what reading looks for at that place, so the forms of sentences are not told here a second time.
Lines and columns count from 1; the caret stands before the sign of its column.
"""

import re
from dataclasses import dataclass, replace

from conewright.model.exercise import Bib, Exercise, SideOrder, Sides, Step, ThingKind
from conewright.model.problem import Span
from conewright.model.variant import OneMore
from conewright.notation.amounts import capital, listed
from conewright.notation.clauses import contest_clause, places_clause, things_clause
from conewright.notation.cursor import Asked
from conewright.notation.draft import Draft
from conewright.notation.header import MOST_PLAYERS
from conewright.notation.lexer import NUMBER, WORD, Keyed, Token, lines_of
from conewright.notation.meanings import EVENTS, LINES, MEANINGS, OPENERS, VALUES, meaning
from conewright.notation.names import GOALS, names_of
from conewright.notation.phrases import act_phrase, acts_phrase, verb_word
from conewright.notation.reader import Ahead, ahead_of
from conewright.notation.sentences import Sentence
from conewright.notation.shapes import CHANGES, FREE_LINES
from conewright.notation.words import CHOICES, COACH, HOLDS, NUMBERS, THINGS, VARIANTS

_PREFIX = re.compile(r"[^\W\d_][\w-]*$")
_STEP = re.compile(r"\s*\d+\.\s*$")
_COLOURS = re.compile(rf"\b({'|'.join(bib.value for bib in Bib)})\b", re.IGNORECASE)
_LONGEST = 7  # words of the longest phrase
_SEEN_ON = frozenset(("when", "once", "after"))  # what is seen on somebody stands behind these
_NUMBERED = frozenset(("in", "of", "after", "out"))  # of "in 3", "instead of 3", "after 3", "leave out 3"
_NEEDED = ("exercise", "kind", "for")
_REMARKS = ("cue", "fault", "score", "caution", "note")
_OFTEN = frozenset((*_REMARKS, "aim", "good for", "rule"))
_NOTHING: frozenset[ThingKind] = frozenset()
_IN_ROUND = ("The next round", "Rotation:", "Every", "Change sides")
_IN_PLAY = ("One over", "Bouts of")
_STANDING = {phrase: at for at, phrase in enumerate((*HOLDS, *(f"is a {word}" for word in THINGS)))}
_COUNTS = frozenset((*NUMBERS, *map(str, range(1, MOST_PLAYERS))))
_LINKS = frozenset(("then", "while", "but", "and"))
_PEOPLE = ("a place", "who does it", "who attacks", "who defends", "who goes", "who swaps", "whom to look at")
_FITS: dict[str, tuple[bool, frozenset[ThingKind]]] = {  # what is looked for: will a place do, and which things?
    **dict.fromkeys((*_PEOPLE, "who chooses", "who runs onto the ball"), (True, _NOTHING)),
    **dict.fromkeys(("a gate", "a goal", "a goal or gate"), (False, GOALS)),
    "the wall": (False, frozenset((ThingKind.WALL,))),
    "who gets the ball": (True, GOALS),
}
_ANYTHING = (True, frozenset(ThingKind))


@dataclass(frozen=True, slots=True, kw_only=True)
class Completion:
    """Words that may come next: `text` takes the place of what stands from `column` to the caret."""

    text: str
    means: str
    column: int = 0
    is_name: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Hover:
    """A word or name of a text, where it stands, and what it means."""

    text: str
    means: str
    where: Span


def completions(text: str, line: int, column: int) -> tuple[Completion, ...]:
    """What may come next at a place of a text; none outside of it and in comments and remarks. Never raises."""
    rows = _rows(text)
    if not 1 <= line <= len(rows) or not 1 <= column <= len(rows[line - 1]) + 1:
        return ()
    written = rows[line - 1][: column - 1]
    if written.lstrip().startswith("#"):
        return ()
    begun = _PREFIX.search(written)
    prefix = begun[0] if begun else ""
    start = written.removesuffix(prefix)
    whole = "\n".join((*rows[:line], "", *rows[line:]))  # what is being written does not run on into the next line
    ahead = ahead_of("\n".join((*rows[: line - 1], start)), whole)
    fitting = (offer for offer in _offers(ahead, start) if offer.text.lower().startswith(prefix.lower()))
    once: dict[str, Completion] = {}
    for offer in fitting:
        once.setdefault(offer.text, replace(offer, column=column - len(prefix)))
    return tuple(once.values())


def _rows(text: str) -> list[str]:
    return text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n").split("\n")


def _offers(ahead: Ahead, start: str) -> list[Completion]:
    """Everything that may come next, whatever it begins with."""
    if isinstance(ahead.open, Keyed):
        return _words(VALUES.get(ahead.open.key, {}))
    if ahead.open is None:
        return _at_a_start(ahead, start)
    named = any(asked.is_name and asked.rest == asked.phrase for asked in ahead.asked)
    offers = [offer for asked in ahead.asked if (offer := _asked(ahead, asked, named=named)) is not None]
    offers = [offer for offer in offers if offer.text != "but" or ahead.open.key == "variant"]
    offers.sort(key=_rank)
    begun = _openers(ahead.open.tokens) or _new_name(ahead.open)
    return [*_behind_variant(ahead, ahead.open), *offers, *begun]


def _new_name(sentence: Sentence) -> list[Completion]:
    """Behind a name at the beginning of a line: where it stands."""
    is_name = all(token.kind in (WORD, NUMBER) for token in sentence.tokens) and sentence.tokens[0].text[0].isupper()
    if sentence.key or sentence.number is not None or not sentence.leads or not is_name:
        return []
    return [Completion(text="at", means="where it stands, in metres to the right and up: at 0, 8")]


def _rank(offer: Completion) -> int:
    """Links between acts come last; what stands at a place comes in the order of the table."""
    if offer.text in _LINKS:
        return len(MEANINGS)
    return _STANDING.get(offer.text, 0)


def _words(words: dict[str, str]) -> list[Completion]:
    return [Completion(text=text, means=means) for text, means in words.items()]


def _asked(ahead: Ahead, asked: Asked, *, named: bool = False) -> Completion | None:
    """What was looked for, if it is a name that fits there or words in their one form.

    Where a name may come behind "at", no pace is meant.
    """
    if asked.is_name:
        means = _fits(ahead, asked)
        return Completion(text=asked.rest, means=means, is_name=True) if means else None
    if named and asked.rest != asked.phrase and asked.phrase.startswith("at "):
        return None
    phrase = _set(asked.phrase).removeprefix(", ")
    means = EVENTS.get(asked.phrase, "") if asked.what == "event" else ""
    means = means or MEANINGS.get(phrase) or EVENTS.get(asked.phrase, "")
    rest = _COLOURS.sub(lambda colour: capital(colour[0]), _set(asked.rest))
    return Completion(text=rest, means=means) if means else None


def _set(phrase: str) -> str:
    """A phrase of tokens as it is written."""
    return phrase.replace(" 's", "'s").replace("( ", "(")


def _fits(ahead: Ahead, asked: Asked) -> str:
    """What a name is declared as, if it may stand where it was looked for; else ""."""
    name = asked.phrase
    with_places, kinds = _FITS.get(asked.what, _ANYTHING)
    thing = ahead.names.thing(name)
    if not with_places if thing is None else thing.kind not in kinds:
        return ""
    if ahead.names.is_word(name) and ahead.draft.sides is None:
        return "a word for one of the sides"
    return _declared(ahead.draft.exercise(), name)


def _names(ahead: Ahead, what: str) -> list[Completion]:
    """Every name that may stand where something is looked for."""
    asked = (Asked(phrase=name, rest=name, what=what, is_name=True) for name in ahead.names.all)
    return [offer for one in asked if (offer := _asked(ahead, one)) is not None]


# --- where a line or sentence begins ---


def _at_a_start(ahead: Ahead, start: str) -> list[Completion]:
    draft = ahead.draft
    if start.strip() == "":
        return [*_next_step(draft), *_lines(draft), *_sentences(draft)]
    acting = [*_names(ahead, "who does it"), Completion(text="when", means=MEANINGS["when"])]
    if isinstance(ahead.last, Sentence) and ahead.last.is_variant():
        return [Completion(text="For", means=OPENERS["for"])]
    if _STEP.match(start):
        return [*acting, Completion(text="Contest in", means=MEANINGS["contest in"])]
    return [*(acting if draft.steps else []), *_sentences(draft)]


def _next_step(draft: Draft) -> list[Completion]:
    number = draft.steps[-1].number + 1 if draft.steps else 1
    return (
        [Completion(text=f"{number}.", means="the next numbered sentence of the round")] if draft.round_opened else []
    )


def _lines(draft: Draft) -> list[Completion]:
    """The keys that may still be said; those every exercise needs come first, remarks once something happens."""
    begun = bool(draft.steps or draft.play)
    keys = [key.removesuffix(":") for key in LINES]
    free = [key for key in keys if key in FREE_LINES and draft.play is not None]
    ordered = [*(key for key in keys if key not in FREE_LINES and (not begun or key in _REMARKS)), *free]
    missing = [key for key in (*_NEEDED, *ordered) if key not in draft.seen or key in _OFTEN]
    told = {key: "for" if key == "for" else f"{capital(key) if key in FREE_LINES else key}:" for key in missing}
    return [Completion(text=text, means=LINES[text.lower()]) for text in told.values()]


def _sentences(draft: Draft) -> list[Completion]:
    """The openings of sentences that may come by now; steps up and down once there is something to change."""
    begun = draft.round_opened or draft.play is not None
    fitting = (
        *(("Start with",) if draft.places and "start" not in draft.seen else ()),
        *(() if draft.round_opened else ("Each round",)),
        *(() if draft.play else ("Open play",)),
        *(_IN_ROUND if draft.round_opened else ()),
        *(_IN_PLAY if draft.play else ()),
        *(("With",) if begun else ()),
    )
    openings = {opener: OPENERS[opener.lower().removesuffix(":")] for opener in fitting}
    variants = {phrase: MEANINGS[phrase] for phrase in VARIANTS.values()} if draft.steps or draft.play else {}
    return _words({**openings, **variants})


def _openers(tokens: tuple[Token, ...]) -> list[Completion]:
    """The rest of openings and keys of several words, where the text ends inside one."""
    known = {**OPENERS, **LINES, **{phrase: MEANINGS[phrase] for phrase in VARIANTS.values()}}
    begun = [token.lower for token in tokens]
    found = {}
    for opener, means in known.items():
        words = opener.split()
        if len(begun) < len(words) and words[: len(begun)] == begun:
            found[" ".join(words[len(begun) :])] = means
    return _words(found)


def _behind_variant(ahead: Ahead, sentence: Sentence) -> list[Completion]:
    """The changes a step up or down may make, and the numbers of the steps they change."""
    if sentence.key != "variant":
        return []
    last = sentence.tokens[-1].lower
    if last in ("but", ";"):
        fixed = {change.opens[0]: change.means for change in CHANGES if change.opens}
        in_step = Completion(text="in", means="in a numbered step something is done in another way; or: another size")
        return [in_step, *_words(fixed), *_names(ahead, "")]
    exercise = ahead.draft.exercise()
    if last in _NUMBERED:
        return [Completion(text=str(step.number), means=_step(exercise, step)) for step in ahead.draft.steps]
    return _done_in_step(ahead, exercise, sentence.tokens)


def _done_in_step(ahead: Ahead, exercise: Exercise, tokens: tuple[Token, ...]) -> list[Completion]:
    """Behind "in 3 Stem": what Stem does in that step."""
    begins = max(at for at, token in enumerate(tokens) if token.lower in ("but", ";", ":")) + 1
    change = tokens[begins:]
    if change and ahead.names.match(change, 0)[1] == len(change):
        return _words({phrase: MEANINGS[phrase] for phrase in ("stands at", "changes with")})
    if ahead.draft.play is not None and change and change[-1].lower in _COUNTS:
        return _words({bib.value: f"{bib.value} bibs" for bib in Bib})
    if len(change) < len(("in", "3", "Stem")) or change[0].lower != "in" or not change[1].text.isdigit():
        return []
    who, length = ahead.names.match(change, 2)
    if length != len(change) - 2:
        return []
    steps = exercise.script.steps if exercise.script else ()
    acts = (act for step in steps if str(step.number) == change[1].text for act in step.acts)
    return [
        Completion(text=verb_word(act).phrase, means=f"in this step: {who} {act_phrase(exercise, act)}")
        for act in acts
        if act.who == who
    ]


def _step(exercise: Exercise, step: Step) -> str:
    return acts_phrase(exercise, step.acts) if step.acts else contest_clause(step.contest) if step.contest else ""


# --- what a word means ---


def hover(text: str, line: int, column: int) -> Hover | None:
    """What the word or name at a place of a text means; None where nothing is known of it. Never raises."""
    rows = _rows(text)
    if not 1 <= line <= len(rows):
        return None
    for part in lines_of(rows[line - 1]):
        if part.keyed is not None and _covers(part.keyed.key_span, column):
            means = LINES.get(f"{part.keyed.key}:") or LINES.get(part.keyed.key, "")
            if means:
                return Hover(text=part.keyed.key, means=means, where=_in_line(part.keyed.key_span, line))
        at = next((at for at, token in enumerate(part.tokens) if _covers(token.span, column)), None)
        if at is not None:
            return _name_at(text, part.tokens, at, line) or _phrase_at(part.tokens, at, line)
    return None


def _covers(span: Span, column: int) -> bool:
    return span.column <= column < span.end_column


def _in_line(span: Span, line: int) -> Span:
    return replace(span, line=line, end_line=line)


def _over(tokens: tuple[Token, ...], start: int, length: int, line: int) -> Span:
    first, last = tokens[start], tokens[start + length - 1]
    return Span(line=line, column=first.column, end_line=line, end_column=last.end)


def _name_at(text: str, tokens: tuple[Token, ...], at: int, line: int) -> Hover | None:
    """The name that covers a token written with a capital."""
    if not tokens[at].text[0].isupper() and not tokens[at].text.isdigit():
        return None
    ahead = ahead_of(text, text)
    exercise = ahead.draft.exercise()
    names = names_of((*ahead.names.all, *_brought(exercise)))
    for start in range(max(0, at - _LONGEST), at + 1):
        name, length = names.match(tokens, start)
        if start + length > at and tokens[start].text[0].isupper():
            means = _declared(exercise, name)
            return Hover(text=name, means=means, where=_over(tokens, start, length, line)) if means else None
    return None


def _brought(exercise: Exercise) -> dict[str, str]:
    """The places that steps up and down bring, with their declarations."""
    patches = (patch for variant in exercise.variants for patch in variant.patches)
    return {more.place.name: places_clause((more.place,)) for more in patches if isinstance(more, OneMore)}


def _declared(exercise: Exercise, name: str) -> str:
    """The declaration of a name, as it is written."""
    place, thing = exercise.place(name), exercise.thing(name)
    if place is not None:
        return f"{places_clause((place,))}."
    if thing is not None:
        return f"{things_clause((thing,))}."
    sides = exercise.script.sides if exercise.script else None
    if sides is not None and name in (sides.word, sides.other):
        return _sides(sides, name)
    brought = _brought(exercise).get(name, "")
    return f"One more, in a step up or down: {brought}." if brought else "Somebody who comes in this step."


def _sides(sides: Sides, name: str) -> str:
    """What a word for the sides stands for."""
    which = listed(sides.places, last="or")
    if sides.order is SideOrder.HALF_TIME:
        how = "the first until half time, then the second"
    elif sides.order is SideOrder.IN_TURN:
        how = "in turn"
    else:
        how = f"as {sides.chooser or COACH} {CHOICES[sides.order][0]}"
    return f"{which}, {how}." if name == sides.word else f"{which}, the one that is not {sides.word}."


def _phrase_at(tokens: tuple[Token, ...], at: int, line: int) -> Hover | None:
    """The longest phrase of the notation that covers a token."""
    for length in range(min(_LONGEST, len(tokens)), 0, -1):
        for start in range(max(0, at - length + 1), min(at, len(tokens) - length) + 1):
            phrase = " ".join(token.lower for token in tokens[start : start + length])
            seen = any(token.lower in _SEEN_ON for token in tokens[max(0, start - 4) : start])
            means = meaning(phrase, of_event=seen)
            if means:
                where = _over(tokens, start, length, line)
                return Hover(text=phrase.replace(" 's", "'s"), means=means, where=where)
    return None
