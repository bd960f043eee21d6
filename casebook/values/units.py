"""Units of measure, how they are written, and what they are in base units, exactly.

Sources: the inch of 25.4 mm and the yard of 914.4 mm, NBS Circular 572 addendum (1960), in force
from 1 July 1959; the pound of 453.59237 g, the international pound of 1959 (read through an
encyclopaedia); the ounce is a sixteenth of it, the foot twelve inches. The others are decimal
multiples, or follow by definition.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True)
class Unit:
    """How many base units one of it is, and the base value of its zero."""

    scale: Fraction
    zero: Fraction = Fraction(0)

    def to_base(self, number: Fraction) -> Fraction:
        """A number of this unit, in base units."""
        return number * self.scale + self.zero


class Units:
    """The units of one kind of quantity, found by their spellings.

    Spellings are regular expressions; capitals do not matter, and a full stop may follow.
    """

    def __init__(self, spellings: Mapping[str, Unit]) -> None:
        self._units = tuple(spellings.values())
        choices = "|".join(f"(?P<u{n}>{one})" for n, one in enumerate(spellings))
        ending = r"\.?(?![^\W\d_]|[²³^'′’\"″”])"
        self._pattern = re.compile(f"(?:{choices}){ending}", re.IGNORECASE)

    def match(self, text: str, start: int, end: int) -> tuple[Unit, int] | None:
        """The unit written at `start`, and where it ends; None if there is none."""
        found = self._pattern.match(text, start, end)
        if found is None or found.lastgroup is None:
            return None
        return self._units[int(found.lastgroup[1:])], found.end()


ONE = Unit(Fraction(1))
HOUR = Unit(Fraction(60))

_INCH = Fraction("25.4")
_POUND = Fraction("453.59237")
_OUNCE = _POUND / 16
_MM_OF = {
    r"mm|millimet(?:re|er)s?": Fraction(1),
    r"cm|centimet(?:re|er)s?": Fraction(10),
    r"m|met(?:re|er)s?": Fraction(1000),
    r"(?:in|inch|inches)": _INCH,
    r"(?:ft|foot|feet)": 12 * _INCH,
    r"(?:yd|yds|yards?)": 36 * _INCH,
}
_FINE_AND_MARKS = {
    r"[µμu]m|microns?|micromet(?:re|er)s?": Fraction(1, 1000),
    r"''|[\"″”]": _INCH,
    r"['′’]": 12 * _INCH,
}

LENGTHS = Units({key: Unit(size) for key, size in (_MM_OF | _FINE_AND_MARKS).items()})
"""Base unit: mm."""

AREAS = Units(
    {
        rf"(?:sq\.?\s*|square\s+)(?:{key})|(?:{key})\s*(?:²|\^?\s*2)": Unit(size * size)
        for key, size in _MM_OF.items()
    }
)
"""Base unit: mm²."""

MASSES = Units(
    {
        r"g|gr?ams?|grammes?": ONE,
        r"kg|kilograms?|kilos?": Unit(Fraction(1000)),
        r"mg|milligrams?": Unit(Fraction(1, 1000)),
        r"[µμu]g|micrograms?": Unit(Fraction(1, 10**6)),
        r"lbs?|pounds?": Unit(_POUND),
        r"oz|ounces?": Unit(_OUNCE),
    }
)
"""Base unit: g."""

VOLUMES = Units(
    {
        r"ml|millilit(?:re|er)s?": ONE,
        r"cl|centilit(?:re|er)s?": Unit(Fraction(10)),
        r"l|lit(?:re|er)s?": Unit(Fraction(1000)),
        r"[µμu]l|microlit(?:re|er)s?": Unit(Fraction(1, 1000)),
    }
)
"""Base unit: ml. The fluid ounce is left out: it is not the same in America and in Britain."""

TIMES = Units(
    {
        r"min|mins|minutes?": ONE,
        r"h|hrs?|hours?": HOUR,
        r"s|secs?|seconds?": Unit(Fraction(1, 60)),
        r"d|days?": Unit(Fraction(24 * 60)),
        r"w|wks?|weeks?": Unit(Fraction(7 * 24 * 60)),
    }
)
"""Base unit: minutes. A day is 24 hours gone by, a week seven of them."""

_SQUARE_METRE = r"(?:m\s*(?:²|\^?\s*2)|square\s+met(?:re|er))"
_SQUARE_YARD = r"(?:yd\s*(?:²|\^?\s*2)|sq\.?\s*yd|square\s+yard)"
GRAMMAGES = Units(
    {
        rf"gsm|(?:g|grams?)\s*(?:/|per\b)\s*{_SQUARE_METRE}": ONE,
        rf"(?:oz|ounces?)\s*(?:/|per\b)\s*{_SQUARE_YARD}": Unit(_OUNCE / (36 * _INCH / 1000) ** 2),
    }
)
"""Base unit: g/m². Source: ISO 536 (through an encyclopaedia; the standard was not read)."""

TEMPERATURES = Units(
    {
        r"°?\s*C|degrees?\s+C(?:elsius)?": ONE,
        r"°?\s*F|degrees?\s+F(?:ahrenheit)?": Unit(Fraction(5, 9), Fraction(-160, 9)),
    }
)
"""Base unit: °C. 32 °F is 0 °C and 212 °F is 100 °C, by definition."""

PER_CENTS = Units({r"%|per\s*cent": ONE})
"""Base unit: one in a hundred."""

BARE = Units({r"(?!)": ONE})
"""No unit at all: for plain numbers."""


def basis_weight(sheets: int, height: Fraction, width: Fraction) -> Unit:
    """The pound per so many sheets of a size in inches, in g/m².

    Source: printwiki.org/Grammage, whose published factors it gives to their three decimals.
    """
    square_metres = sheets * height * width * (_INCH / 1000) ** 2
    return Unit(_POUND / square_metres)
