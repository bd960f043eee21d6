"""The regatta album: windows with gilt rules, albumen prints, torn feet, a dog, linen guards.

Offered under the GPL, version 3 or later, as well as under the project's LICENSE.
"""

from __future__ import annotations

import numpy as np

from tests.renders import blender, surfaces
from tests.renders.opening import Page
from tests.renders.paint import ITALIC, Array, Field, line, mix, rgb, step

LEAF = (214.0, 268.0)
SEPIA = (rgb(0.20, 0.125, 0.085), rgb(0.86, 0.79, 0.62))


def fill(page: Page, after: bool) -> None:
    """Four windows to a page, foxing, grime, and the linen along the gutter."""
    paint, relief = surfaces.old_paper(page, 910 + page.side, rgb(0.875, 0.825, 0.705))
    page.colour, page.relief, page.rough = paint, relief, page.rough * 0 + 0.6
    spots = step(page.noise(4, 911 + page.side, 3), 0.50, 0.62) * step(
        page.noise(90, 912, 2), -0.2, 0.4
    )
    page.tint(spots * 0.45, rgb(0.60, 0.42, 0.22))
    page.tint(step(12 - page.edge + 5 * page.noise(20, 913), 0, 14) * 0.35, rgb(0.60, 0.47, 0.30))
    page.shade_gutter(0.3)
    for number, (u, y) in enumerate(((0.29, 62), (0.71, 62), (0.29, -62), (0.71, -62))):
        _window(page, page.across(u), float(y), number + (4 if page.side > 0 else 0), after)
    _guard(page, after)


def _window(page: Page, x: float, y: float, number: int, after: bool) -> None:
    """A window with a gilt rule, its print or its emptiness, a torn foot and a caption."""
    wide, tall = 62.0, 92.0
    arched = page.depth(x - wide / 2, x + wide / 2, y - tall / 2, y + tall / 2)
    top = np.hypot(page.x - x, np.maximum(page.y - y - tall / 2 + wide / 2, 0))
    arched = np.minimum(arched, wide / 2 - top)
    hole = step(arched, 0, 0.12)
    if number == 6:
        page.tint(hole, rgb(0.79, 0.73, 0.60) * (1 + 0.03 * page.noise(8, 920))[..., None])
    else:
        page.tint(hole, _photograph(page, x, y, number))
        page.rough = mix(page.rough, 0.38, hole)
    page.height = page.height - 0.55 * hole
    page.tint(line(arched + 2.2, 0.32) * 0.75, rgb(0.62, 0.46, 0.2))
    page.metal = np.maximum(page.metal, line(arched + 2.2, 0.3) * 0.6)
    page.tint(np.exp(-np.abs(arched) / 0.6) * 0.25, rgb(0.35, 0.25, 0.15))
    text = page.text(CAPTIONS[number], x - 13, y - tall / 2 - 11, 4.6, face=ITALIC)
    page.tint(text * 0.75, rgb(0.36, 0.27, 0.2))
    if number in (0, 2, 3, 5):
        _torn_foot(page, x + 27 + number % 2, y - tall / 2, number, after)


def _torn_foot(page: Page, x: float, y: float, number: int, after: bool) -> None:
    """The paper torn below a window, where prints were pushed in; or the mend over it.

    The mend keeps off the print, and well off the caption, whose ink bleeds.
    """
    far, long = page.x - x - 1.2 * page.noise(9, 930 + number, 4), 24 if y > 0 else 17
    reach = (y - page.y) / long
    along = (reach > 0) & (reach < 1)
    if after:
        deep = np.minimum(3.6 - np.abs(far), np.minimum(y - 0.4 - page.y, page.y - y + long + 3))
        patch = deep + 0.5 * page.noise(2, 931) * (page.y < y - 1)
        page.tint(step(patch, -0.3, 0.5) * 0.5, rgb(0.90, 0.86, 0.76))
        page.tint(np.exp(-((far / 0.2) ** 2)) * along * 0.3, rgb(0.4, 0.3, 0.2))
        return
    gap = np.abs(far) < 1.8 * (1 - np.clip(reach, 0, 1)) * along
    page.tint(gap.astype(np.float32) * 0.9, rgb(0.30, 0.21, 0.13))
    page.height = page.height + 1.6 * np.exp(-np.abs(far) / 4) * along * (far > 0)
    page.tint(np.exp(-np.abs(far) / 1.3) * along * 0.35, rgb(0.93, 0.90, 0.82))


CAPTIONS = (
    "Crew of the Tern, 1874", "The Landing Stage", "Mr Ivory & Admiral", "Fours, Whit Monday",
    "The Committee", "Ladies' Scratch Pair", "", "Admiral",
)  # fmt: skip


def _photograph(page: Page, x: float, y: float, number: int) -> Array:
    """An albumen print: sky, water, a boat, figures who hold still; faded and yellow."""
    u, v = (page.x - x) / 31, (page.y - y) / 46
    light = 0.80 + 0.10 * v + 0.05 * page.noise(14, 940 + number)
    horizon = -0.05 + 0.1 * ((number * 7) % 5 - 2) / 2
    water = step(horizon - v, -0.01, 0.02)
    light = mix(light, 0.56 + 0.10 * page.noise(3, 950 + number, 3) - 0.12 * v, water)
    hills = step(horizon + 0.13 + 0.06 * page.noise(12, 960 + number, 3) - v, 0, 0.03) * (1 - water)
    light = mix(light, np.full_like(light, 0.58), hills * 0.8)
    random = np.random.default_rng(970 + number)
    for place in np.linspace(-0.55, 0.55, 2 + (number * 3) % 5):
        light = _figure(
            light, u - place - 0.05 * random.normal(), v + 0.25 + 0.04 * random.normal(), random
        )
    if number % 2 == 0:
        hull = np.abs(v + 0.52 - 0.05 * u * u) < 0.05 * np.sqrt(np.clip(1 - (u / 0.85) ** 2, 0, 1))
        light = mix(light, np.full_like(light, 0.25), hull.astype(np.float32))
    if "Admiral" in CAPTIONS[number]:
        light = _dog(light, u - 0.10, v + (0.78 if number % 2 == 0 else 0.62))
    fade = step(np.maximum(np.abs(u), np.abs(v)), 0.6, 1.15)
    tone = np.clip(page.soft(light, 0.3) + 0.035 * page.noise(0.5, 980, 2), 0, 1)
    tone = mix(tone, 0.62 + 0.38 * tone, fade * 0.7)
    return SEPIA[0] + (SEPIA[1] - SEPIA[0]) * tone[..., None]


def _figure(light: Array, u: Array, v: Array, random: np.random.Generator) -> Array:
    """Somebody standing: a jacket and trousers or a wide dress, a pale face, a hat."""
    tone = 0.24 + 0.3 * random.random()
    round_ = 1 - ((v - 0.04) / 0.19) ** 2
    torso = np.where(round_ > 0, 0.10 * np.sqrt(np.clip(round_, 0, 1)) - np.abs(u), -1)
    dress = random.random() < 0.35
    if dress:
        lower = 0.05 + 0.17 * np.clip((0.06 - v) / 0.48, 0, 1) ** 0.8 - np.abs(u)
    else:
        lower = np.minimum(0.065 - np.abs(u), np.abs(u) - 0.012 * (v < -0.1) + 0.004)
    lower = np.minimum(lower, np.minimum(0.06 - v, v + 0.43))
    body = step(np.maximum(torso, lower), -0.012, 0.014)
    arms = step(0.028 - np.abs(np.abs(u) - 0.095 - 0.03 * np.sin(5 * v)), -0.01, 0.01) * (
        np.abs(v) < 0.14
    )
    face = step(0.052 - np.hypot(u, (v - 0.275) * 0.66), -0.008, 0.012)
    brim = step(np.minimum(0.085 - np.abs(u), 0.012 - np.abs(v - 0.335)), -0.006, 0.006)
    crown = step(np.minimum(0.045 - np.abs(u), 0.035 - np.abs(v - 0.365)), -0.006, 0.006)
    light = mix(light, np.full_like(light, tone), np.maximum(body, arms) * 0.9)
    light = mix(light, light * 0.8, body * step(u, -0.02, 0.08))
    light = mix(light, np.full_like(light, 0.74), face * 0.9)
    hat = 0.8 if random.random() < 0.4 else 0.22
    return mix(light, np.full_like(light, hat), np.maximum(brim, crown) * 0.9)


def _dog(light: Array, u: Array, v: Array) -> Array:
    """Admiral, from the side: a barrel on four legs, a head held up, a tail that would not keep."""
    barrel = 1 - np.hypot(u / 0.15, v / 0.055)
    head = 1 - np.hypot((u - 0.17) / 0.055, (v - 0.075) / 0.05)
    nose = np.minimum(0.045 - np.abs(u - 0.215), 0.018 - np.abs(v - 0.065)) * 12
    ear = np.minimum(0.018 - np.abs(u - 0.145), 0.045 - np.abs(v - 0.06)) * 12
    legs = np.minimum(0.016 - np.abs(np.abs(np.abs(u) - 0.095) - 0.018), 0.075 - np.abs(v + 0.06))
    tail = np.minimum(0.014 - np.abs(v - 0.05 + 0.9 * (u + 0.19)), 0.05 - np.abs(u + 0.18)) * 12
    dark = np.maximum.reduce([barrel, head, nose, ear, legs * 12, tail])
    return mix(light, np.full_like(light, 0.30), step(dark, -0.08, 0.12) * 0.92)


def hinge(top: float) -> None:
    """The new linen, 24 by 262 mm, from leaf to leaf over the old."""
    linen = Field(24, 262, 8)
    threads = surfaces.weave(linen, 0.7)
    linen.colour = rgb(0.87, 0.83, 0.73) * (0.82 + 0.2 * threads)[..., None]
    linen.tint(np.exp(-((linen.x / 2.0) ** 2)) * 0.12, rgb(0.45, 0.38, 0.28))
    linen.relief, linen.rough = 0.2 * threads, linen.rough * 0 + 0.9
    out = np.abs(linen.x)
    z = top + 1.5 * np.sin(np.pi * out / LEAF[0]) ** 0.9 - 7.5 * np.exp(-((out / 10) ** 2)) + 0.45
    cut = (slice(None, None, 3),) * 2
    points = np.stack([linen.x, linen.y, z], -1)[cut]
    blender.mesh("hinge", points, blender.painted("hinge", linen, relief_mm=0.15, gloss=0.2))


def _guard(page: Page, after: bool) -> None:
    """The old linen between two leaves: split and frayed, or under a new hinge."""
    threads = surfaces.weave(page, 0.7)
    edge = 8.5 - page.out + (1.5 * page.noise(6, 990, 4) - 2.2 if page.side > 0 else 0)
    mask = step(edge, -0.1, 0.3)
    page.add(
        mask,
        rgb(0.60, 0.49, 0.33) * (0.75 + 0.25 * threads)[..., None],
        0.15,
        rough=0.9,
        relief=0.2 * threads,
    )
    page.tint(step(2.6 - page.out + page.noise(5, 991, 3), 0, 1) * 0.7, rgb(0.16, 0.11, 0.08))
