"""Every word of the tables has its meaning, said once."""

import pytest

from conewright.notation.meanings import EVENTS, LINES, MEANINGS, OPENERS, SYNONYMS, VALUES, meaning
from conewright.notation.shapes import CHANGES, FREE_LINES, HEADERS, LINES_MEAN, SENTENCES
from conewright.notation.words import (
    BASES,
    ENDINGS,
    FEET,
    FOLLOW_PHRASES,
    HOLDS,
    HOLDS_OF_SEVERAL,
    HOLDS_SYNONYMS,
    MANNER_SYNONYMS,
    MEETINGS,
    MOVERS,
    PACES,
    THING_SYNONYMS,
    THINGS,
    TRIGGERS,
    VARIANTS,
    VERBS,
    WAITS,
    WEIGHTS,
)

PHRASES = (
    *(phrase for verb in VERBS for phrase in (verb.phrase, verb.base, *verb.also)),
    *FOLLOW_PHRASES,
    *WEIGHTS.values(),
    *FEET.values(),
    *PACES.values(),
    *MANNER_SYNONYMS,
    *HOLDS,
    *HOLDS_OF_SEVERAL.values(),
    *HOLDS_SYNONYMS,
    *(f"is a {word}" for word in (*THINGS, *THING_SYNONYMS)),
    *(f"are {word}s" for word in THINGS),
    *WAITS.values(),
    *(phrase for phrases in MEETINGS.values() for phrase in phrases),
    *MOVERS.values(),
    *ENDINGS.values(),
    *VARIANTS.values(),
    *BASES,
    *(change.opens[0] for change in CHANGES if change.opens),
)


@pytest.mark.parametrize("phrase", dict.fromkeys(PHRASES))
def test_every_phrase_means_something(phrase: str) -> None:
    assert meaning(phrase)


@pytest.mark.parametrize("form", TRIGGERS, ids=lambda form: form.clause)
def test_starts_mean_what_is_seen(form) -> None:
    if "{step}" not in form.clause:
        tails = [phrase.removeprefix("{who} ").removesuffix(" {name}") for phrase in (form.clause, *form.also)]
        assert {meaning(tail, of_event=True) for tail in tails} == {form.means}


def test_every_line_and_opening_means_something() -> None:
    assert set(LINES_MEAN) == {*HEADERS, *FREE_LINES}
    assert len(LINES) == len(LINES_MEAN)
    assert {form.opens[0] for form in SENTENCES if form.opens and form.key != "variant"} == set(OPENERS)


def test_meanings_are_short_and_begin_small() -> None:
    told = [*MEANINGS.values(), *EVENTS.values(), *LINES.values(), *OPENERS.values()]
    told += [means for values in VALUES.values() for means in values.values()]
    assert [means for means in told if not means or len(means) > 90 or means.endswith(".")] == []


def test_synonyms_stand_for_words_that_are_known() -> None:
    assert [phrase for phrase, known in SYNONYMS.items() if known not in MEANINGS and known not in EVENTS] == []
    assert meaning("frobnicates") == ""
