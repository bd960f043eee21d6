"""Heights and widths, and what stands in where they are not recorded."""

from __future__ import annotations

import pytest

from casebook.compute.figures import Figure
from casebook.compute.measures import (
    HEIGHT_OF_OBJECT,
    HEIGHT_OF_PART,
    NO_RISE,
    WIDTH_OF_OBJECT,
    WIDTH_OF_PART,
    assumed_height,
    assumed_width,
    length,
    within,
)
from casebook.compute.places import Ground, ground
from casebook.model.base import Gap, Unknowing
from tests.compute.written import case


def below() -> Ground:
    return ground(
        case("""
object: {size: {height: 16 1/4 in, width: 268 mm}}
parts:
  spine: {width: 68 mm, rise: 14 mm, height: 398 mm}
  volume 2: {parts: {spine: {width: 40 mm}}}
  joint: {width: 12 mm}
""")
    )


def test_a_spine_gives_its_arc_and_without_a_rise_its_width() -> None:
    arc = assumed_width(below(), "spine")
    assert arc is not None
    # Machinery's Handbook, 31st ed., segments of circles: 75.443 mm (see test_geometry)
    assert arc.value == pytest.approx(75_443, abs=1)
    assert arc.doubts == ()
    assert assumed_width(below(), "volume 2/spine") == Figure(40_000, (NO_RISE,))


def test_other_parts_give_their_own_width_and_large_ones_the_objects() -> None:
    assert assumed_width(below(), "joint") == Figure(12_000, (WIDTH_OF_PART,))
    assert assumed_width(below(), "board 2") == Figure(268_000, (WIDTH_OF_OBJECT,))
    assert assumed_width(below(), "endband head") is None


def test_heights_come_from_the_part_or_the_object() -> None:
    assert assumed_height(below(), "spine") == Figure(398_000, (HEIGHT_OF_PART,))
    # 16 1/4 in x 25.4 = 412.75 mm; inch: NBS Circular 572, addendum (1960)
    assert assumed_height(below(), "joint") == Figure(412_750, (HEIGHT_OF_OBJECT,))
    assert assumed_height(ground(case("id: x")), "spine") is None


def test_no_more_lies_on_a_face_than_the_face_is_wide() -> None:
    assert within(Figure(5), Figure(3)) == Figure(3)
    assert within(Figure(2), Figure(3)) == within(Figure(2), None) == Figure(2)


def test_a_length_that_is_not_known_is_none() -> None:
    assert length(None) is length(Gap(Unknowing.UNKNOWN)) is None
