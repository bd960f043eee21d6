"""How one photo lies over another, found by their own features; needs the extra `align` (OpenCV).

ORB features matched both ways, a similarity by RANSAC (Rublee et al. 2011; Fischler and Bolles
1981, both from memory). What does not fit is refused, never forced.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path
from typing import TYPE_CHECKING

from PIL import Image

from casebook.photos.decode import opened, read_tags
from casebook.photos.pixels import upright
from casebook.values.points import Pair, Point

if TYPE_CHECKING:
    from numpy import float32, uint8
    from numpy.typing import NDArray

EXTRA = 'python -m pip install "casebook[align]"'
"""What brings OpenCV."""

WIDEST = 1600
"""Pictures are looked at no wider than this."""
FEATURES = 4000
NEAR = 3.0
"""Pixels by which a feature may miss its place and still count."""
FEWEST = 30
LEAST_SHARE = 0.2
"""A fit rests on at least so many features, and on this share of those that look alike."""
SCALES = (0.8, 1.25)
MOST_DEGREES = 20.0
_SPREAD = 0.25
"""The two points proposed lie apart by at least this share of the picture's diagonal."""


class NoFit(Exception):
    """Two photos could not be laid over one another: `reason`."""

    def __init__(self, reason: str) -> None:
        super().__init__(reason)
        self.reason = reason


@dataclass(frozen=True, slots=True)
class Proposed:
    """Two points on each of two photos, in per cent of the upright originals, and how they came.

    Per cent still hold when a photo is saved again in another size.

    `scale` is how many times larger the first shows things than the second, both brought to one
    width; `degrees` how far it is turned; `kept` of `alike` features agreed.
    """

    here: tuple[Point, Point]
    there: tuple[Point, Point]
    scale: float
    degrees: float
    kept: int
    alike: int


def propose(here: Path, there: Path) -> Proposed:
    """How the photo `here` lies over that `there`. Raises NoFit, and ImportError without OpenCV."""
    import cv2  # noqa: PLC0415 - an extra, and slow to load

    one, other = _seen(here, WIDEST), _seen(there, WIDEST)
    if one.width != other.width:
        across = min(one.width, other.width)
        one, other = _seen(here, across), _seen(there, across)
    points = _alike(one, other)
    if len(points) < FEWEST:
        raise NoFit(f"only {len(points)} places look alike on both, {FEWEST} are needed")
    cv2.setRNGSeed(0)  # the same photos give the same points
    found, kept = cv2.estimateAffinePartial2D(
        _array([a for a, _ in points]),
        _array([b for _, b in points]),
        method=cv2.RANSAC,
        ransacReprojThreshold=NEAR,
        maxIters=5000,
        confidence=0.999,
    )
    agreed = [pair for pair, inside in zip(points, kept.ravel().tolist(), strict=True) if inside]
    if len(agreed) < max(FEWEST, LEAST_SHARE * len(points)):
        raise NoFit(f"only {len(agreed)} of {len(points)} places that look alike fit together")
    return _proposed(one, other, found.tolist(), agreed, len(points))


def _proposed(
    one: Image.Image,
    other: Image.Image,
    matrix: Sequence[Sequence[float]],
    agreed: Sequence[tuple[Sequence[float], Sequence[float]]],
    alike: int,
) -> Proposed:
    a, b = matrix[0][0], matrix[1][0]
    scale, degrees = math.hypot(a, b), math.degrees(math.atan2(b, a))
    if not SCALES[0] <= scale <= SCALES[1]:
        raise NoFit(f"one would be {scale:.2f} times as large as the other: not the same view")
    if abs(degrees) > MOST_DEGREES:
        raise NoFit(f"one would be turned by {degrees:.0f} degrees: not the same view")
    ends = _ends([pair[0] for pair in agreed], one.size)
    moved = [tuple(row[0] * x + row[1] * y + row[2] for row in matrix) for x, y in ends]
    return Proposed(
        here=_points([(x, y) for x, y in ends], one),
        there=_points([(x, y) for x, y in moved], other),
        scale=1 / scale,
        degrees=-degrees,
        kept=len(agreed),
        alike=alike,
    )


def _ends(
    points: Sequence[Sequence[float]], size: tuple[int, int]
) -> tuple[tuple[float, float], tuple[float, float]]:
    """Two features far apart: nearest the upper left, and nearest the lower right."""
    first = min(points, key=lambda point: point[0] + point[1])
    last = max(points, key=lambda point: point[0] + point[1])
    if math.dist(first, last) < _SPREAD * math.hypot(*size):
        raise NoFit("what looks alike lies close together: two points so near turn easily")
    return (first[0], first[1]), (last[0], last[1])


def _points(points: Sequence[tuple[float, float]], seen: Image.Image) -> tuple[Point, Point]:
    """Points of a picture as points of its original, to a hundredth of a per cent of it."""
    first, last = (Point(_shares(point, seen.size), per_cent=True) for point in points)
    return first, last


def _shares(point: tuple[float, float], size: tuple[int, int]) -> Pair:
    x, y = (
        round(100 * min(max(part / side, 0.0), 1.0), 2)
        for part, side in zip(point, size, strict=True)
    )
    return Fraction(str(x)), Fraction(str(y))


def _seen(path: Path, widest: int) -> Image.Image:
    with opened(path.read_bytes()) as image:
        orientation = read_tags(image).orientation
        width, height = image.size if orientation < 5 else image.size[::-1]
        across = min(width, widest)
        size = (across, max(1, round(height * across / width)))
        return upright(image, orientation, size).convert("L")


def _alike(one: Image.Image, other: Image.Image) -> list[tuple[list[float], list[float]]]:
    """The places that look alike on both, each the other's nearest."""
    import cv2  # noqa: PLC0415

    orb = cv2.ORB.create(nfeatures=FEATURES)
    (first, told), (second, said) = (
        orb.detectAndCompute(_pixels(image), _pixels(Image.new("L", image.size, 255)))
        for image in (one, other)
    )
    if not first or not second:  # then there is nothing to match
        return []
    found = cv2.BFMatcher(cv2.NORM_HAMMING, crossCheck=True).match(told, said)
    return [(list(first[one.queryIdx].pt), list(second[one.trainIdx].pt)) for one in found]


def _pixels(image: Image.Image) -> NDArray[uint8]:
    import numpy  # noqa: PLC0415 - comes with OpenCV

    return numpy.asarray(image, dtype=numpy.uint8)


def _array(points: Sequence[Sequence[float]]) -> NDArray[float32]:
    import numpy  # noqa: PLC0415

    return numpy.array(points, dtype=numpy.float32)
