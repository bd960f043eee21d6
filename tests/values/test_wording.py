"""The words around a quantity are heard, wherever they may stand."""

from __future__ import annotations

from fractions import Fraction

import pytest

from casebook.values.fault import NotUnderstood
from casebook.values.quantities import Length
from casebook.values.wording import Closing, Heard, closing, heard, remark


@pytest.mark.parametrize(
    "word",
    [
        "about",
        "About",
        "around",
        "roughly",
        "c.",
        "c",
        "ca.",
        "ca",
        "circa",
        "approx.",
        "approx",
        "approximately",
        "~",
        "≈",
    ],
)
def test_a_word_of_approximation_is_heard(word: str) -> None:
    assert heard(f"{word} 7 mm", Length.grammar) == Heard(Fraction(7), Fraction(7), True, False, "")


@pytest.mark.parametrize(
    "word", ["at least", "min.", "min", "minimum", "no less than", "≥", ">=", "more than", "over"]
)
def test_a_lower_bound_is_heard(word: str) -> None:
    assert heard(f"{word} 7 mm", Length.grammar)[:2] == (Fraction(7), None)


@pytest.mark.parametrize(
    "word", ["up to", "at most", "max.", "max", "no more than", "≤", "<=", "less than", "under"]
)
def test_an_upper_bound_is_heard(word: str) -> None:
    assert heard(f"{word} 7 mm", Length.grammar)[:2] == (None, Fraction(7))


def test_a_bound_may_itself_be_approximate() -> None:
    assert heard("at least about 7 mm", Length.grammar)[:3] == (Fraction(7), None, True)
    assert heard("about at least 7 mm", Length.grammar)[:3] == (Fraction(7), None, True)


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("2-4 mm", 2, 4),
        ("2–4 mm", 2, 4),
        ("2 to 4 mm", 2, 4),
        ("2 mm to 1 cm", 2, 10),
        ("2mm-4mm", 2, 4),
        ("1 1/2 - 2 in", Fraction("38.1"), Fraction("50.8")),
        ("1-1 1/2 in", Fraction("25.4"), Fraction("38.1")),
        ("4-4 mm", 4, 4),
        ("1/4-1/2 in", Fraction("6.35"), Fraction("12.7")),
        ("1 ft to 1 ft 1 in", Fraction("304.8"), Fraction("330.2")),
    ],
)
def test_a_range_is_heard(text: str, low: Fraction, high: Fraction) -> None:
    assert heard(text, Length.grammar)[:2] == (low, high)


@pytest.mark.parametrize(
    ("text", "message", "words"),
    [
        ("4-2 mm", "backwards", "4-2 mm"),
        ("about -2 mm", "negative", "-2 mm"),
        ("12", "needs a unit", "12"),
        ("2 mm - 4", "needs a unit", "4"),
        ("12 furlongs", "not understood", "furlongs"),
        ("16 x 10 in", "this is a size", "x 10 in"),
        ("16 in by 10 in", "this is a size", "by 10 in"),
        ("at least 2-4 mm", "do not go together", "2-4 mm"),
        ("1 ft 14 in", "do not add up", "1 ft 14 in"),
        ("1 1/2 ft 3 in", "do not add up", "1 1/2 ft 3 in"),
        ("3 in 1 ft", "do not add up", "3 in 1 ft"),
        ("12 mm 5", "no unit", "5"),
        ("wide", "is not a length", "wide"),
        ("999999999999 yd 1/999999999 in", "too large or too fine", None),
        ("3 mm (" + "x" * 81 + ")", "characters in brackets", "(" + "x" * 81 + ")"),
        ("x" * 201, "more than 200 characters", "x" * 201),
    ],
)
def test_what_is_wrong_is_said_at_its_place(text: str, message: str, words: str | None) -> None:
    with pytest.raises(NotUnderstood, match=message) as caught:
        heard(text, Length.grammar)
    assert text[caught.value.start : caught.value.end] == (words or text)


def test_a_size_is_answered_with_height_and_width() -> None:
    with pytest.raises(NotUnderstood) as caught:
        Length.parse("16 × 10 in")
    assert "give height and width apart" in caught.value.hint


def test_a_length_without_unit_is_answered_with_mm_and_in() -> None:
    with pytest.raises(NotUnderstood) as caught:
        Length.parse("12")
    assert "mm" in caught.value.hint and " in" in caught.value.hint


@pytest.mark.parametrize(
    ("text", "doubtful", "reason", "rest"),
    [
        ("1 h", False, "", "1 h"),
        ("1 h (doubtful)", True, "", "1 h "),
        ("1 h (?)", True, "", "1 h "),
        ("1 h?", True, "", "1 h"),
        ("1 h (doubtful: from notes) ", True, "from notes", "1 h "),
        ("1 h (at the head)", False, "at the head", "1 h "),
        ("1 h (a (b))", False, "a (b)", "1 h "),
        ("1 h (", False, "", "1 h ("),
    ],
)
def test_a_remark_is_parted_from_the_rest(
    text: str, doubtful: bool, reason: str, rest: str
) -> None:
    assert closing(text) == Closing(doubtful, reason, len(rest))


def test_a_remark_is_written_as_it_is_read() -> None:
    assert remark(False, "") == ""
    assert remark(True, "from notes") == " (doubtful, from notes)"
