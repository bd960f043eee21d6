"""The graph of a structure: pieces, places where they hold together, what covers what."""

from __future__ import annotations

import random

from casebook.compute.structure import Since, Structure
from casebook.compute.way_back.graph import Graph, Node
from tests.compute.way_back.built import (
    PASTE,
    VAE,
    grown,
    joint,
    layer,
    part,
    soaked,
    structure,
    stuck,
)
from tests.compute.way_back.examples import PULLED, REBACK


def test_a_layer_that_splits_has_two_halves_and_an_original_has_not():
    graph = Graph(PULLED)
    assert graph.pieces("release-tissue") == (
        Node("release-tissue", "lower"),
        Node("release-tissue", "upper"),
    )
    assert graph.pieces("spine") == (Node("spine"),)
    old = layer("leaf", "japanese-tissue", splits=True, since=Since.ORIGINAL)
    assert Graph(structure(old)).pieces("leaf") == (Node("leaf"),)


def test_what_lies_below_holds_the_lower_half_and_what_lies_above_the_upper():
    ends = {(edge.lower, edge.upper) for edge in Graph(PULLED).edges}
    assert (Node("spine"), Node("release-tissue", "lower")) in ends
    assert (Node("release-tissue", "upper"), Node("linen-lining")) in ends
    assert (Node("release-tissue", "lower"), Node("release-tissue", "upper")) in ends


def test_a_part_lies_below_its_own_zone_of_a_layer_whichever_was_laid_on_the_other():
    members = (part("board 1"), layer("cloth/board 1"))
    one = Graph(structure(*members, stuck("board 1", "cloth/board 1", PASTE)))
    other = Graph(structure(*members, stuck("cloth/board 1", "board 1", PASTE)))
    assert [(e.lower, e.upper) for e in one.edges] == [(e.lower, e.upper) for e in other.edges]


def test_what_is_soaked_in_is_no_piece_and_what_lies_on_it_lies_on_its_host():
    graph = Graph(
        structure(
            part("spine"),
            layer("size", "gelatine"),
            layer("lining", "linen"),
            soaked("spine", "size"),
            stuck("size", "lining", PASTE),
        )
    )
    assert graph.soaked == {"size": ("spine",)}
    assert [(edge.lower.name, edge.upper.name) for edge in graph.edges] == [("spine", "lining")]


def test_a_bond_to_nothing_known_is_left_out():
    graph = Graph(structure(part("spine"), stuck("spine", "nobody", PASTE)))
    assert graph.edges == ()


def test_original_bonds_between_originals_are_the_objects_own():
    graph = Graph(REBACK)
    own = {(e.lower.name, e.upper.name) for e in graph.edges if graph.own(e)}
    assert own == {("old-spine", "title-label"), ("text-block", "spine")}
    assert graph.flap(Node("title-label"))
    assert not graph.flap(Node("old-spine"))


def test_zones_meet_side_by_side():
    graph = Graph(
        structure(layer("cloth/spine"), layer("cloth/b"), joint("cloth/spine", "cloth/b"))
    )
    assert [edge.upright for edge in graph.edges] == [False]


def test_what_we_laid_over_a_whole_face_covers_what_was_found_on_it():
    found = layer("old-glue", "animal-glue", since=Since.FOUND)
    members = (part("spine"), found, stuck("spine", "old-glue", since=Since.FOUND))
    whole = structure(*members, layer("lining"), stuck("spine", "lining", VAE))
    assert Graph(whole).over == {"old-glue": ("lining",)}
    partly = structure(
        *members, layer("lining"), stuck("spine", "lining", VAE, where="at the head")
    )
    assert Graph(partly).over == {}
    elsewhere = structure(*members, layer("lining"), stuck("spine", "lining", VAE, face="inner"))
    assert Graph(elsewhere).over == {}


def test_a_lining_covers_what_was_filled_in_beneath_it():
    members = (part("sheet"), layer("fill"), layer("lining"))
    fill = stuck("sheet", "fill", PASTE, within=True)
    lining = stuck("sheet", "lining", PASTE, face="verso")
    assert Graph(structure(*members, fill, lining)).over == {"fill": ("lining",)}


def test_a_layer_that_is_hidden_is_hidden_in_all_its_zones():
    graph = Graph(
        structure(
            part("paste-down"), layer("cloth/a"), layer("cloth/b"), hides=[("cloth", "paste-down")]
        )
    )
    assert graph.over == {"cloth/a": ("paste-down",), "cloth/b": ("paste-down",)}


def test_a_hidden_finding_is_no_piece():
    graph = Graph(structure(part("spine"), hides=[("some-finding", "spine")]))
    assert graph.over == {}


def test_nothing_depends_on_the_order_of_the_structure():
    bonds, things = list(REBACK.bonds), list(REBACK.things.items())
    first = Graph(REBACK)
    for seed in range(20):
        random.Random(seed).shuffle(bonds)
        random.Random(seed).shuffle(things)
        other = Graph(Structure(dict(things), tuple(bonds)))
        assert other.edges == first.edges
        assert other.nodes == first.nodes


def test_grown_parts_hold_together():
    graph = Graph(structure(part("board"), part("board/leather"), grown("board", "board/leather")))
    assert [(e.lower.name, e.upper.name) for e in graph.edges] == [("board", "board/leather")]
