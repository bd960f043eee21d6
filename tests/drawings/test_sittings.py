"""Sittings of a case on the calendar."""

from __future__ import annotations

import datetime

from casebook.compute.hours import timesheet
from casebook.drawings.sittings import Rest, days, sittings
from casebook.values.dates import Date
from tests.compute.written import case

TWO = """
episodes:
  - episode: 1
    title: Linings
    date: 2025-03-13/2025-03-18
    steps:
      - {do: line, date: 2025-03-14, adds: a, onto: spine, time: 45 min, dries: 3 nights}
      - {do: line, adds: b, onto: a, time: 15 min, dries: 2 h}
  - {episode: 2, steps: [{words: "looked", time: 5 min}]}
"""
MARCH = datetime.date(2025, 3, 1).toordinal()


def _two():
    written = case(TWO)
    return sittings(written, timesheet(written, lambda word: word))


def test_a_sitting_has_its_days_its_hours_and_the_drying_from_the_day_of_its_step():
    first = _two()[0]
    assert (first.number, first.title) == ("1", "Linings")
    assert (first.first, first.last) == (MARCH + 12, MARCH + 17)
    assert first.bench.minutes.value == 60
    assert first.rests == (Rest(MARCH + 13, 3),)
    assert first.drying.nights.value == 3


def test_a_sitting_without_a_date_has_no_day():
    assert (_two()[1].first, _two()[1].last) == (None, None)


def test_the_days_of_a_date():
    assert days(None) == (None, None)
    assert days(Date.parse("2025-03")) == (MARCH, MARCH + 30)
    assert days(Date.parse("before 1850")) == (None, None)
