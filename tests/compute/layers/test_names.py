"""A reference to a part or layer means one thing, with its zone, wall, face or spot."""

from __future__ import annotations

import pytest

from casebook.compute.layers.names import Names, Spot
from tests.compute.layers.told import LEXICON
from tests.compute.written import case

CASE = """
parts: {spine: {}, strap: {of: board 2, parts: {clasp: {}}}}
as-found: [{id: old-lining, onto: spine}]
steps:
  - {adds: cloth, onto: old-lining, spans: {spine: 60 mm, joint front: 8 mm}}
  - {do: hollow, adds: tube, onto: cloth}
  - {joins: cloth, to: board 1, adhesive: wheat-starch-paste}
  - {each: [volume 1, volume 2], steps: [{adds: lining, onto: spine}]}
"""
NAMES = Names(case(CASE), LEXICON)


@pytest.mark.parametrize(
    ("place", "means"),
    [
        ("spine", Spot("spine")),
        ("sheet/verso", Spot("sheet", face="verso")),
        (" sheet / Verso ", Spot("sheet", face="verso")),
        ("board 1/sides", Spot("board 1/sides")),
        ("cloth/board 1", Spot("cloth", "board 1")),
        ("cloth/joint front", Spot("cloth", "joint front")),
        ("cloth/head", Spot("cloth", where="head")),
        ("cloth/outer", Spot("cloth", face="outer")),
        ("tube/outer", Spot("tube", wall="outer")),
        ("tube/inside", Spot("tube", wall="inner")),
        ("clasp", Spot("strap/clasp")),
        ("volume 1/lining", Spot("volume 1/lining")),
        ("volume 1/lining/spine", Spot("volume 1/lining", "volume 1/spine")),
        ("volume 1/lining/volume 1/spine", Spot("volume 1/lining", "volume 1/spine")),
    ],
)
def test_a_reference_is_a_part_or_layer_with_a_piece_of_it(place: str, means: Spot) -> None:
    assert NAMES.spot(place) == means


def test_a_spot_that_is_declared_a_part_is_a_zone() -> None:
    text = "parts: {head: {width: 9 mm}}\nsteps: [{adds: cloth, onto: spine}]"
    assert Names(case(text), LEXICON).spot("cloth/head") == Spot("cloth", "head")


def test_a_reference_without_words_means_nothing() -> None:
    assert NAMES.spot("/") is NAMES.spot("  ") is None


def test_a_zone_in_a_run_is_called_by_its_own_part_alone() -> None:
    assert NAMES.thing("volume 1/lining", "volume 1/spine") == "volume 1/lining/spine"
    assert NAMES.thing("cloth", "board 1") == "cloth/board 1"


def test_a_zone_that_is_joined_only_later_is_known_beforehand() -> None:
    assert NAMES.zones["cloth"] == {"board 1": True}


def test_a_hollow_is_a_tube_by_its_operation_or_by_its_walls() -> None:
    assert NAMES.tubes == {"tube"}
    walls = case("as-found: [{id: old-tube, onto: spine, walls: '1 on, 1 off'}]")
    assert Names(walls, LEXICON).tubes == {"old-tube"}
    none = case("as-found: [{id: old-back, onto: spine, walls: none}]")
    assert Names(none, LEXICON).tubes == set()


def test_lengths_from_head_to_tail_are_those_of_the_record() -> None:
    text = "as-found: [{id: a, height: 20 mm}]\nsteps: [{adds: b, cut: {height: 30 mm}}, {adds: c}]"
    heights = Names(case(text), LEXICON).heights
    assert {name: str(length) for name, length in heights.items()} == {"a": "20 mm", "b": "30 mm"}


def test_the_folds_of_a_tube_are_a_spot_of_it_and_no_zone() -> None:
    assert NAMES.spot("tube/fold") == Spot("tube", where="fold")
    assert NAMES.spot("tube/inner") == Spot("tube", wall="inner")
