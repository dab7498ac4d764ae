"""Which form of an exercise serves a number of children, and who stands where at the start; must not know of time."""

from dataclasses import dataclass, replace

from conewright.model.exercise import Exercise, Form, Holds, PlayKind, Start, SupplyKind, Team

LINE_WITH_BALL_FIRST = 3  # the line that starts with the ball fills up to this before other lines get more
APART_M = 5.0  # copies side by side, edge to edge, where the text does not say
APART_SHOTS_M = 15.0  # the same where copies shoot in different directions


@dataclass(frozen=True, slots=True, kw_only=True)
class Side:
    """One side of an open-play box in one copy: its team and how many children it holds."""

    team: Team
    count: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Layout:
    """An exercise laid out for a number of children: `sizes` has one entry a copy, their sum is that number."""

    sizes: tuple[int, ...]
    apart_m: float
    mirrored: bool
    form: Form | None


def forms_for(exercise: Exercise, n: int) -> tuple[Form, ...]:
    """The forms whose range holds n, the narrowest first."""
    held = (form for form in exercise.forms if form.least <= n <= form.most)
    return tuple(sorted(held, key=lambda form: (form.most - form.least, form.least)))


def layout_for(exercise: Exercise, n: int) -> Layout | None:
    """How the exercise is laid out for n children, or None where its numbers do not hold n."""
    forms = forms_for(exercise, n)
    if not exercise.numbers.least <= n <= exercise.numbers.most and not forms:
        return None
    form = next((form for form in forms if form.copies > 1), forms[0] if forms else None)
    copies = form.copies if form else 1
    return Layout(
        sizes=split_evenly(n, copies),
        apart_m=form.apart_m if form and form.apart_m is not None else APART_M,
        mirrored=bool(form and form.mirrored),
        form=form,
    )


def split_evenly(n: int, parts: int) -> tuple[int, ...]:
    """n shared between parts as evenly as whole children allow, the larger first."""
    share, over = divmod(n, parts)
    return tuple(share + 1 if part < over else share for part in range(parts))


def one_copy(exercise: Exercise, size: int) -> Exercise:
    """The exercise as one copy of `size` children sees it: the start and teams of its own form put in place."""
    form = next((form for form in forms_for(exercise, size) if form.copies == 1), None)
    if form is None:
        return exercise
    start = form.start or exercise.start
    play = exercise.open_play
    if play is not None and form.teams:
        play = replace(play, teams=form.teams)
    return replace(exercise, start=start, open_play=play)


def sides_for(exercise: Exercise, size: int) -> tuple[Side, ...]:
    """How many play on each side of the open-play box in a copy of `size`; empty where there is none.

    Teams with a stated number take it; the others share what is left evenly. Where one is over, the `odd_one` word
    says where it goes: to a side of its own ("neutral", "rests in turn"), or to a team.
    """
    play = one_copy(exercise, size).open_play
    if play is None:
        return ()
    if not play.teams:
        return (Side(team=Team(name="everyone", has_ball_each=play.kind is PlayKind.BALL_EACH), count=size),)
    open_teams = tuple(team for team in play.teams if team.count is None)
    left = size - sum(team.count or 0 for team in play.teams)
    if not open_teams:
        sides = tuple(Side(team=team, count=team.count or 0) for team in play.teams)
        return (*sides, Side(team=Team(name=play.odd_one), count=left)) if left > 0 else sides
    return _shared(play.teams, open_teams, left=left, odd_one=play.odd_one)


def _shared(teams: tuple[Team, ...], open_teams: tuple[Team, ...], *, left: int, odd_one: str) -> tuple[Side, ...]:
    share, over = divmod(max(left, 0), len(open_teams))
    favoured = next((team for team in open_teams if team.name == odd_one), None)
    counts = {team.name: team.count if team.count is not None else share for team in teams}
    if favoured is not None:
        counts[favoured.name] += over
        return tuple(Side(team=team, count=counts[team.name]) for team in teams)
    sides = tuple(Side(team=team, count=counts[team.name]) for team in teams)
    return (*sides, Side(team=Team(name=odd_one), count=over)) if over else sides


def standing(exercise: Exercise, size: int) -> dict[str, int]:
    """How many children stand at each place at the start of a copy of `size` (adults' places are left out).

    The start sentence first, as far as there are children, then one at each place the steps name, in their order;
    the rest where the sentence says, else to the lines that start with a ball until they hold three, then to the
    shortest line.
    """
    own = one_copy(exercise, size)
    children = tuple(place for place in own.places if not place.adult and not place.keeper)
    counts = {place.name: 0 for place in children}
    start = own.start or Start()
    if start.even:
        for part, place in zip(split_evenly(size, max(1, len(children))), children, strict=False):
            counts[place.name] = part
        return counts
    left = size
    for name, count in start.counts:
        if name in counts:
            counts[name] = min(count, left)
            left -= counts[name]
    needed = tuple(name for name in places_in_order(own) if name in counts)
    if not start.counts:
        for name in needed[:size]:
            counts[name] = 1
    _share_rest(own, counts, start, size - sum(counts.values()))
    return counts


def _share_rest(exercise: Exercise, counts: dict[str, int], start: Start, rest: int) -> None:
    lines = tuple(p.name for p in exercise.places if p.name in counts and p.holds is Holds.LINE)
    named = tuple(name for name in start.rest if name in counts)
    starters = tuple(name for name in ball_starters(exercise) if name in lines)
    for _ in range(max(rest, 0)):
        short = tuple(name for name in starters if counts[name] < LINE_WITH_BALL_FIRST)
        among = named or short or lines
        if not among:
            return
        chosen = min(among, key=lambda name: (counts[name], among.index(name)))
        counts[chosen] += 1


def ball_starters(exercise: Exercise) -> tuple[str, ...]:
    """The places that start with a ball: those with a supply that act in the first step, else the first with one."""
    script = exercise.script
    first_step = next((step.acts for step in script.steps if step.acts), ()) if script else ()
    sides = script.sides if script else None
    acting = (name for act in first_step for name in (sides.places if sides and act.who == sides.word else (act.who,)))
    supplied = (name for name in dict.fromkeys(acting) if _has_supply(exercise, name))
    return tuple(supplied) or (first_ball_place(exercise),)


def _has_supply(exercise: Exercise, name: str) -> bool:
    place = exercise.place(name)
    return place is not None and place.supply.kind is not SupplyKind.NONE


def first_ball_place(exercise: Exercise) -> str:
    """The place that starts with the ball: the first named in the steps that has a supply, else the first with one."""
    supplied = tuple(place.name for place in exercise.places if _has_supply(exercise, place.name))
    named = tuple(name for name in places_in_order(exercise) if name in supplied)
    return (named or supplied or ("",))[0]


def places_in_order(exercise: Exercise) -> tuple[str, ...]:
    """The places whose bearers act or receive in a round, in the order of the steps, each once; sides all of theirs."""
    script = exercise.script
    if script is None:
        return tuple(place.name for place in exercise.places)
    words = {script.sides.word: script.sides.places} if script.sides else {}
    named: list[str] = []
    for step in script.steps:
        roles = [role for act in step.acts for role in (act.who, act.target.name if act.target else "")]
        if step.contest:
            roles += [*step.contest.attackers, *step.contest.defenders]
        for role in roles:
            named += words.get(role, (role,))
    known = {place.name for place in exercise.places}
    return tuple(name for name in dict.fromkeys(named) if name in known)
