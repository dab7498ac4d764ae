"""Problems for reading in a terminal and as rows."""

from dataclasses import asdict
from json import dumps

from conewright.model.problem import Problem, Severity, Span
from conewright.notation.report import as_rows, in_terminal


def problem(line: int, column: int, end_line: int, end_column: int, hint: str = "") -> Problem:
    where = Span(line=line, column=column, end_line=end_line, end_column=end_column)
    return Problem(code="odd", severity=Severity.LOOK, message="This is odd.", where=where, hint=hint)


def test_the_carets_stand_under_the_words() -> None:
    told = in_terminal([problem(2, 3, 2, 6, "Mend it.")], "first\na bad line\n", "a.exercise")
    assert told == ("a.exercise, line 2, column 3: look (odd)\n  This is odd.\n    a bad line\n      ^^^\n  Mend it.\n")


def test_wide_signs_and_tabs_do_not_shift_the_carets() -> None:
    lines = in_terminal([problem(1, 5, 1, 6)], "漢字\tex", "a.exercise").split("\n")
    assert lines[2:4] == ["    漢字 ex", "          ^"]


def test_a_span_over_lines_is_marked_to_the_end_of_its_first() -> None:
    assert "    a bad line\n      ^^^^^^^^\n" in in_terminal([problem(1, 3, 2, 2)], "a bad line\non it goes", "a")


def test_a_span_behind_the_end_of_a_line() -> None:
    assert "    short\n         ^\n" in in_terminal([problem(1, 6, 1, 7)], "short", "a")


def test_problems_without_a_place_or_outside_the_text_show_no_line() -> None:
    whole = Problem(code="odd", severity=Severity.MEND, message="This is odd.")
    assert in_terminal([whole], "text", "a.exercise") == "a.exercise: mend (odd)\n  This is odd.\n"
    assert in_terminal([problem(9, 1, 9, 2)], "text", "a") == "a, line 9, column 1: look (odd)\n  This is odd.\n"


def test_paragraphs_are_apart() -> None:
    assert in_terminal([], "text", "a") == ""
    assert in_terminal([problem(1, 1, 1, 2)] * 2, "text", "a").count("\n\n") == 1


def test_rows_are_flat_and_fit_json() -> None:
    whole = Problem(code="odd", severity=Severity.KNOW, message="This is odd.")
    rows = as_rows([problem(1, 2, 3, 4, "Mend it."), whole], "a.exercise")
    assert [asdict(row) for row in rows] == [
        {
            "file": "a.exercise",
            "line": 1,
            "column": 2,
            "end_line": 3,
            "end_column": 4,
            "code": "odd",
            "severity": "look",
            "message": "This is odd.",
            "hint": "Mend it.",
        },
        {
            "file": "a.exercise",
            "line": None,
            "column": None,
            "end_line": None,
            "end_column": None,
            "code": "odd",
            "severity": "know",
            "message": "This is odd.",
            "hint": "",
        },
    ]
    assert dumps([asdict(row) for row in rows])
