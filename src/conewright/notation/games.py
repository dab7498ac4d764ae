"""A game left to the children, as it is told to them; must not know of rounds."""

import re
from collections.abc import Iterator

from conewright.model.exercise import Bib, Exercise, OpenPlay, PlayKind
from conewright.model.layout import Side, sides_for
from conewright.model.told import Question, RoleTold
from conewright.notation.amounts import capital, listed, one_line, people
from conewright.notation.spoken import either, seconds, thing_or_name

FEWEST, MOST = 2, 3
NEUTRAL, RESTS, SHARES = "neutral", "rests in turn", "shares"
OTHERS, EVERYONE = "others", "everyone"
SINGULAR = {"catchers": "a catcher", OTHERS: "one of the others"}
SAYS_SOMETHING = re.compile(
    r"\b(is|are|was|were|has|have|gets?|wins?|won|counts?|scores?|earns?|makes?|needs?|means?|takes?|starts?)\b"
)
LOST = re.compile(r"\b(lost|loses?|losing)\b")
COLOURS = {bib.value for bib in Bib}


def game_opening(exercise: Exercise, play: OpenPlay, size: int) -> tuple[str, str]:
    """Where it is played and by how many, and what it is about."""
    sides = _playing(exercise, size)
    length = f"{play.width_m:g} by {play.depth_m:g} metres"
    told = [_counted(side, first=not place) for place, side in enumerate(sides)]
    bout = f", {_bout(play.bout_s)} at a time" if play.bout_s else ""
    where = f"We play in a box of {length}{bout}"
    who = f"{where}, all {people(size)} of you." if len(sides) < 2 else f"{where}: {listed(told)}."
    return who, f"{_about(exercise, play, sides)}."


def _playing(exercise: Exercise, size: int) -> tuple[Side, ...]:
    return tuple(side for side in sides_for(exercise, size) if side.count > 0)


def _bout(bout_s: float) -> str:
    whole = bout_s / 60
    if whole != int(whole):
        return seconds(bout_s)
    return "one minute" if whole == 1 else f"{people(int(whole))} minutes"


def _counted(side: Side, *, first: bool) -> str:
    of_you = " of you" if first else ""
    count = people(side.count)
    if side.team.name == RESTS:
        return f"{count} {'rests' if side.count == 1 else 'rest'}"
    if side.team.name == SHARES:
        return f"{count} with somebody to share a ball"
    if side.team.name == NEUTRAL:
        return f"{count} for both sides"
    return f"{count}{of_you} {_team(side)}"


def _team(side: Side) -> str:
    """How the children of a side are called: "in yellow", "as catchers, in red"."""
    bib = side.team.bib.value.lower() if side.team.bib else ""
    if side.team.name in COLOURS:
        return f"in {side.team.name.lower()}"
    if side.team.name == OTHERS:
        return f"without{' a bib' if not bib else f' a job yet, in {bib}'}"
    return f"as {side.team.name}{f', in {bib}' if bib else ''}"


def _about(exercise: Exercise, play: OpenPlay, sides: tuple[Side, ...]) -> str:
    names = [_called(side) for side in _teams(sides)]
    if play.kind is PlayKind.BALL_EACH or len(names) < 2:
        return "Everybody has a ball"
    first = listed(names[: 1 + len(play.together)])
    rest = listed(names[1 + len(play.together) : 2 + len(play.together)]) or names[-1]
    one = len(play.together) == 0 and _teams(sides)[0].count == 1
    if play.kind is PlayKind.KEEP:
        return f"{capital(first)} {'keeps' if one else 'keep'} the ball away from {rest}"
    if play.kind is PlayKind.CHASE:
        balls = ", who have a ball each" if any(side.team.has_ball_each for side in sides) else ""
        return f"{capital(first)} {'chases' if one else 'chase'} {rest}{balls}"
    return f"{capital(first)} {'plays' if one else 'play'} against {rest}{_goals(exercise, play)}"


def _goals(exercise: Exercise, play: OpenPlay) -> str:
    if not play.on:
        return ""
    return f", and you score at {either(tuple(thing_or_name(exercise, name) for name in play.on))}"


def _teams(sides: tuple[Side, ...]) -> tuple[Side, ...]:
    return tuple(side for side in sides if side.team.name not in (NEUTRAL, RESTS, SHARES))


def _called(side: Side) -> str:
    return side.team.name if side.team.name in COLOURS else f"the {side.team.name}"


# --- side by side ---


def game_roles(exercise: Exercise, play: OpenPlay, size: int) -> tuple[RoleTold, ...]:
    """What each side is told; sides with the same job are told together."""
    sides = _playing(exercise, size)
    parts: dict[str, list[str]] = {}
    for side in sides:
        parts.setdefault(_job(play, side, sides), []).append(_you_are(side))
    return tuple(RoleTold(start=_together(starts), sentences=(job,)) for job, starts in parts.items())


def _you_are(side: Side) -> str:
    name = side.team.name
    if name in COLOURS:
        return f"You wear {name.lower()}"
    bib = f", in {side.team.bib.value.lower()}" if side.team.bib else ""
    known = {
        EVERYONE: "All of you",
        NEUTRAL: "You play for both sides",
        RESTS: "You rest first",
        SHARES: "You are one over",
    }
    return known.get(name, f"You are {SINGULAR.get(name, f'one of the {name}')}{bib}")


def _together(starts: list[str]) -> str:
    first, *others = starts
    if others and all(start.startswith("You wear ") for start in starts):
        return f"You wear {either(tuple(start.removeprefix('You wear ') for start in starts))}"
    return " or ".join((first, *(start[:1].lower() + start[1:] for start in others)))


def _job(play: OpenPlay, side: Side, sides: tuple[Side, ...]) -> str:
    name = side.team.name
    if name == NEUTRAL:
        return "always help the side that has the ball."
    if name == RESTS:
        return "get your breath back, and be ready to come in."
    if name == SHARES:
        return "find a mate and share one ball."
    names = [one.team.name for one in _teams(sides)]
    place = names.index(name)
    keeps = place <= len(play.together)
    if play.kind is PlayKind.BALL_EACH or len(names) < 2:
        return "each of you has a ball." if name == EVERYONE else "you have a ball of your own."
    if place > 1 + len(play.together):
        return "listen to the rules, they say what you do."
    if play.kind is PlayKind.KEEP:
        return _keeps(play, side, sides) if keeps else "win the ball."
    if play.kind is PlayKind.CHASE:
        held = ", and keep hold of your ball" if side.team.has_ball_each else ""
        return "catch the others." if keeps else f"do not get caught{held}."
    return "when you have the ball, try to score; when you have not, win it back."


def _keeps(play: OpenPlay, side: Side, sides: tuple[Side, ...]) -> str:
    mates = [one for one in _teams(sides)[: 1 + len(play.together)] if one.team.name != side.team.name]
    helped = f", together with {listed([_called(mate) for mate in mates])}" if mates else ""
    alone = side.count == 1 and not mates and not any(one.team.name == NEUTRAL for one in sides)
    if alone:
        return "keep the ball as long as you can."
    return f"keep the ball{helped}. Be free for a pass, and pass before they get to you."


# --- what holds for all ---


def game_talk(play: OpenPlay) -> tuple[str, ...]:
    """Rules, who changes with whom, and how it goes on, each a sentence in the coach's own words."""
    told = [capital(sentence(rule)) for rule in play.rules]
    lead = "When the ball is lost" if _is_of_loss(play) else "Changing over"
    told += [f"{lead}: {sentence(play.swap)}"] if play.swap else []
    told += [f"{_out(play)}: {sentence(play.restart)}"] if play.restart else []
    return tuple(told)


def _is_of_loss(play: OpenPlay) -> bool:
    """Whether the words on changing over say what happens to who loses the ball."""
    return play.kind is PlayKind.KEEP and LOST.search(play.swap.lower()) is not None


def _out(play: OpenPlay) -> str:
    return "To start again" if play.kind in (PlayKind.KEEP, PlayKind.CHASE) else "When the ball is out"


def sentence(words: str) -> str:
    """A coach's words with a full stop, on one line."""
    told = one_line(words)
    return told if told.endswith((".", "!", "?")) else f"{told}."


def score_sentence(score: str) -> str:
    """What is counted: as it stands where it is a sentence, else led by one."""
    words = one_line(score)
    if not words:
        return ""
    if words.lower().startswith("how "):
        return sentence(f"We count {words}")
    if SAYS_SOMETHING.search(words.lower()) or words[-1:] in ".!?":
        return sentence(capital(words))
    counted = words.split()[0].lower().endswith("s") and not words.split()[0].lower().endswith("ss")
    return sentence(f"We count {words}" if counted else f"What counts: {words}")


# --- questions ---


def game_questions(exercise: Exercise, play: OpenPlay, size: int) -> tuple[Question, ...]:
    """Two or three questions about a game."""
    return tuple(_questions(exercise, play, size))[:MOST]


def _questions(exercise: Exercise, play: OpenPlay, size: int) -> Iterator[Question]:
    if _is_of_loss(play):
        yield Question(asks="Who goes in when the ball is lost?", answer=sentence(capital(play.swap)))
    if play.restart:
        asks = "How do we start again?" if _out(play) == "To start again" else "What happens when the ball is out?"
        yield Question(asks=asks, answer=sentence(capital(play.restart)))
    if exercise.score:
        yield Question(asks="What do we count?", answer=score_sentence(exercise.score))
    if play.swap and not _is_of_loss(play):
        yield Question(asks="Who changes with whom?", answer=sentence(capital(play.swap)))
    for rule in play.rules[:1]:
        yield Question(asks="What is the rule?", answer=sentence(capital(rule)))
    who, about = game_opening(exercise, play, size)
    asks = "How many balls are there?" if about.startswith("Everybody") else "Who plays against whom?"
    yield Question(asks=asks, answer=about)
    yield Question(asks="Where do we play?", answer=who)
