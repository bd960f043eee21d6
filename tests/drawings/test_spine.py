"""The cross-section of a spine."""

from __future__ import annotations

import dataclasses

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from casebook.compute.structure import Structure
from casebook.drawings import spine
from casebook.drawings.facts import NO_FACTS, Facts
from casebook.drawings.stack import story
from tests.drawings.structures import (
    HOLLOW,
    LEDGER,
    LEDGER_FACTS,
    LEXICON,
    found,
    high,
    moments,
    original,
    over,
    parsed,
    seen_at_end,
    stories,
    stuck,
)

SPINE = ("spine", "board 1", "board 2")


def _ledger():
    return spine.draw(story(LEDGER, SPINE), LEDGER_FACTS, "ledger")


def test_the_ledger(golden):
    golden("drawings/ledger.svg", _ledger().svg.replace("><", ">\n<"))


def test_what_is_shown_without_scripts_is_what_the_list_names():
    drawing = _ledger()
    assert seen_at_end(drawing) == {row.layer for row in drawing.alternative}


def test_every_layer_that_ever_lay_there_is_in_the_one_file_and_in_the_lists():
    drawing = _ledger()
    groups = [one for one in parsed(drawing).iter() if one.get("data-layer")]
    every = {row.layer for row in (*drawing.alternative, *drawing.gone)}
    assert {one.get("data-layer") for one in groups} == every


def test_each_state_shows_what_is_there_then():
    shown = [(one.get("data-layer"), one.get("data-in")) for one in parsed(_ledger()).iter()]
    assert ("reback-leather", "0-1") in shown
    assert ("release-lining", "4-10") in shown
    assert ("spine", None) in shown


def test_what_is_left_on_the_boards_of_a_layer_keeps_its_number_there():
    parts = [original(name) for name in SPINE]
    zones = [found(f"cover/{name}", of="cover", zone=name) for name in SPINE]
    bonds = [stuck(name, f"cover/{name}") for name in SPINE]
    whole = over(Structure(), *parts, *zones, *bonds)
    drawing = spine.draw(
        story(moments(whole, over(whole, without=("cover/spine",))), SPINE), NO_FACTS, "x"
    )
    texts = [
        (group.get("data-in"), one.text)
        for group in parsed(drawing).iter()
        for one in group
        if one.tag.endswith("text") and one.text == "4"
    ]
    assert texts == [("0", "4"), ("1", "4"), ("1", "4")]


def test_the_same_treatment_gives_the_same_bytes():
    assert _ledger() == _ledger()


def test_names_cannot_break_out():
    hostile = '"><script>alert(1)</script>'
    structure = LEDGER[-1].structure
    thing = dataclasses.replace(
        structure.things["release-lining"], of=hostile, materials=(hostile,)
    )
    things = {**structure.things, "release-lining": thing}
    moment = dataclasses.replace(
        LEDGER[-1], structure=dataclasses.replace(structure, things=things)
    )
    drawing = spine.draw(story([moment], SPINE), LEDGER_FACTS, "x")
    parsed(drawing)
    assert "<script" not in drawing.svg
    assert any(hostile in row.text for row in drawing.alternative)


def test_a_hollow_tube_has_two_walls_of_one_number():
    drawing = spine.draw(story(HOLLOW, SPINE), Facts(lexicon=LEXICON), "x")
    tube = [row for row in drawing.alternative if row.layer == "tube"]
    assert len(tube) == 1
    assert tube[0].text.endswith("a hollow tube")
    texts = [one.text for one in parsed(drawing).iter() if one.tag.endswith("text")]
    assert texts.count(str(tube[0].number)) == 2


@pytest.mark.parametrize(("count", "at_once"), [(60, False), (60, True), (20, False)])
def test_sixty_layers_weigh_at_most_forty_kilobytes(count, at_once):
    drawing = spine.draw(story(high(count, at_once), SPINE), LEDGER_FACTS, "s1")
    parsed(drawing)
    assert len(drawing.svg.encode()) <= 40_000


def test_a_wave_ends_where_it_should():
    assert spine.wave(10, 50)[:5] == ("q", 5.0, -7.0, 10.0, 0)


@settings(max_examples=20)
@given(stories, st.sampled_from([None, 0, 5_000, 10**9]))
def test_any_structure_can_be_drawn_and_said(told, rise):
    facts = NO_FACTS if rise is None else Facts(rises={"spine": rise})
    drawing = spine.draw(story(told, SPINE), facts, "x")
    parsed(drawing)
    groups = seen_at_end(drawing)
    assert groups <= {
        row.layer.replace("\x00", "\ufffd").replace("\ud800", "\ufffd")
        for row in drawing.alternative
    }
