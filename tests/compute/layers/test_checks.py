"""Lengths, places, what is hidden and what is left behind."""

from __future__ import annotations

import pytest

from tests.compute.layers.told import faults, only, played, steps

PASTE = "adhesive: wheat-starch-paste"


def stack(*heights: str, last: str = "do: make-hollow") -> str:
    """Linings of these heights on a spine, one on the other."""
    told = []
    for number, height in enumerate(heights):
        below = f"l{number - 1}" if number else "spine"
        do = last if number == len(heights) - 1 else "do: line"
        told.append(f"{do}, adds: l{number}, onto: {below}, {PASTE}, cut: {{height: {height}}}")
    return "\n".join(told)


def test_a_tube_longer_than_the_lining_under_it_is_told_with_both_lengths() -> None:
    found = steps(stack("390 mm", "400 mm"))
    assert faults(found) == [(2, "longer")]
    assert only(found).message == "`l1` is 400 mm long, and `l0` under it only 390 mm"
    assert "nothing beneath" in only(found).hint
    assert not only(found).doubtful


def test_with_a_longer_lining_further_down_it_is_doubtful() -> None:
    found = only(steps(stack("400 mm", "380 mm", "390 mm")))
    assert found.doubtful
    assert "lie on `l0`" in found.hint


def test_where_the_spine_is_long_enough_its_ends_lie_on_that() -> None:
    listed = "\n".join(f"  - {{{line}}}" for line in stack("390 mm", "396 mm").splitlines())
    found = only(played(f"parts: {{spine: {{height: 398 mm}}}}\nsteps:\n{listed}"))
    assert "its ends lie on `spine` itself" in found.hint
    assert not found.doubtful


@pytest.mark.parametrize(
    "heights", [("390 mm", "390 mm"), ("about 390 mm", "400 mm"), ("38-41 cm", "400 mm")]
)
def test_lengths_that_are_not_surely_longer_say_nothing(heights: tuple[str, str]) -> None:
    assert steps(stack(*heights)).faults == ()


def test_a_reback_that_turns_in_and_a_layer_on_a_sheet_may_be_longer() -> None:
    assert steps(stack("390 mm", "440 mm", last="do: reback")).faults == ()
    sheet = stack("390 mm", "440 mm", last="do: line").replace("spine", "sheet/verso")
    assert steps(sheet).faults == ()


def test_a_lining_longer_than_one_that_was_found_is_told() -> None:
    text = "as-found: [{id: old, onto: spine, height: 300 mm}]\nsteps: "
    step = f"[{{do: line, adds: new, onto: old, {PASTE}, cut: {{height: 320 mm}}}}]"
    assert faults(played(text + step)) == [(1, "longer")]


def test_two_layers_over_the_whole_of_one_face_are_told() -> None:
    found = steps(f"adds: a, onto: spine, {PASTE}\nadds: b, onto: spine, {PASTE}")
    assert faults(found) == [(2, "same-place")]
    assert only(found).message == "`b` is laid onto `spine`, and `a` lies there"


@pytest.mark.parametrize(
    "second",
    [
        f"adds: b, onto: a, {PASTE}",
        f"adds: b, onto: sheet/verso, {PASTE}",
        f"adds: b, onto: sheet/recto, {PASTE}, scope: where needed",
        f"adds: b, onto: sheet/recto, {PASTE}, scope: {{pieces: [{{count: 3}}]}}",
        f"adds: b, onto: [sheet/recto, margin], {PASTE}",
        "adds: b, onto: sheet/recto, held: sewn",
        f"adds: b, in-thickness-of: sheet/recto, {PASTE}",
        f"adds: b, bonds: [{{onto: sheet/recto, {PASTE}, where: along the head}}]",
        f"adds: b, onto: sheet/recto, {PASTE}, is: part",
        f"adds: b, onto: sheet/recto, {PASTE}, temporary: yes",
        "adds: b, over: sheet/recto",
    ],
)
def test_what_may_lie_beside_it_is_not_in_the_same_place(second: str) -> None:
    found = steps(f"adds: a, onto: sheet/recto, {PASTE}\n{second}")
    assert "same-place" not in [kind for _, kind in faults(found)]


def test_where_the_first_is_gone_or_partly_gone_another_may_lie() -> None:
    first, second = f"adds: a, onto: spine, {PASTE}", f"adds: b, onto: spine, {PASTE}"
    assert steps(f"{first}\nremoves: a\n{second}").faults == ()
    assert steps(f"{first}\nremoves: a, outcome: partly\n{second}").faults == ()


def test_what_is_laid_on_what_is_not_there_is_told_once() -> None:
    found = steps(f"""
        adds: a, onto: spine, {PASTE}
        removes: a
        adds: b, onto: spine, {PASTE}
        adds: c, onto: a, {PASTE}
    """)
    assert faults(found) == [(4, "gone")]


def hid(text: str) -> tuple[str, ...]:
    return steps(text).moments[-1].hid


def test_a_layer_hides_what_it_lies_on_and_what_it_is_said_to_hide() -> None:
    assert hid(f"adds: a, onto: spine, {PASTE}, hides: waste") == ("spine", "waste")
    assert hid(f"adds: a, onto: spine, {PASTE}\nadds: b, onto: a, {PASTE}") == ("a",)
    assert hid("adds: a, over: sheet") == ("sheet",)


@pytest.mark.parametrize(
    "step",
    [
        f"adds: a, onto: leaf, {PASTE}, scope: where needed",
        f"adds: a, in-thickness-of: leaf, {PASTE}",
        "adds: a, onto: leaf, held: sewn",
        f"adds: a, onto: leaf, {PASTE}, temporary: yes",
        "adds: a, over: text-block, is: part",
    ],
)
def test_patches_infills_threads_facings_and_boxes_hide_nothing(step: str) -> None:
    assert hid(step) == ()


def test_an_overhang_hides_only_an_edge_of_its_board() -> None:
    assert hid(f"adds: a, onto: [spine, board 1, board 2], {PASTE}") == ("spine",)


def test_what_was_hidden_before_is_not_hidden_again() -> None:
    two = f"adds: a, onto: spine, {PASTE}\nadds: b, onto: [spine, board 1], {PASTE}"
    assert hid(two) == ()


def test_what_is_temporary_and_never_removed_is_told_at_its_step() -> None:
    found = steps(f"adds: facing, onto: leaf, {PASTE}, temporary: yes\ntreats: leaf")
    assert faults(found) == [(1, "left")]
    assert steps(f"adds: facing, onto: leaf, {PASTE}, temporary: yes\nremoves: facing").faults == ()
