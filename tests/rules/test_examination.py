"""What was seen, and what had been done before."""

from __future__ import annotations

from casebook.rules import NAMED
from tests.rules.written import messages


def test_a_finding_in_mid_treatment_too_says_what_was_seen():
    text = "steps: [{treats: spine, finds: [{part: spine, means: sewn twice}]}]"
    assert len(messages(NAMED["seen-and-meant"], text)) == 1


def test_a_search_without_result_counts_as_seen():
    text = "findings: [{sought: watermark, found: not seen, means: hidden by the lining}]"
    assert messages(NAMED["seen-and-meant"], text) == []


def test_a_later_layer_found_is_evidence_of_past_treatment():
    assert messages(NAMED["past-treatment"], "# no history") == []


def test_no_housing_is_an_answer_and_not_recorded_is_none():
    assert messages(NAMED["housing-on-arrival"], "object: {kind: ledger, housing: none}") == []
    assert messages(NAMED["housing-on-arrival"], "object: {kind: ledger, housing: not recorded}")
