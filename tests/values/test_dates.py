"""The date of a record: read, kept, compared and shown."""

from __future__ import annotations

import csv
import dataclasses
import datetime
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casebook.values.calendar import Day
from casebook.values.dates import LONGEST, Date
from casebook.values.fault import NotUnderstood
from tests.values.edtf_texts import EDTF_TEXTS
from tests.values.word_texts import FRAGMENTS, WORD_TEXTS

with (
    Path(__file__)
    .parents[1]
    .joinpath("reference/edtf_examples.csv")
    .open(encoding="utf-8", newline="") as _file
):
    ROWS = list(csv.DictReader(_file))
WORDS_THOUGH_NOT_EDTF = {"1890-1899": "1890/1899", "c.1890": "1890~"}


@given(EDTF_TEXTS)
def test_an_edtf_date_comes_back_from_its_canonical_text(text: str) -> None:
    date = Date.parse(text)
    assert (str(date), date.canonical()) == (text, text)
    assert Date.parse(date.canonical()) == date


@given(WORD_TEXTS)
def test_a_date_in_words_comes_back_from_its_canonical_text_and_its_shown_one(text: str) -> None:
    try:
        date = Date.parse(f"  {text}\n")
    except NotUnderstood as fault:
        assert fault.message == "the end comes before the start"
        return
    assert str(date) == text
    assert Date.parse(date.canonical()) == date
    assert Date.parse(date.canonical()).show() == date.show()


@given(st.text() | FRAGMENTS)
def test_any_text_is_read_or_not_understood_and_nothing_else(text: str) -> None:
    try:
        date = Date.parse(text)
    except NotUnderstood as fault:
        assert fault.message
        assert 0 <= fault.start < fault.end <= max(len(text), 1) + 1
    else:
        assert Date.parse(date.canonical()) == date
        assert date.show()


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["edtf"])
def test_a_published_example_is_a_date_and_an_excluded_one_is_not(row: dict[str, str]) -> None:
    text = row["edtf"]
    if row["level"] != "I":
        assert Date.parse(text).edtf == text
    elif text in WORDS_THOUGH_NOT_EDTF:
        assert Date.parse(text).edtf == WORDS_THOUGH_NOT_EDTF[text]
    else:
        with pytest.raises(NotUnderstood):
            Date.parse(text)


def test_how_a_date_was_printed_is_kept_but_no_part_of_its_equality() -> None:
    assert Date.parse("ca. 1780") == Date.parse("1780~")
    assert str(Date.parse(" ca. 1780 ")) == "ca. 1780"
    assert Date.parse("probably 1850") != Date.parse("1850?")


def test_a_date_cannot_be_changed() -> None:
    with pytest.raises(dataclasses.FrozenInstanceError):
        Date.parse("1850").edtf = "1851"  # type: ignore[misc]


def test_offsets_count_the_spaces_before_a_date() -> None:
    text = "   14 Mrch 2025"
    with pytest.raises(NotUnderstood) as caught:
        Date.parse(text)
    assert text[caught.value.start : caught.value.end] == "Mrch"


def test_a_narrow_or_fixed_space_is_a_space() -> None:
    assert Date.parse("14\u00a0March\u202f2025") == Date.parse("2025-03-14")


@pytest.mark.parametrize("text", ["", "  ", "1850 " * LONGEST])
def test_nothing_and_prose_are_refused(text: str) -> None:
    with pytest.raises(NotUnderstood):
        Date.parse(text)


def test_days_are_given_to_the_standard_library_where_they_fit() -> None:
    date = Date.parse("2025-03-14/2025-03-15")
    assert date.earliest_day() == datetime.date(2025, 3, 14)
    assert date.latest_day() == datetime.date(2025, 3, 15)
    assert Date.parse("Y170000002").earliest_day() is None
    assert Date.parse("Y170000002").earliest == Day(170000002, 1, 1)
    assert Date.parse("1985/..").latest_day() is None


def test_only_a_day_without_doubt_is_one_exact_day() -> None:
    exact = [
        text
        for text in ("2025-03-14", "2025-03-14~", "2025-03", "2025-03-14/..")
        if Date.parse(text).is_day
    ]
    assert exact == ["2025-03-14"]


def test_a_date_knows_the_decades_it_spans() -> None:
    assert Date.parse("c. 1780").decades() == (1780,)
    assert Date.parse("1778/1795").decades() == (1770, 1780, 1790)
    assert Date.parse("1778/1795").decade() is None
    assert Date.parse("1780s").decade() == 1780
    assert len(Date.parse("19th century").decades()) == 10
    assert Date.parse("1XXX").decades() == Date.parse("before 1850").decades() == ()
    assert Date.parse("-0043").decade() == -50


def test_nights_are_counted_from_the_first_to_the_last_day() -> None:
    assert Date.parse("2025-03-14").nights() == 0
    assert Date.parse("2024-02-28/2024-03-01").nights() == 2
    assert Date.parse("2025/..").nights() is None


def test_before_is_sure_only_when_the_days_do_not_overlap() -> None:
    spring, march, april = (Date.parse(t) for t in ("spring 2025", "March 2025", "April 2025"))
    assert march.before(april) and april.after(march)
    assert not march.before(spring) and not spring.before(march)
    assert Date.parse("before 1850").before(Date.parse("1850"))
    assert not Date.parse("1850").before(Date.parse("before 1850"))
    assert not Date.parse("1985/..").before(Date.parse("2025"))


def test_a_month_that_looks_like_a_range_of_years_is_told() -> None:
    assert Date.parse("1805-12").other_reading == "1805/1812"
    assert Date.parse("1820-25").other_reading == "1820/1825"
    assert Date.parse("1890-05").other_reading == Date.parse("1805–1812").other_reading == ""
