"""Guessing what was meant."""

import pytest

from conewright.notation.guesses import closest, slip_of, slipped


@pytest.mark.parametrize(
    ("word", "known", "meant"),
    [
        ("Stemm", ("Base", "Stem"), "Stem"),
        ("stme", ("Base", "Stem"), "Stem"),
        ("Gate Hose", ("Goal", "Gate House"), "Gate House"),
        ("gets", ("goes", "turns"), ""),
        ("rondo", ("relay",), ""),
        ("a", ("at",), ""),
        ("x" * 5000, ("x" * 4999,), ""),
        ("anything", (), ""),
    ],
)
def test_closest(word: str, known: tuple[str, ...], meant: str) -> None:
    assert closest(word, known) == meant


@pytest.mark.parametrize(
    ("word", "meant"),
    [("yelow", "yellow"), ("yellow", ""), ("yeolow", "yellow"), ("yellwo", "yellow"), ("ylelwo", ""), ("yleow", "")],
)
def test_one_slip(word: str, meant: str) -> None:
    assert slipped(word, ("yellow",)) == meant


@pytest.mark.parametrize(
    ("words", "phrase", "is_slip"),
    [
        ("has the bal", "has the ball", True),
        ("has ball", "has the ball", True),
        ("has got the ball", "has the ball", True),
        ("is a", "is a wall", False),
        ("has a bat", "has the ball", False),
        ("has the ball", "has the ball", False),
    ],
)
def test_slips_of_phrases(words: str, phrase: str, is_slip: bool) -> None:
    assert slip_of(tuple(words.split()), tuple(phrase.split())) is is_slip
