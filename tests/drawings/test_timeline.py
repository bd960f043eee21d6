"""Sittings and drying on a calendar."""

from __future__ import annotations

import re
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casebook.compute.clocks import Clock
from casebook.compute.figures import Figure
from casebook.drawings.sittings import Rest, Sitting
from casebook.drawings.timeline import Axis, apart, timeline
from tests.drawings.structures import parsed


def _sitting(number="1", first=739_000, last=739_001, minutes=60, nights=0, *rests):
    drying = Clock(nights=Figure(nights))
    return Sitting(number, "Title", first, last, Clock(Figure(minutes)), drying, rests)


def test_days_are_in_proportion_on_the_axis():
    axis = Axis(100, 109)
    assert axis.at(100) == 44
    assert axis.at(105) - axis.at(104) == pytest.approx((axis.at(110) - axis.at(100)) / 10)


def test_the_words_say_days_hours_and_drying():
    drawing = timeline(
        [_sitting("1", 739_000, 739_001, 75, 2, Rest(739_001, 2)), _sitting("2", None, None, 0)],
        "x",
    )
    assert drawing is not None
    parsed(drawing)
    assert [row.text for row in drawing.alternative] == [
        "sitting 1, Title (24–25 April 2024): 1 h 15 min at the bench; dried 2 nights",
        "sitting 2, Title (day not recorded): time at the bench not recorded",
    ]
    assert drawing.note == "Not drawn, since no day is known: 1."


def test_without_any_day_there_is_no_calendar():
    assert timeline([_sitting(first=None, last=None)], "x") is None


def test_columns_are_as_high_as_the_hours():
    drawing = timeline(
        [_sitting("1", 739_000, 739_000, 120), _sitting("2", 739_009, 739_009, 60)], "x"
    )
    assert drawing is not None
    heights = [float(one) for one in re.findall(r"v-([\d.]+)h16v", drawing.svg)]
    assert heights == [130, 65]


@given(st.lists(st.floats(0, 300), max_size=30))
def test_numbers_keep_apart_within_the_drawing_and_in_order(wanted):
    found = apart(wanted, 20, 0, 300)
    step = min(20, 300 / max(len(wanted) - 1, 1))
    order = sorted(range(len(wanted)), key=lambda n: (wanted[n], n))
    placed = [found[n] for n in order]
    assert all(b - a > step - 0.001 for a, b in pairwise(placed))
    assert all(-0.001 <= one <= 300.001 for one in placed)


@given(
    st.lists(
        st.builds(
            _sitting,
            st.just("7"),
            st.integers(700_000, 700_400),
            st.integers(700_401, 700_800),
            st.integers(0, 9000),
        ),
        min_size=1,
        max_size=9,
    )
)
def test_any_sittings_with_work_or_drying_can_be_drawn(every):
    drawing = timeline(every, "x")
    if drawing is None:
        assert not any(one.bench.minutes.value or one.rests for one in every)
        return
    parsed(drawing)


def test_sittings_without_work_or_drying_on_record_are_no_chart():
    assert timeline([Sitting("1", "", 9, 9, Clock(), Clock())], "x") is None
