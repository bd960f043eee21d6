"""A record of a tired evening, invented, in which every rule of practice finds its slip."""

from __future__ import annotations

from casebook.diagnostics import Span
from casebook.rules import (
    adhesives,
    beyond_plan,
    decay,
    follow_up,
    hazards,
    linings,
    photo_facts,
    repairs,
    run,
    try_outs,
    wet,
)
from tests.rules.written import TODAY, archive, case

PRACTICE = (
    *wet.PRACTICE,
    *try_outs.PRACTICE,
    *decay.PRACTICE,
    *linings.PRACTICE,
    *adhesives.PRACTICE,
    *repairs.PRACTICE,
    *beyond_plan.PRACTICE,
    *photo_facts.PRACTICE,
    *follow_up.PRACTICE,
    *hazards.PRACTICE,
)

NOWHERE = Span("", 0, 0, 0, 0)

TIRED = """
parts:
  spine: {width: 68 mm, rise: 14 mm, height: 398 mm}
  sheet: {material: laid-paper 80 g/m²}
as-found:
  - {id: old-glue, onto: spine, material: animal-glue, origin: later}
  - {id: old-melt, onto: board 1, material: hot-melt, origin: later}
findings:
  - {part: covering, damage: red-rot, seen: powders}
  - {part: board 2, damage: active-mould, seen: grey and damp}
hazards: [{what: mould}]
tests:
  - {id: red, part: endband head, of: red silk, agent: water, result: bleeds}
  - {id: ink, part: leaf, of: black ink, agent: water, method: "droplet, 60 s", result: no change}
  - {id: glow, part: leaf, method: UV light, result: none}
proposal:
  options: [{name: line and reback, materials: [linen, paste], outcome: chosen}]
episodes:
  - date: 2025-03-14
    hands: [AM]
    steps:
      - {do: remove-mould, treats: board 2, tools: [vacuum-cleaner]}
      - {do: wet-clean, treats: covering, agent: water}
      - removes: old-glue
        allowed-by: ink
        agent: {is: water, carrier: methyl-cellulose, applied: poultice, lasts: 20 min}
      - {removes: old-melt, agent: acetone, tools: [heated-spatula]}
      - {puts-back: endband head, onto: spine, adhesive: wheat-starch-paste}
      - {do: pare, treats: covering, tools: [scalpel]}
  - date: 2025-03-17
    hands: [AM]
    steps:
      - do: line
        adds: cloth-lining
        onto: spine
        material: {is: linen, damped: no}
        adhesive: polyvinyl-acetate
        grain: across
        cut: {height: 398 mm}
        dries: overnight under weights
      - {adds: second, onto: cloth-lining, material: linen, adhesive: paste}
      - {adds: mend, onto: sheet, material: kozo-paper 120 g/m², adhesive: rubber-cement}
      - {adds: hinge, onto: joint front, material: calf, against-original: stronger}
      - {adds: one, onto: image, material: linen, adhesive: paste, grain: along}
      - {adds: two, onto: one, material: {is: linen, damped: yes}, adhesive: paste, grain: across}
reversibility: {claims: [{takes-off: cloth-lining, with: water, leaves: nothing}]}
follow-up: [{date: 2025-06-01, state: sound, next: 2025-10}]
photos:
  - {file: a.jpg, stage: before, view: spine, date: 2025-01-28}
  - {file: verso-uv.jpg, stage: during, view: verso, light: raking, date: 2025-03-14}
  - {file: table.jpg, date: 2025-03-14}
"""


def test_every_slip_is_told_in_plain_words(golden):
    one = case(TIRED)
    names = {rule.name for rule in PRACTICE}
    told = [found for found in run(archive(one), TODAY, {one.id: "a"}) if found.rule in names]
    assert {found.rule for found in told} == names
    told.sort(key=lambda found: (found.span or NOWHERE, found.rule))
    lines = [f"{one.severity.word} {one.rule}\n  {one.message}\n  {one.hint}" for one in told]
    golden("rules/tired.txt", "\n".join(lines) + "\n")


def test_a_careful_record_of_the_same_work_is_told_nothing():
    one = case()
    names = {rule.name for rule in PRACTICE}
    assert [found for found in run(archive(one), TODAY, {}) if found.rule in names] == []
