"""Fillings and lines: told apart by pattern, never by colour alone."""

from __future__ import annotations

import re

from casebook.compute.structure import Bond, How, Since
from casebook.drawings.facts import NO_FACTS
from casebook.drawings.patterns import DASHES, FILLS, bond_line, definitions, fill, inks, key
from tests.drawings.structures import stuck


def test_original_found_and_added_have_fillings_of_their_own():
    drawn = definitions("x")
    assert all(f'id="x-{one}"' in drawn for one in (*FILLS.values(), "l"))
    marks = re.findall(r"<pattern.*?</pattern>", drawn)
    bare = [re.sub(r'#\w+|id="[^"]*"|class="[^"]*"', "", one) for one in marks]
    assert len(set(bare)) == 4
    assert {fill("x", one) for one in Since} == {"url(#x-o)", "url(#x-f)", "url(#x-a)"}


def test_each_adhesive_has_a_line_of_its_own_as_long_as_there_are_enough():
    bonds = [stuck("a", "b", f"glue-{n}") for n in range(8)]
    lines = [inks(bonds, NO_FACTS).line(one) for one in bonds]
    assert [one.dash for one in lines if one][:5] == list(DASHES)
    assert {one.name for one in lines[5:] if one} == {"another adhesive"}


def test_what_is_not_named_not_known_or_sewn_has_lines_too_and_grown_parts_none():
    found = inks([], NO_FACTS)
    named = {how: found.line(Bond("a", "b", how)) for how in How}
    assert {how for how, line in named.items() if line} == {How.STUCK, How.UNKNOWN, How.HELD}
    assert 'stroke-width="6"' in bond_line("M0 0h9", named[How.HELD])


def test_the_key_has_a_row_for_each_and_says_where_it_ends():
    line = inks([stuck("a", "b", "pva")], NO_FACTS).line(stuck("a", "b", "pva"))
    drawn, end = key("x", 100, list(Since), [line])
    texts = re.findall(r"<text[^>]*>([^<]*)", drawn)
    assert texts == [
        "original to the object",
        "found on it, not original",
        "added in this treatment",
        "pva",
    ]
    assert end == 100 + 4 * 23
