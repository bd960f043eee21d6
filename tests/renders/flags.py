"""The poster of signal flags, on linen between two laths, creased and flaking.

Offered under the GPL, version 3 or later, as well as under the project's LICENSE.
"""

from __future__ import annotations

import numpy as np

from tests.renders import bench, blender, surfaces
from tests.renders.paint import BOLD, ITALIC, SANS, SERIF, Array, line, rgb, step
from tests.renders.sheet import Sheet, stage

WIDE, TALL = 508.0, 762.0
INKS = {
    "r": rgb(0.66, 0.15, 0.12), "y": rgb(0.83, 0.66, 0.20), "b": rgb(0.15, 0.24, 0.44),
    "w": rgb(0.86, 0.82, 0.70), "k": rgb(0.12, 0.11, 0.11), "g": rgb(0.27, 0.40, 0.33),
    "s": rgb(0.58, 0.66, 0.66), "n": rgb(0.37, 0.23, 0.13), "o": rgb(0.74, 0.42, 0.20),
}  # fmt: skip
FLAGS = (
    ("halves", "wb"), ("plain", "r"), ("bars", "bwr"), ("bands", "yb"), ("halves", "br"),
    ("diamond", "wr"), ("bars", "yby"), ("halves", "wr"), ("disc", "yk"), ("bands", "bwb"),
    ("halves", "yb"), ("quarters", "yk"), ("cross", "bw"), ("check", "bw"), ("diagonal", "yr"),
    ("square", "bw"), ("plain", "y"), ("cross", "ry"), ("square", "wb"), ("bars", "rwb"),
    ("quarters", "rw"), ("cross", "wr"), ("frame", "bwr"), ("cross", "wb"), ("diagonal", "yb"),
    ("corners", "kybr"),
)  # fmt: skip
CREASES = (-292.0, -221.0, -160.0, -88.0, -30.0, 41.0, 96.0, 158.0, 215.0, 268.0, 322.0)


def build(_state: str, view: str) -> None:
    """The poster as it came: all of it, or a detail at its left edge."""
    sheet = Sheet(WIDE, TALL, 4 if view == "recto" else 6.5, rough_edge=0.8)
    sheet.colour, sheet.relief = surfaces.old_paper(sheet, 1310, rgb(0.77, 0.67, 0.48))
    sheet.ageing(rgb(0.50, 0.37, 0.21), 40, 0.6)
    for number, (kind, inks) in enumerate(FLAGS):
        left, up = -176 + 88 * (number % 5), 205 - 96 * (number // 5)
        _flag(sheet, left, up, kind, inks)
        letter = sheet.text(chr(65 + number), left, up - 36, 11, face=BOLD)
        sheet.tint(letter * 0.85, INKS["k"])
    for words, y, size, face in (
        ("SIGNAL FLAGS", 316.0, 34.0, BOLD), ("and what they say", 284.0, 13.0, SERIF),
        ("QUERNMOUTH COLOUR PRESS", -358.0, 7.0, SANS),
    ):  # fmt: skip
        sheet.tint(sheet.text(words, 0, y, size, face=face) * 0.88, INKS["k"])
    _ship(sheet)
    _use(sheet)
    sheet.cockle(3.5, cell=150)
    loose = step(90 - (sheet.x + WIDE / 2), 0, 90)
    sheet.lift = sheet.lift + 3 + loose * (5 + 3 * sheet.noise(90, 1311, 2))
    if view == "detail":
        part = sheet.cut(-WIDE / 2 - 1, 10, 20, 300)
        part.build(2)
        bench.ground(2200)
        bench.from_above(150, 223, 0.05, after=False, light="raking", left=-WIDE / 2)
        return
    sheet.build(2)
    lath = blender.plain("lath", (0.20, 0.13, 0.08), rough=0.5, bumps_mm=0.8, uneven=0.2)
    for end in (-1, 1):
        y = end * (TALL / 2 - 4)
        blender.box(
            "lath", (-WIDE / 2 - 12, WIDE / 2 + 12), (y - 9, y + 9), (4, 15), lath, round_mm=2
        )
    stage(sheet, after=False, light="raking", room=0.95)


def _flag(sheet: Sheet, x: float, y: float, kind: str, inks: str) -> None:
    u, v = (sheet.x - x) / 33, (sheet.y - y) / 24
    inside = step(np.minimum(1 - np.abs(u), 1 - np.abs(v)), 0, 0.02)
    thick = inside * (0.88 + 0.12 * sheet.noise(3, 1320, 3))
    sheet.tint(thick, INKS[inks[0]])
    for place, ink in zip(_shapes(kind, u, v, len(inks)), inks[1:], strict=False):
        sheet.tint(thick * place.astype(np.float32), INKS[ink])
    rim = np.exp(-(((np.minimum(1 - np.abs(u), 1 - np.abs(v))) / 0.02) ** 2))
    sheet.tint(rim * 0.6, INKS["k"])


def _shapes(kind: str, u: Array, v: Array, inks: int) -> list[Array]:
    """Where the second ink of a flag lies, and the third."""
    if kind == "bars":
        return [(u > -1 + 2 * (n + 1) / inks) for n in range(inks - 1)]
    if kind == "bands":
        return [(np.abs(v) < 0.34)] if inks == 2 else [(np.abs(v) < 0.6), (np.abs(v) < 0.2)]
    return {
        "plain": [], "halves": [u > 0], "diamond": [np.abs(u) + np.abs(v) < 0.95],
        "disc": [np.hypot(u * 1.375, v) < 0.6], "quarters": [u * v < 0],
        "cross": [(np.abs(u) < 0.16) | (np.abs(v) < 0.22)],
        "check": [(np.floor((u + 1) * 2) + np.floor((v + 1) * 2)) % 2 == 0],
        "corners": [np.abs(u) < -v, np.abs(v) < u, np.abs(u) < v],
        "diagonal": [u + v > 0], "square": [np.maximum(np.abs(u), np.abs(v)) < 0.45],
        "frame": [np.maximum(np.abs(u), np.abs(v)) < 0.7, np.maximum(np.abs(u), np.abs(v)) < 0.35],
    }[kind]  # fmt: skip


def _ship(sheet: Sheet) -> None:
    """A steamer dressed overall at the foot, in the four inks that no flag needs."""
    frame = sheet.inside(-120, 209, -342, -276, 0.3)
    thick = frame * (0.82 + 0.12 * sheet.noise(3, 1321, 3))
    sea = -318 + 2.0 * np.sin(sheet.x / 9)
    hull = (np.abs(sheet.x - 40) < 70 + 0.5 * (sheet.y + 322)) & (np.abs(sheet.y + 315) < 8)
    house = (np.abs(sheet.x - 40) < 34) & (np.abs(sheet.y + 303) < 5)
    funnel = (np.abs(sheet.x - 40 - 0.15 * (sheet.y + 298)) < 5) & (np.abs(sheet.y + 291) < 8)
    masts = (np.abs(np.abs(sheet.x - 40) - 50) < 0.7) & (np.abs(sheet.y + 295) < 14)
    sheet.tint(thick, INKS["s"])
    for place, ink in (
        (hull, "n"),
        (house, "w"),
        (funnel, "o"),
        (masts, "n"),
        (sheet.y < sea, "g"),
    ):
        sheet.tint(thick * place.astype(np.float32), INKS[ink])
    sheet.tint(line(sheet.depth(-120, 209, -342, -276), 0.5) * 0.7, INKS["k"])


def _use(sheet: Sheet) -> None:
    """Creases with flaked ink, the smear of oars, four tears, a pencilled wish."""
    for number, y in enumerate(CREASES):
        far = sheet.y - y + 1.6 * sheet.noise(60, 1330 + number, 3)
        sheet.fold(far, sharp=1.5, dirt=0.4)
        flakes = np.exp(-((far / 3.2) ** 2)) * step(sheet.noise(5, 1350 + number, 4), 0.08, 0.3)
        sheet.tint(flakes * 0.85, rgb(0.80, 0.72, 0.56))
    smear = np.exp(-(((sheet.y + 38 + 14 * sheet.noise(60, 1370, 3)) / 26) ** 2))
    sheet.tint(smear * step(sheet.noise(70, 1371, 4), -0.2, 0.5) * 0.5, rgb(0.35, 0.25, 0.15))
    for number, x in enumerate((-150.0, -40.0, 70.0, 190.0)):
        far = (
            sheet.y
            + 40
            + 9 * (number % 3)
            - 0.3 * (sheet.x - x)
            + 2 * sheet.noise(14, 1380 + number, 3)
        )
        along = 1 - np.abs(sheet.x - x) / (16 + 5 * number)
        scrape = step(4 - np.abs(far), 0, 2) * step(along, 0, 0.3)
        sheet.tint(scrape * 0.7, rgb(0.82, 0.75, 0.60))
        sheet.tear(far, along, gap=1.8, rise=1.2)
    for x, y, size, turn in ((-60.0, -48.0, 12.0, 2.0), (96.0, -256.0, 15.0, -1.5)):
        note = sheet.text("do not lean oars here", x, y, size, face=ITALIC, turn=turn)
        sheet.tint(note * 0.7, rgb(0.28, 0.28, 0.29))
