"""The names a text declares and where they stand in its sentences; must not know what is said about them."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from conewright.model.exercise import Place, Thing, ThingKind
from conewright.notation.lexer import NUMBER, WORD, Keyed, Token
from conewright.notation.sentences import Sentence
from conewright.notation.words import CHOICES

_DECIDES = frozenset(phrase for phrases in CHOICES.values() for phrase in phrases)
_LONGEST = 6  # so many words at the beginning of a sentence may be a name in small letters
GOALS = frozenset({ThingKind.GOAL, ThingKind.MINI_GOAL, ThingKind.GATE})


@dataclass(frozen=True, slots=True, kw_only=True)
class Names:
    """Names by their first word in small letters, the longest first, and what they stand for as far as was read."""

    by_first: Mapping[str, tuple[tuple[tuple[str, ...], str], ...]] = field(default_factory=dict)
    all: tuple[str, ...] = ()
    places: Mapping[str, Place] = field(default_factory=dict)
    things: Mapping[str, Thing] = field(default_factory=dict)
    stands_for: Mapping[str, tuple[str, ...]] = field(default_factory=dict)  # words for sides: the names they may mean

    def match(self, tokens: tuple[Token, ...], at: int) -> tuple[str, int]:
        """The longest name that stands at a token, and how many tokens it takes; "" and 0 where none does."""
        for words, name in self.by_first.get(tokens[at].lower, ()):
            if tuple(token.lower for token in tokens[at : at + len(words)]) == words:
                return name, len(words)
        return "", 0

    def thing(self, name: str) -> Thing | None:
        """The thing of a name; for a word that stands for one of several things, the first of them."""
        meant = (name,) if name in self.places else self.stands_for.get(name, (name,))
        found = tuple(self.things[one] for one in meant if one in self.things)
        return found[0] if found and len(found) == len(meant) else None

    def is_goal(self, name: str) -> bool:
        """True for what can be shot at, and for a name nothing is known of."""
        return all(
            self.things[one].kind in GOALS if one in self.things else one not in self.places
            for one in self.stands_for.get(name, (name,))
        )

    def is_word(self, name: str) -> bool:
        """True for a word that stands for one of several places or things."""
        return name in self.stands_for and name not in self.places and name not in self.things


def names_of(
    names: Iterable[str],
    places: Iterable[Place] = (),
    things: Iterable[Thing] = (),
    stands_for: Mapping[str, tuple[str, ...]] | None = None,
) -> Names:
    """An index of names; `stands_for` gives the words for sides with the names each may mean."""
    sides = stands_for or {}
    every = tuple(dict.fromkeys((*names, *sides)))
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
        stands_for=sides,
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


def side_words(pieces: Iterable[Keyed | Sentence], names: Names) -> dict[str, tuple[str, ...]]:
    """The words in "(call it Side, the other Rest)" of the sentence that opens the round, with what they stand for."""
    opening = next((piece for piece in pieces if isinstance(piece, Sentence) and piece.key == "round"), None)
    words = tuple(token.lower for token in opening.tokens) if opening else ()
    if opening is None or "(" not in words:
        return {}
    at = words.index("(") + 1
    end = words.index(")", at) if ")" in words[at:] else len(words)
    parted = next((place for place in range(at, end) if words[place] in (",", "and", "the", "other")), end)
    found = [_word_behind(opening.tokens[at:parted], "it"), _word_behind(opening.tokens[parted:end], "other")]
    return dict.fromkeys((word for word in found if word), _named(opening.tokens[: at - 1], names))


def _word_behind(tokens: tuple[Token, ...], lead: str) -> str:
    """The name behind a word; behind the first word where that one is missing."""
    at = next((place for place, token in enumerate(tokens) if token.lower == lead), 0)
    return name_of(tokens[at + 1 :])


def _named(tokens: tuple[Token, ...], names: Names) -> tuple[str, ...]:
    """The known names among tokens, without the one who decides on them."""
    found: list[str] = []
    at = 0
    while at < len(tokens):
        name, length = names.match(tokens, at)
        decides = at + length < len(tokens) and tokens[at + length].lower in _DECIDES
        found += [name] if length and not decides else []
        at += length or 1
    return tuple(dict.fromkeys(found))


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
