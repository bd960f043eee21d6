"""A complete case, invented, and cases that differ from it in a key or two, as rules show them."""

from __future__ import annotations

import datetime
import re

from casebook.model.archive import Archive, Case
from casebook.model.base import schema
from casebook.model.settings import Client, Settings
from casebook.model.treatment import Recipe
from casebook.reading import read
from casebook.rules.declare import Raised, Rule
from casebook.rules.look import Look
from casebook.source import Entry, Mapping, parse
from casebook.values.colours import Difference
from casebook.vocabulary import Lexicon, builtin

TODAY = datetime.date(2026, 1, 1)
LEXICON = Lexicon(builtin())

BASE = """
id: 2025-031
title: Tide-gauge keeper's day book
status: complete
record: at-the-bench
audience: public
written: {by: AM, date: 2025-04-03, for: treatment record for owner and lab}
people: {AM: {role: conservator}}
dates: {received: 2025-01-20, examined: 2025-01-28, returned: 2025-04-02}
object: {kind: ledger, size: {height: 398 mm}, housing: none}
parts: {spine: {width: 68 mm, rise: 14 mm, height: 398 mm}}
as-found:
  - {id: old-glue, onto: spine, material: animal-glue, origin: later}
history: [{date: 19XX, hands: unknown, what: rebacked in calf, state: failed}]
examination: {because: owner wants to read in it, method: [raking light], by: AM}
findings:
  - {part: joint front, damage: broken, seen: cords broken}
  - {part: spine, stage: after, seen: opens flat}
tests:
  - {id: red-bleeds, part: endband head, agent: water, method: damp swab, result: bleeds}
  - {id: ink-holds, part: leaf, agent: water, method: "bare paper first", times: 3, result: no change}
proposal:
  options: [{name: reback, materials: [linen], time: 14 h, cost: "400", outcome: chosen}]
  decided: {date: 2025-02-10, by: [owner], how: letter}
episodes:
  - date: 2025-03-14
    hands: [AM]
    steps:
      - {removes: old-glue, agent: water, allowed-by: ink-holds, fate: discarded, time: 1 h}
      - do: line
        adds: cloth-lining
        onto: spine
        material: {is: linen, damped: yes}
        adhesive: wheat-starch-paste
        grain: along
reversibility: {claims: [{takes-off: cloth-lining, with: water, leaves: nothing}]}
care: open it on a cushion
photos:
  - {file: before.jpg, stage: before, view: spine, date: 2025-01-28, scale: yes, target: yes,
     light: normal, caption: the broken joint}
  - {file: during.jpg, stage: during, view: spine, date: 2025-03-14, scale: yes, target: yes,
     light: normal, shows: [cloth-lining]}
  - {file: after.jpg, stage: after, view: spine, date: 2025-04-01, scale: yes, target: yes,
     light: normal, caption: opens flat again}
"""
"""A finished bench record against which no rule has anything to say."""

_LEFT_OUT = re.compile(r"^# no (\S+)$", re.MULTILINE)


def case(changes: str = "") -> Case:
    """The complete case with other keys; a line `# no written` leaves one out."""
    left_out = set(_LEFT_OUT.findall(changes))
    base = _keys(BASE)
    other = _keys(changes)
    assert left_out <= set(schema(Case)), left_out
    entries = {key: one for key, one in {**base, **other}.items() if key not in left_out}
    node = Mapping(tuple(entries.values()), next(iter(entries.values())).key.span)
    found, faults = read(Case, node, "test")
    assert not faults, faults
    return found


def _keys(text: str) -> dict[str, Entry]:
    parsed = parse(text, "case.md")
    assert not parsed.diagnostics, parsed.diagnostics
    node = parsed.node
    return {one.key.text: one for one in node.entries} if isinstance(node, Mapping) else {}


def archive(*cases: Case) -> Archive:
    """An archive with a client and a recipe, both invented."""
    settings = Settings(clients={"harbour": Client()}, tolerance=Difference.parse("3.0"))
    return Archive(settings, builtin(), cases, {"overhang-lining": Recipe()})


def look(changes: str = "", *, page: bool = False) -> Look:
    """A look at the complete case with other keys."""
    one = case(changes)
    return Look(one, archive(one), TODAY, LEXICON, page=page)


def raised(rule: Rule, changes: str = "") -> list[Raised]:
    """What a rule says of the complete case with other keys; nothing where it is not due."""
    seen = look(changes)
    return list(rule.check(seen)) if rule.severity(seen) is not None else []


def messages(rule: Rule, changes: str = "") -> list[str]:
    """The messages of a rule about the complete case with other keys."""
    return [one.message for one in raised(rule, changes)]
