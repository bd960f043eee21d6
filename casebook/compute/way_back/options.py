"""What could open each place: releases under the tests and failures on record, with prices."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from casebook.compute.evidence import Evidence, Tried
from casebook.compute.releases import Means, class_of, releases_of, seals
from casebook.compute.structure import Bond, How, Since, Thing
from casebook.compute.way_back.agents import agents_left
from casebook.compute.way_back.classes import OF_KIND, RANK, Class, Reason, openable, price
from casebook.compute.way_back.graph import Edge, Graph, Node
from casebook.compute.way_back.words import the
from casebook.model.vocabulary import Opener
from casebook.vocabulary import Lexicon, fold

_ACTS: Mapping[Opener, tuple[Opener, ...]] = {
    Opener.MOISTURE: (Opener.MOISTURE, Opener.ENZYME),
    Opener.SOLVENT: (Opener.SOLVENT,),
    Opener.HEAT: (Opener.HEAT,),
}
"""What goes through other things to a place, and the kinds of test that speak of it."""

_NEEDS_NO_TEST = frozenset({Opener.MECHANICAL})
_BLADE = re.compile(r"\b(?:blade|spatula|knife|scalpel|chisel|pared)\b", re.I)
_SLIDES = re.compile(
    r"\b(?:slot|tuck|tie|clip|laid[- ]in|slip|pocket|sleeve|corners?\b)|\bloops?\b", re.I
)
_RIGID = re.compile(r"\b(?:board|roller|rod|batten|panel|frame|glazing|plate)s?\b", re.I)
_STICKS_ITSELF = frozenset({"adhesive"})
_TAPE = "pressure-sensitive-tape"
_PAPER = frozenset({"paper", "tissue", ""})
_NOT_PAPER = re.compile(
    r"\b(?:board|strap|clasp|cover|covering|leather|label|cord|case|\w*band|thread|ribbon|tie)s?\b",
    re.I,
)


@dataclass(frozen=True, slots=True)
class Option:
    """One way to open one place, or why there is none.

    `agent` is in words, without what failed here; `test_first` names the parts without a test,
    `beside` what the agent harms next to it; `why` and `reason` say why it is not proposed; `needs`
    is what has to come there through what lies over it: moisture, solvent, heat.
    """

    how: Class
    price: int
    means: Means | None = None
    agent: str = ""
    test_first: tuple[str, ...] = ()
    beside: tuple[Tried, ...] = ()
    why: str = ""
    reason: Reason | None = None
    needs: tuple[Opener, ...] = ()


class Options:
    """The ways to open every edge of a graph, cheapest first."""

    def __init__(self, graph: Graph, evidence: Evidence, lexicon: Lexicon) -> None:
        self.graph = graph
        self.evidence = evidence
        self.lexicon = lexicon
        self._found: dict[int, tuple[Option, ...]] = {}
        self._passes: dict[int, bool] = {}
        self._tight: dict[tuple[str, Opener], bool] = {}

    def of(self, edge: Edge) -> tuple[Option, ...]:
        """Every way to open an edge, cheapest first; behind them what is not proposed, and why."""
        if edge.number not in self._found:
            found = sorted(self._options(edge), key=lambda one: (one.price, one.agent, one.why))
            self._found[edge.number] = tuple(found)
        return self._found[edge.number]

    def best(self, edge: Edge, reached: Callable[[Option], bool]) -> Option:
        """The cheapest way whose agent comes to the place, else what speaks against the first."""
        found = self.of(edge)
        for one in found:
            if openable(one.how) and (not one.needs or reached(one)):
                return one
        return _FAR if openable(found[0].how) else found[0]

    def adhesives(self, bond: Bond) -> tuple[str, ...]:
        """What a bond is stuck with: as named, or the layer itself where that is an adhesive."""
        if bond.adhesives or bond.how not in (How.STUCK, How.UNKNOWN):
            return bond.adhesives
        materials = self.graph.things[bond.upper].materials
        return materials if any(self._sticks(word) for word in materials) else ()

    def passes(self, edge: Edge, kind: Opener) -> bool:
        """Whether an agent gets past what holds two pieces together; heat always does.

        A wet one does not pass a film that seals, unless that is not there all over. What is not
        named may seal too: the way goes on there, and says so.
        """
        if kind is Opener.HEAT:
            return True
        if edge.number not in self._passes:
            bond = edge.bond
            everywhere = bond is not None and not (bond.partly or bond.where)
            film = bond is not None and everywhere and seals(self.adhesives(bond), self.lexicon)
            self._passes[edge.number] = not film
        return self._passes[edge.number]

    def tight(self, node: Node, kind: Opener) -> bool:
        """Whether an agent may not go through a piece: wet through plastic, any where it harms."""
        key = (node.name, kind)
        if key not in self._tight:
            thing = self.graph.things[node.name]
            sealed = kind is not Opener.HEAT and seals(thing.materials, self.lexicon)
            self._tight[key] = sealed or bool(self.evidence.harm(_known_as(thing), _ACTS[kind]))
        return self._tight[key]

    def rigid(self, name: str) -> bool:
        """Whether a thing is a board, a roller or a frame: an agent is brought past it.

        It lies on what it holds along an edge, or is lifted with it: common practice, no source.
        """
        thing = self.graph.things[name]
        return thing.part and bool(_RIGID.search(name.rpartition("/")[2]))

    def _sticks(self, word: str) -> bool:
        found = self.lexicon.resolve("materials", word)
        own = bool(found) and found is not None and found[1] == _TAPE
        return own or class_of(word, self.lexicon) in _STICKS_ITSELF

    def _options(self, edge: Edge) -> Iterator[Option]:
        bond, graph = edge.bond, self.graph
        if bond is None:
            yield Option(Class.SPLIT, price(Class.SPLIT), agent="pulled from above")
        elif graph.own(edge):
            yield closed(Reason.ORIGINAL, "it belongs to the object as it was made")
        elif bond.how is How.GROWN:
            yield closed(Reason.ORIGINAL, "the two are one piece")
        elif bond.how in (How.JOINT, How.FOLD):
            yield self._slit(edge)
        elif bond.how is How.HELD:
            yield self._loosened(bond)
        else:
            yield from self._unstuck(edge, bond)

    def _slit(self, edge: Edge) -> Option:
        if self.graph.original(edge.lower):
            return closed(Reason.ORIGINAL, "it would cut an original")
        return Option(Class.CUT, price(Class.CUT), agent="slit")

    def _loosened(self, bond: Bond) -> Option:
        """Threads are cut or drawn; what is only slotted or tied is slid out."""
        means = next(iter(releases_of(("thread",), self.lexicon)), None)
        if bond.held and all(_SLIDES.search(word) for word in bond.held):
            return Option(Class.HAND, price(Class.HAND), agent="slid or untied")
        agent = means.agent if means else "cut or drawn"
        return Option(Class.CUT, price(Class.CUT), means, agent)

    def _unstuck(self, edge: Edge, bond: Bond) -> Iterator[Option]:
        adhesives = self.adhesives(bond)
        if not adhesives:
            yield closed(Reason.UNNAMED, "how it holds is not named")
            return
        aged = bond.since is not Since.ADDED
        on_paper = any(self._on_paper(node) for node in (edge.lower, edge.upper))
        known = releases_of(adhesives, self.lexicon, aged=aged, on_original_paper=on_paper)
        if not known:
            yield closed(Reason.NOT_ON_RECORD, f"nothing on record opens {self.say(adhesives)}")
        yield from (self._option(edge, means) for means in known)

    def say(self, words: Iterable[str]) -> str:
        """Materials by their labels: `wheat starch paste or animal glue`."""
        return " and ".join(self.lexicon.label("materials", word) for word in words)

    def _on_paper(self, node: Node) -> bool:
        """Whether a piece is original paper; an unnamed original is taken for it, a board not."""
        thing = self.graph.things[node.name]
        if thing.since is not Since.ORIGINAL:
            return False
        if thing.materials:
            return class_of(thing.materials[0], self.lexicon) in _PAPER
        return not _NOT_PAPER.search(node.name.replace("-", " "))

    def _option(self, edge: Edge, means: Means) -> Option:
        """One release here: forbidden where a test is against it, or where it failed."""
        names = self._names(edge)
        if harm := self.evidence.harm(names, acting(means)):
            return closed(Reason.RULED_OUT, _forbidden(harm[0]), means)
        harmful = {kind for kind in Opener if self.evidence.harm(names, (kind,))}
        agent = agents_left(means, self.evidence.failures(names), harmful, self.lexicon)
        if not agent:
            return closed(Reason.FAILED, f"{means.agent} failed here", means)
        if means.ease <= 1:
            why = f"hardly anything opens {self.say((means.of,))} ({means.ease_from})"
            return closed(Reason.HARDLY, why, means)
        return self._priced(edge, means, agent)

    def _priced(self, edge: Edge, means: Means, agent: str) -> Option:
        old = [self.graph.things[node.name] for node in (edge.lower, edge.upper)]
        old = [thing for thing in old if thing.since is not Since.ADDED]
        untested = tuple(thing.name for thing in old if self.untested(thing.name, means))
        beside = self._beside(edge, means)
        at_original = any(thing.since is Since.ORIGINAL for thing in old)
        how = _class(means, at_original)
        cost = price(
            how,
            means.ease,
            test_first=bool(untested),
            beside_harm=bool(beside),
            at_original=at_original,
        )
        needs = tuple(one for one in _ACTS if one in acting(means))
        return Option(how, cost, means, agent, untested, beside, needs=needs)

    def untested(self, name: str, means: Means) -> bool:
        """Whether a thing that we did not add was never tried with what a release needs."""
        thing = self.graph.things[name]
        ours = thing.since is Since.ADDED
        return not ours and not self.evidence.tested(_known_as(thing), acting(means))

    def _names(self, edge: Edge) -> tuple[str, ...]:
        things = [self.graph.things[node.name] for node in (edge.lower, edge.upper)]
        return tuple(dict.fromkeys(name for thing in things for name in _known_as(thing)))

    def _beside(self, edge: Edge, means: Means) -> tuple[Tried, ...]:
        """The tests by which an agent harms an original against either piece, or a part of it."""
        kinds = set(acting(means))
        if not any(kinds & one.kinds for one in self._harms):
            return ()
        around = {
            end.name
            for node in (edge.lower, edge.upper)
            for other in self.graph.at[node]
            for end in (other.lower, other.upper)
            if self.graph.things[end.name].since is not Since.ADDED
        }
        return self.evidence.harm_in(sorted(around), kinds)

    @cached_property
    def _harms(self) -> tuple[Tried, ...]:
        return self.evidence.harm_in(self.graph.things, tuple(Opener))


def acting(means: Means) -> frozenset[Opener]:
    """The kinds of agent that act where a release is used: an enzyme brings water with it."""
    water = {Opener.MOISTURE} if Opener.ENZYME in means.kinds else set()
    return frozenset(means.kinds) | water


def _known_as(thing: Thing) -> tuple[str, ...]:
    """The names under which a test may speak of a thing."""
    return tuple(dict.fromkeys((thing.name, thing.of)))


def closed(reason: Reason, why: str, means: Means | None = None) -> Option:
    """A way that is not proposed, and why."""
    how = Class.DAMAGE if reason is Reason.ORIGINAL else Class.UNKNOWN
    return Option(how, price(how), means, why=why, reason=reason)


_FAR = closed(Reason.OUT_OF_REACH, "")


def _class(means: Means, at_original: bool) -> Class:
    """The class of a release; what is done dry counts as a blade where it says so or could harm."""
    wet = [kind for kind in means.kinds if kind not in _NEEDS_NO_TEST]
    tool = bool(_BLADE.search(means.agent)) or fold(means.agent) == "any"
    if wet and not tool:
        return max((OF_KIND[kind] for kind in wet), key=RANK.__getitem__)
    return Class.BLADE if tool or at_original else Class.HAND


def _forbidden(harm: Tried) -> str:
    what = f"{harm.of} on {the(harm.place)}" if harm.of else the(harm.place)
    return f"{harm.agent} is ruled out by a test: it harms {what}"
