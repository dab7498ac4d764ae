"""What is to be said about one block: what fitting changed, and what its trials found; must not choose."""

from dataclasses import replace

from conewright.fit.bench import Bench
from conewright.fit.options import Option
from conewright.fit.parts import Chosen
from conewright.fit.suiting import OF_THE_KIND, suit
from conewright.fit.wording import PART_NAMES, counted, listed, metres, number, percent, sentence
from conewright.model.problem import Problem, Severity

SEVERITIES = tuple(Severity)
STEPS = "step-"  # what the codes of findings about steps up and down begin with


def findings(chosen: Chosen, bench: Bench) -> tuple[Problem, ...]:
    """What is to be said about the block: what fitting changed, then what the trials found; the heaviest first."""
    option = chosen.option
    placing = option.attempt.placing
    scale = placing.scale if placing else 1.0
    sizes = sorted(set(option.arrangement.sizes), reverse=True)
    tried = {size: _of_tonight(bench.trial(option.exercise, size, scale).findings) for size in sizes}
    found = (*_fitting(chosen, bench), *_by_copy(tried))
    return tuple(sorted(dict.fromkeys(found), key=lambda finding: SEVERITIES.index(finding.severity)))


def _of_tonight(findings: tuple[Problem, ...]) -> tuple[Problem, ...]:
    """What concerns the exercise as it is laid out tonight; what its steps change is told where they are."""
    return tuple(finding for finding in findings if not finding.code.startswith(STEPS))


def _by_copy(tried: dict[int, tuple[Problem, ...]]) -> tuple[Problem, ...]:
    """What the trials of all sizes found; what is not said alike of all names the copy it is said of."""
    everywhere = frozenset.intersection(*(frozenset(findings) for findings in tried.values()))
    return tuple(
        finding if finding in everywhere else replace(finding, message=f"Copy of {size}: {finding.message}")
        for size, findings in tried.items()
        for finding in findings
    )


def _fitting(chosen: Chosen, bench: Bench) -> tuple[Problem, ...]:
    option = chosen.option
    return (
        *_stands_in(chosen),
        *_resting(option, bench),
        *_keepers(option, bench),
        *_short(option),
        *_scale(option),
        *_recoloured(option),
    )


def _look(code: str, message: str, hint: str = "") -> Problem:
    return Problem(code=code, severity=Severity.LOOK, message=message, hint=hint)


def _know(code: str, message: str) -> Problem:
    return Problem(code=code, severity=Severity.KNOW, message=message)


def _stands_in(chosen: Chosen) -> tuple[Problem, ...]:
    if suit(chosen.option.exercise, chosen.slot.job) >= OF_THE_KIND:
        return ()
    message = f"Nothing made for {PART_NAMES[chosen.slot.job]} fits tonight; {chosen.option.exercise.name} stands in."
    return (_look("stands-in", message, "Begin gently where it is the first block."),)


def _resting(option: Option, bench: Bench) -> tuple[Problem, ...]:
    resting = option.arrangement.resting
    if not resting:
        return ()
    verb = "rests" if resting == 1 else "rest"
    message = f"{number(resting)} of {bench.asked.here} {verb} in turn: no sizes of it hold everybody."
    return (_look("rests", message[:1].upper() + message[1:], "Change who rests every round or every two minutes."),)


def _keepers(option: Option, bench: Bench) -> tuple[Problem, ...]:
    places = sum(1 for place in option.exercise.places if place.keeper) * len(option.arrangement.sizes)
    free = places - option.arrangement.keepers
    if not free:
        return ()
    message = f"{counted(free, 'goal')} without a keeper tonight: the two corners are the targets."
    return (_know("no-keeper", message),)


def _short(option: Option) -> tuple[Problem, ...]:
    taken, colours = option.attempt.taken, option.attempt.colours
    found = [_look("stand-in-kit", sentence(words), "Bring it, or use what stands in.") for words in taken.stand_ins]
    if colours is not None and colours.short:
        words = listed(tuple(f"{counted(count, bib.value.lower() + ' bib')}" for bib, count in colours.short))
        found.append(_look("bibs-short", f"{words} short.", "Shirts of one colour, or sleeves rolled up, will do."))
    return tuple(found)


def _scale(option: Option) -> tuple[Problem, ...]:
    placing = option.attempt.placing
    if placing is None or placing.scale == 1.0:
        return ()
    word = "smaller" if placing.scale < 1 else "larger"
    reason = "to fit the ground" if placing.scale < 1 else "to give each child more ground"
    play = option.exercise.open_play
    size = f", {_instead(play.width_m, play.depth_m, placing.scale)}" if play is not None else ""
    return (_know("scaled", f"Laid out {word}, at {percent(placing.scale)} of the written lengths{size}, {reason}."),)


def _instead(width_m: float, depth_m: float, scale: float) -> str:
    written = f"{metres(width_m)} by {metres(depth_m)} m"
    return f"{metres(width_m * scale)} by {metres(depth_m * scale)} m instead of {written}"


def _recoloured(option: Option) -> tuple[Problem, ...]:
    colours = option.attempt.colours
    if colours is None or not colours.changed:
        return ()
    return (_know("recoloured", "The bibs do not stretch to the colours of the text; the groups say who wears what."),)
