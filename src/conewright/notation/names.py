"""The names a text declares and where they stand in its sentences; must not know what is said about them."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from conewright.model.exercise import Place, Thing, ThingKind
from conewright.notation.lexer import NUMBER, WORD, Keyed, Token
from conewright.notation.sentences import Sentence

_LONGEST = 6  # so many words at the beginning of a sentence may be a name in small letters
GOALS = frozenset({ThingKind.GOAL, ThingKind.MINI_GOAL, ThingKind.GATE})


@dataclass(frozen=True, slots=True, kw_only=True)
class Names:
    """Names by their first word in small letters, the longest first, and what they stand for as far as was read."""

    by_first: Mapping[str, tuple[tuple[tuple[str, ...], str], ...]] = field(default_factory=dict)
    all: tuple[str, ...] = ()
    places: Mapping[str, Place] = field(default_factory=dict)
    things: Mapping[str, Thing] = field(default_factory=dict)
    sides: str = ""

    def match(self, tokens: tuple[Token, ...], at: int) -> tuple[str, int]:
        """The longest name that stands at a token, and how many tokens it takes; "" and 0 where none does."""
        for words, name in self.by_first.get(tokens[at].lower, ()):
            if tuple(token.lower for token in tokens[at : at + len(words)]) == words:
                return name, len(words)
        return "", 0

    def is_goal(self, name: str) -> bool:
        """True for a thing that can be shot at, and for a name nothing is known of."""
        thing = self.things.get(name)
        return thing.kind in GOALS if thing else name not in self.places and name != self.sides


def names_of(
    names: Iterable[str], places: Iterable[Place] = (), things: Iterable[Thing] = (), sides: str = ""
) -> Names:
    """An index of names; `sides` is the word that stands for the sides in turn."""
    every = tuple(dict.fromkeys((*names, sides) if sides else names))
    by_first: dict[str, list[tuple[tuple[str, ...], str]]] = {}
    for name in every:
        words = tuple(name.lower().split())
        by_first.setdefault(words[0], []).append((words, name))
    ordered = {first: tuple(sorted(found, key=lambda pair: -len(pair[0]))) for first, found in by_first.items()}
    return Names(
        by_first=ordered,
        all=every,
        places={place.name: place for place in reversed(tuple(places))},
        things={thing.name: thing for thing in reversed(tuple(things))},
        sides=sides,
    )


def declared(pieces: Iterable[Keyed | Sentence]) -> tuple[str, ...]:
    """The names that stand before "at" and a number in the declarations of a text."""
    found: list[str] = []
    for piece in pieces:
        if isinstance(piece, Sentence) and piece.key == "declaration":
            tokens = piece.tokens
            for at in range(1, len(tokens) - 1):
                if tokens[at].lower == "at" and tokens[at + 1].kind == NUMBER:
                    found.append(name_of(tokens[name_start(tokens, at) : at]))
    return tuple(dict.fromkeys(name for name in found if name))


def sides_word(pieces: Iterable[Keyed | Sentence]) -> str:
    """The word behind "call it" in the sentence that opens the round; "" where there is none."""
    for piece in pieces:
        if isinstance(piece, Sentence) and piece.key == "round":
            words = tuple(token.lower for token in piece.tokens)
            if "(" in words:
                at = words.index("(") + 1
                end = words.index(")", at) if ")" in words[at:] else len(words)
                at = words.index("it", at, end) + 1 if "it" in words[at:end] else at + 1
                return name_of(piece.tokens[at:end])
    return ""


def name_start(tokens: tuple[Token, ...], end: int) -> int:
    """Where the name begins that ends before token `end`."""
    at = end
    while at > 0 and (tokens[at - 1].kind == NUMBER or tokens[at - 1].text[0].isupper()):
        if tokens[at - 1].kind == NUMBER and at >= 2 and tokens[at - 2].lower == ",":
            break
        at -= 1
    while at > 0 and (at == end or end <= _LONGEST) and tokens[at - 1].kind == WORD and tokens[at - 1].lower != "and":
        at -= 1
    while at < end and tokens[at].kind == NUMBER:
        at += 1
    return at


def name_of(tokens: Iterable[Token]) -> str:
    """A name as it is kept: its words with a capital each, one space between them."""
    return " ".join(token.text[:1].upper() + token.text[1:] for token in tokens if token.kind in (WORD, NUMBER))
