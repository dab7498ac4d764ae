"""A contest as it is told to those in it and to all: who against whom, on what, and where to after it."""

from conewright.model.exercise import Contest, Ending, Holds, Move, ThingKind
from conewright.notation.amounts import capital, listed, people
from conewright.notation.spoken import Scene, either, line_or_spot, named, seconds
from conewright.notation.words import MOVERS


def contest_sentences(scene: Scene, role: str, *, begins: bool) -> tuple[str, ...]:
    """What a role is told of the contest it is in; nothing where it is in none."""
    contest = scene.round_.contest
    if contest is None or not is_in_contest(scene, role):
        return ()
    lead = "it is" if begins else "then it is"
    against = f"{capital(lead)} {odds(contest)}: {_sides(scene, contest, role)}."
    return (against, _job(scene, contest, role), *_after(scene, contest, role))


def is_in_contest(scene: Scene, role: str) -> bool:
    """Whether a role plays in the contest of the round."""
    contest = scene.round_.contest
    return contest is not None and role in (*contest.attackers, *contest.defenders)


def odds(contest: Contest) -> str:
    """ "two against one"."""
    return f"{people(len(contest.attackers))} against {people(len(contest.defenders))}"


def _sides(scene: Scene, contest: Contest, role: str) -> str:
    """ "you and Wing against Gate House"."""
    attacks = role in contest.attackers
    own, others = (contest.attackers, contest.defenders) if attacks else (contest.defenders, contest.attackers)
    mates = [named(scene, mate) for mate in own if mate != role]
    return f"{listed(['you', *mates])} against {listed([named(scene, other) for other in others])}"


def _job(scene: Scene, contest: Contest, role: str) -> str:
    if role in contest.attackers:
        told = f"Try to {_score(scene, contest.on)}" if contest.on else "Try to keep the ball"
    else:
        told = "Try to win the ball"
        told += f", and then you may {_score(scene, contest.counter)}" if contest.counter else ""
    return f"{told}; you have {seconds(contest.limit_s)} at most." if contest.limit_s else f"{told}."


def _score(scene: Scene, goals: tuple[str, ...]) -> str:
    things = [scene.exercise.thing(scene.meant(name)) for name in goals]
    into = all(thing is not None and thing.kind in (ThingKind.MINI_GOAL, ThingKind.GOAL) for thing in things)
    return f"score {'in' if into else 'at'} {either(tuple(named(scene, name) for name in goals))}"


# --- after it ---


def _after(scene: Scene, contest: Contest, role: str) -> tuple[str, ...]:
    """Where the role goes, each way once with the endings that send it there."""
    ways: dict[str, list[Ending]] = {}
    for outcome in contest.outcomes:
        for move in outcome.moves:
            if move.who == role:
                ways.setdefault(_goes(scene, move, own=scene.meant(role)), []).extend(outcome.endings)
    if len(ways) == 1 and all(_moves(outcome.moves, role) for outcome in contest.outcomes):
        return tuple(f"Afterwards {way}." for way in ways)
    return tuple(f"If {endings_words(scene, contest, endings, hearer=role)}, {way}." for way, endings in ways.items())


def _moves(moves: tuple[Move, ...], role: str) -> bool:
    return any(move.who == role for move in moves)


def _goes(scene: Scene, move: Move, *, own: str) -> str:
    """A way as an order: "bring the ball to Hub, then join the end of the line at Wing"."""
    goal = scene.exercise.place(scene.meant(move.to))
    back = scene.meant(move.to) == own
    if goal is None:
        way = f"go to {named(scene, move.to)}"
    elif goal.holds is Holds.LINE:
        way = "join the end of your own line again" if back else f"join {line_or_spot(goal)}"
    else:
        way = "go back to your own place" if back else f"go to {goal.name}"
    if move.brings_ball_to is None:
        return way
    if scene.meant(move.brings_ball_to) == scene.meant(move.to):
        return f"take the ball along and {way}"
    home = scene.meant(move.brings_ball_to) == own
    goal_words = "back to where you started" if home else f"to {named(scene, move.brings_ball_to)}"
    return f"bring the ball {goal_words}, then {way}"


def endings_words(scene: Scene, contest: Contest, endings: list[Ending], *, hearer: str = "") -> str:
    """ "somebody scores, the ball goes out or time is up"; to a defender "you win the ball"."""
    mates = [named(scene, role) for role in contest.defenders if role != hearer]
    defenders = listed([*(["you"] if hearer in contest.defenders else []), *mates])
    win = "wins" if len(contest.defenders) == 1 and mates else "win"
    words = {
        Ending.SCORED: "somebody scores",
        Ending.OUT: "the ball goes out",
        Ending.WON: f"{defenders} {win} the ball",
        Ending.TIME_UP: "time is up",
    }
    return either(tuple(words[ending] for ending in Ending if ending in endings))


def contest_talk(scene: Scene) -> tuple[str, ...]:
    """What all have to know of the end of a contest: ways of the winner, the loser and so on, and where the ball is."""
    contest = scene.round_.contest
    told = []
    for outcome in contest.outcomes if contest else ():
        ways = [f"{MOVERS[move.who]} {_is_sent(scene, move)}" for move in outcome.moves if move.who in MOVERS]
        ways += [f"the ball goes back to {named(scene, outcome.ball_to)}"] if outcome.ball_to else []
        if contest is not None and ways:
            told.append(f"If {endings_words(scene, contest, list(outcome.endings))}, {listed(ways)}.")
    return tuple(told)


def _is_sent(scene: Scene, move: Move) -> str:
    """ "joins Wing", "takes the ball to Hub and joins Wing"."""
    way = f"joins {named(scene, move.to)}" if scene.meant(move.to) != scene.meant(move.who) else "goes back"
    brought = scene.meant(move.brings_ball_to) if move.brings_ball_to else ""
    if not brought:
        return way
    if brought == scene.meant(move.to):
        return f"{way} with the ball"
    return f"takes the ball {'back' if brought == scene.meant(move.who) else f'to {brought}'} and {way}"


def won_words(scene: Scene) -> tuple[str, str]:
    """A question about what follows when the ball is won, and its answer; empty where nothing is said."""
    contest = scene.round_.contest
    outcome = next((one for one in contest.outcomes if Ending.WON in one.endings), None) if contest else None
    if contest is None or outcome is None or not outcome.moves:
        return "", ""
    asked = endings_words(scene, contest, [Ending.WON])
    ways = [f"{MOVERS.get(move.who) or named(scene, move.who)} {_is_sent(scene, move)}" for move in outcome.moves]
    return f"What happens when {asked}?", capital(f"{listed(ways)}.")
