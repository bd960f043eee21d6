"""Where an agent gets to from outside: through paper, cloth and paste, wet ones not past a film."""

from __future__ import annotations

from collections import deque
from collections.abc import Set
from dataclasses import dataclass, field

from casebook.compute.way_back.graph import Edge, Node
from casebook.compute.way_back.options import Option, Options
from casebook.compute.way_back.words import the
from casebook.model.vocabulary import Opener


@dataclass
class Reach:
    """What agents get to among the pieces that are there: moisture, solvent, heat.

    They come from above; with `off`, the piece lies free and they come from below too. A piece is
    come to if everything that lies on it lets the agent through: one dispersion film over the whole
    of it keeps wet ones off, and a part that an agent harms keeps that off. Common practice, no
    source.
    """

    options: Options
    there: Set[Node]
    off: bool = False
    _met: dict[tuple[Node, Opener, bool], bool] = field(default_factory=dict)

    def reaches(self, edge: Edge, option: Option) -> bool:
        """Whether all that a way of opening needs comes to a place, from one side."""
        return self._from(edge, option, up=True) or (
            self.off and self._from(edge, option, up=False)
        )

    def _from(self, edge: Edge, option: Option, *, up: bool) -> bool:
        node = edge.upper if up else edge.lower
        return all(
            not self.options.tight(node, kind) and self._meets(node, kind, up=up)
            for kind in option.needs
        )

    def _meets(self, start: Node, kind: Opener, *, up: bool) -> bool:
        """Whether it comes to a piece's outer face; to what lies in a ring it does not."""
        if (start, kind, up) in self._met:
            return self._met[start, kind, up]
        waiting, opened = [start], set[Node]()
        while waiting:
            node = waiting[-1]
            key = (node, kind, up)
            outer = () if key in self._met else self._beyond(node, kind, up=up)
            first = [one for one, _ in outer if (one, kind, up) not in self._met]
            if node not in opened and first:
                opened.add(node)
                waiting += [one for one in first if one not in opened]
                continue
            waiting.pop()
            if key not in self._met:
                self._met[key] = all(
                    passes
                    and self._met.get((one, kind, up), False)
                    and not self.options.tight(one, kind)
                    for one, passes in outer
                )
        return self._met[start, kind, up]

    def _beyond(self, node: Node, kind: Opener, *, up: bool) -> list[tuple[Node, bool]]:
        """What lies outside a piece, each with whether what holds it there lets the agent by."""
        found = []
        for edge in self.options.graph.at[node]:
            here, outer = (edge.lower, edge.upper) if up else (edge.upper, edge.lower)
            if edge.upright and here == node and outer in self.there:
                found.append((outer, self.options.passes(edge, kind)))
        return found

    def through(self, edge: Edge, option: Option) -> tuple[str, ...]:
        """What an agent goes through to a place: names, from the outermost inwards.

        Of two sides it takes the one on which it goes through fewer originals.
        """
        if not option.needs:
            return ()
        sides = (True, False) if self.off else (True,)
        ways = [
            self._way(edge.upper if up else edge.lower, option.needs[0], up=up)
            for up in sides
            if self._from(edge, option, up=up)
        ]
        return min(ways, key=self._originals, default=())

    def _originals(self, names: tuple[str, ...]) -> int:
        graph = self.options.graph
        return sum(graph.original(graph.lowest(name)) for name in names)

    def _way(self, start: Node, kind: Opener, *, up: bool) -> tuple[str, ...]:
        """One chain of pieces outwards, told from outside in; of several by their names."""
        found: dict[str, None] = {}
        node: Node | None = start
        seen: set[Node] = set()
        while node is not None:
            seen.add(node)
            found[node.name] = None
            outer = [one for one, _ in self._beyond(node, kind, up=up) if one not in seen]
            node = min(outer, default=None)
        return tuple(reversed(found))

    def barrier(self, edge: Edge, option: Option) -> str:
        """What keeps an agent from a place, in words: the nearest above it."""
        told = (self._barrier(edge, kind) for kind in option.needs)
        return next((one for one in told if one), "nothing comes to it")

    def _barrier(self, edge: Edge, kind: Opener) -> str:
        waiting, seen = deque([edge.upper]), {edge.upper}
        while waiting:
            node = waiting.popleft()
            if self.options.tight(node, kind):
                return f"{kind.value} may not go through {the(node.name)}"
            for other in self.options.graph.at[node]:
                if other.upright and other.lower == node and other.upper in self.there - seen:
                    if not self.options.passes(other, kind) and other.bond:
                        film = self.options.say(self.options.adhesives(other.bond))
                        under = the(other.upper.name)
                        return f"{kind.value} does not pass the film of {film} under {under}"
                    seen.add(other.upper)
                    waiting.append(other.upper)
        return ""
