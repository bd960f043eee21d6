"""Numbers are read exactly, however they are written."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casebook.values.fault import NotUnderstood
from casebook.values.numbers import fits, numeral, read_number


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("16", "16"),
        ("2.5", "5/2"),
        ("2,5", "5/2"),
        (".5", "1/2"),
        ("0,125", "1/8"),
        ("1/16", "1/16"),
        ("16 1/4", "65/4"),
        ("16-1/4", "65/4"),
        ("16 1⁄4", "65/4"),
        ("16¼", "65/4"),
        ("16 ¼", "65/4"),
        ("16-¼", "65/4"),
        ("⅝", "5/8"),
        ("⅓", "1/3"),
        ("one", "1"),
        ("Twelve", "12"),
        ("half an", "1/2"),
        ("1.250", "5/4"),
    ],
)
def test_a_number_is_read_whole(text: str, value: str) -> None:
    assert read_number(text, 0, len(text)) == (Fraction(value), len(text))


@pytest.mark.parametrize(
    ("text", "value", "end"),
    [("1-5/4", 1, 1), ("1–1/4", 1, 1), ("1 h", 1, 1), ("2 - 3/4", 2, 1), ("52 leaves", 52, 2)],
)
def test_a_number_ends_where_something_else_begins(text: str, value: Fraction, end: int) -> None:
    assert read_number(text, 0, len(text)) == (value, end)


@pytest.mark.parametrize("text", ["", "h", "-1", "ones", "ſix", "٣", "²"])
def test_what_is_no_number_is_none(text: str) -> None:
    assert read_number(text, 0, len(text)) is None


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("1/0", "1/0"),
        ("3 1/0", "1/0"),
        ("3 5/4", "5/4"),
        ("1,000", "1,000"),
        ("1.000,5", "1.000,5"),
        ("1234567890123", "1234567890123"),
        ("1/" + "9" * 19, None),
    ],
)
def test_a_number_that_makes_no_sense_is_refused_at_its_place(text: str, words: str | None) -> None:
    with pytest.raises(NotUnderstood) as caught:
        read_number("  " + text, 2, len(text) + 2)
    assert ("  " + text)[caught.value.start : caught.value.end] == (words or text)


@pytest.mark.parametrize(
    ("value", "text"),
    [
        ("0", "0"),
        ("65/4", "16.25"),
        ("1/3", "1/3"),
        ("-1/2", "-0.5"),
        ("1/8", "0.125"),
        ("1000000000000", "1000000000000/1"),
        ("1/10", "0.1"),
    ],
)
def test_a_number_is_written_as_a_decimal_where_that_is_exact_and_short(
    value: str, text: str
) -> None:
    assert numeral(Fraction(value)) == text


@given(st.fractions(min_value=0, max_value=10**17, max_denominator=10**17).filter(fits))
def test_what_is_written_reads_back(value: Fraction) -> None:
    text = numeral(value)
    assert read_number(text, 0, len(text)) == (value, len(text))


def test_what_cannot_be_written_does_not_fit() -> None:
    assert not fits(Fraction(10**18)) and not fits(Fraction(1, 10**18))
    assert fits(Fraction(10**18 - 1))
