"""Which words the notation uses itself, so that they are not taken for names; must not know what they mean."""

from conewright.notation.shapes import CHANGES, SENTENCES
from conewright.notation.words import (
    BASES,
    ENDINGS,
    FEET,
    FOLLOW_PHRASES,
    HOLDS,
    HOLDS_OF_SEVERAL,
    MOVERS,
    PACES,
    THINGS,
    TRIGGERS,
    VERBS,
    WAITS,
    WEIGHTS,
)

# A name of a place or thing that is one of these words cannot be told from the sentence round it.
RESERVED = frozenset(
    "a ahead against after and at from in into is it of on or round the then through to towards when while who "
    "with".split()
)
# A line that ends in one of these words goes on in the next.
JOINERS = frozenset(
    "a ahead against after and at by for from in into is of on or round the then through to towards when while who "
    "but with , ; : (".split()
)
# A capital word in the place of a name that is one of these is no name: the name before it was left out.
NEVER_NAMES: frozenset[str] = frozenset(
    phrase.split()[0] for verb in VERBS for phrase in (verb.phrase, verb.base, *verb.also)
) | {"contest", "follows", "joins", "takes"}

VOCABULARY: frozenset[str] = frozenset(
    word
    for phrase in (
        *(phrase for verb in VERBS for phrase in (verb.phrase, verb.base, *verb.also)),
        *FOLLOW_PHRASES,
        *WEIGHTS.values(),
        *FEET.values(),
        *PACES.values(),
        *(phrase for form in TRIGGERS for phrase in (form.alone, form.clause, *form.also)),
        *HOLDS,
        *HOLDS_OF_SEVERAL.values(),
        *THINGS,
        *WAITS.values(),
        *ENDINGS.values(),
        *MOVERS.values(),
        *(opener for form in SENTENCES for opener in form.opens),
        *(opener for change in CHANGES for opener in change.opens),
        *BASES,
        "lofted round through the outside first time in two three touches home ahead of against towards end then while",
        "facing with a ball each balls wide upright rest shared between same number line middle by most counter on",
        "joins takes swap nobody everyone rounds minutes keep it from chase copies apart mirrored in turn call half",
        "time rests shares neutral others metres yards seconds at once but changes stands",
    )
    for word in phrase.split()
    if word.isalpha()
)
