"""What things are made of, painted on fields: leather, marbled paper, cloth, parchment, writing.

Offered under the GPL, version 3 or later, as well as under the project's LICENSE.
"""

from __future__ import annotations

import itertools
import math

import numpy as np
from PIL import ImageDraw, ImageFont

from tests.renders.paint import SERIF, Array, Field, mix, noise, resized, rgb, step

CALF, FLESH, BOARD = rgb(0.36, 0.205, 0.115), rgb(0.62, 0.43, 0.28), rgb(0.50, 0.42, 0.31)
GOLD = rgb(0.80, 0.60, 0.26)


def leather(
    field: Field, seed: int, colour: Array = CALF, *, worn: Array | None = None, dry: float = 1.0
) -> tuple[Array, Array]:
    """Colour and fine relief of a worn, mottled leather; `worn` from 0 to 1 where it is rubbed."""
    wide, small, fine = (
        field.noise(12, seed),
        field.noise(2.2, seed + 1),
        field.noise(0.5, seed + 2, 3),
    )
    paint = colour * (1 + 0.42 * wide + 0.24 * small + 0.13 * fine)[..., None]
    spots = (field.noise(0.9, seed + 3, 4) > 0.22).astype(np.float32)
    paint = mix(paint, paint * 0.62, field.soft(spots, 0.12) * 0.55)
    lines = step(0.07 - np.abs(field.noise(2.6, seed + 4, 4)), 0, 0.06)
    crack = lines * step(field.noise(16, seed + 5), -0.05, 0.35) * dry
    if worn is not None:
        rubbed = step(worn + 0.5 * small + 0.35 * fine, 0.35, 0.95) * 0.75 * dry
        pale = np.clip(colour * 1.5 + 0.03, 0, 1) * (1 + 0.12 * fine)[..., None]
        paint = mix(paint, pale, rubbed)
    paint = mix(paint, paint * 0.55, crack * 0.6)
    return np.clip(paint, 0, 1), -0.10 * crack + 0.02 * fine


MARBLE = (
    rgb(0.17, 0.24, 0.30), rgb(0.50, 0.13, 0.10), rgb(0.80, 0.68, 0.46), rgb(0.25, 0.29, 0.22),
    rgb(0.82, 0.76, 0.64), rgb(0.10, 0.12, 0.17), rgb(0.55, 0.36, 0.17),
)  # fmt: skip


def marbled(field: Field, seed: int, size: float = 0.7, palette: tuple = MARBLE) -> Array:
    """Marbled paper: drops of colour that push one another aside, each shift undone in turn.

    A drop of radius r at C sends P to C + (P − C)·√(1 + r²/|P − C|²).
    """
    random = np.random.default_rng(seed)
    coarse = Field(field.width, field.tall, min(field.px, 4.0), x0=field.left)
    x = coarse.x + 3.6 * coarse.noise(18, seed + 71, 3) + 0.35 * coarse.noise(2.8, seed + 72, 3)
    y = coarse.y + 3.6 * coarse.noise(18, seed + 73, 3) + 0.35 * coarse.noise(2.8, seed + 74, 3)
    paint, done = np.zeros((*coarse.shape, 3), np.float32), np.zeros(coarse.shape, bool)
    for cx, cy, radius, colour in reversed(_drops(coarse, random, size)):
        dx, dy = x - cx, y - cy
        square = dx * dx + dy * dy
        inside = (square < radius * radius) & ~done
        paint[inside], done = palette[colour], done | inside
        back = 1 - radius * radius / np.maximum(square, radius * radius + 1e-3)
        back = np.sqrt(np.clip(back, 0, 1))
        x, y = cx + dx * back, cy + dy * back
    paint[~done] = palette[0]
    return np.stack([resized(paint[..., k], field.shape) for k in range(3)], -1)


def _drops(field: Field, random: np.random.Generator, size: float) -> list[tuple]:
    """Vein drops, the ground drops that squeeze them, and a few spots on top."""
    share = min(field.width * field.tall / (130 * 208) / size**2, 2.2)
    kinds = (
        (650, 2.5, 5.5, 1.0, (1, 2, 2, 4, 3, 1, 6, 5)),
        (1500, 0.8, 5.0, 1.7, (0, 0, 0, 0, 5, 0)),
        (160, 0.3, 0.8, 2.0, (4, 2, 1)),
    )
    grow = size * math.sqrt(max(1.0, field.width * field.tall / (130 * 208) / size**2 / share))
    found = []
    for count, low, high, power, colours in kinds:
        for _ in range(int(count * share)):
            cx = field.left - 20 + (field.width + 40) * random.random()
            cy = (field.tall + 40) * (random.random() - 0.5)
            radius = grow * (low + (high - low) * random.random() ** power)
            found.append((cx, cy, radius, colours[random.integers(len(colours))]))
    return found


def weave(field: Field, pitch: float = 0.62, seed: int = 5) -> Array:
    """The threads of a plain weave, 0 in the gaps and 1 on top."""
    slow, quick = field.noise(16, seed), field.noise(3, seed + 1)
    across, up = field.x / pitch, field.y / pitch
    over = np.sin(2 * np.pi * up + 0.3 * quick) * np.sign(np.sin(np.pi * across))
    return np.maximum(over, 0) * 0.5 + 0.5 * np.abs(np.sin(2 * np.pi * across + 0.3 * slow))


def book_cloth(
    field: Field, colour: Array, seed: int, *, worn: Array, fade: float = 0.0
) -> tuple[Array, Array]:
    """Colour and relief of a publisher's cloth, rubbed pale where `worn` is high."""
    wide, small, fine = (
        field.noise(30, seed),
        field.noise(4, seed + 1),
        field.noise(0.6, seed + 2, 3),
    )
    ribs = weave(field, 0.9, seed)
    paint = colour * (1 + 0.10 * wide + 0.06 * small + 0.05 * fine + 0.10 * (ribs - 0.5))[..., None]
    pale = mix(paint, np.ones_like(paint) * rgb(0.66, 0.60, 0.47), np.full(field.shape, 0.55))
    paint = mix(paint, pale, np.clip(fade * (0.75 + 0.3 * wide), 0, 1))
    rubbed = step(worn + 0.5 * small + 0.35 * fine, 0.4, 1.0)
    paint = mix(paint, pale * 1.05, rubbed * 0.7)
    return np.clip(paint, 0, 1), 0.16 * ribs * (1 - 0.6 * rubbed) + 0.05 * fine


def old_paper(field: Field, seed: int, colour: Array, *, laid: bool = False) -> tuple[Array, Array]:
    """Colour and relief of a bare paper, never one flat value; `laid` shows wires and chains."""
    wide, small, fine = field.noise(60, seed), field.noise(18, seed + 1), field.noise(3, seed + 2)
    paint = colour * (1 + 0.05 * wide + 0.03 * small + 0.02 * fine)[..., None]
    relief = 0.03 * fine
    if laid:
        wires = np.sin(2 * np.pi * field.y / 1.05)
        chains = np.exp(-((((field.x + 9) % 26 - 13) / 0.35) ** 2))
        paint = paint * (1 + 0.010 * wires + 0.014 * chains)[..., None]
        relief = relief + 0.05 * wires
    return np.clip(paint, 0, 1), relief


def parchment(field: Field, seed: int, colour: Array) -> tuple[Array, Array]:
    """Colour and relief of parchment: veins, follicles in drifts, a handled gloss of its own."""
    wide, small, fine = (
        field.noise(45, seed),
        field.noise(7, seed + 1),
        field.noise(0.9, seed + 2, 3),
    )
    paint = colour * (1 + 0.09 * wide + 0.05 * small + 0.03 * fine)[..., None]
    veins = step(0.05 - np.abs(field.noise(34, seed + 3, 3)), 0, 0.05) * step(wide, -0.1, 0.4)
    paint = mix(paint, paint * 0.86, veins * 0.5)
    pores = (field.noise(0.8, seed + 4, 2) > 0.55) * step(field.noise(26, seed + 5, 3), 0.0, 0.35)
    paint = mix(paint, paint * 0.72, pores * 0.45)
    dirt = step(field.noise(22, seed + 6) + 0.4 * small, 0.1, 0.7)
    paint = mix(paint, paint * rgb(0.78, 0.70, 0.58), dirt * 0.5)
    return np.clip(paint, 0, 1), 0.05 * fine - 0.1 * pores


def wood(field: Field, seed: int, colour: Array) -> tuple[Array, Array]:
    """Colour and relief of quarter-sawn oak, its grain along y."""
    bent = field.x + 2.2 * noise(field.shape, 60 * field.px, seed, 3)
    stretched = resized(
        noise((max(8, field.shape[0] // 14), field.shape[1]), 0.9 * field.px, seed + 1, 4),
        field.shape,
    )
    rings = np.sin(2 * np.pi * (bent / 3.1 + 0.35 * stretched)) * 0.5 + 0.5
    pores = step(stretched, 0.18, 0.5)
    rays = step(
        resized(
            noise((field.shape[0] // 5, field.shape[1]), 3 * field.px, seed + 2, 3), field.shape
        ),
        0.3,
        0.5,
    )
    wide = field.noise(40, seed + 3)
    paint = colour * (0.86 + 0.20 * rings + 0.12 * wide)[..., None]
    paint = mix(paint, paint * 0.55, pores * 0.6)
    paint = mix(paint, paint * 1.22, rays * 0.35)
    return np.clip(paint, 0, 1), 0.25 * rings * 0.4 - 0.5 * pores


def printed(field: Field, seed: int, words: str, *, size: float = 2.7, x0: float = -1e9) -> Array:
    """Lines of print over the whole field."""
    random, vocabulary = np.random.default_rng(seed), words.split()

    def draw(pen: ImageDraw.ImageDraw, on: Field) -> None:
        font = ImageFont.truetype(SERIF, size * on.px)
        y = -size
        while y < on.tall * 1.02:
            x = -random.random() * 20 * on.px
            while x < on.shape[1]:
                word = vocabulary[random.integers(len(vocabulary))]
                pen.text((x, y * on.px), word, fill=255, font=font)
                x += pen.textlength(word + " ", font=font)
            y += size * 1.35

    return field.drawn(draw) * (0.75 + 0.35 * field.noise(1.4, seed + 9))


def written(
    field: Field, box: tuple[float, float, float, float], seed: int, *, size: float, lead: float = 2.6,
    ragged: float = 0.12,
) -> Array:  # fmt: skip
    """Lines of a running hand inside a box (x0, x1, y0, y1): strokes, not letters of a typeface."""
    random = np.random.default_rng(seed)

    def draw(pen: ImageDraw.ImageDraw, on: Field) -> None:
        x0, x1, y0, y1 = box
        y = y1 - size * lead * 0.6
        while y > y0:
            end = x1 - (x1 - x0) * ragged * random.random() * (2.5 if random.random() < 0.12 else 1)
            x = x0 + random.normal(0, size * 0.3)
            while x < end:
                x = _word(pen, on, random, x, y + random.normal(0, size * 0.06), size) + size * 0.85
            y -= size * lead

    return field.drawn(draw)


def _word(
    pen: ImageDraw.ImageDraw,
    on: Field,
    random: np.random.Generator,
    x: float,
    y: float,
    size: float,
) -> float:
    """One word as a chain of humps, loops and descenders, leaning to the right; gives its end."""
    points: list[tuple[float, float]] = [(x, y)]
    for _ in range(int(random.integers(2, 9))):
        kind, wide = random.random(), size * (0.55 + 0.35 * random.random())
        high = size * (0.9 + 0.2 * random.random())
        if kind < 0.22:
            high *= 2.1
        low = -size * 0.9 if 0.22 <= kind < 0.34 else 0
        for t in np.linspace(0, 1, 9)[1:]:
            up = (
                high * math.sin(math.pi * t)
                if t < 0.75
                else low * math.sin(math.pi * (t - 0.75) * 4)
            )
            points.append(
                (
                    x + wide * (t + 0.18 * math.sin(2 * math.pi * t)),
                    y + up * (1 + random.normal(0, 0.03)),
                )
            )
        x += wide
    lean = [on.at(px + 0.42 * (py - y), py) for px, py in points]
    dark = int(170 + 80 * random.random())
    for first, second in itertools.pairwise(lean):
        falling = second[1] > first[1]
        wide = max(1, round(size * on.px * (0.13 if falling else 0.055)))
        pen.line([first, second], fill=dark, width=wide)
    return x


def tideline(field: Field, distance: Array, colour: Array, strength: float = 1.0) -> None:
    """A stain whose edge is where `distance` (mm, negative inside) is nought, darkest at its rim."""
    small = field.noise(2.4, 917)
    rim = 0.5 * np.exp(-((distance / 0.8) ** 2)) + 0.25 * (distance < 0) * np.exp(
        np.minimum(distance, 0) / 3
    )
    body = step(-distance, 0, 14) * 0.2
    field.tint(np.clip((rim + body) * strength * (0.75 + 0.3 * small), 0, 0.9), colour)
