"""Numbers as people write them, read exactly: whole, decimal, fraction, mixed, in words."""

from __future__ import annotations

import re
import unicodedata
from fractions import Fraction

from casebook.values.fault import NotUnderstood

MOST_DIGITS = 12
"""A whole or decimal number of more digits is refused: nothing on a bench is so large or fine."""

MOST_FRACTION_DIGITS = 18
"""The same for each side of a fraction; wider, so that every value converted can be written."""

NUMBER_WORDS = (
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
)
_WORDS = {
    **{word: Fraction(number) for number, word in enumerate(NUMBER_WORDS, 1)},
    "an": Fraction(1),
    "half an": Fraction(1, 2),
}
_SIGNS = {  # "¼" is spelt 1, fraction slash, 4 by Unicode's compatibility mapping
    sign: Fraction(*map(int, unicodedata.normalize("NFKC", sign).split("\u2044")))
    for sign in "¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"
}
_NUMBER = re.compile(
    rf"""
      (?: (?P<whole>[0-9]+) (?P<join>\s+|-) )?
      (?P<over>[0-9]+) [ ]?[/\u2044][ ]? (?P<under>[0-9]+)
    | (?: (?P<before>[0-9]+) (?:\s+|-)? )? (?P<sign>[{"".join(_SIGNS)}])
    | (?P<decimal> [0-9]+ (?:[.,][0-9]+)* | \.[0-9]+ )
    | (?P<word>half[ ]an|{"|".join(NUMBER_WORDS)}|an) (?![a-z0-9])
    """,
    re.VERBOSE | re.IGNORECASE | re.ASCII,
)
_THOUSANDS = re.compile(r"[1-9][0-9]{0,2},[0-9]{3}")
_WHOLE = re.compile(r"[0-9]+")


def read_number(text: str, start: int, end: int) -> tuple[Fraction, int] | None:
    """The number that begins at `start`, and where it ends; None if there is none.

    Signs are the caller's. Raises NotUnderstood for a number that makes no sense, such as 1/0.
    """
    found = _NUMBER.match(text, start, end)
    if found is None:
        return None
    if found["join"] == "-" and int(found["over"]) >= int(found["under"]):
        found = _WHOLE.match(text, start, end)  # "1-5/4" is a range, "1-1/4" a mixed number
        assert found is not None  # the mixed number began with it
        return _decimal(found[0], start), found.end()
    return _value(found), found.end()


def numeral(value: Fraction) -> str:
    """A number as text that reads back the same: decimal where short and exact, else a fraction."""
    for places in range(MOST_DIGITS):
        scaled = value * 10**places
        if scaled.denominator == 1:
            digits = f"{abs(scaled.numerator):0{places + 1}d}"
            if len(digits) > MOST_DIGITS:
                break
            cut = len(digits) - places
            point = "." if places else ""
            return f"{'-' if value < 0 else ''}{digits[:cut]}{point}{digits[cut:]}"
    return f"{value.numerator}/{value.denominator}"


def fits(value: Fraction, digits: int = MOST_FRACTION_DIGITS) -> bool:
    """Whether a value is short enough for `numeral` to write it so that it reads back."""
    most: int = 10**digits
    return max(abs(value.numerator), value.denominator) < most


def _value(found: re.Match[str]) -> Fraction:
    """The value of a match, whichever way it is written."""
    if word := found["word"]:
        return _WORDS[word.lower()]
    if decimal := found["decimal"]:
        return _decimal(decimal, found.start())
    if sign := found["sign"]:
        return _SIGNS[sign] + (_decimal(found["before"], found.start()) if found["before"] else 0)
    part = _fraction(found)
    if not found["whole"]:
        return part
    if part >= 1:
        raise _fault(found, f"{found['over']}/{found['under']} is not less than 1", "over")
    return _decimal(found["whole"], found.start()) + part


def _fraction(found: re.Match[str]) -> Fraction:
    """The fraction of a match, without the whole number before it."""
    if max(len(found["over"]), len(found["under"])) > MOST_FRACTION_DIGITS:
        raise _fault(found, "this fraction has too many digits", "over")
    if int(found["under"]) == 0:
        raise _fault(found, "nothing can be divided by 0", "over")
    return Fraction(int(found["over"]), int(found["under"]))


def _fault(found: re.Match[str], message: str, group: str) -> NotUnderstood:
    hint = "write a fraction as in 16 1/4"
    return NotUnderstood(message, hint=hint, start=found.start(group), end=found.end())


def _decimal(text: str, start: int) -> Fraction:
    """A whole or decimal number, with point or comma."""
    end = start + len(text)
    if sum(text.count(digit) for digit in "0123456789") > MOST_DIGITS:
        message = f"a number of more than {MOST_DIGITS} digits"
        raise NotUnderstood(message, hint="round it, or use another unit", start=start, end=end)
    if text.count(".") + text.count(",") > 1 or _THOUSANDS.fullmatch(text):
        raise NotUnderstood(
            f'"{text}" may be read in two ways',
            hint="leave out the mark for thousands: 1250; write decimals with a point: 1.25",
            start=start,
            end=end,
        )
    return Fraction(text.replace(",", "."))
