"""Look-ups of figures by age, surface and format, and what a wrong row or a wrong question brings."""

from typing import Any

import pytest

from conewright.model.figures import AgeBand, AgeRule, Figure, Figures, Spread, UnknownFigure

BY_AGE = (1.0, 2.0, 4.0, 8.0, 16.0, 32.0, 64.0)


def figure(key: str = "pace", **other: Any) -> Figure:
    return Figure(
        **(
            {"key": key, "title": "Pace", "unit": "m/s", "by": "age", "values": BY_AGE}
            | {"spread": None, "source": "estimate, made up", "grade": "C"}
            | other
        )
    )


def rule(*bands: AgeBand, key: str = "limit") -> AgeRule:
    return AgeRule(key=key, title="Limit", unit="s", bands=bands, source="estimate, made up", grade="C")


ROUND = figure("round", by="all", values=(3.0,))
GROUND = figure("ground", by="surface", values=(1.0, 2.0, 3.0, 4.0, 5.0, 6.0))
GAME = figure("game", by="format", values=(9.0, 6.0, 4.0, 3.5, 2.0, 1.5, 1.0))
LIMIT = rule(AgeBand(youngest=1, oldest=11, low=12, high=12), AgeBand(youngest=12, oldest=16, low=8, high=8))
TABLE = Figures(rows=(figure(), ROUND, GROUND, GAME), rules=(LIMIT,))


@pytest.mark.parametrize(
    ("age", "value"),
    list(zip(range(5, 21), (1, 1, 1, 1.5, 2, 3, 4, 6, 8, 12, 16, 24, 32, 48, 64, 64), strict=True)),
)
def test_an_age_has_its_row_or_the_mean_of_its_neighbours(age: int, value: float) -> None:
    assert TABLE.at("pace", age=age) == value


def test_a_figure_for_everybody_holds_at_every_age() -> None:
    assert TABLE.value("round") == TABLE.at("round", age=8) == 3


def test_a_surface_and_any_named_column_have_their_value() -> None:
    assert TABLE.on("ground", "grass_short") == 4
    assert TABLE.of("game", "7v7") == 2
    assert TABLE.of("pace", "U13") == 8


@pytest.mark.parametrize(
    ("a_side", "value"), [(1, 9), (2, 9), (5, 3.5), (6, 2.75), (7, 2), (8, 1.75), (11, 1), (15, 1)]
)
def test_a_format_between_two_lies_straight_between_them(a_side: float, value: float) -> None:
    assert TABLE.in_format("game", a_side=a_side) == value


@pytest.mark.parametrize(
    ("spread", "age", "size"),
    [
        (Spread(kind="cv", values=(0.1,)), 9, 0.2),
        (Spread(kind="sd", values=(0.3,)), 9, 0.3),
        (Spread(kind="cv", values=(0.1, 0.3, 0.1, 0.1, 0.1, 0.1, 0.1)), 8, 0.3),
        (None, 9, None),
    ],
)
def test_a_spread_is_given_in_the_unit_of_its_figure(spread: Spread | None, age: int, size: float | None) -> None:
    table = Figures(rows=(figure(spread=spread),))
    assert table.spread_at("pace", age=age) == pytest.approx(size)


def test_a_row_says_where_a_number_came_from() -> None:
    assert TABLE.row("pace").source == "estimate, made up"


@pytest.mark.parametrize(
    ("grade", "estimate"),
    [("A", False), ("A*", False), ("B+", False), ("B", False), ("B-", False), ("A>C", True), ("C", True)],
)
def test_what_rests_on_our_own_reasoning_is_an_estimate(grade: str, estimate: bool) -> None:
    assert figure(grade=grade).is_estimate is estimate


@pytest.mark.parametrize(("age", "seconds"), [(6, 12), (11, 12), (12, 8), (16, 8), (17, None)])
def test_a_rule_is_exact_and_may_be_silent(age: int, seconds: float | None) -> None:
    band = TABLE.band("limit", age=age)
    assert (band and band.high) == seconds


def test_a_band_without_an_end_goes_on() -> None:
    endless = rule(AgeBand(youngest=12, oldest=None, text="none"))
    assert endless.band(11) is None
    assert (endless.band(60) or AgeBand(youngest=0, oldest=0)).text == "none"


@pytest.mark.parametrize(
    ("ask", "message"),
    [
        (lambda: TABLE.at("pase", age=9), 'no figure is called "pase"; near it: pace'),
        (lambda: TABLE.row("xyzzy"), 'no figure is called "xyzzy"'),
        (lambda: TABLE.at("ground", age=9), "not known by age: it goes by surface"),
        (lambda: TABLE.value("pace"), 'not known in a column "all": it goes by age'),
        (lambda: TABLE.on("ground", "gravel"), 'not known in a column "gravel"'),
        (lambda: TABLE.in_format("pace", a_side=4), "not known by format"),
        (lambda: TABLE.row("limit"), "it is a rule by exact ranges of age"),
        (lambda: TABLE.rule("pace"), "not known as a rule by age"),
        (lambda: TABLE.spread_at("nothing", age=9), 'no figure is called "nothing"'),
    ],
)
def test_a_wrong_question_is_answered_plainly(ask: Any, message: str) -> None:
    with pytest.raises(UnknownFigure) as raised:
        ask()
    assert isinstance(raised.value, KeyError)
    assert message in str(raised.value)
    assert not str(raised.value).startswith("\"'")


@pytest.mark.parametrize(
    ("make", "message"),
    [
        (lambda: figure(values=(1.0, 2.0)), "pace: 7 values wanted by age, 2 given"),
        (lambda: figure(spread=Spread(kind="cv", values=(0.1, 0.2))), "one value or one for each column"),
        (lambda: Spread(kind="cv", values=()), "a spread needs values"),
        (lambda: Spread(kind="cv", values=(-0.1,)), "a spread needs values"),
        (lambda: rule(AgeBand(youngest=1, oldest=9), AgeBand(youngest=11, oldest=12)), "without gap or overlap"),
        (lambda: rule(AgeBand(youngest=1, oldest=9), AgeBand(youngest=9, oldest=12)), "without gap or overlap"),
        (lambda: rule(AgeBand(youngest=1, oldest=None), AgeBand(youngest=9, oldest=12)), "without gap or overlap"),
        (lambda: rule(AgeBand(youngest=9, oldest=8)), "limit: a band ends before it begins"),
        (lambda: rule(), "limit: a rule needs a band"),
        (lambda: Figures(rows=(figure(), figure())), "the same key: pace"),
        (lambda: Figures(rows=(figure(),), rules=(rule(AgeBand(youngest=1, oldest=2), key="pace"),)), "same key: pace"),
    ],
)
def test_a_row_that_cannot_be_is_refused(make: Any, message: str) -> None:
    with pytest.raises(ValueError, match=message):
        make()
