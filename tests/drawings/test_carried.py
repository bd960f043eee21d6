"""What lies on some parts, and what touches them and is no part of the drawing."""

from __future__ import annotations

from hypothesis import given, settings

from casebook.compute.structure import Bond, How, Since, Structure, Thing
from casebook.drawings.carried import carried, root_of
from tests.drawings.structures import added, original, over, structures, stuck


def test_all_that_lies_on_a_part_is_carried_at_whatever_height():
    structure = over(
        Structure(),
        *(original("spine"), original("board 1"), added("a", 1), added("b", 2)),
        *(stuck("spine", "a"), stuck("a", "b"), stuck("board 1", "b")),
    )
    assert carried(structure, ("spine",)) == {"spine", "a", "b"}


def test_what_only_covers_is_carried_too():
    structure = Structure({"x": original("x"), "y": added("y", 1)}, covers=(("x", "y"),))
    assert carried(structure, ("x",)) == {"x", "y"}


def test_what_lies_inside_can_be_left_out():
    there = over(
        Structure(),
        *(original("board 1"), added("in", 1), added("out", 2)),
        *(stuck("board 1", "in", face="inner"), stuck("board 1", "out", face="outer")),
    )
    assert carried(there, ("board 1",), inside=False) == {"board 1", "out"}


def test_a_box_or_wrapper_is_not():
    box = Thing("box", "box", part=True, since=Since.ADDED)
    structure = Structure({"x": original("x"), "box": box}, covers=(("x", "box"),))
    assert carried(structure, ("x",)) == {"x"}


def test_a_mount_to_which_a_hinge_holds_is_carried():
    mount = Thing("mount", "mount", part=True, since=Since.ADDED)
    structure = over(
        Structure(covers=(("sheet", "mount"),)), original("sheet"), mount, added("hinge", 2)
    )
    held = over(structure, stuck("mount", "hinge"), stuck("sheet", "hinge"))
    assert carried(held, ("sheet",)) == {"sheet", "mount", "hinge"}


def test_a_zone_that_lies_on_another_part_is_not_and_one_on_these_parts_is():
    things = (original("board 1"), original("board 2"))
    zones = (added(f"skin/{one.name}", 1, of="skin", zone=one.name) for one in things)
    joint = Bond("skin/board 1", "skin/board 2", How.JOINT)
    structure = over(
        Structure(),
        *things,
        *zones,
        joint,
        *(stuck(one.name, f"skin/{one.name}") for one in things),
    )
    assert carried(structure, ("board 1",)) == {"board 1", "skin/board 1"}
    assert len(carried(structure, ("board 1", "board 2"))) == 4


def test_a_section_sewn_to_its_own_text_block_is_no_layer_but_a_part_stuck_on_is():
    base = over(
        Structure(),
        *(original("spine"), original("section 4"), original("endband"), added("support", 1)),
        Bond("spine", "section 4", How.GROWN),
        Bond("spine", "support", How.HELD),
        Bond("support", "section 4", How.HELD),
    )
    structure = over(base, stuck("support", "endband"))
    assert carried(structure, ("spine",)) == {"spine", "support", "endband"}


@settings(max_examples=50)
@given(structures())
def test_the_parts_themselves_are_always_among_it(structure):
    roots = tuple(structure.things)[:2]
    assert set(roots) <= carried(structure, roots) <= set(structure.things)


def test_a_place_on_a_part_is_on_that_part():
    assert root_of("board 1/sides", ("spine", "board 1")) == "board 1"
    assert root_of("board 12", ("board 1",)) == ""
