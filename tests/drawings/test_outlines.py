"""Shapes of a section: each layer once, with its filling and the line of its bond."""

from __future__ import annotations

import re

from casebook.drawings import outlines
from casebook.drawings.lanes import Band, Flat
from casebook.drawings.section import on_parts, section
from casebook.drawings.stack import story
from tests.drawings.structures import LEDGER, LEDGER_FACTS

SPINE = ("spine", "board 1", "board 2")
LANE = Flat(100, 50, 100)


def _laid(last: int = len(LEDGER)):
    told = story(LEDGER[:last], SPINE)
    return section("x", told, LEDGER_FACTS, on_parts(told), 0.003, {})


def _outline(laid, name, part="spine"):
    seen = next(one for one in laid.by_part[part] if one.sight.name == name)
    band = Band(-1, 1, seen.slot.low, seen.slot.high)
    return outlines.outline(laid, seen, LANE, band, outlines.strip(seen, LANE, band))


def test_what_lies_in_places_is_drawn_broken():
    laid = _laid(4)
    assert [one.data.count("z") for one in (_outline(laid, "old-glue"),)] == [1]
    rest = next(one for one in laid.by_part["spine"] if one.sight.thing.partly)
    band = Band(-1, 1, 4, 9)
    drawn = outlines.outline(laid, rest, LANE, band, outlines.strip(rest, LANE, band))
    assert (drawn.data.count("M"), drawn.line_data.count("M")) == (3, 3)


def test_the_line_of_a_bond_runs_in_the_gap_under_a_layer():
    found = _outline(_laid(), "release-lining")
    assert found.line is not None
    assert found.line.name == "wheat starch paste"
    assert found.line_data.startswith("M50 ")


def test_zones_seen_in_the_same_states_are_one_group_and_others_are_not():
    laid = _laid()
    zones = [_outline(laid, f"spine-paper/{part}", part) for part in SPINE]
    drawn = list(outlines.layers(laid, zones))
    assert len(drawn) == 1
    assert drawn[0].count("<path") == 2
    cloth = [_outline(laid, f"cloth-lining/{part}", part) for part in SPINE]
    assert len(list(outlines.layers(laid, cloth))) == 2


def test_what_is_not_fixed_has_a_broken_outline():
    loose = _outline(_laid(7), "cloth-lining/board 1", "board 1")
    assert 'stroke-dasharray="5 3"' in "".join(outlines.layers(_laid(7), [loose]))


def test_the_key_names_what_the_drawing_has():
    drawn, _ = outlines.key(_laid(), 0)
    texts = re.findall(r"<text[^>]*>([^<]*)", drawn)
    assert texts[:5] == [
        "original to the object",
        "original to the object, cloth",
        "found on it, not original",
        "added in this treatment",
        "added in this treatment, cloth",
    ]
    assert {"animal glue", "wheat starch paste", "polyvinyl acetate"} <= set(texts)
    assert "added in this treatment" not in outlines.key(_laid(1), 0)[0]
