"""Days and months of the proleptic Gregorian calendar, for years of any size."""

from __future__ import annotations

import datetime
from typing import NamedTuple

_MONTH_LENGTHS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)


class Day(NamedTuple):
    """One day: astronomical year (0 is 1 BC), month 1-12, day 1-31. Days sort as they fall.

    `datetime.date` holds the years 1 to 9999 only; the dates of a record may lie outside.
    """

    year: int
    month: int
    day: int

    def __str__(self) -> str:
        """ISO 8601, the year with at least four digits: `1985-04-12`, `-0043-03-15`."""
        sign = "-" if self.year < 0 else ""
        return f"{sign}{abs(self.year):04d}-{self.month:02d}-{self.day:02d}"

    def as_date(self) -> datetime.date | None:
        """The same day as a `datetime.date`, or None where its years do not reach."""
        if not datetime.MINYEAR <= self.year <= datetime.MAXYEAR:
            return None
        return datetime.date(*self)

    def ordinal(self) -> int:
        """Days since 1 January of the year 0, which counts as 0; negative before it."""
        past = self.year - 1  # the last whole year; floor division keeps negative years right
        leap_days = past // 4 - past // 100 + past // 400 + 1  # + 1: the year 0 is a leap year
        months = sum(month_length(self.year, month) for month in range(1, self.month))
        return 365 * self.year + leap_days + months + self.day - 1

    def next(self) -> Day:
        """The day after."""
        if self.day < month_length(self.year, self.month):
            return self._replace(day=self.day + 1)
        year, month = step_month(self.year, self.month, 1)
        return Day(year, month, 1)

    def previous(self) -> Day:
        """The day before."""
        if self.day > 1:
            return self._replace(day=self.day - 1)
        return last_of_month(*step_month(self.year, self.month, -1))


def is_leap(year: int) -> bool:
    """Whether 29 February exists in this year (Gregorian rule, carried back before 1582)."""
    return year % 4 == 0 and (year % 100 != 0 or year % 400 == 0)


def month_length(year: int, month: int) -> int:
    """The number of days in a month."""
    return 29 if month == 2 and is_leap(year) else _MONTH_LENGTHS[month - 1]


def step_month(year: int, month: int, by: int) -> tuple[int, int]:
    """Year and month a number of months later (or earlier, if negative)."""
    years, month0 = divmod(month - 1 + by, 12)
    return year + years, month0 + 1


def last_of_month(year: int, month: int) -> Day:
    """The last day of a month."""
    return Day(year, month, month_length(year, month))
