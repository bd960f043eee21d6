"""Rules about the way back: claims that it does not bear out, bonds that nobody can open."""

from __future__ import annotations

from collections.abc import Iterator

from casebook.compute.evidence import evidence
from casebook.compute.structure import Since
from casebook.compute.way_back.claims import Against, Disagreement, disagreements
from casebook.compute.way_back.classes import Reason
from casebook.compute.way_back.graph import Edge, Graph
from casebook.compute.way_back.options import Options
from casebook.diagnostics import Severity, Span
from casebook.model.base import Gap, items, known
from casebook.rules.adhesives import dispersion_leaves_something
from casebook.rules.declare import ECCO_9, NO_SOURCE, SHOULD, SLIP, Raised, rule
from casebook.rules.look import Due, Look
from casebook.vocabulary import fold

_STRUCTURE = (
    "Case.as_found",
    "Case.tests",
    "Step.adds",
    "Step.onto",
    "Step.adhesive",
    "Step.removes",
    "Step.outcome",
)
_CLAIMS = (
    "Case.reversibility",
    "Reversibility.claims",
    "Claim.takes_off",
    "Claim.with_",
    "Claim.leaves",
)
_OPEN = frozenset({Reason.UNNAMED, Reason.NOT_ON_RECORD})
_SAID = {
    Against.OTHER_AGENT: "`{layer}` is not opened with that, but with {why}",
    Against.FAILS_HERE: "`{layer}` cannot be taken off with that here: {why}",
    Against.OUT_OF_REACH: "`{layer}` cannot be taken off with that: {why}",
    Against.CANNOT: "`{layer}` hardly comes off at all: {why}",
    Against.LEAVES: "taking off `{layer}` leaves something: {why}",
}
_HINTS = {
    Against.OTHER_AGENT: "correct `with`, or the adhesive in the step; a release of the lab's own "
    "goes under `releases` in `vocabulary/materials.yml`",
    Against.LEAVES: "write what stays in `leaves`",
}
_HINT = "correct the claim, or the test or bond that speaks against it"
_PASTED = "material: linen, adhesive: wheat-starch-paste"


@rule(
    why="Whoever trusts a claim that the structure does not bear out harms the object with it.",
    source=f"{ECCO_9}; of each layer, against what its bonds, the tests and the reach of moisture "
    f"allow: {NO_SOURCE}",
    fields=(*_CLAIMS, *_STRUCTURE),
    weight=SLIP,
    raises=f"steps: [{{adds: patch, onto: spine, {_PASTED}}}]\n"
    "reversibility: {claims: [{takes-off: patch, with: acetone, leaves: nothing}]}",
    passes=f"steps: [{{adds: patch, onto: spine, {_PASTED}}}]\n"
    "reversibility: {claims: [{takes-off: patch, with: water, leaves: nothing}]}",
    due=Due.TREATED,
)
def claim_and_way_back(look: Look) -> Iterator[Raised]:
    """A claim on how a layer comes off agrees with the way back that follows from the record."""
    told = {one.span for one in dispersion_leaves_something.check(look)}
    for one in disagreements(look.case, look.replay.final, look.lexicon):
        span = _place(one)
        if span not in told:
            message = _SAID[one.against].format(layer=one.layer, why=one.why)
            yield Raised(message, span, _HINTS.get(one.against, _HINT))


def _place(one: Disagreement) -> Span | None:
    return one.claim.span("leaves" if one.against is Against.LEAVES else "with")


@rule(
    why="Where nobody knows how a bond on the original opens, the next conservator has to guess.",
    source=f"{ECCO_9}; asked of each such bond: {NO_SOURCE}",
    fields=(*_CLAIMS, "Reversibility.says", *_STRUCTURE),
    weight=SHOULD,
    raises="steps: [{adds: patch, onto: spine, material: linen, adhesive: casein}]\n"
    "reversibility: {claims: [{takes-off: cloth-lining, with: water}]}",
    passes="steps: [{adds: patch, onto: spine, material: linen, adhesive: casein}]\n"
    "reversibility: the patch was tried on an offcut and lifts with ammonia",
    due=Due.TREATED,
)
def release_known(look: Look) -> Iterator[Raised]:
    """A bond of ours on original material has a known release, or a word on how it opens."""
    said = look.case.reversibility
    if isinstance(said, Gap) and look.tells(look.case, "reversibility", in_reach=True):
        return
    graph = Graph(look.replay.final)
    options = Options(graph, evidence(look.case, look.lexicon), look.lexicon)
    seen: set[tuple[str, int]] = set()
    for edge in graph.edges:
        why = _unopened(edge, options)
        layer = graph.things[edge.upper.name].of
        key = (layer, edge.bond.step if edge.bond else 0)
        if why and key not in seen and not _told(look, layer):
            seen.add(key)
            yield _of_bond(look, edge, layer, why)


def _unopened(edge: Edge, options: Options) -> str:
    """Why a bond of ours on an original has no release, or ""."""
    graph, bond = options.graph, edge.bond
    on_original = graph.original(edge.lower) or graph.original(edge.upper)
    if bond is None or bond.since is not Since.ADDED or not on_original:
        return ""
    first = options.of(edge)[0]
    return first.why if first.reason in _OPEN else ""


def _told(look: Look, layer: str) -> bool:
    """Whether a claim, or the prose under `reversibility`, names a layer."""
    said = known(look.case.reversibility)
    if said is None:
        return False
    says = known(said.says)
    prose = fold(says) if says else ""
    claimed = (items(claim.takes_off) for claim in items(said.claims))
    places = {place for places in claimed for place in places}
    named = any(place == layer or place.startswith(f"{layer}/") for place in places)
    return named or fold(layer) in prose


def _of_bond(look: Look, edge: Edge, layer: str, why: str) -> Raised:
    step = look.replay.step(edge.bond.step) if edge.bond and edge.bond.step else None
    span = (step.span("adhesive") or step.span("adds")) if step else None
    message = f"nobody can tell how `{layer}` comes off {edge.lower.name} again: {why}"
    hint = f"name the adhesive, or say under `reversibility` how `{layer}` comes off"
    return Raised(message, span, hint, Severity.WARNING)


PRACTICE = (claim_and_way_back, release_known)
