"""What was there on arrival: the original parts, and the layers found on them."""

from __future__ import annotations

from collections.abc import Iterator

from casebook.compute.layers.bench import Bench
from casebook.compute.layers.laid import of_found
from casebook.compute.layers.laying import lay
from casebook.compute.layers.names import Names, Spot
from casebook.compute.layers.parts import parents, parts
from casebook.compute.structure import Bond, How
from casebook.model.base import items
from casebook.model.condition import Found


def found(names: Names) -> Bench:
    """A bench on which lies what was there on arrival."""
    bench = Bench(names)
    own = parts(names)
    for thing in own.values():
        bench.put(thing)
    bench.kin.update(parents(names, own))
    for name, parent in bench.kin.items():
        bench.hold(Bond(parent, name, How.GROWN))
    for layer in _lowest_first(names):
        lay(bench, of_found(layer, names), _nobody)
    return bench


def _nobody(place: str, spot: Spot) -> None:
    """A found layer may lie on what is not in the list: the rules on references speak of that."""


def _lowest_first(names: Names) -> Iterator[Found]:
    """The found layers, each after those that it lies on; the list itself has no order."""
    layers = {one.id: one for one in items(names.case.as_found) if one.id}
    done: set[str] = set()
    for name in layers:
        yield from _with_below(name, layers, names, done)


def _with_below(
    name: str, layers: dict[str, Found], names: Names, done: set[str]
) -> Iterator[Found]:
    """A layer after those beneath it; in a ring, the one that comes first in the list is last."""
    waiting = [name]
    while waiting:
        one = waiting[-1]
        above = set(waiting)
        below = [next_ for next_ in _below(layers[one], names) if next_ in layers]
        open_ = [next_ for next_ in below if next_ not in done and next_ not in above]
        if one not in done and open_:
            waiting.append(open_[0])
            continue
        waiting.pop()
        if one not in done:
            done.add(one)
            yield layers[one]


def _below(layer: Found, names: Names) -> Iterator[str]:
    bonds = (place for bond in items(layer.bonds) for place in items(bond.onto))
    listed = (layer.onto, layer.over, layer.joins, layer.soaks_in, layer.hides)
    for place in (*bonds, *(place for many in listed for place in items(many))):
        if spot := names.spot(place):
            yield spot.of
