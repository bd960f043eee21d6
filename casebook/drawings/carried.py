"""What some parts carry, directly or by way of another, and what touches them and is left out."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from casebook.compute.structure import Bond, How, Since, Structure

CARRIES = frozenset({How.STUCK, How.HELD, How.SOAKED, How.UNKNOWN})
"""The bonds by which one thing lies on another; grown parts and joints lie beside each other."""

ACROSS = frozenset({How.JOINT, How.FOLD})
"""The bonds between pieces of one layer, of which neither lies on the other."""

INNER = frozenset({"inner", "inside", "verso", "back"})
"""Words for the face that is turned away from the reader or from the outside."""


def carried(structure: Structure, roots: tuple[str, ...], *, inside: bool = True) -> frozenset[str]:
    """The names of the parts and of all that lies on them; a zone brings its layer's others.

    `inside` false leaves out what lies on the inner faces of the parts.

    Left out are boxes and wrappers, zones that lie on other parts, and parts that are only sewn
    to what they are of, as a section is to its text block.
    """
    bonds = [one for one in structure.bonds if inside or not turned(one, roots)]
    up, out = _upward(structure, bonds), _outside(structure, roots)
    seen: set[str] = set()
    waiting = list(roots)
    while waiting:
        name = waiting.pop()
        if name not in seen:
            seen.add(name)
            above = (one for one in up.get(name, ()) if one in structure.things)
            waiting.extend(one for one in above if one not in out and one not in roots)
    return frozenset(seen)


def turned(bond: Bond, roots: Iterable[str]) -> bool:
    """Whether a bond is on the inner face of one of these parts."""
    return bond.lower in roots and bond.face.strip().casefold() in INNER


def _upward(structure: Structure, bonds: Iterable[Bond]) -> Mapping[str, list[str]]:
    """What lies on each thing or goes with it."""
    up: dict[str, list[str]] = {}
    for bond in bonds:
        if bond.how in CARRIES or bond.how in ACROSS:
            up.setdefault(bond.lower, []).append(bond.upper)
        if bond.how in ACROSS:
            up.setdefault(bond.upper, []).append(bond.lower)
    for lower, upper in structure.covers:
        up.setdefault(lower, []).append(upper)
    return up


def _outside(structure: Structure, roots: tuple[str, ...]) -> frozenset[str]:
    """What is not shown on these parts though it touches them."""
    things = structure.things.values()
    elsewhere = {one.name for one in things if one.zone and not root_of(one.zone, roots)}
    bearing = {b.lower for b in structure.bonds} | {lower for lower, _ in structure.covers}
    fixed = {bond.upper for bond in structure.bonds}
    housings = {
        one.name
        for one in things
        if one.part and one.since is Since.ADDED and one.name not in bearing | fixed
    }
    free = {name for name in elsewhere if name in fixed and _joined_only(structure, name)}
    return frozenset((elsewhere - free) | housings | _sewn_kin(structure, roots))


def _joined_only(structure: Structure, name: str) -> bool:
    """Whether a zone hangs on its layer alone and its part is not there: an overhang."""
    zone = structure.things[name].zone
    mine = [bond.how for bond in structure.at(name)]
    return zone not in structure.things and all(how is How.JOINT for how in mine)


def _sewn_kin(structure: Structure, roots: tuple[str, ...]) -> set[str]:
    """Parts grown together with these ones, or with what these are of, that are sewn on besides."""
    of = {bond.upper: bond.lower for bond in structure.bonds if bond.how is How.GROWN}
    kin = set(roots)
    waiting = list(roots)
    while waiting:
        larger = of.get(waiting.pop())
        if larger and larger not in kin:
            kin.add(larger)
            waiting.append(larger)
    sewn = {bond.upper for bond in structure.bonds if bond.how is How.HELD}
    return {name for name, larger in of.items() if larger in kin and name in sewn} - set(roots)


def root_of(zone: str, roots: Iterable[str]) -> str:
    """Of these parts the one that a zone is, or is a place on: `board 1/sides` is on `board 1`."""
    return next((root for root in roots if zone == root or zone.startswith(f"{root}/")), "")
