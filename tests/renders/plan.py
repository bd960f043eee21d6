"""The breakwater plan on tracing paper: amber, crushed flat in its roll; then as it was left.

Offered under the GPL, version 3 or later, as well as under the project's LICENSE.
"""

from __future__ import annotations

import numpy as np
from PIL import ImageDraw, ImageFont

from tests.renders import surfaces
from tests.renders.paint import SANS, SERIF, Array, Field, line, rgb, step
from tests.renders.sheet import Sheet, stage

WIDE, TALL = 596.0, 410.0
CRUSHED = (-214, -131, -38, 49, 137, 226)
TEARS = (
    (-1, 120, -150), (1, 40, 120), (1, 33, -40), (-1, 40, 40), (-1, 26, 150), (1, 30, -122), (1, 8, 60),
    (-1, 14, 96), (-1, 38, -70), (1, 22, 170), (1, 18, -176),
)  # fmt: skip
MENDED = (0, 1, 3)


def build(state: str, view: str) -> None:
    """`before`, `mends` (verso) or `left`; `table` is the recto on the light table."""
    before, back, lit = state == "before", view == "verso", view == "table"
    flip = -1 if back else 1
    sheet = Sheet(WIDE, TALL, 4, rough_edge=0.5)
    colour = rgb(0.70, 0.56, 0.345) if before else rgb(0.72, 0.585, 0.375)
    sheet.colour, sheet.relief = surfaces.old_paper(
        sheet, 1210, rgb(0.90, 0.745, 0.46) if lit else colour
    )
    if lit:
        clouds = 1 + 0.05 * sheet.noise(5, 1270, 3) + 0.03 * sheet.noise(1.5, 1271, 2)
        sheet.colour = np.clip(sheet.colour * clouds[..., None], 0, 1)
    sheet.ageing(rgb(0.62, 0.42, 0.19) if lit else rgb(0.47, 0.32, 0.16), 22, 0.55)
    ink = sheet.drawn(_drawing) * (0.85 + 0.2 * sheet.noise(4, 1211))
    sheet.tint((ink[:, ::-1] if back else ink) * (0.45 if back else 0.85), rgb(0.13, 0.11, 0.10))
    if not back:
        stamp = np.maximum(
            line(np.hypot((sheet.x - 214) / 1.5, sheet.y + 132) - 15, 0.7),
            sheet.text("HARBOUR OFFICE", 214, -132, 3.9),
        )
        sheet.tint(stamp * 0.75, rgb(0.36, 0.17, 0.44))
    for at in CRUSHED:
        far = flip * sheet.x - at + 2.2 * sheet.noise(60, 1212 + at % 5, 3)
        sheet.fold(far, sharp=5.0 if before else 0.25, dirt=0.4 if before else 0.25)
        _crush(sheet, far, lit)
    for number, (side, deep, y) in enumerate(TEARS):
        _tear(sheet, flip, number, side, float(deep), float(y), before, view)
    sheet.cockle(7 if before else 0.6, cell=95)
    sheet.rough[:] = 0.42
    sheet.build(2, glows=lit)
    stage(sheet, after=state == "left", light="table" if lit else "top")


def _crush(sheet: Sheet, far: Array, lit: bool) -> None:
    """Where it was crushed the sheet is no longer clear: white by day, dark against the light."""
    if not lit:
        sheet.tint(np.exp(-((far / 1.4) ** 2)) * 0.25, rgb(0.84, 0.74, 0.55))
        return
    veins = step(0.10 - np.abs(sheet.noise(9, 1272, 4)), 0, 0.08) * np.exp(-np.abs(far) / 9)
    dark = 0.42 * np.exp(-((far / 0.9) ** 2)) + 0.18 * np.exp(-np.abs(far) / 4) + 0.25 * veins
    sheet.tint(dark, rgb(0.42, 0.29, 0.14))


def _tear(
    sheet: Sheet, flip: int, number: int, side: int, deep: float, y: float, before: bool, view: str
) -> None:
    far = (
        sheet.y
        - y
        + 0.12 * (WIDE / 2 - np.abs(sheet.x)) * (-1) ** number
        + 2.5 * sheet.noise(26, 1230 + number, 3)
    )
    along = (flip * side * sheet.x - WIDE / 2 + deep) / deep
    mended = not before and number in MENDED
    if not mended:
        sheet.tear(far, along, gap=2.6, rise=3.0 if before else 0.8)
        return
    reach = np.minimum(2.6 - np.abs(far), (along + 0.03) * deep)
    if view == "table":
        sheet.tint(step(reach, -0.3, 0.5) * 0.3, rgb(0.50, 0.36, 0.18))
        sheet.tint(np.exp(-((far / 0.3) ** 2)) * (along > 0) * 0.8, rgb(0.97, 0.90, 0.70))
        return
    sheet.tint(np.exp(-((far / 0.35) ** 2)) * (along > 0) * 0.6, rgb(0.35, 0.23, 0.12))
    pale = rgb(0.85, 0.76, 0.58)
    if view == "verso":
        sheet.patch(reach, pale, cover=0.35, seed=1250 + number, wavy=0.3)
    else:
        sheet.tint(step(reach, -0.3, 0.5) * 0.14, pale)


def _drawing(pen: ImageDraw.ImageDraw, on: Field) -> None:
    """Elevation above, section below, with dimensions and a title."""
    random = np.random.default_rng(1260)

    def path(points: list, width: float = 0.45) -> None:
        pen.line([on.at(x, y) for x, y in points], fill=235, width=max(1, int(width * on.px)))

    for y in (120, 60):
        path([(-250, y), (225, y)], 0.7)
    for course in np.arange(62, 120, 8):
        path([(-250, course), (225, course)], 0.25)
        for x in np.arange(-250 + 9 * ((course // 8) % 2), 225, 18):
            path([(x, course), (x, course + 8)], 0.25)
    path([(225, 60), (240, 66), (252, 120), (225, 120)], 0.7)
    lamp = [(200, 120), (200, 150), (204, 158), (208, 150), (208, 120)]
    path(lamp, 0.6)
    wave = np.arange(-270, 275, 3)
    path([(x, 74 + 1.6 * np.sin(x / 6)) for x in wave], 0.3)
    path([(-190, -130), (-120, -20), (-40, -20), (30, -130)], 0.9)
    path([(-120, -20), (-120, -4), (-106, -4), (-106, -14), (-40, -14), (-40, -20)], 0.7)
    for _ in range(150):
        cx, cy = -185 + 205 * random.random(), -128 + 100 * random.random()
        if cy < -22 and -190 + (cy + 130) * 0.64 < cx < 30 - (cy + 130) * 0.64:
            size, turns = 2 + 4 * random.random(), np.linspace(0, 6.3, 7)
            path([(cx + size * np.cos(a), cy + size * 0.7 * np.sin(a)) for a in turns], 0.25)
    for x0, x1, y, words in (
        (-250, 225, 40, "412 ft."),
        (-120, -40, 8, "24 ft."),
        (-190, 30, -144, "68 ft. at bed"),
    ):
        path([(x0, y), (x1, y)], 0.25)
        pen.text(
            on.at((x0 + x1) / 2, y + 5),
            words,
            fill=225,
            font=ImageFont.truetype(SERIF, 7 * on.px),
            anchor="mm",
        )
    for words, y, size in (
        ("NORTH BREAKWATER", -40, 15),
        ("ELEVATION AND SECTION", -60, 8),
        ("W. HARKER, ENGINEER", -76, 7),
        ("May 1903", -90, 7),
        ("No. 27", -104, 6),
    ):
        pen.text(
            on.at(160, y), words, fill=235, font=ImageFont.truetype(SANS, size * on.px), anchor="mm"
        )
