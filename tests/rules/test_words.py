"""Words that no vocabulary knows, and words that others take for something else."""

from __future__ import annotations

from casebook.rules import NAMED
from tests.rules.written import messages, raised


def test_each_unknown_word_is_told_once():
    steps = "steps: [{do: zzline, treats: spine}, {do: zzline, treats: spine}]"
    assert messages(NAMED["unknown-word"], steps) == [
        "no vocabulary knows `zzline` among operations"
    ]


def test_a_word_that_is_nearly_one_of_ours_gets_a_hint():
    (one,) = raised(NAMED["unknown-word"], "findings: [{part: endband hed, damage: brokn}]")[:1]
    assert "did you mean `broken`" in one.hint


def test_a_word_in_a_reference_is_told_where_the_rest_of_it_is_known():
    told = messages(NAMED["unknown-word"], "findings: [{part: endband hed, seen: loose}]")
    assert told == ["no vocabulary knows `hed` among parts"]


def test_a_name_that_the_case_declares_is_known():
    text = "steps: [{adds: qwrtz, onto: spine, material: linen}, {treats: qwrtz, material: qwrtz}]"
    assert messages(NAMED["unknown-word"], text) == []


def test_pva_is_spelled_out():
    (one,) = raised(NAMED["ambiguous-word"], NAMED["ambiguous-word"].raises)
    assert one.message == "`pva` is taken here for polyvinyl acetate"
    assert "not polyvinyl alcohol" in one.hint
