"""The order of dates, days to come, and dates with two readings."""

from __future__ import annotations

import pytest

from casebook.rules import NAMED
from tests.rules.written import messages


@pytest.mark.parametrize(
    ("received", "examined", "told"),
    [
        ("2025-01-20", "2025-01-28", 0),
        ("2025-01-20", "2025-01-20", 0),
        ("2025-01-20", "2025-01", 0),
        ("2025-01-20", "c. 2024", 0),
        ("2025-01-20", "2024-12-28", 1),
    ],
)
def test_only_what_is_certainly_out_of_order_is_told(received: str, examined: str, told: int):
    text = f"dates: {{received: {received}, examined: {examined}}}"
    assert len(messages(NAMED["dates-in-order"], text)) == told


def test_sittings_stand_between_examination_and_return():
    early = "dates: {examined: 2025-03-20, returned: 2025-03-10}"
    assert messages(NAMED["dates-in-order"], early) == [
        "sitting 1 on 2025-03-14, which is before it was examined (2025-03-20)",
        "it was returned on 2025-03-10, which is before it was examined (2025-03-20)",
    ]


def test_today_is_no_day_to_come():
    rule = NAMED["date-to-come"]
    assert messages(rule, "dates: {received: 2026-01-01}") == []
    assert messages(rule, "dates: {received: 2026-01-02}") == ["2026-01-02 has not come yet"]


def test_a_range_of_years_that_reads_as_a_month_is_asked_about():
    (told,) = messages(NAMED["date-two-readings"], "history: [{date: 1805-12, what: resewn}]")
    assert told == "`1805-12` is read as December 1805; did you mean a range of years?"
