"""What is laid: a layer with its zones or walls, and each bond by which it holds."""

from __future__ import annotations

import itertools
from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from casebook.compute.layers.bench import Bench
from casebook.compute.layers.laid import Holding, Laid
from casebook.compute.layers.meeting import Unseen, faced, targets
from casebook.compute.layers.names import Spot
from casebook.compute.layers.parts import is_piece
from casebook.compute.structure import Bond, How, Thing


@dataclass(slots=True)
class Ground:
    """What one zone lies on: what carries it, by which bond, what it covers, its width in µm.

    Of the bonds the ends are still open.
    """

    bonds: list[tuple[str, Bond]] = field(default_factory=list)
    covers: list[str] = field(default_factory=list)
    width: int | None = None
    spanned: bool = False


def lay(bench: Bench, laid: Laid, unseen: Unseen) -> tuple[str, ...]:
    """Lay a layer or part on the bench; the names of the things that it is made of."""
    grounds = _grounds(bench, laid, unseen)
    if laid.tube:
        return _lay_tube(bench, laid, grounds)
    zones = _zones(bench, laid, grounds)
    if len(zones) > 1:
        return _lay_zones(bench, laid, grounds, zones)
    bed = next(iter(grounds), laid.name)
    width = grounds[bed].width if bed in grounds else None
    _put(bench, laid, laid.name, bed, width_um=laid.width if width is None else width)
    for ground in grounds.values():
        _settle(bench, laid.name, ground)
    return _finished(bench, laid, (laid.name,))


def _grounds(bench: Bench, laid: Laid, unseen: Unseen) -> dict[str, Ground]:
    """What a layer lies on, by the part that this comes down to, in the order of the record."""
    grounds: dict[str, Ground] = {}
    for holding in laid.holdings:
        for place in holding.places:
            _held(bench, laid, grounds, place, holding, unseen)
    for place in laid.soaks:
        for part, lower, face in targets(bench, place, laid.name, unseen, narrow=laid.patches):
            bond = Bond("", "", How.SOAKED, face=face, since=laid.since, step=laid.step)
            grounds.setdefault(part, Ground()).bonds.append((lower, bond))
    bench.main[laid.name] = tuple(grounds)
    for place, width in laid.spans.items():
        _span(bench, laid, grounds, place, width)
    _overhang(bench, laid, grounds)
    return grounds


def _held(
    bench: Bench,
    laid: Laid,
    grounds: dict[str, Ground],
    place: str,
    holding: Holding,
    unseen: Unseen,
) -> None:
    narrow = laid.patches or laid.part
    for part, lower, face in targets(bench, place, laid.name, unseen, narrow=narrow):
        ground = grounds.setdefault(part, Ground())
        ground.bonds += [(lower, faced(bond, face)) for bond in holding.bonds]
        if not holding.bonds:
            ground.covers.append(lower)


def _span(
    bench: Bench, laid: Laid, grounds: dict[str, Ground], place: str, width: int | None
) -> None:
    """One zone with its width: on what the place means, or on what lies over that part."""
    free = bench.names.zones.get(laid.name, {})
    for part, lower, face in targets(bench, place, laid.name, _nobody):
        if part not in grounds:
            bare = part == lower and free.get(part, False)
            beside = () if bare else _beside(bench, laid, part, lower, width)
            found = [(below, faced(bond, face)) for below, bond in beside]
            grounds[part] = Ground(found, [] if found else [lower])
        grounds[part].width = width
        grounds[part].spanned = True


def _nobody(place: str, spot: Spot) -> None:
    """A zone over what is not there any more: the bonds that are told say enough."""


def _overhang(bench: Bench, laid: Laid, grounds: dict[str, Ground]) -> None:
    """Free zones: those named only elsewhere, and what a layer with zones is said to lie over."""
    if laid.part or laid.tube:
        return
    for part in bench.names.zones.get(laid.name, {}):
        if part not in grounds and is_piece(bench.names, part):
            grounds[part] = Ground()
        elif part not in grounds and part in bench.things:
            grounds[part] = Ground(covers=[part])
    if len(_zones(bench, laid, grounds)) > 1:
        for place in laid.over:
            for part, lower, _ in targets(bench, place, laid.name, _nobody):
                grounds.setdefault(part, Ground(covers=[lower], spanned=True))


def _beside(
    bench: Bench, laid: Laid, part: str, lower: str, width: int | None
) -> Iterator[tuple[str, Bond]]:
    """A zone beside what `onto` names: on that layer's zone, and on the part where it is wider."""
    bonds = laid.holdings[0].bonds if laid.holdings else ()
    spots = [spot for place in laid.onto if (spot := bench.names.spot(place))]
    zones = [one for spot in spots for one in bench.named(replace(spot, zone=part, wall=""))]
    under = [one for one in zones if one not in (part, lower)] if part == lower else []
    yield from ((one, bond) for one in under for bond in bonds)
    if all(_wider(width, bench.things[one].width_um) for one in under):
        beyond = f"beyond {', '.join(under)}" if under else ""
        yield from ((lower, replace(bond, where=beyond) if beyond else bond) for bond in bonds)


def _wider(width: int | None, lower: int | None) -> bool:
    return width is not None and lower is not None and width > lower


def _zones(bench: Bench, laid: Laid, grounds: dict[str, Ground]) -> tuple[str, ...]:
    """The parts over which a layer makes a zone each: not for what is only sewn or soaked in."""
    if laid.part or laid.soaks or laid.within:
        return ()
    named = bench.names.zones.get(laid.name, {})
    return tuple(
        part
        for part, ground in grounds.items()
        if ground.spanned or part in named or any(_sheet(bond) for _, bond in ground.bonds)
    )


def _sheet(bond: Bond) -> bool:
    return bond.how in (How.STUCK, How.UNKNOWN)


def _lay_zones(
    bench: Bench, laid: Laid, grounds: dict[str, Ground], zones: tuple[str, ...]
) -> tuple[str, ...]:
    names = {part: bench.names.thing(laid.name, part) for part in zones}
    for part, name in names.items():
        _put(bench, laid, name, part, zone=part, width_um=grounds[part].width)
    bench.main[laid.name] = tuple(one for one in bench.main[laid.name] if one in names) or zones
    first = names[bench.middle(bench.main[laid.name])]
    for part, ground in grounds.items():
        _settle(bench, names.get(part, first), ground)
    if not laid.scattered:
        for lower, upper in _joints(bench, zones):
            joint = Bond(names[lower], names[upper], How.JOINT, since=laid.since, step=laid.step)
            bench.hold(joint)
    return _finished(bench, laid, tuple(names.values()))


def _joints(bench: Bench, zones: tuple[str, ...]) -> Iterator[tuple[str, str]]:
    """Which zones of a layer lie beside one another: all about the spine, else in their order.

    From board to board nothing reaches but over the spine: on two boards lie two pieces.
    """
    if any(bench.names.ground.is_spine(one) for one in zones):
        middle = bench.middle(zones)
        yield from ((middle, one) for one in zones if one != middle)
    else:
        boards = {one for one in zones if bench.names.is_board(one)}
        yield from (pair for pair in itertools.pairwise(zones) if not boards.issuperset(pair))


def _lay_tube(bench: Bench, laid: Laid, grounds: dict[str, Ground]) -> tuple[str, ...]:
    """A tube: two walls, and a zone for each board on which its inner wall reaches."""
    inner, outer = f"{laid.name}/inner", f"{laid.name}/outer"
    bed = bench.middle(tuple(grounds) or (laid.name,))
    for name, wall in ((inner, "inner"), (outer, "outer")):
        _put(bench, laid, name, bed, wall=wall, width_um=laid.width)
    beside = {
        part: bench.names.thing(laid.name, part)
        for part in _zones(bench, laid, grounds)
        if part != bed
    }
    for part, name in beside.items():
        _put(bench, laid, name, part, zone=part, width_um=grounds[part].width)
    for part, ground in grounds.items():
        _settle(bench, beside.get(part, inner), ground)
    for name in beside.values():
        bench.hold(Bond(inner, name, How.JOINT, since=laid.since, step=laid.step))
    bench.hold(Bond(inner, outer, How.FOLD, since=laid.since, step=laid.step))
    return _finished(bench, laid, (inner, outer, *beside.values()))


def _put(
    bench: Bench,
    laid: Laid,
    name: str,
    bed: str,
    *,
    zone: str = "",
    wall: str = "",
    width_um: int | None = None,
) -> None:
    thing = Thing(
        name=name,
        of=laid.name,
        zone=zone,
        wall=wall,
        part=laid.part,
        since=laid.since,
        materials=laid.named.words,
        ruled_out=laid.named.ruled_out,
        splits=laid.splits,
        temporary=laid.temporary,
        partly=laid.partly,
        where=laid.where,
        thickness_um=laid.thickness,
        step=laid.step,
        height_um=laid.height,
        width_um=width_um,
        patches=laid.patches,
    )
    bench.put(thing, bed)


def _settle(bench: Bench, name: str, ground: Ground) -> None:
    """Bond one thing to what it lies on, and let it cover what it is not bonded to."""
    for lower, bond in ground.bonds:
        bench.hold(replace(bond, lower=lower, upper=name))
    for lower in ground.covers:
        bench.cover(lower, name)


def _finished(bench: Bench, laid: Laid, names: tuple[str, ...]) -> tuple[str, ...]:
    """What a layer covers and hides without a bond, and whether it lies apart."""
    for place in laid.over:
        for lower in _over(bench, place, laid.name):
            bench.cover(lower, _fitting(bench, names, lower))
    for place in laid.hides:
        spot = bench.names.spot(place)
        hidden = [one for one in bench.named(spot) if one not in names] if spot else []
        for one in hidden or [place]:
            bench.hide(one, _fitting(bench, names, one))
    on = [bond.lower for name in names for _, bond in bench.beneath(name)]
    lies = bool(on) or any(upper in names for _, upper in bench.covers)
    if not lies or (on and all(bench.things[one].apart for one in on)):
        bench.set_apart(names, True)
    return names


def _over(bench: Bench, place: str, upper: str) -> Iterator[str]:
    spot = bench.names.spot(place)
    yield from (one for one in (bench.named(spot) if spot else ()) if one != upper)


def _fitting(bench: Bench, names: tuple[str, ...], lower: str) -> str:
    """The piece of a layer over a thing: the zone of the same part, else the first one."""
    bed = bench.beds.get(lower, "")
    return next((one for one in names if bench.beds[one] == bed), names[0])
