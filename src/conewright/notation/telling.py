"""An exercise said back as a coach tells it to the children: to start with, role by role, and what to ask them.

Everything here follows from the text and the round it unrolls to; what the text does not say is not told. Must not know
how long anything takes.
"""

from conewright.model.exercise import Exercise, Rotation, RotationKind
from conewright.model.layout import one_copy
from conewright.model.told import Question, Told
from conewright.model.unroll import rounds_of
from conewright.notation.amounts import capital, listed, people
from conewright.notation.duels import contest_talk
from conewright.notation.games import game_opening, game_questions, game_roles, game_talk, score_sentence, sentence
from conewright.notation.openings import what_it_is, which_way, who_stands_where
from conewright.notation.quizzing import MOST, round_questions
from conewright.notation.roles import roles_told
from conewright.notation.spoken import Scene, line_or_spot, named, seconds, turns, when


def told(exercise: Exercise, size: int) -> Told:
    """What to tell one copy of `size` children, and what to ask them afterwards."""
    own = one_copy(exercise, size)
    play = own.open_play
    scenes = tuple(Scene(exercise=own, round_=round_) for round_ in rounds_of(own)[0]) if own.script else ()
    first = scenes[0] if scenes else None
    opening = (who_stands_where(own, size), which_way(first)) if first else ()
    questions = round_questions(first, size) if first else ()
    return Told(
        opening=(what_it_is(own), *(opening or (game_opening(own, play, size) if play else _unsaid(own)))),
        roles=(*roles_told(own, scenes), *(game_roles(own, play, size) if play else ())),
        everybody=tuple(line for line in (*_round_talk(first), *_play_talk(own)) if line),
        questions=(*questions, *(game_questions(own, play, size) if play else ()))[:MOST] or _one_at_least(own),
    )


def _unsaid(exercise: Exercise) -> tuple[str, str]:
    """Where the text says neither a round nor a game."""
    numbers = exercise.numbers
    return f"It is for {numbers.least} to {numbers.most} of you.", "Watch me walk it once before you start."


def _one_at_least(exercise: Exercise) -> tuple[Question, ...]:
    return (Question(asks="What is it called?", answer=sentence(exercise.name)),)


def _play_talk(exercise: Exercise) -> tuple[str, ...]:
    play = exercise.open_play
    care = tuple(f"Take care: {sentence(caution)}" for caution in exercise.cautions)
    return (*(game_talk(play) if play else ()), score_sentence(exercise.score), *care)


# --- what holds for all in a round ---


def _round_talk(scene: Scene | None) -> tuple[str, ...]:
    script = scene.exercise.script if scene else None
    if scene is None or script is None:
        return ()
    changes = [_change(scene, rotation) for rotation in script.rotations]
    half_time = "At half time we do it the other way round: left is right." if script.mirrored_at_half_time else ""
    return (capital(turns(scene)), *contest_talk(scene), _again(scene), *changes, half_time)


def _again(scene: Scene) -> str:
    """What starts the next round; without a word it waits until all are in place."""
    script = scene.exercise.script
    trigger = script.next_round.trigger if script and script.next_round else None
    if trigger is None:
        return "We go again as soon as everybody is in place."
    return f"The next one starts {when(scene, trigger)}."


def _change(scene: Scene, rotation: Rotation) -> str:
    """A change that comes every so many rounds or seconds; what follows every round is told with the roles."""
    if rotation.every_s is None and rotation.every_rounds == 1:
        return ""
    often = (
        f"Every {seconds(rotation.every_s)}" if rotation.every_s else f"Every {people(rotation.every_rounds)} rounds"
    )
    if rotation.kind is RotationKind.FOLLOW:
        return f"{often} everybody follows the pass."
    if rotation.kind is RotationKind.STAY:
        return f"{often} everybody goes back to their own place."
    ways = [f"{named(scene, move.who)} goes to {_goal(scene, move.to)}" for move in rotation.moves]
    return f"{often} {listed(ways)}." if ways else ""


def _goal(scene: Scene, name: str) -> str:
    place = scene.exercise.place(scene.meant(name))
    return line_or_spot(place) if place is not None else named(scene, name)
