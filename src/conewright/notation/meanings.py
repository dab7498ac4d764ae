"""What every word and phrase of the notation means, in a line; must not know where in a sentence it may stand."""

from collections.abc import Iterator

from conewright.model.exercise import KINDS, Bib
from conewright.notation.shapes import CHANGES, LINES_MEAN, SENTENCES
from conewright.notation.words import (
    AT_ONCE,
    COACH,
    FIRST_TIME,
    FOLLOW_PHRASES,
    HOLDS_OF_SEVERAL,
    HOLDS_SYNONYMS,
    JOBS,
    LOFTED,
    MANNER_SYNONYMS,
    MEETINGS,
    MOVER_SYNONYMS,
    MOVERS,
    OUTSIDE,
    PASSIVE,
    THING_SYNONYMS,
    TRIGGERS,
    VERBS,
)

_MANNERS: dict[str, str] = {
    "firmly": "with pace on the ball",
    "softly": "without much pace on the ball",
    FIRST_TIME: "with the first contact",
    "in two touches": "one to control, one to play",
    "in three touches": "two to control, one to play",
    "with the left foot": "the left foot plays it",
    "with the right foot": "the right foot plays it",
    "with the weaker foot": "the foot that is used less plays it",
    LOFTED: "through the air",
    OUTSIDE: "round all places and things, not through the middle",
    "walking": "at walking pace",
    "jogging": "at an easy run",
    "at a run": "at the usual pace of a run",
    "at full speed": "as fast as it goes",
}
_HOLDS: dict[str, str] = {
    "is a line": "children wait here one behind the other",
    "holds one": "one child stands here",
    "is an adult": "the coach or a helper serves here and is not counted",
    "is a keeper": "a goalkeeper, where keepers are here",
    "is a line of keepers": "goalkeepers wait here one behind the other",
    "is an adult in goal": "an adult keeps goal and is not counted",
    "is passive": "an opponent who closes and does not tackle",
}
_THINGS: dict[str, str] = {
    "cone": "a marker to run or dribble round",
    "gate": "two cones to go through, 2 m apart where nothing is said",
    "mini goal": "a small goal without a keeper, 1.5 m wide where nothing is said",
    "goal": "a goal, 5 m wide where nothing is said",
    "wall": "a bench on its side or a board: the ball comes back, 2 m wide where nothing is said",
}
_PLACES: dict[str, str] = {
    "with the ball": "one ball lies here; in a rotation: who takes the ball along",
    "a ball each": "everybody here has a ball of their own",
    "with 6 balls": "so many balls lie here",
    "facing": "what whoever stands here looks at",
    "waiting on the left": "the line stands to the left of its place",
    "waiting on the right": "the line stands to the right of its place",
    "waiting behind": "the line stands behind its place, as it does where nothing is said",
    PASSIVE: "closes and does not tackle",
    "3 m wide": "the width, where it is not the usual one",
    "upright": "turned, so that it lies up the page",
    **{f"in {bib.value.lower()}": f"{bib.value} bibs" for bib in Bib},
    **{bib.value.lower(): f"{bib.value} bibs" for bib in Bib},
}
_WAYS: dict[str, str] = {
    "to": "where the ball or the way goes: a place, a thing or a point",
    "ahead of": "into the run of somebody, who meets the ball",
    "against": "against a wall, from which it comes back; or who plays against whom",
    "at": "the goal that is shot at; or where something stands, in metres to the right and up",
    "towards": "in the direction of a place, thing or point",
    "home": "to the own place or the end of the own line",
    "the end of": "behind the last of a line",
    "round": "a way round a cone or place",
    "through": "a way through a gate",
    "then": "the next thing the same person does",
    "while": "somebody else does this at the same time",
    "when": "what an act waits for",
    "after": "after a step, or so many seconds after something",
    "on the coach's call": "when the coach gives the signal",
    AT_ONCE: "as soon as the people it needs are there",
}
_ROUND: dict[str, str] = {
    "in turn": "the sides take turns, round by round",
    "from half time": "the first side, then from half time the second",
    "chooses": "somebody in the round chooses the side",
    COACH: "an adult who gives the signals",
    "(call it": "gives the side of the round a word of its own",
    "call it": "gives the side of the round a word of its own",
    "the other": "the other of two: the side that is not meant, or who else was in the contest",
    "the rest": "all who are not counted yet",
    "shared between": "as evenly as it goes",
    "the same number in each line": "shared over all lines as evenly as it goes",
    "may run at once": "so many rounds run at the same time",
}
_CONTEST: dict[str, str] = {
    "contest in": "a duel or race in a box of this size, left to the children",
    "middle at": "where the middle of the box is",
    "on": "what is attacked",
    "at most": "the longest time it lasts",
    "counter on": "what the defenders attack once they win it",
    "scored": "a goal was scored",
    "out": "the ball left the box",
    "won": "the defending side won the ball",
    "time up": "the time is over",
    "wins it": "the defender wins the ball",
    "joins": "goes to that place next",
    "takes the ball": "brings the ball to a place first",
    "the ball goes to": "nobody brings it: it is played there",
    "nobody moves": "everybody keeps the own place",
    "the winner": "whoever won the ball",
    "who lost it": "whoever lost the ball",
    "the scorer": "whoever scored",
    "swap": "two go to each other's places",
    "follow the pass": "everybody goes where the own pass went",
    "everyone goes back to their own place": "nobody changes places",
}
_PLAY: dict[str, str] = {
    "keep it from": "the first keep the ball, the last chase it",
    "chase": "catchers and those they catch",
    "everyone has a ball": "no teams, a ball each",
    "have a ball each": "a ball each in these teams",
    "who have a ball each": "those who are chased dribble",
    "in 20 by 20 m": "how large the box is",
    "copies": "so many times it is laid out",
    "m apart": "how far the copies are from each other",
    "is neutral": "plays with whoever has the ball",
    "shares a ball": "two have one ball together",
    "rests in turn": "one sits out in turn",
    "mirrored": "every second copy is turned about",
    "as it stands": "nothing is laid out in another way",
}
_VARIANTS: dict[str, str] = {
    "harder": "a step up",
    "easier": "a step down",
    "with an odd number": "what changes where one is left over",
    "half the space": "what changes on half the ground",
    "no keeper": "what changes where no keeper is here",
    "few balls": "what changes where balls are few",
    "as before": "on the step of the same kind above it, or on the exercise",
    "as written": "on the exercise itself",
    "but": "what changes stands behind it",
    "changes with": "the one that is new and another one take turns",
    "stands at": "stands there now",
}

FOLLOWS = FOLLOW_PHRASES[0]
_VERBS: dict[str, str] = {verb.phrase: verb.means for verb in VERBS} | {FOLLOWS: "runs to whoever got the last pass"}


def tail_of(pattern: str) -> str:
    """What a start says behind whom it is seen on: "{who} is past {name}" gives "is past"."""
    return pattern.removeprefix("{who} ").removesuffix(" {name}").removesuffix("{step}").strip()


EVENTS: dict[str, str] = {tail_of(form.clause): form.means for form in TRIGGERS if "{step}" not in form.clause}
LINES: dict[str, str] = {f"{key}:": means for key, means in LINES_MEAN.items() if key != "for"} | {
    "for": LINES_MEAN["for"]
}
OPENERS: dict[str, str] = {form.opens[0]: form.means for form in SENTENCES if form.opens and form.key != "variant"}
VALUES: dict[str, dict[str, str]] = {  # what may stand behind a key
    "kind": dict.fromkeys(KINDS, "a kind of exercise"),
    "good for": dict.fromkeys(JOBS, "a part of an evening"),
    "for": {
        "players": "how many it is for stands before it",
        "under": "the youngest age, then the oldest: under 9 to under 13",
        "best with": "the number it is at its best with",
    },
}
MEANINGS: dict[str, str] = {
    **_WAYS,
    **_CONTEST,
    **_PLAY,
    **_ROUND,
    **_PLACES,
    **_MANNERS,
    **_HOLDS,
    **{f"is a {word}": means for word, means in _THINGS.items()},
    **{change.opens[0]: change.means for change in CHANGES if change.opens},
    **_VARIANTS,
    **_VERBS,
}


def _synonyms() -> Iterator[tuple[str, str]]:
    yield from MANNER_SYNONYMS.items()
    yield from ((phrase, verb.phrase) for verb in VERBS for phrase in (verb.base, *verb.also))
    yield from dict.fromkeys(FOLLOW_PHRASES, FOLLOWS).items()
    yield from HOLDS_SYNONYMS.items()
    yield from ((several, one) for one, several in HOLDS_OF_SEVERAL.items())
    yield from ((f"are {word}s", f"is a {word}") for word in _THINGS)
    yield from ((f"is a {word}", f"is a {known}") for word, known in THING_SYNONYMS.items())
    yield from ((phrase, MOVERS[word]) for phrase, word in MOVER_SYNONYMS.items())
    yield from ((phrase, phrases[0]) for phrases in MEETINGS.values() for phrase in phrases[1:])


SYNONYMS: dict[str, str] = {phrase: known for phrase, known in _synonyms() if phrase not in MEANINGS}
_EVENT_SYNONYMS: dict[str, str] = {
    tail_of(phrase): tail_of(form.clause) for form in TRIGGERS for phrase in form.also if "{step}" not in phrase
}


def meaning(phrase: str, *, of_event: bool = False) -> str:
    """What a phrase in small letters means, also one that is only understood; "" for one that is not known."""
    event = EVENTS.get(_EVENT_SYNONYMS.get(phrase, phrase), "")
    if of_event and event:
        return event
    known = SYNONYMS.get(phrase, phrase)
    return MEANINGS.get(known) or OPENERS.get(known) or event
