"""A minimum cut by folding the graph up: exact and quick where pieces hang together simply.

A piece that hangs on no more than two others is folded into them: whichever side they come to lie
on, its own best side follows. Stacks, layers side by side and layers with zones fold up whole; what
does not is left to the general method.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass, field

from casebook.compute.way_back.graph import Node

STAYS, OFF = False, True
Table = dict[tuple[bool, bool], int]
"""What it costs that two pieces, in their order, stay or come off."""

_ONE_PIECE = 1
_PRICE = 1 << 20
"""A price weighs more than any number of pieces, so that the fewest come off among equals."""


@dataclass
class _Folding:
    sink: Node
    alone: dict[Node, dict[bool, int]] = field(default_factory=dict)
    pairs: dict[Node, dict[Node, Table]] = field(default_factory=lambda: defaultdict(dict))
    folded: list[tuple[Node, tuple[Node, ...], dict[tuple[bool, ...], bool]]] = field(
        default_factory=list
    )

    def join(self, one: Node, other: Node, table: Table) -> None:
        """Add what two pieces cost together to what they cost so far."""
        known = self.pairs[one].get(other, {})
        total = {sides: cost + known.get(sides, 0) for sides, cost in table.items()}
        self.pairs[one][other] = total
        self.pairs[other][one] = {(b, a): cost for (a, b), cost in total.items()}

    def fold(self, node: Node) -> None:
        """Fold a piece into the one or two that it hangs on, and note its best side for each."""
        around = tuple(sorted(self.pairs.pop(node, {})))
        tables = [self.pairs[one].pop(node) for one in around]
        best: dict[tuple[bool, ...], bool] = {}
        costs: dict[tuple[bool, ...], int] = {}
        for sides in _SIDES[len(around)]:
            own = {
                side: self.alone[node][side]
                + sum(table[other, side] for table, other in zip(tables, sides, strict=True))
                for side in (STAYS, OFF)
            }
            best[sides] = own[OFF] < own[STAYS]
            costs[sides] = own[best[sides]]
        self.folded.append((node, around, best))
        if len(around) == 1:
            for (side,), cost in costs.items():
                self.alone[around[0]][side] += cost
        elif around:
            table = {(sides[0], sides[1]): cost for sides, cost in costs.items()}
            self.join(around[0], around[1], table)

    def unfold(self) -> frozenset[Node]:
        """The pieces that come off."""
        sides = {self.sink: OFF}
        for node, around, best in reversed(self.folded):
            sides[node] = best[tuple(sides[one] for one in around)]
        return frozenset(node for node, off in sides.items() if off)


_SIDES: tuple[tuple[tuple[bool, ...], ...], ...] = (
    ((),),
    ((STAYS,), (OFF,)),
    ((STAYS, STAYS), (STAYS, OFF), (OFF, STAYS), (OFF, OFF)),
)


def off_by_folding(
    capacities: Mapping[tuple[Node, Node], int], source: Node, sink: Node
) -> frozenset[Node] | None:
    """The pieces off in the cheapest cut with the fewest off; None where it does not fold up.

    A capacity is what it costs that its first piece stays while its second comes off.
    """
    work = _read(capacities, source, sink)
    waiting = {node for node, others in work.pairs.items() if len(others) <= 2} - {sink}
    waiting |= work.alone.keys() - work.pairs.keys() - {sink}
    while waiting:
        node = waiting.pop()
        around = tuple(work.pairs.get(node, ()))
        work.fold(node)
        waiting |= {one for one in around if len(work.pairs[one]) <= 2 and one != sink}
    return work.unfold() if len(work.folded) == len(work.alone) - 1 else None


def _read(capacities: Mapping[tuple[Node, Node], int], source: Node, sink: Node) -> _Folding:
    work = _Folding(sink)
    for pair in capacities:
        for node in pair:
            if node != source:
                work.alone[node] = {STAYS: 0, OFF: _ONE_PIECE}
    for (one, other), capacity in capacities.items():
        cost = capacity * _PRICE
        if one == source:
            work.alone[other][OFF] += cost
        elif other != source:
            work.join(one, other, {**_FREE, (STAYS, OFF): cost})
    return work


_FREE: Table = dict.fromkeys(((STAYS, STAYS), (STAYS, OFF), (OFF, STAYS), (OFF, OFF)), 0)
