"""The writer of SVG: escaping, rounding, short paths, the frame."""

from __future__ import annotations

from xml.etree import ElementTree

from hypothesis import given
from hypothesis import strategies as st

from casebook.drawings.svg import Frame, Svg, number, path, tag, words

NUMBERS = st.floats(-900, 900)


def test_numbers_have_two_places_and_no_zeros_behind():
    assert [number(one) for one in (1.0, 0.126, -0.001, 12.5, -3)] == [
        "1",
        "0.13",
        "0",
        "12.5",
        "-3",
    ]


def test_what_stands_in_an_element_is_escaped_once():
    inner = tag("b", "<&>")
    assert tag("g", inner, "x<y", class_="a", data_in="0-3") == (
        '<g class="a" data-in="0-3"><b>&lt;&amp;&gt;</b>x&lt;y</g>'
    )


def test_an_attribute_of_none_is_left_out_and_an_empty_element_is_closed():
    assert tag("path", d="M0 0", fill=None) == '<path d="M0 0"/>'


@given(st.text())
def test_any_text_is_safe_in_an_element_and_in_quotes(text):
    read = ElementTree.fromstring(tag("text", text, title=text))
    assert (read.text or "").count("<") == text.count("<")
    assert words(text) == words(text)


def test_a_path_is_written_from_where_the_pen_is():
    assert path("M", 10, 20, "L", 30, 20, "V", 25.52, "H", 10, "Z") == "M10 20h20v5.5h-20z"
    assert path("M", 0, 0, "A", 5, 5, 0, 0, 1, 10, 0.5) == "M0 0a5 5 0 0 1 10 .5"


def test_a_second_beginning_counts_from_the_end_of_the_first():
    assert path("M", 1, 1, "L", 2, 3, "M", 5, 5, "h", 4) == "M1 1l1 2m3 2h4"


def test_after_closing_the_pen_is_at_the_beginning():
    assert path("M", 4, 4, "H", 9, "Z", "M", 5, 4) == "M4 4h5zm1 0"


@given(st.lists(st.tuples(NUMBERS, NUMBERS), min_size=1, max_size=60))
def test_rounding_does_not_add_up(places):
    data = path("M", 0, 0, *(part for place in places for part in ("L", *place)))
    x = y = 0.0
    for command, values in _read(data):
        if command == "l":
            x, y = x + values[0], y + values[1]
        elif command == "h":
            x += values[0]
        elif command == "v":
            y += values[0]
    assert abs(x - places[-1][0]) < 0.06
    assert abs(y - places[-1][1]) < 0.06


def _read(data: str) -> list[tuple[str, list[float]]]:
    found: list[tuple[str, list[float]]] = []
    for piece in data.replace("h", "\nh").replace("v", "\nv").replace("l", "\nl").split("\n")[1:]:
        text = piece[1:].replace("-", " -")
        found.append((piece[0], [float(one) for one in text.split()]))
    return found


def test_a_frame_names_the_drawing_for_those_who_hear_it():
    read = ElementTree.fromstring(Frame("p", 400, 90.5, "Title", "Words").around(Svg("")))
    assert (read.get("role"), read.get("aria-labelledby")) == ("img", "p-title p-desc")
    assert read.get("viewBox") == "0 0 400 90.5"
    assert [one.text for one in read] == ["Title", "Words"]
