"""Exercises made up at random, as texts: chains of passes that come home, and sentences that make no sense."""

from itertools import pairwise
from random import Random

NAMES = ("Base", "Stem", "Wing", "Post", "Gate", "Mill")
HEAD = "exercise: Invented\nkind: passing pattern\nfor 1 to 40 players, under 6 to under 19\n"
SUPPLIES = (" with the ball", " with 2 balls", " with 6 balls", ", a ball each")
MANNERS = ("", " first time", " in two touches", " firmly", " softly", " in three touches")
TRIGGERS = ("{0} passes", "{1} has the ball", "{1} is halfway home", "{1} is home", "{0} starts", "{1} is ready")


def chain(random: Random) -> str:
    """A pattern that runs: the ball goes from place to place and home again, everybody follows or goes round."""
    count = random.randint(2, 5)
    names = NAMES[:count]
    spots = [(random.randint(-9, 9), random.randint(-2, 2) + 6 * number) for number in range(count)]
    lines = [
        _place(name, spot, random, first=number == 0)
        for number, (name, spot) in enumerate(zip(names, spots, strict=True))
    ]
    steps, number = [], 1
    for passer, receiver in pairwise(names):
        before = _before(receiver, random)
        if before:
            steps.append(f"{number}. {before}")
            number += 1
        steps.append(f"{number}. {_pass(passer, receiver, random)}")
        number += 1
    steps.append(f"{number}. {_home(names, random, own_ball='ball each' in lines[0])}")
    tail = _rotation(names, random) + _next_round(names, random)
    return HEAD + "\n".join([*lines, "Each round:", *steps, *tail]) + "\n"


def _place(name: str, spot: tuple[int, int], random: Random, *, first: bool) -> str:
    at = f"{name} at {spot[0]}, {spot[1]}"
    if first:
        return f"{at} is a line{random.choice(SUPPLIES)}."
    return f"{at} is a line." if random.random() < 0.6 else f"{at} holds one."


def _before(name: str, random: Random) -> str:
    return random.choice(("", "", f"{name} checks away, then shows.", f"{name} jogs to {random.randint(-9, 9)}, 5."))


def _pass(passer: str, receiver: str, random: Random) -> str:
    touch = random.choice(("", "turns, ", "turns out, ")) if passer != NAMES[0] else ""
    how = random.choice(MANNERS)
    goal = random.choice((f" to {receiver}", f" to {receiver}", f" ahead of {receiver}"))
    follow = random.choice(("", f", then runs to {receiver}", f", then jogs to {receiver} round the outside"))
    return f"{passer} {touch}passes{how}{goal}{follow}."


def _home(names: tuple[str, ...], random: Random, *, own_ball: bool) -> str:
    """The last brings the ball home, or passes it to the next where that one has none of its own."""
    last, first = names[-1], names[0]
    way = random.choice(("", " round the outside"))
    if own_ball or random.random() < 0.5:
        return f"{last} dribbles to the end of {first}{way}."
    return f"{last} passes to {first}, then runs to {first}{way}."


def _rotation(names: tuple[str, ...], random: Random) -> list[str]:
    if random.random() < 0.5:
        return []
    ring = ", ".join(f"{name} to {goal}" for name, goal in zip(names, (*names[1:], names[0]), strict=True))
    return [f"Rotation: {ring}."]


def _next_round(names: tuple[str, ...], random: Random) -> list[str]:
    if random.random() < 0.5:
        return []
    when = random.choice(TRIGGERS).format(names[0], names[-1])
    return [f"The next round starts when {when}.{random.choice((' Two rounds may run at once.', ' ', ''))}"]


VERBS = (
    "passes to {}",
    "passes ahead of {}",
    "sets it back to {}",
    "sets it back",
    "throws to {}",
    "crosses ahead of {}",
    "shoots at Net",
    "dribbles to {}",
    "dribbles home",
    "dribbles through Door to 2, 9",
    "dribbles round Mast to {}",
    "runs to {} round the outside",
    "runs home",
    "jogs to 3, 4",
    "checks away",
    "shows",
    "turns",
    "fetches the ball",
    "waits 2 s",
    'calls "now"',
    "passes against Bench",
    "passes to 4, 4",
    'does "toe taps" for 3 s',
)
PLACES = (
    "is a line with the ball",
    "holds one",
    "is a line",
    "is an adult",
    "is a line, a ball each",
    "holds one, with the ball",
)
STARTS = (
    "when {} passes",
    "when {} has the ball",
    "when {} shoots",
    "when {}'s shot is over",
    "when {} is home",
    "when {} reaches Mast",
    "when {} is halfway home",
    "when {} is past Mast",
    "when {} starts",
    "after 1",
    "when the ball is back at {}",
    "when {} is ready",
    "on the coach's call",
)
THINGS = "Mast at 3, 3 is a cone. Door at 0, 5 is a gate. Net at 0, 20 is a mini goal. Bench at -4, 4 is a wall.\n"
TAILS = (
    "Rotation: follow the pass.",
    "Rotation: everyone back to the own place.",
    "Rotation: {0} to {1}, {1} to {0}.",
    "Rotation: {0} to {1}.",
    "Every 2 rounds: {0} to {1}, {1} to {0}.",
    "Every 1 minutes: {0} to {1}, {1} to {0}.",
    "Change sides at half time.",
    "The next round starts at once. Three rounds may run at once.",
    "The next round starts when {0} is home.",
)


def nonsense(random: Random) -> str:
    """Sentences that can be read, put together without sense: most do not run, none may make anything raise."""
    names = NAMES[: random.randint(1, 5)]
    lines = [f"{name} at {random.randint(-9, 9)}, {random.randint(-9, 9)} {random.choice(PLACES)}." for name in names]
    opening = "Each round:"
    roles = list(names)
    if len(names) > 2 and random.random() < 0.4:
        opening = f"Each round, {names[-2]} and {names[-1]} in turn (call it Side):"
        roles.append("Side")
    steps = [f"{number}. {_sentence(roles, random)}" for number in range(1, random.randint(2, 6))]
    tail = [
        random.choice(TAILS).format(random.choice(names), random.choice(names)) for _ in range(random.randint(0, 2))
    ]
    return HEAD + "\n".join(lines) + "\n" + THINGS + "\n".join([opening, *steps, *tail]) + "\n"


def _sentence(roles: list[str], random: Random) -> str:
    verbs = ", then ".join(random.choice(VERBS).format(random.choice(roles)) for _ in range(random.randint(1, 3)))
    start = f" {random.choice(STARTS).format(random.choice(roles))}" if random.random() < 0.3 else ""
    other = (
        f"; {random.choice(roles)} {random.choice(VERBS).format(random.choice(roles))}" if random.random() < 0.3 else ""
    )
    return f"{random.choice(roles)} {verbs}{start}{other}."
