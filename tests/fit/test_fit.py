"""Whole evenings from the shelf that ships, verified by code that shares nothing with the fitting."""

from dataclasses import replace
from itertools import combinations, pairwise

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from conewright.fit.fit import fit, refit
from conewright.fit.memory import Memory
from conewright.model.exercise import Bib, Exercise
from conewright.model.geometry import Point
from conewright.model.problem import Severity
from conewright.model.rehearsed import Rehearsal
from conewright.model.session import Block, Copy, Job, Session, Tonight
from tests.fit.evenings import FIGURES, written

HOUR = Tonight(here=14, minutes=60, width_m=30.0, depth_m=20.0, surface="grass")
MEMORY = Memory()


def fitted(tonight: Tonight, shelf: tuple[Exercise, ...]) -> Session:
    return fit(tonight, shelf, figures=FIGURES, memory=MEMORY)


def names(session: Session) -> list[str]:
    return [block.exercise.name for block in session.blocks]


def codes(session: Session) -> list[str]:
    return [problem.code for problem in session.problems]


def standing_points(block: Block, copy: Copy) -> list[Point]:
    """Where things of a copy stand and where its children run, in the coach's rectangle."""
    exercise = block.exercise
    own = [place.at for place in exercise.places] + [thing.at for thing in exercise.things]
    play = exercise.open_play
    boxes = [(play.middle, play.width_m, play.depth_m)] if play else []
    steps = exercise.script.steps if exercise.script else ()
    boxes += [(s.contest.middle, s.contest.width_m, s.contest.depth_m) for s in steps if s.contest]
    for middle, width, depth in boxes:
        own += [Point(middle.x_m + x * width / 2, middle.y_m + y * depth / 2) for x in (-1, 1) for y in (-1, 1)]
    if isinstance(copy.rehearsed, Rehearsal):
        own += [Point(knot.x_m, knot.y_m) for track in copy.rehearsed.people for knot in track.knots]
    return [copy.on_ground(point) for point in own]


def outline(points: list[Point]) -> tuple[float, float, float, float]:
    xs, ys = [point.x_m for point in points], [point.y_m for point in points]
    return min(xs), min(ys), max(xs), max(ys)


def verify_ground(block: Block, tonight: Tonight) -> None:
    outlines = []
    for copy in block.copies:
        assert 0.7 <= copy.scale <= 1.3
        left, bottom, right, top = outline(standing_points(block, copy))
        assert min(left, bottom) >= -1e-6, block.exercise.name
        assert right <= tonight.width_m + 1e-6, block.exercise.name
        assert top <= tonight.depth_m + 1e-6, block.exercise.name
        outlines.append((left, bottom, right, top))
    for one, other in combinations(outlines, 2):
        across = max(one[0] - other[2], other[0] - one[2])
        up = max(one[1] - other[3], other[1] - one[3])
        assert max(across, up) > 0, f"two copies of {block.exercise.name} share ground"


def verify_clock(session: Session) -> None:
    minutes = max(0, session.tonight.minutes)
    parts = [(block.start_min, block.minutes) for block in session.blocks]
    parts += [(pause.start_min, pause.minutes) for pause in session.pauses]
    parts.sort()
    assert parts[0][0] == 0
    assert all(start + length == following for (start, length), (following, _) in pairwise(parts))
    assert sum(parts[-1]) == minutes
    starts = [block.start_min for block in session.blocks]
    assert starts == sorted(set(starts))


def verify_kit(block: Block, tonight: Tonight) -> None:
    kit = block.kit
    assert kit.balls <= max(0, tonight.balls)
    assert kit.cones <= max(0, tonight.cones)
    assert kit.mini_goals <= max(0, tonight.mini_goals)
    assert kit.goals <= max(0, tonight.goals)
    bag = {bib: sum(max(0, count) for colour, count in tonight.bibs if colour is bib) for bib in Bib}
    assert all(count <= bag[bib] for bib, count in kit.bibs)
    if block.exercise.open_play is not None and block.exercise.open_play.balls:
        assert kit.balls >= len(block.copies)


def verify_block(block: Block, tonight: Tonight) -> None:
    here = tonight.here
    assert block.players == here
    assert all(finding.severity is not Severity.MEND for finding in block.findings)
    assert block.exercise.ages.youngest <= tonight.age <= block.exercise.ages.oldest
    assert all(copy.rehearsed is not None and copy.rehearsed.size == copy.size for copy in block.copies)
    assert all(sum(side.count for side in copy.sides) == copy.size for copy in block.copies if copy.sides)
    assert sum(1 for place in block.exercise.places if place.adult) * len(block.copies) <= max(0, tonight.adults)
    assert block.why.endswith(".")
    assert block.groups
    verify_ground(block, tonight)
    verify_kit(block, tonight)


def verify(session: Session, tonight: Tonight) -> None:
    """Everything that must hold of any session that has blocks."""
    assert session.tonight == tonight
    assert [problem for problem in session.problems if problem.severity is Severity.MEND] == []
    verify_clock(session)
    for block in session.blocks:
        verify_block(block, tonight)
        wanted = [here for here in range(tonight.here - 2, tonight.here + 3) if here > 0]
        assert [answer.here for answer in block.answers] == wanted
        own = next(answer for answer in block.answers if answer.here == tonight.here)
        assert own.exercise == block.exercise.name
        assert sum(own.sizes) + block.keepers + block.resting == tonight.here
    assert 0 < session.rolling_share <= 1
    assert all(0 <= grade <= 1 for _, grade in session.score)


@pytest.mark.parametrize("here", range(5, 21))
def test_every_head_count_of_a_usual_hour_is_filled(shelf: tuple[Exercise, ...], here: int) -> None:
    tonight = replace(HOUR, here=here)
    session = fitted(tonight, shelf)
    verify(session, tonight)
    assert [block.job for block in session.blocks] == [Job.ARRIVAL, Job.MAIN, Job.OPPOSED, Job.GAME, Job.CLOSE]
    assert len(set(names(session))) == 5
    assert [block.resting for block in session.blocks] == [0] * 5
    assert session.blocks[0].minutes >= 8


@pytest.mark.parametrize("here", [2, 3, 4, 21, 24, 30])
def test_few_and_many_children_get_an_evening_too(shelf: tuple[Exercise, ...], here: int) -> None:
    tonight = replace(HOUR, here=here)
    verify(fitted(tonight, shelf), tonight)


@pytest.mark.parametrize("minutes", [5, 10, 20, 30, 45, 70, 90, 120])
def test_short_and_long_evenings_are_filled(shelf: tuple[Exercise, ...], minutes: int) -> None:
    tonight = replace(HOUR, minutes=minutes)
    verify(fitted(tonight, shelf), tonight)


@pytest.mark.parametrize(
    ("said", "code"),
    [
        ({"here": 0}, "nobody-here"),
        ({"here": -4}, "nobody-here"),
        ({"balls": 0}, "nothing-fits"),
        ({"width_m": 3.0, "depth_m": 3.0}, "nothing-fits"),
        ({"width_m": float("nan")}, "no-space"),
        ({"minutes": 0}, "no-minutes"),
        ({"minutes": 10**9}, "too-long"),
        ({"here": 10**6}, "nothing-fits"),
        ({"age": 4}, "nothing-fits"),
    ],
)
def test_where_no_evening_can_be_had_it_says_why(
    shelf: tuple[Exercise, ...], said: dict[str, float], code: str
) -> None:
    session = fitted(replace(HOUR, **said), shelf)  # type: ignore[arg-type]
    assert session.blocks == session.pauses == ()
    assert codes(session)[-1] == code
    assert session.problems[-1].hint


def test_an_empty_shelf_gives_no_evening(shelf: tuple[Exercise, ...]) -> None:
    assert codes(fitted(HOUR, ()))[-1] == "shelf-empty"


def test_the_same_evening_comes_again_with_and_without_a_memory(shelf: tuple[Exercise, ...]) -> None:
    assert fitted(HOUR, shelf) == fit(HOUR, shelf, figures=FIGURES) == fitted(HOUR, shelf)


def test_the_aim_decides_what_the_main_work_is(shelf: tuple[Exercise, ...]) -> None:
    turning = fitted(replace(HOUR, here=7, aim="turning out and passing ahead"), shelf)
    finishing = fitted(replace(HOUR, here=7, aim="finishing"), shelf)
    assert turning.blocks[1].exercise.name == "Stem and branch"
    assert "finishing" in finishing.blocks[1].exercise.aims
    unknown = fitted(replace(HOUR, here=7, aim="quidditch"), shelf)
    assert "aim-unmet" in codes(unknown)


@pytest.mark.parametrize(("adults", "few"), [(0, True), (1, True), (2, False), (6, False)])
def test_adults_come_first_and_never_block(shelf: tuple[Exercise, ...], adults: int, few: bool) -> None:
    tonight = replace(HOUR, adults=adults)
    session = fitted(tonight, shelf)
    verify(session, tonight)
    assert session.problems[0].severity is Severity.LOOK
    assert session.problems[0].code == ("adults-few" if few else "adults-ratio")
    assert ("one-adult" in codes(session)) == few


def test_a_shelf_without_a_close_gives_its_minutes_to_the_rest(shelf: tuple[Exercise, ...]) -> None:
    lively = tuple(exercise for exercise in shelf if "close" not in exercise.good_for)
    session = fitted(HOUR, lively)
    verify(session, HOUR)
    assert Job.CLOSE not in [block.job for block in session.blocks]
    assert "close-left-out" in codes(session)


def test_a_part_that_nothing_is_made_for_is_filled_and_says_so(shelf: tuple[Exercise, ...]) -> None:
    no_games = tuple(exercise for exercise in shelf if "game" not in exercise.good_for)
    session = fitted(HOUR, no_games)
    verify(session, HOUR)
    assert "part-unfilled" in codes(session)
    game = next(block for block in session.blocks if block.job is Job.GAME)
    assert "stands-in" in [finding.code for finding in game.findings]


def test_one_exercise_alone_fills_an_evening_and_says_that_it_comes_again() -> None:
    only = written(
        "exercise: Only\nfor 2 to 20 players, under 7 to under 16\n\nOpen play in 12 by 12 m: Yellow against Blue.\n"
    )
    session = fitted(HOUR, (only,))
    verify(session, HOUR)
    assert set(names(session)) == {"Only"}
    assert "comes-again" in codes(session)


def test_told_to_stop_it_makes_do_with_what_it_has(shelf: tuple[Exercise, ...]) -> None:
    session = fit(HOUR, shelf, figures=FIGURES, memory=MEMORY, stop=lambda: True)
    verify_clock(session)
    assert session.blocks
    for block in session.blocks:
        verify_block(block, HOUR)


def test_what_a_memory_holds_changes_nothing(shelf: tuple[Exercise, ...]) -> None:
    memory = Memory()
    first = fit(HOUR, shelf[:16], figures=FIGURES, memory=memory)
    assert fit(HOUR, shelf[:16], figures=FIGURES, memory=memory) == first
    assert fit(HOUR, shelf[:16], figures=FIGURES) == first


# --- one more, one fewer ----------------------------------------------------------------------------------------------


def again(session: Session, tonight: Tonight, shelf: tuple[Exercise, ...]) -> Session:
    return refit(session, tonight, shelf, figures=FIGURES, memory=MEMORY)


def test_a_refit_for_the_same_evening_changes_nothing_and_says_so(shelf: tuple[Exercise, ...]) -> None:
    session = fitted(HOUR, shelf)
    same = again(session, HOUR, shelf)
    assert (same.blocks, same.pauses, same.score) == (session.blocks, session.pauses, session.score)
    assert "refit-same" in codes(same)


@pytest.mark.parametrize("here", range(6, 20))
@pytest.mark.parametrize("more", [-1, 1])
def test_one_more_and_one_fewer_keep_what_still_runs(shelf: tuple[Exercise, ...], here: int, more: int) -> None:
    before = fitted(replace(HOUR, here=here), shelf)
    tonight = replace(HOUR, here=here + more)
    after = again(before, tonight, shelf)
    verify(after, tonight)
    assert [(b.job, b.start_min, b.minutes) for b in after.blocks] == [
        (b.job, b.start_min, b.minutes) for b in before.blocks
    ]
    for old, new in zip(before.blocks, after.blocks, strict=True):
        answer = next(one for one in old.answers if one.here == tonight.here)
        if answer.exercise == old.exercise.name and answer.sizes:
            assert new.exercise.name == old.exercise.name
            assert tuple(copy.size for copy in new.copies) == answer.sizes
        else:
            assert "refit-replaced" in codes(after)
    changed = [new for old, new in zip(before.blocks, after.blocks, strict=True) if old.groups != new.groups]
    told = " ".join(problem.message for problem in after.problems if problem.code.startswith("refit-"))
    assert all(block.exercise.name in told for block in changed)


def test_half_the_ground_and_half_the_balls_are_refitted(shelf: tuple[Exercise, ...]) -> None:
    before = fitted(HOUR, shelf)
    for tonight in (replace(HOUR, width_m=15.0), replace(HOUR, balls=6)):
        verify(again(before, tonight, shelf), tonight)


def test_other_minutes_make_a_new_clock_and_keep_the_exercises(shelf: tuple[Exercise, ...]) -> None:
    before = fitted(HOUR, shelf)
    tonight = replace(HOUR, minutes=42)
    after = again(before, tonight, shelf)
    verify(after, tonight)
    assert names(after) == names(before)[:4]
    assert "refit-minutes" in codes(after)


def test_an_exercise_that_left_the_shelf_is_replaced_with_the_reason(shelf: tuple[Exercise, ...]) -> None:
    before = fitted(HOUR, shelf)
    gone = before.blocks[1].exercise.name
    after = again(before, HOUR, tuple(exercise for exercise in shelf if exercise.name != gone))
    verify(after, HOUR)
    replaced = [problem.message for problem in after.problems if problem.code == "refit-replaced"]
    assert replaced == [f"{after.blocks[1].exercise.name} takes the place of {gone}: it is no longer on the shelf."]


def test_a_refit_from_nothing_and_to_nothing(shelf: tuple[Exercise, ...]) -> None:
    nobody = fitted(replace(HOUR, here=0), shelf)
    verify(again(nobody, HOUR, shelf), HOUR)
    assert codes(again(fitted(HOUR, shelf), replace(HOUR, here=0), shelf)) == ["nobody-here"]
    assert codes(again(fitted(HOUR, shelf), replace(HOUR, balls=0), shelf))[-1] == "nothing-fits"


# --- anything a coach may ask -----------------------------------------------------------------------------------------

SIDES = st.one_of(st.floats(-5, 80), st.floats(), st.sampled_from([30.0, 20.0, 15.0]))
EVENINGS = st.builds(
    Tonight,
    here=st.one_of(st.integers(5, 20), st.integers(-3, 45), st.integers()),
    minutes=st.one_of(st.integers(30, 90), st.integers(-5, 400), st.integers()),
    width_m=SIDES,
    depth_m=SIDES,
    age=st.one_of(st.integers(7, 16), st.integers()),
    adults=st.integers(-1, 4),
    keepers=st.integers(-1, 3),
    balls=st.integers(-2, 25),
    cones=st.integers(-2, 40),
    mini_goals=st.integers(-1, 4),
    goals=st.integers(-1, 2),
    bibs=st.lists(st.tuples(st.sampled_from(Bib), st.integers(-2, 12)), max_size=5).map(tuple),
    surface=st.sampled_from(["grass", "hall", "turf", "grass_long", "moon", ""]),
    aim=st.one_of(st.sampled_from(["", "passing", "turning out"]), st.text(max_size=20)),
    seed=st.integers(),
)


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow], deadline=None)
@given(data=st.data())
def test_nothing_a_coach_may_ask_raises(shelf: tuple[Exercise, ...], long: bool, data: st.DataObject) -> None:
    for _ in range(4 if long else 1):
        tonight = data.draw(EVENINGS)
        session = fitted(tonight, shelf)
        if session.blocks:
            verify(session, tonight)
            more = replace(tonight, here=tonight.here + 1)
            after = again(session, more, shelf)
            if after.blocks:
                verify(after, more)
        else:
            assert session.problems[-1].severity is Severity.MEND
