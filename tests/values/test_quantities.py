"""Each kind of quantity against published figures, and against what a record may say."""

from __future__ import annotations

import csv
from fractions import Fraction
from pathlib import Path

import pytest

from casebook.values import units
from casebook.values.fault import NotUnderstood
from casebook.values.quantities import (
    Acidity,
    Area,
    Count,
    Grammage,
    Length,
    Mass,
    Percent,
    Ratio,
    Temperature,
    Volume,
)
from casebook.values.quantity import Quantity

with (
    Path(__file__)
    .parents[1]
    .joinpath("reference/figures.csv")
    .open(encoding="utf-8", newline="") as _file
):
    ROWS = list(csv.DictReader(_file))
KINDS: dict[str, type[Quantity]] = {
    "length": Length,
    "mass": Mass,
    "area": Area,
    "temperature": Temperature,
    "basis weight to grammage": Grammage,
    "grammage": Grammage,
}
OTHERWISE = {"back again", "constant"}  # rows about a factor: they have tests of their own
NO_PARSING = {  # rows of the group "grammage" that compute, rather than say, a grammage
    "definition",
    "A4 sheet",
    "mass of a sheet",
    "mass of a roll",
    "length of a roll",
    "Japanese trade weight",
    "lining used",
}
READ = [row for row in ROWS if row["group"] in KINDS and row["case"] not in OTHERWISE | NO_PARSING]


def _named(row: dict[str, str]) -> str:
    return f"{row['input']} [{row['source']}]"


def test_every_row_of_the_kinds_is_used() -> None:
    assert len(READ) == 23


@pytest.mark.parametrize("row", READ, ids=_named)
def test_a_published_figure_is_met(row: dict[str, str]) -> None:
    """Sources: the column `source` of each row, in the name of the test."""
    value = KINDS[row["group"]].parse(row["input"]).exact
    assert value is not None
    tolerance = 0 if row["tolerance"] == "exact" else Fraction(row["tolerance"])
    assert abs(value - Fraction(row["expected"])) <= tolerance


def test_412_mm_is_so_many_inches() -> None:
    """Source: NBS Circular 572 addendum (1960), row "back again"."""
    row = next(row for row in ROWS if row["case"] == "back again")
    millimetres = Length.parse(row["input"]).exact
    assert millimetres is not None
    inches = millimetres / Fraction("25.4")
    assert abs(inches - Fraction(row["expected"])) <= Fraction(row["tolerance"])


def test_the_factor_of_basis_weights() -> None:
    """Row "constant", computed; paperspecs.com prints 1406.5, which is 0.026 % high."""
    row = next(row for row in ROWS if row["case"] == "constant")
    factor = units.basis_weight(500, Fraction(1), Fraction(1)).scale
    assert abs(factor - Fraction(row["expected"])) <= Fraction(row["tolerance"])


@pytest.mark.parametrize(
    ("text", "millimetres"),
    [
        ("16 1/4 in", "412.75"),
        ("16¼ in", "412.75"),
        ("16-1/4 in", "412.75"),
        ("16 1⁄4″", "412.75"),
        ("1 ft 2 1/2 in", "368.3"),
        ("5' 3\"", "1600.2"),
        ("5'3\"", "1600.2"),
        ("2.5 cm", "25"),
        ("2,5 cm", "25"),
        ("1.2 m", "1200"),
        ("35 µm", "0.035"),
        ("1 m 20 cm", "1200"),
        ("min. 3 mm", "3"),
        ("0 mm", "0"),
    ],
)
def test_a_length_in_the_ways_people_write_it(text: str, millimetres: str) -> None:
    assert Length.parse(text).low == Fraction(millimetres)


@pytest.mark.parametrize(
    "text",
    [
        "20 lb (17 x 22 in)",
        "20 lb, 17 x 22 in",
        "20 lb 17×22 in",
        "20 lb of 500 sheets, 17 in x 22 in",
    ],
)
def test_a_basis_weight_in_the_ways_people_write_it(text: str) -> None:
    """Source: printwiki.org/Grammage gives 75.2 g/m² for 20 lb bond."""
    value = Grammage.parse(text).exact
    assert value is not None
    assert round(value, 1) == Fraction("75.2")


def test_a_basis_weight_may_be_doubtful_and_a_range() -> None:
    value = Grammage.parse("about 20-24 lb (17 x 22 in) (doubtful, no label)")
    assert (value.about, value.doubtful, value.reason) == (True, True, "no label")
    assert value.low is not None and value.high is not None
    assert value.high / value.low == Fraction(24, 20)


def test_a_ream_of_another_number_says_so() -> None:
    small, large = (Grammage.parse(f"1 lb of {n} sheets 20 x 30 in").least for n in (480, 500))
    assert small / large == Fraction(500, 480)


@pytest.mark.parametrize(
    "text",
    ["20 lb", "20 lb (0 x 22 in)", "1 lb of 0 sheets 2 x 2 in", "20 lb (17 x 2 2 in)", "12 g"],
)
def test_a_weight_without_its_sheet_is_no_grammage(text: str) -> None:
    with pytest.raises(NotUnderstood):
        Grammage.parse(text)


@pytest.mark.parametrize(
    ("text", "basis"),
    [("4 %", ""), ("4%", ""), ("4 % w/v", "w/v"), ("4% (W/W)", "w/w"), ("4 per cent v / v", "v/v")],
)
def test_a_percentage_keeps_its_basis(text: str, basis: str) -> None:
    value = Percent.parse(text)
    assert value.exact == 4
    assert value.basis == basis


def test_percentages_of_another_basis_differ() -> None:
    assert Percent.parse("4 % w/v") != Percent.parse("4 % v/v")


def test_a_ratio_keeps_its_parts_as_written() -> None:
    assert Ratio.parse("2:1:1").parts == (Fraction(2), Fraction(1), Fraction(1))
    assert Ratio.parse("about 1 : 2.5 (by volume)") == Ratio(
        (Fraction(1), Fraction(5, 2)), about=True, reason="by volume"
    )
    assert Ratio.parse("2:4") != Ratio.parse("1:2")


@pytest.mark.parametrize(
    "text", ["1", "1:0", "1:", ":2", "1:2:3:4:5:6", "at least 1:4", "1:4 ml", "1:9999999999"]
)
def test_what_is_no_ratio_is_refused(text: str) -> None:
    with pytest.raises(NotUnderstood, match=r"ratio|part"):
        Ratio.parse(text)


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("20 °C", 20, 20),
        ("68 F", 20, 20),
        ("-5 to 5 °C", -5, 5),
        ("−5 C", -5, -5),
        ("-5--2 °C", -5, -2),
        ("20-25°C", 20, 25),
        ("-40 °F", -40, -40),
    ],
)
def test_a_temperature_may_be_below_zero(text: str, low: Fraction, high: Fraction) -> None:
    assert Temperature.parse(text).low == low
    assert Temperature.parse(text).high == high


def test_nothing_is_colder_than_nothing() -> None:
    with pytest.raises(NotUnderstood, match="colder"):
        Temperature.parse("-300 °C")


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("52", 52, 52),
        ("about 52", 52, 52),
        ("2-4", 2, 4),
        ("twelve", 12, 12),
        ("010", 10, 10),
        ("at least three", 3, None),
    ],
)
def test_a_count_is_whole(text: str, low: Fraction, high: Fraction | None) -> None:
    value = Count.parse(text)
    assert (value.low, value.high) == (low, high)


@pytest.mark.parametrize("text", ["3.5", "1/2", "52 leaves", "-3", "half an", "2-3.5"])
def test_what_cannot_be_counted_is_refused(text: str) -> None:
    with pytest.raises(NotUnderstood):
        Count.parse(text)


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("8.0", 8, 8),
        ("pH 8", 8, 8),
        ("pH8", 8, 8),
        ("about pH 8", 8, 8),
        ("pH about 8", 8, 8),
        ("pH 7–8", 7, 8),
        ("pH 7 to pH 8", 7, 8),
        ("14", 14, 14),
        ("0", 0, 0),
    ],
)
def test_a_ph_with_and_without_its_name(text: str, low: Fraction, high: Fraction) -> None:
    value = Acidity.parse(text)
    assert (value.low, value.high) == (low, high)


@pytest.mark.parametrize("text", ["14.5", "-1", "7-15", "pH", "at least 80"])
def test_a_ph_outside_its_scale_is_refused_with_the_scale(text: str) -> None:
    with pytest.raises(NotUnderstood) as caught:
        Acidity.parse(text)
    assert "0 to 14" in caught.value.hint


@pytest.mark.parametrize(("text", "millilitres"), [("1.5 l", 1500), ("5 cl", 50), ("250 mL", 250)])
def test_a_volume_is_in_millilitres(text: str, millilitres: int) -> None:
    assert Volume.parse(text).exact == millilitres


@pytest.mark.parametrize("text", ["2 fl oz", "2 fl. oz.", "2 fluid ounces"])
def test_fluid_ounces_are_refused_for_there_are_two(text: str) -> None:
    with pytest.raises(NotUnderstood, match="fluid ounces differ") as caught:
        Volume.parse(text)
    assert text[caught.value.start :].startswith("fl")


@pytest.mark.parametrize(
    ("text", "grams"), [("2 kg", "2000"), ("5 mg", "0.005"), ("1 lb 8 oz", "680.388555")]
)
def test_a_mass_is_in_grams(text: str, grams: str) -> None:
    assert Mass.parse(text).exact == Fraction(grams)


@pytest.mark.parametrize(
    ("text", "square"),
    [("278 cm²", "27800"), ("1 m2", "1000000"), ("2 sq in", "1290.32"), ("1 sq ft", "92903.04")],
)
def test_an_area_is_in_square_millimetres(text: str, square: str) -> None:
    assert Area.parse(text).exact == Fraction(square)
