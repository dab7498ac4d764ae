"""Enough people, not too many, somebody at every place a round needs; must not know of time."""

from collections.abc import Sequence

from conewright.checks.case import Case, Check, children, here, look, mend
from conewright.model.exercise import Exercise, Holds, Start, Team
from conewright.model.geometry import Point
from conewright.model.layout import sides_for, standing
from conewright.model.problem import Problem
from conewright.notation.amounts import listed, people, point


def too_few_or_many(case: Case) -> tuple[Problem, ...]:
    """The head count against the exercise's own range."""
    numbers, forms = case.exercise.numbers, case.exercise.forms
    if numbers.least <= case.size <= numbers.most or any(f.least <= case.size <= f.most for f in forms):
        return ()
    parts = [(numbers.least, numbers.most), *((form.least, form.most) for form in forms)]
    ranges = listed([str(least) if least == most else f"{least} to {most}" for least, most in parts])
    few = case.size < numbers.least
    return (
        mend(
            "too-few" if few else "too-many",
            f"{here(case.size).capitalize()}, and it is for {ranges}.",
            case.exercise.span,
            _for_fewer(case) if few else _for_more(case),
        ),
    )


def _for_fewer(case: Case) -> str:
    wider = f'If it runs with {case.size}, write "for {case.size} to {case.exercise.numbers.most} players".'
    stands = tuple((name, count) for name, count in standing(case.exercise, case.size).items() if count)
    if case.exercise.script is None or not stands:
        return wider
    return f'{wider} Or say who stands where: "With {case.size}: start with {start_words(stands)}."'


def _for_more(case: Case) -> str:
    numbers = case.exercise.numbers
    copies = next((k for k in range(2, case.size + 1) if -(-case.size // k) <= numbers.most), 0)
    wider = f'"for {numbers.least} to {case.size} players" if it runs with so many.'
    if not copies or case.size // copies < numbers.least:
        return f"Write {wider}"
    return f'Write "With {case.size}: {people(copies)} copies, 5 m apart.", or {wider}'


def start_words(counts: Sequence[tuple[str, int]]) -> str:
    """ "two at Base, one at Stem", as the start sentence says it."""
    return ", ".join(f"{people(count)} at {name}" for name, count in counts)


def start_fits(case: Case) -> tuple[Problem, ...]:
    """The start sentence against the head count and what each place holds."""
    start = case.exercise.start or Start()
    placed = sum(count for _, count in case.standing)
    found = []
    if sum(count for _, count in start.counts) > case.size:
        found.append(_start_too_big(case, start))
    if placed < case.size and case.exercise.script is not None:
        found.append(_nowhere_to_stand(case, start, case.size - placed))
    for name, count in case.standing:
        place = case.exercise.place(name)
        if place is not None and place.holds is Holds.ONE and count > 1:
            found.append(
                mend(
                    "place-overfull",
                    f"{name} holds one, and {people(count)} start there.",
                    start.span or place.span,
                    f'Write "{name} at {point(place.at)} is a line ...", or start with one at {name}.',
                )
            )
    return tuple(found)


def _start_too_big(case: Case, start: Start) -> Problem:
    named = sum(count for _, count in start.counts)
    over = named - case.size
    fullest = max(start.counts, key=lambda entry: entry[1])
    fewer = tuple((name, count - over if name == fullest[0] else count) for name, count in start.counts)
    fits = all(count > 0 for _, count in fewer)
    hint = f'For {case.size} write "With {case.size}: start with {start_words(fewer)}."' if fits else ""
    return mend(
        "start-too-many",
        f"The start asks for {named} children, and {case.size} {'is' if case.size == 1 else 'are'} here.",
        start.span or case.exercise.span,
        hint or f'Ask for fewer at {fullest[0]}, or write "for {named} to {case.exercise.numbers.most} players".',
    )


def _nowhere_to_stand(case: Case, start: Start, over: int) -> Problem:
    name, at = _likely_line(case.exercise)
    return mend(
        "nowhere-to-stand",
        f"{children(over).capitalize()} of the {case.size} {'has' if over == 1 else 'have'} nowhere to stand: "
        "every place holds one.",
        start.span or case.exercise.span,
        f'Let the others wait at one of the places: "{name} at {point(at)} is a line ..."',
    )


def _likely_line(exercise: Exercise) -> tuple[str, Point]:
    spots = tuple(place for place in exercise.places if not place.adult and not place.keeper)
    return (spots[0].name, spots[0].at) if spots else ("Base", Point(0.0, 0.0))


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
        if place is None or place.adult or place.keeper or case.count_at(name) or name in arriving:
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
    asked = sum(team.count or 1 for team in play.teams)
    if asked > case.size:
        return (
            mend(
                "teams-too-big",
                f"The teams ask for {asked} children, and {case.size} {'is' if case.size == 1 else 'are'} here.",
                play.span,
                _smaller_teams(play.teams, case.size),
            ),
        )
    sides = sides_for(case.exercise, case.size)
    over = sum(side.count for side in sides) - sum(side.count for side in sides if side.team in play.teams)
    if over <= 1:
        return ()
    return (
        look(
            "several-over",
            f"{people(over).capitalize()} of the {case.size} are over, and one over has a job.",
            play.span,
            _smaller_teams(play.teams, case.size),
        ),
    )


def _smaller_teams(teams: tuple[Team, ...], size: int) -> str:
    """A form for so many children, each team with its share of them and at least one."""
    if size < len(teams):
        return f"Leave it for another evening: {children(size)} cannot make {people(len(teams))} teams."
    asked = sum(team.count or 1 for team in teams)
    shares = [max(1, int(size * (team.count or 1) / asked)) for team in teams]
    while sum(shares) != size:
        step = 1 if sum(shares) < size else -1
        missing = [size * (team.count or 1) / asked - share for team, share in zip(teams, shares, strict=True)]
        order = range(len(teams)) if step > 0 else [i for i, share in enumerate(shares) if share > 1]
        shares[max(order, key=lambda i: step * missing[i])] += step
    words = ", ".join(f"{people(share)} {team.name}" for team, share in zip(teams, shares, strict=True))
    return f'Write a form for it: "With {size}: {words}."'


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
