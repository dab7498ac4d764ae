"""What a coach asks to see whether they know where to run, with the answers; must not know how it was told to them."""

from collections.abc import Iterator

from conewright.model.exercise import Exercise, Holds, SideOrder, Verb
from conewright.model.layout import standing
from conewright.model.round import Bearer, Played
from conewright.model.told import Question
from conewright.notation.amounts import capital, people
from conewright.notation.doing import after_own_pass
from conewright.notation.duels import won_words
from conewright.notation.spoken import Scene, comes_second, line_or_spot, turns, when, who

FEWEST, MOST = 2, 3


def round_questions(scene: Scene, size: int) -> tuple[Question, ...]:
    """Two or three questions about a round."""
    asked = {question.asks: question for question in _questions(scene) if question is not None}
    told = tuple(asked.values())[:MOST]
    if len(told) < FEWEST:
        told += tuple(_counts(scene.exercise, size))[: FEWEST - len(told)]
    return told


def _questions(scene: Scene) -> Iterator[Question | None]:
    passer = next((one for one in scene.round_.acts if _is_pass(scene, one)), None)
    if passer is not None:
        yield _where_after(scene, passer)
        yield _who_next(scene, passer)
    else:
        yield _where_at_the_end(scene)
    asked, answer = won_words(scene)
    yield Question(asks=asked, answer=answer) if asked else None
    yield _next_start(scene)
    sides = turns(scene)
    yield Question(asks="Whose turn is it?", answer=sides) if sides and _in_turn(scene) else None


def _in_turn(scene: Scene) -> bool:
    script = scene.exercise.script
    return bool(script and script.sides and script.sides.order in (SideOrder.IN_TURN, SideOrder.HALF_TIME))


def _is_pass(scene: Scene, played: Played) -> bool:
    """A ball to somebody else, by a child."""
    return played.receiver not in (None, played.bearer) and not scene.round_.bearers[played.bearer].adult


def _where_after(scene: Scene, played: Played) -> Question | None:
    bearer = scene.round_.bearers[played.bearer]
    kicks = [one for one in scene.round_.acts if one.bearer == bearer.number and _is_pass(scene, one)]
    kick = "throw" if kicks[-1].verb is Verb.THROW else "pass"
    asks = f"You start at {_start(scene, bearer)}. Where do you go after your {'last ' if kicks[1:] else ''}{kick}?"
    receiver = scene.round_.bearers[kicks[-1].receiver or 0]
    answer = _goal(scene, bearer)
    follows = receiver.place == bearer.ends_at and receiver.place != bearer.place
    return Question(asks=asks, answer=f"{answer}{' You follow your pass.' if follows else ''}") if answer else None


def _start(scene: Scene, bearer: Bearer) -> str:
    return who(scene, bearer.number)


def _goal(scene: Scene, bearer: Bearer) -> str:
    """Where a bearer ends, as an answer; empty where the round does not say it."""
    place = scene.exercise.place(bearer.ends_at)
    if place is None or scene.round_.contest is not None:
        return ""
    if bearer.stays:
        return f"Nowhere: you stay at {place.name}."
    if place.name == bearer.place:
        return "Back to the end of your own line." if place.holds is Holds.LINE else "Back to your own place."
    homeward = next((one for one in scene.round_.acts if one.bearer == bearer.number and one.homeward), None)
    if homeward is not None and after_own_pass(scene, homeward):
        return "To the end of the line you passed to."
    return f"To {line_or_spot(place)}."


def _who_next(scene: Scene, played: Played) -> Question | None:
    """Who gets the ball from the one who got it first; where it is brought to, if nobody gets it."""
    receiver = scene.round_.bearers[played.receiver or 0]
    if receiver.adult or comes_second(scene, receiver):
        return None
    later = [one for one in scene.round_.acts[played.number :] if one.bearer == receiver.number]
    onward = next((one for one in later if one.receiver not in (None, receiver.number)), None)
    start = f"You start at {_start(scene, receiver)}, and the ball comes to you."
    if onward is not None:
        return Question(asks=f"{start} Who gets it next?", answer=f"{capital(who(scene, onward.receiver or 0))}.")
    end = _goal(scene, receiver) if any(one.with_ball and one.homeward for one in later) else ""
    return Question(asks=f"{start} Where do you take it?", answer=end) if end else None


def _where_at_the_end(scene: Scene) -> Question | None:
    movers = [one for one in scene.round_.bearers if not one.adult and not one.stays and _goal(scene, one)]
    if not movers:
        return None
    asks = f"You start at {_start(scene, movers[0])}. Where do you go at the end?"
    return Question(asks=asks, answer=_goal(scene, movers[0]))


def _next_start(scene: Scene) -> Question | None:
    script = scene.exercise.script
    trigger = script.next_round.trigger if script and script.next_round else None
    if trigger is None:
        return Question(asks="When do we go again?", answer="As soon as everybody is in place.")
    return Question(asks="When does the next one start?", answer=f"{capital(when(scene, trigger))}.")


def _counts(exercise: Exercise, size: int) -> Iterator[Question]:
    for name, count in standing(exercise, size).items():
        if count:
            yield Question(asks=f"How many of you start at {name}?", answer=f"{capital(people(count))}.")
