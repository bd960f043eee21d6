"""Cases for tests, written as a conservator writes them; all invented."""

from __future__ import annotations

import csv
from pathlib import Path

from casebook.model.archive import Case
from casebook.reading import read
from casebook.source.parsing import parse

REFERENCE = Path(__file__).parents[1] / "reference"


def case(text: str) -> Case:
    """The case that a text says; a fault in it fails the test."""
    node = parse(text, "case.md").node
    assert node is not None
    found, faults = read(Case, node, "test")
    assert not faults
    return found


def reference(name: str) -> list[dict[str, str]]:
    """The rows of a table of published check data."""
    with (REFERENCE / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


LEDGER = """
id: 2025-031
object: {kind: ledger, size: {height: 16 1/4 in, width: 268 mm}}
parts:
  spine: {width: 68 mm, rise: 14 mm, height: 398 mm}
as-found:
  - {id: old-glue, onto: spine, material: animal-glue}
proposal:
  options:
    - {name: toned paper reback, time: 14 h, outcome: chosen}
    - {name: new leather, time: 20 h, outcome: rejected}
episodes:
  - episode: 2
    hands: [AM]
    steps:
      - photographed the tooling, so that it can be made again
      - removes: old-glue
        agent: {is: water, carrier: methyl-cellulose 4 %, applied: poultice}
        time: 1 h 30 min
        waits: 20 min
      - do: line
        adds: release-lining
        onto: spine
        material: {is: tengujo, weight: 5 g/m², lot: 24-7}
        adhesive: wheat-starch-paste
        cut: {height: 390 mm}
        time: 40 min
        dries: overnight under release-sheet
        tried:
          - {what: small weights, result: no contact, outcome: given-up, time: 5 min}
      - do: line
        adds: cloth-lining
        onto: release-lining
        spans: {spine: 300 mm, board 1: 40 mm, board 2: 40 mm}
        material: {is: linen, damped: yes}
        adhesive: pva
        hands: [RT, AM]
        time: 2 h
"""
"""The ledger of the design, with the times that a sum needs."""
