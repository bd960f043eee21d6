"""The structure as a graph: what is one piece, and what each place takes to open."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import NamedTuple

from casebook.compute.structure import Bond, How, Since, Structure, Thing


class Node(NamedTuple):
    """One piece: a thing, or the lower or upper half of a layer that splits."""

    name: str
    half: str = ""


@dataclass(frozen=True, slots=True)
class Edge:
    """One place where two pieces hold together; `bond` is None within a layer that splits.

    `number` tells edges apart, and follows names only.
    """

    number: int
    lower: Node
    upper: Node
    bond: Bond | None = None

    @property
    def upright(self) -> bool:
        """Whether one end lies on the other: not so where zones of a layer meet."""
        return self.bond is None or self.bond.how is not How.JOINT


class Graph:
    """The pieces of a structure and where they hold together.

    What is soaked in is no piece of its own: what lies on it lies on what it is in. What is apart
    from the object is left out. Nothing here depends on the order of the record.
    """

    def __init__(self, structure: Structure) -> None:
        self.things: Mapping[str, Thing] = structure.things
        self.soaked = _soaked(structure)
        gone = {name for name, one in structure.things.items() if one.apart} | set(self.soaked)
        self.nodes = frozenset(node for name in sorted(self.things) for node in self.pieces(name))
        self.nodes -= {node for node in self.nodes if node.name in gone}
        self.edges = tuple(_edges(self, structure))
        self.at: dict[Node, list[Edge]] = defaultdict(list)
        for edge in self.edges:
            self.at[edge.lower].append(edge)
            self.at[edge.upper].append(edge)
        self.over = _over(self, structure)
        self._own: dict[Node, list[Node]] = defaultdict(list)
        self._flaps: set[Node] = set()
        for edge in self.edges:
            if self.own(edge):
                self._flaps.add(edge.upper)
                self._own[edge.lower].append(edge.upper)
                self._own[edge.upper].append(edge.lower)

    def pieces(self, name: str) -> tuple[Node, ...]:
        """The piece or pieces of a thing: two for a layer that splits; no original splits."""
        thing = self.things[name]
        if thing.splits and thing.since is not Since.ORIGINAL:
            return Node(name, "lower"), Node(name, "upper")
        return (Node(name),)

    def lowest(self, name: str) -> Node:
        """The piece of a thing that holds to what carries it."""
        return self.pieces(name)[0]

    def topmost(self, name: str) -> Node:
        """The piece of a thing that others lie on."""
        return self.pieces(name)[-1]

    def turned(self, bond: Bond) -> Bond:
        """A bond with the part below its own zone of a layer, whichever was laid on the other."""
        below = self.things.get(bond.lower)
        if below and below.zone == bond.upper:
            return replace(bond, lower=bond.upper, upper=bond.lower)
        return bond

    def named(self, name: str) -> tuple[str, ...]:
        """The things that a name stands for: itself, or the zones and walls of a layer."""
        if name in self.things:
            return (name,)
        return tuple(sorted(key for key, one in self.things.items() if one.of == name))

    def original(self, node: Node) -> bool:
        """Whether a piece belongs to the object as it was made."""
        return self.things[node.name].since is Since.ORIGINAL

    def flap(self, node: Node) -> bool:
        """Whether a piece is an original that its own bond holds to another: it folds back."""
        return node in self._flaps

    def one_with(self, nodes: Iterable[Node], without: Node) -> frozenset[Node]:
        """Pieces with all that original bonds hold them to, other than through one piece."""
        waiting = list(nodes)
        found = set(waiting)
        while waiting:
            for other in self._own.get(waiting.pop(), ()):
                if other not in found and other != without:
                    found.add(other)
                    waiting.append(other)
        return frozenset(found)

    def own(self, edge: Edge) -> bool:
        """Whether an edge belongs to the object as made: an original bond between originals."""
        both = self.original(edge.lower) and self.original(edge.upper)
        return both and (edge.bond is None or edge.bond.since is Since.ORIGINAL)


def _soaked(structure: Structure) -> dict[str, tuple[str, ...]]:
    """What is soaked in, and what it went into."""
    found: dict[str, set[str]] = defaultdict(set)
    for bond in structure.bonds:
        if bond.how is How.SOAKED and bond.upper in structure.things:
            found[bond.upper].add(bond.lower)
    return {name: tuple(sorted(found[name])) for name in sorted(found)}


def _sort_key(bond: Bond) -> tuple[object, ...]:
    """By names and by what a bond says, never by its step."""
    said = (bond.how.value, bond.adhesives, bond.held, bond.cuts, bond.face, bond.where)
    return (bond.lower, bond.upper, *said, bond.partly, bond.since.value)


def _edges(graph: Graph, structure: Structure) -> Iterator[Edge]:
    number = 0
    for lower, upper, bond in _ends(graph, structure):
        if lower in graph.nodes and upper in graph.nodes and lower != upper:
            yield Edge(number, lower, upper, bond)
            number += 1


def _ends(graph: Graph, structure: Structure) -> Iterator[tuple[Node, Node, Bond | None]]:
    for name in sorted(structure.things):
        if len(graph.pieces(name)) == 2:
            yield graph.lowest(name), graph.topmost(name), None
    bonds = (*map(graph.turned, structure.bonds), *_threaded(graph, structure))
    for bond in sorted(bonds, key=_sort_key):
        known = bond.lower in graph.things and bond.upper in graph.things
        for lower in _hosts(graph, bond.lower) if known else ():
            for pair in _pairs(graph, lower, bond):
                yield *pair, bond


def _threaded(graph: Graph, structure: Structure) -> Iterator[Bond]:
    """What a thread goes through is held by it too: a guard that was sewn through."""
    there = {(bond.lower, bond.upper) for bond in structure.bonds}
    for bond in structure.bonds:
        for cut in bond.cuts if bond.how is How.HELD else ():
            for name in graph.named(cut):
                own = name in (bond.lower, bond.upper) or (bond.lower, name) in there
                if not own and graph.things[name].since is not Since.ORIGINAL:
                    yield replace(bond, upper=name)


def _hosts(graph: Graph, name: str) -> tuple[str, ...]:
    """What carries a thing that lies on something soaked in: what that is in, followed down."""
    found: dict[str, None] = {}
    waiting, seen = [name], set[str]()
    while waiting:
        one = waiting.pop()
        if one not in seen:
            seen.add(one)
            waiting.extend(graph.soaked.get(one, ()))
            found.update({} if one in graph.soaked else {one: None})
    return tuple(sorted(one for one in found if one in graph.things))


def _pairs(graph: Graph, lower: str, bond: Bond) -> Iterator[tuple[Node, Node]]:
    """The pieces that a bond holds: thread and joints hold both halves of a layer that splits."""
    if bond.how in (How.STUCK, How.UNKNOWN):
        yield graph.topmost(lower), graph.lowest(bond.upper)
        return
    below = (graph.lowest(lower), graph.lowest(bond.upper))
    above = (graph.topmost(lower), graph.topmost(bond.upper))
    yield from sorted({below, above})


def _over(graph: Graph, structure: Structure) -> dict[str, tuple[str, ...]]:
    """For each thing, what covers or hides it without a bond and must be lifted first."""
    found: dict[str, set[str]] = defaultdict(set)
    for below, above in (*structure.covers, *structure.hides, *_laid_over(structure)):
        for name in graph.named(below):
            found[name] |= set(graph.named(above)) - set(graph.named(below))
    return {name: tuple(sorted(found[name])) for name in sorted(found)}


def _laid_over(structure: Structure) -> Iterator[tuple[str, str]]:
    """What was found on a face, or filled in, with what we stuck over the whole of that face.

    Common practice, no source: the record says of both only that they lie on the part.
    """
    laid: dict[str, list[tuple[str, str]]] = defaultdict(list)
    for bond in structure.bonds:
        upper = structure.things.get(bond.upper)
        if upper and upper.since is Since.ADDED and _whole(bond, upper):
            laid[bond.lower].append((upper.name, bond.face))
    for bond in structure.bonds:
        upper = structure.things.get(bond.upper)
        if upper and bond.how in (How.STUCK, How.UNKNOWN):
            for name, face in laid[bond.lower]:
                found = upper.since is Since.FOUND and face == bond.face
                if found or (bond.within and name != upper.name):
                    yield upper.name, name


def _whole(bond: Bond, upper: Thing) -> bool:
    """Whether a layer is stuck down over the whole of what it lies on."""
    partly = upper.patches or upper.where or bond.partly or bond.where or bond.within
    return bond.how is How.STUCK and not partly
