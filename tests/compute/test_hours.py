"""Hours by hand: three clocks, nights apart, and nothing divided by guess."""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from casebook.compute.figures import total
from casebook.compute.hours import Row, Timesheet, timesheet
from casebook.model.archive import Case
from tests.compute.random_cases import cases
from tests.compute.written import LEDGER, case

SITTING = """
episodes:
  - {{hands: [AM, RT], time: 3 h, steps: [{steps}]}}
"""


def of(text: str) -> Timesheet:
    return timesheet(case(text), str)


def minutes(rows: tuple[Row, ...]) -> dict[tuple[str, ...], int]:
    return {row.keys: row.hours.bench.minutes.value for row in rows}


def test_the_hours_of_the_ledger() -> None:
    found = of(LEDGER)
    # 1 h 30 min + 40 min + 5 min for the trial + 2 h = 90 + 40 + 5 + 120 = 255 min
    assert found.whole.bench.minutes.value == 255
    assert found.whole.bench.minutes.reasons == ("1 step has no time",)
    assert found.whole.bench.minutes.at_least
    assert found.whole.waiting.minutes.value == 20
    assert (found.whole.drying.minutes.value, found.whole.drying.nights.value) == (0, 1)
    assert (found.steps, found.in_words) == (4, 1)


def test_the_hours_of_the_ledger_by_operation_part_sitting_and_hand() -> None:
    found = of(LEDGER)
    assert minutes(found.by_operation) == {(): 0, ("line",): 165, ("remove",): 90}
    assert minutes(found.by_episode) == {("2",): 255}
    assert minutes(found.by_hand) == {("AM",): 135, ("AM", "RT"): 120}
    assert minutes(found.by_part) == {
        (): 0,
        ("board 1", "board 2", "spine"): 120,
        ("spine",): 135,
    }
    assert [row.keys for row in found.by_hand if row.shared] == [("AM", "RT")]


def test_the_time_of_a_sitting_counts_where_no_step_has_one() -> None:
    found = of(SITTING.format(steps="washed it, {do: dry, treats: sheet}"))
    assert found.whole.bench.minutes.value == 180
    assert found.whole.bench.minutes.reasons == ("1 sitting is timed as a whole",)
    assert minutes(found.by_hand) == {("AM", "RT"): 180}
    assert minutes(found.by_operation) == {(): 180, ("dry",): 0}


def test_the_time_of_a_sitting_is_left_aside_where_steps_have_their_own() -> None:
    found = of(SITTING.format(steps="{do: dry, time: 20 min}, {do: wash}"))
    assert found.whole.bench.minutes.value == 20
    assert found.whole.bench.minutes.reasons == (
        "1 step has no time",
        "1 sitting has a time of its own that is not added to its steps",
    )


@pytest.mark.parametrize(
    ("time", "value", "flags"),
    [
        ("about 2 h", 120, (False, True)),
        ("not recorded", 0, (True, False)),
        ("none", 0, (False,) * 2),
    ],
)
def test_a_time_keeps_its_doubt(time: str, value: int, flags: tuple[bool, bool]) -> None:
    found = of(f"steps: [{{do: wash, time: {time}}}]").whole.bench.minutes
    assert (found.value, (found.at_least, found.about)) == (value, flags)


def test_a_drying_without_a_length_is_at_least_nothing() -> None:
    found = of("steps: [{do: wash, dries: under blotter}, {do: wash, waits: unknown}]").whole
    assert found.drying.minutes.reasons == ("1 drying has no recorded length",)
    assert found.waiting.minutes.reasons == ("1 wait has no recorded length",)


def test_a_lump_is_set_beside_the_steps_and_never_added() -> None:
    found = of("time: {estimated: 92 h, spent: 113 h}\nsteps: [{do: wash, time: 1 h}]")
    assert found.whole.bench.minutes.value == 60
    assert found.plan.planned is not None
    assert found.plan.spent is not None
    assert found.plan.actual is not None
    assert (found.plan.planned.value, found.plan.spent.value) == (92 * 60, 113 * 60)
    assert (found.plan.actual.value, found.plan.by_lump) == (60, False)


def test_the_lump_is_the_actual_time_where_nothing_else_is_recorded() -> None:
    found = of("time: 113 h\nsteps: [{do: wash}]").plan
    assert found.actual is not None
    assert (found.actual.value, found.by_lump, found.planned) == (113 * 60, True, None)


def test_the_plan_of_the_ledger_is_the_chosen_option_against_the_steps() -> None:
    found = of(LEDGER).plan
    assert found.planned is not None
    assert found.actual is not None
    assert (found.planned.value, found.actual.value) == (14 * 60, 255)


def test_hands_said_to_be_unknown_are_not_taken_from_the_sitting() -> None:
    found = of("episodes: [{hands: AM, steps: [{do: wash, time: 1 h, hands: unknown}]}]")
    assert minutes(found.by_hand) == {(): 60}


@settings(max_examples=60, deadline=None)
@given(cases())
def test_the_rows_of_each_table_together_hold_the_whole(one: Case) -> None:
    found = timesheet(one, str)
    for rows in (found.by_operation, found.by_part, found.by_episode, found.by_hand):
        assert total(row.hours.bench.minutes for row in rows) == found.whole.bench.minutes


def test_hands_with_minutes_of_their_own_share_the_step() -> None:
    found = of(
        "steps: [{do: tool, treats: spine, time: 2 h,"
        " hands: [{who: AM, time: 20 min}, {who: RT, time: 1 h 40 min}]}]"
    )
    assert minutes(found.by_hand) == {("AM",): 20, ("RT",): 100}
    assert minutes(found.by_operation) == {("tool",): 120}


def test_in_a_run_a_time_for_each_counts_for_each_and_one_for_all_counts_once() -> None:
    found = of(
        "steps: [{each: [a, b, c], hands: AM, steps: [{do: clean, treats: each, time: 10 min each},"
        " {do: press, treats: each, time: 1 h all, dries: overnight each}]}]"
    )
    # 3 × 10 min + 60 min; three nights
    assert minutes(found.by_operation) == {("clean",): 30, ("press",): 60}
    assert minutes(found.by_hand) == {("AM",): 90}
    assert found.whole.drying.nights.value == 3
    assert minutes(found.by_part) == {("a",): 10, ("a", "b", "c"): 60, ("b",): 10, ("c",): 10}


def test_the_chosen_options_of_several_questions_are_planned_together() -> None:
    plan = of(
        "proposal: {questions: [{options: [{time: 10 h, outcome: chosen}, {time: 99 h}]},"
        " {options: [{time: none, outcome: chosen}]}, {options: [{time: 2 h, outcome: chosen}]}]}"
    ).plan
    assert plan.planned is not None
    assert (plan.planned.value, plan.planned.reasons) == (720, ())


def test_lumps_for_the_whole_stand_beside_what_was_planned() -> None:
    plan = of(
        "proposal: {options: [{time: 10 h, outcome: chosen}]}\ntime: {estimated: 90 h, spent: 113 h}"
    ).plan
    assert plan.planned and plan.estimated and plan.spent
    assert [one.value for one in (plan.planned, plan.estimated, plan.spent)] == [600, 5400, 6780]
