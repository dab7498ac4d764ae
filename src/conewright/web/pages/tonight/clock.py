"""The evening along the clock: blocks and pauses with their hours; must not know what happens in a block."""

from dataclasses import dataclass
from datetime import datetime, timedelta

from conewright.model.session import Block, Job, PauseKind, Session

JOBS = {
    Job.ARRIVAL: "arrival",
    Job.WARM_UP: "warm-up",
    Job.MAIN: "main work",
    Job.OPPOSED: "opposed work",
    Job.GAME: "game",
    Job.CLOSE: "close",
}
PAUSES = {PauseKind.CHANGEOVER: "changeover", PauseKind.DRINKS: "drinks and changeover"}
TICK_MIN = 10
DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
MONTHS = (
    *("January", "February", "March", "April", "May", "June"),
    *("July", "August", "September", "October", "November", "December"),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """A stretch of the clock: a block with its number, or a pause (number 0)."""

    minutes: int
    begins: str
    name: str
    does: str
    number: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Tick:
    """An hour over the clock and how far it is to the next."""

    minutes: int
    words: str
    last: bool = False


def begins_at(now: datetime, starts: str, days: tuple[str, ...]) -> datetime:
    """The next training: today where today is one and its hour has not long gone, else the next day that is."""
    hour, minute = (int(part) for part in starts.split(":"))
    first = now.replace(hour=hour, minute=minute, second=0, microsecond=0)
    wanted = {DAYS.index(day) for day in days if day in DAYS} or {now.weekday()}
    begins = (first + timedelta(days=ahead) for ahead in range(8))
    late = timedelta(hours=3)  # an evening that has begun is still tonight's
    return next(one for one in begins if one.weekday() in wanted and now < one + late)


def when_words(begins: datetime, minutes: int) -> str:
    """ "Tuesday 3 June, 17:45 to 18:55"."""
    day = f"{DAYS[begins.weekday()]} {begins.day} {MONTHS[begins.month - 1]}"
    return f"{day}, {at(begins, 0)} to {at(begins, minutes)}"


def at(begins: datetime, minutes: float) -> str:
    """The hour so many minutes after the start."""
    return f"{begins + timedelta(minutes=minutes):%H:%M}"


def pieces_of(session: Session, begins: datetime) -> tuple[Piece, ...]:
    """Blocks and pauses in the order of the clock."""
    blocks = [(block.start_min, _block(block, number, begins)) for number, block in enumerate(session.blocks, 1)]
    pauses = [
        (
            pause.start_min,
            Piece(
                minutes=max(1, round(pause.minutes)),
                begins=at(begins, pause.start_min),
                name=PAUSES[pause.kind],
                does="",
            ),
        )
        for pause in session.pauses
    ]
    return tuple(piece for _, piece in sorted((*blocks, *pauses), key=lambda pair: pair[0]))


def _block(block: Block, number: int, begins: datetime) -> Piece:
    copies = f", {len(block.copies)} copies" if len(block.copies) > 1 else ""
    return Piece(
        minutes=max(1, round(block.minutes)),
        begins=at(begins, block.start_min),
        name=block.exercise.name,
        does=f"{JOBS[block.job]}{copies}",
        number=number,
    )


def ticks_of(minutes: int, begins: datetime) -> tuple[Tick, ...]:
    """An hour each ten minutes, and the end at the end."""
    step = TICK_MIN if minutes <= 120 else 3 * TICK_MIN
    starts = range(0, minutes, step)
    ticks = [Tick(minutes=min(step, minutes - start), words=at(begins, start)) for start in starts]
    last = ticks[-1]
    if last.minutes * 2 <= step and len(ticks) > 1:  # no room for two hours in a short end
        return (*ticks[:-1], Tick(minutes=last.minutes, words=at(begins, minutes), last=True))
    half = last.minutes // 2
    ticks[-1] = Tick(minutes=last.minutes - half, words=last.words)
    return (*ticks, Tick(minutes=half, words=at(begins, minutes), last=True)) if half else tuple(ticks)
