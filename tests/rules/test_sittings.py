"""Every sitting has a date, and says who did the work."""

from __future__ import annotations

import pytest

from casebook.rules import NAMED
from tests.rules.written import messages

BOTH = [("hands", "AM", "who did the work"), ("date-of-sitting", "2025-03", "no date")]


@pytest.mark.parametrize(("rule", "value", "lack"), BOTH)
def test_hands_and_dates_may_stand_at_the_sitting_or_at_each_step(rule, value, lack):
    both = "{words: cleaned, hands: AM, date: 2025-03}"
    assert messages(NAMED[rule], f"episodes: [{{steps: [{both}]}}]") == []
    (told,) = messages(NAMED[rule], f"episodes: [{{steps: [{both}, cleaned]}}]")
    assert lack in told
    (loose,) = messages(NAMED[rule], f"steps: [{both}, cleaned]")
    assert lack in loose


@pytest.mark.parametrize(("rule", "value", "lack"), BOTH)
def test_a_run_says_it_for_its_steps_and_its_steps_for_the_run(rule, value, lack):
    key = "hands" if rule == "hands" else "date"
    for_all = f"steps: [{{each: [board 1], {key}: {value}, steps: [{{do: clean, treats: each}}]}}]"
    by_step = f"steps: [{{each: [board 1], steps: [{{do: clean, treats: each, {key}: {value}}}]}}]"
    neither = "steps: [{each: [board 1], steps: [{do: clean, treats: each}]}]"
    assert messages(NAMED[rule], for_all) == []
    assert messages(NAMED[rule], by_step) == []
    (told,) = messages(NAMED[rule], neither)
    assert lack in told
