"""Wet treatment: tested before, and not against a test."""

from __future__ import annotations

import pytest

from casebook.diagnostics import Severity
from casebook.rules import NAMED
from tests.rules.written import look, messages

BEFORE = NAMED["test-before-wet"]
AGAINST = NAMED["wet-against-test"]
BLEEDS = "{id: red-bleeds, part: endband head, of: red silk, agent: water, result: bleeds}"
HOLDS = "{id: ink-holds, part: leaf, agent: water, times: 3, result: no change}"


def before(step: str, tests: str = f"[{BLEEDS}]") -> list[str]:
    return messages(BEFORE, f"steps: [{step}]\nepisodes: []\ntests: {tests}")


@pytest.mark.parametrize(
    "step",
    [
        "{do: wash, treats: section}",
        "{treats: leaf, bath: deionised-water}",
        "{removes: old-glue, agent: {is: water, carrier: methyl-cellulose, applied: poultice}}",
        "{removes: old-glue, agent: acetone}",
        "{treats: leaf, ways: [{scope: margins, agent: water}]}",
        "{puts-back: endband tail, onto: spine, adhesive: wheat-starch-paste}",
    ],
)
def test_what_is_wetted_was_tested_first(step: str):
    (told,) = before(step)
    assert "no test says that it can stand it" in told


@pytest.mark.parametrize(
    "step",
    [
        "{do: dry-clean, treats: leaf, agent: rubber-sponge}",
        "{do: wash, treats: section, allowed-by: ink-holds}",
        "{do: wash, treats: endband head}",
        "{puts-back: endband head, onto: spine, adhesive: none}",
        "{puts-back: title-label, onto: spine, adhesive: wheat-starch-paste}",
        "washed the leaves",
    ],
)
def test_what_is_dry_or_tested_is_let_pass(step: str):
    assert before(step) == []


def test_a_test_of_leaves_speaks_for_their_folds_and_not_for_another_solvent():
    assert before("{removes: old-glue, agent: water}", f"[{HOLDS}]") == []
    assert before("{removes: old-glue, agent: acetone}", f"[{HOLDS}]")


def test_what_the_treatment_added_itself_needs_no_test():
    assert before("{adds: patch, onto: leaf}, {treats: patch, agent: water}", "[]") == []


def test_a_part_is_asked_for_once_however_often_it_is_wetted():
    assert len(before("{do: wash, treats: leaf}, {do: rinse, treats: leaf}", "[]")) == 1
    assert len(before("{do: wash, treats: leaf}, {do: wash, treats: strap}", "[]")) == 2


def test_that_there_are_no_tests_needs_a_reason():
    step = "{do: wash, treats: leaf}"
    assert before(step, "none")
    assert before(step, "none (blank leaves, to be pulped)") == []


def test_gaps_in_bulk_answer_for_tests_of_an_old_record():
    step = "record: from-publication\nsteps: [{do: wash, treats: leaf}]\nepisodes: []\ntests: []\n"
    assert messages(BEFORE, step)
    assert messages(BEFORE, step + "gaps: {not read: [tests]}") == []


def against(step: str, *tests: str) -> list[str]:
    made = ", ".join(tests or (BLEEDS,))
    return messages(AGAINST, f"steps: [{step}]\nepisodes: []\ntests: [{made}]")


def test_what_bled_is_not_wetted():
    told = ["this step wets the red silk of `endband head`, and a test says of it: bleeds"]
    assert against("{puts-back: endband head, onto: spine, adhesive: paste}") == told
    assert against("{treats: endband, agent: water}") == told
    assert against("{do: wash, treats: endband head}") == told


@pytest.mark.parametrize(
    "step",
    [
        "{treats: endband head, agent: water, except: 'the silk, masked'}",
        "{treats: endband head, agent: water, except: 'kept dry over the colour'}",
        "{treats: endband head, agent: water, allowed-by: red-bleeds}",
        "{treats: endband head, agent: rubber-sponge}",
        "{treats: endband tail, agent: water}",
        "{removes: endband head, agent: water}",
        "{treats: leaf, agent: water}",
    ],
)
def test_what_is_spared_allowed_or_elsewhere_is_let_pass(step: str):
    assert against(step) == []


def test_to_spare_something_else_does_not_spare_what_bled():
    assert against("{treats: endband head, agent: water, except: the label}")


def test_a_test_of_another_part_allows_nothing_here():
    step = "{treats: endband head, agent: water, allowed-by: ink-holds}"
    assert against(step, BLEEDS, HOLDS)


def test_a_test_with_the_very_agent_counts_for_more_than_one_with_another():
    vapour = "{id: v, part: cover, of: title, agent: water-vapour, result: no change}"
    water = "{id: w, part: cover, of: title, agent: water, result: bleeds}"
    assert against("{treats: cover, agent: water-vapour}", vapour, water) == []
    assert against("{treats: cover, agent: water}", vapour, water)


@pytest.mark.parametrize("result", ["no bleeding", "does not bleed", "no change", "near neutral"])
def test_a_result_without_trouble_stands_in_nobodys_way(result: str):
    test = f"{{id: t, part: leaf, agent: water, result: {result}}}"
    assert against("{treats: leaf, agent: water}", test) == []


def test_glue_that_dissolves_is_what_was_hoped_for():
    test = "{id: t, part: spine, of: old glue, agent: water, result: dissolves}"
    assert against("{treats: spine, agent: water}", test) == []


def test_an_old_record_is_told_of_it_and_no_more():
    assert AGAINST.severity(look("record: from-notes")) is Severity.SUGGESTION
    assert AGAINST.severity(look()) is Severity.WARNING
