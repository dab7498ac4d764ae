"""`shelf`: the exercises that ship with Conewright, one a line, as many as suit; must not know how they are played."""

from argparse import ArgumentParser, Namespace
from dataclasses import dataclass
from math import ceil

from conewright.cli.command import Command
from conewright.cli.exercise_file import USUAL_SURFACE, age_of, every_count
from conewright.cli.json_form import Form, print_json
from conewright.cli.prose import NOTHING, counted, decimal, percent, shortened, table, width
from conewright.cli.wrong import CLEAN, MEND, WrongUsage, sound
from conewright.model.exercise import KINDS, Exercise
from conewright.model.ground import ground_used
from conewright.model.layout import Layout, layout_for
from conewright.model.rehearsed import Estimate, Rehearsal, Rehearsed
from conewright.model.session import Job
from conewright.model.unroll import rounds_of
from conewright.notation.guesses import closest
from conewright.store.answers import NUMBERS, quoted, read_age, read_aim, read_number, read_space, read_surface

HERE = next(asked for asked in NUMBERS if asked.field == "here")
FOR_THE_KIND = 0.8  # of 1: an exercise that says it is for the part, or whose kind is usual there


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """What is looked for; None and "" leave it open."""

    aim: str
    age: int | None
    here: int | None
    kind: str
    good_for: Job | None
    space: tuple[float, float] | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Shelved:
    """An exercise of the shelf as so many children would play it; contacts from low to high where estimated."""

    exercise: Exercise
    sizes: tuple[int, ...] = ()
    waiting_share: float | None = None
    contacts: float | None = None
    contacts_high: float | None = None

    @property
    def estimated(self) -> bool:
        """Whether the contacts are a published range, not rehearsed."""
        return self.contacts_high is not None


def _add_words(parser: ArgumentParser) -> None:
    parser.add_argument("--aim", metavar="WORDS", default="", help="what to work on, in your words; the nearest first")
    parser.add_argument("--age", metavar="U11", help="for this age group")
    parser.add_argument("--here", metavar="N", help="for so many children, with what each would get")
    parser.add_argument("--kind", metavar="KIND", default="", help="of this kind, such as rondo or passing pattern")
    parser.add_argument(
        "--good-for",
        metavar="PART",
        default="",
        help=f"for a part of the evening: {', '.join(job.value for job in Job)}",
    )
    parser.add_argument("--space", metavar="WxL", help="that fit on this ground, in metres, either way round")
    parser.add_argument("--json", action="store_true", help="answer as JSON")


def _run(words: Namespace) -> int:
    from conewright.store.shelf import load_shelf

    wanted = _wanted(words)
    shelf = load_shelf()
    found = [one for one in _found(wanted, shelf) if _suits(wanted, one.exercise)]
    if wanted.here is not None:
        found = [_played(words, wanted.here, one.exercise) for one in found]
    if words.json:
        print_json({"of": len(shelf), "count": len(found), "exercises": [_form(one, wanted) for one in found]})
    else:
        print(_words(found, wanted, len(shelf)))
    return CLEAN if found else MEND


def _wanted(words: Namespace) -> Wanted:
    """What was asked for. Raises WrongUsage."""
    return Wanted(
        aim=sound(read_aim(words.aim)),
        age=None if words.age is None else sound(read_age(words.age)),
        here=None if words.here is None else int(sound(read_number(words.here, HERE))),
        kind=_one_of("--kind", words.kind, KINDS),
        good_for=Job(part)
        if (part := _one_of("--good-for", words.good_for, tuple(job.value for job in Job)))
        else None,
        space=None if words.space is None else sound(read_space(words.space)),
    )


def _one_of(option: str, said: str, known: tuple[str, ...]) -> str:
    """A word out of a list, whatever its letter case. Raises WrongUsage."""
    words = " ".join(said.lower().replace("_", " ").split())
    if not words or words in known:
        return words
    near = closest(words, known)
    hint = f'did you mean "{near}"' if near else f"write one of {', '.join(known)}"
    raise WrongUsage(f"{option}: {quoted(said)} is not known here; {hint}")


# --- what suits ---


def _found(wanted: Wanted, shelf: tuple[Exercise, ...]) -> list[Shelved]:
    """All that speak of the aim, those first that speak of more of it."""
    from conewright.fit.suiting import relevance

    weighed = [(relevance(exercise, wanted.aim), exercise) for exercise in shelf]
    near = sorted((one for one in weighed if one[0] > 0), key=lambda one: -one[0])
    return [Shelved(exercise=exercise) for _, exercise in near]


def _suits(wanted: Wanted, exercise: Exercise) -> bool:
    from conewright.fit.suiting import suit

    layout = None if wanted.here is None else layout_for(exercise, wanted.here)
    return (
        (wanted.age is None or exercise.ages.youngest <= wanted.age <= exercise.ages.oldest)
        and (wanted.here is None or layout is not None)
        and wanted.kind in ("", exercise.kind)
        and (wanted.good_for is None or suit(exercise, wanted.good_for) >= FOR_THE_KIND)
        and (wanted.space is None or _fits(exercise, layout, wanted.space))
    )


def _fits(exercise: Exercise, layout: Layout | None, space: tuple[float, float]) -> bool:
    """Whether the copies, or one of the usual size, fit on a ground in rows, either way round."""
    size = layout.sizes[0] if layout else exercise.numbers.best or exercise.numbers.least
    copies, apart_m = (len(layout.sizes), layout.apart_m) if layout else (1, 0.0)
    across, up = _ground(exercise, size)
    for wide, deep in ((across, up), (up, across)):
        for columns in range(1, copies + 1):
            rows = ceil(copies / columns)
            if _row(wide, columns, apart_m) <= space[0] and _row(deep, rows, apart_m) <= space[1]:
                return True
    return False


def _ground(exercise: Exercise, size: int) -> tuple[float, float]:
    """What one copy uses: as the text says, else what it needs when it is laid out."""
    if exercise.space is not None:
        return exercise.space.width_m, exercise.space.depth_m
    used = ground_used(exercise, size, rounds_of(exercise)[0])
    return used.width_m, used.depth_m


def _row(length_m: float, count: int, apart_m: float) -> float:
    return length_m * count + apart_m * (count - 1)


# --- what each child gets ---


def _played(words: Namespace, here: int, exercise: Exercise) -> Shelved:
    from conewright.rehearsal.rehearse import rehearse
    from conewright.store.figures import load_figures

    layout = layout_for(exercise, here)
    sizes = layout.sizes if layout else ()
    age, surface = age_of(words, exercise), sound(read_surface(USUAL_SURFACE))
    figures = load_figures()
    once = {size: rehearse(exercise, size, figures=figures, age=age, surface=surface)[0] for size in set(sizes)}
    return _counted(exercise, sizes, once)


def _counted(exercise: Exercise, sizes: tuple[int, ...], once: dict[int, Rehearsed]) -> Shelved:
    played = [(size, one) for size in sizes if isinstance(one := once[size], Rehearsal)]
    guessed = [(size, one) for size in sizes if isinstance(one := once[size], Estimate)]
    total = sum(sizes)
    if len(played) == len(sizes):
        return Shelved(
            exercise=exercise,
            sizes=sizes,
            waiting_share=sum(size * one.waiting_share for size, one in played) / total,
            contacts=sum(size * one.contacts_a_minute for size, one in played) / total,
        )
    if len(guessed) == len(sizes):
        low, high = min(one.low for _, one in guessed), max(one.high for _, one in guessed)
        return Shelved(exercise=exercise, sizes=sizes, contacts=low, contacts_high=high)
    return Shelved(exercise=exercise, sizes=sizes)


# --- how it is shown ---


def _words(found: list[Shelved], wanted: Wanted, total: int) -> str:
    told = f"{len(found)} of {counted(total, 'exercise')} on the shelf."
    if not found:
        return f"{told} Leave out a word, or ask for less."
    head = ["exercise", "kind", "children", "ages"]
    head += ["groups", "waiting", "contacts"] if wanted.here is not None else []
    rows = [_row_of(one, wanted) for one in found]
    plain = table([head, *rows], left=len(head)).splitlines()
    room = max(width() - max(len(line) for line in plain) - 2, 0)
    widest = max(len(line) for line in plain)
    aims = ["aim", *(shortened(", ".join(one.exercise.aims), room) for one in found)]
    lines = [f"{line.ljust(widest)}  {aim}".rstrip() for line, aim in zip(plain, aims, strict=True)]
    notes = [_note(found)] if wanted.here is not None else []
    return "\n".join([*lines, "", *notes, told])


def _row_of(one: Shelved, wanted: Wanted) -> list[str]:
    exercise = one.exercise
    counts = every_count(exercise)
    ages = exercise.ages
    row = [exercise.name, exercise.kind, f"{counts[0]}-{counts[-1]}", f"U{ages.youngest}-U{ages.oldest}"]
    if wanted.here is None:
        return row
    return [*row, _groups(one.sizes), percent(one.waiting_share), _contacts(one)]


def _groups(sizes: tuple[int, ...]) -> str:
    """ "7+6", "4x3": the sizes of the copies."""
    if len(sizes) > 1 and len(set(sizes)) == 1:
        return f"{len(sizes)}x{sizes[0]}"
    return "+".join(str(size) for size in sizes)


def _contacts(one: Shelved) -> str:
    if one.contacts is None:
        return NOTHING
    if one.contacts_high is None:
        return decimal(one.contacts)
    return f"about {decimal(one.contacts, 0)}-{decimal(one.contacts_high, 0)}"


def _note(found: list[Shelved]) -> str:
    told = "Waiting is a share of the time, contacts are foot contacts a child a minute, if all goes cleanly."
    if any(one.estimated for one in found):
        told += '\n"About" is an estimate from published figures, not rehearsed.'
    return told


def _form(one: Shelved, wanted: Wanted) -> Form:
    exercise = one.exercise
    counts = every_count(exercise)
    form: Form = {
        "exercise": exercise.name,
        "kind": exercise.kind,
        "least": counts[0],
        "most": counts[-1],
        "best": exercise.numbers.best,
        "youngest": exercise.ages.youngest,
        "oldest": exercise.ages.oldest,
        "aims": list(exercise.aims),
        "good_for": list(exercise.good_for),
        "space": {"width_m": exercise.space.width_m, "depth_m": exercise.space.depth_m} if exercise.space else None,
    }
    if wanted.here is not None:
        form |= {
            "here": wanted.here,
            "copies": list(one.sizes),
            "waiting_share": None if one.waiting_share is None else round(one.waiting_share, 3),
            "contacts_a_minute": None if one.contacts is None else round(one.contacts, 3),
            "contacts_high": None if one.contacts_high is None else round(one.contacts_high, 3),
            "estimate": one.estimated,
        }
    return form


SHELF = Command(
    name="shelf",
    does="list the exercises that ship with Conewright, or those of them that suit",
    example='conewright shelf --aim "turning out" --age U11 --here 13',
    add_words=_add_words,
    run=_run,
)
