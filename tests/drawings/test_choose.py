"""Which drawings a case gets."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given, settings

from casebook.compute.structure import Bond, How, Since, Structure
from casebook.drawings.choose import drawings_for, parts_drawn, way_back_for
from casebook.drawings.cuts import Cut
from casebook.drawings.facts import NO_FACTS
from tests.compute.written import case
from tests.drawings.structures import (
    CHART,
    LEDGER,
    LEXICON,
    added,
    found,
    moments,
    original,
    over,
    parsed,
    stories,
    stuck,
)

CASE = case("{id: x, parts: {spine: {width: 68 mm, rise: 14 mm}}}")


def test_a_spine_is_drawn_with_its_boards_and_a_sheet_by_itself():
    assert parts_drawn(LEDGER, NO_FACTS) == (("spine", "board 1", "board 2"),)
    assert parts_drawn(CHART, NO_FACTS) == (("sheet",),)


def test_the_boards_of_one_volume_go_with_its_spine():
    parts = [original(f"volume {n}/{part}") for n in (1, 2) for part in ("spine", "board 1")]
    linings = [added(f"lining {n}", n) for n in (1, 2)]
    bonds = [
        stuck(f"volume {n}/{part}", f"lining {n}") for n in (1, 2) for part in ("spine", "board 1")
    ]
    assert parts_drawn(moments(over(Structure(), *parts, *linings, *bonds)), NO_FACTS) == (
        ("volume 1/spine", "volume 1/board 1"),
        ("volume 2/spine", "volume 2/board 1"),
    )


def test_a_board_has_a_drawing_of_its_own_for_what_lies_on_its_inside():
    structure = over(
        LEDGER[-1].structure, found("pastedown"), stuck("board 1", "pastedown", face="inner")
    )
    assert parts_drawn(moments(structure), NO_FACTS)[1:] == (("board 1",),)
    spine, board = drawings_for(moments(structure), CASE, LEXICON)
    assert "pastedown" not in {row.layer for row in spine.alternative}
    assert "pastedown" in {row.layer for row in board.alternative}


def test_boards_go_by_many_names_and_the_first_is_at_the_left():
    parts = [original("spine"), original("back board"), original("front-board")]
    bonds = [stuck(one.name, "cloth") for one in parts]
    structure = over(Structure(), *parts, added("cloth", 1), *bonds)
    assert parts_drawn(moments(structure), NO_FACTS) == (("spine", "front-board", "back board"),)


def test_a_part_on_which_only_boxes_lie_has_none():
    structure = Structure({"x": original("x"), "box": added("box", 1)}, covers=(("x", "box"),))
    assert parts_drawn(moments(structure), NO_FACTS) == ()


def test_a_text_block_has_none_for_a_thread_where_its_spine_is_drawn():
    structure = over(
        LEDGER[0].structure, found("twine"), Bond("text-block", "twine", How.HELD, held=("sewn",))
    )
    assert parts_drawn(moments(structure), NO_FACTS) == (("spine", "board 1", "board 2"),)


def test_what_is_original_and_never_touched_is_not_drawn():
    skin = replace(found("skin", "calf"), since=Since.ORIGINAL)
    structure = over(Structure(), original("cover"), skin, stuck("cover", "skin"))
    assert drawings_for(moments(structure), CASE, LEXICON) == ()


def test_every_drawing_of_a_page_has_ids_of_its_own():
    both = moments(
        over(LEDGER[-1].structure, *CHART[-1].structure.things.values(), *CHART[-1].structure.bonds)
    )
    drawn = drawings_for(both, CASE, LEXICON)
    ids = [one.get("id") for drawing in drawn for one in parsed(drawing).iter() if one.get("id")]
    assert [one.part for one in drawn] == ["spine", "sheet"]
    assert len(ids) == len(set(ids))


def test_the_way_back_is_drawn_where_its_cuts_are_seen_on_the_final_state():
    cuts = [Cut(1, "spine", "release-lining", "damp poultice"), Cut(2, "sheet", "nothing")]
    (drawing,) = way_back_for(LEDGER, CASE, LEXICON, cuts)
    assert drawing.cuts == ("Cut 1: Between spine and release lining: damp poultice.",)
    assert len(drawing.states) == 1
    assert drawing.gone == ()


def test_a_prefix_from_a_name_makes_ids_that_can_be_referred_to():
    (drawing,) = drawings_for(LEDGER, CASE, LEXICON, "bare-volume 1/board (left)")
    parsed(drawing)
    assert 'id="bare-volume-1-board--left--1-title"' in drawing.svg


@settings(max_examples=15)
@given(stories)
def test_any_treatment_gets_drawings_that_can_be_read(told):
    for drawing in drawings_for(told, CASE, LEXICON):
        parsed(drawing)
