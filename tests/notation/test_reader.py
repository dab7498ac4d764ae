"""Reading: good texts without a problem, wrong ones with each mistake told once, any text at all without raising."""

from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path
from re import finditer

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from conewright.model.exercise import (
    Event,
    Manner,
    Pace,
    PlayKind,
    SideOrder,
    Target,
    TargetKind,
    Verb,
    Via,
)
from conewright.model.geometry import Point
from conewright.model.problem import Problem, Severity
from conewright.notation.reader import read
from conewright.notation.report import in_terminal
from conewright.notation.shapes import HEADERS

DATA = Path(__file__).parents[1] / "data" / "notation"
GOOD = sorted(DATA.glob("*.exercise"))
WRONG = sorted((DATA / "wrong").glob("*.exercise"))
HEAD = "exercise: Test\nkind: passing pattern\nfor 4 to 12 players\n"
GROUND = (
    "Base at 0, 0 is a line with the ball.\nStem at 0, 8 is a line.\nGate House at 9, 20 holds one.\n"
    "Mast at 2, 6 is a cone.\nDoor at 0, 10 is a gate.\nGoal at 0, 22 is a goal.\nBench at 4, 4 is a wall.\n"
)


def act(sentence: str, number: int = 0):
    exercise, problems = read(f"{HEAD}{GROUND}Each round:\n1. {sentence}\n")
    assert problems == ()
    assert exercise is not None
    assert exercise.script is not None
    return exercise.script.steps[0].acts[number]


def codes(text: str) -> tuple[str, ...]:
    return tuple(problem.code for problem in read(text)[1])


def good_text(path: Path) -> str:
    rows = path.read_text(encoding="utf-8").split("\n")
    return "\n".join(row for row in rows if not row.startswith("#"))


def tell_place(problem: Problem, text: str) -> None:
    """Every problem says what, where inside the text, and how to mend it."""
    rows = text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n").split("\n")
    assert problem.message
    assert problem.hint
    assert problem.where is not None
    assert 1 <= problem.where.line <= problem.where.end_line <= len(rows)
    assert 1 <= problem.where.column <= len(rows[problem.where.line - 1]) + 2
    assert (problem.where.line, problem.where.column) < (problem.where.end_line, problem.where.end_column)


# --- files ---


@pytest.mark.parametrize("path", GOOD, ids=lambda path: path.stem)
def test_good_files_have_no_problem(path: Path) -> None:
    exercise, problems = read(path.read_text(encoding="utf-8"))
    assert problems == ()
    assert exercise is not None


@pytest.mark.parametrize("path", WRONG, ids=lambda path: path.stem)
def test_wrong_files_tell_what_is_expected(path: Path, rewrite: bool) -> None:
    text = path.read_text(encoding="utf-8")
    told = in_terminal(read(text)[1], text, path.name)
    expected = path.with_suffix(".problems")
    if rewrite:
        expected.write_text(told, encoding="utf-8")
    assert told == expected.read_text(encoding="utf-8")
    assert told


# --- acts ---


@pytest.mark.parametrize(
    ("sentence", "verb", "target", "manner"),
    [
        ("Base passes to Stem.", Verb.PASS, Target(kind=TargetKind.ROLE, name="Stem"), Manner()),
        ("Base passes to 3, -4.5.", Verb.PASS, Target(kind=TargetKind.POINT, at=Point(3, -4.5)), Manner()),
        ("Base plays against Bench.", Verb.PASS, Target(kind=TargetKind.THING, name="Bench"), Manner()),
        ("Base passes ahead of Stem.", Verb.PASS, Target(kind=TargetKind.AHEAD, name="Stem"), Manner()),
        (
            "Base passes into space ahead of Stem, who runs to -6, 6.",
            Verb.PASS,
            Target(kind=TargetKind.AHEAD, name="Stem", at=Point(-6, 6)),
            Manner(),
        ),
        (
            "Base crosses ahead of Stem to Mast first time lofted.",
            Verb.CROSS,
            Target(kind=TargetKind.AHEAD, name="Stem", at=Point(2, 6)),
            Manner(touches=1, lofted=True),
        ),
        ("Stem sets it back.", Verb.SET_BACK, None, Manner()),
        ("Stem sets it back to Base.", Verb.SET_BACK, Target(kind=TargetKind.ROLE, name="Base"), Manner()),
        ("Stem shoots at Goal.", Verb.SHOOT, Target(kind=TargetKind.THING, name="Goal"), Manner()),
        ("Base runs home.", Verb.RUN, Target(kind=TargetKind.OWN), Manner()),
        ("Base goes to its own line.", Verb.RUN, Target(kind=TargetKind.OWN), Manner()),
        ("Base jogs to Stem.", Verb.RUN, Target(kind=TargetKind.PLACE, name="Stem"), Manner(pace=Pace.JOG)),
        ("Base runs to Mast.", Verb.RUN, Target(kind=TargetKind.THING, name="Mast"), Manner()),
        (
            "Base runs at full speed to Stem.",
            Verb.RUN,
            Target(kind=TargetKind.PLACE, name="Stem"),
            Manner(pace=Pace.SPRINT),
        ),
        (
            "Base dribbles to the end of Stem round the outside.",
            Verb.DRIBBLE,
            Target(kind=TargetKind.PLACE, name="Stem", end=True),
            Manner(outside=True),
        ),
        (
            "Base runs 10 yards towards Goal.",
            Verb.RUN,
            Target(kind=TargetKind.TOWARDS, name="Goal", distance_m=9.14),
            Manner(),
        ),
        ("Stem checks away 3 m.", Verb.CHECK, Target(kind=TargetKind.TOWARDS, distance_m=3), Manner()),
        ("Stem turns out in two touches.", Verb.TURN, None, Manner(touches=2)),
    ],
)
def test_acts(sentence: str, verb: Verb, target: Target | None, manner: Manner) -> None:
    read_act = act(sentence)
    assert (read_act.verb, read_act.target, read_act.manner) == (verb, target, manner)


def test_ways_are_kept_in_their_order() -> None:
    assert act("Base dribbles round Mast and through Door to Stem.").via == (
        Via(how="round", name="Mast"),
        Via(how="through", name="Door"),
    )


def test_seconds_and_words() -> None:
    assert act("Base waits 2 s.").seconds == 2
    task = act('Base does "ten toe taps" for 10 s.')
    assert (task.what, task.seconds) == ("ten toe taps", 10)
    assert act("Base calls “turn”.").what == "turn"


@pytest.mark.parametrize(
    ("when", "event", "who", "name", "step", "delay"),
    [
        ("when Base passes", Event.RELEASED, "Base", "", None, 0),
        ("when Base has the ball", Event.CONTROLLED, "Base", "", None, 0),
        ("on Base's first touch", Event.CONTROLLED, "Base", "", None, 0),
        ("on Base’s first touch", Event.CONTROLLED, "Base", "", None, 0),
        ("when Base shoots", Event.SHOT, "Base", "", None, 0),
        ("when Base's shot is over", Event.OVER, "Base", "", None, 0),
        ("when Base is home", Event.ARRIVED, "Base", "", None, 0),
        ("when Base reaches Gate House", Event.ARRIVED, "Base", "Gate House", None, 0),
        ("when Base is halfway home", Event.HALFWAY, "Base", "", None, 0),
        ("when Base is past Mast", Event.PASSED, "Base", "Mast", None, 0),
        ("when Base starts", Event.STARTED, "Base", "", None, 0),
        ("after 1", Event.STEP, "", "", 1, 0),
        ("after step one", Event.STEP, "", "", 1, 0),
        ("when the ball is back at Base", Event.BACK, "", "Base", None, 0),
        ("when Gate House is ready", Event.READY, "Gate House", "", None, 0),
        ("when the box is clear", Event.BOX_CLEAR, "", "", None, 0),
        ("on the coach's call", Event.CALL, "", "", None, 0),
        ("at once", Event.TOGETHER, "", "", None, 0),
        ("1.5 s after Base passes", Event.RELEASED, "Base", "", None, 1.5),
        ("two seconds after the coach calls", Event.CALL, "", "", None, 2),
    ],
)
def test_starts_at_the_end_and_at_the_front(
    when: str, event: Event, who: str, name: str, step: int | None, delay: float
) -> None:
    at_end = act(f"Stem runs home {when}.").start
    at_front = act(f"{when[0].upper()}{when[1:]}, Stem runs home.").start
    for start in (at_end, at_front):
        assert start is not None
        assert (start.event, start.who, start.name, start.step, start.delay_s) == (event, who, name, step, delay)


def test_one_persons_acts_and_anothers() -> None:
    sentence = "Base passes to Stem, turns, then runs home; Stem shows while Gate House runs to Stem. Stem runs home."
    subjects = [act(sentence, number).who for number in range(6)]
    assert subjects == ["Base", "Base", "Base", "Stem", "Gate House", "Stem"]


def test_following_the_pass_is_a_run_to_the_receivers_place() -> None:
    assert act("Base passes ahead of Stem, then follows the pass.", 1).target == Target(
        kind=TargetKind.PLACE, name="Stem"
    )
    text = (
        "Each round, Stem and Base in turn (call it Side):\n1. Gate House passes to Side.\n"
        "2. Gate House follows her pass.\n"
    )
    exercise, problems = read(HEAD + GROUND + text)
    assert problems == ()
    assert exercise.script.steps[1].acts[0].target == Target(kind=TargetKind.PLACE, name="Side")


def test_spans_cover_what_they_stand_for() -> None:
    text = HEAD + GROUND + "Each round:\n1. Base passes to Stem, then runs\n   home; Stem turns when Base starts.\n"
    step = read(text)[0].script.steps[0]
    rows = text.split("\n")

    def words(span) -> str:
        first, last = rows[span.line - 1], rows[span.end_line - 1]
        if span.line == span.end_line:
            return first[span.column - 1 : span.end_column - 1]
        return f"{first[span.column - 1 :]} {last[: span.end_column - 1].strip()}"

    assert [words(found.span) for found in step.acts] == [
        "Base passes to Stem",
        "runs home",
        "Stem turns when Base starts",
    ]
    assert words(step.acts[2].start.span) == "when Base starts"
    assert words(step.span) == "Base passes to Stem, then runs home; Stem turns when Base starts"
    place, door = read(text)[0].places[2], read(text)[0].thing("Door")
    assert words(place.span) == "Gate House at 9, 20 holds one"
    assert words(door.span) == "Door at 0, 10 is a gate"


# --- sentences round the acts ---


def test_sides() -> None:
    turns = "Each round, Base, Stem and Gate House in turn (call it Side):\n1. Side runs home.\n"
    sides = read(HEAD + GROUND + turns)[0].script.sides
    assert (sides.word, sides.places, sides.order) == ("Side", ("Base", "Stem", "Gate House"), SideOrder.IN_TURN)
    half = "Each round, Base, then Stem from half time (call it Side):\n1. Side runs home.\n"
    exercise, problems = read(HEAD + GROUND + half)
    assert problems == ()
    assert exercise.script.sides.order is SideOrder.HALF_TIME


@pytest.mark.parametrize(
    ("opening", "order", "chooser", "places", "other"),
    [
        ("Base chooses Stem or Gate House (call it Side)", SideOrder.CHOICE, "Base", ("Stem", "Gate House"), ""),
        ("Base picks Stem, or Gate House (call it Side)", SideOrder.CHOICE, "Base", ("Stem", "Gate House"), ""),
        ("the coach calls Door or Goal (call it Side)", SideOrder.CALL, "", ("Door", "Goal"), ""),
        ("the coach chooses Door or Goal (call it Side)", SideOrder.CALL, "", ("Door", "Goal"), ""),
        ("Base calls Door, Goal or Mast (call it Side)", SideOrder.CALL, "Base", ("Door", "Goal", "Mast"), ""),
        ("Stem and Base in turn (call it Side, the other Rest)", SideOrder.IN_TURN, "", ("Stem", "Base"), "Rest"),
    ],
)
def test_who_decides_on_the_side(
    opening: str, order: SideOrder, chooser: str, places: tuple[str, ...], other: str
) -> None:
    exercise, problems = read(f"{HEAD}{GROUND}Each round, {opening}:\n1. Base runs to Side.\n")
    assert problems == ()
    sides = exercise.script.sides
    assert (sides.order, sides.chooser, sides.places, sides.other) == (order, chooser, places, other)
    assert sides.word == "Side"


def test_a_word_for_things_is_a_thing_and_a_word_for_places_is_a_role() -> None:
    def acts_of(opening: str, sentence: str):
        exercise, problems = read(f"{HEAD}{GROUND}Each round, {opening}:\n1. {sentence}\n")
        assert problems == ()
        return exercise.script.steps[0].acts

    shot, run = acts_of(
        "the coach calls Door or Goal (call it Side)", "Base shoots at Side, then runs through Side home."
    )
    assert shot.target == Target(kind=TargetKind.THING, name="Side")
    assert run.via == (Via(how="through", name="Side"),)
    (played,) = acts_of("Base chooses Stem or Gate House (call it Side, the other Rest)", "Base passes to Rest.")
    assert played.target == Target(kind=TargetKind.ROLE, name="Rest")


@pytest.mark.parametrize(
    ("opening", "sentence", "code"),
    [
        ("the coach calls Door or Mast (call it Side)", "Base shoots at Side.", "not-a-goal"),
        ("the coach calls Door or Goal (call it Side)", "Side runs home.", "cannot-act"),
        ("Door calls Stem or Base (call it Side)", "Side runs home.", "cannot-act"),
        ("the coach sees Door or Goal (call it Side)", "Base runs to Door.", "unclear-sentence"),
        ("Base, Stem and Gate House in turn (call it Side, the other Rest)", "Side runs home.", "several-others"),
        ("Base and Stem in turn (call it Side, the other Side)", "Side runs home.", "sides-word-taken"),
        ("Base and Stem in turn (call it Side, the other Mast)", "Side runs home.", "sides-word-taken"),
        ("Base or Mast in turn (call it Side)", "Base runs home.", "mixed-sides"),
        ("Base and Stem in turn (call it Side)", "Gate House passes ahead of Base to Side.", "not-a-spot"),
        ("Base chooses Stme or Gate House (call it Side)", "Base runs to Side.", "unknown-name"),
    ],
)
def test_mistakes_about_sides_are_told_once(opening: str, sentence: str, code: str) -> None:
    assert codes(f"{HEAD}{GROUND}Each round, {opening}:\n1. {sentence}\n") == (code,)


@pytest.mark.parametrize(
    ("sentence", "kind", "teams", "on", "balls"),
    [
        ("everyone has a ball", PlayKind.BALL_EACH, (), (), 0),
        ("four Yellow keep it from two Red", PlayKind.KEEP, (("Yellow", 4), ("Red", 2)), (), 1),
        (
            "Yellow against Blue on Goal and Door",
            PlayKind.GAME,
            (("Yellow", None), ("Blue", None)),
            ("Goal", "Door"),
            1,
        ),
        (
            "four Yellow against four Blue, with two neutral, on Goal",
            PlayKind.GAME,
            (("Yellow", 4), ("Blue", 4), ("neutral", 2)),
            ("Goal",),
            1,
        ),
        ("two Red chase the others, who have a ball each", PlayKind.CHASE, (("Red", 2), ("others", None)), (), 0),
    ],
)
def test_open_play(sentence: str, kind: PlayKind, teams: tuple, on: tuple[str, ...], balls: int) -> None:
    exercise, problems = read(f"{HEAD}{GROUND}Open play in 12 by 15 m, middle at 0, 10: {sentence}.\n")
    assert problems == ()
    play = exercise.open_play
    assert (play.width_m, play.depth_m, play.middle, play.kind) == (12, 15, Point(0, 10), kind)
    assert tuple((team.name, team.count) for team in play.teams) == teams
    assert (play.on, play.balls) == (on, balls)


def test_teams_that_play_together() -> None:
    sentence = "four Yellow, four Blue and one Green keep it from two Red, with one neutral, on Goal."
    exercise, problems = read(f"{HEAD}{GROUND}Open play in 12 by 15 m: {sentence}\n")
    assert problems == ()
    play = exercise.open_play
    assert [team.name for team in play.teams] == ["Yellow", "Blue", "Green", "Red", "neutral"]
    assert play.together == ("Blue", "Green")


def test_free_lines_may_share_a_line_and_remarks_are_never_cut() -> None:
    text = "Open play in 9 by 9 m: everyone has a ball.\nRestart: a pass in. Rule: no hands. Score: one each.\n"
    exercise, problems = read(f"{HEAD}{text}cue: look up. Rule: none.\n")
    assert problems == ()
    assert (exercise.open_play.restart, exercise.open_play.rules) == ("a pass in", ("no hands",))
    assert (exercise.score, exercise.cues) == ("one each.", ("look up. Rule: none.",))


def test_names_match_longest_first_in_any_case_with_a_possessive() -> None:
    ground = "Lane at 0, 0 is a line with the ball.\nLane 2 at 0, 8 is a line.\nlane three at 0, 9 is a line.\n"
    steps = "Each round:\n1. Lane passes to Lane 2.\n2. lane 2 passes to lane three on Lane 2's first touch.\n"
    exercise, problems = read(HEAD + ground + steps)
    assert problems == ()
    assert [place.name for place in exercise.places] == ["Lane", "Lane 2", "Lane Three"]
    assert exercise.script.steps[1].acts[0].target.name == "Lane Three"


def test_yards_and_other_line_ends() -> None:
    text = (
        "\ufeff" + HEAD.replace("\n", "\r\n") + "space: 10 by 20 yards\r\nOpen play in 9 by 9 m: everyone has a ball.\r"
    )
    exercise, problems = read(text)
    assert problems == ()
    assert (exercise.space.width_m, exercise.space.depth_m) == (9.14, 18.28)


# --- mistakes ---


def test_nothing_is_read_from_nothing() -> None:
    exercise, problems = read("")
    assert exercise is None
    assert [problem.code for problem in problems] == ["no-name", "no-kind", "no-numbers"]
    assert {problem.severity for problem in problems} == {Severity.MEND}
    assert all(problem.where.line == 1 for problem in problems)
    assert [problem.hint for problem in problems] == [
        f"Write a line like this: {HEADERS[key]}" for key in ("exercise", "kind", "for")
    ]


def test_an_exercise_in_which_nothing_happens() -> None:
    assert codes(HEAD) == ("nothing-happens",)


def test_what_follows_a_mistake_is_read() -> None:
    steps = "Each round:\n1. Base bakes a cake, then runs home.\n2. Stem runs home.\nRotation: follow the pass.\n"
    exercise, problems = read(HEAD + GROUND + steps)
    assert [problem.code for problem in problems] == ["unclear-sentence"]
    assert [found.who for found in exercise.script.steps[1].acts] == ["Stem"]
    assert len(exercise.script.rotations) == 1


def test_acts_before_a_mistake_are_kept() -> None:
    exercise, problems = read(f"{HEAD}{GROUND}Each round:\n1. Base passes to Stem, then bakes a cake.\n")
    assert [problem.code for problem in problems] == ["unclear-sentence"]
    assert [found.verb for found in exercise.script.steps[0].acts] == [Verb.PASS]


def test_a_name_nobody_declared_is_told_once() -> None:
    steps = "Each round:\n1. Base passes to Twig.\n2. Twig passes to Base.\n3. Base passes to Twig.\n"
    assert codes(HEAD + GROUND + steps) == ("unknown-name",)


def drop(text: str) -> Iterator[str]:
    yield from (text[: word.start()] + text[word.end() :] for word in finditer(r"\S+", text))


def swap(text: str) -> Iterator[str]:
    for one, two in pairwise(finditer(r"\S+", text)):
        yield text[: one.start()] + two[0] + text[one.end() : two.start()] + one[0] + text[two.end() :]


def misspell(text: str) -> Iterator[str]:
    for word in finditer(r"[A-Za-z]{4,}", text):
        middle = word.start() + len(word[0]) // 2
        if text[middle] != text[middle - 1]:
            yield text[: middle - 1] + text[middle] + text[middle - 1] + text[middle + 1 :]
        yield text[:middle] + text[middle + 1 :]
        yield text[:middle] + text[middle] + text[middle:]


def cut(text: str) -> Iterator[str]:
    rows = text.split("\n")
    yield from ("\n".join(rows[:at] + rows[at + 1 :]) for at in range(len(rows)))


def unstop(text: str) -> Iterator[str]:
    yield from (text[: stop.start()] + text[stop.end() :] for stop in finditer(r"\.(?=\s)", text))


@pytest.mark.parametrize("path", GOOD, ids=lambda path: path.stem)
@pytest.mark.parametrize("spoil", [drop, swap, misspell, cut, unstop])
def test_spoilt_files_never_raise_and_tell_where(path: Path, spoil) -> None:
    for text in spoil(good_text(path)):
        for problem in read(text)[1]:
            tell_place(problem, text)


@pytest.mark.parametrize(("spoil", "share"), [(misspell, 1.0), (unstop, 1.0), (drop, 0.998), (cut, 0.95)])
def test_one_mistake_is_told_at_most_once(spoil, share: float) -> None:
    counts = [len(read(text)[1]) for path in GOOD for text in spoil(good_text(path))]
    assert sum(count <= 1 for count in counts) >= share * len(counts)
    assert sum(count == 1 for count in counts) > 0.4 * len(counts)


VOCABULARY = st.sampled_from(
    (
        "Base Stem Gate House Left Side one two 3 -4 0.5 12 at to is are a line lines holds one with the ball balls"
        " each passes runs shoots dribbles then while when after has of ahead towards round through home Contest in by"
        " m middle against Rotation Every rounds Open play Yellow keep it from neutral With copies Start rest Each"
        ' round call turn Scored out joins takes s . . . , , ; : ( ) \n \n exercise: kind: for space: cue: # " “ ’s'
        " -> 1. 2."
    ).split(" ")
)


@settings(max_examples=300, deadline=None)
@given(st.text() | st.lists(VOCABULARY, max_size=60).map(" ".join))
def test_any_text_is_read_without_raising(text: str) -> None:
    for problem in read(text)[1]:
        tell_place(problem, text)


@settings(max_examples=200, deadline=None)
@given(st.data())
def test_texts_spoilt_several_times_are_read_without_raising(data: st.DataObject) -> None:
    text = good_text(data.draw(st.sampled_from(GOOD)))
    for _ in range(data.draw(st.integers(1, 6))):
        start, end = sorted((data.draw(st.integers(0, len(text))), data.draw(st.integers(0, len(text)))))
        text = text[:start] + data.draw(st.text(max_size=4)) + text[min(end, start + 12) :]
    for problem in read(text)[1]:
        tell_place(problem, text)


def test_huge_numbers_and_long_lines_are_no_trouble() -> None:
    text = f"{HEAD}Base at {'9' * 5000}, 1 is a line with {'9' * 400} balls.\n{'9' * 5000}. {'x' * 5000}.\n"
    text += f"for {'9' * 5000} players\nWith {'9' * 5000}: two copies.\nEach round:\n1. Base waits {'9' * 400} s.\n"
    for problem in read(text)[1]:
        tell_place(problem, text)


def test_a_name_is_told_where_the_slip_was_made() -> None:
    steps = "Each round:\n1. Base runs to Twig.\n2. Stem runs to Twig.\n"
    (problem,) = read(f"{HEAD}{GROUND}Twgi at 4, 8 is a cone.\n{steps}")[1]
    assert (problem.code, problem.where.line) == ("unknown-name", 11)
    assert problem.hint == 'Write "Twig" here, or "Twgi" there.'
    (problem,) = read(f"{HEAD}{GROUND}Twig at 4, 8 is a cone.\nEach round:\n1. Base runs to Twgi.\n")[1]
    assert (problem.code, problem.where.line, problem.hint) == ("unknown-name", 13, 'Did you mean "Twig"?')


def test_how_often_needs_its_number() -> None:
    start = f"{HEAD}{GROUND}Each round:\n1. Base runs home.\n"
    assert codes(f"{start}Every rounds: Base to Stem, Stem to Base.") == ("unclear-sentence",)
    assert codes(f"{start}Every minute: Base to Stem, Stem to Base.") == ()


def test_names_of_a_lost_sentence_do_not_explain_themselves() -> None:
    steps = "Each round, Base Left or Stem (call it Side):\n1. Side runs home.\n"
    assert codes(HEAD + GROUND + steps) == ("unknown-name",)


@pytest.mark.parametrize(
    ("line", "message", "hint"),
    [
        ("Twig 4, 8 is a cone.", '"at" is missing after "Twig".', 'Write "Twig at 4, 8 ...".'),
        ("1. Base runs to Stem, tehn runs home.", 'There is no word "tehn".', 'Did you mean "then"?'),
        (
            "The round starts at once.",
            'There is no sentence that begins "The round".',
            'Did you mean "The next round"?',
        ),
        ("With 4 to 12: trhee copies.", 'There is no number "trhee".', 'Did you mean "three"?'),
        ("6 to 8: two copies.", 'The sentence that begins "6 to 8 :" is not understood.', "With 10 to 18: two copies"),
        (
            "Start with the rest shared between Base Stem.",
            'Nothing stands between "Base" and "Stem".',
            'Write "and" or a comma between two names.',
        ),
        ("good opposed", 'The sentence that begins "good opposed" is not understood.', "good for: arrival, warm-up"),
        (
            "Open play in 9 by 9 m: one Red chase the others, who hvae a ball each.",
            '"who" is not understood here.',
            "Write it like this: Open play in 12 by 12 m",
        ),
    ],
)
def test_what_is_missing_or_slipped_is_named(line: str, message: str, hint: str) -> None:
    opening = "Each round:\n1. Stem turns.\n"
    declares = line.startswith("Twig")
    text = f"{line}\n{opening}" if declares else f"{opening}{line.replace('1. ', '2. ')}\n"
    (problem,) = read(f"{HEAD}{GROUND}{text}")[1]
    assert problem.message == message
    assert hint in problem.hint
