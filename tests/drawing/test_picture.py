"""Pictures of single copies: who is drawn where, which lines, and that no mark lies on another."""

import math
from itertools import pairwise

import pytest

from conewright.drawing.options import Meeting, PictureOptions
from conewright.drawing.picture import exercise_picture
from conewright.drawing.svg import svg
from conewright.model.exercise import Bib, Exercise
from conewright.model.geometry import Point
from conewright.model.layout import layout_for
from conewright.model.scene import Group, Path, Scene, Text, named, walk
from conewright.store.shelf import load_shelf
from tests.drawing.looking import GATE, Blot, balls, exercise_of, ground, lines, marks, steps, touching, words

SHELF = {exercise.name: exercise for exercise in load_shelf()}
SCREEN = PictureOptions()
PHONE = PictureOptions(width=328, turned=True, numbers=False)
PAPER = PictureOptions(width=91, most_height=60, paper=True, numbers=False, names=False)
KINDS = {"screen": SCREEN, "phone": PHONE, "paper": PAPER}


def sizes(exercise: Exercise) -> tuple[int, ...]:
    """The smallest and the largest copy the exercise is made for."""
    numbers = exercise.numbers
    layouts = [layout_for(exercise, n) for n in range(numbers.least, numbers.most + 1)]
    found = {size for layout in layouts if layout is not None for size in layout.sizes}
    return (min(found), max(found))


CASES = [(name, size, kind) for name, exercise in SHELF.items() for size in sizes(exercise) for kind in KINDS]


def collisions(ones: list[Blot], others: list[Blot]) -> list[tuple[Blot, Blot]]:
    return [(one, other) for one in ones for other in others if one is not other and touching(one, other)]


@pytest.mark.parametrize(("name", "size", "kind"), CASES)
def test_no_mark_lies_on_another(name: str, size: int, kind: str) -> None:
    scene = exercise_picture(SHELF[name], size, options=KINDS[kind])
    numbers, persons, labels = steps(scene), marks(scene), words(scene)
    assert not collisions(numbers, persons)
    assert not collisions(numbers, numbers)
    assert not collisions(numbers, labels)
    assert not collisions(labels, persons)
    assert not collisions(labels, labels)
    assert not collisions(balls(scene), persons)


@pytest.mark.parametrize(("name", "size", "kind"), CASES)
def test_everybody_is_drawn_or_counted(name: str, size: int, kind: str) -> None:
    scene = exercise_picture(SHELF[name], size, options=KINDS[kind])
    more = [int(mark.words[1:]) - 1 for mark in marks(scene) if mark.words.startswith("+")]
    extra = sum(1 for place in SHELF[name].places if place.adult or place.keeper)
    assert len(marks(scene)) + sum(more) == size + extra
    waiting = [at for shape, at in named(scene, "w")]
    assert len(waiting) <= 3 * max(1, len(SHELF[name].places))


@pytest.mark.parametrize(("name", "size", "kind"), CASES)
def test_marks_and_words_stay_on_the_ground(name: str, size: int, kind: str) -> None:
    scene = exercise_picture(SHELF[name], size, options=KINDS[kind])
    sheet = ground(scene)
    for blot in (*marks(scene), *words(scene), *steps(scene)):
        reach_x, reach_y = (blot.radius, blot.radius) if blot.is_disc else blot.half
        assert sheet.at.x <= blot.at.x - reach_x + 1e-6, blot
        assert blot.at.x + reach_x <= sheet.at.x + sheet.width + 1e-6, blot
        assert sheet.at.y <= blot.at.y - reach_y + 1e-6, blot
        assert blot.at.y + reach_y <= sheet.at.y + sheet.height + 1e-6, blot
    assert scene.width <= KINDS[kind].width + 1e-6


@pytest.mark.parametrize("name", list(SHELF))
def test_every_place_and_every_sentence_is_named_on_a_screen(name: str) -> None:
    exercise = SHELF[name]
    scene = exercise_picture(exercise, sizes(exercise)[0])
    shown = {blot.words for blot in words(scene, "nm")}
    assert shown == {place.name for place in exercise.places}
    numbered = {int(step.words) for step in steps(scene)}
    assert numbered == {step.number for step in exercise.script.steps} if exercise.script else not numbered


def test_lines_say_what_travels_in_both_traditions() -> None:
    exercise = exercise_of(GATE)
    usual, other = (exercise_picture(exercise, 5, options=PictureOptions(tradition=word)) for word in "AB")
    assert len(lines(usual, "ball")) == len(lines(other, "ball")) == 2
    assert len(lines(usual, "run")) == len(lines(other, "run")) == 2
    assert lines(usual, "with")
    assert all("broken" in line.name for line in lines(usual, "run") + lines(other, "ball"))
    assert not any("broken" in line.name for line in lines(usual, "ball") + lines(other, "run"))
    assert len(named(usual, "head")) == len(named(other, "head")) == 3  # the head stays with the meaning
    assert len(named(usual, "vhead")) == len(named(other, "vhead")) == 2


def test_the_pass_and_the_run_after_it_keep_apart() -> None:
    scene = exercise_picture(exercise_of(GATE), 5)
    passed, ran = lines(scene, "ball")[0].pieces[0], lines(scene, "run")[0].pieces[0]
    middle_run = ran[len(ran) // 2]
    metre = ground(scene).width / 10
    assert min(math.dist(middle_run, dot) for dot in passed) > 0.7 * min(metre, 20)
    across = abs(middle_run.x - passed[0].x)
    assert across > 13


def test_the_sentence_in_hand_is_lit_and_the_others_grey() -> None:
    scene = exercise_picture(exercise_of(GATE), 5, options=PictureOptions(lit=2))
    acts = [shape for shape, _ in named(scene, "act")]
    assert {"lit" in act.name for act in acts if ("step", "2") in act.data} == {True}
    assert {"dim" in act.name for act in acts if ("step", "2") not in act.data} == {True}
    text = svg(scene, style="screen")
    assert text.count('stroke="#e8d9b0"') == 2  # a band under each of its two lines
    assert 'stroke="#e8d9b0"' not in svg(exercise_picture(exercise_of(GATE), 5), style="screen")


def test_a_page_finds_lines_by_sentence_and_act_and_children_by_number() -> None:
    scene = exercise_picture(exercise_of(GATE), 5)
    acts = {dict(shape.data)["act"] for shape, _ in named(scene, "act") if shape.data}
    assert len(acts) == 5
    numbers = [dict(shape.data)["person"] for shape, _ in walk(scene.shapes) if "person" in dict(shape.data)]
    assert sorted(numbers) == ["0", "1", "2", "3", "4"]


def test_a_long_line_shows_three_who_wait_and_how_many_more() -> None:
    exercise = exercise_of(GATE.replace("4 to 6", "4 to 14") + "\nStart with 9 at Base, one at Stem, one at Post.\n")
    scene = exercise_picture(exercise, 11)
    assert [mark.words for mark in marks(scene) if mark.words.startswith("+")] == ["+6"]
    every = exercise_picture(exercise, 11, options=PictureOptions(everyone=True))
    assert len(marks(every)) == 11


def test_form_and_letter_carry_the_group() -> None:
    exercise = exercise_of(GATE)
    for bib, letter in ((Bib.YELLOW, "Y"), (Bib.BLUE, "B"), (Bib.RED, "R"), (Bib.GREEN, "G")):
        scene = exercise_picture(exercise, 4, options=PictureOptions(bib=bib))
        assert {mark.words[0] for mark in marks(scene)} == {letter}
        assert bool(named(scene, "belt")) is (bib is Bib.RED)
        assert bool(named(scene, "hoop")) is (bib is Bib.GREEN)
    plain = exercise_picture(exercise, 4)
    assert {mark.words for mark in marks(plain)} == {"1", "2", "3", "4"}


def test_play_runs_up_or_to_the_right_and_letters_stay_upright() -> None:
    exercise = exercise_of(GATE)

    def spot(scene: Scene, name: str) -> tuple[float, float]:
        return next(
            shape.at
            for shape, _ in walk(scene.shapes)
            if isinstance(shape, Group) and dict(shape.data).get("place") == name and "w" not in shape.name.split()
        )

    upright, turned = (exercise_picture(exercise, 5, options=PictureOptions(turned=turn)) for turn in (False, True))
    assert spot(upright, "Stem")[1] < spot(upright, "Base")[1]
    assert spot(turned, "Stem")[0] > spot(turned, "Base")[0]
    assert spot(turned, "Post")[1] > spot(turned, "Stem")[1]  # what lay to the right lies below
    assert not any(isinstance(shape, Text) and shape.name == "lb" for shape, _ in walk(turned.shapes))


def test_where_paths_meet_it_says_how_near() -> None:
    met = Meeting(at=Point(2, 5), distance_m=0.7, apart_s=0.4)
    scene = exercise_picture(exercise_of(GATE), 5, options=PictureOptions(meetings=(met,)))
    assert [blot.words for blot in words(scene, "wt")] == ["0.7 m, 0.4 s apart"]
    assert len(named(scene, "reach")) == 1


def test_squares_are_metres_and_edges_are_numbered() -> None:
    scene = exercise_picture(exercise_of(GATE), 5)
    sheet = ground(scene)
    light = next(shape for shape, _ in named(scene, "g1") if isinstance(shape, Path))
    xs = sorted({piece[0].x for piece in light.pieces if piece[0].x == piece[1].x})
    steps_between = {round(b - a, 3) for a, b in pairwise(xs)}
    metre = min(steps_between)
    assert sheet.width / metre == pytest.approx(round(sheet.width / metre))
    numbers = [shape.words for shape, _ in named(scene, "gn") if isinstance(shape, Text)]
    assert "10" in numbers
    assert sum(words.endswith(" m") for words in numbers) == 1
    assert not named(exercise_picture(exercise_of(GATE), 5, options=PHONE), "gn")


def test_a_picture_is_the_same_every_time() -> None:
    for exercise in SHELF.values():
        size = sizes(exercise)[0]
        assert svg(exercise_picture(exercise, size)) == svg(exercise_picture(exercise, size))


def test_it_is_told_to_those_who_cannot_see_it() -> None:
    scene = exercise_picture(exercise_of(GATE), 5)
    assert scene.title == "Small gate"
    assert "Base at 0, 0" in scene.description
    assert "3 numbered sentences" in scene.description
