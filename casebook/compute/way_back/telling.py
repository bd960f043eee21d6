"""What an opening has to tell: what stays and how it is cleared, what to mind, what is for good."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence, Set
from functools import partial

from casebook.compute.releases import class_of, seals, wider
from casebook.compute.structure import How, Since
from casebook.compute.way_back.classes import Class
from casebook.compute.way_back.graph import Edge, Node
from casebook.compute.way_back.instructions import Opened, Place, Rest
from casebook.compute.way_back.options import Option, Options
from casebook.compute.way_back.reach import Reach
from casebook.compute.way_back.words import listed, the
from casebook.model.base import known
from casebook.model.vocabulary import Opener

NO_SOURCE = "common practice, no source"
BLADE = (
    "Blades: cut away from the hand and from the original, change them with forceps, used ones "
    "into the sharps box; local codes come first."
)
SPLIT = "Where it does not split, stop: pulled on, it takes the original with it."
_STUBBORN = 2
_PLACES = {How.HELD: Place.HELD, How.JOINT: Place.JOINT, How.FOLD: Place.FOLD}


def opened(options: Options, reach: Reach, edge: Edge, chosen: Option) -> Opened:
    """An edge and the way it is opened, as data."""
    bond, means = edge.bond, chosen.means
    through = tuple(one for one in reach.through(edge, chosen) if not options.rigid(one))
    wet = tuple(name for name in through if means and options.untested(name, means))
    return Opened(
        lower=edge.lower.name,
        upper=edge.upper.name if bond else _pulled(options, edge),
        place=_PLACES.get(bond.how, Place.BOND) if bond else Place.SPLIT,
        how=chosen.how,
        adhesives=options.adhesives(bond) if bond else (),
        held=bond.held if bond else (),
        agent=chosen.agent,
        kinds=means.kinds if means else (),
        ease=means.ease if means else 5,
        leaves=means.leaves if means else "",
        when=means.when if means else "",
        source=(means.source if means else "") or NO_SOURCE,
        assumed_from=means.assumed_from if means else "",
        through=through,
        test_first=tuple(dict.fromkeys((*chosen.test_first, *wet))),
    )


def _pulled(options: Options, edge: Edge) -> str:
    """What lies on a layer that splits and is pulled away with its upper half."""
    uppers = (one.upper.name for one in options.graph.at[edge.upper] if one.lower == edge.upper)
    return min(uppers, default=edge.upper.name)


def stays(options: Options, edges: Iterable[Edge], off: Set[Node], after: Reach) -> Iterator[Rest]:
    """What stays on the side that is not taken off."""
    for edge in edges:
        kept = edge.upper if edge.lower in off else edge.lower
        if edge.bond is None:
            yield _half(options, kept, after)
        elif edge.bond.how in (How.STUCK, How.UNKNOWN):
            yield from _residue(options, edge, kept)


def _half(options: Options, kept: Node, after: Reach) -> Rest:
    """The half of a split layer, with the agent that then comes to what holds it."""
    what = f"half of {the(kept.name)}"
    for edge in options.graph.at[kept]:
        if edge.bond and edge.upper == kept and edge.upright:
            chosen = options.best(edge, partial(after.reaches, edge))
            source = chosen.means.source if chosen.means else ""
            return Rest(what, edge.lower.name, chosen.agent, source)
    return Rest(what, "")


def _residue(options: Options, edge: Edge, kept: Node) -> Iterator[Rest]:
    """What an adhesive leaves on what stays; what opens hardly, or has gone in, is not cleared."""
    chosen = options.of(edge)[0]
    means = chosen.means
    if means and means.leaves and means.leaves not in ("little", "nothing"):
        gone = means.ease > _STUBBORN and not _film(options, edge)
        yield Rest(means.leaves, kept.name, chosen.agent if gone else "", means.source, not gone)


def _film(options: Options, edge: Edge) -> bool:
    return edge.bond is not None and seals(options.adhesives(edge.bond), options.lexicon)


def for_good(options: Options, edges: Iterable[Edge]) -> Iterator[str]:
    """What cannot be undone: holes and cuts, and a film that has gone into what it lay on."""
    for edge in edges:
        bond = edge.bond
        if bond and bond.cuts:
            yield f"what was cut or pierced in {listed(the(one) for one in bond.cuts)} stays so"
        yield from gone_in(options, edge)


def gone_in(options: Options, edge: Edge) -> Iterator[str]:
    """A film that stays in what it was put on, where that is not of our making."""
    for node in (edge.lower, edge.upper) if _film(options, edge) else ():
        if edge.bond and options.graph.things[node.name].since is not Since.ADDED:
            film = options.say(options.adhesives(edge.bond))
            yield f"{film} that has gone into {the(node.name)} stays in it"


def mind(
    options: Options, chosen: Sequence[tuple[Edge, Option]], told: Sequence[Opened], off: Set[Node]
) -> Iterator[str]:
    """What can go wrong, with the usual caution."""
    hows = set()
    for edge, option in chosen:
        hows.add(option.how)
        for one in option.beside:
            what = f"{one.of} on {the(one.place)}" if one.of else the(one.place)
            yield f"Keep it from {what}: {one.agent} harms it."
        if edge.bond and edge.bond.guessed and len(edge.bond.adhesives) > 1:
            guesses = options.say(edge.bond.adhesives[1:])
            yield f"What it is stuck with is a guess; it may also be {guesses}."
    for place in told:
        for part in place.test_first:
            yield f"Test first: no test of {_kinds(place.kinds)} on {the(part)} is on record."
    if unnamed := sorted(_unnamed(options, {name for one in told for name in one.through})):
        yield f"What holds {listed(map(the, unnamed))} is not named: a film there stops moisture."
    for edge, _ in chosen:
        if edge.lower in off and edge.upper not in off and edge.upright:
            yield f"Only loosen {the(edge.upper.name)} there, and fold it back: it stays."
    if Class.SPLIT in hows:
        yield SPLIT
    yield from _cautions(options, hows, off)


def to_decide(options: Options, off: Set[Node]) -> Iterator[str]:
    """What was on the object when it came is not ours to take off without a decision."""
    old = {node.name for node in off if options.graph.things[node.name].since is Since.FOUND}
    if old:
        found = listed(the(one) for one in sorted(old))
        yield f"On the object when it came: {found}. Decide first whether it may go."


def _unnamed(options: Options, names: Set[str]) -> Iterator[str]:
    """What an agent goes through though nobody says how it is stuck."""
    for name in names:
        for edge in options.graph.at[options.graph.lowest(name)]:
            bond = edge.bond
            if bond and edge.upper.name == name and bond.how in (How.STUCK, How.UNKNOWN):
                yield from () if options.adhesives(bond) else (name,)


def _kinds(kinds: Iterable[Opener]) -> str:
    return listed(kind.value for kind in kinds)


def _cautions(options: Options, hows: Set[Class], off: Set[Node]) -> Iterator[str]:
    if Class.BLADE in hows:
        yield BLADE
    for how, word in ((Class.HEAT, "heat"), (Class.SOLVENT, "solvent")):
        term = options.lexicon.term("agents", word)
        if how in hows and term:
            yield f"{term.label.capitalize()}: {known(term.caution) or ''}"
    for word in sorted(
        {word for node in off for word in options.graph.things[node.name].materials}
    ):
        term = next((one for _, one in wider(word, options.lexicon)), None)
        if term and known(term.caution) and class_of(word, options.lexicon) != "adhesive":
            yield f"{term.label.capitalize()}: {known(term.caution)}"
