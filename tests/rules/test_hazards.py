"""Dangers are named with their cautions: those of the object, and those of the work."""

from __future__ import annotations

import pytest

from casebook.diagnostics import Severity
from casebook.rules import NAMED
from tests.rules.written import messages, raised

OBJECT = NAMED["hazard-named"]
WORK = NAMED["hazard-of-work"]
HEAT = NAMED["heat-near-solvent"]


def test_the_usual_caution_is_quoted_from_the_vocabulary_with_its_source():
    (one,) = raised(NAMED["caution-of-hazard"], "hazards: [mould]")
    assert "spores" in one.hint
    assert "NC Preservation Consortium" in one.hint
    (one,) = raised(NAMED["caution-of-hazard"], "hazards: [something else]")
    assert one.hint == "follow safety data sheets and local codes"


def test_what_the_object_is_made_of_can_hurt_and_what_was_used_on_it_is_another_matter():
    found = "as-found: [{id: old-glue, onto: spine, material: lead}]"
    assert len(messages(OBJECT, found)) == 1
    assert messages(OBJECT, "steps: [{treats: spine, agent: acetone}]") == []


def test_a_danger_is_asked_for_once_however_often_it_is_met():
    twice = "findings: [{part: board 1, damage: mould}, {part: board 2, damage: mould-stained}]"
    assert len(messages(OBJECT, twice)) == 1


@pytest.mark.parametrize(
    ("text", "count"),
    [
        (
            "findings: [{part: board 1, damage: mould}]\nhazards: [{what: lead, caution: no dust}]",
            1,
        ),
        ("findings: [{part: board 1, damage: mould}]\nhazards: [{what: mould, caution: mask}]", 0),
        ("findings: [{part: board 1, damage: mould}]\nhazards: none (dead, cleaned off)", 0),
        ("bindings: [{structure: publishers-cloth-binding}]", 1),
        ("bindings: [{structure: publishers-cloth-binding, covering: publishers-cloth}]", 1),
        ("as-found: [{id: film, onto: leaf, material: acrylic-resin}]", 0),
        ("as-found: [{id: fill, onto: leaf, material: {perhaps: [lead-white]}}]", 1),
    ],
)
def test_what_is_on_the_object_is_named_under_hazards(text: str, count: int):
    assert len(messages(OBJECT, text)) == count


@pytest.mark.parametrize(
    ("text", "cap"),
    [
        ("steps: [{treats: leaf, agent: acetone}]", Severity.ERROR),
        ("steps: [{treats: leaf, agent: {mix: {ethanol: 1, water: 1}}}]", Severity.ERROR),
        ("steps: [{treats: leaf, adhesive: acrylic-resin 5 % in acetone}]", Severity.ERROR),
        ("steps: [{treats: leaf, bath: hydrogen-peroxide}]", Severity.ERROR),
        ("tests: [{part: leaf, agent: xylene, result: no change}]", Severity.ERROR),
        ("steps: [{treats: leaf, tools: [scalpel]}]", Severity.SUGGESTION),
        ("steps: [{do: pare, treats: leaf}]", Severity.SUGGESTION),
        ("steps: [{treats: leaf, tools: [board shears]}]", Severity.SUGGESTION),
        ("steps: [{treats: leaf, dries: overnight under lead-weight}]", Severity.SUGGESTION),
        ("steps: [{treats: leaf, agent: eraser-crumbs}]", Severity.SUGGESTION),
        ("tests: [{part: leaf, method: UV light, result: no glow}]", Severity.SUGGESTION),
        ("examination: {because: asked, method: [ultraviolet]}", Severity.SUGGESTION),
        ("photos: [{file: a.jpg, light: UV}]", Severity.SUGGESTION),
    ],
)
def test_what_was_worked_with_is_named_and_of_tools_only_suggested(text: str, cap: Severity):
    assert {one.cap for one in raised(WORK, text)} == {cap}


def test_a_hot_melt_that_is_taken_off_gives_off_fumes():
    found = "as-found: [{id: melt, onto: spine, material: hot-melt}]\n"
    (one,) = raised(WORK, f"{found}steps: [{{removes: melt, tools: [spatula]}}]")
    assert "fume hood" in one.hint
    assert messages(WORK, f"{found}steps: [{{treats: leaf}}]") == []
    tissue = found.replace("hot-melt", "heat-set-tissue")
    assert messages(WORK, f"{tissue}steps: [{{removes: melt, tools: [spatula]}}]") == []


def test_an_old_record_is_not_asked_about_tools():
    old = "record: from-notes\n"
    assert messages(WORK, old + "steps: [{treats: leaf, tools: [scalpel]}]") == []
    assert messages(WORK, old + "steps: [{treats: leaf, agent: acetone}]")


def test_what_the_object_is_asked_for_the_work_is_not_asked_for_again():
    text = "bindings: [{covering: publishers-cloth}]\n"
    text += "steps: [{adds: p, onto: spine, material: publishers-cloth, adhesive: paste}]"
    assert len(messages(OBJECT, text)) == 1
    assert messages(WORK, text) == []


def test_the_same_danger_by_another_name_is_not_asked_for_twice():
    steps = "steps: [{treats: leaf, tools: [scalpel, knife, razor-blade]}]"
    assert len(messages(WORK, steps)) == 1
    assert messages(WORK, steps + "\nhazards: [{what: blades, caution: cut away}]") == []


def sitting(steps: str, more: str = "") -> list[str]:
    return messages(HEAT, f"episodes: [{{date: 2025-03-14, hands: AM, steps: [{steps}]}}]\n{more}")


def test_a_solvent_and_a_hot_tool_in_one_sitting_need_a_caution():
    both = "{treats: leaf, agent: acetone}, {treats: spine, tools: [heated-spatula]}"
    assert sitting(both)
    assert (
        sitting(both, "hazards: [{what: acetone, caution: gone before the spatula is hot}]") == []
    )
    assert sitting("{treats: leaf, agent: water}, {treats: spine, tools: [heated-spatula]}") == []
    assert sitting("{treats: leaf, agent: acetone}, {treats: spine, tools: [spatula]}") == []


def test_a_hot_tool_may_stand_in_one_of_several_ways():
    ways = "[{scope: a, tools: [heated-spatula]}, {scope: b, agent: acetone}]"
    assert sitting(f"{{removes: old-glue, ways: {ways}}}")


def test_steps_in_no_sitting_stand_each_by_itself():
    apart = "steps: [{treats: leaf, agent: acetone}, {treats: spine, tools: [heated-spatula]}]"
    assert messages(HEAT, apart) == []
    assert messages(HEAT, "steps: [{treats: leaf, agent: acetone, tools: [heated-spatula]}]")
