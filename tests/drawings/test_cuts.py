"""The way back as numbered cuts."""

from __future__ import annotations

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from casebook.drawings import sheet, spine
from casebook.drawings.cuts import Cut, Mark, Numbers, cut_key, cut_lines, cut_words, marks
from casebook.drawings.facts import NO_FACTS
from casebook.drawings.sheet import shaped as flat
from casebook.drawings.spine_shape import shaped
from casebook.drawings.stack import story
from tests.drawings.structures import (
    CHART,
    CHART_FACTS,
    HOLLOW,
    LEDGER,
    LEDGER_FACTS,
    NAMES,
    parsed,
    stories,
)

SPINE = ("spine", "board 1", "board 2")


def _marks(moments, *cuts):
    shape = shaped(story(moments[-1:], SPINE), LEDGER_FACTS, "x")
    return shape, marks(shape, cuts)


def test_a_cut_between_two_things_runs_in_the_gap_between_them():
    shape, (found,) = _marks(LEDGER, Cut(1, "spine", "release-lining"))
    seen = next(one for one in shape.section.by_part["spine"] if one.sight.name == "release-lining")
    assert found.data == shape.arc.line(-1, 1, seen.slot.low - seen.slot.gap / 2)
    assert found.left[0] < found.right[0]


def test_a_layer_that_splits_is_cut_through_its_middle():
    shape, (found,) = _marks(LEDGER, Cut(1, "release-lining", "release-lining"))
    seen = next(one for one in shape.section.by_part["spine"] if one.sight.name == "release-lining")
    assert found.data == shape.arc.line(-1, 1, (seen.slot.low + seen.slot.high) / 2)


def test_a_joint_is_cut_across_beside_the_spine():
    shape, (found,) = _marks(LEDGER, Cut(1, "cloth-lining/spine", "cloth-lining/board 1"))
    assert found.part == "board 1"
    assert found.left[1] == pytest.approx(shape.boards["board 1"].top)


def test_a_tube_is_cut_at_both_folds():
    _, (found,) = _marks(HOLLOW, Cut(1, "tube/inner", "tube/outer"))
    assert found.data.count("M") + found.data.count("m") == 2


def test_on_a_board_the_cut_runs_down_it():
    _, (found,) = _marks(LEDGER, Cut(1, "board 2", "cloth-lining/board 2"))
    assert found.part == "board 2"
    assert "v" in found.data


def test_what_is_not_on_the_drawing_has_no_mark_and_is_said_all_the_same():
    cut = Cut(1, "sheet", "lining", "with water")
    assert _marks(LEDGER, cut)[1] == ()
    assert cut_words([cut]) == ("Cut 1: Between sheet and lining: with water.",)


def test_the_drawing_and_the_words_have_the_same_numbers():
    cuts = (
        Cut(1, "board 1", "cloth-lining/board 1", "pare"),
        Cut(2, "board 2", "cloth-lining/board 2", "pare"),
        Cut(3, "release-lining", "release-lining", "pull the cloth"),
    )
    drawing = spine.draw(story(LEDGER[-1:], SPINE), LEDGER_FACTS, "x", cuts)
    parsed(drawing)
    assert sorted(re.findall(r'd-cut-no"[^>]*>(\d)', drawing.svg)) == ["1", "2", "3"]
    assert drawing.cuts[2] == "Cut 3: Through release lining, in its own thickness: pull the cloth."
    assert "cut of the way back" in drawing.svg


def test_a_sheet_has_its_cuts_too():
    stack = flat(story(CHART[-1:], ("sheet",)), CHART_FACTS, "x")
    assert len(marks(stack, [Cut(1, "sheet", "sheet-lining")])) == 1
    drawing = sheet.draw(
        story(CHART[-1:], ("sheet",)), CHART_FACTS, "x", [Cut(1, "sheet", "sheet-lining")]
    )
    parsed(drawing)


def test_without_cuts_nothing_is_drawn():
    assert (cut_lines("x", ()), cut_key("x", (), 10)) == ("", ("", 10))
    assert Numbers(14, 16, at_left=True).draw(()) == ("", 16)


def test_numbers_stand_in_the_order_of_what_they_point_at():
    low, high = Mark(1, "", ((0, 90), (9, 90)), "a"), Mark(2, "", ((0, 10), (9, 10)), "a")
    drawn, _ = Numbers(14, 16, at_left=True).draw([low, high])
    assert re.findall(r">(\d)<", drawn) == ["2", "1"]


def test_a_cut_in_several_places_has_one_number_with_a_line_to_each():
    left = [Mark(1, "", ((0, y), (9, y)), "a") for y in (10, 50)]
    drawn, end = Numbers(14, 16, at_left=True).draw(left)
    assert drawn.count("<text") == 1
    assert 'd="M14 16l-14-6M14 16l-14 34"' in drawn
    assert end == 16 + 25


NAME = st.sampled_from(NAMES)


@settings(max_examples=20)
@given(stories, st.lists(st.builds(Cut, st.integers(1, 9), NAME, NAME), max_size=4))
def test_any_cuts_can_be_drawn(told, cuts):
    parsed(spine.draw(story(told[-1:], SPINE), NO_FACTS, "x", cuts))
    parsed(sheet.draw(story(told[-1:], ("sheet",)), NO_FACTS, "y", cuts))
