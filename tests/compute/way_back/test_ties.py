"""What was put on a part, what ties it to others, what carries a layer."""

from __future__ import annotations

from casebook.compute.structure import Since
from casebook.compute.way_back import ties
from casebook.compute.way_back.graph import Graph, Node
from tests.compute.way_back.built import (
    PASTE,
    grown,
    held,
    layer,
    part,
    soaked,
    structure,
    stuck,
)
from tests.compute.way_back.examples import HOLLOW, LINED, PULLED, REBACK


def names(nodes) -> set[str]:
    return {node.name for node in nodes}


def test_what_was_put_on_a_part_is_all_that_lies_on_it_and_is_not_original():
    assert names(ties.put_on(Graph(PULLED), "spine")) == {"release-tissue", "linen-lining"}
    assert names(ties.put_on(Graph(LINED), "board 1")) == {"linen-lining/board 1"}
    assert names(ties.put_on(Graph(HOLLOW), "spine")) >= {"tube/inner", "tube/outer"}


def test_a_put_back_part_carries_nothing():
    assert ties.put_on(Graph(REBACK), "old-spine") == frozenset()


def test_the_outermost_come_first_and_a_tissue_on_which_nothing_lies_comes_whole():
    graph = Graph(PULLED)
    goals = ties.put_on(graph, "spine")
    assert ties.outermost(graph, goals) == [Node("linen-lining")]
    tissue = ties.put_on(graph, "spine") - {Node("linen-lining")}
    alone = Graph(
        structure(
            part("spine"),
            layer("tissue", splits=True),
            stuck("spine", "tissue", PASTE),
        )
    )
    assert ties.outermost(alone, ties.put_on(alone, "spine")) == [Node("tissue", "lower")]
    assert ties.outermost(graph, tissue) == [Node("release-tissue", "upper")]


def test_in_a_ring_all_are_outermost():
    ring = Graph(structure(layer("a"), layer("b"), stuck("a", "b"), stuck("b", "a")))
    assert ties.outermost(ring, ring.nodes) == [Node("a"), Node("b")]


def test_a_layer_is_carried_by_originals_directly_or_through_others():
    graph = Graph(REBACK)
    assert ties.ground(graph, [Node("reback/spine")]) == {Node("spine")}
    assert ties.ground(graph, [Node("reback/board 1")]) == {Node("board 1")}


def test_a_board_is_tied_to_the_other_zones_of_the_lining_on_it():
    graph = Graph(LINED)
    tied = ties.ties(graph, "board 1", graph.nodes)
    assert names(tied) == {"linen-lining/spine"}


def test_a_put_back_part_is_tied_to_what_it_lies_on():
    graph = Graph(REBACK)
    assert names(ties.ties(graph, "old-spine", graph.nodes)) == {"reback/spine"}
    assert ties.ties(graph, "title-label", graph.nodes) == frozenset()


def test_a_part_that_belongs_to_a_put_back_one_is_carried_by_that():
    graph = Graph(REBACK)
    assert ties.carrier(graph, "title-label") == "old-spine"
    assert ties.carrier(graph, "old-spine") is None
    assert ties.carrier(graph, "spine") is None


def test_a_thread_ties_the_parts_it_joins():
    graph = Graph(
        structure(
            part("board 1"),
            part("text-block"),
            layer("twine", since=Since.FOUND),
            held("board 1", "twine"),
            held("text-block", "twine"),
        )
    )
    assert names(ties.ties(graph, "board 1", graph.nodes)) == {"text-block"}


def test_original_pieces_come_with_what_they_belong_to_and_it_with_nothing():
    graph = Graph(structure(part("board"), part("board/leather"), grown("board", "board/leather")))
    assert names(ties.own_pieces(graph, [Node("board")])) == {"board", "board/leather"}
    assert names(ties.own_pieces(graph, [Node("board/leather")])) == {"board/leather"}
    leather = frozenset({Node("board/leather")})
    assert ties.still_held(graph, leather, graph.nodes) == ("board",)


def test_what_was_soaked_in_is_told_of_its_host():
    graph = Graph(structure(part("spine"), layer("size"), soaked("spine", "size")))
    assert ties.soaked_into(graph, "spine") == ("size",)
