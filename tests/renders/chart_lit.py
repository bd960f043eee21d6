"""The chart of Quernmouth Roads on the light table: its mould, its watermark, the strips behind it.

Offered under the GPL, version 3 or later, as well as under the project's LICENSE.
"""

from __future__ import annotations

import numpy as np
from PIL import ImageDraw, ImageFont

from tests.renders.paint import SERIF, Field, rgb
from tests.renders.sheet import Sheet

LIT = rgb(0.83, 0.70, 0.48)
"""The paper as light comes through it."""
MARK = (-250.0, 222.0)
"""Where the watermark is, from the front: no strip reaches it."""


def through(sheet: Sheet) -> None:
    """What the mould left: clouds of fibre, chain lines, and a posthorn with a name and a year."""
    clouds = 0.045 * sheet.noise(6, 95, 3) + 0.03 * sheet.noise(2, 96, 2)
    chains = np.exp(-((((sheet.x + 9) % 26 - 13) / 0.5) ** 2))
    near = np.exp(-((((sheet.x + 9) % 26 - 13) / 3.5) ** 2))
    wires = np.sin(2 * np.pi * sheet.y / 1.05)
    light = 1 + clouds + 0.07 * chains - 0.035 * near + 0.018 * wires
    mark = sheet.soft(sheet.drawn(_watermark), 0.35)
    sheet.colour = np.clip(sheet.colour * (light + 0.13 * mark)[..., None], 0, 1)


def _watermark(pen: ImageDraw.ImageDraw, on: Field) -> None:
    """A posthorn hung by its cord, R T below it and 1796, as the wires were bent."""
    cx, cy, wide = MARK[0], MARK[1], max(2, int(1.1 * on.px))

    def path(points: list) -> None:
        pen.line([on.at(cx + x, cy + y) for x, y in points], fill=255, width=wide, joint="curve")

    turns = np.linspace(0.15 * np.pi, 2.05 * np.pi, 50)
    for radius in (17.0, 22.5):
        path([(radius * np.cos(a), radius * np.sin(a)) for a in turns])
    path([(17, 3), (26, -13), (36, -19)])
    path([(22.5, 5), (31, -3), (40, -4)])
    path([(36, -19), (38, -12), (40, -4)])
    path([(15, 8), (0, 16), (-24, 23), (-32, 27), (-29, 31), (-22, 29), (2, 22), (20, 11)])
    for side in (-1, 1):
        path([(side * 14, 19), (side * 18, 36), (side * 6, 50), (0, 42), (side * -2, 36)])
    for words, y, size in (("R T", -42, 22), ("1796", -66, 17)):
        font = ImageFont.truetype(SERIF, size * on.px)
        pen.text(on.at(cx, cy + y), words, fill=235, font=font, anchor="mm")


def strips_behind(sheet: Sheet, strips: tuple) -> None:
    """The strips on the back, dark against the light; a split that they bridge stays dark too."""
    for x0, x1, y0, y1 in strips:
        mask = sheet.inside(-x1, -x0, y0, y1, 0.4)
        open_ = sheet.lost & (mask > 0.5)
        sheet.tint(mask * 0.62, rgb(0.34, 0.21, 0.10))
        sheet.tint(open_ * 0.8, rgb(0.62, 0.40, 0.19))
        sheet.lost = sheet.lost & ~open_
