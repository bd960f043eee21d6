"""Taking apart, under way: what is still there, what was opened, what stood in the way."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Set
from dataclasses import dataclass, field, replace
from functools import partial

from casebook.compute.way_back import telling, ties
from casebook.compute.way_back.classes import Reason, harshest, openable
from casebook.compute.way_back.cuts import Cut, Field, cut, lies_on
from casebook.compute.way_back.graph import Edge, Graph, Node
from casebook.compute.way_back.instructions import Opening, Stop
from casebook.compute.way_back.options import Option, Options, closed
from casebook.compute.way_back.reach import Reach
from casebook.compute.way_back.words import the

Chosen = list[tuple[Edge, Option]]


@dataclass
class Work:
    """Taking apart, under way: what is still there, what was opened, where it stopped.

    With `parting`, original bonds between originals do not count: a part is freed of what was
    added, not of its own. `lying_free` marks a piece that is off the object already.
    """

    options: Options
    there: frozenset[Node]
    parting: bool = False
    lying_free: bool = False
    sparing: frozenset[Node] | None = None
    frees: str = ""
    in_piece: int = 0
    openings: list[Opening] = field(default_factory=list)
    stops: dict[str, Stop] = field(default_factory=dict)
    pieces: list[frozenset[Node]] = field(default_factory=list)
    unfreed: list[Stop] = field(default_factory=list)
    _reach: Reach | None = None

    @property
    def graph(self) -> Graph:
        """The pieces and where they hold together."""
        return self.options.graph

    def reach(self) -> Reach:
        """What a wet agent gets to now."""
        if self._reach is None:
            self._reach = Reach(self.options, self.there, self.lying_free)
        return self._reach

    def counts(self, edge: Edge) -> bool:
        """Whether an edge counts as holding."""
        return not (self.parting and self.graph.own(edge))

    def open(self, sources: Set[Node], sink: Node) -> bool:
        """Part a piece from the sources, or whatever hides it; whether anything came off."""
        return self._open(frozenset(sources) - {sink}, sink, "", frozenset())

    def _open(
        self, sources: frozenset[Node], sink: Node, hiding: str, under: frozenset[str]
    ) -> bool:
        found = cut(self._field(), self._fast(sources, sink), sink, self._price)
        hider = self._hider(found, sources, sink, under) if self._hopeful(found) else None
        if hider:
            below = {one for one in self._carriers(hider) if one != hider} | sources | {sink}
            hidden = under | {hider.name, sink.name}
            return self._open(frozenset(below - {hider}), hider, sink.name, hidden)
        chosen = [(edge, self._out_from(edge, found.off)) for edge in found.edges]
        if not all(openable(option.how) for _, option in chosen):
            self.stops[sink.name] = _stop(sink, chosen)
            return False
        self._take(sink, found, chosen, hiding)
        return True

    def hopes(self, sources: Set[Node], sink: Node) -> bool:
        """Whether a piece could be parted if wet agents came to every place."""
        fast = self._fast(sources, sink)
        found = cut(self._field(), fast, sink, lambda edge: self.options.of(edge)[0].price)
        return self._hopeful(found)

    def _hopeful(self, found: Cut) -> bool:
        return all(openable(self.options.of(edge)[0].how) for edge in found.edges)

    def _field(self) -> Field:
        return Field(self.graph, self.there, self.counts, self.sparing)

    def _fast(self, sources: Set[Node], sink: Node) -> Set[Node]:
        """The sources with all that is one with them as made: no opening ever parts those."""
        return sources if self.parting else self.graph.one_with(sources, sink)

    def _price(self, edge: Edge) -> int:
        return self._now(edge).price

    def _best(self, edge: Edge) -> Option:
        """The cheapest way to open a place as things stand, or what keeps the agent from it."""
        option = self._now(edge)
        if option.reason is Reason.OUT_OF_REACH:
            why = self.reach().barrier(edge, self.options.of(edge)[0])
            return replace(option, why=why)
        return option

    def _now(self, edge: Edge) -> Option:
        return self.options.best(edge, partial(self.reach().reaches, edge))

    def _out_from(self, edge: Edge, off: Set[Node]) -> Option:
        """How a place is opened; it cannot be where what lies on top is the side that stays."""
        if edge.lower in off and lies_on(self.graph, edge):
            return closed(Reason.UNDER, f"{the(edge.upper.name)} lies on it and cannot go first")
        return self._best(edge)

    def _hider(self, found: Cut, sources: Set[Node], sink: Node, under: Set[str]) -> Node | None:
        """What covers or hides a place to be opened, and neither comes off with it nor stays."""
        ends = {end.name for edge in found.edges for end in (edge.lower, edge.upper)}
        off = {node.name for node in found.off}
        for name in sorted(ends | {sink.name}):
            for over in self.graph.over.get(name, ()):
                node = self.graph.lowest(over)
                free = node in self.there and node not in sources and node not in found.off
                above = off.intersection(self.graph.over.get(over, ()))
                if free and over not in under and not above:
                    return node
        return None

    def _carriers(self, node: Node) -> Iterator[Node]:
        for edge in self.graph.at[node]:
            if edge.upper == node and edge.lower in self.there:
                yield edge.lower

    def _take(self, sink: Node, found: Cut, chosen: Chosen, hiding: str) -> None:
        before, reached = self.there, self.reach()
        off = ties.own_pieces(self.graph, found.off) & before if self.parting else found.off
        self.there, self._reach = self.there - off, None
        told = [telling.opened(self.options, reached, *one) for one in chosen]
        rests = telling.stays(self.options, found.edges, off, self.reach())
        special = self._held_still(off) if self.parting else telling.to_decide(self.options, off)
        minded = (*telling.mind(self.options, chosen, told, off), *special)
        ends = {end for edge in found.edges for end in (edge.lower, edge.upper)}
        self.pieces.append(off)
        self.openings.append(
            Opening(
                number=len(self.openings) + 1,
                takes=sink.name,
                opened=tuple(told),
                how=harshest([option.how for _, option in chosen]),
                together=_names(off),
                left_on=_names(ends - off),
                half=sink.half == "lower" and self.graph.topmost(sink.name) not in before,
                hiding=hiding,
                frees=self.frees,
                in_piece=self.in_piece,
                riders=_names(node for node in off if self.graph.original(node)),
                stays=tuple(dict.fromkeys(rests)),
                mind=tuple(dict.fromkeys(minded)),
                cannot=tuple(dict.fromkeys(telling.for_good(self.options, found.edges))),
            )
        )

    def _held_still(self, off: Set[Node]) -> Iterator[str]:
        for name in ties.still_held(self.graph, off, self.there):
            yield f"It is still held to {the(name)} as it was made: leave that."


def _names(nodes: Iterable[Node]) -> tuple[str, ...]:
    return tuple(sorted({node.name for node in nodes}))


def _stop(sink: Node, chosen: Chosen) -> Stop:
    closed_ones = [(edge, option) for edge, option in chosen if not openable(option.how)]
    whys = (
        f"between {the(edge.lower.name)} and {the(edge.upper.name)}: {option.why}"
        for edge, option in closed_ones
    )
    reasons = (option.reason for _, option in closed_ones if option.reason)
    return Stop(sink.name, "; ".join(dict.fromkeys(whys)), tuple(dict.fromkeys(reasons)))
