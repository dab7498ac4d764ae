"""One round of a written exercise: who bears which role, what is implied, where everybody and the ball end."""

import pytest

from conewright.model.exercise import Exercise, Verb
from conewright.model.geometry import Point, distance_m
from conewright.model.layout import one_copy
from conewright.model.problem import Problem
from conewright.model.round import Bearer, Played, Round
from conewright.model.unroll import rounds_of, sides_count, unroll
from conewright.notation.reader import read

HEAD = """exercise: Case
kind: passing pattern
for 2 to 12 players, under 8 to under 16
"""
HEAD_LINES = HEAD.count("\n")


def exercise_of(text: str) -> Exercise:
    exercise, problems = read(HEAD + text)
    assert exercise is not None
    assert not problems, problems
    return one_copy(exercise, 6)


def unrolled(text: str, side: int = 0) -> tuple[Round, tuple[Problem, ...]]:
    return unroll(exercise_of(text), side)


def round_of(text: str, side: int = 0) -> Round:
    round_, problems = unrolled(text, side)
    assert not problems, problems
    return round_


def ways(round_: Round) -> list[str]:
    """Every bearer as "Base to Far"; a place a bearer never leaves is said once."""
    return [f"{b.place} to {b.ends_at}" if b.ends_at != b.place else b.place for b in round_.bearers]


def acts_of(round_: Round, number: int) -> list[Played]:
    return [act for act in round_.acts if act.bearer == number]


def said(round_: Round) -> list[str]:
    """The acts as "0 pass 1": bearer, verb, and the receiver where there is one."""
    return [
        " ".join(map(str, (act.bearer, act.verb.value, *(() if act.receiver is None else (act.receiver,)))))
        for act in round_.acts
    ]


FACING = """Base at 0, 0 is a line with the ball.
Far at 0, 10 is a line.
Each round:
1. Base passes to Far, then runs to Far.
2. Far passes to Base, then runs to Base.
"""


def test_an_exercise_without_a_script_gives_an_empty_round() -> None:
    round_, problems = unrolled("Open play in 12 by 12 m: everyone has a ball.\n")
    assert (round_.bearers, round_.acts, problems) == ((), (), ())


# --- roles bind and are released ----------------------------------------------------------------------------------


def test_a_role_means_the_next_child_once_its_bearer_has_gone() -> None:
    round_ = round_of(FACING)
    assert said(round_) == ["0 pass 1", "0 run", "1 pass 2", "1 run"]
    assert ways(round_) == ["Base to Far", "Far to Base", "Base"]
    assert [bearer.stays for bearer in round_.bearers] == [False, False, True]
    assert [bearer.ends_with_ball for bearer in round_.bearers] == [False, False, True]


def test_a_role_keeps_its_bearer_while_it_has_acts_to_come() -> None:
    """The wall pass: the return goes to the one who ran on, not to the next in the line."""
    text = """Base at 0, 0 is a line with 4 balls.
Post at 0, 8 holds one.
Each round:
1. Base passes to Post, then runs to 2, 4.
2. Post sets it back to Base.
3. Base passes to Post, then runs to Post.
4. Post dribbles to Base.
"""
    round_ = round_of(text)
    assert [act for act in said(round_) if "run" not in act] == ["0 pass 1", "1 set back 0", "0 pass 1", "1 dribble"]
    set_back = round_.acts[2]
    assert set_back.verb is Verb.SET_BACK
    assert set_back.receives_at == Point(2, 4)


def test_sets_it_back_without_a_name_goes_to_whoever_played_it() -> None:
    text = """Base at 0, 0 is a line with 4 balls.
Post at 0, 8 holds one.
Each round:
1. Base passes to Post, then runs to 2, 4.
2. Post sets it back.
3. Base passes to Post, then runs to Post.
4. Post dribbles to Base.
"""
    assert "1 set back 0" in said(round_of(text))


def test_a_role_is_free_when_its_bearer_has_passed_and_joined_another_place() -> None:
    """Up and down through the middle: whoever followed to Middle receives there the next time."""
    text = """South at 0, 0 is a line with the ball.
Middle at 0, 8 holds one.
North at 0, 16 is a line.
Each round:
1. South passes to Middle, then runs to Middle.
2. Middle turns, passes to North, then runs to North.
3. North passes to Middle, then runs to Middle.
4. Middle turns, passes to South, then runs to South.
"""
    round_ = round_of(text)
    assert ways(round_) == ["South to Middle", "Middle to North", "North to Middle", "Middle to South", "South"]
    kicks = [act for act in round_.acts if act.flight]
    assert [distance_m(act.flight[0], act.flight[-1]) for act in kicks] == pytest.approx([8, 8, 8, 8])


def test_a_pass_to_the_own_place_is_for_the_next_in_line() -> None:
    text = """Home at 0, 0 is a line with the ball.
Mast at 0, 9 is a cone.
Each round:
1. Home dribbles to Mast, passes to Home, then runs home round the outside.
"""
    round_ = round_of(text)
    assert said(round_) == ["0 dribble", "0 pass 1", "0 run"]
    assert round_.acts[1].flight == (Point(0, 9), Point(0, 0))
    assert [bearer.ends_with_ball for bearer in round_.bearers] == [False, True]


def test_who_was_played_to_behind_the_bearer_takes_over_its_role() -> None:
    text = """Home at 0, 0 is a line with the ball.
Far at 0, 10 is a line.
Each round:
1. Home dribbles to 0, 5, passes to Home, then runs to Far.
2. Far runs to Home.
3. Home passes to Far.
"""
    exercise = exercise_of(text)
    round_, _ = unroll(exercise)
    passes = [act for act in round_.acts if act.flight]
    assert passes[0].receiver == passes[1].bearer


def test_sides_in_turn_bind_to_one_place_a_round() -> None:
    text = """Base at 0, 0 is a line with 6 balls.
Left at -6, 9 and Right at 6, 9 are lines.
Each round, Left and Right in turn (call it Side):
1. Base passes to Side, then runs to Side.
2. Side dribbles to Base.
"""
    exercise = exercise_of(text)
    assert sides_count(exercise) == 2
    rounds, problems = rounds_of(exercise)
    assert not problems
    assert [ways(round_) for round_ in rounds] == [
        ["Base to Left", "Left to Base"],
        ["Base to Right", "Right to Base"],
    ]
    assert [dict(round_.places) for round_ in rounds] == [{"Side": "Left"}, {"Side": "Right"}]
    assert [round_.bearers[1].role for round_ in rounds] == ["Side", "Side"]
    assert unroll(exercise, 2)[0] == rounds[0]


# --- what the text leaves unsaid ----------------------------------------------------------------------------------


def test_follow_the_pass_is_the_way_of_who_passes_once() -> None:
    text = FACING.replace(", then runs to Far", "").replace(", then runs to Base", "")
    round_ = round_of(text)
    assert ways(round_) == ["Base to Far", "Far to Base", "Base"]
    assert [(act.bearer, act.implied, act.way_back) for act in round_.acts if act.verb is Verb.RUN] == [
        (0, True, True),
        (1, True, True),
    ]


def test_who_passes_twice_with_no_place_said_is_asked() -> None:
    text = """Base at 0, 0 is a line with the ball.
Post at 0, 8 is a line.
Each round:
1. Base passes to Post.
2. Post passes to Base.
3. Base passes to Post.
4. Post dribbles to Base.
"""
    round_, problems = unrolled(text)
    assert [problem.code for problem in problems] == ["where-after-two-passes"]
    assert problems[0].where is not None
    assert problems[0].where.line - HEAD_LINES == 6
    assert round_.bearers[0].ends_at == "Post"
    _, none = unrolled(text + "Rotation: Base to Post, Post to Base.\n")
    assert not none


def test_a_listed_move_to_the_receiver_is_the_run_after_the_pass() -> None:
    text = FACING.replace(", then runs to Far", "").replace(", then runs to Base", "")
    follows = round_of(text)
    listed = round_of(text + "Rotation: Base to Far, Far to Base.\n")
    assert said(listed) == said(follows)
    one_only = round_of(text + "Rotation: Far to Base.\n")
    assert said(one_only) == said(follows)


def test_who_is_to_get_it_set_back_does_not_run_after_its_pass_yet() -> None:
    text = """Base at 0, 0 is a line with 4 balls.
Post at 0, 8 holds one.
Each round:
1. Base passes to Post.
2. Post sets it back{to}.
Rotation: Post to Post.
"""
    for to in ("", " to Base"):
        round_, _ = unrolled(text.format(to=to))
        assert said(round_)[:2] == ["0 pass 1", "1 set back 0"]


def test_a_move_listed_in_the_rotation_is_walked_round_the_outside() -> None:
    text = """Base at 0, 0 is a line with 4 balls.
Post at 0, 10 is a line.
Wing at 8, 5 is a line.
Each round:
1. Base passes to Post.
2. Post passes to Wing.
3. Wing dribbles to Base.
Rotation: Base to Wing, Post to Base, Wing to Post.
"""
    round_ = round_of(text)
    assert ways(round_) == ["Base to Wing", "Post to Base", "Wing to Post"]
    way = next(act for act in acts_of(round_, 1) if act.way_back)
    assert (way.path[0], way.path[-1]) == (Point(0, 10), Point(0, 0))
    assert len(way.path) > 2


def test_a_ball_is_left_at_a_place_that_uses_balls_when_its_bearer_goes_on() -> None:
    text = """Base at 0, 0 is a line with 4 balls.
Wing at 8, 5 is a line.
Goal at 0, 18 is a mini goal.
Each round:
1. Base passes to Wing, then runs to 0, 9.
2. Wing passes to Base.
3. Base shoots at Goal.
4. Base fetches the ball, then dribbles to Base.
Rotation: Base to Wing, Wing to Base.
"""
    round_ = round_of(text)
    assert ways(round_) == ["Base to Wing", "Wing to Base"]
    brought, on = acts_of(round_, 0)[-2:]
    assert (brought.verb, brought.to_place, brought.leaves_ball, brought.homeward) == (
        Verb.DRIBBLE,
        "Base",
        True,
        False,
    )
    assert (on.verb, on.to_place, on.with_ball, on.homeward) == (Verb.RUN, "Wing", False, True)
    assert not round_.bearers[0].ends_with_ball
    written = round_of(text.replace("dribbles to Base.", "dribbles to Base, then runs to Wing."))
    assert [act.leaves_ball for act in acts_of(written, 0)] == [act.leaves_ball for act in acts_of(round_, 0)]


def test_a_ball_is_kept_where_the_next_act_needs_it_or_the_place_has_no_use_for_it() -> None:
    text = """Base at 0, 0 is a line with 4 balls.
Post at 0, 8 is a line{supply}.
Wing at 8, 8 is a line.
Each round:
1. Base dribbles to Post, then {verb}.
2. Wing runs to Base.
"""
    passing = round_of(text.format(supply=" with 2 balls", verb="passes to Wing, runs to Wing"))
    assert not any(act.leaves_ball for act in passing.acts)
    useless = round_of(text.format(supply="", verb="runs to Wing"))
    assert not any(act.leaves_ball for act in useless.acts)
    assert useless.bearers[0].ends_with_ball


def test_back_to_the_own_place() -> None:
    text = FACING.replace(", then runs to Far", "").replace(", then runs to Base", "")
    round_ = round_of(text + "Rotation: everyone back to the own place.\n")
    assert ways(round_) == ["Base", "Far"]
    sent_back = round_of(FACING + "Rotation: everyone back to the own place.\n")
    assert ways(sent_back)[:2] == ["Base", "Far"]
    assert [act.path[-1] for act in acts_of(sent_back, 0) if act.verb is Verb.RUN] == [Point(0, 10), Point(0, 0)]


def test_who_was_played_to_for_the_next_round_stays_at_the_head_of_its_line() -> None:
    text = """Home at 0, 0 is a line with the ball.
Mast at 0, 9 is a cone.
Each round:
1. Home dribbles to Mast, then passes to Home.
"""
    for rotation in ("Rotation: everyone back to the own place.\n", "Rotation: Home to Home.\n"):
        round_ = round_of(text + rotation)
        assert [bearer.stays for bearer in round_.bearers] == [False, True]


def test_the_shooter_fetches_its_own_shot_unless_somebody_is_said_to() -> None:
    text = """Base at 0, 0 is a line with 4 balls.
Goal at 0, 12 is a mini goal.
Each round:
1. Base dribbles to 0, 4, then shoots at Goal.
2. Base dribbles to the end of Base round the outside.
"""
    round_ = round_of(text)
    assert said(round_) == ["0 dribble", "0 shoot", "0 fetch", "0 dribble"]
    fetched = round_.acts[2]
    assert fetched.implied
    assert fetched.path == (Point(0, 4), Point(0, 12))
    said_so = round_of(text.replace("2. Base dribbles", "2. Base fetches the ball, then dribbles"))
    assert [act.verb for act in said_so.acts if act.implied] == []
    assert said(said_so) == said(round_)


def test_a_ball_ahead_is_met_on_the_run() -> None:
    text = """Base at 0, 0 is a line with 4 balls.
Wing at 6, 0 is a line.
Each round:
1. Base passes ahead of Wing to 6, 8.
2. Wing dribbles to Base.
"""
    round_ = round_of(text)
    kick, run = round_.acts[:2]
    assert kick.flight[-1] == Point(6, 8)
    assert (run.bearer, run.path, run.implied, run.way_back) == (1, (Point(6, 0), Point(6, 8)), True, False)
    onward = round_of(text.replace(" to 6, 8", ""))
    met = onward.acts[0].flight[-1]
    assert distance_m(met, Point(6, 0)) == pytest.approx(3)


def test_adults_stay_and_serve() -> None:
    text = """Coach at 5, 5 is an adult.
Base at 0, 0 is a line, a ball each.
Each round:
1. Base passes to Coach, then runs to 0, 8.
2. Coach passes to Base.
3. Base dribbles to the end of Base round the outside.
"""
    round_ = round_of(text)
    coach: Bearer = round_.bearers[1]
    assert (coach.adult, coach.stays, coach.ends_at) == (True, True, "Coach")
    assert round_.bearers[0].ends_at == "Base"
    assert round_.bearers[0].ends_with_ball


def test_who_passes_to_an_adult_goes_home() -> None:
    text = """Coach at 5, 5 is an adult.
Base at 0, 0 is a line with 6 balls.
Each round:
1. Base passes to Coach.
"""
    round_ = round_of(text)
    assert ways(round_)[0] == "Base"
    again = round_of(text + "2. Coach passes to Base.\n")
    assert said(again)[:2] == ["0 pass 1", "1 pass 0"]
    assert again.bearers[0].ends_with_ball


# --- walls --------------------------------------------------------------------------------------------------------

WALL = """Home at 0, 0 is a line with the ball.
Bench at 0, 6 is a wall 3 m wide.
Each round:
"""


def test_a_ball_off_the_wall_comes_back_to_who_goes_on_with_it() -> None:
    round_ = round_of(WALL + "1. Home passes against Bench, then dribbles home.\n")
    assert said(round_)[0] == "0 pass 0"
    assert round_.acts[0].flight == (Point(0, 0), Point(0, 6), Point(0, 0))


def test_a_ball_off_the_wall_is_for_the_next_where_its_passer_goes_away() -> None:
    round_ = round_of(WALL + "1. Home passes against Bench, then runs home round the outside.\n")
    assert said(round_)[0] == "0 pass 1"
    assert [bearer.ends_with_ball for bearer in round_.bearers] == [False, True]


def test_playing_off_the_wall_is_no_pass_to_be_followed() -> None:
    """Two against the wall and one of them to oneself: nobody has to be asked where the passer goes."""
    round_ = round_of(WALL + "1. Home passes against Bench.\n2. Home passes against Bench.\n")
    assert said(round_)[:2] == ["0 pass 0", "0 pass 1"]


# --- problems -----------------------------------------------------------------------------------------------------


def test_a_pass_without_a_ball_is_told_at_the_pass() -> None:
    text = FACING.replace(" with the ball", "")
    _, problems = unrolled(text)
    assert [problem.code for problem in problems] == ["no-ball"]
    assert problems[0].where is not None
    assert problems[0].where.line - HEAD_LINES == 4


def test_a_child_left_standing_is_told_at_its_last_act() -> None:
    text = """Base at 0, 0 is a line with 4 balls.
Post at 0, 8 is a line.
Each round:
1. Post runs to 3, 3.
2. Base dribbles to Base.
"""
    _, problems = unrolled(text)
    assert [problem.code for problem in problems] == ["ends-nowhere"]
    assert problems[0].where is not None
    assert problems[0].where.line - HEAD_LINES == 4


def test_problems_of_both_sides_are_told_once() -> None:
    text = """Base at 0, 0 is a line.
Left at -6, 9 and Right at 6, 9 are lines.
Each round, Left and Right in turn (call it Side):
1. Base passes to Side, then runs to Side.
2. Side dribbles to Base.
"""
    _, problems = rounds_of(exercise_of(text))
    assert [problem.code for problem in problems] == ["no-ball"]


# --- contests -----------------------------------------------------------------------------------------------------


def test_a_contest_ends_the_script_and_nobody_walks_back() -> None:
    text = """Hub at 0, 0 is a line with 4 balls.
Gate House at 6, 16 is a line.
Goal at 0, 17 is a mini goal.
Each round:
1. Hub dribbles to 0, 4.
2. Contest in 12 by 12 m, middle at 0, 10: Hub against Gate House, on Goal, at most 8 s.
Scored, out or time up: Hub joins Gate House, Gate House takes the ball to Hub and joins Hub.
Gate House wins it: Hub joins Gate House, Gate House takes the ball to Hub and joins Hub.
"""
    round_ = round_of(text)
    assert round_.contest is not None
    assert round_.contest_step == 2
    assert said(round_) == ["0 dribble"]


def test_a_shot_at_a_called_gate_flies_to_the_gate_called() -> None:
    exercise, problems = read(
        "exercise: Case\nkind: finishing\nfor 2 to 6 players, under 9 to under 14\n\n"
        "Base at 0, 0 is a line with 6 balls.\nRed Gate at -4, 9 is a gate 2 m wide.\n"
        "Blue Gate at 4, 9 is a gate 2 m wide.\n\n"
        "Each round, the coach calls Red Gate or Blue Gate (call it Exit):\n"
        "1. Base shoots at Exit.\n"
    )
    assert exercise is not None
    assert not problems
    ends = [unroll(exercise, side)[0].acts[0].flight[-1] for side in (0, 1)]
    assert ends == [(-4, 9), (4, 9)]
