"""`explain`: an exercise told as a coach tells it to the children; must not know how the sentences are found."""

from argparse import ArgumentParser, Namespace

from conewright.cli.command import Command
from conewright.cli.exercise_file import COUNT, add_step, as_stepped, count_of, read_file, usual_count
from conewright.cli.prose import counted, listed, wrapped
from conewright.cli.wrong import CLEAN, MEND, WrongUsage
from conewright.model.layout import layout_for
from conewright.model.problem import is_clean
from conewright.model.told import Told
from conewright.notation.report import in_terminal


def _add_words(parser: ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help="a text of one exercise, ending .exercise")
    parser.add_argument("--n", metavar="N", help="to how many children; unsaid: to the number it is best with")
    add_step(parser)


def _run(words: Namespace) -> int:
    from conewright.notation.telling import told

    count = count_of(words)
    file = as_stepped(words, read_file(words.file))
    exercise = file.exercise
    if exercise is None:
        raise WrongUsage(f'no exercise could be read from "{file.name}"; conewright check says why')
    count = count or usual_count(exercise)
    layout = layout_for(exercise, count)
    if layout is None:
        raise WrongUsage(f"--n: {exercise.name} is not for {count} children; write a number it is for")
    if file.problems:
        print(in_terminal(file.problems, file.text, file.name).strip("\n"), end="\n\n")
    print(_title(exercise.name, count, layout.sizes))
    print(told_words(told(exercise, min(layout.sizes[0], COUNT.most))))
    return CLEAN if is_clean(file.problems) else MEND


def _title(name: str, count: int, sizes: tuple[int, ...]) -> str:
    title = f"{name}, to {counted(count, 'child', 'children')}"
    if len(sizes) > 1:
        copies = listed([str(size) for size in sizes])
        title += f" in {len(sizes)} copies of {copies}, here to {'each' if len(set(sizes)) == 1 else f'the {sizes[0]}'}"
    return f"{title}\n"


def told_words(told: Told, *, columns: int | None = None) -> str:
    """What is told, folded to the terminal or to so many columns."""
    parts = [
        "\n".join(wrapped(sentence, columns=columns) for sentence in told.opening),
        *(wrapped(f"{role.start}: {' '.join(role.sentences)}", columns=columns) for role in told.roles),
        "\n".join(wrapped(sentence, columns=columns) for sentence in told.everybody),
        "Ask them:",
    ]
    asked = [
        f"{wrapped(question.asks, first='  - ', indent='    ', columns=columns)}\n"
        f"{wrapped(question.answer, first='    ', indent='    ', columns=columns)}"
        for question in told.questions
    ]
    return "\n".join(("\n\n".join(part for part in parts if part), *asked))


EXPLAIN = Command(
    name="explain",
    does="say an exercise back as you would tell it to the children, with what to ask them",
    example="conewright explain stem-and-branch.exercise --n 7",
    add_words=_add_words,
    run=_run,
)
