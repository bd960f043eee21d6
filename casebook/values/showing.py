"""Quantities for readers of a page, rounded for show only: no sum is made from these texts.

A value that rounding made inexact is not called "about"; only what was written so is.
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from math import floor

from casebook.values.quantities import Length

_SIXTEENTH = Fraction("25.4") / 16
_THIN = 2 * _SIXTEENTH
"""Below an eighth of an inch a sixteenth is too coarse."""
_MM2_OF_CM2 = 100
_MM2_OF_M2 = 10**6
_MM2_OF_IN2 = Fraction("25.4") ** 2
_MM2_OF_FT2 = 144 * _MM2_OF_IN2


def count_of(number: Fraction | int, noun: str) -> str:
    """How many there are of something: "1 night", "3 nights"."""
    return f"{number} {noun}{'' if number == 1 else 's'}"


def metric(length: Length) -> str:
    """A length in mm, from one metre up in m, to three figures: "412 mm", "1.2 m"."""
    return _around(length, _metric)


def imperial(length: Length) -> str:
    """A length to the nearest sixteenth of an inch: "16 1/4 in"; a thin one as "0.004 in"."""
    return _around(length, _imperial)


def hours(minutes: Fraction | int) -> str:
    """Minutes as "3 h 40 min", to the nearest minute."""
    whole = _nearest(Fraction(minutes))
    if whole == 0 and minutes > 0:
        return "less than 1 min"
    hour, minute = divmod(whole, 60)
    parts = [f"{hour} h" if hour else "", f"{minute} min" if minute or not hour else ""]
    return " ".join(part for part in parts if part)


def square_cm(area: Fraction) -> str:
    """An area in mm² as cm², from one square metre up as m², to three figures: "278 cm²"."""
    if area >= _MM2_OF_M2:
        return f"{_figures(area / _MM2_OF_M2)} m²"
    return f"{_figures(Fraction(area) / _MM2_OF_CM2)} cm²"


def square_inches(area: Fraction) -> str:
    """An area in mm² as in², from ten square feet up as ft², to three figures: "43.1 in²"."""
    if area >= 10 * _MM2_OF_FT2:
        return f"{_figures(area / _MM2_OF_FT2)} ft²"
    return f"{_figures(area / _MM2_OF_IN2)} in²"


def _around(length: Length, write: Callable[[Fraction], str]) -> str:
    """A length with its "about" and its range, each bound written by `write`."""
    about = "about " if length.about else ""
    low = "" if length.low is None else write(length.low)
    high = "" if length.high is None else write(length.high)
    if not low or not high:
        return f"{about}{'at least' if low else 'up to'} {low or high}"
    return f"{about}{low}" if low == high else f"{about}{low} to {high}"


def _metric(value: Fraction) -> str:
    if value >= 1000:
        return f"{_figures(value / 1000)} m"
    return f"{_figures(value)} mm"


def _imperial(value: Fraction) -> str:
    sixteenths = _nearest(value / _SIXTEENTH)
    if value < _THIN and sixteenths * _SIXTEENTH != value:
        return _thousandths(value / (16 * _SIXTEENTH))
    whole, rest = divmod(sixteenths, 16)
    part = Fraction(rest, 16)
    words = [str(whole) if whole or not rest else "", str(part) if rest else ""]
    return f"{' '.join(word for word in words if word)} in"


def _thousandths(inches: Fraction) -> str:
    """A thin length: to the nearest thousandth of an inch."""
    thousandths = _nearest(inches * 1000)
    return f"{thousandths / 1000:.3f}".rstrip("0") + " in" if thousandths else "less than 0.001 in"


def _figures(value: Fraction) -> str:
    """A number to three figures, whole from a hundred up, without zeros at the end."""
    places = 0
    while value and value * 10**places < 100 and places < 20:
        places += 1
    digits = f"{_nearest(value * 10**places):0{places + 1}d}"
    if places == 0:
        return digits
    return f"{digits[:-places]}.{digits[-places:]}".rstrip("0").rstrip(".")


def _nearest(value: Fraction) -> int:
    """The nearest whole number, halves up."""
    return floor(value + Fraction(1, 2))
