"""Fillings and lines: told apart by pattern, never by colour alone."""

from __future__ import annotations

import re

from casebook.compute.structure import Bond, How, Since
from casebook.drawings.facts import NO_FACTS, Facts
from casebook.drawings.patterns import (
    DASHES,
    HELD_DASH,
    Filling,
    Line,
    bond_line,
    definitions,
    filling,
    inks,
    key,
)
from tests.drawings.structures import LEXICON, added, found, stuck

EVERY = [Filling(since, cloth) for since in Since for cloth in (False, True)]


def test_original_found_and_added_and_cloth_have_fillings_of_their_own():
    drawn = definitions("x", ["l", *(one.letter for one in EVERY)])
    marks = re.findall(r"<pattern.*?</pattern>", drawn)
    bare = [re.sub(r'#\w+|id="[^"]*"', "", one) for one in marks]
    assert len(set(bare)) == 7
    without_ground = [re.sub(r"<rect[^>]*>", "", one) for one in bare]
    assert len(set(without_ground)) == 7
    assert all(one.fill("x")[5:-1] in drawn for one in EVERY)
    assert len({one.name for one in EVERY}) == 6


def test_a_drawing_has_the_fillings_that_it_uses():
    assert re.findall(r'id="(x-\w+)"', definitions("x", ["a", "o", "a"])) == ["x-a", "x-o"]


def test_cloth_is_known_by_the_likeliest_word_for_it():
    facts = Facts(lexicon=LEXICON)
    assert filling(added("x", 1, "linen"), facts) == Filling(Since.ADDED, True)
    assert filling(added("x", 1, "tengujo", "linen"), facts) == Filling(Since.ADDED)
    assert filling(found("x"), facts) == Filling(Since.FOUND)


def test_each_adhesive_has_a_line_of_its_own_as_long_as_there_are_enough():
    bonds = [stuck("a", "b", f"glue-{n}") for n in range(8)]
    lines = [inks(bonds, NO_FACTS).line(one) for one in bonds]
    assert [one.dash for one in lines if one][:5] == list(DASHES)
    assert {one.name for one in lines[5:] if one} == {"another adhesive"}


def test_what_is_not_named_not_known_or_sewn_has_lines_too_and_grown_parts_none():
    none = inks([], NO_FACTS)
    named = {how: none.line(Bond("a", "b", how)) for how in How}
    assert {how for how, line in named.items() if line} == {How.STUCK, How.UNKNOWN, How.HELD}
    assert 'stroke-width="6"' in bond_line("M0 0h9", Line(HELD_DASH, "sewn"))


def test_the_key_has_a_row_for_each_and_says_where_it_ends():
    line = Line(DASHES[0], "pva")
    drawn, end = key("x", 100, [Filling(one) for one in Since], [line])
    texts = re.findall(r"<text[^>]*>([^<]*)", drawn)
    assert texts == [
        "original to the object",
        "found on it, not original",
        "added in this treatment",
        "pva",
    ]
    assert end == 100 + 4 * 23
