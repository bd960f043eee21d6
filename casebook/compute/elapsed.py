"""Time between two dates of a record: how long, and how sure that is."""

from __future__ import annotations

from dataclasses import dataclass

from casebook.values.calendar import Day
from casebook.values.dates import Date


@dataclass(frozen=True, slots=True)
class Elapsed:
    """Time from one date to another: whole months at least and at most; days where it is exact.

    `days` is None where one of the dates is a month, a year or a guess: then `least` and `most`
    are what the dates allow.
    """

    least: int
    most: int
    days: int | None = None

    @property
    def middle(self) -> int:
        """The months in the middle of what the dates allow, halves down."""
        return (self.least + self.most) // 2


def elapsed(start: Date, end: Date) -> Elapsed | None:
    """The time from the end of one date to another; None where that cannot be told, or is none.

    Of a stretch of days such as 14 to 18 March the last is the start. A date that may be before
    `start` counts from it.
    """
    begun = _last_of(start)
    if not (begun.earliest and begun.latest and end.earliest and end.latest):
        return None
    if end.latest < begun.earliest:
        return None
    least = max(_months(begun.latest, end.earliest), 0)
    most = _months(begun.earliest, end.latest)
    exact = begun.is_day and end.is_day
    days = end.earliest.ordinal() - begun.latest.ordinal() if exact else None
    return Elapsed(least, most, days)


def _last_of(date: Date) -> Date:
    """The date on which a stretch of days ends; any other date as it is."""
    first, _, last = date.edtf.partition("/")
    return Date.parse(last) if last.strip(".") and first[:1] not in "[{" else date


def _months(start: Day, end: Day) -> int:
    """Whole months from one day to another; negative where it is before it."""
    whole = (end.year - start.year) * 12 + end.month - start.month
    return whole - 1 if end.day < start.day else whole
