"""Which exercises suit which part of an evening, and how far one speaks of the aim; must not know numbers or ground."""

import re

from conewright.model.exercise import Exercise, PlayKind
from conewright.model.session import Job

MADE_FOR = 1.0  # the text says it is good for this part
OF_THE_KIND = 0.8  # the text says nothing, and its kind is usual for this part
STANDS_IN = 0.2  # neither, but it has a ball and may fill the part where nothing else does

JOBS_OF_KIND: dict[str, tuple[Job, ...]] = {
    "passing pattern": (Job.WARM_UP, Job.MAIN),
    "receiving and turning": (Job.WARM_UP, Job.MAIN),
    "dribbling": (Job.ARRIVAL, Job.WARM_UP, Job.MAIN),
    "finishing": (Job.MAIN,),
    "crossing": (Job.MAIN,),
    "goalkeeping": (Job.MAIN,),
    "duel": (Job.OPPOSED,),
    "rondo": (Job.ARRIVAL, Job.WARM_UP, Job.OPPOSED),
    "possession": (Job.OPPOSED,),
    "transition game": (Job.OPPOSED, Job.GAME),
    "small-sided game": (Job.GAME,),
    "fun game": (Job.ARRIVAL, Job.WARM_UP, Job.CLOSE),
    "warm-up": (Job.ARRIVAL, Job.WARM_UP),
    "relay": (Job.WARM_UP,),
    "set piece": (Job.MAIN,),
    "circuit": (Job.MAIN,),
    "cool-down": (Job.CLOSE,),
}

GAMES = frozenset({"small-sided game", "transition game"})
CALM = "cool-down"

SILENT = frozenset(
    "a an the and or of to in on at by for with from into we our it its as is be are do not one two both off out up"
    " work working practise practising more better learn learning tonight".split()
)
ENDINGS = ("ingly", "ings", "ing", "ers", "er", "ed", "es", "ly", "s")
SHORTEST_STEM = 3
WORD = re.compile(r"[^\W\d_]+")


def suit(exercise: Exercise, job: Job) -> float:
    """How well an exercise suits a part of the evening, 0 to 1; 0 means not at all."""
    if exercise.good_for:
        made_for = any(job.value in _part(said) for said in exercise.good_for)
        return MADE_FOR if made_for else _stand_in(exercise, job)
    if job in JOBS_OF_KIND.get(exercise.kind, ()):
        return OF_THE_KIND
    return _stand_in(exercise, job)


def _part(said: str) -> str:
    return " ".join(said.lower().replace("warm up", "warm-up").split())


def _stand_in(exercise: Exercise, job: Job) -> float:
    """A close is left out rather than filled with something lively, and a calm exercise serves only there."""
    return 0.0 if job is Job.CLOSE or exercise.kind == CALM else STANDS_IN


def is_opposed(exercise: Exercise) -> bool:
    """Whether children play against each other in it."""
    play = exercise.open_play
    if play is not None and play.kind is not PlayKind.BALL_EACH:
        return True
    return exercise.script is not None and any(step.contest is not None for step in exercise.script.steps)


def is_game(exercise: Exercise) -> bool:
    """Whether two sides score against each other in it."""
    return exercise.kind in GAMES or (exercise.open_play is not None and exercise.open_play.kind is PlayKind.GAME)


def stems(text: str) -> frozenset[str]:
    """The stems of the words that carry meaning: "turning out" and "turns" share "turn"."""
    words = (match.group().lower() for match in WORD.finditer(text))
    return frozenset(stem(word) for word in words if word not in SILENT)


def stem(word: str) -> str:
    """A word without its ending: passing, passes and passer give "pass", running gives "run"."""
    if word.endswith("ss"):
        return word
    for ending in ENDINGS:
        bare = word.removesuffix(ending)
        if bare == word or len(bare) < SHORTEST_STEM or (ending.startswith("e") and bare.endswith("e")):
            continue
        doubled = len(bare) > SHORTEST_STEM and bare[-1] == bare[-2] and bare[-1] not in "sl"
        return (bare[:-1] if doubled else bare).removesuffix("e")
    return word.removesuffix("e") if len(word) > SHORTEST_STEM else word


def spoken_of(exercise: Exercise, aim: str) -> tuple[str, ...]:
    """The words of the aim that the exercise speaks of in its aims, its kind or its name, in the order of the aim."""
    says = stems(" ".join((exercise.name, exercise.kind, *exercise.aims)))
    words = (match.group().lower() for match in WORD.finditer(aim))
    return tuple(dict.fromkeys(word for word in words if word not in SILENT and stem(word) in says))


def relevance(exercise: Exercise, aim: str) -> float:
    """The share of the aim's words the exercise speaks of, 0 to 1; 1 where there is no aim."""
    wanted = stems(aim)
    if not wanted:
        return 1.0
    return len({stem(word) for word in spoken_of(exercise, aim)}) / len(wanted)
