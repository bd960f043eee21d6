"""Bars: figures as text, lengths in proportion, honest about what is missing."""

from __future__ import annotations

import re

from casebook.compute.areas import areas
from casebook.compute.figures import Doubt, Effect, Figure
from casebook.compute.hours import Plan, timesheet
from casebook.drawings.bars import Bar, bars, by_material, planned_and_actual
from casebook.drawings.facts import Facts
from tests.compute.written import LEDGER, case
from tests.drawings.structures import LEXICON, parsed

MISSING = Doubt(Effect.AT_LEAST, "step has no time", "steps have no time")


def test_the_longest_bar_fills_the_width_and_others_are_in_proportion():
    drawn = bars("Title", [Bar("a", 100, "100 g"), Bar("b", 25, "25 g")], "x").svg
    assert [float(one) for one in re.findall(r'd="M8 \d+h([\d.]+)v', drawn)] == [384, 96]


def test_names_and_figures_are_text_and_said_again_in_words():
    drawing = bars("Title", [Bar("a<b", 1, "1 g")], "x", "one is missing")
    texts = [one.text for one in parsed(drawing).iter() if one.tag.endswith("text")]
    assert texts == ["a<b", "1 g"]
    assert [str(row) for row in drawing.alternative] == ["1. a<b: 1 g"]
    assert drawing.note == "One is missing."


def test_a_lower_bound_has_no_straight_end():
    closed, broken = (
        bars("T", [Bar("a", 9, "9", open_=open_)], "x").svg for open_ in (False, True)
    )
    assert len(re.findall(r"l-?\d", broken)) > len(re.findall(r"l-?\d", closed))


def test_areas_by_material_largest_first():
    laid = areas(case(LEDGER), lambda word: word)
    drawing = by_material(laid, Facts(lexicon=LEXICON), "x")
    assert drawing is not None
    assert [row.text.partition(":")[0] for row in drawing.alternative] == ["linen", "tengujo"]
    assert by_material(areas(case("id: x"), lambda word: word), Facts(), "x") is None


def test_planned_and_actual_time_or_nothing():
    drawing = planned_and_actual(timesheet(case(LEDGER), lambda word: word).plan, "x")
    assert drawing is not None
    assert drawing.alternative[0].text == "planned: 14 h"
    assert drawing.alternative[1].text.startswith("actual: at least 4 h 15 min")
    assert planned_and_actual(Plan(planned=Figure(60)), "x") is None


def test_bars_of_nothing_are_no_fault():
    parsed(bars("Title", [], "x"))
    parsed(bars("Title", [Bar("a", 0, "0")], "x"))


def test_a_long_name_leaves_room_for_its_figure() -> None:
    name, figure = "a paper with a very long name of its own", "at least 861 cm² (133 in²)"
    drawn = str(bars("Title", [Bar(name, 1, figure)], "x").svg)
    assert "a paper with a very…" in drawn
    assert name in str(bars("Title", [Bar(name, 1, "1 h")], "x").svg)
