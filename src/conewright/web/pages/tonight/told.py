"""What children are told: the sentences of an exercise, cut from its own text; must not know how they are read."""

from dataclasses import dataclass

from conewright.model.exercise import Exercise
from conewright.model.problem import Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Sentence:
    """A sentence as it was written; `step` is its number, 0 for one without."""

    step: int
    words: str


def sentences_of(exercise: Exercise, text: str) -> tuple[Sentence, ...]:
    """The sentences of the round or of the game, in the order they were written, each once."""
    lines = text.split("\n")
    found: dict[Span, Sentence] = {}
    for step, span in _spans(exercise):
        words = _cut(lines, span)
        if words:
            found.setdefault(span, Sentence(step=step, words=_stopped(_without_number(words, step))))
    by_place = sorted(found, key=lambda span: (span.line, span.column))
    return (*(found[span] for span in by_place), *_of_the_game(exercise))


def _of_the_game(exercise: Exercise) -> tuple[Sentence, ...]:
    """What is kept as free words: swap, restart, rules and how it is scored."""
    play = exercise.open_play
    words = [("Swap", play.swap), ("Restart", play.restart), *(("Rule", rule) for rule in play.rules)] if play else []
    words.append(("Score", exercise.score))
    return tuple(Sentence(step=0, words=_stopped(f"{key}: {said}")) for key, said in words if said)


def _stopped(words: str) -> str:
    return words if words.endswith((".", "!", "?")) else f"{words}."


def _spans(exercise: Exercise) -> list[tuple[int, Span]]:
    script, play = exercise.script, exercise.open_play
    spans: list[tuple[int, Span | None]] = []
    if script is not None:
        spans += [(step.number, step.span) for step in script.steps]
        spans += [(0, outcome.span) for step in script.steps if step.contest for outcome in step.contest.outcomes]
        spans += [(0, rotation.span) for rotation in script.rotations]
        spans += [(0, script.next_round.span)] if script.next_round else []
    spans += [(0, play.span)] if play is not None else []
    return [(step, span) for step, span in spans if span is not None]


def _cut(lines: list[str], span: Span) -> str:
    rows = lines[span.line - 1 : span.end_line]
    if not rows:
        return ""
    rows[-1] = rows[-1][: span.end_column - 1]
    rows[0] = rows[0][span.column - 1 :]
    return " ".join(" ".join(rows).split())


def _without_number(words: str, step: int) -> str:
    return words.removeprefix(f"{step}.").strip() if step else words
