"""Dangers are named with their cautions."""

from __future__ import annotations

from casebook.rules import NAMED
from tests.rules.written import messages, raised


def test_the_usual_caution_is_quoted_from_the_vocabulary():
    (one,) = raised(NAMED["caution-of-hazard"], "hazards: [mould]")
    assert "spores" in one.hint
    (one,) = raised(NAMED["caution-of-hazard"], "hazards: [something else]")
    assert one.hint == "follow safety data sheets and local codes"


def test_what_the_object_is_made_of_can_hurt_and_what_was_used_on_it_is_another_matter():
    rule = NAMED["hazard-named"]
    found = "as-found: [{id: old-glue, onto: spine, material: lead}]"
    assert len(messages(rule, found)) == 1
    assert messages(rule, "steps: [{treats: spine, agent: acetone}]") == []


def test_a_danger_is_asked_for_once_however_often_it_is_met():
    twice = "findings: [{part: board 1, damage: mould}, {part: board 2, damage: mould}]"
    assert len(messages(NAMED["hazard-named"], twice)) == 1
