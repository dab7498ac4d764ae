"""The words of the notation as tables, shared by the reader, the printer and the pages about it.

Another language is another set of these tables. A phrase with `{who}`, `{name}` or `{step}` has a hole in it; the first
phrase of an entry is the one the printer writes, the others are understood. Must not know how a text is taken apart.
"""

from dataclasses import dataclass

from conewright.model.exercise import (
    Bib,
    Ending,
    Event,
    Foot,
    Holds,
    Pace,
    PlayKind,
    SideOrder,
    ThingKind,
    Verb,
    Weight,
)
from conewright.model.session import Job
from conewright.model.variant import VariantKind

UNITS = (
    "one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen "
    "eighteen nineteen twenty"
).split()
NUMBERS: dict[str, int] = {
    **{word: number for number, word in enumerate(UNITS, start=1)},
    **{f"twenty-{word}": 20 + number for number, word in enumerate(UNITS[:9], start=1)},
    "thirty": 30,
}
NUMBER_WORDS: dict[int, str] = {number: word for word, number in NUMBERS.items()}

METRES: dict[str, float] = {
    "m": 1.0,
    "metre": 1.0,
    "metres": 1.0,
    "meter": 1.0,
    "meters": 1.0,
    "yard": 0.914,
    "yards": 0.914,
    "yd": 0.914,
    "yds": 0.914,
}
SECONDS: dict[str, float] = {
    "s": 1.0,
    "sec": 1.0,
    "second": 1.0,
    "seconds": 1.0,
    "min": 60.0,
    "minute": 60.0,
    "minutes": 60.0,
}

COLOURS: dict[str, Bib] = {bib.value.lower(): bib for bib in Bib}
JOBS: tuple[str, ...] = tuple(job.value for job in Job)
JOB_SYNONYMS: dict[str, str] = {
    "warm up": "warm-up",
    "warmup": "warm-up",
    "main work": "main",
    "opposed work": "opposed",
    "the game": "game",
    "closing": "close",
    "the close": "close",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class VerbWord:
    """How a verb is written: `phrase` as in "Base passes", `base` as in "to pass"; `pace` goes into the manner.

    `shape` is what may follow it and `means` what is done, for hints and pages.
    """

    verb: Verb
    phrase: str
    base: str
    shape: str
    example: str
    means: str
    pace: Pace | None = None
    also: tuple[str, ...] = ()


_KICK = "to NAME | ahead of NAME [to X, Y] | to X, Y"
_MOVE = "[round NAME] [and through GATE] to NAME | to the end of NAME | to X, Y | home | 3 m towards NAME"
VERBS: tuple[VerbWord, ...] = (
    VerbWord(
        verb=Verb.PASS,
        phrase="passes",
        means="plays the ball to feet, ahead of somebody, to a point or against a wall",
        base="pass",
        also=("plays", "plays it", "plays the ball", "play"),
        shape=f"[firmly | softly] {_KICK} | against WALL",
        example="Base passes firmly to Stem",
    ),
    VerbWord(
        verb=Verb.SET_BACK,
        phrase="sets it back",
        means="a first-time pass back to whoever played it",
        base="set it back",
        also=("sets the ball back", "sets back", "lays it back", "lays it off"),
        shape="to NAME",
        example="Stem sets it back to Base",
    ),
    VerbWord(
        verb=Verb.CROSS,
        phrase="crosses",
        means="a lofted ball from the side, ahead of somebody or to a point",
        base="cross",
        also=("crosses it", "crosses the ball"),
        shape=_KICK,
        example="Wing crosses ahead of Hub",
    ),
    VerbWord(
        verb=Verb.THROW,
        phrase="throws",
        means="plays the ball by hand",
        base="throw",
        also=("throws it", "throws the ball", "rolls it"),
        shape="to NAME",
        example="Coach throws to Stem",
    ),
    VerbWord(
        verb=Verb.SHOOT,
        phrase="shoots",
        means="at a goal or gate; fetches the own shot where nobody else does",
        base="shoot",
        also=("finishes",),
        shape="at GOAL",
        example="Stem shoots at Goal",
    ),
    VerbWord(
        verb=Verb.DRIBBLE,
        phrase="dribbles",
        means="takes the ball along at the feet",
        base="dribble",
        also=("drives", "carries it", "carries the ball"),
        shape=_MOVE,
        example="Side dribbles to the end of Base round the outside",
    ),
    VerbWord(
        verb=Verb.RUN,
        phrase="runs",
        means="goes somewhere without the ball",
        base="run",
        also=("goes", "moves", "go", "move"),
        shape=_MOVE,
        example="Base runs to Stem",
    ),
    VerbWord(
        verb=Verb.RUN,
        phrase="walks",
        means="goes somewhere at walking pace",
        base="walk",
        pace=Pace.WALK,
        shape=_MOVE,
        example="Base walks home",
    ),
    VerbWord(
        verb=Verb.RUN,
        phrase="jogs",
        means="goes somewhere at an easy run",
        base="jog",
        pace=Pace.JOG,
        shape=_MOVE,
        example="Base jogs to Stem",
    ),
    VerbWord(
        verb=Verb.RUN,
        phrase="sprints",
        means="goes somewhere at full speed",
        base="sprint",
        pace=Pace.SPRINT,
        shape=_MOVE,
        example="Base sprints round Mast to Stem",
    ),
    VerbWord(
        verb=Verb.CHECK,
        phrase="checks away",
        means="a step away from the ball before showing for it, 2 m where nothing is said",
        base="check away",
        also=("checks off", "checks"),
        shape="[3 m]",
        example="Stem checks away",
    ),
    VerbWord(
        verb=Verb.SHOW,
        phrase="shows",
        means="back to the own place after a check, else a step towards the ball",
        base="show",
        also=("shows for the ball", "shows for it"),
        shape="",
        example="Stem shows",
    ),
    VerbWord(
        verb=Verb.TURN,
        phrase="turns",
        means="turns with the ball on the spot",
        base="turn",
        also=("turns out", "turns with the ball", "turns with it", "turn out"),
        shape="[in two touches]",
        example="Stem turns in two touches",
    ),
    VerbWord(
        verb=Verb.FETCH,
        phrase="fetches the ball",
        means="goes to where the ball lies and brings it under control",
        base="fetch the ball",
        also=("fetches it", "collects the ball"),
        shape="",
        example="Stem fetches the ball",
    ),
    VerbWord(
        verb=Verb.CALL,
        phrase="calls",
        means="gives a signal in words",
        base="call",
        also=("shouts",),
        shape='"turn"',
        example='Base calls "turn"',
    ),
    VerbWord(
        verb=Verb.WAIT,
        phrase="waits",
        means="does nothing for so many seconds",
        base="wait",
        also=("waits for",),
        shape="2 s",
        example="Stem waits 2 s",
    ),
    VerbWord(
        verb=Verb.TASK,
        phrase="does",
        means="a small named task, for so many seconds where that is said",
        base="do",
        shape='"ten toe taps" [for 10 s]',
        example='Stem does "ten toe taps" for 10 s',
    ),
)
FOLLOW_PHRASES = tuple(f"follows {whose} pass" for whose in ("the", "the own", "his", "her", "their", "its", "own"))

WEIGHTS: dict[Weight, str] = {Weight.FIRM: "firmly", Weight.SOFT: "softly"}
FEET: dict[Foot, str] = {
    Foot.LEFT: "with the left foot",
    Foot.RIGHT: "with the right foot",
    Foot.WEAK: "with the weaker foot",
}
PACES: dict[Pace, str] = {
    Pace.WALK: "walking",
    Pace.JOG: "jogging",
    Pace.RUN: "at a run",
    Pace.SPRINT: "at full speed",
}
LOFTED = "lofted"
OUTSIDE = "round the outside"
FIRST_TIME = "first time"
MANNER_SYNONYMS: dict[str, str] = {
    "in one touch": FIRST_TIME,
    "at the first touch": FIRST_TIME,
    "firm": "firmly",
    "hard": "firmly",
    "soft": "softly",
    "with the left": "with the left foot",
    "with the right": "with the right foot",
    "with the weak foot": "with the weaker foot",
    "in the air": LOFTED,
    "around the outside": OUTSIDE,
    "sprinting": "at full speed",
    "at walking pace": "walking",
    "at a walk": "walking",
    "at a jog": "jogging",
    "running": "at a run",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class TriggerForm:
    """How a start is written: `alone` with no delay, `clause` behind "1 s after"; "when" may lead a clause."""

    event: Event
    alone: str
    clause: str
    means: str
    also: tuple[str, ...] = ()


TRIGGERS: tuple[TriggerForm, ...] = (
    TriggerForm(
        event=Event.RELEASED,
        alone="when {who} passes",
        means="as the ball leaves the foot or hand",
        clause="{who} passes",
        also=("{who} plays", "{who} plays it", "{who} crosses", "{who} throws", "{who} sets it back", "{who} kicks"),
    ),
    TriggerForm(
        event=Event.CONTROLLED,
        alone="when {who} has the ball",
        means="as the ball is under control",
        clause="{who} has the ball",
        also=("{who} gets the ball", "{who} has it", "{who} 's first touch"),
    ),
    TriggerForm(
        event=Event.SHOT, alone="when {who} shoots", means="as the ball leaves the foot", clause="{who} shoots"
    ),
    TriggerForm(
        event=Event.OVER,
        alone="when {who} 's shot is over",
        means="when the ball has gone in or past and lies still",
        clause="{who} 's shot is over",
    ),
    TriggerForm(
        event=Event.ARRIVED,
        alone="when {who} reaches {name}",
        means="at the end of that movement",
        clause="{who} reaches {name}",
    ),
    TriggerForm(
        event=Event.HALFWAY,
        alone="when {who} is halfway home",
        means="in the middle of the way home",
        clause="{who} is halfway home",
        also=("{who} is half way home", "{who} is halfway"),
    ),
    TriggerForm(
        event=Event.ARRIVED,
        alone="when {who} is home",
        means="back at the own place or line",
        clause="{who} is home",
        also=("{who} arrives",),
    ),
    TriggerForm(
        event=Event.PASSED,
        alone="when {who} is past {name}",
        means="as the run comes level with it",
        clause="{who} is past {name}",
        also=("{who} is level with {name}",),
    ),
    TriggerForm(
        event=Event.READY,
        alone="when {who} is ready",
        means="standing at the place, free to act",
        clause="{who} is ready",
    ),
    TriggerForm(
        event=Event.STARTED,
        alone="when {who} starts",
        means="with the first movement of the round",
        clause="{who} starts",
        also=("{who} goes", "{who} runs", "{who} dribbles", "{who} sets off", "{who} checks away", "{who} moves"),
    ),
    TriggerForm(
        event=Event.STEP,
        alone="after {step}",
        means="when everything in that step is done",
        clause="step {step}",
        also=("{step}",),
    ),
    TriggerForm(
        event=Event.BACK,
        alone="when the ball is back at {name}",
        means="when it is there to be played again",
        clause="the ball is back at {name}",
        also=("the ball is at {name}",),
    ),
    TriggerForm(
        event=Event.BOX_CLEAR,
        alone="when the box is clear",
        means="when the contest is over and the box is empty",
        clause="the box is clear",
        also=("the box is empty",),
    ),
    TriggerForm(
        event=Event.CALL,
        alone="on the coach 's call",
        means="when the coach gives the signal",
        clause="the coach calls",
        also=("the coach 's call", "the call"),
    ),
)
AT_ONCE = "at once"


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """Who stands at a place, as one phrase says it."""

    holds: Holds = Holds.ONE
    adult: bool = False
    keeper: bool = False
    passive: bool = False


HOLDS: dict[str, Standing] = {
    "is a line": Standing(holds=Holds.LINE),
    "holds one": Standing(),
    "is an adult": Standing(adult=True),
    "is a keeper": Standing(keeper=True),
    "is a line of keepers": Standing(holds=Holds.LINE, keeper=True),
    "is an adult in goal": Standing(adult=True, keeper=True),
    "is passive": Standing(passive=True),
}
HOLDS_OF_SEVERAL: dict[str, str] = {
    "is a line": "are lines",
    "holds one": "hold one each",
    "is an adult": "are adults",
    "is a keeper": "are keepers",
    "is a line of keepers": "are lines of keepers",
    "is an adult in goal": "are adults in goal",
    "is passive": "are passive",
}
HOLDS_SYNONYMS: dict[str, str] = {
    "is a queue": "is a line",
    "are queues": "is a line",
    "hold one": "holds one",
    "holds one each": "holds one",
    "holds one player": "holds one",
    "is one player": "holds one",
    "is for one": "holds one",
    "is the coach": "is an adult",
    "is a helper": "is an adult",
    "is the keeper": "is a keeper",
    "is a passive opponent": "is passive",
    "is a passive defender": "is passive",
}
THINGS: dict[str, ThingKind] = {
    "cone": ThingKind.CONE,
    "gate": ThingKind.GATE,
    "mini goal": ThingKind.MINI_GOAL,
    "goal": ThingKind.GOAL,
    "wall": ThingKind.WALL,
}
THING_SYNONYMS: dict[str, str] = {"pole": "cone", "marker": "cone", "small goal": "mini goal", "full goal": "goal"}
DEFAULT_WIDTH_M: dict[ThingKind, float] = {
    ThingKind.CONE: 0.0,
    ThingKind.GATE: 2.0,
    ThingKind.MINI_GOAL: 1.5,
    ThingKind.GOAL: 5.0,
    ThingKind.WALL: 2.0,
}
PASSIVE = "passive"
WAITS: dict[str, str] = {"left": "waiting on the left", "right": "waiting on the right", "behind": "waiting behind"}

MEETINGS: dict[PlayKind, tuple[str, ...]] = {  # between the teams of open play: one, several, and also understood
    PlayKind.KEEP: ("keep it from", "keeps it from", "keep the ball from", "keeps the ball from"),
    PlayKind.GAME: ("against",),
    PlayKind.CHASE: ("chase", "chases", "catch", "catches"),
}

CHOICES: dict[SideOrder, tuple[str, ...]] = {  # who decides on the side stands before; the first phrase is written
    SideOrder.CHOICE: ("chooses", "picks"),
    SideOrder.CALL: ("calls", "names"),
}
COACH = "the coach"

VARIANTS: dict[VariantKind, str] = {
    VariantKind.HARDER: "harder",
    VariantKind.EASIER: "easier",
    VariantKind.ODD_NUMBER: "with an odd number",
    VariantKind.HALF_THE_SPACE: "half the space",
    VariantKind.NO_KEEPER: "no keeper",
    VariantKind.FEW_BALLS: "few balls",
}
VARIANT_SYNONYMS: dict[str, VariantKind] = {
    "with odd numbers": VariantKind.ODD_NUMBER,
    "in half the space": VariantKind.HALF_THE_SPACE,
    "on half the space": VariantKind.HALF_THE_SPACE,
    "without a keeper": VariantKind.NO_KEEPER,
    "with no keeper": VariantKind.NO_KEEPER,
    "with few balls": VariantKind.FEW_BALLS,
}
BASES: dict[str, bool] = {"as before": True, "as written": False}  # does it stand on the step below it?

ENDINGS: dict[Ending, str] = {
    Ending.SCORED: "scored",
    Ending.OUT: "out",
    Ending.WON: "won",
    Ending.TIME_UP: "time up",
}
MOVERS: dict[str, str] = {  # the word the record holds, and how it is written
    "winner": "the winner",
    "loser": "who lost it",
    "scorer": "the scorer",
    "other": "the other",
}
MOVER_SYNONYMS: dict[str, str] = {"who won it": "winner", "the loser": "loser", "who scored": "scorer"}
