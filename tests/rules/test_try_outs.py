"""Try-outs: three times on a spot, bare paper first, as long as a poultice lies."""

from __future__ import annotations

import pytest

from casebook.rules import NAMED
from tests.rules.written import messages

WASH = "steps: [{do: wash, treats: leaf, bath: water, allowed-by: ink}]\nepisodes: []\n"


def told(rule: str, test: str, steps: str = WASH) -> list[str]:
    return messages(NAMED[rule], f"{steps}tests: [{{id: ink, part: leaf, agent: water, {test}}}]")


def test_a_test_that_a_step_goes_by_was_repeated():
    assert told("test-repeated", "result: no change") == [
        "the test `ink` is not said to have been repeated"
    ]
    assert told("test-repeated", "method: 'droplet, three times', result: no change") == []


@pytest.mark.parametrize("result", ["bleeds", "near neutral"])
def test_what_moved_at_once_or_was_only_measured_need_not_be_repeated(result: str):
    assert told("test-repeated", f"result: {result}") == []


def test_a_try_out_on_a_stand_in_need_not_be_repeated():
    assert told("test-repeated", "stand-in: an offcut, result: holds") == []


def test_a_test_that_no_step_goes_by_is_not_asked_for_more():
    dry = "steps: [{do: dry-clean, treats: leaf}]\nepisodes: []\n"
    assert told("test-repeated", "result: no change", dry) == []


def test_bare_paper_is_tested_before_its_ink():
    rule = "test-paper-then-ink"
    assert told(rule, "of: black ink, result: no change")
    assert told(rule, "of: black ink, method: 'bare paper first', result: no change") == []
    assert told(rule, "of: the glue, result: no change") == []
    strap = "steps: [{treats: strap, agent: water, allowed-by: ink}]\nepisodes: []\n"
    assert (
        messages(
            NAMED[rule], f"{strap}tests: [{{id: ink, part: strap, of: red dye, agent: water}}]"
        )
        == []
    )


def poultice(lasts: str, test: str, more: str = "") -> list[str]:
    agent = f"{{is: water, carrier: methyl-cellulose, applied: poultice, lasts: {lasts}}}"
    steps = f"steps: [{{removes: old-glue, allowed-by: ink, agent: {agent}{more}}}]\nepisodes: []\n"
    return told("poultice-tested-as-long", test, steps)


def test_a_poultice_lies_as_long_as_it_was_tested():
    assert poultice("20 min", "method: 'droplet, 60 s'") == [
        "the poultice lay 20 min, and the longest test of it 60 s"
    ]
    assert poultice("20 min", "method: 'damp blotter, 20 min'") == []
    assert poultice("20 min", "method: damp blotter") == []
    assert poultice("overnight", "method: 'damp blotter, 20 min'")


def test_a_reason_for_a_longer_poultice_is_taken():
    assert poultice("20 min", "method: 'droplet, 60 s'", ", because: hard as glass") == []


def test_what_is_no_poultice_is_not_measured_against_one():
    steps = "steps: [{treats: leaf, agent: {is: water, lasts: 20 min}, allowed-by: ink}]\n"
    assert told("poultice-tested-as-long", "method: 'droplet, 60 s'", steps) == []


def test_of_several_ways_the_one_that_lay_longer_may_say_why():
    way = "{scope: strip 4, agent: {is: water, carrier: gel, lasts: 6 min}%s}"
    steps = "steps: [{removes: old-glue, allowed-by: ink, ways: [%s]}]\nepisodes: []\n"
    test = "method: 'gel, 4 min'"
    assert told("poultice-tested-as-long", test, steps % (way % ""))
    assert told("poultice-tested-as-long", test, steps % (way % ", because: hard")) == []
