"""What is left to the children: a contest in a box, and open play; must not know the scripted acts."""

from dataclasses import replace

from conewright.model.exercise import Contest, OpenPlay, PlayKind, Team
from conewright.model.geometry import ORIGIN, Point
from conewright.notation.amounts import capital
from conewright.notation.cursor import Cursor
from conewright.notation.draft import Draft
from conewright.notation.guesses import slipped
from conewright.notation.header import MOST_PLAYERS
from conewright.notation.lexer import WORD
from conewright.notation.measures import point, seconds, size_m
from conewright.notation.places import MOST_BALLS
from conewright.notation.shapes import EXAMPLES
from conewright.notation.starts import listed
from conewright.notation.targets import tell_no_goal
from conewright.notation.words import COLOURS, MEETINGS

_BALL_EACH = ("with a ball each", "who have a ball each", "who has a ball", ", who have a ball each", ", a ball each")
_TEAM_WORDS = ("neutral", "neutrals", "others", "everyone", *(f"{colour}s" for colour in COLOURS))
_NO_TEAM = frozenset("against and apart chase chases copies copy from has have keep keeps m on start who with".split())


def contest(cursor: Cursor) -> Contest | None:
    """Read "Contest in 16 by 18 m, middle at 0, 13: A and B against C, on Goal, at most 8 s"; None where it fails."""
    cursor.example = EXAMPLES["contest"]
    cursor.takes("contest")
    if cursor.asks:
        cursor.sees("in 20 by 20 m")
    cursor.must("in")
    width, depth, middle = _ground(cursor)
    if middle is None:
        cursor.unexpected('the middle of the box, ", middle at 0, 13"')
    cursor.must(":")
    attackers = _roles(cursor, "who attacks")
    cursor.must("against")
    defenders = _roles(cursor, "who defends")
    found = Contest(width_m=width, depth_m=depth, middle=middle or ORIGIN, attackers=attackers, defenders=defenders)
    while cursor.more():
        before = cursor.at
        cursor.takes(",")
        if cursor.takes("on"):
            found = replace(found, on=_goals(cursor))
        elif cursor.takes("counter on", "with a counter on"):
            found = replace(found, counter=_goals(cursor))
        elif cursor.takes("at most", "for at most"):
            found = replace(found, limit_s=seconds(cursor, "the longest time"))
        else:
            cursor.at = before if cursor.at == before else before + 1
            break
    cursor.finish()
    return None if cursor.failed else replace(found, span=cursor.span_from(0))


def _ground(cursor: Cursor) -> tuple[float, float, Point | None]:
    """Take `16 by 18 m, middle at 0, 13`; the middle may be left out."""
    width, depth = size_m(cursor, "the box")
    if not cursor.takes(", middle at", "middle at", ", the middle at"):
        return width, depth, None
    return width, depth, point(cursor)


def _roles(cursor: Cursor, what: str) -> tuple[str, ...]:
    start = cursor.at
    names = listed(cursor, what)
    for name in names:
        thing = cursor.names.thing(name)
        if thing is not None:
            cursor.note("cannot-act", start, f"{name} is a {thing.kind.value}: it plays no part.", "Name a place.")
            break
    return names


def _goals(cursor: Cursor) -> tuple[str, ...]:
    start = cursor.at
    names = listed(cursor, "a goal or gate")
    for name in names:
        tell_no_goal(cursor, name, start)
    return names


def open_play(cursor: Cursor, draft: Draft) -> None:
    """Read "Open play in 12 by 12 m: four Yellow keep it from two Red" into the draft."""
    cursor.example = EXAMPLES["play"]
    if "play" in draft.seen:
        cursor.fail("said-twice", "Open play is said twice.", "Write one open play an exercise.")
    draft.seen.add("play")
    cursor.takes("open play")
    if cursor.asks:
        cursor.sees("in 20 by 20 m")
    cursor.must("in")
    width, depth, middle = _ground(cursor)
    cursor.must(":")
    kind, teams, together = meeting(cursor)
    on: tuple[str, ...] = ()
    while cursor.more():
        start = cursor.at
        cursor.takes(",")
        if cursor.takes("with"):
            teams = (*teams, *_teams(cursor))
        elif cursor.takes("on"):
            on = _goals(cursor)
        else:
            cursor.at = start + 1 if cursor.at > start else start
            break
    cursor.finish()
    tell_same_team(cursor, teams)
    if not cursor.failed:
        draft.play = OpenPlay(
            width_m=width,
            depth_m=depth,
            middle=middle or ORIGIN,
            kind=kind,
            teams=teams,
            together=together,
            on=on,
            balls=usual_balls(kind, teams),
            span=cursor.span_from(0),
        )


def usual_balls(kind: PlayKind, teams: tuple[Team, ...]) -> int:
    """How many balls open play has where the text does not say: none beside those the children have, else one."""
    return 0 if kind in (PlayKind.BALL_EACH, PlayKind.CHASE) or any(team.has_ball_each for team in teams) else 1


def others(cursor: Cursor) -> tuple[Team, ...]:
    """Take ", with two neutral": the teams beside those that meet; none where it does not come next."""
    if not cursor.takes(", with", "with"):
        return ()
    return _teams(cursor)


def tell_same_team(cursor: Cursor, teams: tuple[Team, ...]) -> None:
    """Tell where two teams have one name."""
    names = [team.name for team in teams]
    twice = next((name for name in names if names.count(name) > 1), None)
    if twice:
        cursor.note("name-twice", 0, f"There are two teams called {twice}.", "Give one of them another colour.")


def meeting(cursor: Cursor) -> tuple[PlayKind, tuple[Team, ...], tuple[str, ...]]:
    """Take "four Yellow and four Blue keep it from four Red": how they meet, the teams, who is with the first."""
    if cursor.takes("everyone has a ball", "everybody has a ball", "a ball each"):
        return PlayKind.BALL_EACH, (), ()
    first = _teams(cursor)
    if cursor.takes("have a ball each", "has a ball each", "has a ball"):
        return PlayKind.BALL_EACH, tuple(replace(one, has_ball_each=True) for one in first), ()
    kind = next((kind for kind, phrases in MEETINGS.items() if cursor.takes(*phrases)), None)
    if kind is None:
        cursor.unexpected('"keep it from", "against" or "chase"')
        return PlayKind.GAME, first, ()
    return kind, (*first, team(cursor)), tuple(one.name for one in first[1:])


def _teams(cursor: Cursor) -> tuple[Team, ...]:
    found = [team(cursor)]
    while not cursor.failed:
        before = cursor.at
        cursor.takes(",")
        cursor.takes("and")
        if cursor.at == before or cursor.sees("on") or cursor.sees("with") or cursor.done():
            cursor.at = before
            break
        found.append(team(cursor))
    return tuple(found)


def team(cursor: Cursor) -> Team:
    """Take "four Yellow", "the others", "two catchers in Red", with "who have a ball each" where it is said."""
    start = cursor.at
    count = cursor.count("players", most=MOST_PLAYERS) if cursor.sees_number() else None
    cursor.takes("the")
    if cursor.asks:
        for colour in COLOURS:
            cursor.sees(colour)
    token = cursor.peek()
    if token.kind != WORD or token.lower in _NO_TEAM:
        cursor.unexpected("a team", "Name a team by its bibs, such as four Yellow, or by a word, such as two neutral.")
        return Team(name="")
    word = slipped(token.lower, (*COLOURS, *_TEAM_WORDS))
    if word:
        cursor.slip(capital(word) if word in COLOURS else word, "team or word", 1)
    word = word or token.lower
    cursor.at += 1
    bib = COLOURS.get(word) or COLOURS.get(word.removesuffix("s"))
    name = bib.value if bib else "neutral" if word == "neutrals" else word
    if cursor.sees("in") and cursor.peek(1).lower in COLOURS:
        bib = COLOURS[cursor.peek(1).lower]
        cursor.at += 2
    each = cursor.takes(*_BALL_EACH)
    return Team(name=name, count=count, bib=bib, has_ball_each=each, span=cursor.span_from(start))


def odd_one(cursor: Cursor, draft: Draft) -> None:
    """Read "One over is neutral | joins Yellow | shares a ball | rests in turn" into the draft."""
    cursor.example = EXAMPLES["odd one"]
    cursor.takes("one over", "the odd one")
    play = _play(cursor, draft)
    if cursor.takes("is neutral", "is a neutral"):
        word = "neutral"
    elif cursor.takes("shares a ball", "shares"):
        word = "shares"
    elif cursor.takes("rests in turn", "rests"):
        word = "rests in turn"
    else:
        cursor.must("joins")
        start = cursor.at
        word = team(cursor).name
        if play and not cursor.failed and word not in {one.name for one in play.teams}:
            cursor.note("unknown-name", start, f"There is no team {word}.", "Name a team of the open play.")
    cursor.finish()
    if play and not cursor.failed:
        draft.play = replace(play, odd_one=word)


def bouts(cursor: Cursor, draft: Draft) -> None:
    """Read "Bouts of 3 minutes" into the draft."""
    cursor.example = EXAMPLES["bouts"]
    cursor.takes("bouts of")
    play = _play(cursor, draft)
    length = seconds(cursor, "a bout")
    cursor.finish()
    if play and not cursor.failed:
        draft.play = replace(play, bout_s=length)


def sees_balls(cursor: Cursor) -> bool:
    """True at "With 2 balls" and "With no ball"."""
    return cursor.sees("with no") or (cursor.sees_number(1) and cursor.peek(2).lower in ("ball", "balls"))


def balls(cursor: Cursor, draft: Draft) -> None:
    """Read "With 2 balls" into the draft."""
    cursor.example = "With 2 balls."
    cursor.takes("with")
    play = _play(cursor, draft)
    count = 0 if cursor.takes("no") else cursor.count("balls", most=MOST_BALLS)
    cursor.takes("ball") or cursor.must("balls")
    cursor.finish()
    if play and not cursor.failed:
        draft.play = replace(play, balls=count)


def _play(cursor: Cursor, draft: Draft) -> OpenPlay | None:
    if draft.play is None and "play" not in draft.seen and "open play" not in cursor.findings.lost:
        cursor.findings.lost.add("open play")
        cursor.fail(
            "no-open-play",
            "This belongs to open play, and none stands before it.",
            'Write "Open play in 20 by 20 m: Yellow against Blue." before it.',
        )
    return draft.play
