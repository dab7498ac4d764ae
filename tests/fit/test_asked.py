"""Whatever a coach says is made sound, and what cannot be planned at all says so."""

from math import inf, nan

import pytest

from conewright.fit.asked import cannot_start, sound
from conewright.model.exercise import Bib
from conewright.model.session import Tonight


def tonight(**said: object) -> Tonight:
    return Tonight(**({"here": 12, "minutes": 60, "width_m": 30.0, "depth_m": 20.0} | said))  # type: ignore[arg-type]


def test_sound_numbers_stay_as_they_are() -> None:
    said = tonight(keepers=2, aim="turning out", surface="hall")
    assert sound(said) == (said, ())


def test_negative_numbers_become_nought() -> None:
    asked, _ = sound(tonight(here=-3, minutes=-1, balls=-2, cones=-2, adults=-1, keepers=-1, mini_goals=-1, goals=-4))
    kit = (asked.balls, asked.cones, asked.adults, asked.keepers, asked.mini_goals, asked.goals)
    assert (asked.here, asked.minutes, *kit) == (0,) * 8


def test_there_are_no_more_keepers_than_children() -> None:
    assert sound(tonight(here=3, keepers=9))[0].keepers == 3


@pytest.mark.parametrize("side", [nan, inf, -inf, -1.0, 0.0])
def test_a_side_that_is_no_length_leaves_no_space(side: float) -> None:
    asked, _ = sound(tonight(width_m=side))
    problem = cannot_start(asked)
    assert problem is not None
    assert problem.code == "no-space"


def test_bibs_of_one_colour_are_added_up() -> None:
    asked, _ = sound(tonight(bibs=((Bib.RED, 3), (Bib.YELLOW, 4), (Bib.RED, 2), (Bib.BLUE, -4))))
    assert asked.bibs == ((Bib.YELLOW, 4), (Bib.RED, 5))


def test_grass_is_club_grass_and_an_unknown_surface_is_told() -> None:
    assert sound(tonight(surface="grass")) == (tonight(surface="grass_club"), ())
    asked, problems = sound(tonight(surface="moon"))
    assert asked.surface == "grass_club"
    assert [problem.code for problem in problems] == ["surface-unknown"]


@pytest.mark.parametrize(
    ("said", "code"),
    [({"here": 0}, "nobody-here"), ({"minutes": 0}, "no-minutes"), ({"minutes": 361}, "too-long")],
)
def test_what_cannot_be_planned_says_so(said: dict[str, int], code: str) -> None:
    problem = cannot_start(sound(tonight(**said))[0])
    assert problem is not None
    assert problem.code == code


def test_six_hours_can_be_planned() -> None:
    assert cannot_start(tonight(minutes=360)) is None
