"""Words become answers; what cannot be used is named, with how to mend it, and nothing else is lost."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from conewright.model.exercise import Bib
from conewright.model.figures import SURFACES as SURFACE_COLUMNS
from conewright.store.answers import NUMBERS, SURFACES, read_answers
from conewright.store.demo import TONIGHT


@pytest.mark.parametrize(
    ("said", "field", "value"),
    [
        ({"here": "14"}, "here", 14),
        ({"here": " 9 "}, "here", 9),
        ({"minutes": "90"}, "minutes", 90),
        ({"age": "U9"}, "age", 9),
        ({"age": "under 13"}, "age", 13),
        ({"age": "12"}, "age", 12),
        ({"surface": "grass"}, "surface", "grass_club"),
        ({"surface": "Short Grass"}, "surface", "grass_short"),
        ({"surface": "grass_long"}, "surface", "grass_long"),
        ({"surface": "fast turf"}, "surface", "turf_fast"),
        ({"space": "40x25"}, "width_m", 40.0),
        ({"space": "40 by 25.5 m"}, "depth_m", 25.5),
        ({"space": "40 × 25"}, "depth_m", 25.0),
        ({"width_m": "17,5"}, "width_m", 17.5),
        ({"bibs": "Y8,B6"}, "bibs", ((Bib.YELLOW, 8), (Bib.BLUE, 6))),
        ({"bibs": "6 red, 5 green"}, "bibs", ((Bib.RED, 6), (Bib.GREEN, 5))),
        ({"bibs": "none"}, "bibs", ()),
        ({"bibs_yellow": "0", "bibs_green": "4"}, "bibs", ((Bib.BLUE, 7), (Bib.RED, 6), (Bib.GREEN, 4))),
        ({"aim": "  turning   out "}, "aim", "turning out"),
    ],
)
def test_words_become_answers(said: dict[str, str], field: str, value: object) -> None:
    tonight, wrong = read_answers(said, TONIGHT)
    assert wrong == ()
    assert getattr(tonight, field) == value


@pytest.mark.parametrize(
    ("said", "field", "message"),
    [
        ({"here": "-3"}, "here", "-3 children cannot be planned for"),
        ({"here": "banana"}, "here", '"banana" is not a whole number of children'),
        ({"here": "12.5"}, "here", '"12.5" is not a whole number of children'),
        ({"here": ""}, "here", "the number of children is missing"),
        ({"here": "9" * 40}, "here", '"9999999999999999999999999999999999999999" is not a whole number of children'),
        ({"here": "٣"}, "here", '"٣" is not a whole number of children'),
        ({"minutes": "1000"}, "minutes", "1000 minutes cannot be planned for"),
        ({"space": "30by"}, "space", '"30by" is not a space'),
        ({"space": "0x0"}, "space", '"0x0" is not a space that can be used'),
        ({"space": "1.2.3x4"}, "space", '"1.2.3x4" is not a space that can be used'),
        ({"width_m": "nan"}, "width_m", '"nan" is not a number of metres'),
        ({"age": "banana"}, "age", '"banana" is not an age group'),
        ({"age": "U45"}, "age", '"U45" is not an age group'),
        ({"surface": "lava"}, "surface", '"lava" is not a surface known here'),
        ({"bibs": "X3"}, "bibs", '"X3" does not say the bibs'),
        ({"bibs": "Y3,Y4"}, "bibs", '"Y3,Y4" does not say the bibs'),
        ({"bibs_red": "x"}, "bibs_red", '"x" is not a whole number of red bibs'),
        ({"aim": "a" * 200}, "aim", "the aim is longer than 120 letters"),
        ({"aim": "a\x00b"}, "aim", "the aim is not plain text"),
        ({"here": "3", "keepers": "4"}, "keepers", "4 keepers cannot be among 3 children"),
    ],
)
def test_a_wrong_answer_is_named_and_the_usual_stays(said: dict[str, str], field: str, message: str) -> None:
    tonight, wrong = read_answers(said, TONIGHT)
    assert [(one.field, one.message) for one in wrong] == [(field, message)]
    assert wrong[0].hint
    assert getattr(tonight, field, None) == getattr(TONIGHT, field, None) or field == "keepers"


def test_every_wrong_answer_is_named_at_once_and_the_good_ones_are_kept() -> None:
    tonight, wrong = read_answers({"here": "x", "balls": "y", "cones": "30"}, TONIGHT)
    assert {one.field for one in wrong} == {"here", "balls"}
    assert tonight.cones == 30


def test_every_surface_of_the_figures_has_a_word() -> None:
    assert {key for _, key in SURFACES} == set(SURFACE_COLUMNS)


@given(
    st.dictionaries(st.sampled_from([*(one.field for one in NUMBERS), "age", "bibs", "space", "aim"]), st.text()),
)
def test_whatever_is_said_the_answers_stay_within_bounds(said: dict[str, str]) -> None:
    tonight, wrong = read_answers(said, TONIGHT)
    for asked in NUMBERS:
        assert asked.least <= getattr(tonight, asked.field) <= asked.most
    for one in wrong:
        assert one.message
        assert one.hint
        assert "\n" not in one.message
