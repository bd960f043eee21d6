"""Heights and widths in µm: as a layer was cut, as a part measures, and what is assumed instead."""

from __future__ import annotations

from casebook.compute.figures import Doubt, Effect, Figure, read
from casebook.compute.geometry import spine_arc
from casebook.compute.places import Ground
from casebook.model.base import Gap, known
from casebook.values.quantities import Length

MICROMETRES = 1000
"""In a millimetre, the base unit of lengths."""

NO_RISE = Doubt(
    Effect.ABOUT,
    "spine has no rise, so that its width stands for its arc",
    "spines have no rise, so that their widths stand for their arcs",
)
HEIGHT_OF_PART = Doubt(
    Effect.ABOUT, "height is taken from the part", "heights are taken from the part"
)
HEIGHT_OF_OBJECT = Doubt(
    Effect.ABOUT, "height is taken from the object", "heights are taken from the object"
)
WIDTH_OF_PART = Doubt(
    Effect.ABOUT, "width is taken from the part", "widths are taken from the part"
)
WIDTH_OF_OBJECT = Doubt(
    Effect.ABOUT, "width is taken from the object", "widths are taken from the object"
)


def length(value: Length | Gap | None) -> Figure | None:
    """A length of the record in µm; None where it is not known."""
    written = known(value)
    return None if written is None else read(written, MICROMETRES)


def spine_width(ground: Ground, place: str) -> Figure | None:
    """The arc of a spine; without a rise its width across the back, and that said."""
    part = ground.part(place)
    width, rise = length(part.width), length(part.rise)
    if width is None:
        return None
    return width.but(NO_RISE) if rise is None else spine_arc(width, rise)


def face_width(ground: Ground, place: str) -> Figure | None:
    """How wide the face of a part is, where recorded: on a spine along its curve."""
    if ground.is_spine(place):
        return spine_width(ground, place)
    return length(ground.part(place).width)


def face_height(ground: Ground, place: str) -> Figure | None:
    """How high a part is, where recorded."""
    return length(ground.part(place).height)


def assumed_width(ground: Ground, place: str) -> Figure | None:
    """The width of a layer whose own is not recorded: the spine's arc, or that of the face."""
    width = face_width(ground, place)
    if width is not None:
        return width if ground.is_spine(place) else width.but(WIDTH_OF_PART)
    whole = length(ground.size.width) if ground.is_face(place) else None
    return None if whole is None else whole.but(WIDTH_OF_OBJECT)


def assumed_height(ground: Ground, place: str) -> Figure | None:
    """The height of a layer whose own is not recorded: the part's, or else the object's."""
    height = face_height(ground, place)
    if height is not None:
        return height.but(HEIGHT_OF_PART)
    whole = length(ground.size.height)
    return None if whole is None else whole.but(HEIGHT_OF_OBJECT)


def within(measure: Figure, face: Figure | None) -> Figure:
    """As much of a layer's measure as lies on a face; all of it where the face has no measure."""
    return measure if face is None or measure.value <= face.value else face
