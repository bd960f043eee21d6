"""Each verb of a step does what it says, and what contradicts it is told."""

from __future__ import annotations

import pytest

from tests.compute.layers.told import faults, names, only, played, steps, told

PASTE = "adhesive: wheat-starch-paste"


def test_a_step_that_was_given_up_does_nothing() -> None:
    found = steps(f"adds: a, onto: spine, {PASTE}\nremoves: a, outcome: given-up")
    assert names(found.final) == ["a"]
    assert found.moments[2].structure is found.moments[1].structure


def test_removing_what_was_removed_is_told_with_where_it_went() -> None:
    found = played("""
as-found: [{id: old-glue, onto: spine}]
episodes:
  - {episode: 1, steps: [{removes: old-glue}]}
  - {episode: 2, steps: [{removes: old-glue}]}
""")
    assert faults(found) == [(2, "gone")]
    assert only(found).message == "`old-glue` was removed in sitting 1, and is not there any more"
    assert "leaves" in only(found).hint


def test_what_is_there_partly_can_be_removed_again() -> None:
    text = "as-found: [{id: old-glue, onto: spine}]\nsteps: [{removes: old-glue, outcome: partly}, {removes: old-glue}]"
    assert played(text).faults == ()


def test_laying_on_what_was_removed_is_told_and_it_lies_on_what_was_beneath() -> None:
    found = steps(f"adds: a, onto: spine, {PASTE}\nremoves: a\nadds: b, onto: a, {PASTE}")
    assert faults(found) == [(3, "gone")]
    assert only(found).key == "onto"
    assert told(found.final) == ["b on spine: stuck wheat-starch-paste"]


def test_laying_on_what_is_added_only_later_is_told() -> None:
    found = steps(f"adds: b, onto: a, {PASTE}\nadds: a, onto: spine, {PASTE}")
    assert faults(found) == [(1, "later")]
    assert only(found).message == "`a` is added only further down, and is not there yet"


@pytest.mark.parametrize("verb", ["removes", "takes-off", "opens", "joins", "puts-back"])
def test_every_verb_tells_of_what_is_not_there_yet(verb: str) -> None:
    found = steps(f"{verb}: a\nadds: a, onto: spine, {PASTE}")
    assert faults(found) == [(1, "later")]
    assert only(found).key == verb


def test_removing_what_nothing_ever_spoke_of_is_told() -> None:
    assert faults(steps("removes: facing-wossit")) == [(1, "not-there")]
    assert faults(steps("removes: endband head")) == []


def test_removing_what_was_never_laid_since_that_was_given_up_is_told() -> None:
    found = steps(f"adds: a, onto: spine, {PASTE}, outcome: given-up\nremoves: a")
    assert faults(found) == [(2, "not-there")]


def test_putting_back_what_never_came_off_is_told_as_doubtful() -> None:
    found = steps("puts-back: endband head, onto: spine, adhesive: pva")
    assert faults(found) == [(1, "not-off")]
    assert only(found).doubtful


def test_what_had_come_loose_may_be_put_back() -> None:
    text = """
findings: [{part: endband head, damage: detached, seen: laid in}]
steps: [{puts-back: endband head, onto: spine, adhesive: pva}]
"""
    assert played(text).faults == ()


def test_what_was_opened_may_be_put_back() -> None:
    assert steps("opens: board 1/sides\nputs-back: board 1/sides, adhesive: pva").faults == ()


def test_taking_off_what_is_off_is_told() -> None:
    found = steps("takes-off: label\ntakes-off: label")
    assert faults(found) == [(2, "already-off")]


def test_adding_the_same_thing_twice_is_told_and_it_is_there_once() -> None:
    found = steps(f"adds: paper, is: part, material: linen\nadds: paper, onto: spine, {PASTE}")
    assert faults(found) == [(2, "twice")]
    assert told(found.final) == ["paper on spine: stuck wheat-starch-paste"]


def test_what_stays_and_still_holds_what_goes_is_told() -> None:
    text = """
as-found: [{id: twine, joins: [board 1, text-block], held: sewn}]
steps: [{takes-off: board 1}]
"""
    found = played(text)
    assert faults(found) == [(1, "still-held")]
    assert only(found).message == "`board 1` goes, and `twine`, which stays, still holds it"


def test_what_was_opened_or_goes_in_the_same_step_holds_no_more() -> None:
    twine = "as-found: [{id: twine, joins: [board 1, text-block], held: sewn}]\n"
    assert played(f"{twine}steps: [{{opens: twine}}, {{takes-off: board 1}}]").faults == ()
    assert played(f"{twine}steps: [{{takes-off: [twine, board 1]}}]").faults == ()


def test_removing_what_lies_under_a_layer_that_holds_to_the_boards_leaves_that_layer() -> None:
    found = steps(f"""
        adds: tissue, onto: spine, {PASTE}
        adds: cloth, onto: [tissue, board 1], {PASTE}
        removes: tissue
    """)
    assert names(found.final) == ["cloth/spine", "cloth/board 1"]
    assert faults(found) == [(3, "still-held")]


def test_a_board_is_taken_off_and_put_back_as_it_was() -> None:
    found = steps("takes-off: board 1\nputs-back: board 1, onto: text-block, held: laced")
    assert told(found.final) == ["board 1 on text-block: held laced reused"]


def test_a_thread_cut_so_that_the_cover_could_come_off_holds_it_no_more() -> None:
    found = played("""
as-found: [{id: tackets, joins: [cover, text-block], held: tacketed}]
steps: [{takes-off: cover, cuts: tackets}]
""")
    assert found.faults == ()
    uncut = played("""
as-found: [{id: tackets, joins: [cover, text-block], held: tacketed}]
steps: [{takes-off: cover}]
""")
    assert faults(uncut) == [(1, "still-held")]


TACKETED = """
as-found: [{id: tackets, joins: [cover, text-block], held: tacketed}]
steps: [{takes-off: cover, cuts: tackets}, {removes: tackets}, %s]
"""


def test_what_is_sewn_back_holds_to_what_the_thread_goes_through() -> None:
    back = "{puts-back: cover, held: tacketed, cuts: [cover, section]}"
    found = played(TACKETED % back)
    assert found.faults == ()
    assert told(found.final) == ["cover on section: held tacketed reused"]


def test_what_is_put_back_with_an_adhesive_on_nothing_is_asked_where() -> None:
    found = played(TACKETED % "{puts-back: cover, adhesive: wheat-starch-paste}")
    assert only(found).message == "`cover` is put back, and nothing says what it holds to"
    assert only(found).doubtful
    assert played(TACKETED % "{puts-back: cover}").faults == ()


def test_a_leather_put_back_over_a_reback_holds_to_its_zones_on_the_boards_too() -> None:
    found = played(f"""
as-found: [{{id: calf, onto: spine, spans: {{spine: 60 mm, board 1: 30 mm}}, {PASTE}}}]
steps:
  - {{takes-off: calf}}
  - {{adds: reback, onto: spine, spans: {{spine: 60 mm, board 1: 30 mm}}, {PASTE}}}
  - {{puts-back: calf, onto: reback, {PASTE}}}
""")
    back = [one for one in told(found.final) if "reused" in one]
    assert back == [
        "calf/spine on reback/spine: stuck wheat-starch-paste reused",
        "calf/board 1 on reback/board 1: stuck wheat-starch-paste reused",
    ]


@pytest.mark.parametrize(
    ("step", "key"),
    [
        (f"adds: a, onto: a, {PASTE}", "onto"),
        (f"joins: cover, to: cover, {PASTE}", "to"),
        (f"puts-back: cover, onto: cover, {PASTE}", "onto"),
    ],
)
def test_nothing_lies_on_itself_and_that_is_told_once(step: str, key: str) -> None:
    found = steps(f"takes-off: cover\n{step}")
    assert faults(found) == [(2, "itself")]
    assert only(found).key == key


def test_a_layer_that_bears_the_name_of_a_part_is_left_to_the_rule_on_names() -> None:
    text = f"parts: {{spine: {{}}}}\nsteps: [{{opens: spine}}, {{adds: spine, onto: a, {PASTE}}}]"
    assert [kind for _, kind in faults(played(text))] == []


def test_a_tube_opened_at_its_folds_is_slit_there_and_stays_stuck_to_the_spine() -> None:
    found = played(f"""
as-found: [{{id: tube, onto: spine, walls: "1 on, 1 off", {PASTE}}}]
steps: [{{opens: tube/folds}}]
""")
    assert found.faults == ()
    opened = {(bond.how.value, bond.opened) for bond in found.final.bonds if bond.upper != "spine"}
    assert opened == {("stuck", ()), ("fold", (1,))}
