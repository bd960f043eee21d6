"""The cheapest way to part one piece from others: a minimum cut over exact prices."""

from __future__ import annotations

from collections import deque
from collections.abc import Callable, Iterable, Mapping, Set
from dataclasses import dataclass

from casebook.compute.way_back.classes import Class, price
from casebook.compute.way_back.folding import off_by_folding
from casebook.compute.way_back.graph import Edge, Graph, Node

Price = Callable[[Edge], int]
"""The price of opening an edge."""

_SOURCE = Node("", "source")
RIDE = price(Class.RIDE)
"""The price of letting an original ride along."""

ALONG = 3 * price(Class.MOISTURE)
"""The price of a layer that comes off with another and need not: as of three easy moist openings.

Common practice, no source: nobody takes down a spine's linings to renew the paper over them.
"""

_NEVER = price(Class.DAMAGE, 1) ** 2
"""More than every bond of any record together."""


@dataclass(frozen=True, slots=True)
class Cut:
    """The edges to open, and the pieces that then come off in one."""

    edges: tuple[Edge, ...]
    off: frozenset[Node]


@dataclass(frozen=True, slots=True)
class Field:
    """What a cut is looked for in: a graph, the pieces still there, and edges that count.

    `tied` says whether an edge counts: an original bond between originals may be left out. With
    `sparing`, what we added and was not asked for costs something where it comes off too.
    """

    graph: Graph
    there: Set[Node]
    tied: Callable[[Edge], bool]
    sparing: Set[Node] | None = None


def cut(field: Field, sources: Set[Node], sink: Node, price_of: Price) -> Cut:
    """The cheapest cut that parts `sink` from every source, with the fewest pieces coming off.

    Of all cheapest cuts this is the one nearest the sink. There is only one such, so that nothing
    depends on order. Letting an original ride along has its price too.
    """
    region, edges = _around(field, sources, sink)
    if not edges:
        return Cut((), frozenset(region))
    must = _above(field, sources, sink)
    ends = {**dict.fromkeys(sources, _SOURCE), **dict.fromkeys(must, sink)}
    capacities = _collapsed(field, ends, edges, price_of)
    for node in region - must:
        if ride := _ride(field, node):
            capacities[_SOURCE, node] = capacities.get((_SOURCE, node), 0) + ride
    off = off_by_folding(capacities, _SOURCE, sink)
    off = off_by_flow(capacities, _SOURCE, sink) if off is None else off
    off = (off & region) | must
    return Cut(tuple(one for one in edges if (one.lower in off) != (one.upper in off)), off)


def _around(field: Field, sources: Set[Node], sink: Node) -> tuple[set[Node], list[Edge]]:
    """The pieces that hang together with the sink without a source, and the edges around them."""
    region, waiting = {sink}, deque([sink])
    edges: dict[int, Edge] = {}
    while waiting:
        node = waiting.popleft()
        for edge in field.graph.at[node]:
            other = edge.upper if edge.lower == node else edge.lower
            if other in field.there and field.tied(edge):
                edges[edge.number] = edge
                if other not in region and other not in sources:
                    region.add(other)
                    waiting.append(other)
    tied = [edges[number] for number in sorted(edges)]
    held = any(end in sources for edge in tied for end in (edge.lower, edge.upper))
    return region, tied if held else []


def _above(field: Field, sources: Set[Node], sink: Node) -> set[Node]:
    """The sink and what lies on it, which must come off with it."""
    found, waiting = {sink}, [sink]
    may = field.there - sources
    while waiting:
        node = waiting.pop()
        for edge in field.graph.at[node]:
            on_it = edge.lower == node and lies_on(field.graph, edge) and field.tied(edge)
            if on_it and edge.upper in may and edge.upper not in found:
                found.add(edge.upper)
                waiting.append(edge.upper)
    return found


def _ride(field: Field, node: Node) -> int:
    """What it costs that a piece comes off with another: an original, or a layer to be spared."""
    if field.graph.original(node):
        return RIDE
    whole = node == field.graph.lowest(node.name)
    spared = field.sparing is not None and whole and node not in field.sparing
    return ALONG if spared else 0


def _collapsed(
    field: Field, ends: Mapping[Node, Node], edges: Iterable[Edge], price_of: Price
) -> dict[tuple[Node, Node], int]:
    """The capacities from piece to piece, those in `ends` as one, parallel edges added up.

    From below upwards a bond costs its price. From above downwards it cannot be cut: nothing comes
    off from under what lies on it and stays.
    """
    found: dict[tuple[Node, Node], int] = {}
    for edge in edges:
        cost = price_of(edge)
        low, high = ends.get(edge.lower, edge.lower), ends.get(edge.upper, edge.upper)
        if low != high:
            found[low, high] = found.get((low, high), 0) + cost
            back = _NEVER if lies_on(field.graph, edge) else cost
            found[high, low] = found.get((high, low), 0) + back
    return found


def lies_on(graph: Graph, edge: Edge) -> bool:
    """Whether one piece lies on the other, so that it has to go first; a flap is folded back."""
    return edge.upright and not graph.flap(edge.upper)


def off_by_flow(
    capacities: Mapping[tuple[Node, Node], int], source: Node, sink: Node
) -> frozenset[Node]:
    """The pieces on the sink's side of the minimum cut that is nearest the sink, for any graph."""
    # Loading it takes longer than most ways back: only a graph that does not fold up pays for it.
    import networkx  # noqa: PLC0415
    from networkx.algorithms.flow import edmonds_karp  # noqa: PLC0415

    flow = networkx.DiGraph()
    for (one, other), capacity in capacities.items():
        flow.add_edge(one, other, capacity=capacity)
    _, (_, off) = networkx.minimum_cut(flow, source, sink, flow_func=edmonds_karp)
    return frozenset(off)
