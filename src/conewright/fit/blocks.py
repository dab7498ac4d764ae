"""A chosen option written out as a block of the evening: copies, kit, groups, reason, findings; must not choose."""

from collections import Counter
from dataclasses import replace

from conewright.fit.bench import Bench
from conewright.fit.colours import PLAIN
from conewright.fit.findings import findings
from conewright.fit.merits import balls_share, contacts_a_minute
from conewright.fit.needs import bib_of
from conewright.fit.options import Option
from conewright.fit.parts import Chosen, copies_of
from conewright.fit.suiting import MADE_FOR, OF_THE_KIND, spoken_of, suit
from conewright.fit.wording import PART_NAMES, listed, number, percent, sentence
from conewright.model.exercise import PlayKind
from conewright.model.layout import Side
from conewright.model.rehearsed import Rehearsal
from conewright.model.session import Block, Copy


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
