"""Contrast of two colours as people see it, and a shade of a colour that can be read."""

from __future__ import annotations

from collections.abc import Collection

Rgb = tuple[int, int, int]

TEXT = 4.5
"""The least contrast of text with its ground. Source: W3C, WCAG 2.2, success criterion 1.4.3."""

_BLACK: Rgb = (0, 0, 0)
_WHITE: Rgb = (255, 255, 255)
_SHADES = 64


def luminance(colour: Rgb) -> float:
    """Relative luminance, 0 for black to 1 for white. Source: W3C, WCAG 2.2, its definition."""
    red, green, blue = (_linear(part / 255) for part in colour)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def _linear(part: float) -> float:
    return part / 12.92 if part <= 0.04045 else float(((part + 0.055) / 1.055) ** 2.4)


def contrast(one: Rgb, other: Rgb) -> float:
    """Contrast ratio, 1 to 21. Source: W3C, WCAG 2.2, its definition."""
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def readable(colour: Rgb, grounds: Collection[Rgb]) -> Rgb:
    """The shade nearest to a colour whose text can be read on every ground.

    On light grounds it gets darker, on dark ones lighter; a colour that can be read stays.
    """
    bright = all(luminance(ground) > 0.18 for ground in grounds)
    end = _BLACK if bright else _WHITE
    for step in range(_SHADES + 1):
        shade = _mixed(colour, end, step)
        if all(contrast(shade, ground) >= TEXT for ground in grounds):
            return shade
    return end


def _mixed(colour: Rgb, end: Rgb, step: int) -> Rgb:
    red, green, blue = (
        (own * (_SHADES - step) + far * step) // _SHADES
        for own, far in zip(colour, end, strict=True)
    )
    return red, green, blue
