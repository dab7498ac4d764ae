"""Lines and tokens gathered into pieces: `key: value` lines and sentences; must not know what a sentence says.

A sentence ends at its full stop. Where that is missing it ends before a blank line, a `key: value` line, a step's
number, or a line that plainly begins another sentence, so that one missing stop costs one sentence at most.
"""

from dataclasses import dataclass

from conewright.model.problem import Span
from conewright.notation.guesses import closest, slip_of, slipped
from conewright.notation.lexer import KEYS, NUMBER, TEXT, WORD, Keyed, Line, Token, lines_of
from conewright.notation.shapes import SENTENCES
from conewright.notation.vocabulary import JOINERS
from conewright.notation.words import ENDINGS, NUMBERS

_OPENERS = tuple(
    sorted(
        ((tuple(opener.split()), form.key) for form in SENTENCES for opener in form.opens),
        key=lambda pair: -len(pair[0]),
    )
)
_OPENING_WORDS = frozenset(words[0] for words, _ in _OPENERS)
_ENDING_WORDS = frozenset(word for phrase in ENDINGS.values() for word in phrase.split()) | {"or", "and", ","}
_TELLING = frozenset({"start", "each", "round", "open", "play", "bouts"})  # openers known by one of their words
_PLAYERS = frozenset({"player", "players", "child", "children", "under"})
VARIANT_KEYS = ("variant", "variant numbers", "behind variant")
_LONGEST_NAME = 6  # words that a name at the start of a declaration may have


@dataclass(frozen=True, slots=True, kw_only=True)
class Sentence:
    """The tokens of one sentence, without its full stop. `number` is set at the first sentence of a step.

    `key` names its form in `words.SENTENCES`, "" where its opening does not tell; `leads`: it begins a line.
    """

    key: str
    tokens: tuple[Token, ...]
    number: int | None = None
    leads: bool = True
    stopped: bool = True
    slips: int = 0  # mistakes in it that are told already

    def is_variant(self) -> bool:
        """True for a step up or down and what stands behind it, also where its first word is a slip."""
        named = len(self.tokens) > 1 and self.tokens[1].kind == TEXT and self.number is None and self.leads
        return self.key in VARIANT_KEYS or (self.key == "" and named)

    @property
    def span(self) -> Span:
        """From the first word to the last."""
        first, last = self.tokens[0], self.tokens[-1]
        return Span(line=first.line, column=first.column, end_line=last.line, end_column=last.end)


@dataclass(frozen=True, slots=True, kw_only=True)
class Meant:
    """The opener a sentence was meant to have; `lacks` where one of its words is missing altogether."""

    opener: tuple[str, ...]
    key: str
    lacks: bool = False


@dataclass(slots=True)
class _Gathering:
    """The sentence that is being gathered while the lines are walked: real state with a life of one text."""

    pieces: list[Keyed | Sentence]
    open: list[Token]
    number: int | None = None
    number_at: tuple[Token, ...] = ()
    step: int = 0  # the number of the last step
    leads: bool = True

    def end(self, stopped: bool) -> None:
        if self.number is not None and not self.open:
            self.pieces.append(Sentence(key="empty step", tokens=self.number_at, number=self.number))
            self.number = None
        if self.open:
            tokens = tuple(self.open)
            key = "" if self.number is not None else form_of(tokens)
            key = "behind variant" if key == "" and self.number is None and self.follows_variant() else key
            sentence = Sentence(key=key, tokens=tokens, number=self.number, leads=self.leads, stopped=stopped)
            self.pieces.append(sentence)
            self.number = None
        self.open = []

    def follows_variant(self) -> bool:
        """True for what stands in one line behind a step up or down."""
        last = self.pieces[-1] if self.pieces else None
        return not self.leads and isinstance(last, Sentence) and last.is_variant()

    def begins_step(self, tokens: tuple[Token, ...], at: int) -> bool:
        """True at a number with its stop where a sentence may begin; behind a step up or down it begins a line."""
        if self.open or self.number is not None or not _is_step(tokens, at):
            return False
        self.leads = at == 0
        return not self.follows_variant()

    def ends_at(self, token: Token) -> bool:
        """True at a full stop, and at the colon behind "Each round"."""
        if token.lower == ":" and self.number is None and len(self.open) >= 2:
            return form_of(tuple(self.open)) == "round" and "(" not in _unclosed(self.open)
        return token.lower == "."


def pieces_of(text: str) -> tuple[Keyed | Sentence, ...]:
    """Everything a text says, in its order: `key: value` lines and sentences. Never raises."""
    gathering = _Gathering([], [])
    for line in lines_of(text):
        if line.keyed is not None and _is_keyed(line, line.keyed, gathering):
            gathering.end(stopped=False)
            gathering.pieces.append(line.keyed)
        elif line.tokens:
            _gather(gathering, line.tokens)
        else:
            gathering.end(stopped=False)
    gathering.end(stopped=False)
    return tuple(gathering.pieces)


def _is_keyed(line: Line, keyed: Keyed, gathering: _Gathering) -> bool:
    """True for a known key; for an unknown one where no sentence is open and none begins here."""
    if not line.tokens:
        return True
    if keyed.key == "for":
        if _after_variant(gathering):
            return False
        return not gathering.open or any(token.lower in _PLAYERS for token in line.tokens)
    if gathering.open or form_of(line.tokens) != "" or meant_opener(line.tokens) is not None:
        return False
    return line.tokens[0].text[0].islower() or closest(keyed.key, KEYS) != ""


def _after_variant(gathering: _Gathering) -> bool:
    """True behind a step up or down in a text that has its own "for ..." line already."""
    headed = any(isinstance(piece, Keyed) and piece.key == "for" for piece in gathering.pieces)
    if gathering.open:
        return headed and form_of(tuple(gathering.open)) == "variant"
    last = gathering.pieces[-1] if gathering.pieces else None
    return headed and isinstance(last, Sentence) and last.is_variant()


def _gather(gathering: _Gathering, tokens: tuple[Token, ...]) -> None:
    at = 0
    if _is_step(tokens, 0) and not gathering.open:
        gathering.end(stopped=True)
    elif gathering.open and _starts_anew(gathering, tokens):
        gathering.end(stopped=False)
    while at < len(tokens):
        token = tokens[at]
        if gathering.begins_step(tokens, at):
            gathering.number = gathering.step = int(token.text)
            gathering.number_at = (token,)
            gathering.leads = at == 0
            at += 2
            continue
        if gathering.ends_at(token):
            gathering.end(stopped=True)
        else:
            if not gathering.open and gathering.number is None:
                gathering.leads = at == 0
            gathering.open.append(token)
        at += 1


def _starts_anew(gathering: _Gathering, tokens: tuple[Token, ...]) -> bool:
    """True where a line cannot go on with the sentence before it."""
    before = gathering.open
    if _is_step(tokens, 0):
        half_a_point = len(before) > 1 and before[-1].lower == "," and before[-2].kind == NUMBER
        return not half_a_point or int(tokens[0].text) == gathering.step + 1
    if before[-1].lower in JOINERS:
        return False
    key = form_of(tokens)
    return key == "variant" or (key != "" and (tokens[0].text[0].isupper() or _tells_form(key, tokens)))


def _tells_form(key: str, tokens: tuple[Token, ...]) -> bool:
    """True for "with 10 to 18:", which begins another sentence in small letters too."""
    return key == "form or balls" and any(token.lower == ":" for token in tokens[:6])


def _is_step(tokens: tuple[Token, ...], at: int) -> bool:
    """True at a number with a full stop behind it; a number that long is none."""
    if at + 1 >= len(tokens) or tokens[at].kind != NUMBER or tokens[at + 1].lower != ".":
        return False
    return tokens[at].text.isdigit() and len(tokens[at].text) <= 3


def _unclosed(tokens: list[Token]) -> tuple[str, ...]:
    marks = [token.lower for token in tokens if token.lower in "()"]
    return ("(",) if marks.count("(") > marks.count(")") else ()


def form_of(tokens: tuple[Token, ...]) -> str:
    """Which form of sentence the opening of some tokens tells; "" where it does not."""
    first = tokens[0].lower
    if first in _OPENING_WORDS:
        for words, key in _OPENERS:
            if tuple(token.lower for token in tokens[: len(words)]) == words and _goes_on(key, tokens, len(words)):
                return key
    if declares(tokens):
        return "declaration"
    if tokens[0].kind == TEXT and [token.lower for token in tokens[1:2]] == [":"]:
        return "variant"
    if _tells_outcome(tokens):
        return "outcome"
    return "in flight" if _tells_in_flight(tokens) else ""


def meant_opener(tokens: tuple[Token, ...]) -> Meant | None:
    """The opener that the first words are a slip of, or that lacks one of its two words; None where there is none."""
    words = tuple(token.lower for token in tokens[:4] if token.kind == WORD)
    for opener, key in _OPENERS:
        if len(opener) > 1 and slip_of(words[: len(opener)], opener):
            return Meant(opener=opener, key=key)
        if len(opener) > 2 and slip_of(words[: len(opener) - 1], opener):
            return Meant(opener=opener, key=key, lacks=True)
    if tokens[1:] and tokens[1].kind == TEXT:
        near = closest(
            tokens[0].lower, (opener[0] for opener, key in _OPENERS if key == "variant" and len(opener) == 1)
        )
        if near:
            return Meant(opener=(near,), key="variant")
    if tokens[1:] and (tokens[1].lower == ":" or tokens[1].kind == NUMBER or tokens[1].lower in NUMBERS):
        for opener, key in _OPENERS:
            if opener in (("rotation",), ("every",)) and slipped(tokens[0].lower, opener):
                return Meant(opener=opener, key=key)
    for opener, key in _OPENERS:
        if len(opener) == 2 and words[:1] and words[0] in opener and words[0] in _TELLING:
            return Meant(opener=opener, key=key, lacks=True)
    return None


def _goes_on(key: str, tokens: tuple[Token, ...], at: int) -> bool:
    """True where the word behind an opener that is one short word fits it."""
    following = tokens[at] if at < len(tokens) else None
    if key == "rotation":
        return following is None or following.lower == ":" or following.kind == WORD
    if key == "form or balls":
        return following is not None and (
            following.kind == NUMBER or following.lower in NUMBERS or following.lower == "no"
        )
    if key == "variant":
        return any(token.kind == TEXT or token.lower in (":", '"') for token in tokens[at : at + _LONGEST_NAME])
    if key == "variant numbers":
        return following is not None and (following.kind == NUMBER or following.lower in NUMBERS)
    return True


def declares(tokens: tuple[Token, ...]) -> bool:
    """True where a name (which may be missing), "at" and a number begin the tokens."""
    for at in range(0, min(_LONGEST_NAME + 1, len(tokens) - 1)):
        if tokens[at].lower == "at":
            return tokens[at + 1].kind == NUMBER
        if tokens[at].kind != WORD and (at == 0 or tokens[at].kind != NUMBER):
            return False
    return False


def _tells_outcome(tokens: tuple[Token, ...]) -> bool:
    for at, token in enumerate(tokens[:16]):
        if token.lower == ":":
            before = tuple(token.lower for token in tokens[:at])
            if before[:1] and before[0] in _ENDING_WORDS - {"or", "and", ","}:
                return all(one.kind == WORD or one.lower == "," for one in tokens[:at])
            return bool(before) and (before[-1] in ("it", "wins") or all(word in _ENDING_WORDS for word in before))
    return False


def _tells_in_flight(tokens: tuple[Token, ...]) -> bool:
    words = tuple(token.lower for token in tokens[:8])
    counted = "rounds" in words[1:3] or "round" in words[1:3] or words[2:3] == ("may",)
    return counted and (words[0] in NUMBERS or words[0] == "only" or tokens[0].kind == NUMBER)
