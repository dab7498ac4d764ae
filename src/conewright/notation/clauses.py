"""Places, contests, outcomes, rotations and teams in words, without a full stop; must not know where they stand."""

from dataclasses import replace

from conewright.model.exercise import (
    Contest,
    Numbers,
    OpenPlay,
    Outcome,
    Place,
    PlayKind,
    Rotation,
    RotationKind,
    SupplyKind,
    Team,
    Thing,
)
from conewright.notation.amounts import figure, listed, minutes, people, point, size
from conewright.notation.phrases import goes_to, joins
from conewright.notation.words import (
    DEFAULT_WIDTH_M,
    ENDINGS,
    HOLDS,
    HOLDS_OF_SEVERAL,
    MEETINGS,
    PASSIVE,
    WAITS,
    Standing,
)


def places_clause(places: tuple[Place, ...]) -> str:
    """Places that are alike but for name and spot."""
    first = places[0]
    holds, passive = _holds(first)
    told = holds if len(places) == 1 else HOLDS_OF_SEVERAL[holds]
    told += _supply(first, apart=holds in ("holds one", "is passive") or len(places) > 1)
    told += f", {PASSIVE}" if passive else ""
    told += f", in {first.bib.value}" if first.bib else ""
    told += f", facing {first.facing}" if first.facing else ""
    told += f", {WAITS[first.waits]}" if first.waits != "behind" else ""
    return f"{listed([f'{place.name} at {point(place.at)}' for place in places])} {told}"


def _holds(place: Place) -> tuple[str, bool]:
    """Who stands there, and whether it is still to be said that they are passive."""
    meant = Standing(holds=place.holds, adult=place.adult, keeper=place.keeper, passive=place.passive)
    phrases = {standing: phrase for phrase, standing in HOLDS.items()}
    known = phrases.get(meant)
    return (known, False) if known else (phrases[replace(meant, passive=False)], True)


def _supply(place: Place, *, apart: bool) -> str:
    comma = "," if apart else ""
    if place.supply.kind is SupplyKind.EACH:
        return ", a ball each"
    if place.supply.kind is SupplyKind.BALL:
        return f"{comma} with the ball"
    if place.supply.kind is SupplyKind.STOCK:
        count = place.supply.count
        return f"{comma} with {count} {'ball' if count == 1 else 'balls'}"
    return ""


def things_clause(things: tuple[Thing, ...]) -> str:
    """Things that are alike but for name and spot."""
    first = things[0]
    told = f"is a {first.kind.value}" if len(things) == 1 else f"are {first.kind.value}s"
    told += f" {figure(first.width_m)} m wide" if first.width_m != DEFAULT_WIDTH_M[first.kind] else ""
    told += ", upright" if first.upright else ""
    return f"{listed([f'{thing.name} at {point(thing.at)}' for thing in things])} {told}"


def numbers_clause(numbers: Numbers) -> str:
    """For how many: `6 to 9`, `6 to 9; best with 8`."""
    best = f"; best with {numbers.best}" if numbers.best is not None else ""
    return f"{range_clause(numbers.least, numbers.most)}{best}"


def range_clause(least: int, most: int) -> str:
    """`6` or `5 to 9`."""
    return str(least) if least == most else f"{least} to {most}"


def contest_clause(contest: Contest) -> str:
    """A contest without what happens after it."""
    told = f"contest in {size(contest.width_m, contest.depth_m)}, middle at {point(contest.middle)}: "
    told += f"{listed(contest.attackers)} against {listed(contest.defenders)}"
    told += f", on {listed(contest.on)}" if contest.on else ""
    told += f", at most {figure(contest.limit_s)} s" if contest.limit_s is not None else ""
    told += f", counter on {listed(contest.counter)}" if contest.counter else ""
    return told


def outcome_clause(contest: Contest, outcome: Outcome) -> str:
    """One or several endings and what happens then."""
    words = [ENDINGS[ending] for ending in outcome.endings]
    lead = ", ".join(words[:-1]) + f" or {words[-1]}" if len(words) > 1 else "".join(words)
    if lead == "won" and len(contest.defenders) == 1:
        lead = f"{contest.defenders[0]} wins it"
    told = [joins(move) for move in outcome.moves]
    told += [f"the ball goes to {outcome.ball_to}"] if outcome.ball_to is not None else []
    return f"{lead}: {', '.join(told) or 'nobody moves'}"


def rotation_clause(rotation: Rotation) -> str:
    """Who goes where, and how often."""
    often = how_often(rotation)
    told = {
        RotationKind.FOLLOW: "follow the pass",
        RotationKind.STAY: "everyone goes back to their own place",
        RotationKind.MOVES: ", ".join(goes_to(move) for move in rotation.moves) or "nobody moves",
    }
    return f"{often or 'rotation'}: {told[rotation.kind]}"


def how_often(rotation: Rotation) -> str:
    """`every 6 rounds`, `every minute`; "" after each round."""
    if rotation.every_s is not None:
        length = minutes(rotation.every_s)
        return "every minute" if length == "1 minute" else f"every {length}"
    return "" if rotation.every_rounds == 1 else f"every {rotation.every_rounds} rounds"


def meeting_clause(play: OpenPlay) -> str:
    """The teams of open play and how they meet."""
    if play.kind is PlayKind.BALL_EACH:
        each = [team_clause(replace(team, has_ball_each=False)) for team in play.teams]
        return f"{listed(each)} have a ball each" if each else "everyone has a ball"
    *first, second = (*play.teams, Team(name=""), Team(name=""))[: 2 + len(play.together)]
    single = len(first) == 1 and first[0].count == 1
    verb = MEETINGS[play.kind][single and len(MEETINGS[play.kind]) > 1]
    chased = ", who have a ball each" if play.kind is PlayKind.CHASE and second.has_ball_each else ""
    second = replace(second, has_ball_each=False) if chased else second
    told = f"{listed([team_clause(team) for team in first])} {verb} {team_clause(second)}{chased}"
    return told + (f", with {listed([team_clause(team) for team in beside(play)])}" if beside(play) else "")


def beside(play: OpenPlay) -> tuple[Team, ...]:
    """The teams behind the two sides that meet, such as neutral players."""
    return () if play.kind is PlayKind.BALL_EACH else play.teams[2 + len(play.together) :]


def team_clause(team: Team) -> str:
    """One team: "four Yellow", "two catchers in Red with a ball each"."""
    told = f"{people(team.count)} {team.name}" if team.count is not None else team_name(team.name)
    told += f" in {team.bib.value}" if team.bib and team.bib.value != team.name else ""
    return f"{told} with a ball each" if team.has_ball_each else told


def team_name(team: str) -> str:
    """A team without a number: "Yellow", "the catchers"."""
    return f"the {team}" if team[:1].islower() else team
