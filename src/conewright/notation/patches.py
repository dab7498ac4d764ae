"""One change that a step up or down makes: "in 3 Stem turns first time"; must not know what has to be there for it."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from itertools import pairwise

from conewright.model.exercise import Exercise, Manner, Step
from conewright.model.variant import (
    AfterStep,
    ChangeManner,
    InsteadOf,
    LeaveOut,
    OneMore,
    OtherLength,
    OtherTeams,
    Patch,
    Resize,
    Shift,
)
from conewright.notation.acts import acts, in_another_way
from conewright.notation.boxes import contest, meeting, others, tell_same_team
from conewright.notation.cursor import Cursor, indexed
from conewright.notation.lexer import NUMBER, WORD, Token
from conewright.notation.measures import point, seconds, size_m
from conewright.notation.moves import outcome, relief, rotation
from conewright.notation.places import one_place
from conewright.notation.sentences import form_of
from conewright.notation.shapes import CHANGE_EXAMPLES, CHANGES
from conewright.notation.vocabulary import NEVER_NAMES
from conewright.notation.words import MEETINGS, NUMBERS

_FIXED = {opener: change.key for change in CHANGES for opener in change.opens}
_OPENERS = indexed(_FIXED)
_MEETS = frozenset(phrase.split()[0] for phrases in MEETINGS.values() for phrase in phrases) | {"have", "has"}
_STARTS = frozenset(("when", "once", "after", "on", "at"))  # what may begin the start of an act
_LONGEST_NAME = 6  # words
_WHOLE = frozenset(("instead", "after", "outcome", "contest"))  # changes that hold a sentence, in which ";" may stand


def parts_of(tokens: tuple[Token, ...]) -> tuple[tuple[Token, ...], ...]:
    """The changes of a step up or down: parted by ";", but not by one that stands inside a sentence a change holds."""
    marks = [at for at, token in enumerate(tokens) if token.lower == ";"]
    found: list[tuple[Token, ...]] = []
    start = 0
    for at, following in pairwise((*marks, len(tokens))):
        if not _holds_sentence(tokens[start:at]) or change_key(tokens[at + 1 : following]):
            found.append(tokens[start:at])
            start = at + 1
    return tuple(part for part in (*found, tokens[start:]) if part)


def _holds_sentence(tokens: tuple[Token, ...]) -> bool:
    """True for a change in which ";" may part clauses, also where its beginning is a slip."""
    key = change_key(tokens)
    return key in _WHOLE or (key == "" and any(token.lower == ":" for token in tokens[:5]))


def change_key(tokens: tuple[Token, ...]) -> str:
    """Which change in `shapes.CHANGES` some tokens begin; "for" for its own numbers, "" where they begin none."""
    if not tokens:
        return ""
    tokens = (tokens[0], *tokens[2:]) if [token.lower for token in tokens[1:2]] == ["step"] else tokens
    first, second = (token.lower for token in (*tokens, tokens[0])[:2])
    counted = len(tokens) > 1 and (tokens[1].kind == NUMBER or second in NUMBERS)
    if first == "after":
        return "after" if counted and tokens[2:3] and tokens[2].lower == ":" else ""
    if first in ("in", "for"):
        return _sized(tokens) if first == "in" and counted else "for" if counted else ""
    fixed = next((key for opener, key in _FIXED.items() if _begins(tokens, opener)), "")
    if fixed:
        return fixed
    named = _named_key(tokens)
    if named:
        return named
    form = form_of(tokens)
    if form in ("rotation", "every"):
        return "relief"
    return form if form == "outcome" else "contest" if _begins(tokens, "contest in") else _teams_key(tokens)


def _named_key(tokens: tuple[Token, ...]) -> str:
    """What begins with a name: "Stem stands at", "Shadow changes with"."""
    for at in range(1, min(_LONGEST_NAME + 1, len(tokens))):
        if _begins(tokens[at:], "stands at"):
            return "shift"
        if _begins(tokens[at:], "changes with"):
            return "relief"
        if tokens[at].kind not in (WORD, NUMBER):
            return ""
    return ""


def _begins(tokens: tuple[Token, ...], phrase: str) -> bool:
    words = phrase.split()
    return [token.lower for token in tokens[: len(words)]] == words


def _sized(tokens: tuple[Token, ...]) -> str:
    """ "in 10 by 10 m" is a size, "in 3 Stem ..." a step."""
    following = [token.lower for token in tokens[2:4]]
    return "resize" if following[:1] in (["by"], ["x"], ["\u00d7"]) or following[:1] == ["m"] else "manner"


def _teams_key(tokens: tuple[Token, ...]) -> str:
    lead = [token.lower for token in tokens]
    meets = next((at for at, word in enumerate(lead) if word in _MEETS), 0)
    if not meets or any(word in NEVER_NAMES or word in _STARTS or word == ":" for word in lead[:meets]):
        return ""
    return "teams"


def change(cursor: Cursor, so_far: tuple[Patch, ...], below: Exercise) -> tuple[Patch, ...]:
    """Read one change behind those read so far; `below` is the exercise as they leave it. Told where it fails."""
    key = change_key(cursor.tokens) or cursor.guessed(_OPENERS, "change that begins")
    cursor.at = 0 if cursor.slips == 0 else cursor.at
    if not key:
        _tell_unknown(cursor)
        return so_far
    cursor.example = CHANGE_EXAMPLES.get(key, "")
    found = _READERS[key](cursor, so_far, below)
    cursor.finish()
    return so_far if found is None else found


def _tell_unknown(cursor: Cursor) -> None:
    beginning = " ".join(token.text for token in cursor.tokens[:4])
    length = cursor.sees_name()
    if length and cursor.peek(length).lower in NEVER_NAMES:
        doing = f"{cursor.tokens[0].text} {cursor.peek(length).text}"
        hint = f'Say in which step: "in 2 {doing} ...", or put a sentence more: "after 2: {doing} ...".'
        cursor.fail("unknown-change", f'The change that begins "{beginning}" belongs to no step.', hint)
        return
    hint = f'Changes are "{CHANGE_EXAMPLES["manner"]}", "{CHANGE_EXAMPLES["instead"]}", "{CHANGE_EXAMPLES["after"]}"'
    hint += f', "{CHANGE_EXAMPLES["leave out"]}", "{CHANGE_EXAMPLES["one more"]}", "{CHANGE_EXAMPLES["shift"]}".'
    cursor.fail("unknown-change", f'The change that begins "{beginning}" is not understood.', hint)


def _manner(cursor: Cursor, so_far: tuple[Patch, ...], below: Exercise) -> tuple[Patch, ...] | None:
    cursor.takes("in")
    cursor.takes("step")
    number = cursor.count("the step")
    who = cursor.name("who does it")
    found: list[Patch] = []
    start = 0
    while not cursor.failed:
        how = in_another_way(cursor)
        if how is None:
            break
        verb, manner = how
        if manner == Manner() and cursor.done():
            hint = f"Say how it is done now: {CHANGE_EXAMPLES['manner']}."
            cursor.note("no-change", start, f"{who} {verb.phrase} as before.", hint)
        found.append(ChangeManner(step=number, who=who, verb=verb.verb, manner=manner, span=cursor.span_from(start)))
        before = start = cursor.at
        cursor.takes(",")
        cursor.takes("and")
        cursor.takes("then")
        if cursor.at == before:
            break
    if not cursor.done():
        hint = f'Leave it out, or write "instead of {number}: {who} ...", with the whole sentence.'
        cursor.fail("not-manner", f'"{cursor.peek().text}": only the way it is done can change here.', hint)
    return None if cursor.failed else (*so_far, *found)


def _instead(cursor: Cursor, so_far: tuple[Patch, ...], below: Exercise) -> tuple[Patch, ...] | None:
    cursor.takes("instead of", "instead")
    cursor.takes("step")
    number = cursor.count("the step")
    step = _sentence(cursor, number, below)
    return None if step is None else (*so_far, InsteadOf(step=step, span=cursor.span_from(0)))


def _after(cursor: Cursor, so_far: tuple[Patch, ...], below: Exercise) -> tuple[Patch, ...] | None:
    cursor.takes("after")
    cursor.takes("step")
    after = cursor.count("the step")
    step = _sentence(cursor, after + 1, below)
    return None if step is None else (*so_far, AfterStep(after=after, step=step, span=cursor.span_from(0)))


def _sentence(cursor: Cursor, number: int, below: Exercise) -> Step | None:
    cursor.must(":")
    cursor.example = CHANGE_EXAMPLES["instead"]
    start = cursor.at
    if cursor.sees("contest"):
        duel = contest(cursor)
        return None if duel is None else Step(number=number, contest=duel, span=cursor.span_from(start))
    earlier = tuple(act for step in _steps(below) if step.number < number for act in step.acts)
    read = acts(cursor, earlier)
    return Step(number=number, acts=read, span=cursor.span_from(start)) if read else None


def _steps(exercise: Exercise) -> tuple[Step, ...]:
    return exercise.script.steps if exercise.script else ()


def _leave_out(cursor: Cursor, so_far: tuple[Patch, ...], below: Exercise) -> tuple[Patch, ...] | None:
    cursor.takes("leave out")
    cursor.takes("step")
    number = cursor.count("the step")
    return (*so_far, LeaveOut(number=number, span=cursor.span_from(0)))


def _one_more(cursor: Cursor, so_far: tuple[Patch, ...], below: Exercise) -> tuple[Patch, ...] | None:
    cursor.takes("one more")
    cursor.takes(":", ",")
    place = one_place(cursor)
    return None if place is None else (*so_far, OneMore(place=place, span=cursor.span_from(0)))


def _relief(cursor: Cursor, so_far: tuple[Patch, ...], below: Exercise) -> tuple[Patch, ...] | None:
    listed = form_of(cursor.tokens) in ("rotation", "every")
    who = "" if listed else cursor.names.match(cursor.tokens, 0)[0]
    read = rotation(cursor) if listed else relief(cursor)
    if read is None:
        return None
    news = (patch for patch in reversed(so_far) if isinstance(patch, OneMore) and who in ("", patch.place.name))
    new = next(news, None)
    if new is None and cursor.findings.lost.intersection((who or "more").lower().split()):
        return None
    if new is None:
        told = f"{who} is not new in this step." if who else "Nobody is new in this step."
        cursor.note("not-new", 0, told, f'Write "{CHANGE_EXAMPLES["one more"]}" before it.')
        return None
    return tuple(replace(new, rotation=read) if patch is new else patch for patch in so_far)


def _shift(cursor: Cursor, so_far: tuple[Patch, ...], below: Exercise) -> tuple[Patch, ...] | None:
    name = cursor.name("a place or thing")
    cursor.takes("stands at")
    at = point(cursor)
    return (*so_far, Shift(name=name, at=at, span=cursor.span_from(0)))


def _resize(cursor: Cursor, so_far: tuple[Patch, ...], below: Exercise) -> tuple[Patch, ...] | None:
    cursor.takes("in")
    width, depth = size_m(cursor, "the box")
    return (*so_far, Resize(width_m=width, depth_m=depth, span=cursor.span_from(0)))


def _length(cursor: Cursor, so_far: tuple[Patch, ...], below: Exercise) -> tuple[Patch, ...] | None:
    cursor.takes("bouts of", "at most")
    length = seconds(cursor, "how long it lasts")
    return (*so_far, OtherLength(seconds=length, span=cursor.span_from(0)))


def _teams(cursor: Cursor, so_far: tuple[Patch, ...], below: Exercise) -> tuple[Patch, ...] | None:
    kind, teams, together = meeting(cursor)
    teams = (*teams, *others(cursor))
    tell_same_team(cursor, teams)
    play = below.open_play
    if play is not None and (play.kind is not kind or play.together != together):
        told = "The teams meet in another way than in the exercise."
        cursor.note("other-meeting", 0, told, "A step may have other teams, not another game: let them meet as before.")
    return (*so_far, OtherTeams(teams=teams, span=cursor.span_from(0)))


def _outcome(cursor: Cursor, so_far: tuple[Patch, ...], below: Exercise) -> tuple[Patch, ...] | None:
    held = _held(so_far)
    if held is None or held.contest is None:
        hint = 'Write the contest before it: "instead of 2: contest in ...".'
        cursor.fail("no-contest", "An outcome needs a contest before it.", hint)
        return None
    read = outcome(cursor, held.contest.defenders)
    if read is None:
        return None
    duel = replace(held.contest, outcomes=(*held.contest.outcomes, read))
    return _with_step(so_far, replace(held, contest=duel))


def _contest(cursor: Cursor, so_far: tuple[Patch, ...], below: Exercise) -> tuple[Patch, ...] | None:
    held = _held(so_far)
    if held is None or held.contest is not None:
        hint = 'Write which one: "instead of 2: contest in ...".'
        cursor.fail("no-such-step", "This contest belongs to no step.", hint)
        return None
    read = contest(cursor)
    return None if read is None else _with_step(so_far, replace(held, contest=read))


def _held(so_far: tuple[Patch, ...]) -> Step | None:
    """The sentence that the last change holds."""
    last = so_far[-1] if so_far else None
    return last.step if isinstance(last, InsteadOf | AfterStep) else None


def _with_step(so_far: tuple[Patch, ...], step: Step) -> tuple[Patch, ...]:
    last = so_far[-1]
    return (*so_far[:-1], replace(last, step=step)) if isinstance(last, InsteadOf | AfterStep) else so_far


_READERS: Mapping[str, Callable[[Cursor, tuple[Patch, ...], Exercise], tuple[Patch, ...] | None]] = {
    "manner": _manner,
    "instead": _instead,
    "after": _after,
    "leave out": _leave_out,
    "one more": _one_more,
    "relief": _relief,
    "shift": _shift,
    "resize": _resize,
    "length": _length,
    "teams": _teams,
    "outcome": _outcome,
    "contest": _contest,
}
