"""What all quantities share: least and most, exact, with the doubts they were written with."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from typing import ClassVar, Self

from casebook.values.numbers import numeral
from casebook.values.units import BARE
from casebook.values.wording import Grammar, fault, heard, remark


@dataclass(frozen=True, slots=True)
class Quantity:
    """A measure in base units, plain or a range, as it was printed.

    `low` is None for "up to 3" and `high` for "at least 3", never both; a plain value has both
    the same. `reason` is the remark in brackets. Two quantities are equal if they say the same,
    whichever words they were printed in.
    """

    low: Fraction | None
    high: Fraction | None
    about: bool = False
    doubtful: bool = False
    reason: str = ""
    printed: str = field(default="", compare=False)

    grammar: ClassVar[Grammar] = Grammar("quantity", BARE, "")
    unit: ClassVar[str] = ""
    """The base unit as `canonical` writes it, behind a space if it has one."""

    @classmethod
    def parse(cls, text: str) -> Self:
        """Read a text as printed. Raises NotUnderstood, with offsets, if it says no measure."""
        value = cls(*heard(text, cls.grammar), text.strip())
        if wrong := value._wrong():
            raise fault(text, 0, len(text), wrong, cls.grammar.hint)
        return value

    def __str__(self) -> str:
        """The printed form, as it was written."""
        return self.printed or self.canonical()

    def canonical(self) -> str:
        """The same quantity written from its values alone; `parse` reads it back equal."""
        about = "about " if self.about else ""
        return f"{about}{self._limits()}{remark(self.doubtful, self.reason)}"

    @property
    def exact(self) -> Fraction | None:
        """The value in base units, None for a range; "about 7" has one, but is `about`."""
        return self.low if self.low == self.high else None

    @property
    def least(self) -> Fraction:
        """The lower bound in base units, 0 where there is none."""
        return self.low if self.low is not None else Fraction(0)

    @property
    def is_range(self) -> bool:
        """Whether least and most differ, or one of them is open."""
        return self.low != self.high

    def _limits(self) -> str:
        """Least and most with their unit, in the words that `parse` reads."""
        if self.low is None or self.high is None:
            word, known = ("up to", self.high) if self.low is None else ("at least", self.low)
            return f"{word} {numeral(known or Fraction(0))}{self.unit}"
        if self.low == self.high:
            return f"{numeral(self.low)}{self.unit}"
        return f"{numeral(self.low)}–{numeral(self.high)}{self.unit}"

    def _wrong(self) -> str:
        """What is wrong with a value outside the bounds of its kind, "" if nothing is."""
        return ""

    def _known(self) -> list[Fraction]:
        """The bounds that are not open."""
        return [bound for bound in (self.low, self.high) if bound is not None]
