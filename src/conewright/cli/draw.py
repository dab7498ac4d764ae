"""`draw`: the picture of an exercise as an SVG file; must not know how it is drawn."""

from argparse import ArgumentParser, Namespace

from conewright.cli.command import Command
from conewright.cli.exercise_file import COUNT, ExerciseFile, add_step, as_stepped, count_of, read_file, usual_count
from conewright.cli.files import check_output, write
from conewright.cli.prose import counted
from conewright.cli.wrong import CLEAN, MEND, WrongUsage
from conewright.model.exercise import Exercise
from conewright.model.layout import layout_for
from conewright.model.problem import is_clean
from conewright.notation.report import in_terminal

TRADITIONS = ("A", "B")


def _add_words(parser: ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help="a text of one exercise, ending .exercise")
    parser.add_argument("-o", metavar="OUT.svg", dest="out", required=True, help="the picture to write")
    parser.add_argument("--n", metavar="N", help="with how many children; unsaid: with the number it is best with")
    add_step(parser)
    add_tradition(parser)


def add_tradition(parser: ArgumentParser) -> None:
    """Add the word for how lines are drawn."""
    parser.add_argument(
        "--tradition",
        metavar="A|B",
        default="A",
        help="A draws the ball plain and a run broken (unsaid), B the other way about",
    )


def tradition_of(words: Namespace) -> str:
    """How lines are drawn. Raises WrongUsage."""
    tradition = str(words.tradition).strip().upper()
    if tradition not in TRADITIONS:
        raise WrongUsage(f'--tradition: "{words.tradition}" is not a way of drawing known here; write A or B')
    return tradition


def _run(words: Namespace) -> int:
    tradition, path, count = tradition_of(words), check_output(words.out), count_of(words)
    file = as_stepped(words, read_file(words.file))
    if file.exercise is None:
        raise WrongUsage(f'no exercise could be read from "{file.name}"; conewright check says why')
    size = _size(file.exercise, count)
    write(path, _picture(file.exercise, size, tradition).encode())
    if not is_clean(file.problems):
        print(in_terminal(file.problems, file.text, file.name).strip("\n"))
    print(f"{path}: {file.exercise.name}, {counted(size, 'child', 'children')}.{_caution(file)}")
    return CLEAN if is_clean(file.problems) else MEND


def _caution(file: ExerciseFile) -> str:
    return "" if is_clean(file.problems) else " What could not be read is not in the picture."


def _size(exercise: Exercise, count: int | None) -> int:
    """How many stand in one copy: the largest where the exercise is laid out in several."""
    layout = layout_for(exercise, count or usual_count(exercise))
    if layout is None:
        raise WrongUsage(f"--n: {exercise.name} is not for {count} children; write a number it is for")
    return min(layout.sizes[0], COUNT.most)


def _picture(exercise: Exercise, size: int, tradition: str) -> str:
    from conewright.drawing.legend import with_legend
    from conewright.drawing.options import PictureOptions
    from conewright.drawing.picture import exercise_picture
    from conewright.drawing.svg import svg

    picture = exercise_picture(exercise, size, options=PictureOptions(tradition=tradition))
    return svg(with_legend(picture), style="screen")


DRAW = Command(
    name="draw",
    does="draw an exercise into an SVG file",
    example="conewright draw stem-and-branch.exercise -o stem-and-branch.svg --n 7",
    add_words=_add_words,
    run=_run,
)
