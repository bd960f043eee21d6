"""Marks on photos: where each is, and how long or large it is where a scale is on record.

Areas by the shoelace formula (surveyor's formula, from memory). A length holds in the plane of the
scale alone: what lies nearer to the camera looks larger, and a slanting face smaller.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from typing import Literal

from casebook.compute.places import Ground, ground
from casebook.model.archive import Case
from casebook.model.base import Maybe, items, known, walk
from casebook.model.condition import Finding
from casebook.model.marks import Mark, Scale
from casebook.model.object import Part, Size
from casebook.model.photos import Image, Photo
from casebook.values.points import Pair
from casebook.values.quantities import Length

SHAPES = ("box", "line", "outline")
"""The keys of a mark that say where it is, in the order in which one is looked for."""

ENDS = 2
"""Pixels that two points together may be out: each is taken to be set right to a pixel."""

Side = Literal["height", "width", ""]


@dataclass(frozen=True, slots=True)
class Measure:
    """A length in mm or an area in mm², with how far it may be out either way.

    `side` says which side of the part a line runs along, "" for an area; `share` is the part's
    fraction that it makes up, None where the part's size is not known.
    """

    value: Fraction
    unsure: Fraction
    is_area: bool
    share: Fraction | None = None
    side: Side = ""


@dataclass(frozen=True, slots=True)
class Marked:
    """One mark: its number in the case, its points in pixels, what was found there, its measure."""

    number: int
    finding: Finding
    mark: Mark
    shape: str
    corners: tuple[Pair, ...]
    measure: Measure | None


def marked(case: Case, images: Mapping[str, Image]) -> Mapping[str, tuple[Marked, ...]]:
    """The marks of a case by the photo they are on, numbered through in the order of the record.

    `images` gives the photos that are there, by id or file name; marks on others are left out.
    """
    every = list(marks(case))
    if not every:
        return {}
    photos = {name: one for one in items(case.photos) for name in (one.file, one.id) if name}
    below = ground(case)
    found: dict[str, tuple[Marked, ...]] = {}
    number = 0
    for finding, mark in every:
        name = known(mark.photo) or ""
        photo = photos.get(name)
        image = image_of(photo, images) if photo else None
        shape = shape_of(mark)
        if photo and image and shape:
            number += 1
            corners = getattr(mark, shape).corners(image.width, image.height)
            measure = _measure(shape, corners, photo, image, _part(finding, below))
            one = Marked(number, finding, mark, shape, corners, measure)
            found[photo.id or photo.file] = (*found.get(photo.id or photo.file, ()), one)
    return found


def marks(case: Case) -> Iterator[tuple[Finding, Mark]]:
    """Every mark with the finding it belongs to, those of steps too."""
    for one in walk(case):
        if isinstance(one, Finding):
            yield from ((one, mark) for mark in items(one.marks))


def image_of(photo: Photo, images: Mapping[str, Image]) -> Image | None:
    """The image of a photo, under whichever of its names it is kept."""
    return images.get(photo.file) or images.get(photo.id)


def shape_of(mark: Mark) -> str:
    """Which of its shapes a mark has; "" if none is known."""
    return next((one for one in SHAPES if known(getattr(mark, one)) is not None), "")


# --- measuring -------------------------------------------------------------------------------


def area(corners: Sequence[Pair]) -> Fraction:
    """The area inside an outline that does not cross itself, in the square of its unit."""
    twice = sum(x * v - u * y for (x, y), (u, v) in _sides(corners))
    return abs(Fraction(twice)) / 2


def length(points: Sequence[Pair]) -> Fraction:
    """The length of a line from point to point, to the digits of a float."""
    return sum((_distance(one, other) for one, other in pairwise(points)), Fraction(0))


def crosses_itself(corners: Sequence[Pair]) -> bool:
    """Whether two sides of an outline that are not neighbours meet."""
    sides = list(_sides(corners))
    last = len(sides) - 1
    return any(
        _meet(sides[one], sides[other])
        for one in range(last + 1)
        for other in range(one + 2, last + 1)
        if (one, other) != (0, last)
    )


def resolution(scale: Maybe[Scale], image: Image) -> tuple[Fraction, Fraction] | None:
    """Millimetres in a pixel and by what fraction that may be out; None without a scale's points.

    A length that is a range counts with its middle.
    """
    told = known(scale)
    ends = (known(told.from_), known(told.to)) if told else (None, None)
    measured = known(told.length) if told else None
    if ends[0] is None or ends[1] is None or measured is None or not _closed(measured):
        return None
    low, high = Fraction(measured.low or 0), Fraction(measured.high or 0)
    pixels = _distance(*(one.on(image.width, image.height) for one in ends if one))
    middle = (low + high) / 2
    if not pixels or not middle:
        return None
    return middle / pixels, ENDS / pixels + (high - low) / (2 * middle)


def _closed(measured: Length) -> bool:
    return measured.low is not None and measured.high is not None


def _measure(
    shape: str, corners: tuple[Pair, ...], photo: Photo, image: Image, part: Part | None
) -> Measure | None:
    """The length or area of a mark, where the photo has a scale to measure it by."""
    found = resolution(photo.scale, image)
    if found is None or (shape == "outline" and crosses_itself(corners)):
        return None
    return _line(corners, *found, part) if shape == "line" else _area(corners, *found, part)


def _line(
    points: tuple[Pair, ...], mm: Fraction, out: Fraction, part: Part | None
) -> Measure | None:
    pixels = length(points)
    (x, y), (u, v) = points[0], points[-1]
    side: Side = "height" if abs(v - y) >= abs(u - x) else "width"
    whole = _mm(getattr(part, side)) if part else None
    value = pixels * mm
    share = value / whole if whole else None
    return Measure(value, value * out + ENDS * mm, False, share, side) if value else None


def _area(
    corners: tuple[Pair, ...], mm: Fraction, out: Fraction, part: Part | None
) -> Measure | None:
    pixels = area(corners)
    edge = length((*corners, corners[0]))
    width, height = (_mm(part.width), _mm(part.height)) if part else (None, None)
    value = pixels * mm**2
    share = value / (width * height) if width and height else None
    return Measure(value, 2 * value * out + edge * mm**2, True, share) if value else None


def _part(finding: Finding, below: Ground) -> Part | None:
    """The one part that a finding is about, with its size; a sheet's may be the object's."""
    places = items(finding.part)
    if len(places) != 1:
        return None
    (place,) = (below.bare(one) for one in places)
    part = below.part(place)
    if part.width is None and part.height is None and below.is_face(place):
        return _sized(below.size)
    return part


def _sized(size: Size) -> Part:
    return Part(height=size.height, width=size.width)


def _mm(measure: Maybe[Length]) -> Fraction | None:
    """A length in mm, where it is one figure."""
    told = known(measure)
    return told.exact if told else None


def _distance(one: Pair, other: Pair) -> Fraction:
    return Fraction(math.hypot(float(other[0] - one[0]), float(other[1] - one[1])))


def _sides(corners: Sequence[Pair]) -> Iterator[tuple[Pair, Pair]]:
    return zip(corners, (*corners[1:], corners[0]), strict=True)


def _meet(one: tuple[Pair, Pair], other: tuple[Pair, Pair]) -> bool:
    """Whether two stretches share a point: each has ends on both sides of the other's line."""
    (a, b), (c, d) = one, other
    turns = _turn(a, b, c), _turn(a, b, d), _turn(c, d, a), _turn(c, d, b)
    if turns[0] * turns[1] < 0 and turns[2] * turns[3] < 0:
        return True
    on = ((turns[0], one, c), (turns[1], one, d), (turns[2], other, a), (turns[3], other, b))
    return any(turn == 0 and _within(side, point) for turn, side, point in on)


def _turn(a: Pair, b: Pair, c: Pair) -> Fraction:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _within(side: tuple[Pair, Pair], point: Pair) -> bool:
    (x, y), (u, v) = side
    return min(x, u) <= point[0] <= max(x, u) and min(y, v) <= point[1] <= max(y, v)
