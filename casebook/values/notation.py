"""How a site writes dates, lengths and areas: in the lab's language, in the lab's units."""

from __future__ import annotations

import datetime
import re
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from casebook.values.date_speech import Speech, bare
from casebook.values.dates import Date
from casebook.values.language import ENGLISH, Language
from casebook.values.quantities import Length
from casebook.values.showing import imperial, metric, square_cm, square_inches

_NUMBER = re.compile(r"(?<![\d./])\d+(?:\.\d+)?(?![\d./])")
_INCHES = re.compile(r"in\b|ft\b|yd\b|inch|feet|foot|yard|[\"″'′]")
_UM = 1000


class Units(StrEnum):
    """The measures that pages show beside what was written."""

    METRIC = "metric"
    IMPERIAL = "imperial"
    BOTH = "both"


@dataclass(frozen=True, slots=True)
class Notation:
    """A language, and units; without units measures stand as written, and what is computed metric.

    Nothing of the record is rewritten: the lab's unit stands behind a measure of another kind.
    """

    language: Language = ENGLISH
    units: Units | None = None

    def date(self, date: Date) -> str:
        """A date of the record in words."""
        return date.show(self.language)

    def day(self, day: datetime.date) -> str:
        """A day of the calendar in words."""
        return self.date(Date.parse(day.isoformat()))

    def days(self, first: datetime.date, last: datetime.date) -> str:
        """A stretch of days in words: "4–5 March 2025"."""
        return self.date(Date.parse(f"{first.isoformat()}/{last.isoformat()}"))

    def decade(self, first_year: int) -> str:
        """A decade in words: "1870s"."""
        return bare(Speech(self.language).decade(first_year))

    def length(self, length: Length) -> str:
        """A length as written, and in the lab's unit where that is another."""
        written = str(length)
        inches = bool(_INCHES.search(written.partition("(")[0]))
        own = Units.IMPERIAL if inches else Units.METRIC
        if self.units in (None, own) or length.high == 0:
            return written
        return f"{written} ({self.figures(metric(length) if inches else imperial(length))})"

    def computed_length(self, um: int) -> str:
        """A length in µm that the record gives as a number only."""
        mm = Fraction(um, _UM)
        length = Length(mm, mm)
        return self.either(metric(length), imperial(length))

    def area(self, mm2: Fraction) -> str:
        """An area in mm² that was worked out."""
        return self.either(square_cm(mm2), square_inches(mm2))

    def either(self, in_metric: str, in_inches: str) -> str:
        """What was worked out, in the lab's unit or in both."""
        if self.units is Units.IMPERIAL:
            return self.figures(in_inches)
        behind = f" ({in_inches})" if self.units is Units.BOTH else ""
        return self.figures(in_metric + behind)

    def figures(self, text: str) -> str:
        """A text that was made here, its numbers with the signs of the language."""
        return _NUMBER.sub(lambda found: self.language.number(found[0]), text)


PLAIN = Notation()
"""English, and every measure as it was written."""
