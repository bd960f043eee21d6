"""A case and a sitting written out whole, as the manual of the record shows them; all invented."""

from __future__ import annotations

CASE = """\
---
id: 2031-007
title: Lock-keeper's toll book
status: complete                   # or {is: stopped, because: "…", left: "…"}
record: at-the-bench
audience: public
people: {NO: {role: conservator}, RT: {role: finisher}}
dates: {received: 2031-01-20, examined: 2031-01-28, returned: 2031-04-02}
object:
  kind: ledger
  made: {is: 187X, says: owner}
  size: {height: 16 1/4 in, width: 268 mm, thickness: about 71 mm}
  owner: {name: "Invented Owner", contact: "owner@example.org"}
bindings:
  - state: on-arrival
    structure: tight-back
    sewing: {pattern: all-along, supports: recessed cords}
    boards: {material: pasteboard}
    covering: [calf, marbled-paper]
parts:
  spine: {width: 68 mm, rise: 14 mm, height: 398 mm}
  section: {count: 52}
  strap: {of: board 2, material: calf, parts: {clasp: {material: brass}}}
as-found:
  - {id: old-glue, onto: spine, material: {perhaps: [animal-glue], not: [bitumen],
     evidence: "not tacky when warmed"}, origin: later}
  - {id: stitches, joins: [board 1, text-block], held: sewn}
history:
  - {date: 19XX, hands: unknown, what: "rebacked in calf", state: failed, because: "it decayed"}
findings:
  - part: joint front
    damage: broken
    seen: "cords broken at stations 2 to 4"
    means: "board held by the pastedown only"
  - {sought: watermark, found: not seen, because: "the lining hides it"}
tests:
  - {id: red-bleeds, part: endband head, of: red thread, agent: water,
     method: "damp swab, 30 s", result: bleeds}
proposal:
  use: reading-room
  options:
    - {name: "toned paper reback", merits: "thin, weaker than the leather", faults: "plain",
       time: 14 h, outcome: chosen}
  decided: {date: 2031-02-10, by: [owner], how: letter, limits: "spine shape to be left"}
  changes: []
left-alone: [{part: spine, what: shape, because: "it tells how the book was used"}]
reversibility:
  says: "Water opens the lining."
  claims: [{takes-off: cloth-lining, with: water, leaves: nothing}]
care: "Open it on a cushion."
follow-up: [{date: 2032-02-01, layer: cloth-lining, state: sound}]
photos:
  - {id: spine-before, stage: before, view: spine, light: normal, shows: [old-glue], caption: "…"}
gaps: {not recorded: [time, housing], not read: [result]}
---
The story of this book in prose.
"""

EPISODE = """\
---
episode: 2
date: 2031-03-14/2031-03-15
hands: [NO]
steps:
  - photographed the tooling, so that it can be made again
  - removes: old-glue
    agent: {is: water, carrier: methyl-cellulose 4 %, applied: poultice, lasts: 20 min, times: 3,
      until: softened}
    leaves: {layer: old-glue, where: "in the folds"}
    fate: discarded
    time: 1 h 30 min
  - do: line
    adds: release-lining
    onto: spine
    material: {is: tengujo, weight: 5 g/m², lot: 24-7}
    adhesive: wheat-starch-paste
    grain: along
    cut: {height: 390 mm}
    time: 40 min
    dries: overnight under release-sheet + elastic-bandage
    tried:
      - {what: "small weights", result: "no contact at the shoulders", outcome: given-up}
    photo: spine-first-lining.jpg
  - do: line
    adds: cloth-lining
    onto: release-lining
    spans: {spine: 300 mm, board 1: 40 mm, board 2: 40 mm}
    material: {is: linen, damped: yes}
    adhesive: pva
    like: overhang-lining
  - {puts-back: endband head, onto: cloth-lining, adhesive: pva, allowed-by: red-bleeds,
     except: "the silk, kept dry"}
  - {do: attach, joins: cloth-lining, to: [board 1, board 2], adhesive: pva, face: outer}
  - do: wash
    treats: section
    scope: {done: 40, of: 52, rest: not recorded}
    bath: {liquid: deionised water, conditioned: calcium hydroxide, ph: 8.0, each: 15 min,
      or-until: discoloured, times: 5, until: "no more colour"}
---
The linings, in prose.
"""

RECIPES = """\
overhang-lining:
  label: Overhang lining
  step: {do: dress, grain: across, tools: [paste-brush], dries: overnight under blotter + weights}
"""
