"""Colours of the record, read exactly."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casebook.values.colours import Colour
from casebook.values.fault import NotUnderstood

LAB = (Fraction(521, 10), Fraction(17, 5), Fraction(-10))
_PIECES = st.lists(
    st.sampled_from(
        ["L", "a", "b", "lab(", ")", "52.1", "-3", ",", " ", "#", "ff", "999", "*", "٣"]
    ),
    max_size=10,
).map("".join)


@pytest.mark.parametrize(
    "text",
    [
        "L 52.1 a 3.4 b -10",
        "52.1, 3.4, -10",
        "lab(52.1 3.4 -10)",
        "L*=52.1; a*=3.40; b*=-10",
        "52.1 3.4 \u221210",
        "LAB(52.1, 3.4, -10)",
    ],
)
def test_cielab_is_read_in_each_of_its_forms(text: str) -> None:
    colour = Colour.parse(f" {text} ")
    assert (colour.lab, colour.rgb) == (LAB, None)
    assert str(colour) == text
    assert colour == Colour.parse("lab(52.1 3.4 -10)")
    assert colour.canonical() == "lab(52.1 3.4 -10)"


@pytest.mark.parametrize("text", ["#AABBCC", "#aabbcc", "#abc"])
def test_hexadecimal_srgb_is_read(text: str) -> None:
    colour = Colour.parse(text)
    assert (colour.lab, colour.rgb) == (None, (0xAA, 0xBB, 0xCC))
    assert colour.canonical() == "#aabbcc"


@given(st.integers(0, 10**8), st.integers(-2 * 10**8, 2 * 10**8), st.integers(0, 0xFFFFFF))
def test_a_colour_comes_back_from_its_canonical_text(light: int, a: int, rgb: int) -> None:
    text = f"lab({light // 10**6}.{light % 10**6:06d} {a // 10**6} -0.5)"
    for colour in (Colour.parse(text), Colour.parse(f"#{rgb:06x}")):
        assert Colour.parse(colour.canonical()) == colour
    assert Colour.parse(text).lab == (Fraction(light, 10**6), Fraction(a // 10**6), Fraction(-1, 2))


@given(st.text() | _PIECES)
def test_any_text_is_read_or_not_understood_and_nothing_else(text: str) -> None:
    try:
        colour = Colour.parse(text)
    except NotUnderstood as fault:
        assert fault.hint
        assert 0 <= fault.start < fault.end <= max(len(text), 1)
    else:
        assert Colour.parse(colour.canonical()) == colour


@pytest.mark.parametrize(
    ("text", "wrong"), [("L 101 a 0 b 0", "101"), ("50, -201, 0", "-201"), ("brown", "brown")]
)
def test_a_fault_points_at_what_is_wrong(text: str, wrong: str) -> None:
    with pytest.raises(NotUnderstood) as caught:
        Colour.parse(f"  {text}")
    assert f"  {text}"[caught.value.start : caught.value.end] == wrong
