"""Durations are exact minutes; nights are counted beside them."""

from __future__ import annotations

import csv
from fractions import Fraction
from pathlib import Path

import pytest

from casebook.values.durations import Duration
from casebook.values.fault import NotUnderstood

with (
    Path(__file__)
    .parents[1]
    .joinpath("reference/iso8601_durations.csv")
    .open(encoding="utf-8", newline="") as _file
):
    ROWS = list(csv.DictReader(_file))
BEYOND = {  # ISO 8601 allows them by the notes of the file, whose own column is about the RFC
    "PT1H30S": Fraction(121, 2),
    "PT1.5H": Fraction(90),
    "P1W2D": Fraction(9 * 24 * 60),
    "pt1h": Fraction(60),
    "1H": Fraction(60),  # the last as plain words: one hour
}


def _named(row: dict[str, str]) -> str:
    return f"{row['text']} [{row['source']}]"


@pytest.mark.parametrize("row", [row for row in ROWS if row["minutes"]], ids=_named)
def test_a_published_duration_is_so_many_minutes(row: dict[str, str]) -> None:
    """Source: RFC 3339, appendix A, and the notes named in the row."""
    assert Duration.parse(row["text"]).exact == Fraction(row["minutes"])


@pytest.mark.parametrize("text", BEYOND)
def test_what_the_rfc_leaves_out_is_read_where_it_is_clear(text: str) -> None:
    """Source: the column `note` of the reference file, for what ISO 8601 allows."""
    assert text in {row["text"] for row in ROWS}
    assert Duration.parse(text).exact == BEYOND[text]


@pytest.mark.parametrize(
    "row", [row for row in ROWS if not row["minutes"] and row["text"] not in BEYOND], ids=_named
)
def test_a_duration_of_no_fixed_length_or_form_is_refused(row: dict[str, str]) -> None:
    with pytest.raises(NotUnderstood) as caught:
        Duration.parse(row["text"])
    assert caught.value.hint


def test_every_row_of_the_reference_is_used() -> None:
    assert len(ROWS) == 23
    assert sum(1 for row in ROWS if row["minutes"]) == 10


@pytest.mark.parametrize(
    ("text", "minutes"),
    [
        ("1 h 30 min", "90"),
        ("90 min", "90"),
        ("1h20", "80"),
        ("1 h 20", "80"),
        ("1 hr", "60"),
        ("2 hours", "120"),
        ("3 days", "4320"),
        ("2 weeks", "20160"),
        ("30 s", "1/2"),
        ("1 min 20 s", "4/3"),
        ("1.5 h", "90"),
        ("1 1/2 hours", "90"),
        ("half an hour", "30"),
        ("an hour", "60"),
        ("2 days 3 h", "3060"),
        ("about PT1H", "60"),
        ("PT0,5H", "30"),
    ],
)
def test_a_duration_in_the_ways_people_write_it(text: str, minutes: str) -> None:
    value = Duration.parse(text)
    assert (value.exact, value.nights) == (Fraction(minutes), 0)


@pytest.mark.parametrize(
    ("text", "nights", "low", "high"),
    [
        ("overnight", 1, 0, 0),
        ("Over night", 1, 0, 0),
        ("1 night", 1, 0, 0),
        ("2 nights", 2, 0, 0),
        ("two nights", 2, 0, 0),
        ("at least 2 nights", 2, 0, None),
        ("up to 2 nights", 2, None, 0),
        ("overnight and 2 h", 1, 120, 120),
        ("2 nights + 1-2 h", 2, 60, 120),
        ("overnight (doubtful)", 1, 0, 0),
    ],
)
def test_nights_are_counted_and_never_made_minutes(
    text: str, nights: int, low: Fraction | None, high: Fraction | None
) -> None:
    value = Duration.parse(text)
    assert (value.nights, value.low, value.high) == (nights, low, high)


def test_one_night_is_not_no_time() -> None:
    assert Duration.parse("overnight") != Duration.parse("0 min")


@pytest.mark.parametrize(
    ("text", "words", "hint"),
    [
        ("1:20", "1:20", "1 h 20 min"),
        ("about 1:20 h", "1:20", "1 h 20 min"),
        ("a weekend", "weekend", "2 nights"),
        ("2 months", "months", "days or weeks"),
        ("a fortnight", "fortnight", "2 weeks"),
        ("3 working days", "working days", "at the bench"),
        ("2-3 nights", "2-3 nights", "at least 2 nights"),
        ("P1Y", "P1Y", "PT1H30M"),
        ("90", "90", "90 min"),
        ("1 h 90 min", "1 h 90 min", "less than one"),
        ("overnight under", "under", "overnight"),
        ("PT1.5H3M", "PT1.5H3M", "PT1H30M"),
        ("-PT1H", "-PT1H", "PT1H30M"),
    ],
)
def test_what_may_mean_several_lengths_is_refused_with_a_way_out(
    text: str, words: str, hint: str
) -> None:
    with pytest.raises(NotUnderstood) as caught:
        Duration.parse(text)
    assert text[caught.value.start : caught.value.end] == words
    assert hint in caught.value.hint


@pytest.mark.parametrize(
    ("text", "canonical"),
    [
        ("1 h 30 min", "90 min"),
        ("overnight", "1 night"),
        ("min. 2 nights", "at least 2 nights"),
        ("c. 2 nights and 1 h", "about 2 nights and 60 min"),
        ("up to 1 h", "up to 60 min"),
    ],
)
def test_the_canonical_form_is_in_nights_and_minutes(text: str, canonical: str) -> None:
    assert Duration.parse(text).canonical() == canonical
