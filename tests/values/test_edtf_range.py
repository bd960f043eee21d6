"""The days and years that one EDTF date may mean."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casebook.values.calendar import Day, month_length
from casebook.values.edtf_range import GROUPINGS, day_range, year_range
from casebook.values.fault import NotUnderstood


@given(st.integers(0, 9999), st.integers(1, 12))
def test_a_month_runs_from_its_first_to_its_last_day(year: int, month: int) -> None:
    first, last = day_range(f"{year:04d}", f"{month:02d}", None, 0, 7)
    assert first == Day(year, month, 1)
    assert last == Day(year, month, month_length(year, month))


def test_quarters_thirds_and_halves_cover_a_year_without_gap_or_overlap() -> None:
    for codes in (range(33, 37), range(37, 40), range(40, 42)):
        months = [m for code in codes for m in range(GROUPINGS[code][0], GROUPINGS[code][1] + 1)]
        assert months == list(range(1, 13))


def test_seasons_of_the_two_hemispheres_are_half_a_year_apart() -> None:
    for north, south in ((25, 31), (26, 32), (27, 29), (28, 30)):
        assert GROUPINGS[north] == GROUPINGS[south]


@pytest.mark.parametrize(
    ("text", "years"),
    [
        ("1985", (1985, 1985)),
        ("Y-17E7", (-170000000, -170000000)),
        ("1950S1", (1000, 1999)),
        ("1950S4", (1950, 1950)),
        ("Y3388E2S3", (338000, 338999)),
    ],
)
def test_a_year_in_digits_gives_the_years_it_may_mean(text: str, years: tuple[int, int]) -> None:
    assert year_range(text, 0) == years


@pytest.mark.parametrize("pattern", ["0000", "XXX1"])
def test_a_day_that_no_such_year_has_is_refused(pattern: str) -> None:
    with pytest.raises(NotUnderstood, match="no day"):
        day_range(pattern, "02", "30", 0, 10)
