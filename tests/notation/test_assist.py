"""Help while writing: the next word of a text is among those proposed, and words say what they mean."""

import re
import time
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from conewright.model.exercise import KINDS
from conewright.model.problem import Span
from conewright.notation.assist import Completion, completions, hover
from conewright.notation.printer import write
from conewright.notation.reader import read
from conewright.notation.words import JOBS, VARIANTS, VERBS

ROOT = Path(__file__).parents[2]
SHELF = sorted((ROOT / "src" / "conewright" / "data" / "shelf").glob("*.exercise"))
DATA = sorted((ROOT / "tests" / "data" / "notation" / "canonical").glob("*.exercise"))
HEAD = "exercise: Stem and branch\nkind: passing pattern\nfor 5 to 9 players\n"
GROUND = (
    "Base at 0, 0 is a line, a ball each.\nStem at 0, 8 holds one.\nLeft at -6, 15 and Right at 6, 15 are lines.\n"
    "Gate House at 9, 1 is a line.\nMast at 2, 6 is a cone.\nDoor at 0, 10 is a gate.\nGoal at 0, 22 is a goal.\n"
    "Bench at 4, 4 is a wall.\n"
)
ROUND = (
    "Each round, Left and Right in turn (call it Side):\n1. Stem checks away, then shows.\n"
    "2. Base passes firmly to Stem, then runs to Stem.\n"
)
PROPOSED_BY_NOBODY = ("s", "m", "by", "and", "for")  # units and links
PLACES = ["Base", "Stem", "Left", "Right", "Gate House", "Side"]
TEXT = HEAD + GROUND + ROUND


def offers(written: str, before: str = TEXT, behind: str = "") -> tuple[Completion, ...]:
    """What is proposed with the caret behind `written`, in a line of its own."""
    text = before + written + behind
    return completions(text, before.count("\n") + 1, len(written) + 1)


def words(written: str, before: str = TEXT) -> list[str]:
    return [offer.text for offer in offers(written, before)]


# --- what may come next ---


@pytest.mark.parametrize(
    "written", ["3. Base passes to ", "3. Base runs to ", "Start with two at ", "Rotation: Base to "]
)
def test_a_place_or_thing_after_to(written: str) -> None:
    proposed = words(written)
    assert set(PLACES) <= set(proposed)
    assert "Mast" not in proposed or written.startswith("3. Base runs")
    assert "firmly" not in proposed


@pytest.mark.parametrize(
    ("written", "names"),
    [
        ("3. Base shoots at ", ["Door", "Goal"]),
        ("3. Base dribbles through ", ["Door", "Goal"]),
        ("3. Base passes against ", ["Bench"]),
        ("3. Base passes ahead of ", PLACES),
        ("3. Base passes to Stem when Side reaches ", [*PLACES[:-1], "Mast", "Door", "Goal", "Bench", "Side"]),
        ("3. Base passes to G", ["Gate House", "Goal"]),
        ("3. Base passes to Gate ", ["House"]),
        ("3. ", PLACES),
        ("3. b", ["Base"]),
        ("3. Base passes to Stem; ", PLACES),
    ],
)
def test_names_where_they_fit(written: str, names: list[str]) -> None:
    assert [offer.text for offer in offers(written) if offer.is_name] == names


@pytest.mark.parametrize(
    "written", ["3. Base ", "3. Gate House ", "3. Base passes to Stem, then ", "3. Base turns; Side "]
)
def test_a_verb_after_a_name(written: str) -> None:
    assert {verb.phrase for verb in VERBS} <= set(words(written))
    assert not {"pass", "plays", "go"} & set(words(written))


def test_how_a_ball_is_played_and_a_way_is_gone() -> None:
    played, gone = words("3. Base passes to Stem "), words("3. Base runs to Stem ")
    assert {"firmly", "first time", "in two touches", "with the left foot", "when", "then"} <= set(played)
    assert {"at full speed", "walking", "round the outside", "when", "then"} <= set(gone)
    assert not {"firmly", "first time", "lofted"} & set(gone)
    assert words("3. Base passes to Stem with the ") == ["left foot", "right foot", "weaker foot"]
    assert words("3. Base ")[0] == "passes"
    assert words("3. Base passes ")[0] == "to"


def test_when_something_starts() -> None:
    proposed = words("3. Base passes to Stem when ")
    assert {"Side", "the ball is back at", "the box is clear"} <= set(proposed)
    assert {"has the ball", "is halfway home", "'s shot is over"} <= set(words("3. Base passes to Stem when Side "))
    assert words("The next round starts ")[:2] == ["at once", "after"]


def test_keys_at_the_beginning_of_a_line() -> None:
    assert words("", "")[:3] == ["exercise:", "kind:", "for"]
    assert words("", HEAD)[0] == "aim:"
    assert "kind:" not in words("", HEAD)
    assert words("g", HEAD) == ["good for:"]
    assert words("good ", HEAD) == ["for:"]
    assert words("c", TEXT) == ["cue:", "caution:", "Change sides"]
    assert "Rule:" not in words("")
    assert "Rule:" in words("", f"{HEAD}Open play in 9 by 9 m: everyone has a ball.\n")


def test_what_stands_behind_a_key() -> None:
    assert words("kind: ", "") == list(KINDS)
    assert words("kind: r", "exercise: x\n") == ["receiving and turning", "rondo", "relay"]
    assert words("good for: ", "") == list(JOBS)
    assert words("for 5 ", "") == ["players", "under", "best with"]
    assert words("cue: lo") == []


def test_openings_and_the_next_step() -> None:
    assert words("")[0] == "3."
    assert "Each round" in words("", HEAD + GROUND)
    assert "Each round" not in words("")
    assert words("The next ") == ["round"]
    assert words("Each round, ", HEAD + GROUND)[:2] == ["the coach", "Base"]
    assert words("Each round, Base ", HEAD + GROUND) == ["chooses", "calls", "in turn", "from half time"]
    assert words("Each round, Left and Right in turn ", HEAD + GROUND) == ["(call it"]


def test_what_stands_at_a_place() -> None:
    assert words("Post at 0, 5 ")[:2] == ["is a line", "holds one"]
    assert {"is a cone", "is a gate", "is passive"} <= set(words("Post at 0, 5 "))
    assert {"in Yellow", "facing", "a ball each", "waiting on the left"} <= set(words("Post at 0, 5 is a line, "))
    assert words("Post at 0, 5 is a line, in ") == ["Yellow", "Blue", "Red", "Green"]
    assert words("Post ", HEAD + GROUND) == ["at"]


def test_steps_up_and_down() -> None:
    assert set(VARIANTS.values()) <= set(words(""))
    assert words('harder "so": as ') == ["before", "written"]
    assert words('harder "so": as before, but ')[:4] == ["in", "instead of", "after", "leave out"]
    numbers = offers('harder "so": as before, but in ')
    assert [offer.text for offer in numbers] == ["1", "2"]
    assert numbers[1].means == "Base passes firmly to Stem, then runs to Stem"
    assert words('harder "so": as before, but in 2 Base ')[:2] == ["passes", "runs"]
    assert words('harder "so": as before, but in 2 Base passes softly; ')[0] == "in"
    assert words('harder "so": as before, but Mast ') == ["stands at", "changes with"]
    assert words('harder "so": as before, but leave out 2. ') == ["For"]


def test_open_play() -> None:
    assert words("Open play in 9 by 9 m: four ") == ["Yellow", "Blue", "Red", "Green"]
    assert {"keep it from", "against", "chase"} <= set(words("Open play in 9 by 9 m: four Yellow "))


def test_what_is_begun_is_replaced_from_its_first_letter() -> None:
    (offer,) = offers("3. Base passes to st")
    assert offer == Completion(text="Stem", means="Stem at 0, 8 holds one.", column=19, is_name=True)
    assert [offer.column for offer in offers("3. Base passes to ")[:1]] == [19]


def test_names_say_what_they_are() -> None:
    means = {offer.text: offer.means for offer in offers("3. Base runs to ")}
    assert means["Gate House"] == "Gate House at 9, 1 is a line."
    assert means["Mast"] == "Mast at 2, 6 is a cone."
    assert means["Side"] == "Left or Right, in turn."


def test_names_of_later_lines_are_known() -> None:
    proposed = offers(
        "1. Base passes to ", HEAD + "Base at 0, 0 is a line.\nEach round:\n", "\nTwig at 4, 4 holds one.\n"
    )
    assert {offer.text for offer in proposed} >= {"Base", "Twig"}


@pytest.mark.parametrize(("line", "column"), [(0, 1), (99, 1), (1, 0), (1, 999), (-1, -1)])
def test_outside_of_the_text_nothing_is_proposed(line: int, column: int) -> None:
    assert completions(TEXT, line, column) == ()
    assert hover(TEXT, line, column) is None


def test_comments_and_quoted_words_are_free() -> None:
    assert words("# Base passes ") == []
    assert words('3. Base calls "now ') == []


def step_words(text: str) -> list[tuple[int, int, str]]:
    """The words of numbered steps, without numbers, units, links and quoted words: line, column, what follows."""
    found = []
    for number, row in enumerate(text.split("\n"), start=1):
        if re.match(r"\d+\. ", row):
            for word in re.finditer(r"[A-Za-z][\w-]*", row):
                if row[: word.start()].count('"') % 2 == 0 and word[0] not in PROPOSED_BY_NOBODY:
                    found.append((number, word.start() + 1, row[word.start() :]))
    return found


def first_words(offered: tuple[Completion, ...]) -> set[str]:
    return {offer.text.split()[0].lower().removesuffix("'s") for offer in offered}


@pytest.mark.parametrize("path", [*SHELF, *DATA], ids=lambda path: path.stem)
def test_every_word_of_a_written_step_is_proposed_where_it_stands(path: Path) -> None:
    exercise, _ = read(path.read_text(encoding="utf-8"))
    assert exercise is not None
    text = write(exercise)
    missed = [
        rest
        for line, column, rest in step_words(text)
        if re.split(r"[^\w-]", rest)[0].lower() not in first_words(completions(text, line, column))
    ]
    assert missed == []


# --- what a word means ---


def at(word: str, text: str = TEXT, line: int | None = None) -> tuple[str, str] | None:
    """What is told of the first place of a word, in a line of the text or anywhere."""
    rows = text.split("\n")
    number = line or next(number for number, row in enumerate(rows, start=1) if word in row)
    found = hover(text, number, rows[number - 1].index(word) + 1)
    return (found.text, found.means) if found else None


@pytest.mark.parametrize(
    ("word", "text", "means"),
    [
        ("checks", "checks away", "a step away from the ball before showing for it, 2 m where nothing is said"),
        ("away", "checks away", "a step away from the ball before showing for it, 2 m where nothing is said"),
        ("firmly", "firmly", "with pace on the ball"),
        ("a line, a", "is a line", "children wait here one behind the other"),
        ("holds", "holds one", "one child stands here"),
        ("are lines", "are lines", "children wait here one behind the other"),
        ("turn", "in turn", "the sides take turns, round by round"),
        ("kind", "kind", "what sort of exercise it is; figures are compared by it"),
        ("for 5", "for", "how many players and which ages it is for, and the best number"),
        ("Mast", "Mast", "Mast at 2, 6 is a cone."),
        ("House", "Gate House", "Gate House at 9, 1 is a line."),
        ("Side", "Side", "Left or Right, in turn."),
        ("Each", "each round", "opens the numbered steps, and says which side it is"),
    ],
)
def test_words_and_names(word: str, text: str, means: str) -> None:
    assert at(word) == (text, means)


def test_the_place_of_a_word_is_told() -> None:
    found = hover(TEXT, 13, 12)
    assert found is not None
    assert (found.text, found.where) == ("checks away", Span(line=13, column=9, end_line=13, end_column=20))


def test_the_same_word_as_a_verb_and_as_a_start() -> None:
    text = f"{TEXT}3. Side dribbles home when Base passes.\n"
    assert at("dribbles", text) == ("dribbles", "takes the ball along at the feet")
    assert at("passes", text, 15) == ("passes", "as the ball leaves the foot or hand")


def test_sides_by_choice_and_places_of_steps_up() -> None:
    opening = "Each round, Base chooses Left or Right (call it Side, the other Rest):\n1. Base passes to Side.\n"
    text = f'{HEAD}{GROUND}{opening}harder "so": as before, but one more: Shadow at 0, 4 is passive.\n'
    assert at("Side", text) == ("Side", "Left or Right, as Base chooses.")
    assert at("Rest", text) == ("Rest", "Left or Right, the one that is not Side.")
    assert at("Shadow", text) == ("Shadow", "One more, in a step up or down: Shadow at 0, 4 is passive.")


@pytest.mark.parametrize("word", ["Stem and branch", "5 to", "8 holds", ", 0", "Twig"])
def test_free_words_numbers_and_unknown_names_mean_nothing(word: str) -> None:
    assert at(word, f"{TEXT}3. Base passes to Twig.\n") is None


# --- any text, and time ---


@settings(max_examples=150, deadline=None)
@given(st.data())
def test_any_place_of_any_text_is_answered(data: st.DataObject) -> None:
    text = data.draw(st.sampled_from([TEXT, *(path.read_text(encoding="utf-8") for path in DATA)]) | st.text())
    cut = data.draw(st.integers(0, len(text)))
    text = text[:cut] + data.draw(st.text(max_size=6)) + text[data.draw(st.integers(cut, len(text))) :]
    line = data.draw(st.integers(0, text.count("\n") + 2))
    column = data.draw(st.integers(0, 80))
    for offer in completions(text, line, column):
        assert offer.text
        assert offer.means
        assert 1 <= offer.column <= column
    found = hover(text, line, column)
    assert found is None or (found.means and found.where.column <= column < found.where.end_column)


def test_help_takes_less_than_five_milliseconds_in_fifty_lines() -> None:
    text = TEXT + "".join(f"{number}. Base passes to Stem, then runs to Stem; Left shows.\n" for number in range(3, 39))
    assert text.count("\n") == 50
    assert read(text)[1] == ()
    text += "39. Base passes to "
    for ask in (lambda: completions(text, 51, 20), lambda: hover(text, 50, 30)):
        spent = []
        for _ in range(20):
            start = time.perf_counter()
            ask()
            spent.append(time.perf_counter() - start)
        assert min(spent) < 0.005
