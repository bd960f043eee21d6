"""A colour of the record, as measured (CIELAB) or as taken from an image (sRGB)."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from decimal import Decimal
from fractions import Fraction
from typing import ClassVar, Self

from casebook.values import units
from casebook.values.fault import NotUnderstood
from casebook.values.quantity import Quantity
from casebook.values.wording import Grammar

LONGEST = 200
"""Longer texts are refused: they are prose."""
WIDEST = 200
"""No a or b beyond this is taken: larger than any surface shows (a bound of the project)."""
_HINT = 'write "L 52.1 a 3.4 b -10" or "#aabbcc"'
_NUMBER = r"[+-]?[0-9]{1,3}(?:\.[0-9]{1,6})?"
_LAB_FORMS = tuple(
    re.compile(form.replace("N", _NUMBER), re.IGNORECASE | re.ASCII)
    for form in (
        r"L\*?[\s=:]*(?P<L>N)[\s,;]*a\*?[\s=:]*(?P<a>N)[\s,;]*b\*?[\s=:]*(?P<b>N)",
        r"lab\(\s*(?P<L>N)(?:\s*,\s*|\s+)(?P<a>N)(?:\s*,\s*|\s+)(?P<b>N)\s*\)",
        r"(?P<L>N)(?:\s*[,;]\s*|\s+)(?P<a>N)(?:\s*[,;]\s*|\s+)(?P<b>N)",
    )
)
_HEX = re.compile(r"#(?P<digits>[0-9a-f]{6}|[0-9a-f]{3})", re.IGNORECASE | re.ASCII)
_SIGNS = str.maketrans({"\u2212": "-", "\u00a0": " "})


@dataclass(frozen=True, slots=True)
class Colour:
    """Either `lab` (L 0-100, a and b, exact; the white point is the instrument's) or `rgb` (0-255).

    How the colour was printed is no part of its equality.
    """

    lab: tuple[Fraction, Fraction, Fraction] | None
    rgb: tuple[int, int, int] | None
    printed: str = field(compare=False)

    @classmethod
    def parse(cls, text: str) -> Self:
        """The colour of a text. Raises NotUnderstood, and nothing else, with offsets into it."""
        stripped = text.strip()
        start = len(text) - len(text.lstrip())
        if not stripped or len(stripped) > LONGEST:
            message = "the colour is empty" if not stripped else "too long for a colour"
            raise NotUnderstood(message, hint=_HINT, start=0, end=len(text) or 1)
        if found := _HEX.fullmatch(stripped):
            return cls(None, _rgb(found["digits"]), stripped)
        signed = stripped.translate(_SIGNS)
        for form in _LAB_FORMS:
            if found := form.fullmatch(signed):
                return cls(_lab(found, start), None, stripped)
        raise NotUnderstood(
            f'"{stripped}" is not a colour', hint=_HINT, start=start, end=start + len(stripped)
        )

    def __str__(self) -> str:
        """The colour exactly as it was printed."""
        return self.printed

    def canonical(self) -> str:
        """A text that reads to an equal colour: `lab(52.1 3.4 -10)` or `#aabbcc`."""
        if self.lab is not None:
            return f"lab({' '.join(_decimal(number) for number in self.lab)})"
        return "#" + "".join(f"{level:02x}" for level in self.rgb or ())


@dataclass(frozen=True, slots=True)
class Difference(Quantity):
    """A difference of two colours, by CIEDE2000: 0 is no difference."""

    grammar: ClassVar[Grammar] = Grammar(
        "colour difference", units.BARE, "write a number, as in 3.0", bare=units.ONE
    )


def _rgb(digits: str) -> tuple[int, int, int]:
    """Red, green and blue, 0-255, of three or six hexadecimal digits."""
    if len(digits) == 3:
        digits = "".join(digit * 2 for digit in digits)
    return int(digits[:2], 16), int(digits[2:4], 16), int(digits[4:], 16)


def _lab(found: re.Match[str], start: int) -> tuple[Fraction, Fraction, Fraction]:
    """L, a and b, each within its bounds."""
    lightness, a, b = (_bounded(found, name, start) for name in ("L", "a", "b"))
    return lightness, a, b


def _bounded(found: re.Match[str], name: str, start: int) -> Fraction:
    """One number of a CIELAB colour. Source of the bounds of L: CIE 15 (not read; from memory)."""
    number = Fraction(found[name])
    low, high = (0, 100) if name == "L" else (-WIDEST, WIDEST)
    if not low <= number <= high:
        raise NotUnderstood(
            f"{name} is from {low} to {high}",
            hint=_HINT,
            start=start + found.start(name),
            end=start + found.end(name),
        )
    return number


def _decimal(number: Fraction) -> str:
    """The decimal digits of a number read from decimal digits, exactly."""
    return f"{Decimal(number.numerator) / Decimal(number.denominator):f}"
