"""A date of the record: EDTF or plain English, what it allows, and how it is shown."""

from __future__ import annotations

import datetime
import re
from dataclasses import dataclass, field
from typing import Self

from casebook.values import edtf
from casebook.values.calendar import Day
from casebook.values.date_fault import refuse_at_sight, tell
from casebook.values.date_speech import say
from casebook.values.date_words import Reading, read
from casebook.values.edtf import Kind
from casebook.values.fault import NotUnderstood
from casebook.values.language import ENGLISH, Language

LONGEST = 200
"""Longer texts are refused: they are prose."""
MOST_DECADES = 20
"""A date that spans more decades than this belongs to none of them."""
_SPACES = str.maketrans({"\u00a0": " ", "\u202f": " ", "\u2009": " "})
_YEAR_AND_TWO = re.compile(r"([0-9]{2})([0-9]{2})-([0-9]{2})", re.ASCII)


@dataclass(frozen=True, slots=True)
class Date:
    """A date as meant: its EDTF text, the days that it allows, and its doubts.

    `earliest` and `latest` are None where that end is open or unknown, as `start_kind` and
    `end_kind` say. `nuance` holds the words where they mean more than EDTF can say ("mid-19th
    century", "probably 1850"). How the date was printed is no part of its equality.
    """

    edtf: str
    nuance: str
    earliest: Day | None
    latest: Day | None
    start_kind: Kind
    end_kind: Kind
    approximate: bool
    uncertain: bool
    printed: str = field(compare=False)

    @classmethod
    def parse(cls, text: str) -> Self:
        """The date of a text. Raises NotUnderstood, and nothing else, with offsets into it."""
        stripped = text.strip()
        before = len(text) - len(text.lstrip())
        if not stripped or len(stripped) > LONGEST:
            message = "a date of more than 200 characters" if stripped else "the date is empty"
            raise NotUnderstood(message, hint="write a date only", start=0, end=len(text) or 1)
        try:
            reading = _read(stripped.translate(_SPACES))
        except NotUnderstood as fault:
            raise NotUnderstood(
                fault.message, hint=fault.hint, start=before + fault.start, end=before + fault.end
            ) from None
        return cls._of(reading, stripped)

    @classmethod
    def _of(cls, reading: Reading, printed: str) -> Self:
        """The date of a reading."""
        tree = edtf.parse(reading.edtf)
        earliest, start_kind = edtf.starts(tree)
        latest, end_kind = edtf.ends(tree)
        parts = [part for point in edtf.points(tree) for part in point.components]
        return cls(
            edtf=reading.edtf,
            nuance=reading.nuance,
            earliest=earliest,
            latest=latest,
            start_kind=start_kind,
            end_kind=end_kind,
            approximate=any(part.approximate for part in parts),
            uncertain=any(part.uncertain for part in parts),
            printed=printed,
        )

    def __str__(self) -> str:
        """The date exactly as it was printed."""
        return self.printed

    def canonical(self) -> str:
        """A text that reads to an equal date: EDTF, or words where these hold more."""
        return self.nuance or self.edtf

    def show(self, language: Language = ENGLISH) -> str:
        """Plain words for readers: "c. 1780", "14–15 March 2025", "19th century"."""
        if self.nuance:
            return read(self.nuance, language).nuance
        return say(edtf.parse(self.edtf), language)

    @property
    def is_day(self) -> bool:
        """Whether this is one exact day, without any doubt."""
        doubtful = self.approximate or self.uncertain
        return self.earliest is not None and self.earliest == self.latest and not doubtful

    @property
    def other_reading(self) -> str:
        """`1805/1812` for a date printed `1805-12`: EDTF says December 1805, a tired hand may
        have meant the years. Empty where there is no such trap."""
        found = _YEAR_AND_TWO.fullmatch(self.printed)
        if found is None or found[3] <= found[2]:
            return ""
        return f"{found[1]}{found[2]}/{found[1]}{found[3]}"

    def earliest_day(self) -> datetime.date | None:
        """The earliest day, where there is one in the years 1 to 9999."""
        return self.earliest.as_date() if self.earliest else None

    def latest_day(self) -> datetime.date | None:
        """The latest day, where there is one in the years 1 to 9999."""
        return self.latest.as_date() if self.latest else None

    def decades(self) -> tuple[int, ...]:
        """First years of the decades spanned; none if an end is missing or they are too many."""
        if self.earliest is None or self.latest is None:
            return ()
        first, last = self.earliest.year // 10, self.latest.year // 10
        return tuple(n * 10 for n in range(first, last + 1)) if last - first < MOST_DECADES else ()

    def decade(self) -> int | None:
        """The first year of the one decade that the whole date lies in, or None."""
        decades = self.decades()
        return decades[0] if len(decades) == 1 else None

    def nights(self) -> int | None:
        """Nights from the earliest to the latest day, or None if an end is missing."""
        if self.earliest is None or self.latest is None:
            return None
        return self.latest.ordinal() - self.earliest.ordinal()

    def before(self, other: Date) -> bool:
        """Whether every day of this date is before every day of the other.

        An approximate or uncertain date is taken at its word: a caller that must be sure asks
        `approximate` and `uncertain` too.
        """
        if self.latest is None or other.earliest is None:
            return False
        return self.latest < other.earliest

    def after(self, other: Date) -> bool:
        """Whether every day of this date is after every day of the other, as in `before`."""
        return other.before(self)


def _read(text: str) -> Reading:
    """EDTF if it is EDTF, else words, else the fault that helps most."""
    try:
        edtf.parse(text)
        return Reading(text, "")
    except NotUnderstood as fault:
        refuse_at_sight(text)
        try:
            return read(text)
        except NotUnderstood as in_words:
            raise tell(text, fault, in_words) from None
