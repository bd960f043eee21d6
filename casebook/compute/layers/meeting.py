"""What a reference means to something that is laid on it: which thing it meets, and where."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from typing import NamedTuple

from casebook.compute.layers.bench import Bench
from casebook.compute.layers.names import Spot
from casebook.compute.structure import Bond

Unseen = Callable[[str, Spot], None]
"""Told of a place on which something is laid and where nothing lies any more."""


class Met(NamedTuple):
    """What is met: the part that it comes down to, the thing itself, and the face of it."""

    part: str
    lower: str
    face: str


def targets(
    bench: Bench, place: str, upper: str, unseen: Unseen, *, narrow: bool = False
) -> Iterator[Met]:
    """What a place means to something that is laid on it.

    A layer with zones is met where it was laid first, or where the upper thing belongs; what is
    `narrow` meets one of them only. A tube is met on its outer wall. Where nothing lies any more,
    what lay beneath is met.
    """
    spot = bench.names.spot(place)
    if spot is None:
        return
    found = [one for one in bench.named(spot) if one != upper]
    if not found:
        unseen(place, spot)
        gone = bench.names.thing(spot.of, spot.zone) if spot.zone else spot.of
        found = [one for one in bench.present(gone) if one != upper]
    for one in _met(bench, spot, found, upper, narrow=narrow):
        yield Met(bench.beds[one], one, spot.face)


def faced(bond: Bond, face: str) -> Bond:
    """A bond on a face, where a reference named one."""
    return replace(bond, face=face) if face and face != bond.face else bond


def _met(bench: Bench, spot: Spot, found: list[str], upper: str, *, narrow: bool) -> list[str]:
    """Which things of a layer are met by what is laid on it."""
    if spot.wall or spot.zone or len(found) < 2:
        return found
    walls = [one for one in found if bench.things[one].wall == "outer"]
    if walls:
        return walls
    kin = set(bench.kindred(upper)) if upper in bench.things else set[str]()
    main = bench.main.get(spot.of, ())
    near = [one for one in found if bench.things[one].zone in kin]
    met = near or [one for one in found if bench.things[one].zone in main] or found
    return [bench.middle(met)] if narrow else met
