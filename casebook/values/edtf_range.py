"""The days that one EDTF date may mean: unspecified digits, seasons, huge and rounded years."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import product

from casebook.values.calendar import Day, last_of_month, month_length, step_month
from casebook.values.fault import NotUnderstood

LARGEST_YEAR_DIGITS = 18
"""Years of more digits are refused: the format has no limit, a record has no use for them."""

_SEASONS = {"spring": (3, 5), "summer": (6, 8), "autumn": (9, 11), "winter": (12, 14)}
_SOUTHERN = {"spring": (9, 11), "summer": (12, 14), "autumn": (3, 5), "winter": (6, 8)}
GROUPINGS: dict[int, tuple[int, int]] = {
    **dict(zip(range(21, 25), _SEASONS.values(), strict=True)),
    **dict(zip(range(25, 29), _SEASONS.values(), strict=True)),
    **dict(zip(range(29, 33), _SOUTHERN.values(), strict=True)),
    **{33 + n: (3 * n + 1, 3 * n + 3) for n in range(4)},
    **{37 + n: (4 * n + 1, 4 * n + 4) for n in range(3)},
    **{40 + n: (6 * n + 1, 6 * n + 6) for n in range(2)},
}
"""First and last month of each code 21-41; 13 and 14 are January and February of the next year.

Codes: EDTF specification 2019-02-04, sub-year groupings. It gives quarters, quadrimesters and
semesters their length but seasons no months: whole months, and a winter of December of its year
to February of the next, are the project's choice (common practice, no source).
"""

_LONG_YEAR = re.compile(
    r"(?P<letter>Y?)(?P<number>-?[0-9]+)(?:E(?P<exponent>[0-9]+))?(?:S(?P<significant>[0-9]+))?"
)


def year_range(text: str, offset: int) -> tuple[int, int]:
    """First and last year of a year written in digits: `1985`, `Y-17E7`, `1950S2`.

    `offset` is where it stands, for the fault.
    """
    found = _LONG_YEAR.fullmatch(text)
    assert found is not None  # the caller's pattern is narrower
    end = offset + len(text)
    if text.startswith("-0000"):
        raise NotUnderstood("there is no year -0000", hint="write 0000", start=offset, end=end)
    exponent = int(found["exponent"] or 0)
    if exponent + len(found["number"].lstrip("-")) > LARGEST_YEAR_DIGITS:
        raise NotUnderstood(
            f"a year of more than {LARGEST_YEAR_DIGITS} digits", start=offset, end=end
        )
    year = int(found["number"]) * 10**exponent
    if found["letter"] and abs(year) < 10_000:
        raise NotUnderstood(
            "Y is for years of more than four digits", hint="leave the Y out", start=offset, end=end
        )
    if not found["significant"]:
        return year, year
    return _rounded(year, int(found["significant"]), bool(found["letter"]), offset, end)


def _rounded(year: int, significant: int, long: bool, offset: int, end: int) -> tuple[int, int]:
    """The years that a year with so many significant digits may mean.

    Four digits: the first so many are sure (1950S2: 1900-1999). Letter-prefixed: the last so many
    are free, for that is how the specification prints its example (Y171010000S3: 171010000 to
    171010999); its other example, Y3388E2S3: 338000 to 338999, comes out the same either way.
    """
    digits = max(len(str(abs(year))), 4)
    if significant > digits:
        raise NotUnderstood(f"the year has only {digits} digits", start=offset, end=end)
    step: int = 10 ** (significant if long else digits - significant)
    low = abs(year) // step * step
    high = low + step - 1
    return (low, high) if year >= 0 else (-high, -low)


def day_range(
    year: str, month: str | None, day: str | None, offset: int, end: int
) -> tuple[Day, Day]:
    """First and last day of a date whose digits may be X; a missing month or day may be any."""
    if month and month.isdecimal() and int(month) in GROUPINGS:
        return _grouping_range(year, int(month), day, offset, end)
    earliest = _first_real(year, month or "XX", day or "XX", backwards=False)
    latest = _first_real(year, month or "XX", day or "XX", backwards=True)
    if earliest is None or latest is None:
        raise NotUnderstood(
            _no_such_day(month, day),
            hint="months are 01 to 12, 21 is spring, 22 summer…",
            start=offset,
            end=end,
        )
    return earliest, latest


def _no_such_day(month: str | None, day: str | None) -> str:
    """What to say of a date that is not in the calendar."""
    if month and not any(_values(month, 1, 12, backwards=False)):
        return f'there is no month "{month}"'
    return f'there is no day "{day}" in that month' if day else "there is no such year"


def _grouping_range(
    year: str, code: int, day: str | None, offset: int, end: int
) -> tuple[Day, Day]:
    """First and last day of a season, quarter, quadrimester or semester."""
    if day:
        raise NotUnderstood(f"{code} is a part of a year and has no days", start=offset, end=end)
    first_month, last_month = GROUPINGS[code]
    first_year = next(_years(year, backwards=False), None)
    last_year = next(_years(year, backwards=True), None)
    if first_year is None or last_year is None:
        raise NotUnderstood("there is no such year", start=offset, end=end)
    start = Day(first_year, first_month, 1)
    return start, last_of_month(*step_month(last_year, 1, last_month - 1))


def _first_real(year: str, month: str, day: str, *, backwards: bool) -> Day | None:
    """The first day of the calendar that fits the three patterns, or the last one."""
    for number in _years(year, backwards=backwards):
        for in_year in _values(month, 1, 12, backwards=backwards):
            for in_month in _values(day, 1, 31, backwards=backwards):
                if in_month <= month_length(number, in_year):
                    return Day(number, in_year, in_month)
    return None


def _years(pattern: str, *, backwards: bool) -> Iterator[int]:
    """The years that fit a pattern such as `19X5` or `-00XX`, in order."""
    if not pattern.startswith("-"):
        return _values(pattern, 0, 9999, backwards=backwards)
    return (-year for year in _values(pattern[1:], 1, 9999, backwards=not backwards))


def _values(pattern: str, low: int, high: int, *, backwards: bool) -> Iterator[int]:
    """The numbers from low to high that fit a pattern of digits and X, in order."""
    any_digit = "9876543210" if backwards else "0123456789"
    choices = [any_digit if character == "X" else character for character in pattern]
    numbers = (int("".join(digits)) for digits in product(*choices))
    return (number for number in numbers if low <= number <= high)
