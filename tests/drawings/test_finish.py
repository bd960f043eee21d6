"""A finished drawing says in words what it shows."""

from __future__ import annotations

from casebook.drawings.facts import NO_FACTS
from casebook.drawings.finish import CROWDED, NOT_TO_SCALE, finished, rows
from casebook.drawings.section import on_parts, section
from casebook.drawings.stack import story
from tests.drawings.structures import LEDGER, high, parsed

SPINE = ("spine", "board 1", "board 2")


def _laid(moments):
    told = story(moments, SPINE)
    return section("x", told, NO_FACTS, on_parts(told), 0.003, {})


def test_there_is_a_row_for_each_number_in_one_list_or_the_other():
    laid = _laid(LEDGER)
    there, gone = rows(laid, at_end=True), rows(laid, at_end=False)
    assert [row.number for row in (*there, *gone)] == list(range(1, 13))
    assert [row.layer for row in gone] == ["reback-leather"]
    assert str(there[0]) == "1. spine (original)"


def test_the_description_is_short_and_names_everything_that_is_there():
    made = finished(_laid(LEDGER), "Title", (400, 100))
    told = parsed(made).findtext("{http://www.w3.org/2000/svg}desc")
    assert told.startswith("From the original outwards: 1 spine, 2 board 1")
    assert "11 title label" in told
    assert (made.title, made.part, len(made.states)) == ("Title", "spine", 11)


def test_what_is_not_to_scale_or_not_drawn_is_said():
    assert finished(_laid(LEDGER), "T", (1, 1)).note == NOT_TO_SCALE
    assert finished(_laid(high(60)), "T", (1, 1)).note == f"{NOT_TO_SCALE} {CROWDED}"
