"""Enough people, not too many, somebody at every place a round needs; must not know of time."""

from conewright.checks.case import Case, Check, children, look, mend
from conewright.model.exercise import Holds, Start
from conewright.model.layout import sides_for
from conewright.model.problem import Problem


def too_few_or_many(case: Case) -> tuple[Problem, ...]:
    """The head count against the exercise's own range."""
    numbers, forms = case.exercise.numbers, case.exercise.forms
    if numbers.least <= case.size <= numbers.most or any(f.least <= case.size <= f.most for f in forms):
        return ()
    few = case.size < numbers.least
    code = "too-few" if few else "too-many"
    said = f"it is for {numbers.least} to {numbers.most}"
    hint = (
        f'Write a form for it: "With {case.size}: ..." and say who is left out of the round.'
        if few
        else f'Write "With {case.size}: two copies, 5 m apart." or let it run with fewer.'
    )
    return (mend(code, f"{children(case.size)} here, and {said}.", case.exercise.span, hint),)


def start_fits(case: Case) -> tuple[Problem, ...]:
    """The start sentence against the head count and what each place holds."""
    start = case.exercise.start or Start()
    placed = sum(count for _, count in case.standing)
    found = []
    named = sum(count for _, count in start.counts)
    if named > case.size:
        found.append(
            mend(
                "start-too-many",
                f"The start asks for {named} children and {case.size} are here.",
                start.span or case.exercise.span,
                "Ask for fewer at one of the places.",
            )
        )
    if placed < case.size and case.exercise.script is not None:
        over = case.size - placed
        found.append(
            mend(
                "nowhere-to-stand",
                f"{children(over)} of {case.size} have nowhere to stand: every place holds one.",
                start.span or case.exercise.span,
                'Make one of the places a line: "Base at 0, 0 is a line ...", or write a form with copies.',
            )
        )
    for name, count in case.standing:
        place = case.exercise.place(name)
        if place is not None and place.holds is Holds.ONE and count > 1:
            found.append(
                mend(
                    "place-overfull",
                    f"{name} holds one and {count} start there.",
                    start.span or place.span,
                    f"Make {name} a line, or start with one there.",
                )
            )
    return tuple(found)


def nobody_there(case: Case) -> tuple[Problem, ...]:
    """In a round with a contest (which is not played through) every role needs somebody at its place."""
    if not case.contest:
        return ()
    found = []
    contest = case.rounds[0].contest
    sides = dict(case.rounds[0].places)
    roles = tuple(bearer.place for bearer in case.rounds[0].bearers if not bearer.adult)
    roles += tuple(sides.get(role, role) for role in (*contest.attackers, *contest.defenders)) if contest else ()
    arriving = {act.to_place for act in case.rounds[0].acts}
    for name in dict.fromkeys(roles):
        place = case.exercise.place(name)
        if place is not None and not place.adult and not place.keeper and not case.count_at(name):
            if name in arriving:
                continue
            found.append(
                mend(
                    "nobody-there",
                    f"With {children(case.size)} nobody stands at {name}, and the round needs somebody there.",
                    contest.span if contest else place.span,
                    f'Start with one more there: "Start with one at {name}, ..."',
                )
            )
    return tuple(found)


def teams_fit(case: Case) -> tuple[Problem, ...]:
    """The teams of an open-play box against the head count."""
    play = case.exercise.open_play
    if play is None or not play.teams:
        return ()
    asked = sum(team.count or 0 for team in play.teams)
    unfixed = tuple(team for team in play.teams if team.count is None)
    if asked + len(unfixed) > case.size:
        return (
            mend(
                "teams-too-big",
                f"The teams ask for {asked + len(unfixed)} and {children(case.size)} are here.",
                play.span,
                f'Write a form: "With {case.size}: ..." with smaller teams.',
            ),
        )
    sides = sides_for(case.exercise, case.size)
    over = sum(side.count for side in sides) - sum(side.count for side in sides if side.team in play.teams)
    if over > 1:
        return (
            look(
                "several-over",
                f"{over} of {case.size} are over and play {play.odd_one}.",
                play.span,
                f'Write a form for {case.size}: "With {case.size}: ..." with teams that take everybody.',
            ),
        )
    return ()


CHECKS = (
    Check(
        codes=("too-few", "too-many"),
        why="Head count is the master problem: an exercise says for how many it runs, and is not trusted beyond.",
        run=too_few_or_many,
    ),
    Check(
        codes=("start-too-many", "nowhere-to-stand", "place-overfull"),
        why="Everybody needs a spot at the start, and a spot that holds one holds one.",
        run=start_fits,
    ),
    Check(
        codes=("nobody-there",),
        why="A round that needs a child who is not there stops in the first minute.",
        run=nobody_there,
    ),
    Check(
        codes=("teams-too-big", "several-over"),
        why="Teams must come out with whoever is here; one over has a job, several over stand about.",
        run=teams_fit,
    ),
)
