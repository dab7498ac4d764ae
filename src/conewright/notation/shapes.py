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
LINES_MEAN: dict[str, str] = {
    "exercise": "the name of the exercise",
    "kind": "what sort of exercise it is; figures are compared by it",
    "for": "how many players and which ages it is for, and the best number",
    "aim": "what it works on, with commas",
    "good for": "the parts of an evening it suits",
    "space": "the ground it needs, either way round",
    "cue": "three or four words a coach calls",
    "fault": "a common fault, and behind an arrow what to say about it",
    "score": "how points are counted",
    "caution": "what must be seen to, so that nobody is hurt",
    "note": "anything else, in your own words",
    "swap": "who changes with whom in open play",
    "restart": "how the ball comes back into play",
    "rule": "a rule of open play",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class SentenceForm:
    """One form of sentence: `opens` are the words it begins with (none where its shape tells it)."""

    key: str
    opens: tuple[str, ...]
    shape: str
    example: str
    means: str


SENTENCES: tuple[SentenceForm, ...] = (
    SentenceForm(
        key="place",
        means="somebody stands here, or a line of children waits",
        opens=(),
        shape="NAME at X, Y is a line | holds one | is an adult | is a keeper | is passive [with the ball] "
        "[, a ball each] [, passive] [, in COLOUR] [, facing NAME] [, waiting on the left]",
        example="Base at 0, 0 is a line, a ball each.",
    ),
    SentenceForm(
        key="thing",
        means="kit on the ground",
        opens=(),
        shape="NAME at X, Y is a cone | gate | mini goal | goal | wall [3 m wide] [, upright]",
        example="Door at 0, 10 is a gate 3 m wide, upright.",
    ),
    SentenceForm(
        key="start",
        means="who stands where before the first round",
        opens=("start with",),
        shape="Start with NUMBER at PLACE, the rest at PLACE | the rest shared between PLACE and PLACE",
        example="Start with two at Base, one at Stem, the rest shared between Left and Right.",
    ),
    SentenceForm(
        key="round",
        means="opens the numbered steps, and says which side it is",
        opens=("each round", "every round"),
        shape="Each round [, PLACE and PLACE in turn | PLACE, then PLACE from half time | "
        "ROLE chooses PLACE or PLACE | the coach calls PLACE or PLACE] [(call it WORD [, the other WORD])]:",
        example="Each round, Left and Right in turn (call it Side):",
    ),
    SentenceForm(
        key="mirrored",
        means="at half time left becomes right",
        opens=("change sides", "swap sides"),
        shape="Change sides at half time",
        example="Change sides at half time.",
    ),
    SentenceForm(
        key="next",
        means="what the next round waits for",
        opens=("the next round", "next round"),
        shape="The next round starts WHEN",
        example="The next round starts when Side is halfway home.",
    ),
    SentenceForm(
        key="in flight",
        means="how many rounds may run at the same time",
        opens=(),
        shape="NUMBER rounds may run at once",
        example="Two rounds may run at once.",
    ),
    SentenceForm(
        key="contest",
        means="a duel or race in a box, left to the children",
        opens=(),
        shape="2. Contest in W by D m, middle at X, Y: ROLE and ROLE against ROLE [, on GOAL] [, at most N s] "
        "[, counter on GATE]",
        example="2. Contest in 16 by 18 m, middle at 0, 13: Hub and Wing against Gate House, on Goal, at most 8 s.",
    ),
    SentenceForm(
        key="outcome",
        means="who goes where when a contest ends, and who takes the ball",
        opens=(),
        shape="Scored, out or time up: WHO joins PLACE, WHO takes the ball to PLACE and joins PLACE",
        example="Scored, out or time up: Hub joins Gate House, Gate House takes the ball to Hub and joins Wing.",
    ),
    SentenceForm(
        key="rotation",
        means="who goes where after a round",
        opens=("rotation",),
        shape="Rotation: ROLE to PLACE, ROLE to PLACE with the ball | follow the pass | "
        "everyone goes back to their own place",
        example="Rotation: Base to Stem, Stem to Side, Side to Base with the ball.",
    ),
    SentenceForm(
        key="every",
        means="who goes where after so many rounds or minutes",
        opens=("every",),
        shape="Every NUMBER rounds | minutes: ROLE to PLACE, ROLE to PLACE",
        example="Every 4 rounds: Goalie to One, One to Two, Two to Goalie.",
    ),
    SentenceForm(
        key="play",
        means="a game left to the children, in a box",
        opens=("open play",),
        shape="Open play in W by D m [, middle at X, Y]: TEAM [and TEAM] keep it from TEAM | TEAM against TEAM "
        "on THING and THING | everyone has a ball | TEAM chase the others",
        example="Open play in 12 by 12 m: four Yellow keep it from two Red.",
    ),
    SentenceForm(
        key="odd one",
        means="what the one who is over does",
        opens=("one over", "the odd one"),
        shape="One over is neutral | joins TEAM | shares a ball | rests in turn",
        example="One over joins Yellow.",
    ),
    SentenceForm(
        key="bouts",
        means="how long it is played without a rest",
        opens=("bouts of",),
        shape="Bouts of NUMBER minutes",
        example="Bouts of 3 minutes.",
    ),
    SentenceForm(
        key="form or balls",
        means="how it is laid out for other numbers, or how many balls there are",
        opens=("with",),
        shape="With N to M: NUMBER copies, D m apart, mirrored | TEAM, TEAM | "
        "start with NUMBER at PLACE; With NUMBER balls",
        example="With 10 to 18: two copies, 6 m apart, mirrored.",
    ),
    SentenceForm(
        key="variant",
        means="a step up or down from the exercise: what changes",
        opens=(*VARIANTS.values(), *VARIANT_SYNONYMS),
        shape='harder | easier | with an odd number | half the space | no keeper | few balls "WORDS": '
        "as before | as written, but CHANGE; CHANGE",
        example='harder "first time": as before, but in 1 Base passes first time.',
    ),
    SentenceForm(
        key="variant numbers",
        means="for how many this step up or down is",
        opens=("for",),
        shape="For N to M",
        example="For 6 to 9.",
    ),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class ChangeForm:
    """One change that a step up or down may make: `opens` are the words it begins with (none where its shape tells)."""

    key: str
    opens: tuple[str, ...]
    shape: str
    example: str
    means: str


CHANGES: tuple[ChangeForm, ...] = (
    ChangeForm(
        key="manner",
        means="the same person does the same in another way",
        opens=(),
        shape="in N ROLE VERB HOW",
        example="in 3 Stem turns first time",
    ),
    ChangeForm(
        key="instead",
        means="another sentence in the place of a numbered one",
        opens=("instead of", "instead"),
        shape="instead of N: what a numbered sentence may say",
        example="instead of 3: Stem sets it back to Base",
    ),
    ChangeForm(
        key="after",
        means="one sentence more, behind a numbered one",
        opens=("after",),
        shape="after N: what a numbered sentence may say",
        example="after 2: Left runs to 3, 10",
    ),
    ChangeForm(
        key="leave out",
        means="one numbered sentence less",
        opens=("leave out",),
        shape="leave out N",
        example="leave out 4",
    ),
    ChangeForm(
        key="one more",
        means="one place more, and who stands there",
        opens=("one more",),
        shape="one more: NAME at X, Y is passive | holds one | is a line | ...",
        example="one more: Shadow at 0, 10 is passive",
    ),
    ChangeForm(
        key="relief",
        means="how often whoever is new changes with somebody",
        opens=(),
        shape="NAME changes with ROLE every N rounds",
        example="Shadow changes with Left every 6 rounds",
    ),
    ChangeForm(
        key="shift",
        means="a place or thing stands elsewhere",
        opens=(),
        shape="NAME stands at X, Y",
        example="Stem stands at 0, 12",
    ),
    ChangeForm(
        key="length",
        means="a bout, or what a contest lasts at most, has another length",
        opens=("bouts of", "at most"),
        shape="bouts of N minutes | s; in a contest: at most N s",
        example="bouts of 45 s",
    ),
    ChangeForm(key="resize", means="the box has another size", opens=(), shape="in W by D m", example="in 10 by 10 m"),
    ChangeForm(
        key="teams",
        means="open play with other teams",
        opens=(),
        shape="TEAM against TEAM | TEAM keep it from TEAM | ...",
        example="five Yellow keep it from two Red",
    ),
    ChangeForm(
        key="outcome",
        means="what a sentence put in needs: its contest, and what happens after it",
        opens=(),
        shape="contest in W by D m, ... | scored or out: WHO joins PLACE",
        example="scored or out: Base joins Stem",
    ),
)
CHANGE_EXAMPLES: dict[str, str] = {change.key: change.example for change in CHANGES}
EXAMPLES: dict[str, str] = {form.key: form.example for form in SENTENCES}
