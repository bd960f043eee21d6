"""A volume lying open: two pages seen from above, the leaves under them, the fall of the gutter.

Offered under the GPL, version 3 or later, as well as under the project's LICENSE.
"""

from __future__ import annotations

import math

import numpy as np

from tests.renders import bench, blender
from tests.renders.paint import Array, Field, rgb


class Page(Field):
    """One page of an opening; `out` is the distance from the gutter in mm, `side` -1 left, 1 right."""

    def __init__(self, side: int, wide: float, tall: float, px: float) -> None:
        super().__init__(wide, tall, px, x0=0 if side > 0 else -wide)
        self.side, self.out = side, np.abs(self.x)
        self.edge = np.minimum(wide - self.out, tall / 2 - np.abs(self.y))
        self.lost = np.zeros(self.shape, bool)

    def across(self, share: float) -> float:
        """A place on the page, by its share of the width from the left edge."""
        return self.left + self.width * share

    def shade_gutter(self, dirt: float = 0.25) -> None:
        """Dust and old handling along the gutter."""
        self.tint(np.exp(-self.out / 7) * dirt, rgb(0.38, 0.29, 0.19))

    def build(
        self, top: float, *, arch: float = 0, dip: float = 7, every: int = 3, waves: float = 0
    ) -> Array:
        """Hand the page to Blender at a height; gives the height of every point."""
        far = self.out / self.width
        z = (
            top
            + arch * np.sin(np.pi * np.clip(far, 0, 1)) ** 0.9
            - dip * np.exp(-((self.out / 9) ** 2))
        )
        z = z + waves * self.noise(60, 700 + self.side, 2) * np.clip(far * 2, 0, 1)
        cut = (slice(None, None, every),) * 2
        self.there = ~self.lost
        points = np.stack([self.x, self.y, z + self.height], -1)[cut]
        blender.mesh(
            "page",
            points,
            blender.painted("page", self, relief_mm=0.15, gloss=0.2),
            there=self.there[cut],
        )
        return z


def stack(
    side: int, wide: float, tall: float, top: float, colour: tuple, *, inset: float = 0.4
) -> None:
    """The leaves below a page, stepping out a little towards the fore-edge as they do.

    At the gutter they keep below the fall of the page.
    """
    material = blender.plain("leaves", colour, rough=0.9, bumps_mm=0.4, uneven=0.12)
    layers = max(1, int(top / 4))
    for number in range(layers):
        low, high = (
            top * number / layers,
            top * (number + 1) / layers - (1.2 if number == layers - 1 else 0.15),
        )
        out = wide - inset + 0.5 * (layers - 1 - number) % 1.1
        near = 2.0 + 9 * math.sqrt(max(0.0, math.log(9 / (top - high + 0.5))))
        box = (near, out) if side > 0 else (-out, -near)
        half = tall / 2 - inset - 0.3 * (number % 2)
        blender.box("leaves", box, (-half, half), (low, high), material, round_mm=0.15)


def stage(wide: float, tall: float, top: float, *, after: bool, light: str = "top") -> None:
    """Ground, targets, lens and light for an opening of two pages, each `wide` mm."""
    bench.ground(2200)
    bench.from_above(tall, 2 * wide, top, after=after, light=light, left=-wide - 6)
