"""Where layers run in a drawing: along an arc, down a board, along a flat sheet; units of the SVG.

A place in a lane is `t`, from -1 to 1 along it, and a height over the surface of the part.
"""

from __future__ import annotations

import functools
import math
from dataclasses import dataclass
from fractions import Fraction
from typing import Protocol

from casebook.compute import geometry
from casebook.drawings.svg import Parts, Point, path

FLAT = 0.5
"""A rise of less than half a unit is drawn flat."""


@dataclass(frozen=True, slots=True)
class Band:
    """A strip of a lane: from and to along it, from and to over the surface."""

    start: float
    end: float
    low: float
    high: float

    @property
    def middle(self) -> float:
        """Half its height."""
        return (self.low + self.high) / 2


class Lane(Protocol):
    """A surface that layers lie on."""

    def band(self, band: Band) -> str:
        """The outline of a strip."""

    def line(self, start: float, end: float, height: float) -> str:
        """A line along the lane at a height."""

    def point(self, t: float, height: float) -> Point:
        """A place in the lane."""


@functools.lru_cache(maxsize=64)
def _circle(chord: float, rise: float) -> tuple[float, float]:
    """Radius, and half the angle of an arc in radians."""
    exact = Fraction(chord), Fraction(rise)
    return float(geometry.radius(*exact)), geometry.angle(*exact) / 2


@dataclass(frozen=True, slots=True)
class Arc:
    """The curve of a spine: centre line, height of its ends, chord and rise.

    Source of the circle: Machinery's Handbook, 31st ed., segments of circles.
    """

    middle: float
    floor: float
    chord: float
    rise: float

    @property
    def flat(self) -> bool:
        """Whether it is drawn as a straight line."""
        return self.rise < FLAT

    @property
    def radius(self) -> float:
        """Radius of the circle; 0 where it is flat."""
        return 0.0 if self.flat else _circle(self.chord, self.rise)[0]

    @property
    def half(self) -> float:
        """Half the angle of the arc, in radians."""
        return 0.0 if self.flat else _circle(self.chord, self.rise)[1]

    @property
    def length(self) -> float:
        """Length along the curve."""
        return self.chord if self.flat else 2 * self.half * self.radius

    def point(self, t: float, height: float) -> Point:
        """A place at `t` along the curve, a height away from it."""
        if self.flat:
            return (self.middle + t * self.chord / 2, self.floor - height)
        turn, reach = t * self.half, self.radius + height
        centre = self.floor - self.rise + self.radius
        return (self.middle + reach * math.sin(turn), centre - reach * math.cos(turn))

    def line(self, start: float, end: float, height: float) -> str:
        """A line along the curve at a height."""
        return path(*self.along(start, end, height))

    def along(self, start: float, end: float, height: float) -> Parts:
        """The beginning of an outline that runs along the curve."""
        return ("M", *self.point(start, height), *self._to(end, height, 1))

    def band(self, band: Band) -> str:
        """The outline of a strip along the curve."""
        return path(
            "M",
            *self.point(band.start, band.low),
            *self._to(band.end, band.low, 1),
            "L",
            *self.point(band.end, band.high),
            *self._to(band.start, band.high, 0),
            "Z",
        )

    def _to(self, t: float, height: float, sweep: int) -> Parts:
        """The way along the curve to a place on it."""
        if self.flat:
            return ("L", *self.point(t, height))
        reach = self.radius + height
        return ("A", reach, reach, 0, 0, sweep, *self.point(t, height))

    def cap(self, side: int, inner: Band, outer: Band) -> str:
        """The fold at one end of a tube, from its inner to its outer wall; side is -1 or 1."""
        t = side * min(abs(inner.end), abs(outer.end))
        wide = (outer.high - inner.low) / 2
        thin = max((outer.low - inner.high) / 2, 0.2)
        turn = int(side < 0)
        a, b = self.point(t, inner.low), self.point(t, outer.high)
        c, d = self.point(t, outer.low), self.point(t, inner.high)
        out = ("A", wide, wide, 0, 0, turn, *b)
        back = ("A", thin, thin, 0, 0, 1 - turn, *d)
        return path("M", *a, *out, "L", *c, *back, "Z")


@dataclass(frozen=True, slots=True)
class Board:
    """The outside of a board beside a spine, from its joint edge down; `t` from 0 to 1.

    `side` is -1 for the left board and 1 for the right. Layers that come from the spine bend over
    the shoulder and run into the joint; `reach` is how far down `t` of 1 is.
    """

    arc: Arc
    side: int
    joint: float
    reach: float

    @property
    def face(self) -> float:
        """Where the outer face of the board is."""
        return self.arc.middle + self.side * self.arc.chord / 2

    @property
    def top(self) -> float:
        """The board's edge at the joint."""
        return self.arc.floor + self.joint

    def point(self, t: float, height: float) -> Point:
        """A place down the board, a height away from it."""
        return (self.face + self.side * height, self.top + t * self.reach)

    def line(self, start: float, end: float, height: float) -> str:
        """A line down the board at a height."""
        return path("M", *self.point(start, height), "L", *self.point(end, height))

    def band(self, band: Band) -> str:
        """The outline of a strip on the board."""
        return path(
            "M",
            *self.point(band.start, band.low),
            "L",
            *self.point(band.end, band.low),
            "L",
            *self.point(band.end, band.high),
            "L",
            *self.point(band.start, band.high),
            "Z",
        )

    def bent(self, over: Band, band: Band) -> str:
        """The outline of a strip that comes from the spine, where it runs as `over`."""
        return path(
            "M",
            *self._start(over.low),
            *self._bend(over.low, band.low),
            "L",
            *self.point(band.end, band.low),
            "L",
            *self.point(band.end, band.high),
            "L",
            *self.point(0, band.high),
            *self._unbend(over.high, band.high),
            "Z",
        )

    def _start(self, height: float) -> Point:
        return self.arc.point(self.side, height)

    def _bend(self, above: float, height: float) -> Parts:
        """The curve from the end of the spine into the joint."""
        return (
            "C",
            *self._first(above, height),
            *self._second(above, height),
            *self.point(0, height),
        )

    def _unbend(self, above: float, height: float) -> Parts:
        return ("C", *self._second(above, height), *self._first(above, height), *self._start(above))

    def _pull(self, above: float, height: float) -> float:
        """How far the ends of the curve pull on it: half the way between them."""
        x, y = self._start(above)
        a, b = self.point(0, height)
        return math.hypot(a - x, b - y) / 2

    def _first(self, above: float, height: float) -> Point:
        x, y = self._start(above)
        pull, turn = self._pull(above, height), self.arc.half
        return (x + self.side * pull * math.cos(turn), y + pull * math.sin(turn))

    def _second(self, above: float, height: float) -> Point:
        x, y = self.point(0, height)
        return (x, y - self._pull(above, height))


@dataclass(frozen=True, slots=True)
class Flat:
    """A flat sheet: `side` 1 for what lies above it, -1 for what lies below."""

    middle: float
    surface: float
    width: float
    side: int = 1

    def point(self, t: float, height: float) -> Point:
        """A place along the sheet, a height away from it."""
        return (self.middle + t * self.width / 2, self.surface - self.side * height)

    def line(self, start: float, end: float, height: float) -> str:
        """A line along the sheet at a height."""
        x, y = self.point(start, height)
        return path("M", x, y, "H", self.point(end, height)[0])

    def band(self, band: Band) -> str:
        """The outline of a strip along the sheet."""
        x, y = self.point(band.start, band.low)
        a, b = self.point(band.end, band.high)
        return path("M", x, y, "H", a, "V", b, "H", x, "Z")
