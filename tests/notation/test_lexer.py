"""Texts as tokens and `key: value` lines."""

from conewright.notation.lexer import MARK, NUMBER, TEXT, WORD, lines_of


def tokens(text: str) -> list[tuple[str, str]]:
    return [(token.kind, token.text) for line in lines_of(text) for token in line.tokens]


def test_kinds_of_tokens() -> None:
    assert tokens('Base\'s -6.5, "toe taps" 10 to-do (x) → ->') == [
        (WORD, "Base"),
        (MARK, "'s"),
        (NUMBER, "-6.5"),
        (MARK, ","),
        (TEXT, '"toe taps"'),
        (NUMBER, "10"),
        (WORD, "to-do"),
        (MARK, "("),
        (WORD, "x"),
        (MARK, ")"),
        (MARK, "→"),
        (MARK, "->"),
    ]


def test_a_point_between_digits_ends_nothing() -> None:
    assert tokens("6. 6.5 6.") == [(NUMBER, "6"), (MARK, "."), (NUMBER, "6.5"), (NUMBER, "6"), (MARK, ".")]


def test_places_count_from_one() -> None:
    (line,) = (line for line in lines_of("\n  Base runs") if line.tokens)
    assert [(token.line, token.column, token.end) for token in line.tokens] == [(2, 3, 7), (2, 8, 12)]


def test_keyed_lines_keep_their_value_as_written() -> None:
    (line,) = lines_of("  Good  For :  arrival, Warm-up. ")
    assert line.keyed is not None
    assert (line.keyed.key, line.keyed.value) == ("good for", "arrival, Warm-up.")
    assert (line.keyed.key_span.column, line.keyed.value_span.column, line.keyed.value_span.end_column) == (3, 16, 33)


def test_comments_are_left_out_and_lines_keep_their_numbers() -> None:
    assert [line.number for line in lines_of("# one\ntwo\n  # three\nfour")] == [2, 4]


def test_free_lines_are_cut_apart() -> None:
    found = [line.keyed for line in lines_of("Swap: a. Rule: b: c. Score: d")]
    assert [(keyed.key, keyed.value, keyed.column) for keyed in found if keyed] == [
        ("swap", "a.", 1),
        ("rule", "b: c.", 10),
        ("score", "d", 22),
    ]
    assert len(lines_of("cue: a. Rule: b")) == 1
