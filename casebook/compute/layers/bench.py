"""The bench of a replay: the things that lie there now and what holds them, changed in place."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass, field, replace

from casebook.compute.layers.names import Names, Spot
from casebook.compute.structure import Bond, How, Since, Structure, Thing

ACROSS = frozenset({How.JOINT, How.FOLD})
"""Bonds between pieces of one layer, of which neither lies on the other."""

Pair = tuple[str, str]


@dataclass(slots=True)
class Told:
    """What one step did: names of things."""

    laid: dict[str, None] = field(default_factory=dict)
    gone: dict[str, None] = field(default_factory=dict)
    hid: dict[str, None] = field(default_factory=dict)


class Bench:
    """What lies there, as it changes.

    `beds` give for each thing the part that it comes down to, `main` for each layer the parts on
    which it was laid first, `under` what a thing lay on when it was laid, `kin` for each part the
    larger one that it is of.
    """

    def __init__(self, names: Names) -> None:
        self.names = names
        self.things: dict[str, Thing] = {}
        self.of: dict[str, dict[str, None]] = {}
        self.bonds: dict[int, Bond] = {}
        self.covers: dict[Pair, None] = {}
        self.hides: dict[Pair, None] = {}
        self.beds: dict[str, str] = {}
        self.main: dict[str, tuple[str, ...]] = {}
        self.under: dict[str, tuple[str, ...]] = {}
        self.kin: dict[str, str] = {}
        self.told = Told()
        self._at: dict[str, dict[int, None]] = {}
        self._next = 0
        self._frozen = Structure()
        self._changed = True

    def put(self, thing: Thing, bed: str = "") -> None:
        """Put a thing there, or the same thing changed."""
        self.things[thing.name] = thing
        self.of.setdefault(thing.of, {})[thing.name] = None
        self.beds[thing.name] = bed or self.beds.get(thing.name) or thing.zone or thing.name
        self._changed = True

    def take(self, name: str) -> Thing:
        """Take a thing out, with all bonds in which it has part."""
        thing = self.things.pop(name)
        self.of[thing.of].pop(name, None)
        for key in list(self._at.pop(name, ())):
            self.part(key)
        self.uncover({name})
        return thing

    def uncover(self, names: Collection[str]) -> None:
        """Let some things cover and hide nothing but one another, nor be covered by others."""
        for pairs in (self.covers, self.hides):
            for pair in [one for one in pairs if (one[0] in names) is not (one[1] in names)]:
                del pairs[pair]
        self._changed = True

    def hold(self, bond: Bond) -> None:
        """Let two things hold together; never a thing to itself."""
        if bond.lower == bond.upper:
            return
        self._next += 1
        self.bonds[self._next] = bond
        for end in (bond.lower, bond.upper):
            self._at.setdefault(end, {})[self._next] = None
        if bond.how not in ACROSS:
            self.covers.pop((bond.lower, bond.upper), None)
            self.under[bond.upper] = (*self.under.get(bond.upper, ()), bond.lower)
        self._changed = True

    def part(self, key: int) -> Bond:
        """Part what one bond held together."""
        bond = self.bonds.pop(key)
        for end in (bond.lower, bond.upper):
            self._at.get(end, {}).pop(key, None)
        self._changed = True
        return bond

    def change(self, key: int, bond: Bond) -> None:
        """Let a bond be otherwise, its ends the same."""
        self.bonds[key] = bond
        self._changed = True

    def cover(self, lower: str, upper: str) -> None:
        """Let one thing lie over another without a bond."""
        if lower != upper and not any(self.bonds[key].upper == upper for key in self.keys(lower)):
            self.covers[lower, upper] = None
            self._changed = True

    def hide(self, hidden: str, hider: str) -> None:
        """Let one thing be hidden by another that nothing bonds to it."""
        if hidden != hider:
            self.hides[hidden, hider] = None
            self._changed = True

    def keys(self, name: str) -> tuple[int, ...]:
        """The keys of the bonds in which a thing has part."""
        return tuple(self._at.get(name, ()))

    def at(self, name: str) -> Iterator[Bond]:
        """The bonds in which a thing has part."""
        return (self.bonds[key] for key in self.keys(name))

    def beneath(self, name: str) -> Iterator[tuple[int, Bond]]:
        """The bonds by which a thing holds to what carries it, with their keys."""
        for key in self.keys(name):
            bond = self.bonds[key]
            if bond.upper == name and bond.how not in ACROSS:
                yield key, bond

    def named(self, spot: Spot) -> tuple[str, ...]:
        """The things that lie there of what a reference means; none if nothing does."""
        every = tuple(self.of.get(spot.of, ()))
        if spot.wall:
            return tuple(one for one in every if self.things[one].wall == spot.wall)
        if not spot.zone:
            return every
        zones = tuple(one for one in every if self.things[one].zone == spot.zone)
        whole = len(every) == 1 and not self.things[every[0]].zone
        return every if whole and self.beds[every[0]] == spot.zone else zones

    def middle(self, names: Sequence[str]) -> str:
        """Of several parts, or pieces of a layer, that of the spine, or else the first."""
        spines = (one for one in names if self.names.ground.is_spine(self.beds.get(one, one)))
        return next(spines, names[0])

    def present(self, name: str) -> Iterator[str]:
        """A thing, or what it lay on where it lies there no more."""
        waiting, seen = [name], set[str]()
        while waiting:
            one = waiting.pop(0)
            if one in self.things:
                yield one
            elif one not in seen:
                waiting.extend(self.under.get(one, ()))
            seen.add(one)

    def kindred(self, name: str) -> Iterator[str]:
        """A part and the larger ones that it is of; a layer's thing and the part it lies on."""
        seen = {""}
        one = name if name in self.kin or self.beds.get(name) == name else self.beds.get(name, name)
        while one not in seen:
            yield one
            seen.add(one)
            one = self.kin.get(one, "")

    def set_apart(self, names: Iterable[str], apart: bool) -> None:
        """Let things lie apart, or no more."""
        for name in names:
            if self.things[name].apart is not apart:
                self.put(replace(self.things[name], apart=apart))

    def together(self, start: Iterable[str]) -> set[str]:
        """All that hangs together with some things by bonds of whatever kind."""
        waiting = list(start)
        found = set(waiting)
        while waiting:
            one = waiting.pop()
            for bond in self.at(one):
                other = bond.lower if bond.upper == one else bond.upper
                if other not in found:
                    found.add(other)
                    waiting.append(other)
        return found

    def riders(self, start: Collection[str]) -> set[str]:
        """What lies wholly on some things, at whatever height: it holds to nothing else."""
        riding = self._above(start)
        waiting = list(riding)
        while waiting:
            one = waiting.pop()
            if one in riding and self._holds_elsewhere(one, start, riding):
                riding.discard(one)
                waiting.extend(self._beside(one) & riding)
        return riding

    def _above(self, start: Collection[str]) -> set[str]:
        """What lies on some things, at whatever height, with all pieces of each such layer."""
        waiting, found = list(start), set[str]()
        while waiting:
            one = waiting.pop()
            for bond in self.at(one):
                other = bond.lower if bond.upper == one else bond.upper
                lies = one in found if bond.how in ACROSS else bond.lower == one
                if lies and other not in found and other not in start:
                    found.add(other)
                    waiting.append(other)
        return found

    def _holds_elsewhere(self, name: str, start: Collection[str], riding: Collection[str]) -> bool:
        return any(
            other not in start and other not in riding
            for bond in self.at(name)
            for other in (bond.lower, bond.upper)
            if other != name and (bond.upper == name or bond.how in ACROSS)
        )

    def _beside(self, name: str) -> set[str]:
        """What lies on a thing, and the pieces of its layer beside it."""
        return {
            bond.upper if bond.lower == name else bond.lower
            for bond in self.at(name)
            if bond.lower == name or bond.how in ACROSS
        }

    def freeze(self) -> Structure:
        """The structure as it is now; the same one while nothing has changed."""
        if self._changed:
            self._frozen = Structure(
                dict(self.things),
                tuple(self.bonds.values()),
                tuple(self.covers),
                tuple(self.hides),
            )
            self._changed = False
        return self._frozen

    def original(self, name: str) -> bool:
        """Whether a thing is a part of the object as it was made."""
        thing = self.things[name]
        return thing.part and thing.since is Since.ORIGINAL
