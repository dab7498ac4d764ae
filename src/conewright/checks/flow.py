"""Rotation closes: every place holds as many after a round as before, or after one of each side; knows no time."""

from collections import Counter

from conewright.checks.case import Case, Check, know, mend
from conewright.model.exercise import Contest, Ending, Outcome, Rotation
from conewright.model.problem import Problem, Span
from conewright.model.round import Bearer, Round

WORDS = frozenset({"winner", "loser", "scorer", "other"})


def flow_closes(case: Case) -> tuple[Problem, ...]:
    """Places that gain or lose children over a round (over all sides where they take turns)."""
    lost = any(not bearer.ends_at and not bearer.adult for round_ in case.rounds for bearer in round_.bearers)
    if not case.rounds or case.contest or lost:  # who ends nowhere is told already
        return ()
    net: Counter[str] = Counter()
    for round_ in case.rounds:
        for bearer in round_.bearers:
            if not bearer.adult and bearer.ends_at:
                net[bearer.place] -= 1
                net[bearer.ends_at] += 1
    gains = tuple(name for name, change in net.items() if change > 0)
    losses = tuple(name for name, change in net.items() if change < 0)
    if not gains:
        return _listed_rotations(case)
    sender = _to_send_on(case, gains[0])
    said = " and ".join(f"{name} has {_more(net[name])}" for name in gains)
    short = " and ".join(f"{name} {_more(net[name])}" for name in losses)
    rounds = "a round" if len(case.rounds) == 1 else f"{len(case.rounds)} rounds"
    return (
        mend(
            "flow-open",
            f"The rotation does not close: after {rounds} {said}, {short}.",
            _who_goes_to(case, gains[0], sender),
            _send(case, sender, full=gains[0], short=losses[0]),
        ),
    )


def _to_send_on(case: Case, full: str) -> Bearer | None:
    """Who goes to the place that fills up and may go elsewhere: who comes back to the own place, else the last."""
    goes = [b for round_ in case.rounds for b in round_.bearers if b.ends_at == full and not b.stays and not b.adult]
    return next((bearer for bearer in goes if bearer.place == full), goes[-1] if goes else None)


def _send(case: Case, sender: Bearer | None, *, full: str, short: str) -> str:
    if sender is None:
        return f'Say who goes to {short}: "Rotation: ... to {short}."'
    script = case.exercise.script
    moves = [move for rotation in script.rotations for move in rotation.moves] if script else []
    if any(move.who in (sender.role, sender.place) for move in moves):
        return f'In the rotation write "{sender.role} to {short}" instead of "{sender.role} to {full}".'
    send = f"Let {sender.role} come back" if sender.place == short else f"Send {sender.role} to {short} instead"
    return f'{send}: "Rotation: {sender.role} to {short}."'


def _more(change: int) -> str:
    words = {1: "one more", 2: "two more", -1: "one fewer", -2: "two fewer"}
    return words.get(change, f"{abs(change)} {'more' if change > 0 else 'fewer'}")


def _who_goes_to(case: Case, name: str, sender: Bearer | None) -> Span | None:
    """The sentence that takes a child to the place that fills up."""
    script = case.exercise.script
    for rotation in script.rotations if script else ():
        for move in rotation.moves:
            if move.to == name:
                return move.span or rotation.span
    for round_ in case.rounds:
        for act in reversed(round_.acts):
            if act.to_place == name and (sender is None or round_.bearers[act.bearer] == sender):
                return act.span
    return script.span if script else None


def _listed_rotations(case: Case) -> tuple[Problem, ...]:
    """Rotations that come every so many rounds have to be a swap or a ring of their own."""
    script = case.exercise.script
    found = []
    for rotation in script.rotations if script else ():
        if rotation.every_rounds == 1 and rotation.every_s is None:
            continue
        left = Counter(move.who for move in rotation.moves)
        left.subtract(Counter(move.to for move in rotation.moves))
        if any(left.values()):
            found.append(_open_rotation(rotation, left))
    return tuple(found)


def _open_rotation(rotation: Rotation, left: Counter[str]) -> Problem:
    short = next(name for name, change in left.items() if change > 0)
    full = next((name for name, change in left.items() if change < 0), "")
    return mend(
        "flow-open",
        f"The change does not close: nobody comes to {short}" + (f", and {full} gets one more." if full else "."),
        rotation.span,
        f'Add who goes to {short}: "{full or "..."} to {short}".',
    )


def comes_home(case: Case) -> tuple[Problem, ...]:
    """After how many turns a child is back in the role it began with."""
    if not case.rounds or case.contest or flow_closes(case):
        return ()
    step: dict[str, str] = {}
    for round_ in case.rounds:
        for bearer in round_.bearers:
            if not bearer.adult and not bearer.stays:
                step.setdefault(bearer.place, bearer.ends_at)
    first = next(iter(step), "")
    at, turns = step.get(first, ""), 1
    while at and at != first and turns <= len(step):
        at, turns = step.get(at, ""), turns + 1
    if at != first or turns < 2:
        return ()
    return (know("comes-home", f"After {turns} turns a child is back at {first}.", case.exercise.span),)


def outcomes_covered(case: Case) -> tuple[Problem, ...]:
    """Every ending of a contest says where people and the ball go, and each closes."""
    found: list[Problem] = []
    for round_ in case.rounds[:1]:
        if round_.contest is None:
            continue
        sources = [act.takes_from for act in round_.acts if act.takes_from]
        found += _missing_endings(round_.contest, sources[0] if sources else "")
        for outcome in round_.contest.outcomes:
            found += _outcome_closes(round_, round_.contest, outcome)
    return tuple(found)


def _missing_endings(contest: Contest, source: str) -> list[Problem]:
    covered = {ending for outcome in contest.outcomes for ending in outcome.endings}
    needed = [Ending.SCORED, Ending.OUT, Ending.WON] if contest.on else [Ending.OUT, Ending.WON]
    if contest.limit_s is not None:
        needed.append(Ending.TIME_UP)
    missing = [ending for ending in needed if ending not in covered]
    if not missing:
        return []
    words = [ending.value for ending in missing]
    said = ", ".join(words[:-1]) + f" or {words[-1]}" if len(words) > 1 else words[0]
    roles = (*contest.attackers, *contest.defenders)
    goals = (*roles[1:], *roles[:1])
    bring = f"takes the ball to {source} and joins" if source else "joins"
    moves = [f"{role} joins {goal}" for role, goal in zip(roles[:-1], goals[:-1], strict=True)]
    proposal = ", ".join([*moves, f"{roles[-1]} {bring} {goals[-1]}"])
    return [
        mend(
            "outcome-missing",
            f'Nothing says what happens when the contest ends with "{said}".',
            contest.span,
            f'Write for example: "{said[0].upper()}{said[1:]}: {proposal}."',
        )
    ]


def _outcome_closes(round_: Round, contest: Contest, outcome: Outcome) -> list[Problem]:
    sides = dict(round_.places)
    roles = {sides.get(role, role) for role in (*contest.attackers, *contest.defenders)}
    roles |= {bearer.place for bearer in round_.bearers if not bearer.adult and bearer.ends_at in ("", bearer.place)}
    named = {sides.get(move.who, move.who) for move in outcome.moves}
    spoken = [move for move in outcome.moves if move.who in WORDS]
    unsaid = sorted(roles - named)
    ends = endings_said(outcome)
    if len(unsaid) > len(spoken):
        missing = unsaid[len(spoken) :]
        goes = f"{' and '.join(missing)} {'goes' if len(missing) == 1 else 'go'}"
        return [
            mend(
                "outcome-uncovered",
                f'When it ends with "{ends}" nothing says where {goes}.',
                outcome.span,
                f'Add "{missing[0]} joins {_left_empty(roles, outcome, sides) or "..."}" to the sentence.',
            )
        ]
    left = Counter(roles)
    left.subtract(Counter(sides.get(move.to, move.to) for move in outcome.moves))
    for bearer in round_.bearers:
        if not bearer.adult and bearer.ends_at not in ("", bearer.place) and bearer.place not in roles:
            left[bearer.place] += 1
            left[bearer.ends_at] -= 1
    if any(left.values()):
        short = next((name for name, change in left.items() if change > 0), "")
        full = next((name for name, change in left.items() if change < 0), "")
        return [
            mend(
                "flow-open",
                f'When it ends with "{ends}" {full or "a place"} gets one more and {short or "another"} one fewer.',
                outcome.span,
                _other_way(outcome, sides, full=full, short=short),
            )
        ]
    return []


def _other_way(outcome: Outcome, sides: dict[str, str], *, full: str, short: str) -> str:
    """Who of those who join the place that fills up may go elsewhere: who comes from there, else the last."""
    joins = [move for move in outcome.moves if sides.get(move.to, move.to) == full]
    if not joins:
        return f'Say who goes to {short}: "... joins {short}".'
    move = next((move for move in joins if sides.get(move.who, move.who) == full), joins[-1])
    return f'For {move.who} write "joins {short}" instead of "joins {full}".'


def endings_said(outcome: Outcome) -> str:
    """ "scored, out or time up"."""
    words = [ending.value for ending in outcome.endings]
    return ", ".join(words[:-1]) + f" or {words[-1]}" if len(words) > 1 else "".join(words)


def _left_empty(roles: set[str], outcome: Outcome, sides: dict[str, str]) -> str:
    """A place of the contest to which nobody is sent."""
    taken = {sides.get(move.to, move.to) for move in outcome.moves}
    return min(roles - taken, default="")


CHECKS = (
    Check(
        codes=("flow-open",),
        why="A rotation that does not close empties a place: after a few rounds everybody waits for nobody.",
        run=flow_closes,
    ),
    Check(
        codes=("comes-home",),
        why="Children ask how long until they are back; it also tells how long everybody needs to have had every role.",
        run=comes_home,
    ),
    Check(
        codes=("outcome-missing", "outcome-uncovered", "flow-open"),
        why="A duel ends in one of a few ways; after each, everybody has to know where to go and who takes the ball.",
        run=outcomes_covered,
    ),
)
