"""Folding a graph up finds the same cut as the general method, wherever it folds up at all."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from casebook.compute.way_back.cuts import off_by_flow
from casebook.compute.way_back.folding import off_by_folding
from casebook.compute.way_back.graph import Node

SOURCE, SINK = Node("", "source"), Node("sink")
NODES = [SOURCE, SINK, *(Node(f"n{number}") for number in range(5))]
ARCS = [(one, other) for one in NODES for other in NODES if one != other]
NETWORKS = st.dictionaries(st.sampled_from(ARCS), st.integers(1, 6), min_size=1, max_size=16)


def whole(capacities: dict[tuple[Node, Node], int]) -> dict[tuple[Node, Node], int]:
    """The network with source and sink in it."""
    return {(SOURCE, SINK): 1, **capacities}


@given(NETWORKS)
@settings(max_examples=200)
def test_what_folds_up_gives_the_cut_of_the_general_method(capacities):
    network = whole(capacities)
    folded = off_by_folding(network, SOURCE, SINK)
    assert folded is None or folded == off_by_flow(network, SOURCE, SINK)


def test_a_stack_and_a_ladder_fold_up_and_a_net_does_not():
    chain = [(SOURCE, NODES[2]), (NODES[2], NODES[3]), (NODES[3], SINK)]
    assert off_by_folding(dict.fromkeys(chain, 1), SOURCE, SINK) == {SINK}
    inner = [*NODES[2:], SINK]
    net = {(one, other): 1 for one in inner for other in inner if one != other}
    assert off_by_folding({**net, (SOURCE, NODES[2]): 1}, SOURCE, SINK) is None


def test_among_equals_the_fewest_come_off():
    equal = {(SOURCE, NODES[2]): 2, (NODES[2], NODES[3]): 2, (NODES[3], SINK): 2}
    assert off_by_folding(equal, SOURCE, SINK) == {SINK}


def test_the_cheapest_place_is_opened():
    cheap = {(SOURCE, NODES[2]): 2, (NODES[2], NODES[3]): 1, (NODES[3], SINK): 2}
    assert off_by_folding(cheap, SOURCE, SINK) == {SINK, NODES[3]}
