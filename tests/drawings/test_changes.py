"""What each state changed, in words."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given, settings

from casebook.compute.structure import Bond, How, Structure
from casebook.drawings.changes import states
from casebook.drawings.facts import NO_FACTS
from casebook.drawings.stack import story
from tests.drawings.structures import (
    LEDGER,
    LEDGER_FACTS,
    added,
    found,
    moments,
    original,
    over,
    stories,
    stuck,
)


def test_the_ledger_step_by_step():
    told = states(story(LEDGER, ("spine", "board 1", "board 2")), LEDGER_FACTS)
    assert [(one.title, *one.lines) for one in told] == [
        ("As found", "On it: old glue, reback leather and title label."),
        ("After step 1", "Title label taken off."),
        ("After step 2", "Reback leather taken off."),
        ("After step 3", "Old glue partly taken away."),
        ("After step 4", "Release lining put on."),
        ("After step 5", "Second lining put on."),
        ("After step 6", "Cloth lining put on."),
        ("After step 7", "Cloth lining now stuck with polyvinyl acetate, to board 1 and board 2."),
        ("After step 8", "Endband head and endband tail put on."),
        ("After step 9", "Spine paper put on."),
        ("After step 10", "Title label put on."),
    ]


def _changes(before: Structure, after: Structure) -> tuple[str, ...]:
    return states(story(moments(before, after), ("sheet", "board 1")), NO_FACTS)[-1].lines


def test_a_bond_that_was_loosened_or_parted():
    there = over(Structure(), original("sheet"), original("board 1"), found("skin"))
    glue = stuck("sheet", "skin", "pva")
    both = over(there, glue, stuck("board 1", "skin", "pva"))
    assert _changes(both, over(there, glue)) == ("Skin freed from board 1.",)
    opened = over(there, replace(glue, opened=(3,)))
    assert _changes(over(there, glue), opened) == ("Skin loosened from sheet.",)


def test_zones_come_and_go_by_themselves():
    zone = found("skin/board 1", of="skin", zone="board 1")
    parts = over(
        Structure(),
        original("sheet"),
        original("board 1"),
        found("skin/sheet", of="skin", zone="sheet"),
        stuck("sheet", "skin/sheet"),
    )
    more = over(parts, zone, stuck("board 1", "skin/board 1"))
    assert _changes(parts, more) == ("Skin put on board 1.",)
    assert _changes(more, parts) == ("Skin taken off board 1.",)


def test_what_soaks_in_is_not_put_on():
    there = over(Structure(), original("sheet"))
    size = over(there, added("size", 1), Bond("sheet", "size", How.SOAKED))
    assert _changes(there, size) == ("Size soaked in.",)


def test_a_part_on_which_nothing_was_recorded_says_so():
    bare = over(Structure(), original("sheet"))
    first, second = states(
        story(moments(bare, over(bare, added("a", 1), stuck("sheet", "a"))), ("sheet",)), NO_FACTS
    )
    assert first.lines == ("Nothing was recorded on it.",)
    assert second.lines == ("A put on.",)


@settings(max_examples=15)
@given(stories)
def test_every_state_has_words(told):
    for one in states(story(told, ("spine", "sheet", "board 1")), NO_FACTS):
        assert all(line.endswith(".") for line in one.lines)
        assert one.lines
