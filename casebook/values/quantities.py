"""The kinds of quantity in a record: lengths, weights, strengths, counts… each read exactly."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from fractions import Fraction
from typing import ClassVar, Self

from casebook.values import units
from casebook.values.fault import NotUnderstood
from casebook.values.numbers import fits, numeral, read_number
from casebook.values.quantity import Quantity
from casebook.values.wording import (
    MOST_CHARACTERS,
    Grammar,
    closing,
    fault,
    heard,
    opening,
    remark,
)

__all__ = [
    "Acidity",
    "Area",
    "Count",
    "Grammage",
    "Length",
    "Mass",
    "Percent",
    "Quantity",
    "Ratio",
    "Temperature",
    "Volume",
]

_COLON = re.compile(r"\s*[:∶]\s*")
_BASIS = re.compile(
    r"(?:%|per\s*cent)(?P<all>\s*(?P<open>\()?\s*(?P<a>[wv])\s*/\s*(?P<b>[wv])\b(?(open)\s*\)))",
    re.I,
)
_FLUID_OUNCE = re.compile(r"fl(?:uid)?\.?\s*(?:oz|ounces?)\b\.?", re.I)
_SIDE = r"[0-9][0-9\s./⁄¼½¾⅛⅜⅝⅞]*"
_POUNDS = re.compile(
    rf"(?:lbs?\.?|pounds?)(?P<all>[\s,]*(?:(?:of|per)\s+(?P<sheets>[0-9]{{1,4}})\s+sheets[\s,]*)?"
    rf"(?P<open>\()?\s*(?P<a>{_SIDE})\s*(?:in\.?)?\s*[x×]\s*(?P<b>{_SIDE})\s*(?:in|inch|inches)\b\.?"
    r"\s*(?(open)\)))",
    re.I,
)
_ZERO_KELVIN = Fraction("-273.15")
_MOST_PARTS = 5
_MOST_PART_DIGITS = 9


@dataclass(frozen=True, slots=True)
class Length(Quantity):
    """A length. Base unit: mm."""

    grammar: ClassVar[Grammar] = Grammar("length", units.LENGTHS, "write it as 12 mm or 16 1/4 in")
    unit: ClassVar[str] = " mm"


@dataclass(frozen=True, slots=True)
class Area(Quantity):
    """An area. Base unit: mm²."""

    grammar: ClassVar[Grammar] = Grammar("area", units.AREAS, "write it as 278 cm² or 43 in²")
    unit: ClassVar[str] = " mm²"


@dataclass(frozen=True, slots=True)
class Mass(Quantity):
    """What something weighs. Base unit: g."""

    grammar: ClassVar[Grammar] = Grammar("mass", units.MASSES, "write it as 12 g or 2 oz")
    unit: ClassVar[str] = " g"


@dataclass(frozen=True, slots=True)
class Volume(Quantity):
    """A volume of liquid. Base unit: ml."""

    grammar: ClassVar[Grammar] = Grammar("volume", units.VOLUMES, "write it as 250 ml or 1.5 l")
    unit: ClassVar[str] = " ml"

    @classmethod
    def parse(cls, text: str) -> Self:
        """Read a volume; fluid ounces are refused, for there are two of them."""
        ounce = _FLUID_OUNCE.search(text.partition("(")[0][:MOST_CHARACTERS])
        if ounce:
            raise NotUnderstood(
                "fluid ounces differ between America and Britain",
                hint="write it in ml",
                start=ounce.start(),
                end=ounce.end(),
            )
        return super(Volume, cls).parse(text)


@dataclass(frozen=True, slots=True)
class Grammage(Quantity):
    """Mass per area of paper, board or cloth. Base unit: g/m²."""

    grammar: ClassVar[Grammar] = Grammar(
        "grammage", units.GRAMMAGES, "write it as 31 g/m², 4 oz/yd² or 20 lb (17 x 22 in)"
    )
    unit: ClassVar[str] = " g/m²"

    @classmethod
    def parse(cls, text: str) -> Self:
        """Read a grammage, or a basis weight: pounds of 500 sheets of a size in inches.

        Sheets of another number must say so: "32 lb of 480 sheets, 20 x 30 in".
        """
        size = _POUNDS.search(text[:MOST_CHARACTERS])
        if size is None:
            return super(Grammage, cls).parse(text)
        pound = Grammar(
            cls.grammar.noun, units.Units({r"lbs?|pounds?": _pound(text, size)}), cls.grammar.hint
        )
        return cls(*heard(_blanked(text, size), pound), text.strip())


@dataclass(frozen=True, slots=True)
class Percent(Quantity):
    """Parts in a hundred. `basis` says of what: w/v (g in 100 ml), w/w or v/v; "" if not said."""

    basis: str = ""

    grammar: ClassVar[Grammar] = Grammar(
        "percentage", units.PER_CENTS, "write it as 4 % or 4 % w/v"
    )

    @classmethod
    def parse(cls, text: str) -> Self:
        """Read a percentage with its basis, in brackets or not."""
        found = _BASIS.search(text[:MOST_CHARACTERS])
        plain = _blanked(text, found) if found else text
        basis = f"{found['a']}/{found['b']}".lower() if found else ""
        return cls(*heard(plain, cls.grammar), text.strip(), basis)

    def _limits(self) -> str:
        known = super(Percent, self)._limits()
        return f"{known} % {self.basis}".rstrip()


@dataclass(frozen=True, slots=True)
class Temperature(Quantity):
    """A temperature. Base unit: °C."""

    grammar: ClassVar[Grammar] = Grammar(
        "temperature", units.TEMPERATURES, "write it as 20 °C or 68 °F", signed=True
    )
    unit: ClassVar[str] = " °C"

    def _wrong(self) -> str:
        low = min(self._known())
        return "nothing is colder than −273.15 °C" if low < _ZERO_KELVIN else ""


@dataclass(frozen=True, slots=True)
class Count(Quantity):
    """How many: a whole number, in digits or, up to twelve, in words."""

    grammar: ClassVar[Grammar] = Grammar(
        "count", units.BARE, "write a whole number, as in 52 or about 52", bare=units.ONE
    )

    def _wrong(self) -> str:
        whole = all(bound.denominator == 1 for bound in self._known())
        return "" if whole else "only whole things are counted"


@dataclass(frozen=True, slots=True)
class Acidity(Quantity):
    """A pH, from 0 to 14."""

    grammar: ClassVar[Grammar] = Grammar(
        "acidity",
        units.BARE,
        "write a pH from 0 to 14, as in 8.0 or pH 8",
        bare=units.ONE,
        before=re.compile(r"\s*(?:pH\b\s*|pH(?=[0-9]))?", re.I),
    )

    def _wrong(self) -> str:
        return "" if max(self._known()) <= 14 else "a pH is not over 14"


@dataclass(frozen=True, slots=True)
class Ratio:
    """Parts of a mixture such as 1:4 or 2:1:1, in the order written; not reduced."""

    parts: tuple[Fraction, ...]
    about: bool = False
    doubtful: bool = False
    reason: str = ""
    printed: str = field(default="", compare=False)

    @classmethod
    def parse(cls, text: str) -> Self:
        """Read two to five parts with colons between. Raises NotUnderstood for any other text."""
        start, end = opening(text, _RATIO), closing(text)
        if start.bound:
            raise fault(text, 0, end.start, "a ratio has no upper or lower bound", _RATIO.hint)
        parts = _parts(text, start.end, end.start)
        return cls(parts, start.about, end.doubtful, end.reason, text.strip())

    def __str__(self) -> str:
        """The printed form, as it was written."""
        return self.printed or self.canonical()

    def canonical(self) -> str:
        """The same ratio written from its values alone; `parse` reads it back equal."""
        about = "about " if self.about else ""
        parts = ":".join(numeral(part) for part in self.parts)
        return f"{about}{parts}{remark(self.doubtful, self.reason)}"


_RATIO = Grammar("ratio", units.BARE, "write it as 1:4 or 2:1:1")


def _parts(text: str, at: int, end: int) -> tuple[Fraction, ...]:
    """The parts of a ratio that fills the text between two places."""
    parts: list[Fraction] = []
    begin = at
    while found := read_number(text, at, end):
        parts.append(found[0])
        colon = _COLON.match(text, found[1], end)
        at = colon.end() if colon else found[1]
        if colon is None:
            break
    if found is None or text[at:end].strip() or not 2 <= len(parts) <= _MOST_PARTS:
        message = f"a ratio is 2 to {_MOST_PARTS} numbers with colons between them"
        raise fault(text, begin, end, message, _RATIO.hint)
    if not all(part > 0 and fits(part, _MOST_PART_DIGITS) for part in parts):
        raise fault(text, begin, end, "a part is 0, too large or too fine", _RATIO.hint)
    return tuple(parts)


def _blanked(text: str, found: re.Match[str]) -> str:
    """A text with one piece of it made spaces, so that offsets stay what they were."""
    start, end = found.span("all")
    return f"{text[:start]}{' ' * (end - start)}{text[end:]}"


def _pound(text: str, size: re.Match[str]) -> units.Unit:
    """The unit "pound per so many sheets of this size"."""
    sheets = int(size["sheets"] or 500)
    sides = [_side(text, size, name) for name in ("a", "b")]
    if sheets == 0 or 0 in sides:
        raise fault(text, *size.span("all"), "a ream has sheets, and a sheet a size", "17 x 22 in")
    return units.basis_weight(sheets, *sides)


def _side(text: str, size: re.Match[str], name: str) -> Fraction:
    """One side of the sheet, in inches."""
    start, end = size.span(name)
    found = read_number(text, start, end)
    if found is None or text[found[1] : end].strip():
        raise fault(text, start, end, "this is not a side of a sheet", "write 17 x 22 in")
    return found[0]
