"""Where a wet agent gets to from outside: through paper, cloth and paste, not through a film."""

from __future__ import annotations

from collections import deque
from collections.abc import Set
from dataclasses import dataclass, field

from casebook.compute.way_back.classes import Class
from casebook.compute.way_back.graph import Edge, Node
from casebook.compute.way_back.options import Options
from casebook.compute.way_back.words import the


@dataclass
class Reach:
    """What wet agents get to among the pieces that are there.

    They come from above; with `off`, the piece lies free and they come from below too. A piece is
    wetted if everything that lies on it lets the agent through: one dispersion film over the whole
    of it keeps it off, and so does a part that the agent harms. Common practice, no source.
    """

    options: Options
    there: Set[Node]
    off: bool = False
    _wet: dict[tuple[Node, bool, bool], bool] = field(default_factory=dict)

    def reaches(self, edge: Edge, how: Class) -> bool:
        """Whether an agent of this class comes to a place."""
        return self.from_above(edge, how) or (self.off and self.from_below(edge, how))

    def from_above(self, edge: Edge, how: Class) -> bool:
        """Whether it comes through the upper of two pieces."""
        return self._wets(edge.upper, how, up=True) and not self.options.tight(edge.upper, how)

    def from_below(self, edge: Edge, how: Class) -> bool:
        """Whether it comes through the lower of two pieces."""
        return self._wets(edge.lower, how, up=False) and not self.options.tight(edge.lower, how)

    def _wets(self, start: Node, how: Class, *, up: bool) -> bool:
        """Whether it wets a piece on its outer face; what lies in a ring it does not come to."""
        solvent = how is Class.SOLVENT
        waiting, opened = [start], set[Node]()
        while waiting:
            node = waiting[-1]
            key = (node, solvent, up)
            outer = () if key in self._wet else self._beyond(node, up=up)
            first = [one for one, _ in outer if (one, solvent, up) not in self._wet]
            if node not in opened and first:
                opened.add(node)
                waiting += [one for one in first if one not in opened]
                continue
            waiting.pop()
            if key not in self._wet:
                self._wet[key] = all(
                    passes
                    and self._wet.get((one, solvent, up), False)
                    and not self.options.tight(one, how)
                    for one, passes in outer
                )
        return self._wet[start, solvent, up]

    def _beyond(self, node: Node, *, up: bool = True) -> list[tuple[Node, bool]]:
        """What lies outside a piece, each with whether what holds it there lets agents through."""
        found = []
        for edge in self.options.graph.at[node]:
            here, outer = (edge.lower, edge.upper) if up else (edge.upper, edge.lower)
            if edge.upright and here == node and outer in self.there:
                found.append((outer, self.options.passes(edge)))
        return found

    def through(self, edge: Edge, how: Class) -> tuple[str, ...]:
        """What an agent goes through to a place: names, from the outermost inwards.

        Of two sides it takes the one on which it goes through fewer originals.
        """
        ways = [self._way(edge.upper, up=True)] if self.from_above(edge, how) else []
        if self.off and self.from_below(edge, how):
            ways.append(self._way(edge.lower, up=False))
        return min(ways, key=self._originals, default=())

    def _originals(self, names: tuple[str, ...]) -> int:
        graph = self.options.graph
        return sum(graph.original(graph.lowest(name)) for name in names)

    def _way(self, start: Node, *, up: bool) -> tuple[str, ...]:
        found: dict[str, None] = {}
        node: Node | None = start
        seen: set[Node] = set()
        while node is not None:
            seen.add(node)
            found[node.name] = None
            outer = [one for one, _ in self._beyond(node, up=up) if one not in seen]
            node = min(outer, default=None)
        return tuple(reversed(found))

    def barrier(self, edge: Edge, how: Class) -> str:
        """What keeps a wet agent from a place, in words: the nearest above it."""
        waiting, seen = deque([edge.upper]), {edge.upper}
        while waiting:
            node = waiting.popleft()
            if self.options.tight(node, how):
                return f"{how.value} may not go through {the(node.name)}"
            for other in self.options.graph.at[node]:
                if other.upright and other.lower == node and other.upper in self.there - seen:
                    if not self.options.passes(other) and other.bond:
                        film = self.options.say(self.options.adhesives(other.bond))
                        under = the(other.upper.name)
                        return f"{how.value} does not pass the film of {film} under {under}"
                    seen.add(other.upper)
                    waiting.append(other.upper)
        return f"{how.value} does not come to it"
