"""Surfaces of paper, leather, cloth and skin, made from seeded noise with Pillow alone."""

from __future__ import annotations

import itertools
import random
from collections.abc import Sequence

from PIL import Image, ImageChops, ImageDraw, ImageFilter, ImageOps

Size = tuple[int, int]
Colour = tuple[int, int, int]
Points = Sequence[tuple[float, float]]

SMOOTH = Image.Resampling.BICUBIC
FINE = Image.Resampling.LANCZOS


def grain(size: Size, seed: int, cell: float, swing: float = 1.0) -> Image.Image:
    """Grey noise about 128 whose spots are about `cell` pixels wide."""
    small = (max(2, round(size[0] / cell) + 2), max(2, round(size[1] / cell) + 2))
    data = random.Random(seed).randbytes(small[0] * small[1])
    noise = Image.frombytes("L", small, data).resize(size, SMOOTH)
    return levels(noise, swing)


def levels(image: Image.Image, swing: float) -> Image.Image:
    """The same grey picture with its distance from 128 multiplied."""
    table = [max(0, min(255, round(128 + (value - 128) * swing))) for value in range(256)]
    return image.point(table)


def clouds(size: Size, seed: int, cell: float, swing: float = 1.0, rough: int = 3) -> Image.Image:
    """Noise of several sizes laid over one another, from `cell` pixels downwards."""
    whole = grain(size, seed, cell)
    for step in range(1, rough):
        whole = Image.blend(whole, grain(size, seed + step, cell / 3**step), 0.36)
    return levels(whole, swing)


def tinted(grey: Image.Image, dark: Colour, mid: Colour, light: Colour) -> Image.Image:
    """A grey picture in colours: black, middle grey and white become these three."""
    return ImageOps.colorize(grey, dark, light, mid)


def around(mid: Colour, spread: int) -> tuple[Colour, Colour, Colour]:
    """A colour with a darker and a lighter one beside it."""
    low = tuple(max(0, c - spread) for c in mid)
    high = tuple(min(255, c + round(spread * 0.8)) for c in mid)
    return (low[0], low[1], low[2]), mid, (high[0], high[1], high[2])


def shaded(image: Image.Image, shade: Image.Image) -> Image.Image:
    """A picture under a grey shade in which 128 changes nothing."""
    return ImageChops.soft_light(image, Image.merge("RGB", (shade,) * 3))


def relief(height: Image.Image, reach: int, gain: float) -> Image.Image:
    """The shade that light from the upper left throws over a grey height map."""
    moved = ImageChops.offset(height, reach, reach)
    return ImageChops.subtract(height, moved, scale=1 / gain, offset=128)


def slope(size: Size, stops: Points, *, down: bool = False) -> Image.Image:
    """A grey gradient through stops (place from 0 to 1, grey), across or down the picture."""
    count = 256
    values = bytes(_between(stops, index / (count - 1)) for index in range(count))
    strip = Image.frombytes("L", (1, count) if down else (count, 1), values)
    return strip.resize(size, SMOOTH)


def _between(stops: Points, place: float) -> int:
    for (low, first), (high, second) in itertools.pairwise(stops):
        if place <= high:
            part = (place - low) / (high - low)
            return round(first + (second - first) * part * part * (3 - 2 * part))
    return round(stops[-1][1])


def mix(below: Image.Image, above: Image.Image, mask: Image.Image) -> Image.Image:
    """One picture over another where a grey mask is light."""
    return Image.composite(above, below, mask)


def stained(image: Image.Image, mask: Image.Image, colour: Colour, strength: float) -> Image.Image:
    """A picture multiplied with a colour where a mask is light."""
    dyed = ImageChops.multiply(image, Image.new("RGB", image.size, colour))
    return mix(image, dyed, mask.point([round(v * strength) for v in range(256)]))


def polygon(size: Size, points: Points, soft: float = 0.6) -> Image.Image:
    """A mask of a polygon with clean, slightly soft edges."""
    mask = Image.new("L", (size[0] * 2, size[1] * 2))
    ImageDraw.Draw(mask).polygon([(x * 2, y * 2) for x, y in points], fill=255)
    return mask.resize(size, FINE).filter(ImageFilter.GaussianBlur(soft))


def box(size: Size, edges: tuple[float, float, float, float], soft: float = 0.6) -> Image.Image:
    """A mask of a rectangle: left, top, right, bottom."""
    left, top, right, bottom = edges
    return polygon(size, [(left, top), (right, top), (right, bottom), (left, bottom)], soft)


def strokes(size: Size, lines: Sequence[Points], width: float, soft: float = 0.5) -> Image.Image:
    """A mask of lines through points, with round ends."""
    mask = Image.new("L", (size[0] * 2, size[1] * 2))
    draw = ImageDraw.Draw(mask)
    half = width
    for line in lines:
        draw.line(
            [(x * 2, y * 2) for x, y in line], fill=255, width=round(width * 2), joint="curve"
        )
        for x, y in (line[0], line[-1]):
            draw.ellipse((x * 2 - half, y * 2 - half, x * 2 + half, y * 2 + half), fill=255)
    return mask.resize(size, FINE).filter(ImageFilter.GaussianBlur(soft))


def eroded(mask: Image.Image, seed: int, cell: float, amount: float) -> Image.Image:
    """A mask whose edge is worn and torn: blurred, roughened with noise, cut again."""
    soft = mask.filter(ImageFilter.GaussianBlur(amount))
    rough = clouds(mask.size, seed, cell, 1.6)
    sum_ = ImageChops.add(soft, rough, scale=2)
    cut = sum_.point([255 if value > 126 else 0 for value in range(256)])
    within = ImageChops.multiply(cut, mask.point([255 if v > 8 else 0 for v in range(256)]))
    return within.filter(ImageFilter.GaussianBlur(0.8))


def spots(size: Size, seed: int, cell: float, share: float, soft: float = 1.0) -> Image.Image:
    """A mask of irregular spots that cover about a share (0 to 1) of the picture."""
    noise = clouds(size, seed, cell, 1.5)
    ranked, total, cut = noise.histogram(), 0, 255
    while cut > 0 and total < share * size[0] * size[1]:
        total += ranked[cut]
        cut -= 1
    return noise.point([255 if v > cut else 0 for v in range(256)]).filter(
        ImageFilter.GaussianBlur(soft)
    )


def jagged(start: tuple[float, float], end: tuple[float, float], seed: int, swing: float) -> Points:
    """Points of an irregular line, as a crack or a tear runs."""
    dice = random.Random(seed)
    count = max(3, round((abs(end[0] - start[0]) + abs(end[1] - start[1])) / 14))
    found = []
    for index in range(count + 1):
        part = index / count
        x = start[0] + (end[0] - start[0]) * part + dice.uniform(-swing, swing)
        y = start[1] + (end[1] - start[1]) * part + dice.uniform(-swing, swing)
        found.append((x, y))
    return found


# --- materials ---------------------------------------------------------------------------------


def paper(size: Size, seed: int, mid: Colour, spread: int = 26) -> Image.Image:
    """Paper: fine tooth, cloudy formation."""
    base = tinted(clouds(size, seed, 90, 0.5), *around(mid, spread))
    return shaded(base, grain(size, seed + 9, 1.8, 0.08))


def leather(size: Size, seed: int, mid: Colour, wear: float = 0.6) -> Image.Image:
    """Smooth leather: a fine grain in relief and cloudy colour."""
    base = tinted(clouds(size, seed, 70, wear), *around(mid, 46))
    skin = relief(grain(size, seed + 5, 3.2).filter(ImageFilter.GaussianBlur(1)), 1, 0.9)
    return shaded(base, levels(skin, 0.55))


def cloth(size: Size, seed: int, mid: Colour, pitch: int = 4, depth: float = 0.32) -> Image.Image:
    """Plain-woven cloth with slubs: threads over and under."""
    tile = Image.new("L", (pitch * 2, pitch * 2), 104)
    draw = ImageDraw.Draw(tile)
    draw.rectangle((0, 1, pitch - 1, pitch - 2), fill=168)
    draw.rectangle((pitch + 1, pitch, pitch * 2 - 2, pitch * 2 - 1), fill=156)
    weave = Image.new("L", size)
    for x in range(0, size[0], pitch * 2):
        for y in range(0, size[1], pitch * 2):
            weave.paste(tile, (x, y))
    slubs = Image.blend(_drawn(size, seed, 90, 3), _drawn(size, seed + 1, 3, 90), 0.5)
    base = tinted(levels(slubs, 0.6), *around(mid, 34))
    soft = levels(weave.filter(ImageFilter.GaussianBlur(0.7)), depth * 2)
    return shaded(base, Image.blend(soft, grain(size, seed + 2, 2, 0.3), 0.3))


def _drawn(size: Size, seed: int, wide: float, high: float) -> Image.Image:
    """Noise drawn out in one direction."""
    small = (max(2, round(size[0] / wide) + 2), max(2, round(size[1] / high) + 2))
    data = random.Random(seed).randbytes(small[0] * small[1])
    return Image.frombytes("L", small, data).resize(size, SMOOTH)


def brushed(size: Size, seed: int, wide: float, high: float, swing: float) -> Image.Image:
    """Grey noise about 128, drawn out `wide` by `high` pixels."""
    return levels(_drawn(size, seed, wide, high), swing)


def marbled(size: Size, seed: int) -> Image.Image:
    """Marbled paper of the shell kind: rounded spots in veins of other colours."""
    field = Image.blend(grain(size, seed, 34), grain(size, seed + 1, 15), 0.42)
    bands = [
        (0, (38, 44, 52)),
        (84, (52, 66, 78)),
        (100, (146, 132, 104)),
        (108, (84, 52, 46)),
        (122, (62, 80, 92)),
        (134, (74, 92, 102)),
        (150, (154, 142, 114)),
        (158, (58, 72, 84)),
        (182, (44, 54, 66)),
        (255, (104, 110, 110)),
    ]
    channels = [field.point(_bands(bands, index)) for index in range(3)]
    ink = Image.merge("RGB", channels).filter(ImageFilter.GaussianBlur(1.3))
    return shaded(ink, clouds(size, seed + 4, 60, 0.35))


def _bands(bands: Sequence[tuple[int, Colour]], channel: int) -> list[int]:
    found = []
    for value in range(256):
        low = max(index for index, (start, _) in enumerate(bands) if start <= value)
        high = min(low + 1, len(bands) - 1)
        span = max(1, bands[high][0] - bands[low][0])
        part = min(1.0, (value - bands[low][0]) / span * 1.6)
        first, second = bands[low][1][channel], bands[high][1][channel]
        found.append(round(first + (second - first) * part))
    return found


def parchment(size: Size, seed: int, mid: Colour) -> Image.Image:
    """Parchment: creamy and translucent, with follicles and darker clouds."""
    base = tinted(clouds(size, seed, 140, 0.8), *around(mid, 34))
    hair = spots(size, seed + 3, 3.4, 0.035, 0.7)
    veins = strokes(
        size,
        [
            jagged((0, size[1] * k), (size[0], size[1] * (k + 0.2)), seed + 11, 9)
            for k in (0.1, 0.45, 0.7)
        ],
        2,
        3,
    )
    base = stained(base, hair, (196, 170, 130), 0.35)
    base = stained(base, veins, (226, 206, 170), 0.4)
    return shaded(base, grain(size, seed + 8, 2.2, 0.10))
