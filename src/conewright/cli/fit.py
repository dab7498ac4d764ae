"""`fit`: an evening for whoever came, as sentences or JSON; must not know how it is chosen."""

from argparse import ArgumentParser, Namespace
from datetime import datetime

from conewright.cli.command import Command
from conewright.cli.json_form import print_json, session_form
from conewright.cli.prose import counted, decimal, listed, metres, percent, table, wrapped
from conewright.cli.tonight import add_tonight, at, fitted, starts_of, tonight_of
from conewright.cli.wrong import CLEAN, MEND
from conewright.model.problem import Problem, Severity, is_clean
from conewright.model.session import Block, HeadAnswer, Job, Kit, PauseKind, Session, Tonight
from conewright.store.answers import surface_words

JOBS = {
    Job.ARRIVAL: "arrival",
    Job.WARM_UP: "warm-up",
    Job.MAIN: "main work",
    Job.OPPOSED: "opposed work",
    Job.GAME: "game",
    Job.CLOSE: "close",
}
PAUSES = {PauseKind.CHANGEOVER: "change over", PauseKind.DRINKS: "drinks, change over"}


def _add_words(parser: ArgumentParser) -> None:
    add_tonight(parser)
    parser.add_argument("--json", action="store_true", help="answer as JSON")


def _run(words: Namespace) -> int:
    tonight, starts = tonight_of(words), starts_of(words)
    session = fitted(tonight)
    if words.json:
        print_json(session_form(session))
    else:
        print(_words(session, starts))
    return verdict(session)


def verdict(session: Session) -> int:
    """The exit code of an evening: 1 where nothing fits or something in it has to be mended."""
    clean = is_clean(session.problems) and all(is_clean(block.findings) for block in session.blocks)
    return CLEAN if clean and session.blocks else MEND


def _words(session: Session, starts: datetime) -> str:
    urgent = [problem for problem in session.problems if problem.severity is not Severity.KNOW]
    later = [problem for problem in session.problems if problem.severity is Severity.KNOW]
    parts = [_asked(session.tonight), *(finding(problem) for problem in urgent)]
    if session.blocks:
        share = percent(session.rolling_share)
        parts += [_clock(session, starts), f"{share} of the evening is planned with a ball rolling (an estimate)."]
    parts += [finding(problem) for problem in later]
    parts += [_block(block, starts) for block in session.blocks]
    return "\n\n".join(parts)


def _asked(tonight: Tonight) -> str:
    ground = f"{metres(tonight.width_m)} by {metres(tonight.depth_m)} m of {surface_words(tonight.surface)}"
    keepers = f", {counted(tonight.keepers, 'keeper')} among them" if tonight.keepers else ""
    bibs = [f"{count} {bib.value.lower()}" for bib, count in tonight.bibs] or ["no"]
    kit = [
        counted(tonight.balls, "ball"),
        counted(tonight.cones, "cone"),
        *([counted(tonight.mini_goals, "mini goal")] if tonight.mini_goals else []),
        *([counted(tonight.goals, "goal")] if tonight.goals else []),
        *bibs[:-1],
        f"{bibs[-1]} bibs",
    ]
    aim = f" We work on {tonight.aim}." if tonight.aim else ""
    who = f"{counted(tonight.here, 'child', 'children')} under {tonight.age}{keepers}"
    adults = counted(tonight.adults, "adult")
    return wrapped(f"{who}, {tonight.minutes} minutes, {ground}, {listed(kit)}, {adults}.{aim}")


def _clock(session: Session, starts: datetime) -> str:
    rows = [(block.start_min, _block_row(block, starts)) for block in session.blocks]
    rows += [
        (pause.start_min, (at(starts, pause.start_min), _minutes(pause.minutes), PAUSES[pause.kind], "", ""))
        for pause in session.pauses
    ]
    ends = (at(starts, session.tonight.minutes), "", "end", "", "")
    ordered = sorted(rows, key=lambda row: row[0])
    return table([*(row for _, row in ordered), ends], left=5)


def _block_row(block: Block, starts: datetime) -> tuple[str, ...]:
    begins = at(starts, block.start_min)
    return begins, _minutes(block.minutes), block.exercise.name, JOBS[block.job], block.groups


def _minutes(minutes: float) -> str:
    return f"{minutes:g} min".rjust(6)


def _block(block: Block, starts: datetime) -> str:
    title = f"{block.exercise.name}, {at(starts, block.start_min)} to {at(starts, block.start_min + block.minutes)}"
    lines = [title, "=" * len(title), wrapped(block.why)] if block.why else [title, "=" * len(title)]
    lines += [wrapped(f"Groups: {block.groups}.")] if block.groups else []
    lines.append(wrapped(f"Needs {kit_words(block.kit)}."))
    parts = ["\n".join(lines)]
    parts += ["\n".join(wrapped(cue, first="  - ", indent="    ") for cue in block.exercise.cues)]
    parts += [_answers(block.answers, block.players)] if block.answers else []
    parts += [finding(problem) for problem in block.findings]
    return "\n\n".join(part for part in parts if part)


def kit_words(kit: Kit) -> str:
    """The kit of a block in words."""
    parts = [
        *([counted(kit.balls, "ball")] if kit.balls else []),
        *([counted(kit.cones, "cone")] if kit.cones else []),
        *([counted(kit.mini_goals, "mini goal")] if kit.mini_goals else []),
        *([counted(kit.goals, "goal")] if kit.goals else []),
        *(f"{count} {bib.value.lower()} bibs" for bib, count in kit.bibs if count),
    ]
    return listed(parts) or "no kit"


def _answers(answers: tuple[HeadAnswer, ...], here: int) -> str:
    about = any(answer.estimated for answer in answers)
    rows = [
        ("children here", *(f"[{answer.here}]" if answer.here == here else str(answer.here) for answer in answers)),
        ("groups of", *("+".join(map(str, answer.sizes)) or "-" for answer in answers)),
        ("waiting, share of the time", *(percent(answer.waiting_share) for answer in answers)),
        ("foot contacts, a child a minute", *(_contacts(answer) for answer in answers)),
        ("longest wait, seconds", *(decimal(answer.longest_wait_s, 0) for answer in answers)),
        ("rounds a minute", *(decimal(answer.rounds_a_minute) for answer in answers)),
    ]
    told = [row for row in rows if any(cell != "-" for cell in row[1:])]
    note = "  Contacts are an estimate from published figures." if about else "  If all goes cleanly."
    others = [
        wrapped(f"With {answer.here}: {answer.words}.", first="  ", indent="    ")
        for answer in answers
        if answer.exercise != _own(answers, here) or not answer.sizes
    ]
    return "\n".join([table(told), note, *others])


def _own(answers: tuple[HeadAnswer, ...], here: int) -> str:
    return next((answer.exercise for answer in answers if answer.here == here), "")


def _contacts(answer: HeadAnswer) -> str:
    if answer.contacts_a_minute is None:
        return "-"
    low = decimal(answer.contacts_a_minute, 0)
    return f"{low}-{decimal(answer.contacts_high, 0)}" if answer.contacts_high is not None else low


def finding(problem: Problem) -> str:
    """A finding as a sentence with its remedy."""
    word = f"{problem.severity.value.capitalize()}:".ljust(6)
    return wrapped(f"{problem.message} {problem.hint}".strip(), first=word, indent=" " * len(word))


FIT = Command(
    name="fit",
    does="fit an evening to whoever came, from the exercises that ship with Conewright",
    example='conewright fit --here 13 --minutes 70 --space 30x22 --aim "turning out"',
    add_words=_add_words,
    run=_run,
)
