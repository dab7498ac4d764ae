"""Bibs go as far as they go: own colours, then others, then one side without."""

from conewright.fit.colours import PLAIN, RESTS, colour_copies, colour_sides
from conewright.model.exercise import Bib, Team
from conewright.model.layout import Side

BAG = ((Bib.YELLOW, 7), (Bib.BLUE, 7), (Bib.RED, 6))


def side(name: str, count: int) -> Side:
    bib = next((bib for bib in Bib if bib.value == name), None)
    return Side(team=Team(name=name, bib=bib), count=count)


def worn(sides: tuple[Side, ...]) -> list[tuple[str, int]]:
    return [(one.team.name, one.count) for one in sides]


def test_sides_keep_their_colours_while_the_bibs_last() -> None:
    sides = (side("Yellow", 7), side("Blue", 7))
    colours = colour_sides((sides,), BAG)
    assert colours.sides == (sides,)
    assert colours.bibs == ((Bib.YELLOW, 7), (Bib.BLUE, 7))
    assert not colours.changed


def test_the_second_copy_takes_another_colour() -> None:
    one = (side("Yellow", 5), side("Red", 2))
    colours = colour_sides((one, one), BAG)
    assert [worn(sides) for sides in colours.sides] == [[("Yellow", 5), ("Red", 2)], [("Blue", 5), ("Red", 2)]]
    assert colours.bibs == ((Bib.YELLOW, 5), (Bib.BLUE, 5), (Bib.RED, 4))
    assert colours.changed
    assert colours.short == ()


def test_one_side_goes_without_when_no_colour_is_enough() -> None:
    colours = colour_sides(((side("Yellow", 9), side("Blue", 6)),), BAG)
    assert worn(colours.sides[0]) == [(PLAIN, 9), ("Blue", 6)]
    assert colours.short == ()


def test_who_rests_wears_nothing_and_does_not_count_as_a_side_without() -> None:
    colours = colour_sides(((side("Yellow", 9), side("Blue", 6), side(RESTS, 1)),), BAG)
    assert worn(colours.sides[0]) == [(PLAIN, 9), ("Blue", 6), (RESTS, 1)]


def test_what_is_still_short_is_said() -> None:
    colours = colour_sides(((side("Yellow", 9), side("Blue", 9)),), BAG)
    assert worn(colours.sides[0]) == [(PLAIN, 9), ("Blue", 9)]
    assert colours.bibs == ((Bib.BLUE, 7),)
    assert colours.short == ((Bib.BLUE, 2),)


def test_two_sides_of_a_copy_never_wear_the_same() -> None:
    copies = tuple((side("Yellow", 4), side("Blue", 4)) for _ in range(3))
    colours = colour_sides(copies, BAG)
    for sides in colours.sides:
        assert len({one.team.name for one in sides}) == 2


def test_each_copy_has_a_colour_and_one_may_go_without() -> None:
    assert colour_copies((7, 6), BAG).copies == (Bib.YELLOW, Bib.BLUE)
    assert colour_copies((8, 7), BAG).copies == (None, Bib.YELLOW)
    assert colour_copies((9, 8), BAG).copies == (None, None)
    assert colour_copies((9, 8), BAG).bibs == ()
    assert colour_copies((5,), BAG).copies == (None,)
