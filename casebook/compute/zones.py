"""The zones of one layer: each part it lies on, how much was cut for it and how much is bonded."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from casebook.compute.figures import ZERO, Doubt, Effect, Figure, read, total
from casebook.compute.measures import (
    assumed_height,
    assumed_width,
    face_height,
    face_width,
    length,
    within,
)
from casebook.compute.places import Ground
from casebook.compute.steps import none, sticks
from casebook.model.base import Gap, items, known
from casebook.model.details import Piece, Scope
from casebook.model.object import Size
from casebook.model.treatment import Step

BEYOND = ""
"""The part of a zone that lies on nothing: what was cut wider than all it spans."""

NO_WIDTH = Doubt(Effect.AT_LEAST, "area has no width", "areas have no width")
NO_HEIGHT = Doubt(Effect.AT_LEAST, "area has no height", "areas have no height")
NO_REACH = Doubt(
    Effect.AT_LEAST,
    "layer reaches over other parts by an unrecorded width",
    "layers reach over other parts by unrecorded widths",
)
NOT_MEASURED = Doubt(
    Effect.AT_LEAST,
    "layer lies in places that were not measured",
    "layers lie in places that were not measured",
)
NO_PIECE_SIZE = Doubt(Effect.AT_LEAST, "set of pieces has no size", "sets of pieces have no size")
COUNTED_ONCE = Doubt(
    Effect.AT_LEAST,
    "part stands there more than once and is counted once",
    "parts stand there more than once and are counted once",
)
NO_PIECE_COUNT = Doubt(
    Effect.AT_LEAST, "kind of piece has no count", "kinds of pieces have no count"
)
EACH_AS_CUT = Doubt(
    Effect.ABOUT,
    "cut is taken as the size of each piece",
    "cuts are taken as the size of each piece",
)
OVERHANG_UNKNOWN = Doubt(Effect.AT_LEAST, "overhang is not known", "overhangs are not known")


@dataclass(frozen=True, slots=True)
class Zone:
    """One part that a layer lies on: the area cut for it and the area bonded to it, in µm²."""

    part: str
    cut: Figure
    bonded: Figure
    spine: bool = False

    @property
    def overhang(self) -> Figure:
        """What was cut and is not bonded here, in µm²; "at least" 0 where it is not known."""
        if self.cut.at_least or self.bonded.at_least:
            return Figure(0, (OVERHANG_UNKNOWN,))
        return self.cut - self.bonded


def zones_of(ground: Ground, step: Step) -> tuple[Zone, ...]:
    """The zones of a layer that a step lays; at least one, be it without a size."""
    parts = _parts(ground, step)
    scope = known(step.scope)
    if pieces := tuple(_pieces(step)):
        return _alike(ground, parts, total(_piece(piece) for piece in pieces))
    if step.spans:
        return (*_spanned(ground, step), *_beyond(ground, step, parts))
    if step.ways or (step.scope is not None and not none(step.scope)):
        return _alike(ground, parts, _scattered(step, scope))
    return _whole(ground, step, parts)


def _parts(ground: Ground, step: Step) -> tuple[str, ...]:
    inside = known(step.in_thickness_of)
    stuck = (bond for bond in items(step.bonds) if sticks(bond))
    bonded = tuple(place for bond in stuck for place in items(bond.onto))
    places = items(step.onto) or bonded or ((inside,) if inside else tuple(step.spans))
    return ground.under(places)


def _alike(ground: Ground, parts: tuple[str, ...], area: Figure) -> tuple[Zone, ...]:
    """One zone of pieces that lie wholly on the part or parts, however they are shared out."""
    spine = bool(parts) and all(ground.is_spine(part) for part in parts)
    return (Zone(" + ".join(parts), area, area, spine),)


def _pieces(step: Step) -> Iterable[Piece]:
    """The pieces that a step lays, and those of the several ways in which it lays them."""
    for scope in (step.scope, *(way.scope for way in items(step.ways))):
        said = known(scope)
        yield from items(said.pieces) if said else ()


def _piece(piece: Piece) -> Figure:
    """The area of pieces of one size: count, by default one, times height times width."""
    height, width = length(piece.height), length(piece.width)
    if height is None or width is None:
        return Figure(0, (NO_PIECE_SIZE,))
    return _number(piece) * height * width


def _number(piece: Piece) -> Figure:
    """How many pieces of one size there were; at least one where nobody wrote it down."""
    if isinstance(piece.count, Gap):
        return Figure(1, (NO_PIECE_COUNT,))
    return Figure(1) if piece.count is None else read(piece.count, 1, "count")


def _scattered(step: Step, scope: Scope | None) -> Figure:
    """The area of a layer that covers a part in places only: as cut, as often as it was done."""
    size = _cut(step)
    height, width = length(size.height), length(size.width)
    if height is None or width is None:
        return Figure(0, (NOT_MEASURED,))
    done = known(scope.done) if scope else None
    if done is None:
        return height * width
    return (read(done, 1, "count") * height * width).but(EACH_AS_CUT)


def _cut(step: Step) -> Size:
    return known(step.cut) or Size()


def _spanned(ground: Ground, step: Step) -> Iterable[Zone]:
    for place, width in step.spans.items():
        for part in ground.under((place,)):
            yield _zone(ground, step, part, length(width))


def _beyond(ground: Ground, step: Step, parts: tuple[str, ...]) -> Iterable[Zone]:
    """What was cut wider than the zones together: it lies on nothing that was recorded."""
    width = length(_cut(step).width)
    height = length(_cut(step).height) or next(
        (high for part in parts if (high := assumed_height(ground, part))), None
    )
    spans = total(span for width in step.spans.values() if (span := length(width)))
    if width and height and width.value > spans.value:
        yield Zone(BEYOND, (width - spans) * height, ZERO)


def _whole(ground: Ground, step: Step, parts: tuple[str, ...]) -> tuple[Zone, ...]:
    """The zones of a layer that covers one part, or several of which only the cut is known."""
    width = length(_cut(step).width)
    if len(parts) == 1:
        return (_once(ground, _zone(ground, step, parts[0], width)),)
    spines = [part for part in parts if ground.is_spine(part)]
    if not spines:
        return _side_by_side(ground, step, parts, width)
    return tuple(_over_spine(ground, step, parts, spines[0], width))


def _once(ground: Ground, zone: Zone) -> Zone:
    """A zone on a part that stands there several times, and the layer's cut does not say how."""
    count = known(ground.part(zone.part).count)
    if count is None or read(count).value <= 1:
        return zone
    cut, bonded = zone.cut.but(COUNTED_ONCE), zone.bonded.but(COUNTED_ONCE)
    return Zone(zone.part, cut, bonded, zone.spine)


def _side_by_side(
    ground: Ground, step: Step, parts: tuple[str, ...], width: Figure | None
) -> tuple[Zone, ...]:
    """Several parts without a spine: one cut piece over all, or the face of each."""
    if width is None:
        return tuple(_zone(ground, step, part, None) for part in parts)
    return (_zone(ground, step, " + ".join(parts), width),)


def _over_spine(
    ground: Ground, step: Step, parts: tuple[str, ...], spine: str, width: Figure | None
) -> Iterable[Zone]:
    """A spine and what lies beside it: the spine takes its arc, the others the rest of a cut."""
    arc = face_width(ground, spine)
    others = " + ".join(part for part in parts if part != spine)
    yield _zone(ground, step, spine, arc if width is None else within(width, arc))
    if width is None or arc is None:
        unknown = Figure(0, (NO_REACH,))
        yield Zone(others, unknown, unknown)
    elif width.value > arc.value:
        yield _zone(ground, step, others, width - arc)


def _zone(ground: Ground, step: Step, part: str, width: Figure | None) -> Zone:
    """A zone of a width, bonded as far as the face of its part reaches."""
    wide = width if width is not None else assumed_width(ground, part)
    high = length(_cut(step).height) or assumed_height(ground, part)
    missing = [doubt for value, doubt in ((wide, NO_WIDTH), (high, NO_HEIGHT)) if value is None]
    if wide is None or high is None:
        unknown = Figure(0, tuple(missing))
        return Zone(part, unknown, unknown, ground.is_spine(part))
    bonded = within(wide, face_width(ground, part)) * within(high, face_height(ground, part))
    return Zone(part, wide * high, bonded, ground.is_spine(part))
