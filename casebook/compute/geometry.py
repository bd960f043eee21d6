"""The curve of a spine: its arc from the width across the back and the rise of its curve.

Source of every formula here: Machinery's Handbook, 31st ed., segments of circles.
"""

from __future__ import annotations

import math
from fractions import Fraction

from casebook.compute.figures import Figure, merged, nearest

_FLAT = 10**9
"""With a rise this many times smaller than the chord, arc and chord agree to 17 digits."""

_STEEP = Fraction(10**18)
"""Beyond this ratio the angle is a full circle to the last digit of a float."""


def radius(chord: Fraction, rise: Fraction) -> Fraction:
    """Radius of the circle, r = (c² + 4h²) / 8h, in the unit of the inputs; the rise not 0."""
    return (chord * chord + 4 * rise * rise) / (8 * rise)


def angle(chord: Fraction, rise: Fraction) -> float:
    """Angle of the arc in radians, 4·atan(2h/c); over π where the rise exceeds half the chord."""
    if not chord:
        return 2 * math.pi
    return 4 * math.atan(float(min(2 * rise / chord, _STEEP)))


def arc(chord: Fraction, rise: Fraction) -> Fraction:
    """Length of the arc, r times the angle, in the unit of the inputs; flat (h = 0), the chord."""
    if rise * _FLAT <= chord:
        return chord
    return radius(chord, rise) * Fraction(angle(chord, rise))


def roundness(chord: Fraction, rise: Fraction) -> Fraction | None:
    """Rise over chord; about 0.289 for a third of a circle. None without a chord.

    Source of the third: Roberts & Etherington, "rounding".
    """
    return rise / chord if chord else None


def spine_arc(width: Figure, rise: Figure) -> Figure:
    """The arc in whole µm from width and rise in µm, with the doubts of both."""
    length = nearest(arc(Fraction(width.value), Fraction(rise.value)))
    return Figure(length, merged((*width.doubts, *rise.doubts)))
