"""What is laid: zones with joints, tubes with a fold, several bonds, infills, what only covers."""

from __future__ import annotations

from casebook.compute.structure import Structure
from tests.compute.layers.told import names, played, steps, told

PASTE = "material: linen, adhesive: wheat-starch-paste"


def laid(text: str) -> Structure:
    return steps(text).final


def test_a_lining_lies_on_the_spine() -> None:
    found = laid(f"adds: lining, onto: spine, {PASTE}")
    assert names(found) == ["lining"]
    assert told(found) == ["lining on spine: stuck wheat-starch-paste"]


def test_a_layer_that_spans_spine_and_boards_is_a_zone_for_each_with_joints_between() -> None:
    found = laid(
        f"adds: cloth, onto: spine, spans: {{spine: 75 mm, board 1: 40 mm, board 2: 40 mm}}, {PASTE}"
    )
    assert told(found) == [
        "cloth/spine on spine: stuck wheat-starch-paste",
        "cloth/board 1 on board 1: stuck wheat-starch-paste",
        "cloth/board 2 on board 2: stuck wheat-starch-paste",
        "cloth/board 1 beside cloth/spine",
        "cloth/board 2 beside cloth/spine",
    ]
    assert [found.things[f"cloth/{part}"].width_um for part in ("spine", "board 1")] == [
        75_000,
        40_000,
    ]


def test_several_places_without_widths_make_zones_too() -> None:
    found = laid(f"adds: cloth, onto: [board 1, spine, board 2], {PASTE}")
    assert names(found) == ["cloth/board 1", "cloth/spine", "cloth/board 2"]
    assert "cloth/board 1 beside cloth/spine" in told(found)


def test_zones_without_a_spine_lie_in_a_row() -> None:
    found = laid(f"adds: strip, onto: [leaf 1, leaf 2, leaf 3], {PASTE}")
    assert told(found)[-2:] == [
        "strip/leaf 2 beside strip/leaf 1",
        "strip/leaf 3 beside strip/leaf 2",
    ]


def test_on_two_boards_without_their_spine_lie_two_pieces() -> None:
    found = laid(f"adds: pastedowns, onto: [board 1/inner, board 2/inner], {PASTE}")
    assert told(found) == [
        "pastedowns/board 1 on board 1: stuck wheat-starch-paste at inner",
        "pastedowns/board 2 on board 2: stuck wheat-starch-paste at inner",
    ]


def test_separate_pieces_on_several_parts_have_no_joint() -> None:
    pieces = "scope: {pieces: [{count: 2, height: 30 cm, width: 12 mm}]}"
    found = laid(f"adds: guards, onto: [section 1, section 2], {pieces}, {PASTE}")
    assert not any("beside" in line for line in told(found))


def test_places_on_one_part_are_one_thing() -> None:
    found = laid(f"adds: edge, onto: [sheet/recto, sheet/verso], {PASTE}")
    assert told(found) == [
        "edge on sheet: stuck wheat-starch-paste at recto",
        "edge on sheet: stuck wheat-starch-paste at verso",
    ]


def test_a_zone_lies_on_the_zone_of_the_layer_below() -> None:
    found = laid(f"""
        adds: cloth, onto: spine, spans: {{spine: 75 mm, board 1: 40 mm}}, {PASTE}
        adds: paper, onto: cloth, spans: {{spine: 75 mm, board 1: 34 mm}}, {PASTE}
    """)
    assert "paper/board 1 on cloth/board 1: stuck wheat-starch-paste" in told(found)
    assert "paper/board 1 on board 1: stuck wheat-starch-paste" not in told(found)


def test_a_zone_that_is_wider_than_the_one_below_lies_on_the_board_as_well() -> None:
    found = laid(f"""
        adds: cloth, onto: spine, spans: {{spine: 75 mm, board 1: 40 mm}}, {PASTE}
        adds: paper, onto: cloth, spans: {{spine: 75 mm, board 1: 60 mm}}, {PASTE}
    """)
    assert "paper/board 1 on board 1: stuck wheat-starch-paste (beyond cloth/board 1)" in told(
        found
    )


def test_an_overhang_that_is_joined_later_is_free_until_then() -> None:
    played_ = steps(f"""
        adds: cloth, onto: spine, spans: {{spine: 75 mm, board 1: 40 mm}}, {PASTE}
        joins: cloth, to: board 1, adhesive: pva, face: outer
    """)
    free = played_.moments[1].structure
    assert free.covers == (("board 1", "cloth/board 1"),)
    assert "cloth/board 1 on board 1: stuck polyvinyl-acetate at outer" in told(played_.final)
    assert played_.final.covers == ()


def test_joining_makes_the_zone_that_no_width_was_given_for() -> None:
    found = laid(f"""
        adds: cloth, onto: spine, {PASTE}
        joins: cloth, to: [board 1, board 2], adhesive: pva
    """)
    assert names(found) == ["cloth/spine", "cloth/board 1", "cloth/board 2"]
    assert "cloth/board 2 on board 2: stuck polyvinyl-acetate" in told(found)


def test_sewing_through_two_things_makes_no_zones() -> None:
    found = laid("adds: thread, onto: [section 1, text-block], held: sewn, material: linen-thread")
    assert told(found) == ["thread on section 1: held sewn", "thread on text-block: held sewn"]


def test_a_guard_pasted_and_sewn_through_holds_in_both_ways() -> None:
    found = laid(
        "adds: guard, onto: section 1, material: kozo-paper, "
        "bonds: [{onto: section 1, adhesive: wheat-starch-paste}, "
        "{onto: text-block, held: sewn, cuts: section 1}]"
    )
    assert told(found) == [
        "guard on section 1: stuck wheat-starch-paste",
        "guard on text-block: held sewn",
    ]
    assert found.bonds[-1].cuts == ("section 1",)


def test_each_bond_of_a_layer_has_its_own_place() -> None:
    found = laid(
        "adds: cloth, material: linen, bonds: ["
        "{onto: spine, adhesive: wheat-starch-paste, where: between the cords}, "
        "{onto: board 1, adhesive: pva, face: inner}, {onto: board 1, held: tacked}]"
    )
    assert told(found) == [
        "cloth/spine on spine: stuck wheat-starch-paste partly (between the cords)",
        "cloth/board 1 on board 1: stuck polyvinyl-acetate at inner",
        "cloth/board 1 on board 1: held tacked",
        "cloth/board 1 beside cloth/spine",
    ]


def test_a_hollow_tube_has_two_walls_and_two_bonds() -> None:
    found = laid(f"""
        adds: tube, onto: spine, walls: "1 on, 2 off", material: kraft-paper, adhesive: wheat-starch-paste
        adds: cloth, onto: tube/outer, {PASTE}
    """)
    assert told(found) == [
        "tube/inner on spine: stuck wheat-starch-paste",
        "tube/outer folded to tube/inner",
        "cloth on tube/outer: stuck wheat-starch-paste",
    ]


def test_a_zone_over_a_tube_is_the_zone_of_its_spine() -> None:
    found = laid(f"""
        do: make-hollow, adds: tube, onto: spine
        adds: cloth, onto: tube/outer, spans: {{tube/outer: 60 mm, board 1: 20 mm}}, {PASTE}
    """)
    assert told(found)[2:] == [
        "cloth/spine on tube/outer: stuck wheat-starch-paste",
        "cloth/board 1 on board 1: stuck wheat-starch-paste",
        "cloth/board 1 beside cloth/spine",
    ]


def test_an_infill_lies_in_the_thickness_of_its_part() -> None:
    found = laid("adds: fill, in-thickness-of: sheet, material: rag-paper, adhesive: gelatine")
    assert told(found) == ["fill on sheet: stuck gelatine within"]


def test_a_consolidant_soaks_in() -> None:
    found = laid("adds: size, soaks-in: [leaf 1, leaf 2], material: gelatine-size")
    assert told(found) == ["size on leaf 1: soaked", "size on leaf 2: soaked"]


def test_what_nothing_bonds_only_covers() -> None:
    found = laid("adds: wrapper, over: cover, is: part, material: manila-card, adhesive: none")
    assert found.covers == (("cover", "wrapper"),)
    assert told(found) == []
    assert laid("adds: shim, onto: sheet, adhesive: none").covers == (("sheet", "shim"),)


def test_a_case_on_two_boards_over_a_spine_has_a_free_zone_over_it() -> None:
    found = laid(f"adds: case-cloth, onto: [board 1, board 2], over: spine, {PASTE}")
    assert names(found) == ["case-cloth/board 1", "case-cloth/board 2", "case-cloth/spine"]
    assert found.covers == (("spine", "case-cloth/spine"),)


def test_a_turn_in_is_a_piece_of_its_covering_and_lies_over_no_part() -> None:
    found = laid(f"""
        adds: calf-back, onto: [board 1, spine, board 2], {PASTE}
        joins: calf-back/turn-in, to: board 1/inner, adhesive: wheat-starch-paste
    """)
    assert "turn-in" not in found.things
    assert "calf-back/turn-in on board 1: stuck wheat-starch-paste at inner" in told(found)
    assert found.covers == ()


def test_what_is_hidden_is_kept_with_its_hider_be_it_a_finding() -> None:
    text = """
findings: [{id: waste, part: spine, seen: a strip of print}]
steps: [{adds: patch, onto: leaf}, {adds: tissue, onto: spine, hides: [waste, patch]}]
"""
    assert played(text).final.hides == (("waste", "tissue"), ("patch", "tissue"))


def test_what_is_made_and_laid_nowhere_lies_apart_and_so_does_what_lies_on_it() -> None:
    found = laid(f"adds: card, material: museum-board\nadds: cloth, onto: card, {PASTE}")
    assert found.things["card"].apart
    assert found.things["cloth"].apart


def test_the_steps_of_a_run_lay_a_layer_on_each_member() -> None:
    text = """
steps:
  - each: [volume 1, volume 2]
    steps:
      - {adds: cloth, onto: spine, spans: {spine: 30 mm, board 1: 9 mm}, adhesive: pva}
      - {adds: paper, onto: cloth/spine, adhesive: wheat-starch-paste}
"""
    found = told(played(text).final)
    assert "volume 2/cloth/spine on volume 2/spine: stuck polyvinyl-acetate" in found
    assert "volume 2/paper on volume 2/cloth/spine: stuck wheat-starch-paste" in found


def test_a_layer_laid_on_itself_lies_nowhere_and_harms_nothing() -> None:
    assert told(laid("adds: a, onto: a")) == []


def test_a_tube_that_reaches_onto_the_boards_has_a_zone_on_each_with_a_joint_between() -> None:
    found = laid(
        "adds: tube, onto: [spine, board 1], spans: {spine: 40 mm, board 1: 20 mm},"
        " walls: '1 on, 1 off', adhesive: wheat-starch-paste"
    )
    assert told(found) == [
        "tube/inner on spine: stuck wheat-starch-paste",
        "tube/board 1 on board 1: stuck wheat-starch-paste",
        "tube/board 1 beside tube/inner",
        "tube/outer folded to tube/inner",
    ]


def test_what_is_added_and_said_to_join_two_things_holds_to_both() -> None:
    found = laid("adds: hinge, joins: [sheet, mount], adhesive: wheat-starch-paste")
    assert {
        "hinge/sheet on sheet: stuck wheat-starch-paste",
        "hinge/mount on mount: stuck wheat-starch-paste",
    } <= set(told(found))


def test_hinges_joined_to_stubs_get_no_zone_on_what_the_stubs_are_sewn_to() -> None:
    found = played("""
as-found: [{id: stubs, joins: [leaf, text-block], held: sewn}]
steps:
  - {adds: hinges, onto: leaf, adhesive: wheat-starch-paste}
  - {joins: hinges, to: stubs, adhesive: methyl-cellulose}
""")
    assert names(found.final) == ["stubs", "hinges"]
    assert told(found.final)[-1] == "hinges on stubs: stuck methyl-cellulose"
