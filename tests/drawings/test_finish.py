"""A finished drawing says in words what it shows."""

from __future__ import annotations

import re

from casebook.compute.clocks import Clock
from casebook.compute.figures import Figure
from casebook.drawings import sheet, spine
from casebook.drawings.cuts import Cut
from casebook.drawings.facts import NO_FACTS
from casebook.drawings.finish import CROWDED, NOT_TO_SCALE, finished, rows
from casebook.drawings.section import on_parts, section
from casebook.drawings.sittings import Sitting
from casebook.drawings.stack import story
from casebook.drawings.timeline import timeline
from casebook.files import templates_folder
from tests.drawings.structures import CHART, LEDGER, high, parsed

SPINE = ("spine", "board 1", "board 2")


def _laid(moments):
    told = story(moments, SPINE)
    return section("x", told, NO_FACTS, on_parts(told), 0.003, {})


def test_there_is_a_row_for_each_number_in_one_list_or_the_other():
    laid = _laid(LEDGER)
    there, gone = rows(laid, at_end=True), rows(laid, at_end=False)
    assert [row.number for row in (*there, *gone)] == list(range(1, 13))
    assert [row.layer for row in gone] == ["reback-leather"]
    assert gone[0].text.endswith("stuck with animal glue, on board 1, board 2 and old glue")
    assert str(there[0]) == "1. spine (original): width 68 mm"


def test_the_description_is_short_and_names_everything_that_is_there():
    made = finished(_laid(LEDGER), "Title", (400, 100))
    told = parsed(made).findtext("{http://www.w3.org/2000/svg}desc") or ""
    assert told.startswith("From the original outwards: 1 spine, 2 board 1")
    assert "11 title label" in told
    assert (made.title, made.part, len(made.states)) == ("Title", "spine", 11)


def test_the_style_sheet_themes_every_class_that_drawings_have_and_no_other():
    css = (templates_folder() / "assets" / "css" / "drawings.css").read_text(encoding="utf-8")
    book = spine.draw(story(LEDGER, SPINE), NO_FACTS, "a", [Cut(1, "spine", "release-lining")])
    calendar = timeline([Sitting("1", "", 9, 9, Clock(Figure(60)), Clock())], "c")
    assert calendar is not None
    every = (book, sheet.draw(story(CHART, ("sheet",)), NO_FACTS, "b"), calendar)
    used = {one for made in every for one in re.findall(r"\bd-[a-z-]+", made.svg)}
    styled = set(re.findall(r"\.(d-[a-z-]+)", css)) - {"d-new"}
    assert used - {"d-desc"} == styled


def test_what_is_not_to_scale_or_not_drawn_is_said():
    assert finished(_laid(LEDGER), "T", (1, 1)).note == NOT_TO_SCALE
    assert finished(_laid(high(60)), "T", (1, 1)).note == f"{NOT_TO_SCALE} {CROWDED}"
