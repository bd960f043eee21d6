"""One photo laid over another: the similarity of the plane that two points on each give.

A similarity turns, scales and moves. Written with complex numbers it is z ↦ t·z + s, and two points
and their images give it in closed form: t = (q₂ − q₁) / (p₂ − p₁), s = q₁ − t·p₁. Exact fractions.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction

from casebook.model.base import items
from casebook.model.marks import Fit
from casebook.model.photos import Image
from casebook.values.points import Pair


@dataclass(frozen=True, slots=True)
class Similarity:
    """z ↦ turn·z + shift, each a complex number given by its two parts."""

    turn: Pair
    shift: Pair

    def __call__(self, point: Pair) -> Pair:
        """Where a point comes to lie."""
        turned = _times(self.turn, point)
        return turned[0] + self.shift[0], turned[1] + self.shift[1]

    def back(self) -> Similarity:
        """The similarity that undoes this one."""
        turn = _over((Fraction(1), Fraction(0)), self.turn)
        x, y = _times(turn, self.shift)
        return Similarity(turn, (-x, -y))

    @property
    def scale(self) -> float:
        """How many times larger it makes things."""
        return math.hypot(float(self.turn[0]), float(self.turn[1]))

    @property
    def degrees(self) -> float:
        """How far it turns them, clockwise as seen on a screen, whose y runs down."""
        return math.degrees(math.atan2(float(self.turn[1]), float(self.turn[0])))


def similarity(here: tuple[Pair, Pair], there: tuple[Pair, Pair]) -> Similarity | None:
    """What takes both points `here` to those `there`; None where two of them are one point."""
    across, over = _from(*here), _from(*there)
    if not any(across) or not any(over):
        return None
    turn = _over(over, across)
    x, y = _times(turn, here[0])
    return Similarity(turn, (there[0][0] - x, there[0][1] - y))


def fitted(fit: Fit, here: Image, there: Image) -> Similarity | None:
    """What a record's `fit` says, in pixels of both upright originals; None where it says less."""
    points = [one.on(here.width, here.height) for one in items(fit.here)]
    others = [one.on(there.width, there.height) for one in items(fit.there)]
    if len(points) != 2 or len(others) != 2:
        return None
    return similarity((points[0], points[1]), (others[0], others[1]))


def matrix(found: Similarity, here: Image, there: Image) -> tuple[Fraction, ...]:
    """The six numbers a b c d e f of a page's matrix that lays one picture over another.

    Both are shown equally wide with their left upper corners together; the matrix turns round that
    corner, and e and f are shares of the width.
    """
    wider = Fraction(here.width, there.width)
    a, b = (part * wider for part in found.turn)
    x, y = (part / there.width for part in found.shift)
    return a, b, -b, a, x, y


def _from(one: Pair, other: Pair) -> Pair:
    return other[0] - one[0], other[1] - one[1]


def _times(one: Pair, other: Pair) -> Pair:
    (a, b), (c, d) = one, other
    return a * c - b * d, a * d + b * c


def _over(one: Pair, other: Pair) -> Pair:
    """One complex number divided by another, which is not 0."""
    (a, b), (c, d) = one, other
    square = c * c + d * d
    return (a * c + b * d) / square, (b * c - a * d) / square
