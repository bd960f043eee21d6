"""The zones of a layer: what lies on what, and what lies on nothing."""

from __future__ import annotations

from casebook.compute.places import ground
from casebook.compute.steps import placed
from casebook.compute.zones import BEYOND, Zone, zones_of
from tests.compute.written import case

PARTS = "parts: {spine: {width: 50 mm, rise: 0 mm, height: 200 mm}, section: {count: 52}}"


def zones(step: str) -> tuple[Zone, ...]:
    one = case(f"{PARTS}\nsteps: [{{adds: a, {step}}}]")
    return zones_of(ground(one), placed(one)[0].step)


def square_millimetres(found: tuple[Zone, ...]) -> list[tuple[str, int, int]]:
    return [(z.part, z.cut.value // 10**6, z.bonded.value // 10**6) for z in found]


def test_what_is_cut_wider_than_its_zones_lies_on_nothing() -> None:
    found = zones("spans: {spine: 50 mm, board 1: 10 mm}, cut: {height: 100 mm, width: 70 mm}")
    assert square_millimetres(found) == [
        ("spine", 5000, 5000),
        ("board 1", 1000, 1000),
        (BEYOND, 1000, 0),
    ]
    assert found[2].overhang.value == 1000 * 10**6


def test_a_cut_over_spine_and_boards_gives_the_spine_its_arc_and_the_boards_the_rest() -> None:
    found = zones("onto: [spine, board 1, board 2], cut: {height: 100 mm, width: 80 mm}")
    assert square_millimetres(found) == [
        ("spine", 5000, 5000),
        ("board 1 + board 2", 3000, 3000),
    ]


def test_how_far_a_layer_reaches_over_boards_is_not_guessed() -> None:
    found = zones("onto: [spine, board 1], cut: {height: 100 mm}")
    assert square_millimetres(found) == [("spine", 5000, 5000), ("board 1", 0, 0)]
    assert found[1].bonded.at_least


def test_one_cut_over_two_boards_is_counted_once() -> None:
    found = zones("onto: [board 1, board 2], cut: {height: 100 mm, width: 80 mm}")
    assert square_millimetres(found) == [("board 1 + board 2", 8000, 8000)]


def test_a_part_that_stands_there_many_times_is_counted_once_at_least() -> None:
    found = zones("onto: section, cut: {height: 100 mm, width: 80 mm}")
    assert square_millimetres(found) == [("section", 8000, 8000)]
    assert found[0].bonded.reasons == ("1 part stands there more than once and is counted once",)


def test_a_cut_higher_than_its_part_overhangs_at_head_and_tail() -> None:
    found = zones("onto: spine, cut: {height: 220 mm, width: 50 mm}")
    assert square_millimetres(found) == [("spine", 11_000, 10_000)]
    assert found[0].overhang.value == 1000 * 10**6
    assert found[0].spine


def test_of_several_bonds_only_those_that_stick_make_an_area() -> None:
    found = zones(
        "cut: {height: 100 mm}, bonds: [{onto: spine, adhesive: paste}, {onto: board 1, held: sewn},"
        " {onto: board 2, adhesive: none}]"
    )
    # 100 mm × 50 mm of the spine; the sewn and the loose part have no bonded area
    assert square_millimetres(found) == [("spine", 5000, 5000)]


def test_a_width_that_is_not_recorded_makes_the_area_a_lower_bound() -> None:
    found = zones("spans: {spine: 50 mm, board 1: not recorded}, cut: {height: 100 mm}")
    assert square_millimetres(found) == [("spine", 5000, 5000), ("board 1", 0, 0)]
    assert found[1].bonded.at_least


def test_the_pieces_of_several_ways_are_added_up() -> None:
    found = zones(
        "onto: section, ways: [{scope: {pieces: [{count: 3, height: 20 mm, width: 10 mm}]}},"
        " {scope: {pieces: [{height: 50 mm, width: 4 mm}]}}]"
    )
    # 3 × 20 × 10 + 50 × 4 = 800 mm²
    assert square_millimetres(found) == [("section", 800, 800)]


def test_several_ways_without_sizes_were_not_measured() -> None:
    found = zones("onto: section, ways: [30 of 52, 22 of 52]")
    assert found[0].bonded.reasons == ("1 layer lies in places that were not measured",)
