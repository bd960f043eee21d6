"""What a record claims about how its layers come off, held against the computed way back."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from enum import StrEnum

from casebook.compute.evidence import evidence, kinds_of
from casebook.compute.steps import none
from casebook.compute.structure import How, Since, Structure
from casebook.compute.way_back.classes import OF_KIND, Class, Reason, openable
from casebook.compute.way_back.graph import Edge, Graph
from casebook.compute.way_back.instructions import Answer, Opening, Place
from casebook.compute.way_back.options import Options
from casebook.compute.way_back.questions import take_off
from casebook.compute.way_back.telling import gone_in
from casebook.compute.way_back.words import listed, the
from casebook.model.archive import Case
from casebook.model.base import items, known
from casebook.model.outcome import Claim
from casebook.model.vocabulary import Opener
from casebook.vocabulary import Lexicon

_NOTHING = re.compile(r"\s*(?:nothing|none|no trace)\b", re.I)
_DRY = frozenset({Class.CUT, Class.HAND, Class.SPLIT, Class.BLADE})
_NO_MATTER = frozenset({Reason.UNNAMED, Reason.NOT_ON_RECORD})
_KINDS = {how: kind for kind, how in OF_KIND.items()}


class Against(StrEnum):
    """In what a claim and the computed way back disagree."""

    OTHER_AGENT = "opened with something else"
    FAILS_HERE = "ruled out here"
    OUT_OF_REACH = "does not come to it"
    CANNOT = "does not come off"
    LEAVES = "leaves something"


_AGAINST = {
    Reason.RULED_OUT: Against.FAILS_HERE,
    Reason.FAILED: Against.FAILS_HERE,
    Reason.OUT_OF_REACH: Against.OUT_OF_REACH,
}


@dataclass(frozen=True, slots=True)
class Disagreement:
    """One claim about one layer that the computed way back does not bear out, and why."""

    claim: Claim
    layer: str
    against: Against
    why: str


def disagreements(case: Case, structure: Structure, lexicon: Lexicon) -> tuple[Disagreement, ...]:
    """Where the claims of a case and the computed way back differ, claim by claim.

    Nothing is read out of prose. Where nobody named how a layer holds, the claim is all there is,
    and nothing is said against it.
    """
    said = known(case.reversibility)
    claims = items(said.claims) if said else ()
    if not claims:
        return ()
    graph = Graph(structure)
    options = Options(graph, evidence(case, lexicon), lexicon)
    return tuple(
        Disagreement(claim, layer, against, why)
        for claim in claims
        for layer in layers_of(claim, structure)
        for against, why in _held_against(claim, layer, options)
    )


def layers_of(claim: Claim, structure: Structure) -> tuple[str, ...]:
    """The layers that a claim speaks of, as far as they are there and not original."""
    ours = {one.of for one in structure.things.values() if one.since is not Since.ORIGINAL}
    found = (
        place if place in ours else place.partition("/")[0].strip()
        for place in items(claim.takes_off)
    )
    return tuple(dict.fromkeys(one for one in found if one in ours))


def uncovered(case: Case, structure: Structure) -> tuple[str, ...]:
    """The layers that we added and that no claim covers; not parts, nor what is soaked in."""
    said = known(case.reversibility)
    claims = items(said.claims) if said else ()
    covered = {layer for claim in claims for layer in layers_of(claim, structure)}
    soaked = {bond.upper for bond in structure.bonds if bond.how is How.SOAKED}
    added = (
        one.of
        for one in structure.things.values()
        if one.since is Since.ADDED and not one.part and one.name not in soaked
    )
    return tuple(sorted({one for one in added if one not in covered}))


def _held_against(claim: Claim, layer: str, options: Options) -> Iterator[tuple[Against, str]]:
    answer = take_off(options, layer)
    edges = _own_edges(layer, options.graph)
    yield from _agent(claim, answer, edges, options)
    if _leaves_nothing(claim):
        kinds = kinds_of(claim.with_, options.lexicon)
        films = (text for edge in edges for text in gone_in(options, edge))
        if left := tuple(dict.fromkeys((*films, *_left(layer, answer, kinds)))):
            yield Against.LEAVES, listed(left)


def _own_edges(layer: str, graph: Graph) -> tuple[Edge, ...]:
    """Where a layer holds to what carries it."""
    pieces = {piece for name in graph.named(layer) for piece in graph.pieces(name)}
    return tuple(
        edge
        for edge in graph.edges
        if edge.upper in pieces and edge.lower not in pieces and edge.bond
        if edge.bond.how not in (How.JOINT, How.FOLD)
    )


def _agent(
    claim: Claim, answer: Answer, edges: Iterable[Edge], options: Options
) -> Iterator[tuple[Against, str]]:
    """Whether what is claimed opens it is among what does, and nothing stops it."""
    if none(claim.with_):
        return
    kinds = kinds_of(claim.with_, options.lexicon)
    does = {kind for one in answer.openings for kind in _opens(one)}
    does |= {kind for edge in edges for kind in _may_open(edge, options)}
    stops = [stop for stop in answer.stops if set(stop.reasons) - _NO_MATTER]
    if kinds and does and not kinds & does:
        yield _refused(kinds, edges, options) or (Against.OTHER_AGENT, _with(answer, does))
    elif stops and not answer.openings:
        reason = next(one for one in stops[0].reasons if one not in _NO_MATTER)
        yield _AGAINST.get(reason, Against.CANNOT), stops[0].why


def _opens(opening: Opening) -> Iterator[Opener]:
    for one in opening.opened:
        yield from (Opener.MECHANICAL,) if one.how in _DRY else one.kinds


def _may_open(edge: Edge, options: Options) -> Iterator[Opener]:
    for one in options.of(edge):
        if openable(one.how):
            yield from (Opener.MECHANICAL,) if one.how in _DRY else (_KINDS[one.how],)


def _refused(
    kinds: Iterable[Opener], edges: Iterable[Edge], options: Options
) -> tuple[Against, str] | None:
    """What speaks against an agent of these kinds at the layer's own bonds."""
    wanted = set(kinds)
    for edge in edges:
        for one in options.of(edge):
            if one.reason and one.means and wanted & set(one.means.kinds):
                return _AGAINST.get(one.reason, Against.CANNOT), one.why
    return None


def _with(answer: Answer, does: Iterable[Opener]) -> str:
    agents = (agent for one in answer.openings for agent in one.agents)
    return listed(dict.fromkeys(agents)) or listed(sorted(kind.value for kind in does))


def _leaves_nothing(claim: Claim) -> bool:
    return none(claim.leaves) or bool(_NOTHING.match(known(claim.leaves) or ""))


def _left(layer: str, answer: Answer, kinds: Iterable[Opener]) -> Iterator[str]:
    """What is soaked in, and half of another layer that splits where this one is pulled off."""
    yield from (f"{the(one.what)}, soaked into {the(one.on)}" for one in answer.stays)
    pulled = set(kinds) <= {Opener.MECHANICAL}
    for one in answer.openings if pulled else ():
        splits = (place for place in one.opened if place.place is Place.SPLIT)
        yield from (f"half of {the(place.lower)}" for place in splits if place.lower != layer)
