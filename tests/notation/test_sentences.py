"""Texts as pieces: where sentences end, also where their full stop is missing."""

import pytest

from conewright.notation.lexer import Keyed
from conewright.notation.sentences import Sentence, pieces_of


def shown(text: str) -> list[tuple[str, str, int | None, bool]]:
    return [
        (piece.key, piece.value, None, True)
        if isinstance(piece, Keyed)
        else (piece.key, " ".join(token.text for token in piece.tokens), piece.number, piece.stopped)
        for piece in pieces_of(text)
    ]


def test_sentences_end_at_their_stop_and_may_wrap() -> None:
    assert shown("Base at 0, 0 is a\nline. Stem at 0, 8.5 holds one.") == [
        ("declaration", "Base at 0 , 0 is a line", None, True),
        ("declaration", "Stem at 0 , 8.5 holds one", None, True),
    ]


def test_steps_begin_at_their_number() -> None:
    found = shown("Each round, A and B in turn (call it Side):\n1. Base runs to 2, 3. Stem runs.\n2. Stem turns.")
    assert found == [
        ("round", "Each round , A and B in turn ( call it Side )", None, True),
        ("", "Base runs to 2 , 3", 1, True),
        ("", "Stem runs", None, True),
        ("", "Stem turns", 2, True),
    ]


def test_a_coordinate_at_the_beginning_of_a_line_is_no_step() -> None:
    assert [number for _, _, number, _ in shown("1. Base runs to 2,\n3. Stem turns.")] == [1, None]


@pytest.mark.parametrize(
    "ends",
    [
        "cue: look up",
        "",
        "2. Stem runs home.",
        "The next round starts at once.",
        "Gate House at 1, 1 is a line.",
        "Scored or out: nobody moves.",
        "Two rounds may run at once.",
        "With 4: two copies.",
    ],
)
def test_what_ends_a_sentence_without_a_stop(ends: str) -> None:
    first = pieces_of(f"1. Base runs to Stem\n{ends}")[0]
    assert isinstance(first, Sentence)
    assert (len(first.tokens), first.stopped) == (4, False)


@pytest.mark.parametrize(
    "goes_on", ["with the ball.", "and Right at 6, 15 are lines.", "for 10 s.", "# aside\nrunning."]
)
def test_what_goes_on_in_the_next_line(goes_on: str) -> None:
    assert len(pieces_of(f"Left at 6, 15 runs\n{goes_on}")) == 1


def test_a_number_with_nothing_behind_it() -> None:
    assert [(key, number) for key, _, number, _ in shown("1.\n2. Base runs.\n3.")] == [
        ("empty step", 1),
        ("", 2),
        ("empty step", 3),
    ]


def test_the_for_line_needs_no_colon() -> None:
    assert shown("for 5 players\nfor: 6")[0][:2] == ("for", "5 players")
    assert shown("for 5 players\nfor: 6")[1][:2] == ("for", "6")


def test_keys_nobody_knows_are_lines_too() -> None:
    assert shown("exersise: x\nsomething: y\nRotation: follow the pass.") == [
        ("exersise", "x", None, True),
        ("something", "y", None, True),
        ("rotation", "Rotation : follow the pass", None, True),
    ]


def test_a_point_half_written_does_not_take_the_next_step_with_it() -> None:
    assert [number for _, _, number, _ in shown("1. Base runs to 2,\n2. Stem turns.")] == [1, 2]


def test_steps_up_and_down_end_what_stands_before_them() -> None:
    found = shown('4. Side runs home\nharder "soft": as before, but leave out 3. For 6 to 9. 12.\nwith 10: two copies.')
    assert [key for key, _, _, _ in found] == ["", "variant", "variant numbers", "behind variant", "form or balls"]
    assert [stopped for _, _, _, stopped in found] == [False, True, True, True, True]


@pytest.mark.parametrize("opening", ['hardr "x"', '"x"', 'harder "x', "half the spce"])
def test_steps_up_and_down_with_a_slip_are_no_steps_of_the_round(opening: str) -> None:
    numbers = [number for _, _, number, _ in shown(f"1. Base runs home.\n{opening}: as before, but leave out 3.")]
    assert numbers == [1, None]
