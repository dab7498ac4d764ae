"""Every problem that reading can find: why it matters, a text that has it, the text mended; must not know who shows it.

An example is a stretch of an exercise; `Part.before` and `Part.after` are what stands round it. The bad one gives its
code and no other, the good one reads without a problem.
"""

from dataclasses import dataclass

HEAD = "exercise: Example\nkind: passing pattern\nfor 4 to 12 players\n"
GROUND = (
    "Base at 0, 0 is a line, a ball each.\nStem at 0, 8 holds one.\nLeft at -6, 15 and Right at 6, 15 are lines.\n"
    "Mast at 2, 6 is a cone.\nDoor at 0, 10 is a gate.\nGoal at 0, 22 is a goal.\nBench at 4, 10 is a wall.\n"
)
OPENING = "Each round, Left and Right in turn (call it Side):\n"
STEPS = (
    "1. Base passes firmly to Stem, then runs to Stem.\n2. Stem turns in two touches, then passes ahead of Side.\n"
    "3. Side dribbles to the end of Base.\n"
)
PLAY = "Open play in 12 by 12 m: four Yellow keep it from two Red.\n"


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """A problem by its code, why it is told, and a bad and a good example."""

    code: str
    why: str
    bad: str
    good: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """Problems of one part of a text, and what stands before and after their examples."""

    title: str
    entries: tuple[Entry, ...]
    before: str = ""
    after: str = ""

    def whole(self, example: str) -> str:
        """The text an example stands in."""
        return f"{self.before}{example}{self.after}"


_FIRST_LINES = (
    Entry(
        code="no-name",
        why="An exercise is found, planned and printed by its name.",
        bad="kind: rondo\nfor 6 players\n",
        good="exercise: Four corners\nkind: rondo\nfor 6 players\n",
    ),
    Entry(
        code="no-kind",
        why="What is usual for passes, waiting and contacts depends on the kind.",
        bad="exercise: Four corners\nfor 6 players\n",
        good="exercise: Four corners\nkind: rondo\nfor 6 players\n",
    ),
    Entry(
        code="no-numbers",
        why="For how many it is decides when it is chosen, and how often it is laid out.",
        bad="exercise: Four corners\nkind: rondo\n",
        good="exercise: Four corners\nkind: rondo\nfor 6 players\n",
    ),
    Entry(
        code="unknown-kind",
        why="Only a kind that is known has figures to compare with.",
        bad="exercise: Four corners\nkind: rondoo\nfor 6 players\n",
        good="exercise: Four corners\nkind: rondo\nfor 6 players\n",
    ),
    Entry(
        code="unknown-part",
        why="An evening has parts with names, and an exercise is looked for by them.",
        bad="exercise: Four corners\nkind: rondo\nfor 6 players\ngood for: arival\n",
        good="exercise: Four corners\nkind: rondo\nfor 6 players\ngood for: arrival\n",
    ),
    Entry(
        code="unknown-line",
        why="What stands behind a word nobody knows would be lost.",
        bad="exercise: Four corners\nkind: rondo\nfor 6 players\nequipment: four cones\n",
        good="exercise: Four corners\nkind: rondo\nfor 6 players\nnote: four cones\n",
    ),
    Entry(
        code="empty-line",
        why="A line that says nothing was begun and forgotten.",
        bad="exercise: Four corners\nkind: rondo\nfor 6 players\naim:\n",
        good="exercise: Four corners\nkind: rondo\nfor 6 players\naim: passing\n",
    ),
    Entry(
        code="said-twice",
        why="Of two that say different things only one can hold.",
        bad="exercise: Four corners\nkind: rondo\nfor 6 players\nfor 8 players\n",
        good="exercise: Four corners\nkind: rondo\nfor 6 to 8 players\n",
    ),
    Entry(
        code="numbers-upside-down",
        why="The smaller number comes first.",
        bad="exercise: Four corners\nkind: rondo\nfor 8 to 6 players\n",
        good="exercise: Four corners\nkind: rondo\nfor 6 to 8 players\n",
    ),
    Entry(
        code="ages-upside-down",
        why="The younger age comes first.",
        bad="exercise: Four corners\nkind: rondo\nfor 6 players, under 13 to under 9\n",
        good="exercise: Four corners\nkind: rondo\nfor 6 players, under 9 to under 13\n",
    ),
    Entry(
        code="best-outside",
        why="The best number is one of those it is for.",
        bad="exercise: Four corners\nkind: rondo\nfor 6 to 8 players; best with 9\n",
        good="exercise: Four corners\nkind: rondo\nfor 6 to 8 players; best with 7\n",
    ),
    Entry(
        code="bad-size",
        why="A length of nothing, or of half a kilometre, is a slip.",
        bad="exercise: Four corners\nkind: rondo\nfor 6 players\nspace: 0 by 12 m\n",
        good="exercise: Four corners\nkind: rondo\nfor 6 players\nspace: 10 by 12 m\n",
    ),
)
_GROUND = (
    Entry(
        code="no-full-stop",
        why="Where a sentence ends decides what belongs to it.",
        bad="Base at 0, 0 is a line\nStem at 0, 8 holds one.\n",
        good="Base at 0, 0 is a line.\nStem at 0, 8 holds one.\n",
    ),
    Entry(
        code="unclear-sentence",
        why="A sentence of a known form has something that does not belong there, or lacks something.",
        bad="Base at 0 is a line.\n",
        good="Base at 0, 0 is a line.\n",
    ),
    Entry(
        code="unknown-word",
        why="A word is nearly one that is known. It is read as that one, and should be written so.",
        bad="Base at 0, 0 is a lnie.\n",
        good="Base at 0, 0 is a line.\n",
    ),
    Entry(
        code="unknown-sentence",
        why="A sentence of no known form is left out.",
        bad="Base at 0, 0 is a line.\nPut four cones out.\n",
        good="Base at 0, 0 is a line.\nnote: put four cones out\n",
    ),
    Entry(
        code="name-twice",
        why="One name for two would leave open which is meant.",
        bad="Base at 0, 0 is a line.\nBase at 0, 8 holds one.\n",
        good="Base at 0, 0 is a line.\nStem at 0, 8 holds one.\n",
    ),
    Entry(
        code="unclear-name",
        why="A name that is a word of the sentences cannot be told from them.",
        bad="Through at 0, 0 is a line.\n",
        good="Thorn at 0, 0 is a line.\n",
    ),
    Entry(
        code="too-far",
        why="No ground is that large: a comma or a point is wrong.",
        bad="Base at 0, 1200 is a line.\n",
        good="Base at 0, 12 is a line.\n",
    ),
    Entry(
        code="impossible-count",
        why="So many, or half a child, cannot be.",
        bad="Base at 0, 0 is a line with 0 balls.\n",
        good="Base at 0, 0 is a line with 6 balls.\n",
    ),
    Entry(
        code="not-a-place",
        why="Children stand at places; at a cone or gate nobody waits.",
        bad="Base at 0, 0 is a line.\nMast at 2, 6 is a cone.\nStart with one at Mast, the rest at Base.\n",
        good="Base at 0, 0 is a line.\nStem at 2, 6 holds one.\nStart with one at Stem, the rest at Base.\n",
    ),
)
_OPENINGS = (
    Entry(
        code="no-colon",
        why="The steps follow behind a colon.",
        bad="Each round\n1. Base passes to Stem.\n",
        good="Each round:\n1. Base passes to Stem.\n",
    ),
    Entry(
        code="no-round",
        why="The sentence that opens the round may say which sides take turns.",
        bad="1. Base passes to Stem.\n",
        good="Each round:\n1. Base passes to Stem.\n",
    ),
    Entry(
        code="nothing-happens",
        why="Places alone make no exercise.",
        bad="Each round:\n",
        good="Each round:\n1. Base passes to Stem.\n",
    ),
    Entry(
        code="sides-word-taken",
        why="The word for the sides must not be the name of one place.",
        bad="Each round, Left and Right in turn (call it Stem):\n1. Base passes to Stem.\n",
        good="Each round, Left and Right in turn (call it Side):\n1. Base passes to Stem.\n",
    ),
    Entry(
        code="mixed-sides",
        why="What can be done with a place and with a thing differs: one word cannot stand for both.",
        bad="Each round, Left and Mast in turn (call it Side):\n1. Base runs to Side.\n",
        good="Each round, Left and Right in turn (call it Side):\n1. Base runs to Side.\n",
    ),
    Entry(
        code="several-others",
        why="Only of two sides there is one other.",
        bad="Each round, Base calls Left, Right or Stem (call it Side, the other Rest):\n1. Base passes to Side.\n",
        good="Each round, Base calls Left or Right (call it Side, the other Rest):\n1. Base passes to Side.\n",
    ),
)
_STEPS = (
    Entry(
        code="unknown-name",
        why="Nobody knows where somebody without a place stands.",
        bad="1. Base passes to Stemm.\n",
        good="1. Base passes to Stem.\n",
    ),
    Entry(
        code="cannot-act",
        why="Somebody who stands at a place acts, and a thing does not.",
        bad="1. Mast passes to Stem.\n",
        good="1. Base passes to Stem.\n",
    ),
    Entry(
        code="no-receiver",
        why="At a cone nobody gets the ball.",
        bad="1. Base passes to Mast.\n",
        good="1. Base passes to 2, 6.\n",
    ),
    Entry(
        code="not-a-goal",
        why="Only a goal or a gate can be scored in.",
        bad="1. Base shoots at Mast.\n",
        good="1. Base shoots at Goal.\n",
    ),
    Entry(
        code="not-a-gate",
        why="One goes through a gate and round a cone.",
        bad="1. Base dribbles through Mast to Stem.\n",
        good="1. Base dribbles round Mast to Stem.\n",
    ),
    Entry(
        code="not-a-wall",
        why="A ball comes back from a wall and from nothing else.",
        bad="1. Base passes against Door.\n",
        good="1. Base passes against Bench.\n",
    ),
    Entry(
        code="not-a-spot",
        why="A ball ahead of somebody meets the run at one spot, in each round the same.",
        bad="1. Base passes ahead of Stem to Side.\n",
        good="1. Base passes ahead of Stem to 3, 12.\n",
    ),
    Entry(
        code="no-pass",
        why="Who has passed to nobody cannot follow the pass.",
        bad="1. Base follows the pass.\n",
        good="1. Base passes to Stem, then follows the pass.\n",
    ),
    Entry(
        code="idle-manner",
        why="Touches, feet and weight belong to an act that plays a ball.",
        bad="1. Base runs to Stem first time.\n",
        good="1. Base runs to Stem at full speed.\n",
    ),
    Entry(
        code="two-together",
        why="Each act has one person, so that it is clear who has the ball.",
        bad="1. Left and Right run to Stem.\n",
        good="1. Left runs to Stem; Right runs to Stem.\n",
    ),
    Entry(
        code="bad-time",
        why="No time at all, or hours, are a slip.",
        bad="1. Base waits 0 s.\n",
        good="1. Base waits 2 s.\n",
    ),
    Entry(
        code="no-such-step",
        why="A start after a step that is not there never comes.",
        bad="1. Base passes to Stem after 4.\n",
        good="1. Base passes to Stem when Stem is ready.\n",
    ),
    Entry(
        code="step-number",
        why="Steps are named by their numbers, so they have to be in order.",
        bad="1. Base passes to Stem.\n3. Stem turns.\n",
        good="1. Base passes to Stem.\n2. Stem turns.\n",
    ),
    Entry(
        code="no-step-stop",
        why="A number without its full stop may be a count.",
        bad="1 Base passes to Stem.\n",
        good="1. Base passes to Stem.\n",
    ),
    Entry(
        code="no-step-number",
        why="A sentence on a line of its own belongs to no step.",
        bad="1. Base passes to Stem.\nStem turns.\n",
        good="1. Base passes to Stem.\n2. Stem turns.\n",
    ),
    Entry(
        code="empty-step",
        why="A number with nothing behind it was begun and forgotten.",
        bad="1. Base passes to Stem.\n2.\n",
        good="1. Base passes to Stem.\n2. Stem turns.\n",
    ),
)
_AFTER = (
    Entry(
        code="no-contest",
        why="Endings belong to a contest.",
        bad="Scored or out: Base joins Stem.\n",
        good="4. Contest in 9 by 9 m, middle at 0, 9: Base against Stem.\nScored or out: Base joins Stem.\n",
    ),
    Entry(
        code="not-a-defender",
        why="Who wins the ball is one of those who defend.",
        bad="4. Contest in 9 by 9 m, middle at 0, 9: Base against Stem.\nBase wins it: Base joins Stem.\n",
        good="4. Contest in 9 by 9 m, middle at 0, 9: Base against Stem.\nStem wins it: Base joins Stem.\n",
    ),
    Entry(
        code="no-mover",
        why="In a rotation somebody brings the ball.",
        bad="Rotation: Base to Stem, the ball goes to Base.\n",
        good="Rotation: Base to Stem, Side to Base with the ball.\n",
    ),
    Entry(
        code="no-open-play",
        why="Bouts, balls, rules and whoever is over belong to open play.",
        bad="Bouts of 3 minutes.\n",
        good="Open play in 12 by 12 m: four Yellow keep it from two Red.\nBouts of 3 minutes.\n",
    ),
    Entry(
        code="no-variant",
        why="Other numbers belong to a step up or down, or to the exercise.",
        bad="Two rounds may run at once. For 6 to 9.\n",
        good='harder "softly": as before, but in 1 Base passes softly. For 6 to 9.\n',
    ),
)
_VARIANTS = (
    Entry(
        code="no-change",
        why="A step up or down is what changes.",
        bad='harder "first time": as before, but in 2 Stem turns.\n',
        good='harder "first time": as before, but in 2 Stem turns first time.\n',
    ),
    Entry(
        code="unknown-change",
        why="A change that is not understood is left out.",
        bad='harder "first time": as before, but Stem turns first time.\n',
        good='harder "first time": as before, but in 2 Stem turns first time.\n',
    ),
    Entry(
        code="no-such-act",
        why="Only what is done in a step can be done in another way.",
        bad='harder "first time": as before, but in 3 Stem turns first time.\n',
        good='harder "first time": as before, but in 2 Stem turns first time.\n',
    ),
    Entry(
        code="not-manner",
        why="Where else a ball or a run goes is another sentence, not another way of doing the same.",
        bad='harder "to the side": as before, but in 1 Base passes softly to Left.\n',
        good='harder "to the side": as before, but instead of 1: Base passes softly to Left.\n',
    ),
    Entry(
        code="not-new",
        why="Who changes with somebody is the one that the step brings.",
        bad='harder "closed down": as before, but Stem changes with Left every 6 rounds.\n',
        good='harder "closed down": as before, but one more: Shadow at 0, 10 is passive; '
        "Shadow changes with Left every 6 rounds.\n",
    ),
    Entry(
        code="no-box",
        why="Only a contest and open play are played in a box.",
        bad='harder "narrow": as before, but in 10 by 10 m.\n',
        good='harder "narrow": as before, but Left stands at -3, 15; Right stands at 3, 15.\n',
    ),
)
_PLAYS = (
    Entry(
        code="other-meeting",
        why="Another game is another exercise, not a step up or down.",
        bad='harder "even": as before, but four Yellow against four Red.\n',
        good='harder "even": as before, but four Yellow keep it from four Red.\n',
    ),
)
PARTS: tuple[Part, ...] = (
    Part(title="The first lines", entries=_FIRST_LINES, after=PLAY),
    Part(title="Places, things and the start", entries=_GROUND, before=HEAD, after=PLAY),
    Part(title="How a round opens", entries=_OPENINGS, before=HEAD + GROUND),
    Part(title="Steps", entries=_STEPS, before=HEAD + GROUND + OPENING),
    Part(title="Behind the steps", entries=_AFTER, before=HEAD + GROUND + OPENING + STEPS),
    Part(title="Steps up and down", entries=_VARIANTS, before=HEAD + GROUND + OPENING + STEPS),
    Part(title="Steps up and down of open play", entries=_PLAYS, before=HEAD + PLAY),
)
CODES: tuple[str, ...] = tuple(entry.code for part in PARTS for entry in part.entries)
