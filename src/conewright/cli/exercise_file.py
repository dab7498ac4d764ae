"""An exercise in a file, read, and with how many children of what age it is looked at."""

from argparse import ArgumentParser, Namespace
from dataclasses import dataclass, replace

from conewright.cli.files import text_of
from conewright.cli.prose import listed
from conewright.cli.wrong import WrongUsage, sound
from conewright.model.exercise import Exercise
from conewright.model.layout import layout_for
from conewright.model.problem import Problem
from conewright.model.stepped import stepped
from conewright.notation.guesses import closest
from conewright.notation.reader import read
from conewright.store.answers import Asked, quoted, read_age, read_number, read_surface

COUNT = Asked(field="n", counts="children", least=1, most=60, example="9")
USUAL_AGE = 11
USUAL_SURFACE = "grass"


@dataclass(frozen=True, slots=True, kw_only=True)
class ExerciseFile:
    """A file, its text, and what reading it gave."""

    name: str
    text: str
    exercise: Exercise | None
    problems: tuple[Problem, ...]


def read_file(name: str) -> ExerciseFile:
    """Read an exercise from a file. Raises WrongUsage where the file cannot be read."""
    text = text_of(name)
    exercise, problems = read(text)
    return ExerciseFile(name=name, text=text, exercise=exercise, problems=problems)


def add_who(parser: ArgumentParser, *, count_needed: bool = False, count: str = "") -> None:
    """Add the words for how many children of what age stand on what."""
    parser.add_argument("--n", metavar="N", required=count_needed, help=count or "how many children")
    parser.add_argument("--age", metavar="U11", help="their age group; unsaid: U11, or the nearest it is for")
    parser.add_argument(
        "--surface",
        metavar="WORDS",
        default=USUAL_SURFACE,
        help="grass (unsaid), short grass, long grass, turf, fast turf or hall",
    )


def add_step(parser: ArgumentParser) -> None:
    """Add the word for a step up or down."""
    parser.add_argument("--step", metavar="NAME", help="a step of the exercise by its name; unsaid: as it is written")


def as_stepped(words: Namespace, file: ExerciseFile) -> ExerciseFile:
    """The file with the step that was asked for in the place of its exercise. Raises WrongUsage."""
    exercise = file.exercise
    if words.step is None or exercise is None:
        return file
    names = [variant.name for variant in exercise.variants]
    asked = " ".join(words.step.lower().split())
    step = stepped(exercise, next((name for name in names if name.lower() == asked), ""))
    if step is None:
        raise WrongUsage(f"--step: {exercise.name} has no step {quoted(words.step)}; {_steps_there(words.step, names)}")
    return replace(file, exercise=step)


def _steps_there(said: str, names: list[str]) -> str:
    if not names:
        return "it has none; leave --step out"
    near = closest(said, names)
    return f'did you mean "{near}"' if near else f"it has {listed([quoted(name) for name in names])}"


def count_of(words: Namespace) -> int | None:
    """How many children were asked for; None where that was left open. Raises WrongUsage."""
    if words.n is None:
        return None
    return int(sound(read_number(words.n, COUNT)))


def age_of(words: Namespace, exercise: Exercise | None) -> int:
    """The age group asked for, else the usual one drawn into what the exercise is for. Raises WrongUsage."""
    if words.age is None:
        return min(max(USUAL_AGE, exercise.ages.youngest), exercise.ages.oldest) if exercise else USUAL_AGE
    return sound(read_age(words.age))


def surface_of(words: Namespace) -> str:
    """The surface asked for, by its name in the figures. Raises WrongUsage."""
    return sound(read_surface(words.surface))


def usual_count(exercise: Exercise) -> int:
    """How many children the exercise is looked at with where nobody says: the best number, else the least."""
    return exercise.numbers.best or exercise.numbers.least


def every_count(exercise: Exercise) -> tuple[int, ...]:
    """Every number the exercise is for, its forms counted in; there may be gaps between them."""
    least = min((exercise.numbers.least, *(form.least for form in exercise.forms)))
    most = max((exercise.numbers.most, *(form.most for form in exercise.forms)))
    return tuple(n for n in range(least, min(most, COUNT.most) + 1) if layout_for(exercise, n) is not None)
