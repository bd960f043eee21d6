"""What is looked at when something is laid, and at the end: lengths, places, what is left."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from casebook.compute.layers.bench import Bench
from casebook.compute.layers.faults import Faults
from casebook.compute.layers.laid import Laid
from casebook.compute.steps import operation
from casebook.compute.structure import Bond, How, Thing
from casebook.model.base import known
from casebook.model.treatment import Step
from casebook.values.quantities import Length

_LININGS = frozenset({"line", "line-spine", "make-hollow"})
"""Operations whose layers lie on one another on a spine; a reback turns in at head and tail."""


def check_laid(
    bench: Bench, faults: Faults, step: Step, laid: Laid, things: tuple[str, ...]
) -> None:
    """Whether what was laid is longer than what is under it, or lies where another layer does."""
    if laid.tube or operation(step, lambda word: _operation(bench, word)) in _LININGS:
        _check_length(bench, faults, laid.name, things)
    if len(things) == 1 and not laid.part and not laid.temporary:
        _check_place(bench, faults, bench.things[things[0]])


def _operation(bench: Bench, word: str) -> str:
    found = bench.names.lexicon.resolve("operations", word)
    return found[1] if found else word


def _check_length(bench: Bench, faults: Faults, name: str, things: tuple[str, ...]) -> None:
    """Only lengths that are sure are compared, and only on a spine."""
    heights = bench.names.heights
    own = heights.get(name)
    spines = [one for one in things if bench.names.ground.is_spine(bench.beds[one])]
    under = list(_layers_under(bench, spines)) if own else []
    for lower in under[:1]:
        if own and _longer(own, heights.get(lower)):
            deeper = next((one for one in under[1:] if _reaches(heights.get(one), own)), "")
            part = next((bench.beds[one] for one in spines), "")
            bare = part if _reaches(known(bench.names.ground.part(part).height), own) else ""
            lengths = (str(own), str(heights[lower]))
            faults.longer(name, lower, lengths, deeper=deeper, part=bare)


def _longer(own: Length, under: Length | None) -> bool:
    """Whether one length is surely more than another."""
    if under is None or under.about or own.about or own.low is None or under.high is None:
        return False
    return own.low > under.high


def _reaches(under: Length | None, own: Length) -> bool:
    """Whether a length may be as much as another."""
    return under is not None and not _longer(own, under)


def _layers_under(bench: Bench, things: Iterable[str]) -> Iterator[str]:
    """The layers beneath some things, the uppermost first."""
    waiting, seen = list(things), set(things)
    while waiting:
        for _, bond in bench.beneath(waiting.pop(0)):
            if bond.lower not in seen and not bench.things[bond.lower].part:
                seen.add(bond.lower)
                waiting.append(bond.lower)
                yield bench.things[bond.lower].of


def _check_place(bench: Bench, faults: Faults, thing: Thing) -> None:
    """Two layers stuck to one face of one part, each over the whole of it, contradict each other.

    A patch, a zone, and what says where it lies may lie beside the other.
    """
    for _, bond in bench.beneath(thing.name):
        if bench.things[bond.lower].part and _whole(bench, bond):
            for other in bench.at(bond.lower):
                same = other.lower == bond.lower and other.face == bond.face
                if same and other.upper != thing.name and _whole(bench, other):
                    faults.same_place(thing.name, other.upper, bond.lower)
                    return


def _whole(bench: Bench, bond: Bond) -> bool:
    """Whether a bond sticks one layer over the whole of what carries it, so far as is said."""
    upper = bench.things[bond.upper]
    said = bond.where or bond.partly or bond.within or upper.patches or upper.partly or upper.zone
    return bond.how is How.STUCK and not said and not upper.part


def hidden(bench: Bench, laid: Laid, things: tuple[str, ...]) -> Iterator[str]:
    """What lies under what was just laid, and could be seen before: whole things, not edges.

    What is temporary, housing or patchwork hides nothing; an overhang hides an edge of its board.
    """
    if laid.part or laid.temporary:
        return
    under = [lower for name in things for lower in _hidden_under(bench, things, name)]
    over = [
        lower
        for lower, upper in bench.covers
        if upper in things and _named_over(bench, laid, lower)
    ]
    for lower in (*under, *over):
        if bench.original(lower) or not bench.things[lower].part:
            yield lower
    yield from (lower for lower, upper in bench.hides if upper in things)


def _hidden_under(bench: Bench, things: tuple[str, ...], name: str) -> Iterator[str]:
    thing = bench.things[name]
    for _, bond in bench.beneath(name):
        edge = bench.things[bond.lower].part and thing.zone and name != bench.middle(things)
        if _hides(bench, bond) and not edge and not _hidden_before(bench, bond, things):
            yield bond.lower


def _hides(bench: Bench, bond: Bond) -> bool:
    upper = bench.things[bond.upper]
    bits = bond.where or bond.partly or bond.within or upper.patches or upper.part
    return bond.how in (How.STUCK, How.UNKNOWN) and not bits


def _hidden_before(bench: Bench, bond: Bond, things: tuple[str, ...]) -> bool:
    return any(
        other.lower == bond.lower
        and other.face == bond.face
        and other.upper not in things
        and _hides(bench, other)
        for other in bench.at(bond.lower)
    )


def _named_over(bench: Bench, laid: Laid, lower: str) -> bool:
    """Whether a layer is said to cover a thing: a free overhang is not."""
    spots = (bench.names.spot(place) for place in laid.over)
    return any(lower in bench.named(spot) for spot in spots if spot)


def left_behind(bench: Bench, faults: Faults) -> None:
    """What was said to be temporary, and lies there at the end."""
    for name in dict.fromkeys(one.of for one in bench.things.values() if one.temporary):
        step = max(bench.things[one].step for one in bench.of[name])
        faults.left(name, step)
