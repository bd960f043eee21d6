"""The cross-section of a flat part."""

from __future__ import annotations

import re

from hypothesis import given, settings

from casebook.compute.structure import Structure
from casebook.drawings import sheet
from casebook.drawings.facts import NO_FACTS, Facts
from casebook.drawings.sheet import OVER, UNDER, WITHIN
from casebook.drawings.stack import story
from tests.drawings.structures import (
    CHART,
    CHART_FACTS,
    added,
    moments,
    original,
    over,
    parsed,
    seen_at_end,
    stories,
    stuck,
)


def _chart():
    return sheet.draw(story(CHART, ("sheet",)), CHART_FACTS, "chart")


def _stack():
    return sheet.shaped(story(CHART, ("sheet",)), CHART_FACTS, "x")


def test_the_chart(golden):
    golden("drawings/chart.svg", _chart().svg.replace("><", ">\n<"))


def test_what_lies_on_the_back_is_below_and_fills_are_in_the_thickness():
    found = {
        part: [one.sight.name for one in seen] for part, seen in _stack().section.by_part.items()
    }
    assert found == {
        WITHIN: ["fills"],
        OVER: [],
        UNDER: ["brown-strips", "fold-mends", "sheet-lining"],
    }


def test_a_fill_is_as_thick_as_the_sheet():
    stack = _stack()
    band = stack.band(stack.section.by_part[WITHIN][0])
    assert (band.low, band.high) == (0, stack.thick)


def test_a_lining_wider_than_the_sheet_is_seen_to_be():
    stack = _stack()
    lining = next(one for one in stack.section.by_part[UNDER] if one.sight.name == "sheet-lining")
    assert stack.band(lining).end > 1


def test_what_lies_on_a_thing_lies_on_its_face():
    base = over(Structure(), original("sheet"), added("a", 1), added("b", 2))
    told = story(
        moments(over(base, stuck("sheet", "a", face="verso"), stuck("a", "b"))), ("sheet",)
    )
    stack = sheet.shaped(told, NO_FACTS, "x")
    assert [one.sight.name for one in stack.section.by_part[UNDER]] == ["a", "b"]


def test_the_faces_are_named_by_what_the_part_is():
    assert re.findall(r'd-face"[^>]*>(\w+)', _chart().svg) == ["recto", "verso"]
    lined = over(Structure(), original("board 1"), added("a", 1), stuck("board 1", "a"))
    board = sheet.draw(story(moments(lined), ("board 1",)), NO_FACTS, "x")
    assert re.findall(r'd-face"[^>]*>(\w+)', board.svg) == ["outside", "inside"]
    strap = over(Structure(), original("strap"), added("a", 1), stuck("strap", "a"))
    assert "d-face" not in sheet.draw(story(moments(strap), ("strap",)), NO_FACTS, "x").svg


def test_a_width_that_nobody_measured_is_said():
    drawing = sheet.draw(story(CHART, ("sheet",)), NO_FACTS, "x")
    assert drawing.note.startswith("The width of the sheet is not recorded.")


def test_what_is_shown_without_scripts_is_what_the_list_names():
    drawing = _chart()
    assert seen_at_end(drawing) == {row.layer for row in drawing.alternative}
    assert [row.layer for row in drawing.gone] == ["brown-strips"]


@settings(max_examples=20)
@given(stories)
def test_any_structure_can_be_drawn_and_said(told):
    for facts in (NO_FACTS, Facts(widths={"sheet": 500_000})):
        parsed(sheet.draw(story(told, ("sheet",)), facts, "x"))
