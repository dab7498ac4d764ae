"""Turns shared out where sides take turns; reads what was rehearsed, and looks for a start that shares them."""

from collections import Counter, deque
from collections.abc import Iterator, Mapping
from dataclasses import replace

from conewright.checks.case import AfterCheck, Case, children, look
from conewright.checks.people import start_words
from conewright.model.exercise import Exercise, Holds, Move, Rotation, RotationKind, Script, SideOrder, Start
from conewright.model.problem import Problem, is_clean
from conewright.model.rehearsed import Rehearsal
from conewright.model.round import Round
from conewright.rehearsal.durations import pupil
from conewright.rehearsal.recursion import played_out

ENOUGH_TURNS = 4  # so many turns on one side and none on the other are no accident
FOLLOWED_TURNS = 16  # a start is followed for so many rounds a child, without a clock, before it is played out
MOST_STARTS = 4  # so many starts are played out in search of one that shares turns
EVERY_ROUNDS = (3, 5, 7)  # odd, so that a change falls on either side in turn

Counts = tuple[tuple[str, int], ...]


def equal_turns(case: Case, rehearsal: Rehearsal) -> tuple[Problem, ...]:
    """A child that always lands on the same side, where sides take turns."""
    script = case.exercise.script
    if script is None or script.sides is None or script.sides.order is not SideOrder.IN_TURN:
        return ()
    locked = sum(is_locked(dict(child.roles), script.sides.places) for child in rehearsal.children)
    if not locked:
        return ()
    return (
        look(
            "one-side-only",
            f"With {case.size}, {children(locked)} always {'comes' if locked == 1 else 'come'} to the same side.",
            script.sides.span or script.span,
            _remedy(case, script, rehearsal.bout_s),
        ),
    )


def _remedy(case: Case, script: Script, bout_s: float) -> str:
    start = _fair_start(case, bout_s)
    if start:
        return f'Everybody comes to each with "Start with {start_words(start)}."'
    swap = next((swap for swap in _swaps(script) if _shares_with(case, script, swap, bout_s)), None)
    if swap is not None:
        moves = ", ".join(f"{move.who} to {move.to}" for move in swap.moves)
        return f'Everybody comes to each with "Every {swap.every_rounds} rounds: {moves}."'
    return "Let some of them change places between two bouts."


def is_locked(turns: Mapping[str, int], places: tuple[str, ...]) -> bool:
    """True where somebody has had turns enough at one of the places and none at another."""
    on = [turns.get(name, 0) for name in places]
    return max(on) >= ENOUGH_TURNS and min(on) == 0


def _fair_start(case: Case, bout_s: float) -> Counts:
    """The nearest start that locks nobody to a side, followed without a clock and then played out; () without one."""
    shares = (counts for counts in _starts_near(case) if _shares_followed(case, counts))
    tried = (counts for counts, _ in zip(shares, range(MOST_STARTS), strict=False))
    with_start = ((counts, replace(case.exercise, start=Start(counts=counts))) for counts in tried)
    return next((counts for counts, own in with_start if _shares_played(case, own, bout_s)), ())


def _starts_near(case: Case) -> Iterator[Counts]:
    """The starts with one child, then two, at another line than now, nobody taken from where only one stands."""
    lines = [place.name for place in case.exercise.places if place.holds is Holds.LINE and not place.adult]
    for moved in (1, 2):
        for source, count in case.standing:
            for goal in lines:
                if goal != source and count > moved:
                    change = {source: -moved, goal: moved}
                    yield tuple((name, here + change.get(name, 0)) for name, here in case.standing)


def _is_fair(case: Case, roles: Counter[tuple[int, str]]) -> bool:
    script = case.exercise.script
    places = script.sides.places if script and script.sides else ()
    return not any(is_locked({name: roles[person, name] for name in places}, places) for person in range(case.size))


def _shares_followed(case: Case, counts: Counts) -> bool:
    """True where nobody is locked when lines are followed head by head, as if every round waited for the last."""
    people = iter(range(case.size))
    lines = {name: deque(person for person, _ in zip(people, range(count), strict=False)) for name, count in counts}
    roles: Counter[tuple[int, str]] = Counter()
    for number in range(FOLLOWED_TURNS * case.size):
        if not _follow(case.rounds[number % len(case.rounds)], lines, roles):
            return False
    return _is_fair(case, roles)


def _follow(round_: Round, lines: dict[str, deque[int]], roles: Counter[tuple[int, str]]) -> bool:
    """Play one round on the lines; False where somebody lacks."""
    bound: dict[int, int] = {}
    for act in round_.acts:
        for number in (act.bearer, act.receiver):
            if number is None or number in bound or round_.bearers[number].adult:
                continue
            place = round_.bearers[number].place
            if not lines.get(place):
                return False
            bound[number] = lines[place].popleft()
            roles[bound[number], place] += 1
        if act.homeward and act.bearer in bound:
            lines[act.to_place].append(bound[act.bearer])
    for bearer in round_.bearers:
        if bearer.stays and bearer.number in bound:
            lines[bearer.place].appendleft(bound[bearer.number])
    return True


def _swaps(script: Script) -> Iterator[Rotation]:
    """The heads of the sides change places every so many rounds."""
    places = script.sides.places if script.sides else ()
    moves = tuple(Move(who=name, to=goal) for name, goal in zip(places, (*places[1:], *places[:1]), strict=True))
    for every in EVERY_ROUNDS:
        yield Rotation(kind=RotationKind.MOVES, moves=moves, every_rounds=every)


def _shares_with(case: Case, script: Script, swap: Rotation, bout_s: float) -> bool:
    changed = replace(script, rotations=(*script.rotations, swap))
    return _shares_played(case, replace(case.exercise, script=changed), bout_s)


def _shares_played(case: Case, own: Exercise, bout_s: float) -> bool:
    child = pupil(case.figures, age=case.age, surface=case.surface)
    play = played_out(own, case.rounds, child, size=case.size, bout_s=bout_s)
    if play is None or not is_clean(tuple(play.problems)):
        return False
    within = [moment.time_s <= bout_s for moment in play.starts]
    return _is_fair(case, Counter((person, place) for number, person, place in play.roles if within[number]))


AFTER_CHECKS = (
    AfterCheck(
        codes=("one-side-only",),
        why="Where sides take turns an unlucky number keeps a child on one side all evening.",
        run=equal_turns,
    ),
)
