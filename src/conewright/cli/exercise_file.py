"""An exercise in a file, read, and with how many children of what age it is looked at."""

from argparse import ArgumentParser, Namespace
from dataclasses import dataclass

from conewright.cli.files import text_of
from conewright.cli.wrong import sound
from conewright.model.exercise import Exercise
from conewright.model.problem import Problem
from conewright.notation.reader import read
from conewright.store.answers import Asked, read_age, read_number, read_surface

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


def every_count(exercise: Exercise) -> range:
    """From the least to the most the exercise is for, its forms counted in."""
    least = min((exercise.numbers.least, *(form.least for form in exercise.forms)))
    most = max((exercise.numbers.most, *(form.most for form in exercise.forms)))
    return range(least, min(most, COUNT.most) + 1)
