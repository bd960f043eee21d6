"""Photos with marks: a number on the picture for each line of the legend, measures in honest words."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from types import SimpleNamespace

import pytest

from casebook.compute.marks import Measure
from casebook.model.archive import Archive
from casebook.model.base import items
from casebook.model.photos import Image
from casebook.output import marks_view
from casebook.output.contexts import PictureView
from casebook.output.marks_view import MarkedView, MarkNote, anchor_of, marked_views, views_of
from casebook.output.render import render
from casebook.output.wording import text_of
from casebook.values.language import ENGLISH, language
from casebook.values.notation import PLAIN, Notation, Units
from tests.builders import WORDING, archive
from tests.compute.written import case
from tests.output.plain import plain_lines

CASE = """
id: one
parts: {spine: {width: 40 mm, height: 120 mm}}
findings:
  - {part: joint front, damage: broken, seen: cords broken, marks: {photo: front, label: cord 2, line: "100 100, 100 400"}}
  - part: spine
    seen: leather lost
    marks: [{photo: front, box: 0 0 100 60}, {photo: bare, outline: "1% 1%, 9% 1%, 9% 9%"}]
  - {seen: a stain without a part, marks: {photo: bare, box: 90% 90% 10% 10%}}
photos:
  - {id: front, file: front.jpg, scale: {from: 100 700, to: 600 700, length: 100 mm}}
  - {id: bare, file: bare.jpg, scale: yes}
  - {id: plain, file: plain.jpg}
"""


def view(name: str) -> PictureView:
    return PictureView(
        name, f"{name}-400.jpg", (), 1600, 1280, name, f"The {name}.", "before", "", f"{name}.jpg"
    )


def views() -> tuple[MarkedView, ...]:
    one = case(CASE)
    whole: Archive = archive(one)
    images = {name: Image(name, 1000, 800) for name in ("front", "bare", "plain")}
    shown = Archive(whole.settings, whole.terms, whole.cases, images={one.id: images})
    seen = views_of(one, shown, {name: view(name) for name in images}, WORDING)
    return marked_views(one, shown, seen, WORDING)


def rendered() -> str:
    return str(render("parts/case/marks.html", page=SimpleNamespace(marks=views())))


def test_each_photo_with_marks_is_shown_once_in_the_order_of_the_photos() -> None:
    assert [one.picture.id for one in views()] == ["front", "bare"]
    assert [[shape.number for shape in one.shapes] for one in views()] == [[1, 2], [3, 4]]


def test_a_legend_says_where_what_and_how_large() -> None:
    front, bare = views()
    assert [text_of(one.where) for one in front.legend] == ["The front joint: broken", "The spine"]
    assert front.legend[0].seen == "cord 2"
    assert front.legend[0].measure == "about 60 mm"
    # 20 mm by 12 mm; out by the edge (320 px at 1/25 mm²) and the scale: 14.7 mm², so to the ten
    assert front.legend[1].measure == "about 240 mm², about 5 % of the part"
    assert [one.measure for one in bare.legend] == ["", ""]


def test_a_mark_says_what_it_marks_and_else_what_its_finding_says() -> None:
    one = case("""
id: one
findings:
  - part: board 1
    seen: both corners crushed
    marks: [{photo: p, label: upper, box: 1 1 9 9}, {photo: p, label: lower, box: 1 20 9 9}, {photo: p, box: 1 40 9 9}]
photos: [{id: p, file: p.jpg}]
""")
    whole = archive(one)
    images = {one.id: {"p": Image("p", 100, 100)}}
    shown = Archive(whole.settings, whole.terms, whole.cases, images=images)
    seen = views_of(one, shown, {"p": view("p")}, WORDING)
    (found,) = marked_views(one, shown, seen, WORDING)
    assert [each.seen for each in found.legend] == ["upper", "lower", "both corners crushed"]
    assert {each.finding for each in found.legend} == {"finding-1"}


def test_a_finding_knows_its_marks_with_their_measures() -> None:
    one = case(CASE)
    images = {name: Image(name, 1000, 800) for name in ("front", "bare")}
    shown = Archive(archive(one).settings, {}, (one,), images={one.id: images})
    seen = views_of(one, shown, {"front": view("front"), "bare": view("bare")}, WORDING)
    first, second, third = items(one.findings)
    assert seen.of(first) == (MarkNote(1, "about 60 mm"),)
    assert seen.of(second) == (MarkNote(2, "about 240 mm², about 5 % of the part"), MarkNote(3, ""))
    assert anchor_of(seen.of(third)) == "finding-4"
    hidden = views_of(one, shown, {"front": view("front")}, WORDING)
    assert hidden.of(second) == (MarkNote(2, "about 240 mm², about 5 % of the part"),)
    assert anchor_of(hidden.of(third)) == ""
    twin = replace(first)
    assert twin == first
    assert seen.of(twin) == ()


def test_what_measures_rest_on_is_said_where_there_are_any() -> None:
    assert [bool(one.note) for one in views()] == [True, False]


def test_the_picture_s_own_words_say_that_marks_are_on_it() -> None:
    assert [one.picture.alt for one in views()] == [
        "front, with marks 1 to 2, told beside it",
        "bare, with marks 3 to 4, told beside it",
    ]


def test_a_number_stays_in_the_picture() -> None:
    front, bare = views()
    assert float(front.shapes[1].x) >= float(front.radius)
    assert float(bare.shapes[1].y) <= 800 - float(bare.radius)


def test_the_page_needs_no_style_and_no_script_to_show_them() -> None:
    html = rendered()
    assert 'viewBox="0 0 1000 800"' in html
    assert '<polyline class="mark-line" points="100,100 100,400"' in html
    assert '<polygon class="mark-case" points="0,0 100,0 100,60 0,60"' in html
    assert "style=" not in html
    assert "hidden>" not in html


def test_read_aloud_the_legend_stands_for_the_drawing() -> None:
    lines = plain_lines(rendered())
    assert "- 1 The front joint: broken cord 2 about 60 mm" in lines


@pytest.mark.parametrize(
    ("value", "unsure", "is_area", "words"),
    [
        ("41.37", "0.5", False, "about 41 mm"),
        ("41.37", "0.04", False, "about 41.4 mm"),
        ("41.37", "0.004", False, "about 41.4 mm"),
        ("414", "4", False, "about 410 mm"),
        ("1260", "6", False, "about 1.26 m"),
        ("0.8", "0.5", False, "less than 1.3 mm"),
        ("240", "14.7", True, "about 240 mm²"),
        ("5240", "60", True, "about 52 cm²"),
        ("2345678", "20000", True, "about 2.35 m²"),
    ],
)
def test_no_figure_is_finer_than_it_is_sure(
    value: str, unsure: str, is_area: bool, words: str
) -> None:
    measure = Measure(Fraction(value), Fraction(unsure), is_area)
    assert marks_view._measured(measure, PLAIN) == words


def test_a_share_names_the_side_it_is_of() -> None:
    measure = Measure(Fraction(60), Fraction(1), False, Fraction(1, 2), "height")
    assert (
        marks_view._measured(measure, PLAIN) == "about 60 mm, about 50 % of the height of the part"
    )


def test_a_measure_stands_in_the_labs_units_and_signs() -> None:
    inches, german = Notation(units=Units.IMPERIAL), Notation(language("de") or ENGLISH, Units.BOTH)
    line = Measure(Fraction(412), Fraction(1), is_area=False)
    area = Measure(Fraction(1780), Fraction(20), is_area=True)
    assert marks_view._measured(line, inches) == "about 16.2 in"
    assert marks_view._measured(area, german) == "about 17,8 cm² (about 2,76 in²)"
