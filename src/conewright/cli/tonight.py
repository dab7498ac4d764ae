"""The words of the command line for an evening; must not know how one is fitted."""

from argparse import ArgumentParser, Namespace
from dataclasses import dataclass
from datetime import datetime, timedelta

from conewright.cli.wrong import refuse, sound
from conewright.model.session import Session, Tonight
from conewright.store.answers import read_answers, read_hour
from conewright.store.demo import STARTS, TONIGHT


@dataclass(frozen=True, slots=True, kw_only=True)
class Word:
    """An option: how it is written, an example, what it says."""

    option: str
    example: str
    says: str
    needed: bool = False


WORDS = (
    Word(option="here", example="N", says="how many children are here, keepers among them", needed=True),
    Word(option="minutes", example="M", says="how long the evening lasts (unsaid: 70)"),
    Word(option="space", example="WxL", says="the ground you have, in metres (unsaid: 30x22)"),
    Word(option="age", example="U11", says="their age group (unsaid: U11)"),
    Word(option="adults", example="2", says="adults with them, you among them (unsaid: 2)"),
    Word(option="keepers", example="0", says="how many of the children are keepers (unsaid: 0)"),
    Word(option="balls", example="12", says="balls in the bag (unsaid: 12)"),
    Word(option="cones", example="24", says="cones (unsaid: 24)"),
    Word(option="mini-goals", example="2", says="mini goals (unsaid: 2)"),
    Word(option="goals", example="0", says="full goals (unsaid: 0)"),
    Word(option="bibs", example="Y7,B7,R6", says="bibs by colour, Y, B, R and G (unsaid: Y7,B7,R6)"),
    Word(option="surface", example="WORDS", says="grass (unsaid), short grass, long grass, turf, fast turf or hall"),
    Word(option="aim", example="TEXT", says="what to work on, in your words (unsaid: anything)"),
    Word(option="seed", example="1", says="another number draws another evening (unsaid: 1)"),
)


def add_tonight(parser: ArgumentParser) -> None:
    """Add the words for tonight."""
    for word in WORDS:
        parser.add_argument(f"--{word.option}", metavar=word.example, required=word.needed, help=word.says)
    parser.add_argument("--starts", metavar="17:45", default=STARTS, help="when it starts, for the clock (17:45)")


def tonight_of(words: Namespace) -> Tonight:
    """Tonight as it was said. Raises WrongUsage, naming every word that cannot be used."""
    names = [word.option.replace("-", "_") for word in WORDS]
    said = {name: value for name in names if (value := getattr(words, name)) is not None}
    tonight, wrong = read_answers({"aim": "", **said}, TONIGHT)
    refuse(wrong)
    return tonight


def starts_of(words: Namespace) -> datetime:
    """The hour the evening starts, on a day that means nothing. Raises WrongUsage."""
    return datetime.strptime(sound(read_hour(words.starts)), "%H:%M")


def at(starts: datetime, minutes: float) -> str:
    """The hour so many minutes after the start."""
    return f"{starts + timedelta(minutes=minutes):%H:%M}"


def fitted(tonight: Tonight) -> Session:
    """The evening fitted from the exercises that ship with Conewright."""
    from conewright.fit.fit import fit
    from conewright.store.figures import load_figures
    from conewright.store.shelf import load_shelf

    return fit(tonight, load_shelf(), figures=load_figures())
