"""Days, months and their order, checked against the standard library's calendar."""

from __future__ import annotations

import datetime

from hypothesis import given
from hypothesis import strategies as st

from casebook.values.calendar import (
    Day,
    is_leap,
    last_of_month,
    month_length,
    step_month,
)

DATES = st.dates(max_value=datetime.date(9999, 12, 30))


def _day(date: datetime.date) -> Day:
    return Day(date.year, date.month, date.day)


@given(DATES, DATES)
def test_days_are_counted_as_the_standard_library_counts_them(
    first: datetime.date, second: datetime.date
) -> None:
    assert _day(second).ordinal() - _day(first).ordinal() == (second - first).days
    assert (_day(first) < _day(second)) == (first < second)


@given(DATES)
def test_the_next_day_is_a_day_later_and_back(date: datetime.date) -> None:
    after = date + datetime.timedelta(days=1)
    assert _day(date).next() == _day(after)
    assert _day(after).previous() == _day(date)
    assert _day(date).as_date() == date


@given(st.integers(-20_000, 20_000), st.integers(1, 12))
def test_ordinals_run_on_without_a_gap_in_any_year(year: int, month: int) -> None:
    last = last_of_month(year, month)
    assert last.next().ordinal() == last.ordinal() + 1
    assert last.next().previous() == last


def test_the_gregorian_rule_holds_before_its_time_and_for_the_year_zero() -> None:
    assert [year for year in (-4, 0, 1900, 2000, 2023, 2024) if is_leap(year)] == [
        -4,
        0,
        2000,
        2024,
    ]
    assert (month_length(1900, 2), month_length(2000, 2)) == (28, 29)
    assert Day(0, 1, 1).ordinal() == 0


def test_months_step_over_the_ends_of_years() -> None:
    assert step_month(2025, 12, 1) == (2026, 1)
    assert step_month(2025, 1, -1) == (2024, 12)
    assert step_month(2025, 1, 13) == (2026, 2)


def test_a_day_prints_in_iso_with_a_year_of_at_least_four_digits() -> None:
    assert str(Day(-43, 3, 15)) == "-0043-03-15"
    assert str(Day(170000002, 1, 1)) == "170000002-01-01"


def test_a_year_beyond_the_standard_library_has_no_date_there() -> None:
    assert Day(0, 12, 31).as_date() is None
    assert Day(10_000, 1, 1).as_date() is None
