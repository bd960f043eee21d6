"""A minimum cut by folding the graph up: exact and quick where pieces hang together simply.

A piece that hangs on no more than two others is folded into them: whichever side they come to lie
on, its own best side follows. Stacks, layers side by side and layers with zones fold up whole; what
does not is left to the general method.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from casebook.compute.way_back.graph import Node

STAYS, OFF = 0, 1
Table = tuple[int, int, int, int]
"""What two pieces cost: both stay, the second comes off, the first does, both do."""

_ONE_PIECE = 1
_PRICE = 1 << 20
"""A price weighs more than any number of pieces, so that the fewest come off among equals."""

_FREE: Table = (0, 0, 0, 0)


@dataclass
class _Folding:
    """What is not folded up yet, and how to unfold the rest.

    `alone` is what a piece costs that stays or comes off, `pairs` what two cost together, `folded`
    each piece with those that it hung on and its best side for every state of them.
    """

    sink: Node
    alone: dict[Node, list[int]] = field(default_factory=dict)
    pairs: dict[Node, dict[Node, Table]] = field(default_factory=lambda: defaultdict(dict))
    folded: list[tuple[Node, tuple[Node, ...], tuple[int, ...]]] = field(default_factory=list)

    def join(self, one: Node, other: Node, table: Table) -> None:
        """Add what two pieces cost together to what they cost so far."""
        a, b, c, d = self.pairs[one].get(other, _FREE)
        e, f, g, h = table
        self.pairs[one][other] = (a + e, b + f, c + g, d + h)
        self.pairs[other][one] = (a + e, c + g, b + f, d + h)

    def fold(self, node: Node) -> None:
        """Fold a piece into the one or two that it hangs on, and note its best side for each."""
        around = tuple(self.pairs.pop(node, {}))
        tables = [self.pairs[one].pop(node) for one in around]
        stays, off = self.alone[node]
        costs = [
            (stays + sum(table[STAYS] for table in rows), off + sum(table[OFF] for table in rows))
            for rows in _rows(tables)
        ]
        self.folded.append((node, around, tuple(int(b < a) for a, b in costs)))
        best = [min(pair) for pair in costs]
        if len(around) == 1:
            self.alone[around[0]][STAYS] += best[0]
            self.alone[around[0]][OFF] += best[1]
        elif around:
            self.join(around[0], around[1], (best[0], best[1], best[2], best[3]))

    def unfold(self) -> frozenset[Node]:
        """The pieces that come off."""
        sides = {self.sink: OFF}
        for node, around, best in reversed(self.folded):
            state = 0
            for one in around:
                state = 2 * state + sides[one]
            sides[node] = best[state]
        return frozenset(node for node, side in sides.items() if side == OFF)


def _rows(tables: Sequence[Table]) -> list[tuple[tuple[int, int], ...]]:
    """For every state of one or two neighbours, what the piece costs with each of them."""
    rows: list[tuple[tuple[int, int], ...]] = [()]
    for a, b, c, d in tables:
        rows = [(*row, own) for row in rows for own in ((a, b), (c, d))]
    return rows


def off_by_folding(
    capacities: Mapping[tuple[Node, Node], int], source: Node, sink: Node
) -> frozenset[Node] | None:
    """The pieces off in the cheapest cut with the fewest off; None where it does not fold up.

    A capacity is what it costs that its first piece stays while its second comes off.
    """
    work = _read(capacities, source, sink)
    waiting = {node for node in work.alone if len(work.pairs[node]) <= 2} - {sink}
    while waiting:
        node = waiting.pop()
        around = tuple(work.pairs[node])
        work.fold(node)
        waiting |= {one for one in around if len(work.pairs[one]) <= 2 and one != sink}
    return work.unfold() if len(work.folded) == len(work.alone) - 1 else None


def _read(capacities: Mapping[tuple[Node, Node], int], source: Node, sink: Node) -> _Folding:
    work = _Folding(sink)
    for (one, other), capacity in capacities.items():
        for node in (one, other):
            if node != source and node not in work.alone:
                work.alone[node] = [0, _ONE_PIECE]
        if one == source:
            work.alone[other][OFF] += capacity * _PRICE
        elif other != source:
            work.join(one, other, (0, capacity * _PRICE, 0, 0))
    return work
