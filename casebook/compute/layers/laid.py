"""What is laid, found or added alike: one shape for a layer of the list and for a step's layer."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from casebook.compute.layers.holds import Named, holds, named, splits
from casebook.compute.layers.names import Names
from casebook.compute.layers.parts import micrometres, thickness
from casebook.compute.structure import Bond, Since
from casebook.model.base import Many, Maybe, items, known
from casebook.model.condition import Found, Origin
from casebook.model.details import Outcome, Scope
from casebook.model.object import Bond as Written
from casebook.model.object import Size
from casebook.model.treatment import Step
from casebook.values.quantities import Length


@dataclass(frozen=True, slots=True)
class Like:
    """What all bonds of one thing share: since when, by which step, in the thickness or not."""

    since: Since
    step: int = 0
    within: bool = False
    reused: bool = False

    def of(
        self,
        bond: Bond,
        face: str = "",
        where: str = "",
        cuts: tuple[str, ...] = (),
        *,
        partly: bool = False,
    ) -> Bond:
        """A bond, its ends still open, as one of this thing."""
        return replace(
            bond,
            face=face,
            where=where,
            cuts=cuts,
            partly=partly or bond.partly,
            since=self.since,
            step=self.step,
            within=self.within,
            reused=self.reused,
        )


@dataclass(frozen=True, slots=True)
class Holding:
    """Places that a thing holds to, with the bonds by which it does, their ends left open."""

    places: tuple[str, ...]
    bonds: tuple[Bond, ...]


@dataclass(frozen=True, slots=True)
class Laid:
    """A layer or part as it is laid: what it is, what it holds to, what it covers and goes through.

    `spans` gives the width of each zone in µm by the place it covers, None if not recorded.
    """

    name: str
    since: Since
    step: int
    named: Named
    holdings: tuple[Holding, ...]
    spans: Mapping[str, int | None]
    over: tuple[str, ...] = ()
    hides: tuple[str, ...] = ()
    soaks: tuple[str, ...] = ()
    within: str = ""
    tube: bool = False
    part: bool = False
    splits: bool = False
    temporary: bool = False
    partly: bool = False
    patches: bool = False
    scattered: bool = False
    where: str = ""
    thickness: int | None = None
    height: int | None = None
    width: int | None = None

    @property
    def onto(self) -> tuple[str, ...]:
        """All places that it holds to."""
        return tuple(place for one in self.holdings for place in one.places)


def of_found(found: Found, names: Names) -> Laid:
    """A layer that was there on arrival."""
    main = (*items(found.onto), *items(found.joins))
    since = Since.ORIGINAL if known(found.origin) is Origin.ORIGINAL else Since.FOUND
    material = named(found.material, names.lexicon)
    return Laid(
        name=found.id,
        since=since,
        step=0,
        named=material,
        holdings=tuple(holdings(found, main, names, Like(since))),
        spans=_spans(found.spans),
        over=items(found.over),
        hides=items(found.hides),
        soaks=items(found.soaks_in),
        tube=found.id in names.tubes,
        splits=splits(found.material, material.words, names.lexicon),
        thickness=micrometres(found.thickness) or thickness(known(found.material)),
        height=micrometres(found.height),
        width=micrometres(found.width),
    )


def of_step(step: Step, number: int, names: Names) -> Laid:
    """A layer or part that a step adds."""
    scope, cut = known(step.scope), known(step.cut) or Size()
    material = _materials(step, names)
    inside = known(step.in_thickness_of) or ""
    joined = (*items(step.onto), *items(step.to), *items(step.joins))
    main = (*joined, *((inside,) if inside else ()))
    like = Like(Since.ADDED, number, bool(inside))
    return Laid(
        name=step.adds or "",
        since=Since.ADDED,
        step=number,
        named=material,
        holdings=tuple(holdings(step, main, names, like)),
        spans=_spans(step.spans),
        over=items(step.over),
        hides=items(step.hides),
        soaks=items(step.soaks_in),
        within=inside,
        tube=step.adds in names.tubes,
        part=known(step.is_) == "part",
        splits=splits(step.material, material.words, names.lexicon),
        temporary=bool(known(step.temporary)),
        partly=step.outcome is Outcome.PARTLY,
        patches=bool(step.scope),
        scattered=bool(scope and (items(scope.pieces) or known(scope.done))),
        where=where_of(scope),
        thickness=thickness(known(step.material)) or micrometres(cut.thickness),
        height=micrometres(cut.height),
        width=micrometres(cut.width),
    )


def holdings(
    said: Found | Step, main: tuple[str, ...], names: Names, like: Like
) -> Iterator[Holding]:
    """What a thing holds to: its bonds one by one, and by its own words what they leave out."""
    own = tuple(_own(said, names, like))
    told: set[str] = set()
    for bond in items(said.bonds):
        places = items(bond.onto) or main
        told.update(places)
        yield Holding(places, tuple(_written(bond, names, like)) or own)
    rest = tuple(place for place in main if place not in told)
    if rest or not items(said.bonds):
        yield Holding(rest, own)


def _own(said: Found | Step, names: Names, like: Like) -> Iterator[Bond]:
    """The bonds that the keys of a step or a found layer speak of, way by way if there are several.

    A step without ways, and each found layer, holds in one way.
    """
    face = (known(said.face) or "") if isinstance(said, Step) else ""
    cuts = tuple(cut_names(said.cuts, names))
    ways = items(said.ways) if isinstance(said, Step) else ()
    for way in ways:
        adhesive = said.adhesive if way.adhesive is None else way.adhesive
        bonds = holds(adhesive, said.held, names.lexicon, way.material or said.material)
        where = where_of(known(way.scope))
        yield from (like.of(one, face, where, cuts, partly=True) for one in bonds)
    if not ways:
        bonds = holds(said.adhesive, said.held, names.lexicon, said.material)
        yield from (like.of(one, face, "", cuts) for one in bonds)


def _written(bond: Written, names: Names, like: Like) -> Iterator[Bond]:
    """The bonds of one item of `bonds`; none where it says neither adhesive nor hold."""
    if bond.adhesive is None and not items(bond.held):
        return
    face, where = known(bond.face) or "", known(bond.where) or ""
    cuts = tuple(cut_names(bond.cuts, names))
    for one in holds(bond.adhesive, bond.held, names.lexicon):
        yield like.of(one, face, where, cuts, partly=bool(where))


def cut_names(cuts: Many[str], names: Names) -> Iterator[str]:
    """The names of what a sewing, a tack or a slot goes through."""
    for spot in map(names.spot, items(cuts)):
        if spot:
            yield names.thing(spot.of, spot.zone) if spot.zone else spot.of


def where_of(scope: Scope | None) -> str:
    """Where something lies that does not cover the whole, in the words of the record."""
    return known(scope.where) or "" if scope else ""


def _materials(step: Step, names: Names) -> Named:
    """What a step's thing is made of; of several ways, all that were used."""
    own = named(step.material, names.lexicon)
    if not items(step.ways):
        return own
    others = [named(way.material, names.lexicon) for way in items(step.ways)]
    words = dict.fromkeys(word for one in (own, *others) for word in one.words)
    return replace(own, words=tuple(words))


def _spans(spans: Mapping[str, Maybe[Length]]) -> dict[str, int | None]:
    return {zone: micrometres(width) for zone, width in spans.items()}
