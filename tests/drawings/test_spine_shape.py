"""The layout of a spine: true to width and rise, boards at both sides, honest where unmeasured."""

from __future__ import annotations

from dataclasses import replace

import pytest

from casebook.compute.structure import Structure
from casebook.drawings.facts import NO_FACTS
from casebook.drawings.lanes import Board
from casebook.drawings.spine_shape import SIDE, shaped
from casebook.drawings.stack import story
from tests.drawings.structures import (
    HOLLOW,
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


def _ledger():
    return shaped(story(LEDGER, SPINE), LEDGER_FACTS, "x")


def test_the_curve_has_the_proportion_of_the_measured_spine():
    arc = _ledger().arc
    assert arc.rise / arc.chord == pytest.approx(14 / 68, rel=0.01)


def test_boards_stand_at_either_side_as_thick_as_they_are():
    shape = _ledger()
    assert [one.side for one in shape.boards.values()] == [-1, 1]
    assert shape.thick("board 1") == pytest.approx(3500 * shape.per_um)


def test_a_zone_runs_as_far_down_its_board_as_it_was_cut_and_others_in_proportion():
    shape = _ledger()
    zones = {seen.sight.name: shape.band(seen) for seen in shape.section.by_part["board 1"]}
    cloth, paper = zones["cloth-lining/board 1"], zones["spine-paper/board 1"]
    reach = shape.boards["board 1"].reach
    assert (cloth.end - paper.end) * reach == pytest.approx(6000 * shape.per_um, abs=1)


def test_a_narrower_lining_is_drawn_narrower_and_one_that_goes_on_over_boards_from_end_to_end():
    shape = _ledger()
    bands = {seen.sight.name: shape.band(seen) for seen in shape.section.by_part["spine"]}
    assert 0.95 < bands["second-lining"].end < 1
    assert bands["cloth-lining/spine"].end == 1


def test_a_layer_wider_than_the_spine_hangs_free_beyond_it():
    wide = over(
        Structure(),
        *(original("spine", width_um=50_000), added("cloth", 1, width_um=80_000)),
        stuck("spine", "cloth"),
    )
    shape = shaped(story(moments(wide), ("spine",)), NO_FACTS, "x")
    (cloth,) = shape.section.by_part["spine"]
    assert shape.band(cloth).end == 1.12


def test_what_nobody_measured_is_said():
    shape = shaped(story(HOLLOW, SPINE), NO_FACTS, "x")
    assert shape.section.notes == ("The rise of the spine is not recorded: it is drawn flat.",)
    bare = shaped(story(moments(over(Structure(), original("spine"))), ("spine",)), NO_FACTS, "x")
    assert bare.section.notes[0] == "The width of the spine is not recorded."


def test_a_lone_second_board_is_at_the_right():
    told = story(LEDGER, ("spine", "board 2"))
    assert shaped(told, NO_FACTS, "x").boards["board 2"].side == 1


def test_a_high_pile_leaves_room_at_its_sides():
    facts = replace(LEDGER_FACTS, rises={"spine": 20_000})
    shape = shaped(story(high(40), SPINE), facts, "x")
    furthest = shape.arc.point(1, shape.section.top("spine"))[0] - shape.arc.middle
    assert furthest <= SIDE + 1


def test_a_rise_beyond_half_the_width_is_drawn_as_half_a_circle():
    facts = replace(LEDGER_FACTS, rises={"spine": 900_000})
    arc = shaped(story(LEDGER, SPINE), facts, "x").arc
    assert arc.rise == pytest.approx(arc.chord / 2, rel=0.01)
    assert isinstance(shaped(story(LEDGER, SPINE), facts, "x").lane("board 1"), Board)
