"""Quantities on a page are rounded for show, and say no more doubt than was written."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casebook.values.quantities import Length
from casebook.values.showing import count_of, hours, imperial, metric, square_cm, square_inches


def test_one_is_one_and_any_other_number_several() -> None:
    assert [count_of(n, "night") for n in (0, 1, 2)] == ["0 nights", "1 night", "2 nights"]


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("412 mm", "412 mm"),
        ("16 1/4 in", "413 mm"),
        ("1.2 m", "1.2 m"),
        ("1234 mm", "1.23 m"),
        ("1/8 in", "3.18 mm"),
        ("35 µm", "0.035 mm"),
        ("0 mm", "0 mm"),
        ("100 mm", "100 mm"),
        ("about 71 mm", "about 71 mm"),
        ("2-4 mm", "2 mm to 4 mm"),
        ("at least 3 mm", "at least 3 mm"),
        ("up to 3 mm", "up to 3 mm"),
        ("4 mm (at the head)", "4 mm"),
    ],
)
def test_a_length_is_shown_in_metric(text: str, shown: str) -> None:
    assert metric(Length.parse(text)) == shown


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("412.75 mm", "16 1/4 in"),
        ("412 mm", "16 1/4 in"),
        ("10 9/16 in", "10 9/16 in"),
        ("2 in", "2 in"),
        ("5 mm", "3/16 in"),
        ("2.5 mm", "0.098 in"),
        ("0.1 mm", "0.004 in"),
        ("1/16 in", "1/16 in"),
        ("0.01 mm", "less than 0.001 in"),
        ("0 mm", "0 in"),
        ("about 2-4 in", "about 2 in to 4 in"),
        ("50.8-51 mm", "2 in"),
    ],
)
def test_a_length_is_shown_to_the_nearest_sixteenth_of_an_inch(text: str, shown: str) -> None:
    assert imperial(Length.parse(text)) == shown


@given(st.integers(1, 100_000))
def test_sixteenths_of_an_inch_are_shown_exactly(sixteenths: int) -> None:
    length = Fraction("25.4") * sixteenths / 16
    assert Length.parse(imperial(Length(length, length))).exact == length


@pytest.mark.parametrize(
    ("minutes", "shown"),
    [
        (220, "3 h 40 min"),
        (40, "40 min"),
        (180, "3 h"),
        (0, "0 min"),
        (Fraction(119, 2), "1 h"),
        (Fraction(1, 3), "less than 1 min"),
        (1440, "24 h"),
    ],
)
def test_minutes_are_shown_as_hours(minutes: Fraction | int, shown: str) -> None:
    assert hours(minutes) == shown


@pytest.mark.parametrize(
    ("area", "shown"),
    [
        (27768, "278 cm²"),
        (1_234_567, "1.23 m²"),
        (1_200_000, "1.2 m²"),
        (50, "0.5 cm²"),
        (999_999, "10000 cm²"),
        (0, "0 cm²"),
    ],
)
def test_an_area_is_shown_in_cm2_or_m2(area: int, shown: str) -> None:
    assert square_cm(Fraction(area)) == shown


@pytest.mark.parametrize(
    ("area", "shown"),
    [
        (27768, "43 in²"),
        (64516, "100 in²"),
        (1_234_567, "13.3 ft²"),
        (50, "0.0775 in²"),
        (0, "0 in²"),
    ],
)
def test_an_area_is_shown_in_square_inches_or_feet(area: int, shown: str) -> None:
    assert square_inches(Fraction(area)) == shown


@given(st.integers(0, 10**7))
def test_what_is_shown_is_near_what_is_meant(micrometres: int) -> None:
    length = Fraction(micrometres, 1000)
    shown = Length.parse(metric(Length(length, length))).least
    assert abs(shown - length) * 200 <= length
