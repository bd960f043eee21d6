"""Rules about steps told together."""

from __future__ import annotations

import pytest

from casebook.rules import NAMED
from tests.rules.written import messages

RUN = "steps: [{{each: [board 1, board 2], {more}steps: [{{do: clean, treats: each{inside}}}]}}]"


def of(rule: str, inside: str = "", more: str = "") -> list[str]:
    return messages(NAMED[rule], RUN.format(inside=inside, more=more))


@pytest.mark.parametrize("key", ["time: 1 h", "waits: 1 h", "dries: overnight"])
def test_every_clock_in_a_run_is_asked_of_what_it_is(key: str):
    (told,) = of("time-of-run", f", {key}")
    assert told.startswith(f"`{key.partition(':')[0]}` does not say")
    assert of("time-of-run", f", {key} each") == []


def test_outside_a_run_a_time_is_the_step_s_own():
    assert messages(NAMED["time-of-run"], "steps: [{do: clean, treats: spine, time: 1 h}]") == []


@pytest.mark.parametrize(
    "more", ["because: so, ", "hands: AM, ", "date: 2025-03, ", "photo: p1, ", "beside: yes, "]
)
def test_what_is_said_of_a_run_as_a_whole_may_stand_beside_its_steps(more: str):
    assert of("keys-of-run", more=more) == []


@pytest.mark.parametrize("more", ["time: 1 h, ", "material: linen, ", "do: clean, "])
def test_what_is_said_of_the_work_stands_in_the_steps(more: str):
    assert len(of("keys-of-run", more=more)) == 1


def test_a_run_without_members_or_without_steps_is_told():
    rule = NAMED["members-of-run"]
    assert messages(rule, "steps: [{each: [board 1], do: clean}]") == ["this run has no steps"]
    assert len(messages(rule, "steps: [{each: not recorded, steps: [{do: clean}]}]")) == 1


def test_a_run_within_a_run_is_looked_at_too():
    inner = "steps: [{each: [a], steps: [{steps: [{do: clean}]}]}]"
    assert len(messages(NAMED["members-of-run"], inner)) == 1


@pytest.mark.parametrize(
    ("differs", "told"),
    [
        ("{in: board 9, step: clean, left-out: yes}", "`board 9` is not among the members"),
        ("{in: board 1, step: wash, left-out: yes}", "no step of this run is `wash`"),
        ("{in: board 1, left-out: yes}", "this does not say which step"),
    ],
)
def test_an_exception_that_fits_nothing_is_told(differs: str, told: str):
    (message,) = of("exception-of-run", more=f"differs: [{differs}], ")
    assert message.startswith(told)


@pytest.mark.parametrize("step", ["clean", "'1'"])
def test_an_exception_may_name_the_operation_or_the_number(step: str):
    assert of("exception-of-run", more=f"differs: [{{in: board 2, step: {step}}}], ") == []


@pytest.mark.parametrize(
    ("time", "told"),
    [
        ("1 h", 1),
        ("40 min", 0),
        ("about 1 h", 0),
        ("30-50 min", 0),
        ("at least 20 min", 0),
        ("not recorded", 0),
        ("2 nights", 0),
    ],
)
def test_the_minutes_of_hands_are_held_against_the_time(time: str, told: int):
    hands = "hands: [{who: AM, time: 15 min}, {who: RT, time: 25 min}]"
    step = f"steps: [{{do: clean, treats: spine, time: {time}, {hands}}}]"
    assert len(messages(NAMED["minutes-of-hands"], step)) == told


def test_where_one_hand_has_no_minutes_nothing_is_compared():
    step = "steps: [{do: clean, treats: spine, time: 1 h, hands: [{who: AM, time: 15 min}, RT]}]"
    assert messages(NAMED["minutes-of-hands"], step) == []


@pytest.mark.parametrize("order", ["not recorded", "unknown", "not read (notes go on)"])
def test_an_order_that_is_not_known_may_be_said(order: str):
    text = f"episodes: [{{order: {order}, hands: AM, date: 2025-03, steps: [cleaned]}}]"
    assert messages(NAMED["order-of-steps"], text) == []


@pytest.mark.parametrize("order", ["none", "unnamed", "as written"])
def test_any_other_order_is_told(order: str):
    text = f"episodes: [{{order: {order}, hands: AM, date: 2025-03, steps: [cleaned]}}]"
    assert len(messages(NAMED["order-of-steps"], text)) == 1
