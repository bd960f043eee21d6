"""Openings of the regatta album and of the shipping clerk's scrapbook, before and after.

Offered under the GPL, version 3 or later, as well as under the project's LICENSE.
"""

from __future__ import annotations

import numpy as np
from PIL import ImageDraw

from tests.renders import opening, regatta, surfaces
from tests.renders.opening import Page
from tests.renders.paint import BOLD, SERIF, Array, Field, line, mix, rgb, step

SCRAPS = (230.0, 298.0)


def build(state: str, _view: str) -> None:
    """`regatta-before`, `regatta-after`, `scraps-before`, `scraps-after`."""
    name, stage = state.split("-")
    (wide, tall), fill = (regatta.LEAF, regatta.fill) if name == "regatta" else (SCRAPS, _scraps)
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
    if state == "regatta-after":
        regatta.hinge(30)
    opening.stage(wide, tall, top, after=stage == "after")


def _scraps(page: Page, after: bool) -> None:
    paint, relief = surfaces.old_paper(page, 1010 + page.side, rgb(0.50, 0.51, 0.485))
    page.colour, page.relief = paint, relief + 0.06 * page.noise(0.7, 1011, 2)
    page.tint(step(14 - page.edge + 6 * page.noise(22, 1012), 0, 16) * 0.4, rgb(0.42, 0.36, 0.27))
    page.shade_gutter(0.4)
    random = np.random.default_rng(1020 + page.side)
    for number, (u, y, wide, tall) in enumerate(PLACES[page.side]):
        _scrap(page, random, (page.across(u), y, wide, tall), number, after)
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
