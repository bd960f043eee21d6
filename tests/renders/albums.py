"""Openings of the regatta album and of the shipping clerk's scrapbook, before and after.

Offered under the GPL, version 3 or later, as well as under the project's LICENSE.
"""

from __future__ import annotations

import numpy as np
from PIL import ImageDraw

from tests.renders import opening, surfaces
from tests.renders.opening import Page
from tests.renders.paint import BOLD, ITALIC, SERIF, Array, Field, line, mix, rgb, step

ALBUM, SCRAPS = (214.0, 268.0), (230.0, 298.0)
SEPIA = (rgb(0.20, 0.125, 0.085), rgb(0.86, 0.79, 0.62))


def build(state: str, _view: str) -> None:
    """`regatta-before`, `regatta-after`, `scraps-before`, `scraps-after`."""
    name, stage = state.split("-")
    (wide, tall), fill = (ALBUM, _regatta) if name == "regatta" else (SCRAPS, _scraps)
    for side in (-1, 1):
        page = Page(side, wide, tall, 6)
        fill(page, stage == "after")
        top = 30 if name == "regatta" else 22
        page.build(
            top,
            arch=1.5 if name == "regatta" else 4,
            dip=9,
            waves=0.3 if name == "regatta" else 1.6,
        )
        colour = (0.72, 0.63, 0.42) if name == "regatta" else (0.42, 0.43, 0.42)
        opening.stack(side, wide, tall, top - 0.5, colour)
    opening.stage(wide, tall, top, after=stage == "after")


def _centre(page: Page, u: float) -> float:
    """A place on the page, `u` from 0 at its left edge to 1 at its right."""
    return page.left + page.width * u


def _regatta(page: Page, after: bool) -> None:
    paint, relief = surfaces.old_paper(page, 910 + page.side, rgb(0.875, 0.825, 0.705))
    page.colour, page.relief, page.rough = paint, relief, page.rough * 0 + 0.6
    spots = step(page.noise(4, 911 + page.side, 3), 0.50, 0.62) * step(
        page.noise(90, 912, 2), -0.2, 0.4
    )
    page.tint(spots * 0.45, rgb(0.60, 0.42, 0.22))
    page.tint(step(12 - page.edge + 5 * page.noise(20, 913), 0, 14) * 0.35, rgb(0.60, 0.47, 0.30))
    page.shade_gutter(0.3)
    for number, (u, y) in enumerate(((0.29, 62), (0.71, 62), (0.29, -62), (0.71, -62))):
        _window(page, _centre(page, u), float(y), number + (4 if page.side > 0 else 0), after)
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
    text = page.text(CAPTIONS[number], x, y - tall / 2 - 11, 4.6, face=ITALIC)
    page.tint(text * 0.75, rgb(0.36, 0.27, 0.2))
    if number in (0, 2, 3, 5):
        _torn_foot(page, x, y - tall / 2, number, after)


def _torn_foot(page: Page, x: float, y: float, number: int, after: bool) -> None:
    """The paper torn below a window, where prints were pushed in; or the mend over it."""
    far = page.x - x - 6 * (number % 3 - 1) - 1.2 * page.noise(9, 930 + number, 4)
    reach = (y - page.y) / 16
    along = (reach > 0) & (reach < 1)
    if after:
        patch = np.minimum(3.6 - np.abs(far), 2 + 8 - np.abs(page.y - y + 8)) + 0.5 * page.noise(
            2, 931
        )
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


def _guard(page: Page, after: bool) -> None:
    """The linen between two leaves: split and frayed, or bridged anew."""
    threads = surfaces.weave(page, 0.7)
    if after:
        mask = step(12 - page.out, -0.1, 0.2) * step(131 - np.abs(page.y), 0, 0.3)
        page.add(
            mask,
            rgb(0.87, 0.83, 0.73) * (0.82 + 0.2 * threads)[..., None],
            0.2,
            rough=0.9,
            relief=0.2 * threads,
        )
        return
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


def _scraps(page: Page, after: bool) -> None:
    paint, relief = surfaces.old_paper(page, 1010 + page.side, rgb(0.50, 0.51, 0.485))
    page.colour, page.relief = paint, relief + 0.06 * page.noise(0.7, 1011, 2)
    page.tint(step(14 - page.edge + 6 * page.noise(22, 1012), 0, 16) * 0.4, rgb(0.42, 0.36, 0.27))
    page.shade_gutter(0.4)
    random = np.random.default_rng(1020 + page.side)
    for number, (u, y, wide, tall) in enumerate(PLACES[page.side]):
        _scrap(page, random, (_centre(page, u), y, wide, tall), number, after)
    _chips(page, after)


PLACES = {
    -1: ((0.30, 88, 96, 62), (0.76, 96, 66, 88), (0.28, 12, 84, 70), (0.70, -4, 104, 76), (0.34, -92, 110, 84), (0.82, -96, 52, 96)),
    1: ((0.40, 84, 130, 86), (0.86, 66, 48, 66), (0.26, -22, 72, 98), (0.66, -20, 92, 60), (0.58, -104, 150, 62), (0.18, -112, 50, 50)),
}  # fmt: skip
PAPERS = (
    rgb(0.84, 0.78, 0.63), rgb(0.74, 0.55, 0.34), rgb(0.50, 0.59, 0.56), rgb(0.86, 0.82, 0.72),
    rgb(0.64, 0.36, 0.30), rgb(0.78, 0.73, 0.57),
)  # fmt: skip
WORDS = (
    "ORANGES",
    "Bill of Lading",
    "QUERNMOUTH & NORTHERN",
    "FIRST CLASS",
    "SLATE  11 tons",
    "S.S. PERSEVERANCE",
    "VALENCIA",
    "Third Single",
    "HOTEL ANCHOR",
    "Fragile",
    "THE BISHOP'S HAT",
    "PASSED",
)


def _scrap(page: Page, random: np.random.Generator, box: tuple, number: int, after: bool) -> None:
    """One thing stuck down, at an angle; loose at a corner before, flat after."""
    x, y, wide, tall = box
    turn = random.normal(0, 0.06)
    px = (page.x - x) * np.cos(turn) + (page.y - y) * np.sin(turn)
    py = -(page.x - x) * np.sin(turn) + (page.y - y) * np.cos(turn)
    depth = np.minimum(wide / 2 - np.abs(px), tall / 2 - np.abs(py)) + 0.25 * page.noise(
        3, 1030 + number, 3
    )
    mask = step(depth, 0, 0.12)
    paper = PAPERS[(number * 5 + page.side) % len(PAPERS)]
    paint = (
        paper * (1 + 0.05 * page.noise(12, 1040 + number) + 0.03 * page.noise(2, 1041))[..., None]
    )
    ink = _print(page, x, y, wide, tall, np.degrees(turn), number, depth)
    paint = mix(
        paint,
        paint * 0 + rgb(0.70, 0.60, 0.44),
        0.30 + 0.35 * step(6 - depth + 4 * page.noise(14, 1043), 0, 8),
    )
    dark = rgb(0.15, 0.13, 0.14) if number % 3 else rgb(0.28, 0.13, 0.32)
    paint = mix(paint, np.ones_like(paint) * dark, np.clip(ink, 0, 1) * 0.82)
    shadow = np.exp(-np.clip(-depth, 0, 9) / 0.8) * (1 - mask)
    page.tint(shadow * 0.25, rgb(0.2, 0.2, 0.2))
    page.add(mask, paint, 0.12, rough=0.6, relief=0.04 * page.noise(1, 1042))
    if not after and number in (0, 3, 4):
        lift = np.clip((px * (1 if number else -1) + py - (wide + tall) / 4) / 30, 0, 1)
        page.height = page.height + mask * 7 * lift**2
    if number in (1, 2) and page.side < 0:
        _old_tape(page, px + wide / 2 - 4, py, tall, after)


def _print(
    page: Page, x: float, y: float, wide: float, tall: float, turn: float, number: int, depth: Array
) -> Array:
    """A rule round it, a heading, and lines of type or of writing."""
    word = WORDS[number + (6 if page.side > 0 else 0)]
    size = min(tall * 0.16, wide / max(len(word), 6) * 1.35)
    ink = page.text(word, x, y + tall * 0.24, size, face=BOLD if number % 2 else SERIF, turn=turn)
    ink = np.maximum(ink, line(depth - 2.4, 0.35) * (number % 2) * 0.8)
    box = (x - wide * 0.38, x + wide * 0.38, y - tall * 0.40, y + tall * 0.10)
    if number % 3 == 0:
        return np.maximum(ink, surfaces.written(page, box, 1050 + number, size=1.9) * 0.8)
    small = page.drawn(lambda pen, on: _lines(pen, on, box, number))
    return np.maximum(ink, small * 0.7)


def _lines(pen: ImageDraw.ImageDraw, on: Field, box: tuple, number: int) -> None:
    random = np.random.default_rng(1060 + number)
    x0, x1, y0, y1 = box
    for y in np.arange(y0 + 2, y1, 3.1):
        x = x0
        while x < x1 - 4:
            long = 2 + 6 * random.random()
            pen.line(
                [on.at(x, y), on.at(min(x + long, x1), y)],
                fill=int(150 + 80 * random.random()),
                width=max(1, int(1.0 * on.px)),
            )
            x += long + 1.4


def _old_tape(page: Page, across: Array, along: Array, tall: float, after: bool) -> None:
    depth = np.minimum(9.5 - np.abs(across), tall * 0.36 - np.abs(along))
    mask = step(depth, 0, 0.2)
    page.tint(mask * (0.2 if after else 0.62), rgb(0.60, 0.42, 0.18))
    if not after:
        page.rough = mix(page.rough, 0.2, mask)
        page.height = page.height + mask * (0.1 + 0.5 * step(page.noise(7, 1070, 2), 0.1, 0.4))


def _chips(page: Page, after: bool) -> None:
    """Chips along the fore-edge and a corner gone; or new paper in their place."""
    chip = (
        page.edge
        - 6.5 * step(page.noise(20, 1080 + page.side, 4), 0.12, 0.5)
        - 0.6 * np.abs(page.noise(3, 1081, 3))
    )
    corner = (
        np.hypot(page.width - page.out, page.y + page.tall / 2) - 19 + 3 * page.noise(7, 1082, 4)
    )
    gone = np.minimum(chip, corner) < 0
    if not after:
        page.lost = gone
        page.tint(
            np.exp(-np.clip(np.minimum(chip, corner), 0, 9) / 0.6) * 0.5, rgb(0.66, 0.65, 0.60)
        )
        return
    page.tint(
        gone.astype(np.float32) * 0.95,
        rgb(0.55, 0.555, 0.53) * (1 + 0.03 * page.noise(4, 1083))[..., None],
    )
