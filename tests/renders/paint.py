"""Paints surfaces in numpy: noise, strokes and text in mm, and a field on which layers are laid.

Stands outside the package and is offered under the GPL, version 3 or later, as well as under the
project's LICENSE, since the modules beside it work with Blender's. Nothing imports it.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

import numpy as np
from PIL import Image, ImageDraw, ImageFont

Array = np.ndarray
SANS, SERIF, BOLD, ITALIC = (
    "DejaVuSans.ttf",
    "DejaVuSerif.ttf",
    "DejaVuSerif-Bold.ttf",
    "LiberationSerif-Italic.ttf",
)


def rgb(*parts: float) -> Array:
    """A colour as sRGB from 0 to 1."""
    return np.array(parts, np.float32)


def step(value: Array, low: float, high: float) -> Array:
    """0 below `low`, 1 above `high`, smooth between."""
    t = np.clip((value - low) / (high - low), 0, 1)
    return t * t * (3 - 2 * t)


def line(distance: Array, half: float) -> Array:
    """A line of `half` the width, softened at its edges."""
    return step(half - np.abs(distance), -0.3 * half, 0.3 * half)


def mix(under: Array, over: Array | float, mask: Array) -> Array:
    """`over` on `under` where the mask says; colours and plain maps alike."""
    if under.ndim == 3:
        mask = mask[..., None]
    return under * (1 - mask) + over * mask


def blurred(values: Array, pixels: float) -> Array:
    """Gaussian blur; shrunk first where the blur is wide, which nobody can see."""
    if pixels > 12:
        h, w = values.shape
        small = resized(values, (max(8, int(h * 4 / pixels)), max(8, int(w * 4 / pixels))))
        return resized(blurred(small, 4), (h, w))
    reach = int(max(1, 3 * pixels))
    at = np.arange(-reach, reach + 1)
    weights = np.exp(-at * at / (2 * max(pixels, 1e-3) ** 2))
    weights = (weights / weights.sum()).astype(np.float32)
    h, w = values.shape
    padded = np.pad(values.astype(np.float32), reach, "edge")
    rows = sum(weights[i] * padded[i : i + h] for i in range(2 * reach + 1))
    return sum(weights[i] * rows[:, i : i + w] for i in range(2 * reach + 1))


def resized(values: Array, shape: tuple[int, int]) -> Array:
    """A map at another number of rows and columns."""
    image = Image.fromarray(values.astype(np.float32))
    return np.asarray(image.resize(shape[::-1], Image.Resampling.BICUBIC))


def one_noise(shape: tuple[int, int], cell: float, seed: int) -> Array:
    """Random values from -1 to 1 that change over `cell` pixels."""
    h, w = shape
    grid = np.random.default_rng(seed).random((int(h / cell) + 5, int(w / cell) + 5))
    box = (1, 1, 1 + w / cell, 1 + h / cell)
    image = Image.fromarray(grid.astype(np.float32))
    found = image.resize((w, h), Image.Resampling.BICUBIC, box=box)
    return np.asarray(found) * 2 - 1


def noise(
    shape: tuple[int, int], cell: float, seed: int, octaves: int = 5, gain: float = 0.55
) -> Array:
    """Noise at several scales, the widest `cell` pixels."""
    weight, amplitude = 0.0, 1.0
    total: Array = np.zeros(shape, np.float32)
    for octave in range(octaves):
        if cell < 1.01:
            break
        total = total + amplitude * one_noise(shape, cell, seed * 101 + octave)
        weight, amplitude, cell = weight + amplitude, amplitude * gain, cell / 2
    return total / max(weight, 1e-6)


class Field:
    """A surface in mm: `x` across and `y` up at every point, and what the layers have made of it.

    `colour` is sRGB, `height` mm above the form it is bent round, `relief` the finest bumps from
    -1 to 1, `grain` how much of a leather's grain, `there` whether the surface exists at all.
    """

    def __init__(self, width: float, height: float, px: float, x0: float | None = None) -> None:
        self.px, self.width, self.tall = px, width, height
        columns, rows = round(width * px), round(height * px)
        left = -width / 2 if x0 is None else x0
        across = (np.arange(columns, dtype=np.float32) + 0.5) / px + left
        up = (np.arange(rows, dtype=np.float32) + 0.5) / px - height / 2
        self.y, self.x = np.meshgrid(up, across, indexing="ij")
        self.left = left
        self.shape = (rows, columns)
        self.colour: Array = np.zeros((rows, columns, 3), np.float32)
        self.height, self.metal, self.relief, self.grain = (self.flat() for _ in range(4))
        self.rough: Array = self.flat() + 0.8
        self.there: Array = np.ones(self.shape, bool)

    def flat(self) -> Array:
        """A map of zeros."""
        return np.zeros(self.shape, np.float32)

    def noise(self, cell: float, seed: int, octaves: int = 5, gain: float = 0.55) -> Array:
        """Noise whose widest scale is `cell` mm."""
        return noise(self.shape, cell * self.px, seed, octaves, gain)

    def soft(self, values: Array, mm: float) -> Array:
        """A map blurred over so many mm."""
        return blurred(values, mm * self.px)

    def add(
        self,
        mask: Array,
        colour: Array,
        thick: float = 0.0,
        *,
        rough: float = 0.8,
        grain: float = 0.0,
        metal: float = 0.0,
        relief: Array | float = 0.0,
    ) -> None:
        """Lay a layer on: its colour, its thickness in mm, and how it takes the light."""
        self.tint(mask, colour)
        self.height = self.height + thick * mask
        self.rough = mix(self.rough, rough, mask)
        self.grain = mix(self.grain, grain, mask)
        self.metal = mix(self.metal, metal, mask)
        self.relief = mix(self.relief, relief, mask)

    def tint(self, mask: Array, colour: Array) -> None:
        """Change the colour alone."""
        self.colour = mix(self.colour, colour, np.clip(mask, 0, 1))

    def drape(self, mask: Array, mm: float, lift: float = 0.0) -> None:
        """Let what comes next lie over what is there as a sheet would, not in its hollows."""
        self.height = mix(self.height, self.soft(self.height, mm) + lift, mask)

    def drawn(self, draw: Callable[[ImageDraw.ImageDraw, Field], None]) -> Array:
        """What a call draws, as a mask; it draws with `field.at(x, y)` for its places."""
        image = Image.new("L", self.shape[::-1], 0)
        draw(ImageDraw.Draw(image), self)
        return np.asarray(image, np.float32)[::-1] / 255

    def at(self, x: float, y: float) -> tuple[float, float]:
        """The pixel of a drawing at a place in mm."""
        return (x - self.left) * self.px, (self.tall / 2 - y) * self.px

    def text(
        self,
        words: str,
        x: float,
        y: float,
        size: float,
        *,
        face: str = SERIF,
        turn: float = 0.0,
    ) -> Array:
        """Words centred on a place, `size` mm high; `turn` degrees against the clock."""
        font = ImageFont.truetype(face, max(4, size * self.px))
        box = [int(v) for v in font.getbbox(words)]
        label = Image.new("L", (box[2] + 8, box[3] + 8), 0)
        ImageDraw.Draw(label).text((4, 4), words, fill=255, font=font)
        label = label.rotate(turn, expand=True, resample=Image.Resampling.BICUBIC)
        whole = Image.new("L", self.shape[::-1], 0)
        cx, cy = self.at(x, y)
        whole.paste(label, (int(cx - label.width / 2), int(cy - label.height / 2)))
        return np.asarray(whole, np.float32)[::-1] / 255

    def inside(self, x0: float, x1: float, y0: float, y1: float, soft: float = 0.08) -> Array:
        """A rectangle as a mask."""
        return step(self.depth(x0, x1, y0, y1), -soft, soft)

    def depth(self, x0: float, x1: float, y0: float, y1: float) -> Array:
        """How far inside a rectangle each point lies, negative outside, in mm."""
        return np.minimum.reduce([self.x - x0, x1 - self.x, self.y - y0, y1 - self.y])


def fibres(
    field: Field, per_mm2: float, length: float, seed: int, *, along: float = 0.0, width: int = 1
) -> Array:
    """Long fibres of a tissue as curved strokes, 0 to 1; `along` is the share that runs up."""
    random = np.random.default_rng(seed)
    image = Image.new("L", (field.shape[1] * 2, field.shape[0] * 2), 0)
    draw = ImageDraw.Draw(image)
    for _ in range(int(per_mm2 * field.width * field.tall)):
        turn = math.pi / 2 if random.random() < along else random.random() * 2 * math.pi
        reach = length * field.px * 2 * (0.4 + random.random())
        draw.line(
            _stroke(random, image.size, turn, reach),
            fill=int(70 + 150 * random.random()),
            width=width,
        )
    return np.asarray(image.resize(field.shape[::-1], Image.Resampling.BOX), np.float32) / 255


def _stroke(
    random: np.random.Generator, size: Sequence[int], turn: float, reach: float
) -> list[tuple[float, float]]:
    x, y = random.random() * size[0], random.random() * size[1]
    turn += random.normal(0, 0.4)
    points = [(x, y)]
    for _ in range(9):
        turn += random.normal(0, 0.16)
        x, y = x + math.cos(turn) * reach / 9, y + math.sin(turn) * reach / 9
        points.append((x, y))
    return points
