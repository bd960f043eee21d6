"""Photos with their marks: shapes over the picture, a legend, and for a finding its numbers."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from casebook.compute.marks import Marked, Measure, marked
from casebook.model.archive import Archive, Case
from casebook.model.condition import Finding
from casebook.model.photos import Image
from casebook.output.contexts import Line, PictureView, Run
from casebook.output.wording import Wording, capital, say
from casebook.values.notation import Notation
from casebook.values.numbers import numeral
from casebook.values.points import Pair

INCH = Fraction("25.4")
"""An inch in mm."""
_OF_LONGER_SIDE = Fraction(3, 100)
"""The height of a number on a picture, as a share of the picture's longer side."""

_RESTS_ON = (
    "Measured on the photograph by the scale in it, each point taken as right to a pixel, and as "
    "if the scale lay in the plane of what is marked: what is nearer comes out larger, what slants "
    "comes out smaller."
)


@dataclass(frozen=True, slots=True)
class ShapeView:
    """One mark to be drawn: SVG `points`, closed or not, and where its number stands."""

    number: int
    closed: bool
    points: str
    x: str
    y: str


@dataclass(frozen=True, slots=True)
class LegendView:
    """One mark in words: where it is, what was seen, how long or large it is ("" if unknown)."""

    number: int
    """Its place on the page is `mark-NUMBER`."""
    finding: str
    """The anchor of the finding it belongs to."""
    where: Line
    seen: str
    measure: str


@dataclass(frozen=True, slots=True)
class MarkedView:
    """`parts/case/marks.html`: a picture with marks over it, in pixels of its upright original."""

    picture: PictureView
    width: int
    height: int
    shapes: tuple[ShapeView, ...]
    size: str
    """The height of a number, in the same pixels."""
    radius: str
    """The radius of the disc behind it."""
    legend: tuple[LegendView, ...]
    note: str
    """What the measures rest on; "" where there are none."""


@dataclass(frozen=True, slots=True)
class MarkNote:
    """A mark where its finding is told: its number, and how long or large it is or ""."""

    number: int
    measure: str


@dataclass(frozen=True, slots=True)
class Views:
    """The pictures of a case by the ids of their photos, and what is marked on them.

    `notes` are the marks of each finding by the finding's `id()`: two findings may say the same.
    """

    pictures: Mapping[str, PictureView]
    notes: Mapping[int, tuple[MarkNote, ...]]

    def of(self, finding: Finding) -> tuple[MarkNote, ...]:
        """The marks of a finding, in the order of their numbers."""
        return self.notes.get(id(finding), ())


NO_VIEWS = Views({}, {})


def views_of(
    case: Case, archive: Archive, pictures: Mapping[str, PictureView], wording: Wording
) -> Views:
    """The pictures of a case with the marks on those that are shown."""
    found = marked(case, archive.images.get(case.id, {}))
    shown = (one for name in pictures for one in found.get(name, ()))
    notes: dict[int, tuple[MarkNote, ...]] = {}
    for one in sorted(shown, key=lambda one: one.number):
        own = notes.get(id(one.finding), ())
        notes[id(one.finding)] = (
            *own,
            MarkNote(one.number, _measured(one.measure, wording.notation)),
        )
    return Views(pictures, notes)


def anchor_of(marks: tuple[MarkNote, ...]) -> str:
    """What leads to a finding from its marks: `finding-` and its first number; "" without any."""
    return f"finding-{marks[0].number}" if marks else ""


def marked_views(
    case: Case, archive: Archive, views: Views, wording: Wording
) -> tuple[MarkedView, ...]:
    """Each picture of a case that has marks, in the order of the photos.

    What the measures rest on is said with the first of them alone.
    """
    images = archive.images.get(case.id, {})
    found = marked(case, images)
    made = [
        _view(picture, images[name], found[name], views, wording)
        for name, picture in views.pictures.items()
        if name in found
    ]
    first = next((one for one in made if any(each.measure for each in one.legend)), None)
    return tuple(replace(one, note=_RESTS_ON) if one is first else one for one in made)


def _view(
    picture: PictureView, image: Image, marks: tuple[Marked, ...], views: Views, wording: Wording
) -> MarkedView:
    width, height = image.width, image.height
    size = max(width, height) * _OF_LONGER_SIDE
    radius = size * Fraction(3, 4)
    numbers = [one.number for one in marks]
    said = f"mark {numbers[0]}" if len(numbers) == 1 else f"marks {numbers[0]} to {numbers[-1]}"
    return MarkedView(
        picture=replace(picture, alt=f"{picture.alt}, with {said}, told beside it"),
        width=width,
        height=height,
        shapes=tuple(_shape(one, width, height, radius) for one in marks),
        size=_pixels(size),
        radius=_pixels(radius),
        legend=tuple(_legend(one, views, wording) for one in marks),
        note="",
    )


def _shape(one: Marked, width: int, height: int, radius: Fraction) -> ShapeView:
    x, y = min(one.corners, key=lambda point: (point[1], point[0]))
    return ShapeView(
        number=one.number,
        closed=one.shape != "line",
        points=" ".join(_pair(point) for point in one.corners),
        x=_pixels(_kept(x, radius, width)),
        y=_pixels(_kept(y, radius, height)),
    )


def _kept(at: Fraction, margin: Fraction, most: int) -> Fraction:
    """A coordinate moved so far in that a disc round it stays in the picture."""
    return max(margin, min(at, most - margin))


def _pair(point: Pair) -> str:
    return f"{_pixels(point[0])},{_pixels(point[1])}"


def _pixels(value: Fraction) -> str:
    return f"{float(value):.1f}".removesuffix(".0")


def _legend(one: Marked, views: Views, wording: Wording) -> LegendView:
    """A mark in words: what exactly it marks, or, where nobody said so, what the finding says."""
    finding = one.finding
    damage = wording.terms("damages", finding.damage)
    where = wording.places(finding.part)
    head = (*where, Run(": "), *damage) if where and damage else where or damage
    seen = say(one.mark.label) or say(finding.seen)
    anchor = anchor_of(views.of(finding))
    return LegendView(
        one.number, anchor, capital(head), seen, _measured(one.measure, wording.notation)
    )


def _measured(measure: Measure | None, notation: Notation) -> str:
    """A measure with how sure it is: "about 41 mm, about 10 % of the height of the part"."""
    if measure is None:
        return ""
    ways = (_area, _square) if measure.is_area else (_length, _inches)
    value = notation.either(*(way(measure) for way in ways))
    if measure.share is None:
        return value
    of = f"the {measure.side} of the part" if measure.side else "the part"
    unsure = measure.share * measure.unsure / measure.value
    return f"{value}, {notation.figures(_about(100 * measure.share, 100 * unsure, '%'))} of {of}"


def _length(measure: Measure) -> str:
    if measure.value >= 1000:
        return _about(measure.value / 1000, measure.unsure / 1000, "m")
    return _about(measure.value, measure.unsure, "mm")


def _inches(measure: Measure) -> str:
    return _about(measure.value / INCH, measure.unsure / INCH, "in")


def _square(measure: Measure) -> str:
    return _about(measure.value / INCH**2, measure.unsure / INCH**2, "in²")


def _area(measure: Measure) -> str:
    for least, factor, unit in ((10**6, 10**6, "m²"), (1000, 100, "cm²")):
        if measure.value >= least:
            return _about(measure.value / factor, measure.unsure / factor, unit)
    return _about(measure.value, measure.unsure, "mm²")


def _about(value: Fraction, unsure: Fraction, unit: str) -> str:
    """A figure rounded to no finer a place than is sure, three figures at most.

    What may be out by half of itself is given as a limit.
    """
    if 2 * unsure > value:
        return f"less than {_rounded(value + unsure, _place(value + unsure))} {unit}"
    place = max(round(math.log10(unsure)) if unsure else -9, _place(value))
    return f"about {_rounded(value, place)} {unit}"


def _place(value: Fraction) -> int:
    """The power of ten of a number's third figure."""
    return math.floor(math.log10(value)) - 2


def _rounded(value: Fraction, place: int) -> str:
    step = Fraction(10) ** place
    return numeral(math.floor(value / step + Fraction(1, 2)) * step)
