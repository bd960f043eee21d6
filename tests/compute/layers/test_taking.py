"""What goes takes with it what lies wholly on it, and comes back with it."""

from __future__ import annotations

from tests.compute.layers.told import names, played, steps, told

PASTE = "adhesive: wheat-starch-paste"


def test_what_lies_on_a_removed_layer_goes_with_it() -> None:
    found = steps(f"adds: a, onto: spine, {PASTE}\nadds: b, onto: a, {PASTE}\nremoves: a")
    assert names(found.final) == []
    assert found.moments[-1].gone == ("a", "b")
    assert found.faults == ()


def test_an_original_that_rides_on_what_is_removed_lies_apart_with_what_is_on_it() -> None:
    found = steps(f"""
        adds: a, onto: spine, {PASTE}
        takes-off: title-label
        puts-back: title-label, onto: a, {PASTE}
        adds: tissue, onto: title-label, {PASTE}
        removes: a
    """)
    assert set(names(found.final)) == {"tissue"}
    assert found.final.things["title-label"].apart
    assert found.final.things["tissue"].apart
    assert told(found.final) == ["tissue on title-label: stuck wheat-starch-paste"]


def test_originals_that_come_off_with_what_is_removed_are_told_among_what_went() -> None:
    found = steps(f"""
        adds: a, onto: spine, {PASTE}
        joins: title-label, to: a, {PASTE}
        removes: a
    """)
    assert set(found.moments[-1].gone) == {"a", "title-label"}


def test_a_part_with_no_bond_on_record_comes_back_with_what_lies_on_it() -> None:
    found = steps(f"""
        takes-off: cover
        adds: patch, onto: cover, {PASTE}
        puts-back: cover
    """)
    assert not any(one.apart for one in found.final.things.values())


def test_what_is_put_back_on_what_lies_apart_waits_with_it() -> None:
    text = """
as-found: [{id: label, onto: cover, adhesive: animal-glue}]
steps: [{takes-off: cover}, {takes-off: label}, {puts-back: label}]
"""
    assert played(text).final.things["label"].apart


def test_the_corner_of_a_board_goes_with_its_board() -> None:
    found = steps("treats: board 1/corner\nremoves: board 1")
    assert "board 1/corner" not in found.final.things


def test_what_is_taken_off_lies_apart_with_all_that_lies_on_it() -> None:
    found = steps(f"adds: patch, onto: cover, {PASTE}\ntakes-off: cover")
    assert [name for name, one in found.final.things.items() if one.apart] == ["cover", "patch"]
    assert told(found.final) == ["patch on cover: stuck wheat-starch-paste"]


def test_what_is_taken_off_covers_nothing_and_is_covered_by_nothing_any_more() -> None:
    found = steps(f"""
        adds: case-cloth, onto: [board 1, board 2], over: spine, {PASTE}
        adds: jacket, over: case-cloth, hides: case-cloth
        takes-off: case-cloth/spine
    """)
    assert [pair for pair in found.final.covers if "case-cloth/spine" in pair] == []
    assert [pair for pair in found.final.hides if "case-cloth/spine" in pair] == []
    assert ("case-cloth/board 1", "jacket") in found.final.covers


def test_what_is_put_back_has_a_new_bond_and_lies_apart_no_more() -> None:
    found = steps(f"""
        takes-off: cover
        adds: patch, onto: cover/inner, {PASTE}
        puts-back: cover, onto: text-block, held: laced, adhesive: none
    """)
    assert not any(one.apart for one in found.final.things.values())
    assert told(found.final) == [
        "patch on cover: stuck wheat-starch-paste at inner",
        "cover on text-block: held laced reused",
    ]


def test_put_back_with_no_word_of_where_it_is_where_it_was() -> None:
    text = """
as-found:
  - {id: label, onto: spine, adhesive: animal-glue}
  - {id: tie, onto: cover, held: laced, cuts: cover}
steps:
  - {takes-off: [label, tie]}
  - {puts-back: label, adhesive: wheat-starch-paste}
  - {puts-back: tie}
"""
    assert told(played(text).final) == [
        "label on spine: stuck wheat-starch-paste reused",
        "tie on cover: held laced reused",
    ]


def test_put_back_with_no_word_of_how_its_bond_is_unknown() -> None:
    text = "as-found: [{id: label, onto: spine, adhesive: animal-glue}]\nsteps: [{takes-off: label}, {puts-back: label}]"
    assert told(played(text).final) == ["label on spine: unknown reused"]


def test_a_zone_comes_off_alone_and_its_joints_are_slit() -> None:
    cloth = "adds: cloth, onto: spine, spans: {spine: 60 mm, board 1: 40 mm, board 2: 40 mm}"
    found = steps(f"{cloth}, {PASTE}\nremoves: cloth/board 1")
    assert names(found.final) == ["cloth/spine", "cloth/board 2"]
    assert told(found.final)[-1] == "cloth/board 2 beside cloth/spine"
    assert found.faults == ()


def test_a_wall_of_a_tube_comes_off_alone() -> None:
    found = steps("do: make-hollow, adds: tube, onto: spine, adhesive: pva\nremoves: tube/outer")
    assert names(found.final) == ["tube/inner"]


def test_what_is_left_of_a_layer_is_there_partly_and_says_where() -> None:
    text = """
as-found: [{id: old-glue, onto: spine, material: animal-glue}]
steps: [{removes: old-glue, leaves: {layer: old-glue, where: in the folds}}]
"""
    found = played(text).final
    assert (found.things["old-glue"].partly, found.things["old-glue"].where) == (
        True,
        "in the folds",
    )
    assert told(found) == ["old-glue on spine: stuck animal-glue partly"]


def test_half_a_removal_a_spot_of_it_and_leaving_nothing() -> None:
    def after(step: str) -> list[tuple[str, bool, str]]:
        found = steps(f"adds: a, onto: spine, {PASTE}\n{step}").final
        things = (found.things[name] for name in names(found))
        return [(one.name, one.partly, one.where) for one in things]

    assert after("removes: a, outcome: partly") == [("a", True, "")]
    assert after("removes: a/head") == [("a", True, "no more at head")]
    assert after("removes: a, leaves: unknown") == [("a", True, "")]
    assert after("removes: a, leaves: none") == []
    assert after("removes: a, leaves: other") == []


def test_what_is_opened_is_loosened_and_that_is_remembered() -> None:
    found = steps(f"adds: a, onto: spine, {PASTE}\nopens: a\nopens: a").final
    assert told(found) == ["a on spine: stuck wheat-starch-paste opened in 2, 3"]


def test_what_was_opened_and_is_joined_again_holds_anew() -> None:
    found = steps(f"adds: a, onto: spine, {PASTE}\nopens: a\njoins: a, to: spine, adhesive: pva")
    assert told(found.final) == ["a on spine: stuck polyvinyl-acetate"]


def test_taking_off_half_of_it_only_opens_it() -> None:
    found = steps(f"adds: a, onto: spine, {PASTE}\ntakes-off: a, outcome: partly").final
    assert told(found) == ["a on spine: stuck wheat-starch-paste opened in 2"]


def test_what_was_removed_for_good_and_comes_back_comes_back_whole() -> None:
    found = steps(f"""
        adds: a, onto: spine, {PASTE}
        adds: b, onto: a, {PASTE}
        removes: a
        puts-back: a, onto: spine, adhesive: pva
    """)
    assert told(found.final) == [
        "b on a: stuck wheat-starch-paste",
        "a on spine: stuck polyvinyl-acetate reused",
    ]
    assert [one.kind.value for one in found.faults] == ["not-off"]


def test_parts_joined_to_each_other_hold_to_the_first() -> None:
    found = steps("joins: [leaf 1, leaf 2, leaf 3], adhesive: wheat-starch-paste").final
    assert told(found) == [
        "leaf 2 on leaf 1: stuck wheat-starch-paste",
        "leaf 3 on leaf 1: stuck wheat-starch-paste",
    ]


def test_what_is_joined_to_what_lies_apart_lies_apart_until_that_comes_back() -> None:
    found = steps("""
        takes-off: [strap, clasp]
        joins: clasp, to: strap, held: riveted
        puts-back: strap, onto: board 2, held: nailed
    """)
    apart = [{one.name for one in m.structure.things.values() if one.apart} for m in found.moments]
    assert apart == [set(), {"strap", "clasp"}, {"strap", "clasp"}, set()]


def test_a_wrap_whose_one_end_was_freed_goes_with_the_lining_that_holds_the_other() -> None:
    found = played(f"""
as-found:
  - {{id: lining, onto: sheet, {PASTE}}}
  - {{id: wrap, joins: [lining, roller], {PASTE}}}
steps: [{{opens: wrap}}, {{takes-off: roller}}, {{removes: lining}}]
""")
    assert names(found.final) == []
    assert found.faults == ()
