"""The stages of acts: which figure goes into which, by age, touch and target."""

from math import pi

import pytest

from conewright.model.exercise import Event, Pace, Verb
from conewright.model.figures import UnknownFigure
from conewright.rehearsal.durations import TimedAct, control_for, flight_time, pupil, starts_by_event, touches_of
from conewright.rehearsal.rolling import pass_release_m_s, roll
from conewright.rehearsal.running import turn_cost_s
from tests.rehearsal.played import CHILD, FIGURES, SURFACE, timed

PLACES = """Base at 0, 0 is a line{supply}.
Post at 0, 8 is a line, facing Base.
Goal at 0, 16 is a mini goal.
Each round:
"""
WITH_THE_BALL, STOCK, EACH = " with the ball", " with 4 balls", ", a ball each"


def acts(steps: str, supply: str = WITH_THE_BALL, age: int = 11) -> tuple[TimedAct, ...]:
    child = pupil(FIGURES, age=age, surface=SURFACE)
    return timed(PLACES.format(supply=supply) + steps, child).acts


def first(steps: str, verb: Verb, supply: str = WITH_THE_BALL, age: int = 11) -> TimedAct:
    return next(act for act in acts(steps, supply, age) if act.played.verb is verb)


PASS = "1. Base passes to Post.\n2. Post passes{how} to Base.\n"


def second_pass(how: str = "", age: int = 11) -> TimedAct:
    return [act for act in acts(PASS.format(how=how), age=age) if act.kick][1]


# --- touches and preparation --------------------------------------------------------------------------------------


@pytest.mark.parametrize(("age", "touches"), [(7, 3), (9, 3), (10, 3), (11, 2), (13, 2), (20, 2)])
def test_touches_are_free_for_the_young_and_two_from_under_11(age: int, touches: int) -> None:
    assert touches_of(second_pass(age=age).played, age) == touches
    assert second_pass(age=age).contacts == touches


@pytest.mark.parametrize(("how", "touches"), [(" first time", 1), (" in two touches", 2), (" in three touches", 3)])
def test_touches_are_what_the_text_says(how: str, touches: int) -> None:
    act = second_pass(how, age=7)
    assert touches_of(act.played, 7) == touches
    assert act.prepare_s == control_for(touches, pupil(FIGURES, age=7, surface=SURFACE))


def test_control_by_touches() -> None:
    assert control_for(1, CHILD) == CHILD.first_time_s
    assert control_for(2, CHILD) == CHILD.control_s
    assert control_for(4, CHILD) == pytest.approx(CHILD.control_s + 2 * CHILD.extra_touch_s)


def test_a_set_back_is_first_time() -> None:
    steps = "1. Base passes to Post.\n2. Post sets it back to Base.\n3. Base dribbles home.\n"
    act = first(steps, Verb.SET_BACK)
    assert (act.prepare_s, act.contacts) == (CHILD.first_time_s, 1)


@pytest.mark.parametrize(
    ("supply", "seconds"), [(WITH_THE_BALL, CHILD.control_s), (STOCK, CHILD.dead_ball_s), (EACH, 0.0)]
)
def test_a_ball_is_prepared_as_its_supply_asks(supply: str, seconds: float) -> None:
    assert first("1. Base passes to Post, then runs home.\n", Verb.PASS, supply).prepare_s == seconds


def test_after_a_turn_or_a_dribble_the_ball_is_ready() -> None:
    turned = acts("1. Base passes to Post.\n2. Post turns, passes to Base.\n")
    turn = next(act for act in turned if act.played.verb is Verb.TURN)
    after = [act for act in turned if act.kick][1]
    assert turn.prepare_s == CHILD.control_s
    assert after.prepare_s == 0
    assert turn.contacts + after.contacts == 2
    carried = acts("1. Base dribbles to 0, 3, then passes to Post.\n", STOCK)
    assert [act.prepare_s for act in carried if act.needs_ball] == [CHILD.dead_ball_s, 0]


def test_a_ball_met_on_the_run_is_played_first_time_unless_the_text_says_more() -> None:
    steps = "1. Base passes ahead of Post to 5, 8.\n2. Post passes{how} to Base.\n"
    free = [act for act in acts(steps.format(how="")) if act.kick][1]
    said = [act for act in acts(steps.format(how=" in two touches")) if act.kick][1]
    assert (free.prepare_s, said.prepare_s) == (CHILD.first_time_s, CHILD.control_s)


# --- flights ------------------------------------------------------------------------------------------------------


def test_a_pass_arrives_with_the_speed_of_the_age_and_a_firm_one_is_struck_firmly() -> None:
    usual, firm = first(PASS.format(how=""), Verb.PASS), second_pass(" firmly")
    release = pass_release_m_s(
        8, short=CHILD.short_m_s, firm=CHILD.firm_m_s, arrival=CHILD.arrival_m_s, ground=CHILD.ground
    )
    assert usual.release_m_s == release
    assert usual.flight_s == roll(release, CHILD.ground).travel_time_s(8)
    assert firm.release_m_s == CHILD.firm_m_s
    assert firm.flight_s < usual.flight_s


def test_a_shot_a_throw_and_a_ball_nobody_can_reach() -> None:
    shot = first("1. Base shoots at Goal.\n2. Base dribbles home.\n", Verb.SHOOT)
    assert shot.release_m_s == CHILD.shot_m_s
    throw = first("1. Base throws to Post.\n2. Post dribbles to Base.\n", Verb.THROW)
    assert (throw.flight_s, throw.contacts) == (8 / CHILD.throw_m_s, 0)
    far = first("1. Base passes to 0, 90.\n2. Base fetches the ball, then dribbles home.\n", Verb.PASS, age=7)
    small = pupil(FIGURES, age=7, surface=SURFACE)
    assert flight_time(far.played, small) == (roll(small.shot_m_s, small.ground).stop_time_s, small.shot_m_s)


def test_a_long_pass_is_struck_harder_before_it_stops_short() -> None:
    child = pupil(FIGURES, age=8, surface="grass_long")
    played = first("1. Base passes to 0, 9.\n2. Base fetches the ball, then dribbles home.\n", Verb.PASS).played
    seconds, release = flight_time(played, child)
    assert roll(child.short_m_s, child.ground).travel_time_s(9) is None
    assert roll(release, child.ground).travel_time_s(9) == seconds
    assert child.short_m_s < release <= child.shot_m_s


# --- movements ----------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("verb", "pace"), [("walks", Pace.WALK), ("jogs", Pace.JOG), ("runs", Pace.RUN), ("sprints", Pace.SPRINT)]
)
def test_paces_are_what_is_written(verb: str, pace: Pace) -> None:
    act = first(f"1. Base passes to Post, then {verb} to Post.\n", Verb.RUN)
    assert act.pace is pace
    assert act.move_s == pytest.approx(CHILD.run_s(8, pace=pace))
    assert act.turn_s == pytest.approx(0)


def test_the_way_round_to_the_next_place_is_jogged_and_after_the_pass_it_is_run() -> None:
    text = "1. Base passes to Post.\n2. Post dribbles to Base.\n"
    follows = next(act for act in acts(text) if act.played.implied)
    assert follows.pace is Pace.RUN
    round_ = acts(text + "Rotation: everyone back to the own place.\n", STOCK)
    home = next(act for act in round_ if act.played.implied and act.played.to_place == "Post")
    assert home.pace is Pace.JOG


def test_a_turn_before_a_run_costs_by_its_angle() -> None:
    back = first("1. Base passes to Post, then runs to 0, -5.\nRotation: Base to Base.\n", Verb.RUN)
    aside = first("1. Base passes to Post, then runs to 5, 0.\nRotation: Base to Base.\n", Verb.RUN)
    assert back.turn_s == pytest.approx(CHILD.turn_180_s)
    assert aside.turn_s == pytest.approx(turn_cost_s(pi / 2, CHILD.turn_180_s))


def test_a_sharp_corner_on_the_way_costs_a_turn_and_a_bend_does_not() -> None:
    home = acts("1. Base dribbles to 0, 8, then dribbles home.\n")[1]
    assert home.turn_s == pytest.approx(CHILD.turn_180_s, rel=0.3)
    gate = PLACES.replace("Each round:", "Door at 4, 4 is a gate.\nEach round:")
    through = timed(
        gate.format(supply=EACH + ", facing Post") + "1. Base dribbles through Door to 8, 0, then dribbles home.\n"
    ).acts[0]
    straight = turn_cost_s(pi / 4, CHILD.turn_180_s)
    assert through.turn_s == pytest.approx(straight + turn_cost_s(pi / 2, CHILD.turn_180_s))


def test_with_the_ball_it_is_slower_and_touched_as_often_as_it_can_be() -> None:
    act = first("1. Base dribbles to 0, 8, then dribbles home.\n", Verb.DRIBBLE, EACH)
    assert act.move_s == pytest.approx(CHILD.run_s(8, pace=Pace.RUN, with_ball=True))
    assert act.move_s > CHILD.run_s(8, pace=Pace.RUN)
    assert act.contacts == pytest.approx(min(CHILD.touches_per_m * 8, act.move_s / CHILD.touch_gap_s))


def test_a_check_is_no_leaving_and_a_run_is() -> None:
    away, back = acts("1. Post checks away, then shows.\n2. Base passes to Post.\n3. Post dribbles to Base.\n")[:2]
    assert not away.leaves
    assert not back.leaves
    assert back.turn_s == pytest.approx(CHILD.turn_180_s)
    assert away.turn_s == 0
    assert first("1. Base passes to Post, then runs to Post.\n", Verb.RUN).leaves


def test_waits_and_tasks_last_as_long_as_they_say() -> None:
    steps = '1. Base waits 2 s, does "toe taps" for 3 s, then dribbles to 0, 5, then dribbles home.\n'
    assert [act.still_s for act in acts(steps) if act.played.verb in (Verb.WAIT, Verb.TASK)] == [2, 3]


# --- together -----------------------------------------------------------------------------------------------------


def test_different_people_in_a_step_start_together_and_one_person_does_not() -> None:
    text = "1. Base passes to Post; Post runs to 2, 8.\n"
    groups = [act.group for act in acts(text) if not act.played.implied]
    assert groups == [-1, -1]  # Post needs what the same step sends it
    aside = PLACES.replace("Each round:", "Wing at 6, 4 is a line.\nEach round:")
    both = timed(aside.format(supply=STOCK) + "1. Base passes to Post; Wing runs to 6, 8.\n2. Wing runs home.\n").acts
    assert [act.group for act in both if act.played.step == 1 and not act.played.implied] == [1, 1]


def test_what_has_to_be_seen_is_reacted_to() -> None:
    assert starts_by_event(Event.RELEASED)
    assert starts_by_event(Event.ARRIVED)
    assert not starts_by_event(Event.STEP)
    assert not starts_by_event(Event.TOGETHER)
    assert not starts_by_event(Event.CALL)


def test_a_surface_nobody_knows_is_refused() -> None:
    with pytest.raises(UnknownFigure):
        pupil(FIGURES, age=11, surface="sand")
