"""What stays on the object is what the plan said, or a change of it."""

from __future__ import annotations

import pytest

from casebook.rules import NAMED
from tests.rules.written import messages

RULE = NAMED["within-the-plan"]


def told(step: str, materials: str = "linen, wheat-starch-paste", more: str = "") -> list[str]:
    option = f"{{name: line it, materials: [{materials}], outcome: chosen}}"
    return messages(RULE, f"steps: [{step}]\nepisodes: []\nproposal: {{options: [{option}]{more}}}")


def test_another_sort_of_material_or_adhesive_is_asked_about():
    assert told("{adds: p, onto: joint front, material: calf}") == [
        "`calf` is on the object, and neither plan nor changes name it"
    ]
    assert told("{adds: p, onto: spine, material: linen, adhesive: animal-glue}")
    assert told("{treats: leaf, agent: hydrogen-peroxide}")


@pytest.mark.parametrize(
    ("step", "materials"),
    [
        ("{adds: p, onto: spine, material: linen, adhesive: wheat-starch-paste}", "linen, paste"),
        ("{adds: p, onto: spine, material: aerolinen}", "linen"),
        ("{adds: p, onto: spine, material: cloth}", "linen"),
        ("{adds: p, onto: spine, material: kozo-paper}", "tengujo"),
        ("{adds: p, onto: spine, material: linen, adhesive: rice-starch-paste}", "linen, paste"),
        ("{adds: p, onto: spine, material: linen, adhesive: animal-glue}", "linen"),
        ("{adds: p, onto: spine, material: linen-thread}", "linen, paste"),
        ("{adds: p, onto: spine, material: our own cloth}", "linen, paste"),
        ("{adds: p, over: text-block, is: part, material: corrugated-board}", "linen, paste"),
        ("{adds: p, onto: leaf, material: silk, temporary: yes}", "kozo-paper"),
        ("{removes: old-glue, agent: water}", "linen, paste"),
    ],
)
def test_alike_small_temporary_and_boxes_are_let_pass(step: str, materials: str):
    assert told(step, materials) == []


def test_a_change_of_plan_may_name_it():
    step = "{adds: p, onto: joint front, material: calf}"
    assert told(step, more=", changes: [{what: calf at the joint, agreed: owner}]") == []
    assert told(step, more=", changes: [{what: new boards, agreed: owner}]")


def test_questions_have_chosen_options_of_their_own():
    step = "steps: [{adds: p, onto: joint front, material: calf}]\nepisodes: []\n"
    option = "{name: joint, materials: [%s], outcome: chosen}"
    plan = "proposal: {questions: [{asks: how the board is held, options: [%s]}]}"
    assert messages(RULE, step + plan % (option % "calf")) == []
    assert messages(RULE, step + plan % (option % "linen"))


def test_without_a_choice_or_without_materials_nothing_is_compared():
    step = "steps: [{adds: p, onto: joint front, material: calf}]\nepisodes: []\n"
    assert messages(RULE, step + "proposal: {options: [{name: a, materials: [linen]}]}") == []
    assert messages(RULE, step + "proposal: {options: [{name: a, outcome: chosen}]}") == []
    assert messages(RULE, step + "# no proposal") == []
