"""Marks are measured by the scale on their photo, and say how far that may be out."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from casebook.compute.colour import matches
from casebook.compute.marks import Measure, area, crosses_itself, length, marked, resolution
from casebook.model.base import items
from casebook.model.marks import Scale
from casebook.model.photos import Image
from casebook.values.points import Outline
from tests.compute.random_cases import cases
from tests.compute.written import case
from tests.model.reads import reads

IMAGE = Image("d", 1000, 800)
SCALED = "scale: {from: 100 700, to: 600 700, length: 100 mm}"


def of(findings: str, photo: str = SCALED, parts: str = "{spine: {width: 40 mm, height: 120 mm}}"):
    """The marks of a case with these findings and one photo, of 5 pixels to the millimetre."""
    text = f"""
id: one
parts: {parts}
findings: {findings}
photos: [{{id: front, file: front.jpg, {photo}}}, {{id: bare, file: bare.jpg, scale: yes}}]
"""
    return marked(case(text), {"front": IMAGE, "bare.jpg": IMAGE})


def measure(mark: str, **how: str) -> Measure | None:
    (one,) = of(f"[{{part: spine, marks: {mark}}}]", **how)["front"]
    return one.measure


def test_a_box_is_measured_as_an_area_and_as_a_share_of_its_part() -> None:
    found = measure("{photo: front, box: 100 100 100 60}")
    assert found is not None
    assert found.value == 20 * 12
    assert found.share == Fraction(20 * 12, 40 * 120)
    # scale: 2 px in 500, twice for an area; the edge: one pixel round it, 320 px long
    assert found.unsure == 2 * 240 * Fraction(2, 500) + Fraction(320, 25)


def test_a_line_is_measured_along_the_side_it_runs_along() -> None:
    found = measure('{photo: front, line: "100 100, 100 400"}')
    assert found is not None
    assert (found.value, found.side, found.share) == (60, "height", Fraction(1, 2))
    across = measure('{photo: front, line: "100 100, 200 100"}')
    assert across is not None
    assert (across.side, across.share) == ("width", Fraction(1, 2))


def test_per_cent_and_pixels_say_the_same() -> None:
    assert measure("{photo: front, box: 10% 12.5% 10% 7.5%}") == measure(
        "{photo: front, box: 100 100 100 60}"
    )


def test_a_sheet_without_measures_of_its_own_has_those_of_the_object() -> None:
    found = marked(
        case(f"""
id: one
object: {{size: {{width: 200 mm, height: 100 mm}}}}
findings: [{{part: sheet/verso, marks: {{photo: front.jpg, box: 0 0 500 250}}}}]
photos: [{{file: front.jpg, {SCALED}}}]
"""),
        {"front.jpg": IMAGE},
    )
    (one,) = found["front.jpg"]
    assert one.measure is not None
    assert one.measure.share == Fraction(1, 4)


@pytest.mark.parametrize(
    "photo",
    [
        "scale: yes",
        "scale: no",
        "scale: unknown",
        "light: normal",
        "scale: {from: 1 1, to: 9 1}",
        "scale: {from: 5 5, to: 5 5, length: 10 mm}",
        "scale: {from: 1 1, to: 9 1, length: at least 10 mm}",
        "scale: {from: 1 1, to: 9 1, length: unknown}",
    ],
)
def test_without_two_points_and_a_length_nothing_is_measured(photo: str) -> None:
    assert measure("{photo: front, box: 10 10 20 20}", photo=photo) is None


def test_a_length_read_as_a_range_is_less_sure() -> None:
    scale = reads(Scale, "{from: 0 0, to: 500 0, length: 98–102 mm}")
    assert resolution(scale, IMAGE) == (Fraction(1, 5), Fraction(2, 500) + Fraction(2, 100))


def test_an_outline_that_crosses_itself_is_not_measured() -> None:
    bow = '"100 100, 200 200, 200 100, 100 200"'
    assert measure(f"{{photo: front, outline: {bow}}}") is None


def test_marks_are_numbered_through_the_case_and_kept_by_photo() -> None:
    found = of(
        "[{part: spine, marks: [{photo: front, box: 1 1 2 2}, {photo: bare, box: 1 1 2 2}]},"
        " {part: spine, marks: [{photo: gone, box: 1 1 2 2}, {photo: front, label: nowhere}]},"
        " {part: spine, marks: {photo: front.jpg, box: 5 5 2 2}}]"
    )
    assert {name: [one.number for one in many] for name, many in found.items()} == {
        "front": [1, 3],
        "bare": [2],
    }


def test_what_came_to_light_in_a_step_is_marked_too() -> None:
    found = marked(
        case("""
id: one
episodes:
  - steps: [{do: clean, finds: {seen: a label, marks: {photo: p, box: 1 1 2 2}}}]
photos: [{id: p, file: p.jpg}]
"""),
        {"p": IMAGE},
    )
    assert [one.finding.seen for one in found["p"]] == ["a label"]


def test_two_parts_at_once_have_no_share() -> None:
    (one,) = of("[{part: [spine, board 1], marks: {photo: front, box: 1 1 200 200}}]")["front"]
    assert one.measure is not None
    assert one.measure.share is None


# --- geometry --------------------------------------------------------------------------------

_SIDES = st.integers(1, 5000).map(lambda n: Fraction(n, 7))
_TURN = st.floats(0, 6.283)


@given(_SIDES, _SIDES, _SIDES, _SIDES)
def test_a_box_has_the_area_of_its_sides(
    x: Fraction, y: Fraction, across: Fraction, down: Fraction
) -> None:
    corners = ((x, y), (x + across, y), (x + across, y + down), (x, y + down))
    assert area(corners) == area(corners[::-1]) == across * down
    assert not crosses_itself(corners)


@given(_TURN, st.integers(3, 40))
def test_a_regular_outline_nears_the_circle(turn: float, count: int) -> None:
    angles = [turn + 2 * math.pi * n / count for n in range(count)]
    corners = [(Fraction(math.cos(one)), Fraction(math.sin(one))) for one in angles]
    # a regular polygon of n corners in a circle of radius 1: n/2 · sin(2π/n)
    assert math.isclose(area(corners), count / 2 * math.sin(2 * math.pi / count), rel_tol=1e-9)
    assert math.isclose(
        length([*corners, corners[0]]), 2 * count * math.sin(math.pi / count), rel_tol=1e-9
    )
    assert not crosses_itself(corners)


@pytest.mark.parametrize(
    ("text", "crosses"),
    [
        ("0 0, 10 0, 10 10, 0 10", False),
        ("0 0, 10 10, 10 0, 0 10", True),
        ("0 0, 10 0, 5 0, 5 10", True),
        ("0 0, 10 0, 10 10, 5 0, 0 10", True),
        ("0 0, 10 0, 5 8", False),
    ],
)
def test_an_outline_that_meets_itself_is_told(text: str, crosses: bool) -> None:
    assert crosses_itself(Outline.parse(text).corners(99, 99)) is crosses


@given(cases())
@settings(max_examples=60, suppress_health_check=[HealthCheck.too_slow])
def test_no_case_however_half_written_makes_measuring_or_comparing_raise(one) -> None:
    names = [name for photo in items(one.photos) for name in (photo.id, photo.file) if name]
    images = {name: Image("d", 100, 80, {"1 1 9 9": (0.2, 0.3, 0.4)}) for name in names}
    assert all(found for found in marked(one, images).values())
    assert all(found.tried for found in matches(one, images, 3.0))
