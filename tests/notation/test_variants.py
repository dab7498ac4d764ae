"""Steps up and down: each change is read, found to be there, and gives the exercise that is meant."""

import pytest

from conewright.model.exercise import Exercise, Holds, Manner, Move, Numbers, Pace, Verb, Weight
from conewright.model.geometry import Point
from conewright.model.stepped import stepped
from conewright.model.variant import (
    AfterStep,
    ChangeManner,
    InsteadOf,
    LeaveOut,
    OneMore,
    OtherLength,
    OtherTeams,
    Patch,
    Resize,
    Shift,
    VariantKind,
)
from conewright.notation.printer import write
from conewright.notation.reader import read
from conewright.notation.spans import without_spans
from conewright.notation.words import VARIANT_SYNONYMS, VARIANTS

HEAD = "exercise: Test\nkind: passing pattern\nfor 4 to 12 players\n"
SCRIPT = (
    "Base at 0, 0 is a line, a ball each.\nStem at 0, 8 holds one.\nLeft at -6, 15 and Right at 6, 15 are lines.\n"
    "Mast at 2, 6 is a cone.\nGoal at 0, 22 is a goal.\n"
    "Each round, Left and Right in turn (call it Side):\n"
    "1. Base passes firmly to Stem, then runs to Stem.\n"
    "2. Stem turns in two touches, passes ahead of Side, then runs to Side.\n"
    "3. Side dribbles to the end of Base round the outside.\n"
)
PLAY = "Open play in 12 by 12 m: four Yellow and two Blue keep it from two Red.\n"
DUEL = (
    "Base at 0, 0 is a line, a ball each.\nStem at 0, 8 holds one.\nEach round:\n"
    "1. Contest in 9 by 9 m, middle at 0, 9: Base against Stem.\nScored, out, won or time up: Base and Stem swap.\n"
)


def exercise_with(steps: str, ground: str = SCRIPT) -> Exercise:
    exercise, problems = read(f"{HEAD}{ground}\n{steps}\n")
    assert problems == ()
    assert exercise is not None
    return exercise


def changes(sentence: str, ground: str = SCRIPT) -> tuple[Patch, ...]:
    (variant,) = exercise_with(f'harder "so": as written, but {sentence}.', ground).variants
    return without_spans(variant).patches


def codes(steps: str, ground: str = SCRIPT) -> tuple[str, ...]:
    return tuple(problem.code for problem in read(f"{HEAD}{ground}\n{steps}\n")[1])


@pytest.mark.parametrize(
    ("sentence", "who", "verb", "manner"),
    [
        ("in 2 Stem turns out first time", "Stem", Verb.TURN, Manner(touches=1)),
        ("in step two Stem turns with the left in three touches", "Stem", Verb.TURN, None),
        ("in 1 Base plays softly", "Base", Verb.PASS, Manner(weight=Weight.SOFT)),
        ("in 1 Base sprints", "Base", Verb.RUN, Manner(pace=Pace.SPRINT)),
        ("in 1 Base runs at full speed", "Base", Verb.RUN, Manner(pace=Pace.SPRINT)),
        ("in 3 Side dribbles walking", "Side", Verb.DRIBBLE, Manner(pace=Pace.WALK)),
    ],
)
def test_the_same_in_another_way(sentence: str, who: str, verb: Verb, manner: Manner | None) -> None:
    (change,) = changes(sentence)
    assert isinstance(change, ChangeManner)
    assert (change.who, change.verb) == (who, verb)
    assert manner in (None, change.manner)


def test_two_verbs_of_one_person_are_two_changes() -> None:
    assert [change.verb for change in changes("in 2 Stem turns first time and passes softly")] == [Verb.TURN, Verb.PASS]


def test_sentences_more_less_and_instead() -> None:
    after, instead, less = changes(
        "after step 2: Left runs to 3, 10; Right shows; instead of 1: Base passes to Stem, then follows the pass; "
        "leave out 4"
    )
    assert isinstance(after, AfterStep)
    assert (after.after, [act.who for act in after.step.acts]) == (2, ["Left", "Right"])
    assert isinstance(instead, InsteadOf)
    assert instead.step.acts[1].target is not None
    assert instead.step.acts[1].target.name == "Stem"
    assert less == LeaveOut(number=4)


@pytest.mark.parametrize(
    "sentence",
    [
        "one more: Shadow at 0, 10 is passive",
        "one more, Shadow, at 0, 10, is passive",
        "one more, Shadow, stands at 0, 10 and is passive",
        "one more: Shadow at 0, 10 is a passive defender",
    ],
)
def test_one_more(sentence: str) -> None:
    (more,) = changes(f"{sentence}; Shadow changes with Left every 6 rounds")
    assert isinstance(more, OneMore)
    place, rotation = more.place, more.rotation
    assert (place.name, place.at, place.holds, place.passive) == ("Shadow", Point(0, 10), Holds.ONE, True)
    assert rotation is not None
    assert rotation.every_rounds == 6
    assert rotation.moves == (Move(who="Shadow", to="Left"), Move(who="Left", to="Shadow"))


def test_a_new_place_is_known_in_every_change_and_in_the_steps_on_it() -> None:
    exercise = exercise_with(
        'harder "one": as before, but in 1 Base passes softly; after 1: Shadow runs home; one more: Shadow at 0, 9 is '
        'passive.\nharder "two": as before, but Shadow stands at 0, 4.'
    )
    second = stepped(exercise, "two")
    assert second is not None
    assert second.place("Shadow") is not None
    assert second.place("Shadow").at == Point(0, 4)
    assert "as written, but Shadow stands at 0, 4" not in write(exercise)
    text = 'harder "one": as written, but one more: Shadow at 0, 9 is passive.\nharder "two": as written, but '
    assert codes(f"{text}Shadow stands at 0, 4.") == ("unknown-name",)


def test_moved_and_resized() -> None:
    assert changes("Mast stands at -2, 6; Stem stands at 0, 6") == (
        Shift(name="Mast", at=Point(-2, 6)),
        Shift(name="Stem", at=Point(0, 6)),
    )
    assert changes("in 10 by 8 m", PLAY) == (Resize(width_m=10, depth_m=8),)
    assert changes("in 10 by 8 yards", DUEL) == (Resize(width_m=9.14, depth_m=7.312),)


def test_a_bout_or_a_contest_lasts_otherwise() -> None:
    assert changes("bouts of 45 s", PLAY) == (OtherLength(seconds=45),)
    assert changes("at most 6 s", DUEL) == (OtherLength(seconds=6),)
    text = 'harder "quick": as before, but bouts of 90 s.'
    exercise = exercise_with(text, PLAY)
    assert text in write(exercise)
    quick = stepped(exercise, "quick")
    assert quick is not None
    assert quick.open_play is not None
    assert quick.open_play.bout_s == 90


def test_where_things_stand_by_now_is_where_they_are_named() -> None:
    moved, played = changes("Mast stands at -2, 6; instead of 1: Base passes ahead of Stem to Mast")
    assert isinstance(moved, Shift)
    assert isinstance(played, InsteadOf)
    assert played.step.acts[0].target is not None
    assert played.step.acts[0].target.at == Point(-2, 6)


def test_other_teams() -> None:
    (other,) = changes("three Yellow and three Blue keep it from three Red, with one neutral", PLAY)
    assert isinstance(other, OtherTeams)
    counts = [(team.name, team.count) for team in other.teams]
    assert counts == [("Yellow", 3), ("Blue", 3), ("Red", 3), ("neutral", 1)]


def test_another_contest_with_what_happens_after_it() -> None:
    (other,) = changes(
        "instead of 1: Base waits 2 s; contest in 6 by 6 m, middle at 0, 9: Base against Stem; scored or out: Base "
        "joins Stem; Stem wins it: nobody moves",
        DUEL,
    )
    assert isinstance(other, InsteadOf)
    assert other.step.contest is not None
    assert [len(outcome.moves) for outcome in other.step.contest.outcomes] == [1, 0]
    assert len(other.step.acts) == 1


@pytest.mark.parametrize(("phrase", "kind"), [(v, k) for k, v in VARIANTS.items()] + list(VARIANT_SYNONYMS.items()))
def test_kinds(phrase: str, kind: VariantKind) -> None:
    exercise = exercise_with(f'{phrase} "so": as before, but leave out 3.')
    assert exercise.variants[0].kind is kind
    assert f'{VARIANTS[kind]} "so": as before, but leave out 3.\n' in write(exercise)


def test_as_before_and_as_written_and_numbers() -> None:
    steps = (
        'easier "soft": as before, but in 1 Base passes softly. For 4 to 6 players; best with 5.\n'
        'harder "first": as before, but in 2 Stem turns first time.\n'
        'harder "second": as before, but in 2 Stem passes first time.\n'
        'harder "third": as written, but in 2 Stem passes softly; for 6.\n'
    )
    exercise = exercise_with(steps)
    assert [variant.as_before for variant in exercise.variants] == [True, True, True, False]
    assert [variant.numbers for variant in exercise.variants] == [
        Numbers(least=4, most=6, best=5),
        None,
        None,
        Numbers(least=6, most=6),
    ]
    second, third = stepped(exercise, "second"), stepped(exercise, "third")
    assert second is not None
    assert third is not None
    assert [act.manner.touches for act in second.script.steps[1].acts] == [1, 1, None]
    assert [act.manner.touches for act in third.script.steps[1].acts] == [2, None, None]


def test_numbers_may_stand_in_the_next_line_and_never_stand_for_the_exercise() -> None:
    exercise = exercise_with('harder "so": as before, but leave out 3.\nFor 6 to 9.')
    assert exercise.variants[0].numbers == Numbers(least=6, most=9)
    assert exercise.numbers == Numbers(least=4, most=12)
    wrapped = exercise_with('harder "so": as before,\nbut leave out 3. For 6 to 9.')
    assert without_spans(wrapped) == without_spans(exercise)


def test_changes_are_told_against_what_the_changes_before_them_leave() -> None:
    assert codes('harder "so": as before, but leave out 3; leave out 3.') == ("no-such-step",)
    assert codes('harder "so": as before, but instead of 2: Stem shows; in 2 Stem turns first time.') == (
        "no-such-act",
    )
    assert codes('harder "so": as before, but after 3: Stem turns; in 4 Stem turns first time.') == ()
    first = 'harder "a": as before, but leave out 1.\n'
    assert codes(f'{first}harder "b": as before, but in 1 Stem turns first time.') == ()
    assert codes(f'{first}harder "b": as written, but in 1 Stem turns first time.') == ("no-such-act",)


def test_what_step_has_is_said_in_the_hint() -> None:
    (problem,) = read(f'{HEAD}{SCRIPT}harder "so": as before, but in 3 Stem turns first time.\n')[1]
    assert problem.hint == 'Step 3 has "Side dribbles to the end of Base round the outside".'
    assert problem.where is not None
    assert (problem.where.line, problem.where.column) == (13, 29)


@pytest.mark.parametrize(
    ("steps", "told"),
    [
        ('harder "so": as before, but.', "no-change"),
        ('harder "so": as before, but in 1 Base passes.', "no-change"),
        ('harder "so": as before, but in 7 Base passes softly.', "no-such-step"),
        ('harder "so": as before, but instead of 7: Base passes softly to Stem.', "no-such-step"),
        ('harder "so": as before, but after 1: Base runs home after 9.', "no-such-step"),
        ('harder "so": as before, but in 1 Base passes softly to Stem.', "not-manner"),
        ('harder "so": as before, but in 10 by 10 m.', "no-box"),
        ('harder "so": as before, but bouts of 45 s.', "no-box"),
        ('harder "so": as before, but four Yellow against three Red.', "no-open-play"),
        ('harder "so": as before, but Left changes with Right every 6 rounds.', "not-new"),
        ('harder "so": as before, but Base passes softly.', "unknown-change"),
        ('harder "so": as before, but jump higher.', "unknown-change"),
        ('harder "so": as before, but one more: Mast at 0, 1 is passive.', "name-twice"),
        ('harder "so": as before, but one more: Pin at 0, 1 is a cone.', "not-a-place"),
        ('harder "so": as before, but leave out 1. It is hard.', "unknown-sentence"),
        ('harder "so": as before, but leave out 1; leave out 1\n', "no-full-stop"),
        ("harder: as before, but leave out 1.", "unclear-sentence"),
        ('harder "so": leave out 1.', "unclear-sentence"),
        ('hardr "so": as before, but leave out 1.', "unknown-word"),
        ('half the spce "so": as before, but leave out 1.', "unknown-word"),
        ('harder "so": as befroe, but leave out 1.', "unknown-word"),
        ('harder "so": as before, but laeve out 1.', "unknown-word"),
        ('harder "so": as before, but leave out 1. For 9 to 6.', "numbers-upside-down"),
        ('harder "so": as before, but leave out 1. For 6. For 7.', "said-twice"),
    ],
)
def test_each_mistake_is_told_once(steps: str, told: str) -> None:
    assert codes(steps) == (told,)


def test_two_steps_of_one_name_and_numbers_of_none() -> None:
    assert codes('harder "so": as before, but leave out 1.\neasier "so": as before, but leave out 2.') == (
        "name-twice",
    )
    assert codes("With 9: two copies. For 6 to 9.") == ("no-variant",)


def test_teams_that_meet_in_another_way() -> None:
    assert codes('harder "so": as before, but four Yellow against three Red.', PLAY) == ("other-meeting",)
    assert codes('harder "so": as before, but four Yellow keep it from three Red.', PLAY) == ("other-meeting",)


def test_what_is_wrong_with_one_change_costs_only_that_one() -> None:
    exercise, problems = read(
        f'{HEAD}{SCRIPT}harder "so": as before, but in 2 Stem turns first time; jump higher; leave out 3.\n'
    )
    assert len(problems) == 1
    assert exercise is not None
    assert [type(patch) for patch in exercise.variants[0].patches] == [ChangeManner, LeaveOut]
