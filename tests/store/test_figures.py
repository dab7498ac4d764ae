"""The figures that ship: they load, they are sourced, a damaged file names its row, and the page is up to date."""

import importlib.util
import json
from pathlib import Path
from typing import Any

import pytest

from conewright.model.figures import LEVELS, SURFACES, AgeRule, Figure, Figures
from conewright.store.figures import DamagedFigures, load_figures, read_figures

ROOT = Path(__file__).parents[2]
RAW = (ROOT / "src" / "conewright" / "data" / "figures.json").read_text(encoding="utf-8")
FIGURES = load_figures()
EVERY: tuple[Figure | AgeRule, ...] = (*FIGURES.rows, *FIGURES.rules)
SAFETY = ("players_per_adult", "adults_least", "heading", "heading_training_england", "heading_training_usa")


def page_script() -> Any:
    spec = importlib.util.spec_from_file_location("figures_page", ROOT / "scripts" / "figures_page.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


@pytest.mark.parametrize(
    ("key", "age", "value"),
    [
        ("top_speed_m_s", 7, 5.0),
        ("top_speed_m_s", 12, 6.5),
        ("speed_time_constant_s", 11, 1.03),
        ("jog_m_s", 10, 2.4),
        ("reaction_known_s", 9, 0.46),
        ("turn_180_s", 13, 0.80),
        ("pass_short_m_s", 11, 6.4),
        ("pass_firm_m_s", 15, 11.5),
        ("pass_arrival_m_s", 12, 3.5),
        ("control_time_s", 7, 1.8),
        ("dead_ball_s", 19, 1.5),
        ("reach_m", 6, 0.6),
        ("pass_range_max_m", 17, 28),
        ("actions_per_min", 11, 4.5),
        ("waiting_mark_share", 9, 0.5),
        ("contacts_game_mark_per_min", 9, 1.4),
        ("session_min", 14, 77.5),
        ("queue_mark", 9, 3),
    ],
)
def test_figures_by_age(key: str, age: int, value: float) -> None:
    assert FIGURES.at(key, age=age) == pytest.approx(value)


@pytest.mark.parametrize(
    ("key", "column", "value"),
    [
        ("roll_deceleration_m_s2", "grass_club", 1.3),
        ("slide_friction", "hall", 0.30),
        ("game_touches_low_per_min", "4v4", 4),
        ("game_touches_high_per_min", "11v11", 1.8),
        ("duel_scored_share", "2v1", 0.50),
        ("control_time_multiplier", "beginner", 1.3),
        ("ball_circumference_high_m", "5", 0.70),
        ("rolling_share_mark", "all", 0.70),
    ],
)
def test_figures_by_column(key: str, column: str, value: float) -> None:
    assert FIGURES.of(key, column) == value


@pytest.mark.parametrize(
    ("key", "age", "low", "high"),
    [
        ("players_per_adult", 9, 6, 6),
        ("players_per_adult", 10, 8, 8),
        ("players_per_adult", 13, 8, 8),
        ("players_per_adult", 14, 10, 10),
        ("attack_limit_s", 11, 12, 12),
        ("attack_limit_s", 12, 8, 8),
        ("ball_size", 8, 3, 3),
        ("ball_size", 13, 4, 5),
        ("ball_size", 16, 5, 5),
        ("heading_training_england", 11, 0, 0),
        ("heading_training_england", 13, None, 5),
        ("heading_training_usa", 12, None, 20),
    ],
)
def test_rules_hold_by_exact_ages(key: str, age: int, low: float | None, high: float | None) -> None:
    band = FIGURES.band(key, age=age)
    assert band is not None
    assert (band.low, band.high) == (low, high)


@pytest.mark.parametrize("age", range(5, 20))
def test_heading_is_none_at_any_age_until_a_table_is_chosen(age: int) -> None:
    band = FIGURES.band("heading", age=age)
    assert band is not None
    assert band.text == "None unless your federation's table allows it."


@pytest.mark.parametrize("key", SAFETY)
def test_safety_is_a_rule_and_never_a_mean_of_neighbours(key: str) -> None:
    assert isinstance(FIGURES.rule(key), AgeRule)
    assert key not in {row.key for row in FIGURES.rows}


@pytest.mark.parametrize("row", EVERY, ids=lambda row: row.key)
def test_every_row_names_a_listed_source_or_calls_itself_an_estimate(row: Figure | AgeRule) -> None:
    named = [source.name for source in FIGURES.sources if source.name in row.source]
    assert row.title
    assert row.source.startswith("estimate") or named
    assert row.is_estimate or not row.source.startswith("estimate")
    assert row.grade != "C" or row.source.startswith("estimate")


@pytest.mark.parametrize("row", [row for row in FIGURES.rows if row.grade == "A"], ids=lambda row: row.key)
def test_what_is_graded_as_seen_rests_on_sources_seen(row: Figure) -> None:
    assert all(source.seen for source in FIGURES.sources if source.name in row.source)


def test_every_listed_source_is_used() -> None:
    used = " ".join(row.source for row in EVERY)
    assert [source.name for source in FIGURES.sources if source.name not in used] == []


@pytest.mark.parametrize(
    ("low", "high"),
    [
        (row.key, row.key.replace("_low", "_high").replace("_min_m", "_max_m"))
        for row in FIGURES.rows
        if "_low" in row.key or row.key.endswith("_min_m")
    ],
)
def test_a_low_end_has_a_high_end_above_it(low: str, high: str) -> None:
    pairs = zip(FIGURES.row(low).values, FIGURES.row(high).values, strict=True)
    assert all(below < above for below, above in pairs)


def test_the_outcomes_of_a_duel_add_up() -> None:
    for kind in ("1v1", "2v1"):
        parts = [FIGURES.of(f"duel_{end}_share", kind) for end in ("scored", "won", "other")]
        assert sum(parts) == pytest.approx(1)


def test_children_grow_faster_and_surer_with_age() -> None:
    for key in ("top_speed_m_s", "jog_m_s", "walk_m_s", "kick_max_m_s", "pass_short_m_s", "pass_firm_m_s", "throw_m_s"):
        assert sorted(FIGURES.row(key).values) == list(FIGURES.row(key).values)
    for key in (
        "control_time_s",
        "dead_ball_s",
        "turn_180_s",
        "reaction_known_s",
        "keeper_ready_s",
        "heavy_touch_share",
    ):
        assert sorted(FIGURES.row(key).values, reverse=True) == list(FIGURES.row(key).values)


@pytest.mark.parametrize("age", range(6, 20))
def test_walking_is_slower_than_jogging_and_jogging_than_running(age: int) -> None:
    walk, jog, top = (FIGURES.at(key, age=age) for key in ("walk_m_s", "jog_m_s", "top_speed_m_s"))
    assert walk < jog < top * FIGURES.value("purposeful_run_share")


def test_rougher_ground_slows_a_ball_more() -> None:
    for key in ("roll_deceleration_m_s2", "slide_friction"):
        values = [FIGURES.on(key, surface) for surface in SURFACES]
        assert values == sorted(values)


def test_a_beginner_varies_more() -> None:
    assert [FIGURES.of("spread_multiplier", level) for level in LEVELS] == [1.3, 1.0, 0.75]


def damage(part: str, place: int, **changed: object) -> bytes:
    parts = json.loads(RAW)
    row = {name: value for name, value in (parts[part][place] | changed).items() if value != "LEFT OUT"}
    parts[part][place] = row
    return json.dumps(parts).encode()


@pytest.mark.parametrize(
    ("data", "message"),
    [
        (b"{", "not readable"),
        (b"[]", "must hold rows, rules, sources"),
        (b'{"rows": []}', "must hold rows, rules, sources"),
        (b'{"rows": {}, "rules": [], "sources": []}', "the rows of Figure must be a list"),
        (b'{"rows": [5], "rules": [], "sources": []}', "number 1, which has no key: it must be a row"),
        (damage("rows", 1, grade="D"), '"speed_time_constant_s".*grade'),
        (damage("rows", 1, values=[1, 2]), '"speed_time_constant_s".*7 values wanted by age, 2 given'),
        (damage("rows", 1, values=["fast"] * 7), '"speed_time_constant_s".*float'),
        (damage("rows", 1, unit="LEFT OUT"), '"speed_time_constant_s".*unit'),
        (damage("rows", 1, key="LEFT OUT"), "number 2, which has no key"),
        (damage("rows", 1, grad="C"), '"speed_time_constant_s": it has no place for grad'),
        (damage("rows", 1, by="moon"), '"speed_time_constant_s".*moon'),
        (damage("rows", 1, key="top_speed_m_s"), "the same key: top_speed_m_s"),
        (damage("rules", 0, bands=[]), '"players_per_adult".*a rule needs a band'),
        (damage("rules", 0, bands=5), '"players_per_adult".*array'),
        (damage("rules", 0, bands=[{"youngest": "ten"}]), '"players_per_adult".*int'),
        (damage("rules", 0, bands=[{"youngest": 1, "oldest": 2, "colour": "red"}]), '"players_per_adult".*colour'),
        (damage("rows", 1, spread={"kind": "cv", "values": [0.1], "size": 1}), '"speed_time_constant_s".*size'),
        (damage("rows", 1, spread={"kind": "iqr", "values": [0.1]}), '"speed_time_constant_s".*iqr'),
        (damage("rows", 1, spread=0.1), '"speed_time_constant_s".*it must be a row'),
        (damage("sources", 0, seen="perhaps"), '"Al Haddad 2015".*bool'),
    ],
)
def test_a_damaged_file_names_the_row(data: bytes, message: str) -> None:
    with pytest.raises(DamagedFigures, match=message):
        read_figures(data)


def test_reading_the_file_again_gives_the_same_figures() -> None:
    assert read_figures(RAW.encode()) == FIGURES == load_figures()


def test_the_page_is_up_to_date() -> None:
    """If this fails: python scripts/figures_page.py."""
    script = page_script()
    assert script.PAGE.read_text(encoding="utf-8") == script.figures_page(FIGURES)
    assert script.main(["--check"]) == 0


def test_the_page_shows_every_row_with_its_source_and_grade() -> None:
    page = page_script().figures_page(FIGURES)
    for row in EVERY:
        line = next(line for line in page.splitlines() if f"`{row.key}`" in line)
        assert f"| {row.grade} | {row.source} |" in line


def test_the_page_follows_the_figures(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    script = page_script()
    monkeypatch.setattr(script, "PAGE", tmp_path / "figures.md")
    assert script.main(["--check"]) == 1
    assert script.main([]) == 0
    assert script.main(["--check"]) == 0
    fewer = Figures(rows=FIGURES.rows[1:], rules=FIGURES.rules, sources=FIGURES.sources)
    assert script.figures_page(fewer) != script.PAGE.read_text(encoding="utf-8")
