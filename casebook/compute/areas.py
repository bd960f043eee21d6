"""Areas of what was laid: each layer with its zones, and their sums by part and operation."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from fractions import Fraction

from casebook.compute.figures import ZERO, Doubt, Effect, Figure, merged, nearest, read, total
from casebook.compute.places import Ground, ground
from casebook.compute.presence import Presence, presence
from casebook.compute.steps import NameOperation, lays, operation, placed
from casebook.compute.uses import material_name
from casebook.compute.zones import Zone, zones_of
from casebook.model.archive import Case
from casebook.model.base import Maybe, items, known
from casebook.model.details import Outcome
from casebook.model.materials import Material
from casebook.model.treatment import Step

LININGS = frozenset({"line", "line-spine", "laminate", "face", "make-hollow"})
"""Operations whose layers are linings of the whole; repairs, guards and infills are not."""

HOLLOW = "make-hollow"
"""The operation that makes a tube, whose other walls are no overhang: one face counts, once."""

PARTLY_REMOVED = Doubt(Effect.AT_LEAST, "area was partly removed", "areas were partly removed")
PARTLY_LAID = Doubt(Effect.ABOUT, "area was only partly laid", "areas were only partly laid")
LEFT_OUT = Doubt(Effect.ABOUT, "area has a place left out", "areas have places left out")
NO_ADHESIVE = Doubt(Effect.NOTE, "area has no adhesive recorded", "areas have no adhesive recorded")


@dataclass(frozen=True, slots=True)
class Tally:
    """Areas in µm²: as cut, bonded when laid, overhanging, and bonded at the end of the record."""

    cut: Figure = ZERO
    bonded: Figure = ZERO
    overhang: Figure = ZERO
    now: Figure = ZERO


EMPTY = Tally()
"""No area at all."""


@dataclass(frozen=True, slots=True)
class LayerArea:
    """One layer that was laid with an adhesive.

    `material` is as written, "" where not said. `lining` tells linings of the whole from repairs,
    guards and infills. `mass` in µg is that of the cut, None without a weight per area.
    """

    layer: str
    operation: str
    lining: bool
    material: str
    temporary: bool
    presence: Presence
    zones: tuple[Zone, ...]
    mass: Figure | None

    @property
    def parts(self) -> tuple[str, ...]:
        """The parts it lies on."""
        return tuple(zone.part for zone in self.zones if zone.part)

    @property
    def tally(self) -> Tally:
        """Its areas, all zones together."""
        return tallied((self, zone) for zone in self.zones)

    @property
    def notes(self) -> tuple[str, ...]:
        """What a page says beside its bonded area."""
        return self.tally.bonded.reasons


@dataclass(frozen=True, slots=True)
class Row:
    """The areas under one heading: a part or an operation."""

    key: str
    tally: Tally


@dataclass(frozen=True, slots=True)
class Areas:
    """What was laid in a case or an archive.

    `lining` sums the linings of the whole, `spine` only their zones on a spine, `by_part` the
    linings part by part, `by_operation` everything that was laid, repairs too.
    """

    layers: tuple[LayerArea, ...] = ()
    lining: Tally = EMPTY
    spine: Tally = EMPTY
    by_part: tuple[Row, ...] = ()
    by_operation: tuple[Row, ...] = ()


NO_AREAS = Areas()
"""Nothing laid."""

Pair = tuple[LayerArea, Zone]


def areas(case: Case, name: NameOperation) -> Areas:
    """The areas of all layers of a case that were laid with an adhesive."""
    return summed(layer_areas(case, name))


def layer_areas(case: Case, name: NameOperation) -> tuple[LayerArea, ...]:
    """The layers of a case that were laid with an adhesive, in the order they were laid."""
    below = ground(case)
    states = presence(case)
    steps = (one.step for one in placed(case) if lays(one.step))
    return tuple(_area(below, step, states[step.adds or ""], name) for step in steps)


def summed(layers: Iterable[LayerArea]) -> Areas:
    """The sums over layers, of one case or of many."""
    every = tuple(layers)
    pairs = [(layer, zone) for layer in every for zone in layer.zones]
    linings = [pair for pair in pairs if pair[0].lining]
    return Areas(
        layers=every,
        lining=tallied(linings),
        spine=tallied(pair for pair in linings if pair[1].spine),
        by_part=_rows(linings, lambda pair: pair[1].part),
        by_operation=_rows(pairs, lambda pair: pair[0].operation),
    )


def tallied(pairs: Iterable[Pair]) -> Tally:
    """The sums over zones, each given with its layer."""
    every = tuple(pairs)
    return Tally(
        cut=total(zone.cut for _, zone in every),
        bonded=total(zone.bonded for _, zone in every),
        overhang=total(_overhang(layer, zone) for layer, zone in every),
        now=total(_now(layer, zone) for layer, zone in every),
    )


def mass(area: Figure, material: Maybe[Material]) -> Figure | None:
    """Mass in µg of an area in µm²: area times mass per area; None without a weight.

    Source: ISO 536 (definition of grammage, through a secondary text).
    """
    said = known(material)
    weight = known(said.weight) if said else None
    if weight is None:
        return None
    per_square_metre = read(weight, 10**6, "weight")
    value = nearest(Fraction(area.value * per_square_metre.value, 10**12))
    return Figure(value, merged((*area.doubts, *per_square_metre.doubts)))


def _area(below: Ground, step: Step, state: Presence, name: NameOperation) -> LayerArea:
    done = operation(step, name)
    zones = tuple(_doubted(zone, step) for zone in zones_of(below, step))
    return LayerArea(
        layer=step.adds or "",
        operation=done,
        lining=done in LININGS and known(step.in_thickness_of) is None,
        material=material_name(step.material),
        temporary=bool(known(step.temporary)),
        presence=state,
        zones=zones,
        mass=mass(total(zone.cut for zone in zones), step.material),
    )


def _doubted(zone: Zone, step: Step) -> Zone:
    doubts = [
        doubt
        for applies, doubt in (
            (step.outcome is Outcome.PARTLY, PARTLY_LAID),
            (known(step.except_) is not None, LEFT_OUT),
            (_unsaid(step), NO_ADHESIVE),
        )
        if applies
    ]
    return replace(zone, bonded=zone.bonded.but(*doubts)) if zone.part else zone


def _unsaid(step: Step) -> bool:
    """Whether nobody says what a layer is stuck with, be it bond by bond."""
    bonds = items(step.bonds)
    silent = any(bond.adhesive is None and not items(bond.held) for bond in bonds)
    return step.adhesive is None and (silent or not bonds)


def _overhang(layer: LayerArea, zone: Zone) -> Figure:
    return ZERO if layer.operation == HOLLOW else zone.overhang


def _now(layer: LayerArea, zone: Zone) -> Figure:
    if layer.presence is Presence.THERE:
        return zone.bonded
    return ZERO if layer.presence is Presence.GONE else Figure(0, (PARTLY_REMOVED,))


def _rows(pairs: Iterable[Pair], key: Callable[[Pair], str]) -> tuple[Row, ...]:
    groups: dict[str, list[Pair]] = {}
    for pair in pairs:
        groups.setdefault(key(pair), []).append(pair)
    return tuple(Row(one, tallied(groups[one])) for one in sorted(groups))
