"""Every word of the tables is read and, where it is the first of its entry, written."""

import pytest

from conewright.model.exercise import Foot, Pace, Weight
from conewright.notation.phrases import trigger_phrase
from conewright.notation.printer import write
from conewright.notation.reader import read
from conewright.notation.shapes import FREE_LINES, HEADERS, SENTENCES
from conewright.notation.words import (
    FEET,
    HOLDS,
    HOLDS_OF_SEVERAL,
    HOLDS_SYNONYMS,
    MANNER_SYNONYMS,
    PACES,
    THING_SYNONYMS,
    TRIGGERS,
    VERBS,
    WEIGHTS,
    Standing,
)

HEAD = "exercise: Example\nkind: passing pattern\nfor 4 to 12 players\n"
PLACES = ("Base", "Stem", "Left", "Right", "Hub", "Wing", "Gate House", "Goalie", "One", "Two", "Coach")
GROUND = "".join(f"{name} at {at}, 0 is a line with the ball.\n" for at, name in enumerate(PLACES))
GROUND += "Mast at 2, 6 is a cone.\nDoor at 0, 10 is a gate.\nGoal at 0, 22 is a goal.\nBench at 4, 10 is a wall.\n"
ROUND = "Each round, Left and Right in turn (call it Side):\n1. Base passes to Stem.\n"
CONTEST = "2. Contest in 9 by 9 m, middle at 0, 13: Hub and Wing against Gate House, on Goal.\n"
PLAY = "Open play in 9 by 9 m: four Yellow keep it from two Red.\n"
BEFORE = {  # what has to stand before an example of a sentence
    "place": HEAD,
    "thing": HEAD,
    "round": HEAD + GROUND,
    "contest": HEAD + GROUND + ROUND,
    "outcome": HEAD + GROUND + ROUND + CONTEST,
    "play": HEAD + GROUND,
    "odd one": HEAD + GROUND + PLAY,
    "variant numbers": HEAD + GROUND + ROUND + 'harder "softly": as before, but in 1 Base passes softly. ',
    "bouts": HEAD + GROUND + PLAY,
}


@pytest.mark.parametrize("form", SENTENCES, ids=lambda form: form.key)
def test_examples_of_sentences(form) -> None:
    text = BEFORE.get(form.key, HEAD + GROUND + ROUND) + form.example
    if form.key in ("place", "thing"):
        text += f"\n{PLAY}"
    elif form.key == "round":
        text += "\n1. Base passes to Stem."
    exercise, problems = read(text)
    assert problems == ()
    assert form.example in write(exercise)


@pytest.mark.parametrize("verb", VERBS, ids=lambda verb: verb.phrase)
def test_verbs(verb) -> None:
    ground = HEAD + GROUND + "Each round, Left and Right in turn (call it Side):\n1. "
    exercise, problems = read(f"{ground}{verb.example}.")
    assert problems == ()
    assert f"1. {verb.example}.\n" in write(exercise)
    for word in (verb.base, *verb.also):
        again, problems = read(f"{ground}{verb.example.replace(verb.phrase, word)}.")
        assert problems == ()
        assert write(again) == write(exercise)


@pytest.mark.parametrize("form", TRIGGERS, ids=lambda form: form.alone)
def test_starts(form) -> None:
    def start(words: str):
        words = words.format(who="Base", name="Mast", step=1).replace(" 's", "'s")
        exercise, problems = read(f"{HEAD}{GROUND}Each round:\n1. Stem turns {words}.")
        assert problems == ()
        return words, exercise.script.steps[0].acts[0].start

    words, alone = start(form.alone)
    assert (alone.event, alone.delay_s, trigger_phrase(alone)) == (form.event, 0, words)
    words, delayed = start(f"2 s after {form.clause}")
    assert (delayed.event, delayed.delay_s, trigger_phrase(delayed)) == (form.event, 2, words)
    for also in form.also:
        _, other = start(f"2 s after {also}")
        assert (other.event, other.who, other.name, other.step) == (form.event, alone.who, alone.name, alone.step)


@pytest.mark.parametrize("words", [*MANNER_SYNONYMS, *WEIGHTS.values(), *FEET.values(), *PACES.values()])
def test_manners(words: str) -> None:
    exercise, problems = read(f"{HEAD}{GROUND}Each round:\n1. Base dribbles to Stem {words}.")
    assert problems == ()
    assert MANNER_SYNONYMS.get(words, words) in write(exercise)


def test_every_member_has_its_word() -> None:
    assert set(FEET) == set(Foot)
    assert set(PACES) == set(Pace)
    assert set(WEIGHTS) == set(Weight) - {Weight.USUAL}


@pytest.mark.parametrize("phrase", [*HOLDS, *HOLDS_SYNONYMS, *HOLDS_OF_SEVERAL.values()])
def test_what_a_place_holds(phrase: str) -> None:
    several = phrase.startswith(("are ", "hold "))
    names = "Base at 0, 0 and Stem at 0, 8" if several else "Base at 0, 0"
    exercise, problems = read(f"{HEAD}{names} {phrase}.\n{PLAY}")
    assert problems == ()
    meant = HOLDS_SYNONYMS.get(phrase, next((one for one, two in HOLDS_OF_SEVERAL.items() if two == phrase), phrase))
    place = exercise.places[-1]
    said = Standing(holds=place.holds, adult=place.adult, keeper=place.keeper, passive=place.passive)
    assert said == HOLDS[meant]


@pytest.mark.parametrize(("word", "meant"), THING_SYNONYMS.items())
def test_words_for_things(word: str, meant: str) -> None:
    exercise, problems = read(f"{HEAD}Mast at 0, 0 is a {word}.\n{PLAY}")
    assert problems == ()
    assert exercise.things[0].kind.value == meant


@pytest.mark.parametrize("line", [*HEADERS.values(), *FREE_LINES.values()])
def test_lines(line: str) -> None:
    head = [own for own in HEAD.split("\n") if own and own.split(":")[0].split()[0] != line.split(":")[0].split()[0]]
    exercise, problems = read("\n".join([*head, PLAY, line]))
    assert problems == ()
    assert f"{line}\n" in write(exercise)
