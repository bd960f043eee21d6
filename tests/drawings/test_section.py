"""What all cross-sections share: where things are, how far they reach, their numbers."""

from __future__ import annotations

from casebook.compute.structure import Structure
from casebook.drawings.facts import NO_FACTS
from casebook.drawings.section import ROOM, extent, on_parts, roots, section
from casebook.drawings.stack import story
from tests.drawings.structures import (
    LEDGER,
    LEDGER_FACTS,
    added,
    high,
    moments,
    original,
    over,
    stuck,
)

SPINE = ("spine", "board 1", "board 2")


def _laid(told):
    return section("x", told, LEDGER_FACTS, on_parts(told), 0.003, {})


def test_numbers_run_from_the_original_outwards_and_end_with_what_is_gone():
    found = _laid(story(LEDGER, SPINE)).number
    assert list(found)[:5] == ["spine", "board 1", "board 2", "old-glue", "release-lining"]
    assert list(found)[-1] == "reback-leather"
    assert list(found.values()) == list(range(1, 13))


def test_each_thing_is_on_its_parts_with_the_bonds_that_hold_it_there():
    laid = _laid(story(LEDGER, SPINE))
    on_board = {seen.sight.name: seen for seen in laid.by_part["board 1"] if seen.bonds}
    assert on_board["reback-leather"].bonds[0].lower == "board 1"
    assert "old-glue" not in on_board
    assert laid.top("board 1") > 0
    assert set(roots(laid)) == set(SPINE)


def test_a_high_pile_keeps_to_its_room_and_is_crowded_if_too_high():
    laid = _laid(story(high(60), SPINE))
    assert round(laid.top("spine"), 6) == ROOM
    assert laid.crowded
    assert not _laid(story(LEDGER, SPINE)).crowded


def test_how_far_a_thing_reaches():
    sheet = over(Structure(), original("sheet"), original("label"), added("strip", 1, width_um=300))
    told = story(
        moments(
            over(
                sheet,
                stuck("sheet", "label"),
                stuck("sheet", "strip"),
                added("all", 2),
                stuck("sheet", "all"),
            )
        ),
        ("sheet",),
    )
    laid = section("x", told, NO_FACTS, on_parts(told), 0.1, {})
    found = {seen.sight.name: extent(seen, 100, 0.1) for seen in laid.by_part["sheet"]}
    assert found == {"all": (-1, 1), "label": (-0.45, 0.45), "strip": (-0.3, 0.3)}


def test_only_what_is_drawn_as_thick_as_it_is_counts_as_true():
    board = over(
        Structure(), original("sheet"), added("a", 1, thickness_um=9000), stuck("sheet", "a")
    )
    assert not _laid(story(moments(board), ("sheet",))).exaggerated
    assert _laid(story(LEDGER, SPINE)).exaggerated
