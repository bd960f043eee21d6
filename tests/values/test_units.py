"""Units are found by each of their spellings, and are exact."""

from __future__ import annotations

from fractions import Fraction

import pytest

from casebook.values import units
from casebook.values.units import Units

SPELLINGS = [
    (units.LENGTHS, "mm MM mm. millimetre millimeters", "1"),
    (units.LENGTHS, "cm centimetres", "10"),
    (units.LENGTHS, "m metre", "1000"),
    (units.LENGTHS, "µm μm um micron", "0.001"),
    (units.LENGTHS, "in in. inch inches \" ″ ” ''", "25.4"),
    (units.LENGTHS, "ft ft. foot feet ' ′ ’", "304.8"),
    (units.LENGTHS, "yd yards", "914.4"),
    (units.AREAS, "cm2|cm²|cm^2|cm ²|sq cm|sq. cm|square centimetres", "100"),
    (units.AREAS, "in2|in²|sq in|sq. in.|square inch|square inches", "645.16"),
    (units.MASSES, "g gram grams", "1"),
    (units.MASSES, "µg ug", "0.000001"),
    (units.MASSES, "lb lbs lb. pound", "453.59237"),
    (units.VOLUMES, "ml mL millilitres", "1"),
    (units.VOLUMES, "µl", "0.001"),
    (units.VOLUMES, "l L litre liters", "1000"),
    (units.TIMES, "min mins minute minutes min.", "1"),
    (units.TIMES, "h hr hrs hour hours", "60"),
    (units.TIMES, "d day days", "1440"),
    (units.GRAMMAGES, "gsm|g/m2|g/m²|g / m^2|g per square metre", "1"),
    (units.TEMPERATURES, "°C|C|° C|degrees Celsius", "1"),
    (units.PER_CENTS, "%|per cent|percent", "1"),
]
CASES = [
    (table, word, scale)
    for table, words, scale in SPELLINGS
    for word in (words.split("|") if "|" in words else words.split())
]


@pytest.mark.parametrize(("table", "word", "scale"), CASES, ids=[case[1] for case in CASES])
def test_a_spelling_is_found_whole(table: Units, word: str, scale: str) -> None:
    found = table.match(word, 0, len(word))
    assert found is not None
    assert (found[0].scale, found[1]) == (Fraction(scale), len(word))


@pytest.mark.parametrize("word", ["mmm", "cm²", "inchy", "furlong", "", "g/m²", "km"])
def test_what_only_begins_like_a_unit_is_none(word: str) -> None:
    assert units.LENGTHS.match(word, 0, len(word)) is None


def test_freezing_and_boiling_water_agree_in_both_scales() -> None:
    """By definition of the two scales."""
    found = units.TEMPERATURES.match("°F", 0, 2)
    assert found is not None
    assert [found[0].to_base(Fraction(degree)) for degree in (32, 212)] == [0, 100]
