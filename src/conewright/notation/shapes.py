"""The forms of lines and sentences as tables: what opens them, their shape, an example; must not know their words."""

from dataclasses import dataclass

from conewright.notation.words import VARIANT_SYNONYMS, VARIANTS

HEADERS: dict[str, str] = {
    "exercise": "exercise: Stem and branch",
    "kind": "kind: passing pattern",
    "for": "for 5 to 9 players, under 9 to under 13; best with 6",
    "aim": "aim: turning out, passing ahead of a runner",
    "good for": "good for: arrival, warm-up",
    "space": "space: 16 by 18 m",
    "cue": "cue: look over the shoulder before it comes",
    "fault": 'fault: turns late -> Base calls "turn"',
    "score": "score: every ball through a gate is a point",
    "caution": "caution: no ball is kicked towards somebody who fetches one",
    "note": "note: change the passing direction after two minutes",
}
FREE_LINES: dict[str, str] = {
    "swap": "Swap: who lost it goes in for the Red longest inside.",
    "restart": "Restart: a Yellow passes in.",
    "rule": "Rule: at most three touches each.",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class SentenceForm:
    """One form of sentence: `opens` are the words it begins with (none where its shape tells it)."""

    key: str
    opens: tuple[str, ...]
    shape: str
    example: str


SENTENCES: tuple[SentenceForm, ...] = (
    SentenceForm(
        key="place",
        opens=(),
        shape="NAME at X, Y is a line | holds one | is an adult | is a keeper | is passive [with the ball] "
        "[, a ball each] [, passive] [, in COLOUR] [, facing NAME] [, waiting on the left]",
        example="Base at 0, 0 is a line, a ball each.",
    ),
    SentenceForm(
        key="thing",
        opens=(),
        shape="NAME at X, Y is a cone | gate | mini goal | goal | wall [3 m wide] [, upright]",
        example="Door at 0, 10 is a gate 3 m wide, upright.",
    ),
    SentenceForm(
        key="start",
        opens=("start with",),
        shape="Start with NUMBER at PLACE, the rest at PLACE | the rest shared between PLACE and PLACE",
        example="Start with two at Base, one at Stem, the rest shared between Left and Right.",
    ),
    SentenceForm(
        key="round",
        opens=("each round", "every round"),
        shape="Each round [, PLACE and PLACE in turn | PLACE, then PLACE from half time | "
        "ROLE chooses PLACE or PLACE | the coach calls PLACE or PLACE] [(call it WORD [, the other WORD])]:",
        example="Each round, Left and Right in turn (call it Side):",
    ),
    SentenceForm(
        key="mirrored",
        opens=("change sides", "swap sides"),
        shape="Change sides at half time",
        example="Change sides at half time.",
    ),
    SentenceForm(
        key="next",
        opens=("the next round", "next round"),
        shape="The next round starts WHEN",
        example="The next round starts when Side is halfway home.",
    ),
    SentenceForm(
        key="in flight",
        opens=(),
        shape="NUMBER rounds may run at once",
        example="Two rounds may run at once.",
    ),
    SentenceForm(
        key="contest",
        opens=(),
        shape="2. Contest in W by D m, middle at X, Y: ROLE and ROLE against ROLE [, on GOAL] [, at most N s] "
        "[, counter on GATE]",
        example="2. Contest in 16 by 18 m, middle at 0, 13: Hub and Wing against Gate House, on Goal, at most 8 s.",
    ),
    SentenceForm(
        key="outcome",
        opens=(),
        shape="Scored, out or time up: WHO joins PLACE, WHO takes the ball to PLACE and joins PLACE",
        example="Scored, out or time up: Hub joins Gate House, Gate House takes the ball to Hub and joins Wing.",
    ),
    SentenceForm(
        key="rotation",
        opens=("rotation",),
        shape="Rotation: ROLE to PLACE, ROLE to PLACE with the ball | follow the pass | "
        "everyone goes back to their own place",
        example="Rotation: Base to Stem, Stem to Side, Side to Base with the ball.",
    ),
    SentenceForm(
        key="every",
        opens=("every",),
        shape="Every NUMBER rounds | minutes: ROLE to PLACE, ROLE to PLACE",
        example="Every 4 rounds: Goalie to One, One to Two, Two to Goalie.",
    ),
    SentenceForm(
        key="play",
        opens=("open play",),
        shape="Open play in W by D m [, middle at X, Y]: TEAM [and TEAM] keep it from TEAM | TEAM against TEAM "
        "on THING and THING | everyone has a ball | TEAM chase the others",
        example="Open play in 12 by 12 m: four Yellow keep it from two Red.",
    ),
    SentenceForm(
        key="odd one",
        opens=("one over", "the odd one"),
        shape="One over is neutral | joins TEAM | shares a ball | rests in turn",
        example="One over joins Yellow.",
    ),
    SentenceForm(key="bouts", opens=("bouts of",), shape="Bouts of NUMBER minutes", example="Bouts of 3 minutes."),
    SentenceForm(
        key="form or balls",
        opens=("with",),
        shape="With N to M: NUMBER copies, D m apart, mirrored | TEAM, TEAM | "
        "start with NUMBER at PLACE; With NUMBER balls",
        example="With 10 to 18: two copies, 6 m apart, mirrored.",
    ),
    SentenceForm(
        key="variant",
        opens=(*VARIANTS.values(), *VARIANT_SYNONYMS),
        shape='harder | easier | with an odd number | half the space | no keeper | few balls "WORDS": '
        "as before | as written, but CHANGE; CHANGE",
        example='harder "first time": as before, but in 1 Base passes first time.',
    ),
    SentenceForm(key="variant numbers", opens=("for",), shape="For N to M", example="For 6 to 9."),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeForm:
    """One change that a step up or down may make: `opens` are the words it begins with (none where its shape tells)."""

    key: str
    opens: tuple[str, ...]
    shape: str
    example: str


CHANGES: tuple[ChangeForm, ...] = (
    ChangeForm(key="manner", opens=(), shape="in N ROLE VERB HOW", example="in 3 Stem turns first time"),
    ChangeForm(
        key="instead",
        opens=("instead of", "instead"),
        shape="instead of N: what a numbered sentence may say",
        example="instead of 3: Stem sets it back to Base",
    ),
    ChangeForm(
        key="after",
        opens=("after",),
        shape="after N: what a numbered sentence may say",
        example="after 2: Left runs to 3, 10",
    ),
    ChangeForm(key="leave out", opens=("leave out",), shape="leave out N", example="leave out 4"),
    ChangeForm(
        key="one more",
        opens=("one more",),
        shape="one more: NAME at X, Y is passive | holds one | is a line | ...",
        example="one more: Shadow at 0, 10 is passive",
    ),
    ChangeForm(
        key="relief",
        opens=(),
        shape="NAME changes with ROLE every N rounds",
        example="Shadow changes with Left every 6 rounds",
    ),
    ChangeForm(key="shift", opens=(), shape="NAME stands at X, Y", example="Stem stands at 0, 12"),
    ChangeForm(key="resize", opens=(), shape="in W by D m", example="in 10 by 10 m"),
    ChangeForm(
        key="teams",
        opens=(),
        shape="TEAM against TEAM | TEAM keep it from TEAM | ...",
        example="five Yellow keep it from two Red",
    ),
    ChangeForm(
        key="outcome",
        opens=(),
        shape="contest in W by D m, ... | scored or out: WHO joins PLACE",
        example="scored or out: Base joins Stem",
    ),
)
CHANGE_EXAMPLES: dict[str, str] = {change.key: change.example for change in CHANGES}
EXAMPLES: dict[str, str] = {form.key: form.example for form in SENTENCES}
