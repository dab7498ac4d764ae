"""Where the figures on the page come from: the rows they rest on, with source and grade; must not know the page."""

from dataclasses import dataclass

from conewright.model.figures import Figures
from conewright.model.rehearsed import Estimate, Rehearsal
from conewright.model.session import Block

MOVING = (
    *("top_speed_m_s", "speed_time_constant_s", "jog_m_s", "walk_m_s", "with_ball_share", "turn_180_s"),
    *("pass_short_m_s", "pass_firm_m_s", "pass_arrival_m_s", "control_time_s", "follow_through_s"),
    *("dribble_touches_per_m", "waiting_mark_share"),
)
EVERYBODY = ("purposeful_run_share", "first_time_s", "extra_touch_s", "waiting_speed_m_s")
GROUND = ("roll_deceleration_m_s2", "slide_friction")
GRADES = {
    "A": "seen in the source",
    "A*": "seen only as an index record",
    "A>C": "worked out from figures seen, with assumptions",
    "B+": "from memory of the work, fairly sure",
    "B": "from memory of the work",
    "B-": "from memory of the work, roughly",
    "C": "an estimate",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Origin:
    """One figure: what it is, its value with the unit, its source, its grade with what that means."""

    title: str
    value: str
    source: str
    grade: str


def origins_of(block: Block, figures: Figures, *, age: int, surface: str) -> tuple[Origin, ...]:
    """The figures a block's numbers rest on: those of the rehearsal, or the published range."""
    rehearsed = any(isinstance(copy.rehearsed, Rehearsal) for copy in block.copies)
    estimates = dict.fromkeys(copy.rehearsed for copy in block.copies if isinstance(copy.rehearsed, Estimate))
    return (
        *(_published(one) for one in estimates),
        *(_rows(figures, age, surface) if rehearsed else ()),
    )


def _published(one: Estimate) -> Origin:
    return Origin(
        title=f"{_capital(one.what)}, {one.size} in the group",
        value=f"{one.low:.1f} to {one.high:.1f}",
        source=_capital(one.source.removeprefix("estimate, ")),
        grade=_grade(one.grade),
    )


def _rows(figures: Figures, age: int, surface: str) -> tuple[Origin, ...]:
    values = [(key, figures.at(key, age=age)) for key in MOVING]
    values += [(key, figures.value(key)) for key in EVERYBODY]
    values += [(key, figures.on(key, surface)) for key in GROUND]
    rows = [(figures.row(key), value) for key, value in values]
    return tuple(
        Origin(
            title=row.title,
            value=_measured(value, row.unit),
            source=_capital(row.source.removeprefix("estimate, ")),
            grade=_grade(row.grade),
        )
        for row, value in rows
    )


def _measured(value: float, unit: str) -> str:
    if unit == "share":
        return f"{100 * value:.0f} %"
    words = {"m/s2": "m/s²", "1": "", "1/m": "a metre", "m/s": "m/s", "s": "s"}.get(unit, unit)
    return f"{value:.2f} {words}".strip()


def _grade(grade: str) -> str:
    return f"{grade}, {GRADES[grade]}" if grade in GRADES else grade


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]
