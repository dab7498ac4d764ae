"""The lines that reading leaves out."""

from hypothesis import given
from hypothesis import strategies as st

from conewright.notation.comments import comment_lines
from conewright.notation.reader import read
from conewright.notation.spans import without_spans


def test_lines_that_begin_with_the_sign_count_from_one() -> None:
    assert comment_lines("# one\nexercise: Two # three\n  # three\r\n\ufeff# no mark at the start\n") == (1, 3)
    assert comment_lines("\ufeff# one\r# two") == (1, 2)
    assert comment_lines("") == ()


@given(st.lists(st.sampled_from(["exercise: Ferry", "kind: duel", "for 2 players", "# cue: run", " # .", "note: #1"])))
def test_without_them_the_text_says_the_same(lines: list[str]) -> None:
    comments = comment_lines("\n".join(lines))
    kept = [line for number, line in enumerate(lines, start=1) if number not in comments]
    assert without_spans(read("\n".join(lines))[0]) == without_spans(read("\n".join(kept))[0])
