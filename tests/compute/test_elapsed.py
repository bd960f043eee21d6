"""The time between two dates is no surer than the dates."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casebook.compute.elapsed import Elapsed, elapsed
from casebook.values.dates import Date


def between(start: str, end: str) -> Elapsed | None:
    return elapsed(Date.parse(start), Date.parse(end))


@pytest.mark.parametrize(
    ("start", "end", "least", "most", "days"),
    [
        ("2025-03-31", "2026-04-08", 12, 12, 373),
        ("2025-03-31", "2026-02-28", 10, 10, 334),
        ("2025-03-14/2025-03-18", "2025-03-30", 0, 0, 12),
        ("14-18 March 2025", "April 2025", 0, 1, None),
        ("1984-04~", "2026-05-12", 504, 505, None),
        ("1984", "1986", 12, 35, None),
        ("2025", "2025-12", 0, 11, None),
    ],
)
def test_months_and_days(start: str, end: str, least: int, most: int, days: int | None) -> None:
    assert between(start, end) == Elapsed(least, most, days)


@pytest.mark.parametrize(
    ("start", "end"),
    [
        ("before 1850", "2020"),
        ("1984-03/..", "1990"),
        ("2026-01-01", "2025-01-01"),
        ("2025-01-01", "after 2026"),
    ],
)
def test_an_open_date_or_one_before_the_start_gives_no_time(start: str, end: str) -> None:
    assert between(start, end) is None


def test_a_set_of_dates_is_taken_as_a_whole() -> None:
    assert between("[1984-01,1984-05]", "1990") == Elapsed(67, 83)


DAYS = st.dates().map(lambda day: Date.parse(day.isoformat()))


@given(DAYS, DAYS)
def test_exact_days_leave_nothing_open(start: Date, end: Date) -> None:
    found = elapsed(start, end)
    first, last = start.earliest_day(), end.earliest_day()
    assert first and last
    assert (found is None) == (last < first)
    if found:
        assert found.days == (last - first).days
        assert found.least == found.most == found.middle
        assert found.days // 31 <= found.least <= found.days // 28
