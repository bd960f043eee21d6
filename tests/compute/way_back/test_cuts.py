"""The cut against brute force: the cheapest of all, the fewest off, and really apart."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations, pairwise

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from casebook.compute.way_back.cuts import ALONG, RIDE, Cut, Field, cut, lies_on
from casebook.compute.way_back.graph import Edge, Graph, Node
from tests.compute.way_back.built import PASTE, layer, part, structure, stuck
from tests.compute.way_back.random_structures import sound, structures

PRICES = st.lists(st.integers(1, 5), min_size=1, max_size=6)


def field(graph: Graph, sparing: frozenset[Node] | None = None) -> Field:
    return Field(graph, graph.nodes, lambda edge: True, sparing)


def off_without(graph: Graph, sink: Node, opened: frozenset[Edge]) -> frozenset[Node]:
    """What hangs together with the sink once these edges are open."""
    found, waiting = {sink}, [sink]
    while waiting:
        node = waiting.pop()
        for edge in graph.at[node]:
            for end in (edge.lower, edge.upper):
                if edge not in opened and end not in found:
                    found.add(end)
                    waiting.append(end)
    return frozenset(found)


def every_way(
    graph: Graph, sources: frozenset[Node], sink: Node, prices: dict[int, int]
) -> Iterator[tuple[int, int, frozenset[Node]]]:
    """Price, number of pieces off and the pieces off, for every set of edges that parts the two."""
    for size in range(len(graph.edges) + 1):
        for opened in combinations(graph.edges, size):
            off = off_without(graph, sink, frozenset(opened))
            stays_on_top = (
                edge.lower in off and edge.upper not in off and lies_on(graph, edge)
                for edge in graph.edges
            )
            if not off & sources and not any(stays_on_top):
                riding = sum(RIDE for node in off - {sink} if graph.original(node))
                cost = sum(prices[edge.number] for edge in opened)
                yield cost + riding, len(off), off


def found_price(graph: Graph, found: Cut, sink: Node, prices: dict[int, int]) -> int:
    riding = sum(RIDE for node in found.off - {sink} if graph.original(node))
    return sum(prices[edge.number] for edge in found.edges) + riding


@given(st.one_of(sound(), structures()), PRICES, st.data())
@settings(max_examples=250, suppress_health_check=[HealthCheck.too_slow])
def test_no_set_of_edges_parts_the_two_more_cheaply_or_takes_off_less(built, prices, data):
    graph = Graph(built)
    if not 0 < len(graph.edges) < 9:
        return
    sink = data.draw(st.sampled_from(graph.edges)).upper
    lowers = sorted({edge.lower for edge in graph.edges} - {sink})
    if not lowers:
        return
    sources = frozenset({data.draw(st.sampled_from(lowers))})
    weights = {edge.number: prices[edge.number % len(prices)] * RIDE for edge in graph.edges}
    found = cut(field(graph), sources, sink, lambda edge: weights[edge.number])
    ways = list(every_way(graph, sources, sink, weights))
    held_down = any(edge.lower in found.off and lies_on(graph, edge) for edge in found.edges)
    if not ways:
        assert held_down
        return
    price, count, off = min(ways, key=lambda way: way[:2])
    assert not held_down
    assert off_without(graph, sink, frozenset(found.edges)) == found.off
    assert not found.off & sources
    if found.edges:
        assert (found_price(graph, found, sink, weights), len(found.off)) == (price, count)
        assert found.off == off
    else:
        assert not off_without(graph, sink, frozenset()) & sources


def stacked(*names: str) -> Graph:
    members = [part(names[0]), *(layer(name, "linen") for name in names[1:])]
    pairs = pairwise(names)
    return Graph(structure(*members, *(stuck(low, high, PASTE) for low, high in pairs)))


def test_among_equals_the_bond_nearest_to_what_is_wanted_is_opened():
    graph = stacked("spine", "a", "b", "c")
    found = cut(field(graph), {Node("spine")}, Node("c"), lambda edge: 7)
    assert found.off == {Node("c")}


def test_what_lies_on_a_piece_comes_off_with_it():
    graph = stacked("spine", "a", "b", "c")
    found = cut(field(graph), {Node("spine")}, Node("a"), lambda edge: 7)
    assert found.off == {Node("a"), Node("b"), Node("c")}


def test_a_layer_between_two_others_that_hold_together_takes_the_upper_along():
    graph = Graph(
        structure(
            part("sheet"),
            layer("mends"),
            layer("lining"),
            stuck("sheet", "mends", PASTE),
            stuck("sheet", "lining", PASTE),
            stuck("mends", "lining", PASTE),
        )
    )
    found = cut(field(graph), {Node("sheet")}, Node("mends"), lambda edge: 7)
    assert found.off == {Node("mends"), Node("lining")}


def test_a_layer_to_be_spared_is_spared_where_it_is_not_much_dearer():
    graph = stacked("spine", "a", "b")
    cheap = {("spine", "a"): 1, ("a", "b"): ALONG}
    cost = lambda edge: cheap[edge.lower.name, edge.upper.name]  # noqa: E731
    sink = Node("b")
    assert cut(field(graph), {Node("spine")}, sink, cost).off == {Node("a"), sink}
    assert cut(field(graph, frozenset({sink})), {Node("spine")}, sink, cost).off == {sink}


def test_what_nothing_holds_comes_off_with_all_that_hangs_on_it():
    graph = Graph(structure(part("spine"), layer("a"), layer("b"), stuck("a", "b", PASTE)))
    found = cut(field(graph), {Node("spine")}, Node("b"), lambda edge: 7)
    assert found == Cut((), frozenset({Node("a"), Node("b")}))
