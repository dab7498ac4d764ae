"""Numbers and lists as a coach says them."""

from conewright.fit.wording import children, counted, listed, metres, number, percent, sentence


def test_words() -> None:
    assert [number(0), number(1), number(20), number(21)] == ["no", "one", "twenty", "21"]
    assert [children(1), children(2), counted(1, "ball"), counted(3, "ball")] == [
        "1 child",
        "2 children",
        "1 ball",
        "3 balls",
    ]
    assert [listed(()), listed(("a",)), listed(("a", "b")), listed(("a", "b", "c"))] == [
        "",
        "a",
        "a and b",
        "a, b and c",
    ]
    assert [percent(0.546), metres(12.0), metres(11.94)] == ["55 %", "12", "11.9"]
    assert [sentence(""), sentence("it runs")] == ["", "It runs."]
