"""What every cross-section shares: who is seen where, bands and bonds, numbers, key and words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Protocol

from casebook.compute.structure import Bond, How
from casebook.drawings import badges, patterns
from casebook.drawings.facts import Facts
from casebook.drawings.lanes import Band, Lane
from casebook.drawings.pile import Scale, Slot, outwards, piles
from casebook.drawings.stack import Sight, Story, columns

WIDTH = 400.0
"""The width of a drawing in units; a phone of 320 px shows a unit as 0.7 px."""

ROOM = 150.0
"""The height that a pile may take; a higher one is drawn thinner."""


On = Mapping[str, Sequence[tuple[Sight, tuple[Bond, ...]]]]
"""What lies on each part or face, with the bonds that hold it there."""


LEAST_THIN = 0.35


@dataclass(frozen=True, slots=True)
class Seen:
    """A thing on one part: where it lies there, and what holds it to what is under it here."""

    sight: Sight
    part: str
    slot: Slot
    bonds: tuple[Bond, ...] = ()


@dataclass(frozen=True, slots=True)
class Section:
    """All that a cross-section shows, laid out: per part the things from the part outwards."""

    prefix: str
    told: Story
    facts: Facts
    by_part: Mapping[str, tuple[Seen, ...]]
    number: Mapping[str, int]
    inks: patterns.Inks
    thin: float = 1.0
    """How much thinner than usual lines are drawn, where some pile is too high for its room."""
    notes: tuple[str, ...] = ()

    def everything(self) -> Iterator[Seen]:
        """Everything on every part."""
        return (seen for on in self.by_part.values() for seen in on)

    def top(self, part: str) -> float:
        """How high the pile on a part is."""
        return max((seen.slot.high for seen in self.by_part.get(part, ())), default=0.0)

    @property
    def crowded(self) -> bool:
        """Whether the pile is so high that lines between its layers could not be told apart."""
        return self.thin < LEAST_THIN

    @property
    def exaggerated(self) -> bool:
        """Whether some layer is drawn thicker than it is, or than anybody measured."""
        return any(not seen.slot.to_scale for seen in self.everything())


def section(
    prefix: str, told: Story, facts: Facts, on: On, per_um: float, room: Mapping[str, float]
) -> Section:
    """Lay out what is on some parts or faces; a pile too high for its room is drawn thinner."""
    by_part = {name: _laid(name, pairs, per_um, room.get(name, ROOM)) for name, pairs in on.items()}
    bonds = [bond for each in by_part.values() for seen in each for bond in seen.bonds]
    number = _numbers(told, by_part)
    thin = min((seen.slot.factor for each in by_part.values() for seen in each), default=1.0)
    return Section(prefix, told, facts, by_part, number, patterns.inks(bonds, facts), thin)


def on_parts(told: Story) -> On:
    """What lies on each part in the end, with the bonds that hold it there."""
    where = columns(told)
    by_name: dict[str, set[str]] = {}
    for sight, ends in where.items():
        by_name.setdefault(sight.name, set()).update(ends)
    found: dict[str, list[tuple[Sight, tuple[Bond, ...]]]] = {root: [] for root in told.roots}
    for sight in told.carriers():
        for end in sorted(where[sight]):
            here = (bond for bond in sight.seat.bonds if end in by_name.get(bond.lower, ()))
            found[end].append((sight, tuple(here)))
    return found


def _laid(
    part: str, pairs: Sequence[tuple[Sight, tuple[Bond, ...]]], per_um: float, room: float
) -> tuple[Seen, ...]:
    bonds = dict(pairs)
    sights = outwards(list(bonds))
    how = {one: _how(bonds[one]) for one in sights}
    slots = piles(sights, how, Scale(per_um))
    highest = max((slot.high for slot in slots.values()), default=0.0)
    if highest > room:
        slots = piles(sights, how, Scale(per_um, room / highest))
    return tuple(Seen(one, part, slots[one], bonds[one]) for one in sights)


def _how(bonds: Sequence[Bond]) -> How | None:
    """How a thing is held, the first bond that says it; None if nothing holds it here."""
    return bonds[0].how if bonds else None


def _numbers(told: Story, by_part: Mapping[str, tuple[Seen, ...]]) -> Mapping[str, int]:
    """Numbers from the original outwards: what is there at the end first, then what is gone."""
    every = [seen.sight for each in by_part.values() for seen in each]
    there = [one.layer for one in every if one.seen_in(told.last)]
    return badges.numbers((*told.roots, *there, *(one.layer for one in every)))


def extent(seen: Seen, whole: float, per_um: float, most: float = 1.0) -> tuple[float, float]:
    """From where to where along its lane a thing reaches: -1 to 1 is the whole of the part.

    `whole` is the length of the lane in units, `most` how far beyond it a thing may hang. What
    lies in places is drawn in its share of it.
    """
    if seen.slot.of > 1:
        step = 1.7 / seen.slot.of
        start = -0.85 + seen.slot.place * step
        return (start + 0.1 * step, start + 0.9 * step)
    width = seen.sight.thing.width_um
    if width and per_um and whole:
        ratio = min(width * per_um / whole, most)
        return (-ratio, ratio)
    return (-0.45, 0.45) if seen.sight.thing.part else (-1.0, 1.0)


def roots(section: Section) -> Mapping[str, Sight]:
    """The parts themselves, by name."""
    return {one.name: one for one in section.told.sights if one.name in section.told.roots}


class Shape(Protocol):
    """A section in its place: the lane of each part or face, and where on it a thing runs."""

    @property
    def section(self) -> Section:
        """What is shown."""

    def lane(self, part: str) -> Lane:
        """The lane of a part or face."""

    def band(self, seen: Seen) -> Band:
        """Where a thing runs in its lane."""
