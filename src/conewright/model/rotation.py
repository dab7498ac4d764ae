"""Where a bearer goes once its acts are done: what the rotation says, else the pass it follows; knows no time."""

from dataclasses import dataclass

from conewright.model.exercise import Exercise, Move, Rotation, RotationKind, Script
from conewright.model.ways import Walker


@dataclass(frozen=True, slots=True, kw_only=True)
class Onward:
    """The next place of a bearer, None where nothing says one; `direct`: straight after the pass; `guessed`: asked."""

    goal: str | None
    direct: bool = False
    guessed: bool = False


def fixed_rotations(script: Script) -> tuple[Rotation, ...]:
    """The rotations that hold after every round."""
    return tuple(r for r in script.rotations if r.every_rounds == 1 and r.every_s is None)


def is_told_on(script: Script, walker: Walker, words: dict[str, str]) -> bool:
    """True where the rotation sends a bearer on from the place to which its last act took it."""
    move = _listed_move(script, walker)
    if move is not None:
        return words.get(move.to, move.to) != walker.gone_to
    stays = any(rotation.kind is RotationKind.STAY for rotation in fixed_rotations(script))
    return stays and walker.gone_to != walker.place


def onward(
    exercise: Exercise, script: Script, walker: Walker, receiver: Walker | None, words: dict[str, str]
) -> Onward:
    """Where a bearer goes whose last pass went to `receiver`: a listed move, the own place, or after the pass."""
    if not walker.first and not walker.kicks and not walker.moved:
        return Onward(goal=None)  # played to, its own turn comes in the next round
    move = _listed_move(script, walker)
    if move is not None:
        goal = words.get(move.to, move.to)
        return Onward(goal=goal, direct=receiver is not None and receiver.place == goal)
    kinds = {rotation.kind for rotation in fixed_rotations(script)}
    if RotationKind.STAY in kinds:
        return Onward(goal=walker.place)
    if receiver is not None and receiver is not walker:
        place = exercise.place(receiver.place)
        if place is not None and place.adult:
            return Onward(goal=walker.place)
        guessed = walker.kicks > 1 and RotationKind.FOLLOW not in kinds
        return Onward(goal=receiver.place, direct=True, guessed=guessed)
    return Onward(goal=walker.place if walker.has_ball and walker.moved else None)


def _listed_move(script: Script, walker: Walker) -> Move | None:
    """What the rotation lists for a bearer; who comes after it at its place in the same round has no turn yet."""
    for rotation in fixed_rotations(script):
        for move in rotation.moves:
            if walker.first and move.who in (walker.role, walker.place):
                return move
    return None
