"""Photos with their marks for a case page: shapes to draw over the picture, and a legend."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from casebook.compute.marks import Marked, Measure, marked
from casebook.model.archive import Archive, Case
from casebook.model.base import known
from casebook.model.condition import Finding
from casebook.output.contexts import Line, PictureView, Run
from casebook.output.wording import Wording, capital, say
from casebook.values.numbers import numeral
from casebook.values.points import Pair

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


def marked_views(
    case: Case, archive: Archive, views: Mapping[str, PictureView], wording: Wording
) -> tuple[MarkedView, ...]:
    """Each picture of a case that has marks, in the order of the photos."""
    images = archive.images.get(case.id, {})
    found = marked(case, images)
    return tuple(
        _view(view, images[name].width, images[name].height, found[name], wording)
        for name, view in views.items()
        if name in found
    )


def _view(
    picture: PictureView, width: int, height: int, marks: tuple[Marked, ...], wording: Wording
) -> MarkedView:
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
        legend=tuple(_legends(marks, wording)),
        note=_RESTS_ON if any(one.measure for one in marks) else "",
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


def _legends(marks: tuple[Marked, ...], wording: Wording) -> Iterator[LegendView]:
    """The marks in words; what a finding says as a whole stands at its first mark alone."""
    told: list[Finding] = []
    for one in marks:
        again = bool(known(one.mark.label)) and any(one.finding is each for each in told)
        told.append(one.finding)
        yield _legend(one, wording, again)


def _legend(one: Marked, wording: Wording, again: bool) -> LegendView:
    """A mark in words: what exactly it marks, then what the finding says unless told `again`."""
    finding = one.finding
    damage = wording.terms("damages", finding.damage)
    where = wording.places(finding.part)
    head = (*where, Run(": "), *damage) if where and damage else where or damage
    texts = (say(one.mark.label), "" if again else say(finding.seen))
    seen = "; ".join(text for text in texts if text)
    return LegendView(one.number, capital(head), seen, _measured(one.measure))


def _measured(measure: Measure | None) -> str:
    """A measure with how sure it is: "about 41 mm, about 10 % of the height of the part"."""
    if measure is None:
        return ""
    value = _area(measure) if measure.is_area else _length(measure)
    if measure.share is None:
        return value
    of = f"the {measure.side} of the part" if measure.side else "the part"
    unsure = measure.share * measure.unsure / measure.value
    return f"{value}, {_about(100 * measure.share, 100 * unsure, '%')} of {of}"


def _length(measure: Measure) -> str:
    if measure.value >= 1000:
        return _about(measure.value / 1000, measure.unsure / 1000, "m")
    return _about(measure.value, measure.unsure, "mm")


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
