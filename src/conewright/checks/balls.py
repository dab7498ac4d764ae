"""Balls conserved: every ball taken comes back to where the next round needs it; must not know of time."""

from collections import Counter

from conewright.checks.case import Case, Check, mend
from conewright.checks.flow import endings_said
from conewright.model.exercise import Outcome, SupplyKind, Verb
from conewright.model.problem import Problem, Span
from conewright.model.round import Bearer, Played, Round


def balls_conserved(case: Case) -> tuple[Problem, ...]:
    """Balls that run out at a place, are left lying, or end with somebody whose place has no use for them."""
    if any(problem.code == "no-ball" for problem in case.unsaid):  # where one lacks, the rest follows
        return ()
    if not case.rounds or case.contest:
        return _contest_ball(case)
    found: list[Problem] = []
    for round_ in case.rounds:
        found += [*_left_lying(round_), *_ends_with(case, round_)]
    if not found:
        found += _ledger(case)
    return tuple(dict.fromkeys(found))


def _ledger(case: Case) -> list[Problem]:
    net: Counter[str] = Counter()
    taken: dict[str, Played] = {}
    for round_ in case.rounds:
        for act in round_.acts:
            if act.takes_from and not _is_each(case, act.takes_from) and not _is_adult(case, act.takes_from):
                net[act.takes_from] -= 1
                taken.setdefault(act.takes_from, act)
            if act.leaves_ball:
                net[act.to_place] += 1
        for bearer in round_.bearers:
            if bearer.ends_with_ball and bearer.ends_at and not _is_each(case, bearer.ends_at):
                net[bearer.ends_at] += 1
    short = [name for name, change in net.items() if change < 0]
    over = next((name for name, change in net.items() if change > 0), "")
    bearers = [bearer for round_ in case.rounds for bearer in round_.bearers]
    ends = next((b for b in bearers if b.ends_with_ball and b.ends_at == over), None)
    return [
        mend(
            "balls-run-out",
            f"{name} gives a ball away every round and gets none back"
            + (f"; it ends at {over}." if over else "; nobody brings it home."),
            taken[name].span,
            _let_bring(bearers, ends, over=over, source=name),
        )
        for name in short
    ]


def _let_bring(bearers: list[Bearer], ends: Bearer | None, *, over: str, source: str) -> str:
    """Whoever comes from where the ball ends may bring one; else whoever ends with it."""
    comes = next((b for b in bearers if b.place == over and b.ends_at == source and not b.ends_with_ball), None)
    if comes is not None and not comes.adult:
        return f'Let {comes.role} bring one: "{comes.role} dribbles to {source}."'
    return _bring_back(ends, source) if ends else f'Say who brings it: "... dribbles to {source}."'


def _bring_back(bearer: Bearer, source: str) -> str:
    """What to write where a ball ends with somebody and is needed elsewhere."""
    role = bearer.role
    if bearer.adult:
        return f'Let {role} play it on and somebody bring it: "{role} passes to ...; ... dribbles to {source}."'
    way = "dribbles home" if bearer.place == source else f"dribbles to {source}"
    if bearer.ends_at in ("", source):
        return f'Let {role} bring it back: "{role} {way}."'
    return f'Let {role} bring it back first: "{role} {way}, then runs to {bearer.ends_at}."'


def _is_each(case: Case, name: str) -> bool:
    place = case.exercise.place(name)
    return place is not None and place.supply.kind is SupplyKind.EACH


def _is_adult(case: Case, name: str) -> bool:
    place = case.exercise.place(name)
    return place is not None and place.adult


def _left_lying(round_: Round) -> list[Problem]:
    """Balls that are played to nobody and fetched by nobody."""
    lying: list[Played] = []
    for act in round_.acts:
        if act.verb is Verb.FETCH and lying:
            lying.pop()
        elif act.flight and act.receiver is None:
            lying.append(act)
    return [
        mend(
            "ball-stranded",
            f"The ball of the {act.verb} in step {act.step} is left lying: nobody is there and nobody fetches it.",
            act.span,
            _fetch(round_, act),
        )
        for act in lying
    ]


def _fetch(round_: Round, act: Played) -> str:
    role = round_.bearers[act.bearer].role
    source = next((other.takes_from for other in round_.acts if other.takes_from), "...")
    return f'Say who gets it, or who fetches it: "{role} fetches the ball, then dribbles to {source}."'


def _ends_with(case: Case, round_: Round) -> list[Problem]:
    found = []
    for bearer in round_.bearers:
        place = case.exercise.place(bearer.ends_at)
        if place is None or bearer.adult or place.adult:
            continue
        kind = place.supply.kind
        if (kind is SupplyKind.EACH and not bearer.ends_with_ball and not _never_had(round_, bearer)) or (
            kind is SupplyKind.EACH and not bearer.ends_with_ball and bearer.place != bearer.ends_at
        ):
            found.append(_without_ball(round_, bearer))
        elif kind is SupplyKind.NONE and bearer.ends_with_ball:
            source = next((act.takes_from for act in round_.acts if act.takes_from), "...")
            found.append(
                mend(
                    "ball-stranded",
                    f"{bearer.role} ends the round at {bearer.ends_at} with a ball that nobody there needs.",
                    _last_span(round_, bearer),
                    _bring_back(bearer, source),
                )
            )
    return found


def _never_had(round_: Round, bearer: Bearer) -> bool:
    return not any(act.bearer == bearer.number and (act.flight or act.with_ball) for act in round_.acts)


def _without_ball(round_: Round, bearer: Bearer) -> Problem:
    return mend(
        "comes-without-ball",
        f"At {bearer.ends_at} everybody has a ball, and {bearer.role} comes there without one.",
        _last_span(round_, bearer),
        f'Let {bearer.role} bring one: "{bearer.role} dribbles to {bearer.ends_at}.", '
        f'or write "{bearer.ends_at} ... is a line with 6 balls."',
    )


def _last_span(round_: Round, bearer: Bearer) -> Span | None:
    number = bearer.number
    spans = [act.span for act in round_.acts if number in (act.bearer, act.receiver) and act.span is not None]
    return spans[-1] if spans else None


def _contest_ball(case: Case) -> tuple[Problem, ...]:
    """After each ending of a contest somebody takes the ball to where the round takes it from."""
    if not case.contest:
        return ()
    round_ = case.rounds[0]
    sources = [act.takes_from for act in round_.acts if act.takes_from and not _is_adult(case, act.takes_from)]
    contest = round_.contest
    if not sources or contest is None:
        return ()
    return tuple(_no_ball_home(outcome, sources[0]) for outcome in contest.outcomes if not _brings(outcome))


def _brings(outcome: Outcome) -> bool:
    return bool(outcome.ball_to) or any(move.brings_ball_to for move in outcome.moves)


def _no_ball_home(outcome: Outcome, source: str) -> Problem:
    ends = endings_said(outcome)
    move = next((move for move in outcome.moves if move.to == source), outcome.moves[-1] if outcome.moves else None)
    joins = f"{move.who} takes the ball to {source} and joins {move.to}" if move else f"the ball goes to {source}"
    return mend(
        "ball-stranded",
        f'When it ends with "{ends}" nobody takes the ball back to {source}.',
        outcome.span,
        f'Write "{joins}".',
    )


CHECKS = (
    Check(
        codes=("balls-run-out", "ball-stranded", "comes-without-ball"),
        why="A ball that is not where the next round needs it stops the group; somebody always runs after it.",
        run=balls_conserved,
    ),
)
