"""Nights of drying are held against the dates of their sitting."""

from __future__ import annotations

import pytest

from tests.compute.layers.told import only, played

AFTER = ", {do: clean, treats: spine}"


def kinds(*episodes: str, more: str = "") -> list[str]:
    listed = "\n".join(f"  - {{{one}}}" for one in episodes)
    return [one.kind.value for one in played(f"{more}\nepisodes:\n{listed}").faults]


def sitting(date: str, dries: str, after: str = AFTER, step: str = "") -> str:
    return f"date: {date}, steps: [{{do: clean, treats: spine, dries: {dries}{step}}}{after}]"


def test_three_nights_in_a_sitting_of_one_day_are_told_with_what_to_write() -> None:
    text = f"episodes: [{{{sitting('2025-03-14', '3 nights')}}}]"
    found = only(played(text))
    assert found.message == "it dries for 3 nights, and its dates are one day"
    assert "2025-03-14/2025-03-17" in found.hint


@pytest.mark.parametrize(
    ("date", "dries", "told"),
    [
        ("2025-03-14", "overnight", []),
        ("2025-03-14/2025-03-15", "3 nights", ["nights"]),
        ("2025-03-14/2025-03-17", "3 nights", []),
        ("2025-03-14/2025-03-15", "[overnight under blotter, 2 nights under weights]", ["nights"]),
        ("2025-03", "3 nights", []),
        ("2025-03-14?", "3 nights", []),
        ("2025-03-14~", "3 nights", []),
        ("not recorded", "3 nights", []),
        ("2025-03-14", "2 h", []),
    ],
)
def test_nights_against_days(date: str, dries: str, told: list[str]) -> None:
    assert kinds(sitting(date, dries)) == told


def test_what_dries_last_may_do_so_until_the_next_sitting() -> None:
    first = sitting("2025-03-14", "3 nights", after="")
    assert kinds(first, "date: 2025-03-18, steps: [cleaned]") == []
    assert kinds(first, "date: 2025-03-15, steps: [cleaned]") == ["nights"]
    assert kinds(first, "steps: [{words: cleaned, date: 2025-03-18}]") == []


def test_what_dries_last_of_all_may_do_so_until_the_return() -> None:
    last = sitting("2025-03-14", "3 nights", after="")
    assert kinds(last, more="dates: {returned: 2025-04-02}") == []
    assert kinds(last, more="dates: {returned: 2025-03-15}") == ["nights"]
    assert kinds(last) == ["nights"]


def test_a_step_of_its_own_date_has_from_then_to_the_end_of_the_sitting() -> None:
    long = "2025-03-10/2025-03-17"
    assert kinds(sitting(long, "3 nights", step=", date: 2025-03-14")) == []
    assert kinds(sitting(long, "5 nights", step=", date: 2025-03-14")) == ["nights"]


def test_in_an_unknown_order_any_step_may_be_the_last() -> None:
    first = f"order: not recorded, {sitting('2025-03-14', '3 nights')}"
    assert kinds(first, "date: 2025-03-18, steps: [cleaned]") == []
    assert kinds(first) == ["nights"]
