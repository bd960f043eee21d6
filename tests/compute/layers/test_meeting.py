"""What is laid on a layer meets the right piece of it."""

from __future__ import annotations

from casebook.compute.structure import Structure
from tests.compute.layers.told import steps, told

PASTE = "material: linen, adhesive: wheat-starch-paste"


def laid(text: str) -> Structure:
    return steps(text).final


def test_what_is_laid_on_a_tube_lies_on_its_outer_wall() -> None:
    found = laid(f"do: make-hollow, adds: tube, onto: spine\nadds: cloth, onto: tube, {PASTE}")
    cloth = [line for line in told(found) if line.startswith("cloth")]
    assert cloth == ["cloth on tube/outer: stuck wheat-starch-paste"]


def test_on_a_layer_with_zones_a_part_lies_where_it_belongs() -> None:
    found = laid(f"""
        adds: cloth, onto: [board 1, spine, board 2], {PASTE}
        takes-off: endband head
        puts-back: endband head, onto: cloth, adhesive: pva
        opens: board 2/sides
        joins: board 2/sides, to: cloth, adhesive: wheat-starch-paste
    """)
    assert "endband head on cloth/spine: stuck polyvinyl-acetate reused" in told(found)
    assert "board 2/sides on cloth/board 2: stuck wheat-starch-paste" in told(found)


def test_a_board_put_back_on_the_cloth_is_held_by_a_zone_of_its_own() -> None:
    found = laid(f"""
        takes-off: [board 1, board 2]
        adds: cloth, onto: spine, {PASTE}
        puts-back: board 1, onto: cloth, adhesive: pva
        joins: board 2, to: cloth, adhesive: pva
    """)
    assert told(found) == [
        "cloth/spine on spine: stuck wheat-starch-paste",
        "cloth/board 1 beside cloth/spine",
        "cloth/board 2 beside cloth/spine",
        "cloth/board 1 on board 1: stuck polyvinyl-acetate reused",
        "cloth/board 2 on board 2: stuck polyvinyl-acetate",
    ]
    assert not any(one.apart for one in found.things.values())


def test_a_label_on_a_reback_lies_on_its_spine_and_so_does_a_patch() -> None:
    found = laid(f"""
        takes-off: title-label
        adds: paper, onto: [board 1, spine, board 2], {PASTE}
        puts-back: title-label, onto: paper, adhesive: wheat-starch-paste
        adds: patch, onto: paper, adhesive: wheat-starch-paste, scope: one hole
    """)
    assert told(found)[-2:] == [
        "title-label on paper/spine: stuck wheat-starch-paste reused",
        "patch on paper/spine: stuck wheat-starch-paste",
    ]


def test_a_layer_laid_on_zones_without_a_word_of_where_lies_where_those_were_laid_first() -> None:
    found = laid(f"""
        adds: cloth, onto: spine, spans: {{spine: 75 mm, board 1: 40 mm}}, {PASTE}
        adds: paper, onto: cloth, {PASTE}
    """)
    assert "paper on cloth/spine: stuck wheat-starch-paste" in told(found)


def test_what_lies_on_a_layer_that_went_meets_what_was_beneath() -> None:
    found = laid(f"""
        adds: one, onto: spine, {PASTE}
        adds: two, onto: one, {PASTE}
        removes: two
        adds: three, onto: two, {PASTE}
    """)
    assert told(found)[-1] == "three on one: stuck wheat-starch-paste"
