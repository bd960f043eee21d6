"""How a language orders a day, and its decimal sign: CLDR, the Unicode consortium's, by Babel."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from casebook.values.date_english import MONTHS

_FIELD = re.compile(r"'([^']*)'|d+|[ML]+|y+")
_DAY = re.compile(r"d+\.?")


@dataclass(frozen=True, slots=True)
class DayForms:
    """The names of the months, and patterns in CLDR's letters: `d` day, `M` month, `y` year.

    Source of the letters: Unicode Technical Standard 35, part 4, "Date Format Patterns".
    """

    months: tuple[str, ...] = MONTHS
    day: str = "d MMMM y"
    month: str = "MMMM y"
    day_of_month: str = "d MMMM"
    decimal: str = "."
    group: str = ","

    def days(self) -> str:
        """The pattern of a stretch of days within a month, with two days."""
        return _DAY.sub(lambda found: f"{found[0]}–{found[0]}", self.day, count=1)

    def days_across(self) -> str:
        """The pattern of a stretch of days over several months of a year."""
        return f"{self.day_of_month} – {self.day}"

    def months_across(self) -> str:
        """The pattern of a stretch of months of a year."""
        return self.month.replace("MMMM", "MMMM–MMMM")


def fill(pattern: str, days: Sequence[str] = (), months: Sequence[str] = (), year: str = "") -> str:
    """A pattern with its fields in the order in which they stand; a text in quotes is kept."""
    texts = {"d": iter(days), "M": iter(months), "L": iter(months), "y": iter((year,))}

    def told(found: re.Match[str]) -> str:
        return next(texts[found[0][0]]) if found[1] is None else found[1]

    return _FIELD.sub(told, pattern)


def day_forms(tag: str) -> DayForms:
    """The forms of a language that CLDR knows, by a tag such as `en-US`.

    Of a country that it does not know, the language's own.
    """
    from babel import Locale, UnknownLocaleError  # noqa: PLC0415 - plain English asks for none

    try:
        found = Locale.parse(tag, sep="-")
    except (UnknownLocaleError, ValueError):
        found = Locale.parse(tag.partition("-")[0])
    months, skeletons = found.months["format"]["wide"], found.datetime_skeletons
    symbols = found.number_symbols["latn"]
    return DayForms(
        months=tuple(months[number] for number in range(1, 13)),
        day=str(found.date_formats["long"].pattern),
        month=str(skeletons["yMMMM"].pattern),
        day_of_month=str(skeletons["MMMMd"].pattern),
        decimal=symbols["decimal"],
        group=symbols["group"],
    )
