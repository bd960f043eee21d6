"""A flat sheet on the bench: its form, its damage, its mends, and how it lies.

Offered under the GPL, version 3 or later, as well as under the project's LICENSE.
"""

from __future__ import annotations

from copy import copy

import numpy as np

from tests.renders import bench, blender, surfaces
from tests.renders.paint import Array, Field, fibres, rgb, step


class Sheet(Field):
    """A sheet of paper or parchment lying on the bench; `lift` is how far it stands off it."""

    def __init__(self, wide: float, tall: float, px: float, *, rough_edge: float = 0.25) -> None:
        super().__init__(wide, tall, px)
        small, fine = self.noise(18, 902), self.noise(3, 903)
        self.edge = self.depth(-wide / 2, wide / 2, -tall / 2, tall / 2)
        self.edge = self.edge + rough_edge * (1.2 * small + 0.6 * fine) - rough_edge
        self.lift = self.flat() + 0.5
        self.lost = self.edge < 0

    def lose(self, where: Array) -> None:
        """Take away what lies where `where` is over nought."""
        self.lost = self.lost | (where > 0)

    def fold(self, distance: Array, *, sharp: float = 1.0, dirt: float = 0.5) -> None:
        """A fold: a line of dirt and a ridge."""
        self.tint(np.exp(-((distance / 0.5) ** 2)) * dirt, rgb(0.45, 0.34, 0.22))
        self.lift = self.lift + sharp * np.exp(-np.abs(distance) / 5)

    def tear(self, distance: Array, along: Array, *, gap: float, rise: float) -> None:
        """An open tear: `distance` from its line, `along` 1 at its mouth and 0 at its end."""
        open_ = np.clip(along, 0, 1)
        self.lose(open_ * gap * 0.5 - np.abs(distance) - 1e-3)
        self.lift = self.lift + rise * np.exp(-np.abs(distance) / 10) * open_ * (distance > 0)

    def patch(
        self, depth: Array, colour: Array, *, cover: float = 0.55, seed: int = 31, wavy: float = 0.5
    ) -> Array:
        """A strip of thin Japanese paper, `depth` mm inside its torn edge; gives its mask."""
        mask = step(
            depth + wavy * (0.9 * self.noise(4, seed) + 0.5 * self.noise(1, seed + 1)), -0.5, 0.6
        )
        long = fibres(self, 0.3, 5, seed)
        self.tint(
            mask * np.clip(cover + 0.45 * long, 0, 0.9),
            colour * (1 + 0.02 * self.noise(3, seed))[..., None],
        )
        self.relief = self.relief + mask * 0.1 * long
        self.height = self.height + 0.04 * mask
        return mask

    def cockle(self, amount: float, seed: int = 77, cell: float = 70) -> None:
        """Let it stand off the bench in waves."""
        self.lift = self.lift + amount * np.clip(self.noise(cell, seed, 3) + 0.3, 0, 2)

    def ageing(self, colour: Array, wide: float, strength: float) -> None:
        """Darker towards the edges."""
        self.tint(
            step(wide - self.edge + self.noise(18, 911) * wide * 0.3, 0, wide) * strength, colour
        )

    def cut(self, x0: float, x1: float, y0: float, y1: float) -> Sheet:
        """A part of it, to be seen close up; the middle of its height comes to y = 0."""
        rows = slice(*(np.searchsorted(self.y[:, 0], (y0, y1))))
        columns = slice(*(np.searchsorted(self.x[0], (x0, x1))))
        part = copy(self)
        for name, value in vars(self).items():
            if isinstance(value, np.ndarray) and value.shape[:2] == self.shape:
                setattr(part, name, value[rows, columns])
        part.y, part.shape = part.y - (y0 + y1) / 2, part.colour.shape[:2]
        part.left, part.width, part.tall = x0, x1 - x0, y1 - y0
        return part

    def build(
        self, every: int = 3, *, fray: Array | None = None, glows: bool = False
    ) -> blender.Thing:
        """Hand the sheet to Blender, with a rim of pale fibres at torn edges.

        `glows`: its colours are light that comes through it, or out of it.
        """
        rim = self.soft(self.lost.astype(np.float32), 0.6)
        pale = rgb(0.88, 0.82, 0.70) if fray is None else fray
        self.tint(np.clip(rim * 1.2, 0, 0.6) * ~self.lost, pale)
        self.there = ~self.lost
        cut = (slice(None, None, every),) * 2
        points = np.stack([self.x, self.y, self.lift + self.height], -1)[cut]
        glow = self.colour if glows else None
        material = blender.painted("sheet", self, relief_mm=0.12, gloss=0.2, glow=glow)
        return blender.mesh("sheet", points, material, there=self.there[cut])

    def under(
        self, colour: Array, *, margin: float = 0, name: str = "lining", seed: int = 51
    ) -> None:
        """What lies under it: a lining or fills of another paper, seen through its losses."""
        below = Field(self.width + 2 * margin, self.tall + 2 * margin, 3)
        below.colour, below.relief = surfaces.old_paper(below, seed, colour)
        points = np.stack([below.x, below.y, 0.25 + 0 * below.x], -1)[::4, ::4]
        blender.mesh(name, points, blender.painted(name, below, relief_mm=0.1, gloss=0.2))


def stage(sheet: Field, *, after: bool, light: str = "top", room: float = 1.0) -> None:
    """Ground, targets, lens and light for a sheet seen from above."""
    if light == "table":
        half, high = sheet.width / 2 + 30, sheet.tall / 2 + 24
        bench.table((-half - (58 if sheet.tall < 520 else 98), half), (-high, high))
    else:
        bench.ground(2200)
    bench.from_above(
        sheet.tall * room,
        sheet.width,
        0.05,
        after=after,
        light=light,
        left=-sheet.width / 2 - 12 * (room - 1),
    )
