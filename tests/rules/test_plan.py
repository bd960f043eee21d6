"""The plan and the word of the owner."""

from __future__ import annotations

import pytest

from casebook.rules import NAMED
from tests.rules.written import messages


def test_only_the_chosen_option_owes_its_materials():
    options = "[{name: a, outcome: chosen}, {name: b, materials: [linen]}]"
    (told,) = messages(NAMED["materials-of-plan"], f"proposal: {{options: {options}}}")
    assert told == "the proposal `a` does not say which materials it would use"


def test_a_plan_is_not_asked_of_a_case_that_is_still_undecided():
    assert messages(NAMED["plan"], "status: undecided\n# no proposal") == []
    assert messages(NAMED["plan"], "status: proposed\n# no proposal") != []


@pytest.mark.parametrize(
    ("decided", "told"),
    [
        ("{by: [owner]}", "when and how the treatment was agreed to"),
        ("{date: 2025-02, how: letter}", "who agreed to the treatment"),
    ],
)
def test_an_approval_says_who_when_and_how(decided: str, told: str):
    (found,) = messages(NAMED["approval"], f"proposal: {{decided: {decided}}}")
    assert found == f"the record does not say {told}"


def test_the_estimate_may_stand_for_the_whole():
    text = "proposal: {options: [{name: a}]}\ntime: {estimated: 14 h}"
    assert messages(NAMED["time-of-plan"], text) == []


def test_cost_is_asked_for_only_where_there_is_a_client():
    assert messages(NAMED["cost-of-plan"], "proposal: {options: [{name: a}]}") == []
