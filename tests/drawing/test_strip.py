"""The strip: a row a child, three heights, two rulers, the longest wait named."""

import pytest

from conewright.drawing.people import people
from conewright.drawing.strip import StripOptions, strip, waits_of
from conewright.model.exercise import Bib
from conewright.model.rehearsed import Doing, Knot, PersonTrack, Spell
from conewright.model.scene import Group, Path, Rect, Text, named, walk
from tests.drawing.evening import rehearsed
from tests.drawing.looking import GATE, exercise_of

NAMES = ("Brisa", "Corin", "Dunya", "Eskil", "Ferelith", "Lumi")


def texts(scene: object, word: str) -> list[str]:
    return [shape.words for shape, _ in named(scene, word) if isinstance(shape, Text)]  # type: ignore[arg-type]


def test_a_row_for_each_child_with_its_share_of_waiting() -> None:
    rehearsal = rehearsed(6)
    scene = strip(rehearsal, names=NAMES)
    rows = [shape for shape, _ in named(scene, "row-of") if isinstance(shape, Group)]
    assert [dict(row.data)["person"] for row in rows] == ["0", "1", "2", "3", "4", "5"]
    for row, child, name in zip(rows, rehearsal.children, NAMES, strict=True):
        words = [shape.words for shape in row.shapes if isinstance(shape, Text)]
        assert name in words
        assert f"{child.waiting_share * 100:.0f} %" in words


def test_heights_tell_waiting_moving_and_the_ball_apart() -> None:
    scene = strip(rehearsed(6))
    moves = {shape.height for shape, _ in named(scene, "move") if isinstance(shape, Rect)}
    on_ball = {shape.height for shape, _ in named(scene, "on-ball") if isinstance(shape, Rect)}
    assert moves == {10.0}
    assert on_ball == {18.0}
    assert len([shape for shape, _ in named(scene, "wait") if isinstance(shape, Path)]) == 6


def test_time_on_the_ball_is_as_wide_as_it_is_long() -> None:
    rehearsal = rehearsed(6)
    scene = strip(rehearsal, seconds=30, width=600)
    row = next(shape for shape, _ in named(scene, "row-of") if isinstance(shape, Group))
    line = next(shape for shape in row.shapes if shape.name == "wait" and isinstance(shape, Path))
    second = (line.pieces[0][1].x - line.pieces[0][0].x) / 30
    drawn = sum(shape.width for shape in row.shapes if isinstance(shape, Rect) and shape.name == "on-ball")
    spent = sum(
        min(spell.end_s, 30) - spell.start_s
        for spell in rehearsal.people[0].spells
        if spell.doing is Doing.ON_BALL and spell.start_s < 30
    )
    assert drawn / second == pytest.approx(spent, abs=0.01)


def test_two_rulers() -> None:
    rehearsal = rehearsed(6)
    scene = strip(rehearsal, seconds=30)
    figures = texts(scene, "soft")
    assert [words for words in figures if words[0].isdigit()] == ["0", "10", "20", "30 s"]
    shown = [words for words in texts(scene, "strong") if words.isdigit()]
    rounds = sum(start < 30 for start in rehearsal.round_starts_s)
    assert shown[: rounds - 1] == [str(number) for number in range(1, rounds)]


def test_the_moment_hides_a_figure_too_near_to_it() -> None:
    scene = strip(rehearsed(6), seconds=30, options=StripOptions(moment_s=10.4))
    assert texts(scene, "now-time") == ["10.4 s"]
    assert "10" not in texts(scene, "soft")
    assert "20" in texts(scene, "soft")


def test_a_share_over_the_mark_is_bold() -> None:
    rehearsal = rehearsed(6)
    shares = sorted(child.waiting_share for child in rehearsal.children)
    most = (shares[0] + shares[-1]) / 2
    scene = strip(rehearsal, options=StripOptions(most_wait=most))
    bold = [words for words in texts(scene, "strong") if words.endswith("%")]
    assert len(bold) == sum(share > most for share in shares)


def test_the_longest_wait_is_bracketed_and_told() -> None:
    rehearsal = rehearsed(6)
    waits = [(end - start, track.person) for track in rehearsal.people for start, end in waits_of(track, 60)]
    longest = max(waits)[0]
    scene = strip(rehearsal, names=NAMES)
    assert texts(scene, "longest-words")[0].endswith(f"{longest:.0f} s")
    assert len(named(scene, "longest")) == 1
    assert f"{longest:.0f} s from second" in scene.description


def test_waits_that_follow_each_other_are_one() -> None:
    spells = tuple(
        Spell(start_s=start, end_s=end, doing=doing)
        for start, end, doing in (
            (0, 2, Doing.WAITING),
            (2, 5, Doing.WAITING),
            (5, 6, Doing.MOVING),
            (6, 9, Doing.WAITING),
        )
    )
    track = PersonTrack(person=0, place="Base", knots=(Knot(0, 0, 0),), spells=spells)
    assert waits_of(track, 8) == ((0, 5), (6, 8))


def test_a_phone_gets_its_own_strip() -> None:
    scene = strip(rehearsed(6), seconds=30, width=328, options=StripOptions(touch=True))
    assert scene.width == 328
    assert scene.height == 24 + 6 * 34 + 28
    for shape, at in walk(scene.shapes):
        if isinstance(shape, Rect):
            assert at.x + shape.at.x >= 0
            assert at.x + shape.at.x + shape.width <= 328 + 1e-6


def test_marks_wear_the_colour_and_the_followed_row_is_banded() -> None:
    everybody = people(exercise_of(GATE), 6, Bib.RED)
    scene = strip(rehearsed(6), options=StripOptions(people=everybody, followed=2))
    assert len(named(scene, "belt")) == 6
    lit = [shape for shape, _ in named(scene, "lit")]
    assert [dict(shape.data)["person"] for shape in lit] == ["2"]
