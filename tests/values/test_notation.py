"""Dates and measures as a lab writes them."""

from __future__ import annotations

import datetime
from fractions import Fraction

import pytest

from casebook.values.dates import Date
from casebook.values.language import ENGLISH, language
from casebook.values.notation import PLAIN, Notation, Units
from casebook.values.quantities import Length

GERMAN = language("de") or ENGLISH


@pytest.mark.parametrize(
    ("written", "units", "shown"),
    [
        ("10 mm", None, "10 mm"),
        ("10 mm", Units.METRIC, "10 mm"),
        ("10 mm", Units.IMPERIAL, "10 mm (3/8 in)"),
        ("10 mm", Units.BOTH, "10 mm (3/8 in)"),
        ("2 in", Units.METRIC, "2 in (50.8 mm)"),
        ("2 in", Units.IMPERIAL, "2 in"),
        ('2"', Units.BOTH, '2" (50.8 mm)'),
        ("0 mm", Units.BOTH, "0 mm"),
        ("30 mm (bent in)", Units.METRIC, "30 mm (bent in)"),
    ],
)
def test_a_length_keeps_its_words_and_gets_the_labs_unit(
    written: str, units: Units | None, shown: str
) -> None:
    assert Notation(units=units).length(Length.parse(written)) == shown


def test_what_is_worked_out_stands_in_the_labs_units() -> None:
    area = Fraction(27768)
    assert [Notation(units=one).area(area) for one in (None, *Units)] == [
        "278 cm²", "278 cm²", "43 in²", "278 cm² (43 in²)",
    ]  # fmt: skip
    assert Notation(units=Units.IMPERIAL).computed_length(14_000) == "9/16 in"
    assert PLAIN.computed_length(14_500) == "14.5 mm"


def test_figures_have_the_signs_of_the_language_and_fractions_stay() -> None:
    both = Notation(GERMAN, Units.BOTH)
    assert both.length(Length.parse("1234 mm")) == "1234 mm (48 9/16 in)"
    assert both.area(Fraction(1_234_567)) == "1,23 m² (13,3 ft²)"
    assert both.figures("at least 12345 h 5 min") == "at least 12.345 h 5 min"


def test_days_and_decades_are_said_in_the_language() -> None:
    german = Notation(GERMAN)
    assert german.day(datetime.date(2025, 3, 4)) == "4. März 2025"
    assert (german.decade(1870), PLAIN.decade(1870)) == ("1870er Jahre", "1870s")
    assert PLAIN.decade(1900) == "1900s"
    assert german.date(Date.parse("c. 1780")) == "ca. 1780"
