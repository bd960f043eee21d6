"""How high each thing lies over its part: thicknesses, gaps for what lies between, side by side."""

from __future__ import annotations

import heapq
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from casebook.compute.structure import How
from casebook.drawings.stack import Sight

LEAST = 9.0
"""The least height of a layer, in units of the drawing, so that its pattern can be seen."""

MOST = 40.0
"""What is thicker, a block of wood, is drawn no higher than this, in units."""

GAPS = {
    How.STUCK: 3.5,
    How.UNKNOWN: 4.0,
    How.HELD: 3.5,
    How.SOAKED: 0.0,
    How.FOLD: 9.0,
}
COVERED = 5.0
"""The air between a thing and what it only covers."""
FREE = 11.0
"""The air under a zone that is not fixed to its part yet."""


@dataclass(frozen=True, slots=True)
class Scale:
    """Units for a µm, and the factor that keeps a high pile within its room."""

    per_um: float
    factor: float = 1.0

    @property
    def least(self) -> float:
        """The least height of a layer."""
        return LEAST * self.factor


@dataclass(frozen=True, slots=True)
class Slot:
    """How high a thing lies over its part, with the gap under it, and where along it if in places.

    `factor` is that of its scale; `to_scale` says that its own height is true. `of` and `place`
    divide a lane among things that lie side by side.
    """

    low: float
    high: float
    gap: float = 0.0
    factor: float = 1.0
    to_scale: bool = False
    place: int = 0
    of: int = 1


def piles(
    sights: Sequence[Sight], on: Mapping[Sight, How | None], scale: Scale
) -> Mapping[Sight, Slot]:
    """The slot of each thing on one part, given from the part outwards with what holds it here."""
    slots: dict[Sight, Slot] = {}
    for sight in sights:
        low = _base(sight, slots)
        gap, high = _gap(sight, on[sight]) * scale.factor, _height(sight, scale)
        slots[sight] = Slot(low + gap, low + gap + high[0], gap, scale.factor, high[1])
    return _side_by_side(slots)


def outwards(sights: Sequence[Sight]) -> list[Sight]:
    """Things from the part outwards: what carries before what lies on it, then as they came.

    Things that lie on one another in a ring come as they came, so that nothing is left out.
    """
    waiting = {one: _carriers(one, sights) for one in sights}
    queue = [(one.order, n, one) for n, one in enumerate(sights) if not waiting[one]]
    heapq.heapify(queue)
    found: list[Sight] = []
    while waiting:
        one = heapq.heappop(queue)[2] if queue else min(waiting, key=lambda sight: sight.order)
        if one not in waiting:
            continue
        del waiting[one]
        found.append(one)
        for n, other in enumerate(sights):
            if other in waiting and one in waiting[other]:
                waiting[other].discard(one)
                if not waiting[other]:
                    heapq.heappush(queue, (other.order, n, other))
    return found


def _carriers(sight: Sight, sights: Sequence[Sight]) -> set[Sight]:
    below = set(sight.seat.below)
    return {one for one in sights if one.name in below and one is not sight and one.meets(sight)}


def small(sight: Sight) -> bool:
    """Whether a thing takes up some of its lane only: a part put back, pieces, a rest."""
    return sight.thing.part or scattered(sight)


def scattered(sight: Sight) -> bool:
    """Whether a thing lies in pieces, or in places only."""
    return sight.thing.partly or sight.thing.patches


def _base(sight: Sight, slots: Mapping[Sight, Slot]) -> float:
    """The top of what lies there at the same time; small things may lie side by side."""
    tops = [0.0]
    for other, slot in slots.items():
        if sight.meets(other) and not _beside(sight, other):
            tops.append(slot.high)
    return max(tops)


def _beside(one: Sight, other: Sight) -> bool:
    linked = other.name in one.seat.below
    return small(one) and small(other) and not linked


def _gap(sight: Sight, how: How | None) -> float:
    if how is not None:
        return GAPS.get(how, COVERED)
    return COVERED if sight.seat.over else FREE


def _height(sight: Sight, scale: Scale) -> tuple[float, bool]:
    """The height of a thing, and whether it is true to its measured thickness."""
    known = sight.thing.thickness_um
    true = min(known * scale.per_um, MOST) * scale.factor if known else 0.0
    least = scale.least / 2 if _soaked(sight) else scale.least
    to_scale = scale.factor == 1 and least <= true < MOST
    return max(true, least), to_scale


def _soaked(sight: Sight) -> bool:
    return bool(sight.seat.bonds) and all(bond.how is How.SOAKED for bond in sight.seat.bonds)


def _side_by_side(slots: Mapping[Sight, Slot]) -> Mapping[Sight, Slot]:
    """Share a lane out among small things that are seen together at one height."""
    found = dict(slots)
    groups: dict[float, list[Sight]] = {}
    for sight, slot in slots.items():
        if small(sight):
            groups.setdefault(round(slot.low, 2), []).append(sight)
    for group in groups.values():
        if len(group) > 1 and any(a is not b and a.meets(b) for a in group for b in group):
            for place, sight in enumerate(group):
                found[sight] = replace(slots[sight], place=place, of=len(group))
    return found
