"""A chosen option written out as a block of the evening: copies, kit, groups, reason, findings; must not choose."""

from collections import Counter
from dataclasses import replace

from conewright.fit.bench import Bench
from conewright.fit.colours import PLAIN
from conewright.fit.merits import balls_share, contacts_a_minute
from conewright.fit.needs import bib_of
from conewright.fit.options import Option
from conewright.fit.parts import Chosen, copies_of
from conewright.fit.suiting import MADE_FOR, OF_THE_KIND, spoken_of, suit
from conewright.fit.wording import counted, listed, metres, number, percent, sentence
from conewright.model.exercise import PlayKind
from conewright.model.layout import Side
from conewright.model.problem import Problem, Severity
from conewright.model.rehearsed import Rehearsal
from conewright.model.session import Block, Copy, Job

PART_NAMES = {
    Job.ARRIVAL: "arriving",
    Job.WARM_UP: "warming up",
    Job.MAIN: "main work",
    Job.OPPOSED: "opposed work",
    Job.GAME: "the game",
    Job.CLOSE: "the close",
}
SEVERITIES = tuple(Severity)


def block_of(chosen: Chosen, bench: Bench) -> Block:
    """The block of a chosen option, without answers for other head counts."""
    option, slot = chosen.option, chosen.slot
    copies = dressed_copies(option, bench)
    return Block(
        job=slot.job,
        exercise=option.exercise,
        start_min=float(slot.start_min),
        minutes=float(slot.minutes),
        copies=copies,
        kit=option.attempt.taken.kit,
        groups=groups(copies, keepers=option.arrangement.keepers, resting=option.arrangement.resting),
        why=why(chosen, bench),
        findings=findings(chosen, bench),
        resting=option.arrangement.resting,
        keepers=option.arrangement.keepers,
    )


def dressed_copies(option: Option, bench: Bench) -> tuple[Copy, ...]:
    """The copies where they stand, with sides, colours and rehearsals."""
    colours = option.attempt.colours
    bare = copies_of(option)
    if colours is None:
        return bare
    return tuple(
        replace(
            copy,
            sides=sides,
            bib=bib,
            rehearsed=bench.trial(option.exercise, copy.size, copy.scale).rehearsed,
        )
        for copy, sides, bib in zip(bare, colours.sides, colours.copies, strict=True)
    )


def groups(copies: tuple[Copy, ...], *, keepers: int, resting: int) -> str:
    """Who is where, in words: "Yellow seven, Blue six"; copies with the same sides are told together."""
    if len(copies) == 1:
        words = _alone(copies[0])
    elif not any(copy.bib for copy in copies):
        words = "; ".join(_alike(sides, count) for sides, count in Counter(map(_sides, copies)).items())
    else:
        words = ", ".join(_copy(copy) for copy in copies)
    more = (
        f", {number(keepers)} in goal" if keepers else "",
        f", {number(resting)} {'rests' if resting == 1 else 'rest'} in turn" if resting else "",
    )
    return words[:1].upper() + words[1:] + "".join(more)


def _alone(copy: Copy) -> str:
    if len(copy.sides) > 1:
        return _sides(copy)
    return f"all {number(copy.size)} together" if copy.size > 1 else "one alone"


def _alike(sides: str, count: int) -> str:
    return f"{number(count)} {'copies' if count > 1 else 'copy'} of {sides}"


def _copy(copy: Copy) -> str:
    return f"{copy.bib.value} {number(copy.size)}" if copy.bib is not None else f"{number(copy.size)} {PLAIN}"


def _sides(copy: Copy) -> str:
    if len(copy.sides) > 1:
        return ", ".join(_side(side) for side in copy.sides if side.count)
    return number(copy.size)


def _side(side: Side) -> str:
    """A colour leads, any other word follows: "Yellow seven", "one neutral", "one rests in turn"."""
    count, name = number(side.count), side.team.name
    if bib_of(side.team) is not None:
        return f"{name} {count}"
    return f"{count} {name.replace('rests', 'rest') if side.count > 1 else name}"


def why(chosen: Chosen, bench: Bench) -> str:
    """Why this exercise stands in this slot, in a sentence."""
    option, part = chosen.option, PART_NAMES[chosen.slot.job]
    suits = suit(option.exercise, chosen.slot.job)
    words = spoken_of(option.exercise, bench.asked.aim)
    if suits == MADE_FOR:
        reason = f"it is made for {part}"
    elif suits == OF_THE_KIND:
        reason = f"its kind, {option.exercise.kind}, suits {part}"
    else:
        reason = f"it stands in for {part}, where nothing made for it fits"
    spoken = f" and speaks of {listed(words)}" if words else ""
    return sentence(f"{reason}{spoken}; {_figure(option, bench)}")


def _figure(option: Option, bench: Bench) -> str:
    """The figure that says most about the option, rehearsed or estimated."""
    copies = dressed_copies(option, bench)
    played = tuple(copy.rehearsed for copy in copies if isinstance(copy.rehearsed, Rehearsal))
    if len(played) == len(copies):
        share = by_size(copies, tuple(one.waiting_share for one in played))
        mark = bench.figures.at("waiting_mark_share", age=bench.asked.age)
        side = "under" if share <= mark else "over"
        return f"a child waits {percent(share)} of the time, {side} the mark of {percent(mark)}"
    if _everyone_has_a_ball(option):
        return "everyone has a ball"
    low, high = contacts_of(option, copies)
    if low is None or high is None:
        return "how it goes is left to the children and was not rehearsed"
    return f"an estimate gives {low:.0f} to {high:.0f} foot contacts a child a minute"


def contacts_of(option: Option, copies: tuple[Copy, ...]) -> tuple[float | None, float | None]:
    """Foot contacts a child a minute over all copies, low and high; None where a copy has no figure."""
    found = tuple(contacts_a_minute(copy.rehearsed) for copy in copies if copy.rehearsed is not None)
    known = tuple(one for one in found if one is not None)
    if len(known) < len(copies):
        return None, None
    share = balls_share(option.attempt)
    return share * by_size(copies, tuple(low for low, _ in known)), share * by_size(
        copies, tuple(high for _, high in known)
    )


def by_size(copies: tuple[Copy, ...], values: tuple[float, ...]) -> float:
    """The mean of a value of each copy, weighed by its children."""
    sizes = tuple(copy.size for copy in copies)
    return sum(size * value for size, value in zip(sizes, values, strict=True)) / sum(sizes)


def _everyone_has_a_ball(option: Option) -> bool:
    play = option.exercise.open_play
    return play is not None and play.kind is PlayKind.BALL_EACH and balls_share(option.attempt) == 1.0


def findings(chosen: Chosen, bench: Bench) -> tuple[Problem, ...]:
    """What is to be said about the block: what fitting changed, then what the trials found; the heaviest first."""
    option = chosen.option
    placing = option.attempt.placing
    scale = placing.scale if placing else 1.0
    tried = (bench.trial(option.exercise, size, scale).findings for size in sorted(set(option.arrangement.sizes)))
    found = (*_fitting(chosen, bench), *(finding for each in tried for finding in each))
    return tuple(sorted(dict.fromkeys(found), key=lambda finding: SEVERITIES.index(finding.severity)))


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
