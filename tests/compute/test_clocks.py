"""The three clocks of a step, by hand."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casebook.compute.clocks import (
    NO_HOURS,
    STOPPED,
    Clock,
    Hours,
    added,
    added_up,
    by_hand,
    clock,
    hours_of,
    is_timed,
    on_trials,
)
from casebook.compute.figures import Figure
from casebook.compute.steps import Placed
from casebook.model.treatment import Step
from casebook.values.durations import Duration
from tests.model.reads import reads


def placed(text: str, run: bool = False) -> Placed:
    return Placed("1", reads(Step, text), (), run)


def hours(text: str, run: bool = False) -> Hours:
    return hours_of(placed(text, run))


def minutes(one: Clock) -> tuple[int, int]:
    return one.minutes.value, one.nights.value


def test_bench_waiting_and_drying_are_kept_apart():
    found = hours("{do: wash, time: 1 h, waits: 20 min, dries: [2 h, overnight]}")
    assert minutes(found.bench) == (60, 0)
    assert minutes(found.waiting) == (20, 0)
    assert minutes(found.drying) == (120, 1)


def test_the_trials_of_a_step_are_added_to_its_bench_time():
    one = placed("{do: press, time: 30 min, tried: [{what: a, time: 5 min}, {what: b}]}")
    assert minutes(hours_of(one).bench) == (35, 0)
    assert minutes(on_trials(one)) == (5, 0)


@pytest.mark.parametrize(
    ("step", "reason"),
    [
        ("{do: wash}", "1 step has no time"),
        ("{do: wash, time: not recorded}", "1 step has no time"),
        ("{do: wash, time: unknown}", "1 step has no time"),
    ],
)
def test_a_step_without_a_time_makes_the_sum_a_lower_bound(step: str, reason: str):
    assert hours(step).bench.minutes.reasons == (reason,)


def test_a_time_that_is_none_is_none_and_no_doubt():
    found = hours("{do: wash, time: none, waits: none, dries: none}")
    assert found == NO_HOURS


def test_a_drying_that_nobody_timed_makes_the_sum_a_lower_bound():
    assert hours("{do: wash, dries: not recorded}").drying.minutes.at_least
    assert hours("{do: wash, dries: under blotter}").drying.minutes.at_least


@pytest.mark.parametrize(
    ("step", "waited", "reason"),
    [
        ("{bath: {liquid: water, each: 15 min, times: 5}}", 75, "taken from how long"),
        ("{agent: {is: water, lasts: 20 min, times: 3}}", 60, "taken from how long"),
        ("{agent: {is: water, lasts: 20 min}}", 20, "taken from how long"),
        ("{bath: {liquid: water, each: 15 min, times: unknown}}", 15, "one round"),
    ],
)
def test_a_wait_that_is_left_out_is_as_long_as_the_bath_or_the_agent_lasted(
    step: str, waited: int, reason: str
):
    found = hours(step).waiting
    assert found.minutes.value == waited
    assert reason in found.minutes.reasons[0]


def test_a_wait_that_is_noted_stands_for_itself():
    found = hours("{waits: 1 h, agent: {is: water, lasts: 20 min, times: 3}}").waiting
    assert (found.minutes.value, found.minutes.reasons) == (60, ())


def test_hands_with_minutes_of_their_own_make_the_time_of_the_step():
    text = "{do: tool, time: 9 h, hands: [{who: AM, time: 20 min}, {who: RT, time: 1 h}]}"
    one = placed(text)
    assert [(who, share.minutes.value) for who, share in by_hand(one)] == [("AM", 20), ("RT", 60)]
    assert minutes(hours_of(one).bench) == (80, 0)


def test_where_one_hand_has_no_minutes_the_step_s_own_time_counts():
    one = placed("{do: tool, time: 2 h, hands: [{who: AM, time: 20 min}, RT]}")
    assert by_hand(one) == ()
    assert minutes(hours_of(one).bench) == (120, 0)


def test_a_step_is_timed_by_its_own_time_or_by_that_of_its_hands():
    assert is_timed(reads(Step, "{do: wash, time: 1 h}"))
    assert is_timed(reads(Step, "{do: wash, hands: [{who: AM, time: 1 h}]}"))
    assert not is_timed(reads(Step, "{do: wash, time: not recorded}"))


def test_in_a_run_a_time_that_says_neither_each_nor_all_is_a_lower_bound():
    assert hours("{do: wash, time: 20 min}", run=True).bench.minutes.at_least
    assert not hours("{do: wash, time: 20 min each}", run=True).bench.minutes.at_least


def test_a_step_in_a_sitting_timed_as_a_whole_adds_nothing_to_the_bench():
    found = hours_of(placed("{do: wash, time: 1 h, dries: 1 h}"), in_whole=True)
    assert found.bench == STOPPED
    assert minutes(found.drying) == (60, 0)


def test_a_clock_without_a_time_never_ran():
    assert clock(None) == STOPPED
    assert minutes(clock(Duration.parse("2 nights and 3 h"))) == (180, 2)


TIMES = st.lists(st.integers(min_value=0, max_value=600), max_size=6)


@given(TIMES)
def test_clocks_add_up_exactly_in_any_order(times: list[int]):
    clocks = [Clock(Figure(one)) for one in times]
    assert added_up(clocks) == added_up(reversed(clocks))
    assert added_up(clocks).minutes.value == sum(times)
    whole = added(Hours(bench=one) for one in clocks)
    assert (whole.bench.minutes.value, whole.drying) == (sum(times), STOPPED)
