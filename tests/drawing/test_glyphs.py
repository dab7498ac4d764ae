"""Letters a font lacks are put otherwise or said to be missing, never dropped in silence."""

from hypothesis import given
from hypothesis import strategies as st

from conewright.drawing.glyphs import legible, missing, missing_letters
from conewright.model.problem import Severity

LATIN = frozenset(range(32, 127))


def test_signs_become_words_and_marked_letters_plain() -> None:
    assert legible("Base → Stem", LATIN) == "Base to Stem"
    assert legible("Zoë, Łukasz, Ødegård", LATIN) == "Zoe, ?ukasz, ?degard"
    assert legible("Zoë", LATIN | {ord("ë")}) == "Zoë"
    assert legible("two\nlines", LATIN) == "two lines"


def test_what_cannot_be_put_is_a_finding() -> None:
    found = missing_letters(("Юлия", "Юра", "Base → Stem"), LATIN)
    assert [problem.severity for problem in found] == [Severity.LOOK]
    assert "Юлияра" in found[0].message
    assert not missing_letters(("Zoë → Stem",), LATIN)


@given(st.text())
def test_only_known_letters_are_left(text: str) -> None:
    assert all(ord(letter) in LATIN for letter in legible(text, LATIN))
    assert (("?" in legible(text, LATIN)) and "?" not in text) <= bool(missing((text,), LATIN))
