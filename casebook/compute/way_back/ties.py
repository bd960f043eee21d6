"""What was put on a part, what ties it to others, and what carries a layer."""

from __future__ import annotations

from collections import deque
from collections.abc import Callable, Iterable, Iterator, Set

from casebook.compute.structure import Since
from casebook.compute.way_back.graph import Graph, Node


def put_on(graph: Graph, part: str) -> frozenset[Node]:
    """Everything that was put on a part: what lies on it and is not original, and what on that."""
    start = [node for node in graph.pieces(part) if node in graph.nodes]
    return frozenset(_spread(start, lambda node: _laid(graph, node))) - set(start)


def above(graph: Graph, nodes: Iterable[Node]) -> frozenset[Node]:
    """Everything that lies on these pieces and was put there: originals that were put back too."""
    start = list(nodes)
    return frozenset(_spread(start, lambda node: _uppers(graph, node))) - set(start)


def outermost(graph: Graph, among: Set[Node]) -> list[Node]:
    """The pieces among these on which none of the others lies, by their names.

    An upper half on which nothing lies does not come off alone: its layer is taken as a whole.
    """
    found = {node for node in among if not any(one in among for one in _uppers(graph, node))}
    whole = {_whole(graph, node) for node in found or among}
    return sorted(node for node in whole if node in among)


def _whole(graph: Graph, node: Node) -> Node:
    lies_on_it = any(edge.lower == node and edge.upright for edge in graph.at[node])
    return node if node.half != "upper" or lies_on_it else graph.lowest(node.name)


def _spread(start: Iterable[Node], onward: Callable[[Node], Iterable[Node]]) -> set[Node]:
    waiting, seen = deque(start), set(start)
    while waiting:
        for node in onward(waiting.popleft()):
            if node not in seen:
                seen.add(node)
                waiting.append(node)
    return seen


def _uppers(graph: Graph, node: Node) -> Iterator[Node]:
    for edge in graph.at[node]:
        if edge.lower == node and edge.upright and not graph.own(edge):
            yield edge.upper
    for name in graph.over.get(node.name, ()):
        yield from (one for one in graph.pieces(name) if one in graph.nodes)


def _laid(graph: Graph, node: Node) -> Iterator[Node]:
    return (one for one in _uppers(graph, node) if not graph.original(one))


def ground(graph: Graph, layer: Iterable[Node]) -> frozenset[Node]:
    """The originals that carry a layer, directly or through what was put under it."""

    def below(node: Node) -> Iterator[Node]:
        if not graph.original(node):
            yield from _lowers(graph, node)

    return frozenset(node for node in _spread(layer, below) if graph.original(node))


def _lowers(graph: Graph, node: Node) -> Iterator[Node]:
    return (one.lower for one in graph.at[node] if one.upper == node and one.upright)


def ties(graph: Graph, part: str, there: Set[Node]) -> frozenset[Node]:
    """What a part is to be freed from: what it lies on, or what its own layers tie it to.

    Its own layers stay with it: those that lie on it and nowhere else. Another zone of such a
    layer, and whatever else such a layer also lies on, is what it is freed from.
    """
    own = {node for node in graph.pieces(part) if node in there}
    own |= {node for node in put_on(graph, part) if node in there}
    found = set()
    for node in own:
        for edge in graph.at[node]:
            other = edge.lower if edge.upper == node else edge.upper
            downward = edge.upper == node or not edge.upright
            if downward and other in there and other not in own and not graph.own(edge):
                found.add(other)
    return frozenset(found)


def carrier(graph: Graph, part: str) -> str | None:
    """The put-back original of which a part is an original piece, if it is not tied itself."""
    start = graph.pieces(part)
    above = [node.name for node in _spread(start, lambda node: _own_lowers(graph, node))]
    return min((name for name in above if name != part and _put_back(graph, name)), default=None)


def _own_lowers(graph: Graph, node: Node) -> Iterator[Node]:
    return (one.lower for one in graph.at[node] if one.upper == node and graph.own(one))


def _put_back(graph: Graph, name: str) -> bool:
    """Whether an original lies on something by a bond that is not original."""
    edges = (edge for node in graph.pieces(name) for edge in graph.at[node])
    return any(edge.upper.name == name and not graph.own(edge) for edge in edges)


def own_pieces(graph: Graph, off: Iterable[Node]) -> frozenset[Node]:
    """Pieces with the original pieces that belong to them as made."""

    def belonging(node: Node) -> Iterator[Node]:
        return (one.upper for one in graph.at[node] if one.lower == node and graph.own(one))

    return frozenset(_spread(off, belonging))


def still_held(graph: Graph, off: Set[Node], there: Set[Node]) -> tuple[str, ...]:
    """What else a freed piece is held to as it was made."""
    lowers = {one for node in off for one in _own_lowers(graph, node)}
    return tuple(sorted(node.name for node in (lowers & there) - off))


def soaked_into(graph: Graph, part: str) -> tuple[str, ...]:
    """What was soaked into a part and is not original."""
    return tuple(
        name
        for name, hosts in graph.soaked.items()
        if part in hosts and graph.things[name].since is not Since.ORIGINAL
    )
