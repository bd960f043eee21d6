"""The bench: grey ground, scale, grey target, crumbs, the window's light and the two usual views.

Offered under the GPL, version 3 or later; see LICENSE for the rest.
"""

from __future__ import annotations

import math

import numpy as np
from PIL import Image, ImageDraw, ImageFont

from tests.renders import blender
from tests.renders.paint import SANS, Field

GREYS = (95, 80, 65, 50, 35, 20)
"""CIE lightness of the target's six greys."""
COLOURS = (
    ("R", (178, 58, 52)), ("Y", (222, 178, 46)), ("G", (72, 132, 78)),
    ("B", (52, 86, 148)), ("S", (196, 150, 124)), ("T", (124, 88, 60)),
)  # fmt: skip
SCALE, TARGET, WEDGE = (156.0, 15.0), (88.0, 32.0), (88.0, 16.0)
DENSITIES = (0.1, 0.4, 0.7, 1.0, 1.3, 1.6)
"""Of the film for the light table: light let through is 10 to the power of minus the density."""
INK, WHITE = (25, 25, 27), (233, 232, 228)


def grey(lightness: float) -> int:
    """The sRGB value of a neutral of a CIE lightness. Source: CIE 15, L* by its definition."""
    light = ((lightness + 16) / 116) ** 3 if lightness > 8 else lightness / 903.3
    return round(255 * (1.055 * light ** (1 / 2.4) - 0.055))


def ground(far: float) -> None:
    """Grey card on the bench, curving up far behind."""
    rise = np.sin(np.linspace(0, np.pi / 2, 20))
    x = np.concatenate([np.linspace(-2600, far, 40), far + 260 * rise, np.full(5, far + 260)])
    bend = 260 * (1 - np.cos(np.linspace(0, np.pi / 2, 20)))
    z = np.concatenate([np.zeros(40), bend, np.linspace(300, 2600, 5)])
    y = np.linspace(-3200, 3200, 20)[:, None]
    points = np.stack(np.broadcast_arrays(x, y, z), -1)
    grey_card = blender.plain("bench", (0.60, 0.60, 0.605), rough=0.9, gloss=0.15, bumps_mm=0.9)
    blender.mesh("bench", points, grey_card)


DARK = {"table": (0.93, 0.95, 0.97), "ultraviolet": (0.16, 0.15, 0.42)}
"""Lights in a darkened room, with the colour in which a white scale is seen in them."""


def _card(
    name: str,
    size: tuple[float, float],
    image: Image.Image,
    rough: float,
    glow: tuple[float, float, float] | None = None,
) -> blender.Thing:
    picture = np.asarray(image, np.float32)[::-1] / 255
    field = Field(10, 10, 1)
    field.colour, shape = picture, picture.shape[:2]
    field.rough = np.full(shape, rough, np.float32)
    field.metal = field.grain = field.relief = np.zeros(shape, np.float32)
    x, y = (np.linspace(-side / 2, side / 2, 8) for side in size)
    xx, yy = np.meshgrid(x, y)
    own = None if glow is None else picture * np.array(glow, np.float32)
    material = blender.painted(name, field, gloss=0.25, glow=own)
    return blender.mesh(name, np.stack([xx, yy, 0 * xx], -1), material, corners=True)


def scale(
    x: float, y: float, z: float, turned: float, times: int = 1, light: str = "normal"
) -> None:
    """A rule of 150 mm (or `times` as long) on a white strip; `turned` in degrees."""
    holder = blender.holder("scale")
    face = _card("scale", SCALE, _scale_image(times), 0.45, DARK.get(light))
    blender.move(face, 0, 0, 0.9)
    white = blender.plain("strip", (0.9, 0.9, 0.88), rough=0.5)
    body = blender.box("strip", (-78, 78), (-7.5, 7.5), (0.05, 0.88), white, round_mm=0)
    _place(holder, (face, body), x, y, z, turned, times)


def target(x: float, y: float, z: float, turned: float, times: int = 1) -> None:
    """The card with six greys and six colours of known values, or its larger sister."""
    holder = blender.holder("target")
    face = _card("target", TARGET, _target_image(), 0.7)
    blender.move(face, 0, 0, 1.2)
    dark = blender.plain("card", (0.2, 0.2, 0.2), rough=0.7)
    body = blender.box("card", (-44, 44), (-16, 16), (0.05, 1.15), dark, round_mm=0)
    _place(holder, (face, body), x, y, z, turned, times)


def wedge(x: float, y: float, z: float, turned: float, times: int = 1) -> None:
    """A film of six grey steps, told by their optical density, to be lit from behind."""
    image = _wedge_image()
    face = _card("wedge", WEDGE, image, 0.4, glow=DARK["table"])
    holder = blender.holder("wedge")
    blender.move(face, 0, 0, 0.4)
    _place(holder, (face,), x, y, z, turned, times)


def _place(
    holder: blender.Thing, things: tuple, x: float, y: float, z: float, turned: float, times: int
) -> None:
    holder.scale = (times, times, 1)
    for thing in things:
        thing.parent = holder
    blender.move(holder, x, y, z)
    blender.turn(holder, z=turned)


def riser(x: tuple, y: tuple, top: float) -> None:
    """A grey block that brings scale and target up to the plane of what is photographed."""
    material = blender.plain("riser", (0.48, 0.48, 0.485), rough=0.9, bumps_mm=0.7)
    blender.box("riser", x, y, (0, top), material, round_mm=1.0)


def _scale_image(times: int, px: int = 16) -> Image.Image:
    image = Image.new("RGB", (round(SCALE[0] * px), round(SCALE[1] * px)), WHITE)
    draw, font = ImageDraw.Draw(image), ImageFont.truetype(SANS, 3.3 * px)
    for mm in range(151):
        long, x = 6.2 if mm % 10 == 0 else 4.6 if mm % 5 == 0 else 3.0, (3 + mm) * px
        draw.line([x, 0, x, long * px], fill=INK, width=max(3, px // 5))
        if mm % 10 == 0:
            draw.text((x, 8 * px), str(mm * times), fill=INK, font=font, anchor="mm")
    for block in range(15):
        box = [(3 + block * 10) * px, 10.8 * px, (13 + block * 10) * px, 12.8 * px]
        draw.rectangle(box, fill=WHITE if block % 2 else INK, outline=INK, width=2)
    small = ImageFont.truetype(SANS, 1.8 * px)
    draw.text((153 * px, 14 * px), "mm", fill=INK, font=small, anchor="rm")
    return image


def _target_image(px: int = 16, cell: int = 14) -> Image.Image:
    image = Image.new("RGB", (round(TARGET[0] * px), round(TARGET[1] * px)), (58, 58, 59))
    draw, font = ImageDraw.Draw(image), ImageFont.truetype(SANS, 2.3 * px)
    pale = (225, 225, 225)
    for at, (lightness, (letter, colour)) in enumerate(zip(GREYS, COLOURS, strict=True)):
        left, right = (2 + at * cell) * px + 8, (2 + (at + 1) * cell) * px - 8
        middle, value = (2 + (at + 0.5) * cell) * px, grey(lightness)
        draw.rectangle([left, 2 * px, right, 14 * px], fill=(value,) * 3)
        draw.text((middle, 16 * px), f"L*{lightness}", fill=pale, font=font, anchor="mm")
        draw.rectangle([left, 18 * px, right, 28 * px], fill=colour)
        draw.text((middle, 29.9 * px), letter, fill=pale, font=font, anchor="mm")
    return image


def _wedge_image(px: int = 16, cell: int = 14) -> Image.Image:
    image = Image.new("RGB", (round(WEDGE[0] * px), round(WEDGE[1] * px)), (247, 247, 247))
    draw, font = ImageDraw.Draw(image), ImageFont.truetype(SANS, 2.3 * px)
    for at, density in enumerate(DENSITIES):
        left, right = (2 + at * cell) * px, (2 + (at + 1) * cell) * px
        seen = round(255 * (1.055 * 10 ** (-density / 2.4) - 0.055))
        draw.rectangle([left, 2 * px, right, 11 * px], fill=(seen,) * 3)
        draw.text(((left + right) / 2, 13.4 * px), f"D {density}", fill=INK, font=font, anchor="mm")
    return image


def crumbs(count: int, x: tuple, y: tuple, colour: tuple, seed: int) -> None:
    """Crumbs and dust on the bench, thickest at the first end of `x`."""
    random = np.random.default_rng(seed)
    corners: list[tuple[float, float, float]] = []
    faces: list[tuple[int, ...]] = []
    for _ in range(count):
        px = x[0] + (x[1] - x[0]) * random.beta(1.3, 3)
        py = y[0] + (y[1] - y[0]) * random.random()
        size, turned, first = 0.1 + 0.95 * random.random() ** 7, random.random() * 6.3, len(corners)
        for k in range(5):
            out = size * (1 + 0.5 * random.random())
            angle = turned + k * 1.256
            z = 0.05 + 0.35 * size * random.random()
            corners.append((px + out * math.cos(angle), py + 0.7 * out * math.sin(angle), z))
        corners.append((px, py, 0.1 + 0.5 * size))
        faces += [(first + k, first + (k + 1) % 5, first + 5) for k in range(5)]
    blender.faceted("crumbs", corners, faces, blender.plain("crumb", colour, rough=0.9))


def window(size: float, light: str = "normal") -> None:
    """The light for a thing about `size` mm across: a window and a weak bounce, or raking.

    In a darkened room there is next to none: what is seen glows, or is lit from behind.
    """
    k = size / 204
    if light in DARK:
        _tubes(k, 4.0 if light == "ultraviolet" else 0.0)
        return
    side = {"normal": (-0.42, 1.2, 1.1), "top": (-0.9, 0.9, 1.25), "raking": (-1.75, 0.25, 0.34)}
    power = {"normal": 36, "top": 40, "raking": 88}[light]
    bounce = {"normal": 3.6, "top": 7.0, "raking": 4.0}[light]
    at = tuple(v * k for v in side[light])
    blender.lamp("window", at, (0, 0, 0.02), (1.2 * k, 1.1 * k), power * k * k, (1, 0.975, 0.95))
    back = (0.5 * k * (1 if at[0] < -0.5 * k else -1), -1.1 * k, 0.6 * k)
    blender.lamp("bounce", back, (0, 0, 0.02), (0.9 * k, 0.9 * k), bounce * k * k, (0.96, 0.98, 1))
    blender.surroundings({"normal": 0.17, "top": 0.22, "raking": 0.13}[light])


def _tubes(k: float, power: float) -> None:
    """A darkened room, with two violet tubes at either side of the thing."""
    for side in (-1, 1):
        at, size = (side * 1.3 * k, 0, 0.9 * k), (0.2 * k, 1.4 * k)
        blender.lamp("tube", at, (0, 0, 0), size, power * k * k, (0.20, 0.09, 1))
    blender.surroundings(0.012)


def table(x: tuple[float, float], y: tuple[float, float]) -> None:
    """A light table: a sheet of opal glass in a dark frame, lit evenly from below."""
    rim = blender.plain("rim", (0.12, 0.12, 0.125), rough=0.6)
    wide = 26
    blender.box("rim", (x[0] - wide, x[1] + wide), (y[0] - wide, y[1] + wide), (-30, 0), rim)
    glass = blender.plain("glass", (0.9, 0.9, 0.9), rough=0.3, glow=(0.975, 0.98, 0.97))
    blender.box("glass", x, y, (-2, 0.15), glass, round_mm=0)


def moved(after: bool) -> tuple[float, float, float]:
    """How far the camera stands off its first place: nobody sets it up twice alike."""
    return (4, 5, -4) if after else (0, 0, 0)


def from_spine(tall: float, thick: float, rise: float, *, after: bool) -> None:
    """Look at a book's spine, head at the left, 31 degrees above the bench."""
    x, width = -rise - 40, max(tall, 236)
    scale(x - 2, -50, 0.05, -90)
    target(x, 82, 0.05, -89.4)
    dx, dy, dz = moved(after)
    angle, away = math.radians(31), 800 * width / 204
    back, high = 0.18 * width, thick * 0.55
    eye = (back - away * math.cos(angle) + dx, dy, high + away * math.sin(angle) + dz)
    aim = (back, dy * 0.6, high)
    blender.camera(eye, aim, (-rise, 0, thick * 0.6), lens=112, stop=14, roll=-0.35 if after else 0)
    window(width)


def from_above(
    tall: float, wide: float, top: float, *, after: bool, light: str = "top", left: float = 0
) -> None:
    """Look straight down on a thing whose left edge is at `left`; scale and target beside it.

    On a light table a film of grey steps stands for the target; in ultraviolet nothing does.
    """
    times, dark = 1 if tall < 520 else 2, light in DARK
    frame = max(tall * 1.22, (wide + (90 if dark else 144) * times) / 1.5, 245)
    scale_x = left - 18 - 12 * times
    target_x = scale_x - (22 * times if dark else 12 + 32 * times)
    scale(scale_x, -22 * times, top, 90, times, light)
    if light == "table":
        wedge(target_x, 0, top, 90, times)
    elif not dark:
        target(target_x, 0, top, 90, times)
    if top > 2:
        riser((scale_x - 14, scale_x + 14), (-104, 62), top)
        riser((target_x - 18, target_x + 18), (-48, 48), top)
    middle = (target_x - 16 * times + left + wide) / 2
    dx, dy, _ = moved(after)
    high = frame * 1.5 * 100 / 36
    blender.camera(
        (middle + dx, dy - 2, high + top), (middle + dx, dy, 0), (left + wide / 2, 0, top),
        lens=100, stop=11, roll=-0.5 if after else 0,
    )  # fmt: skip
    window(max(frame, 204), light)
