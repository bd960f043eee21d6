"""The chart of Quernmouth Roads: an engraved sheet, folded to twelve, split, lined.

Offered under the GPL, version 3 or later, as well as under the project's LICENSE.
"""

from __future__ import annotations

import numpy as np
from PIL import ImageDraw, ImageFont

from tests.renders import chart_lit, surfaces
from tests.renders.paint import SERIF, Array, Field, rgb, step
from tests.renders.sheet import Sheet, stage

WIDE, TALL = 1046.0, 742.0
ACROSS = tuple(-WIDE / 2 + WIDE / 6 * k for k in range(1, 6))
BROWN, CLEAN = rgb(0.76, 0.675, 0.52), rgb(0.845, 0.785, 0.655)
INK = rgb(0.15, 0.13, 0.12)
STRIPS: tuple[tuple[float, float, float, float], ...] = (
    (-420, -100, -15, 15), (60, 380, -15, 15), (ACROSS[1] - 15, ACROSS[1] + 15, 20, 330),
    (ACROSS[3] - 15, ACROSS[3] + 15, -340, -60),
)  # fmt: skip
"""Where the strips of brown paper lie on the back, left to right as one sees it from there."""


def build(state: str, view: str) -> None:
    """The chart, recto or verso, before, mended (verso only) or after.

    Before also on the light `table`.
    """
    before, lit = state == "before", view == "table"
    sheet = Sheet(WIDE, TALL, 2.6, rough_edge=0.6)
    paper = chart_lit.LIT if lit else BROWN if before else CLEAN
    sheet.colour, sheet.relief = surfaces.old_paper(sheet, 3, paper, laid=True)
    sheet.ageing(rgb(0.52, 0.40, 0.25), 34, 0.5 if before else 0.22)
    if lit:
        chart_lit.through(sheet)
    flip = -1 if view == "verso" else 1
    _panels(sheet, flip, 0.22 if before else 0.06)
    engraved = mirrored(sheet, engraving(sheet)) if view == "verso" else engraving(sheet)
    sheet.tint(engraved * (0.10 if view == "verso" else 0.78), INK)
    _stains(sheet, flip, 1.0 if before else 0.33)
    _folds(sheet, flip, before)
    if view == "verso":
        _verso(sheet, state)
    else:
        _red_line(sheet)
    if lit:
        chart_lit.strips_behind(sheet, STRIPS)
    if before:
        sheet.cockle(5.5, cell=150)
    else:
        sheet.cockle(0.7 if state == "mended" else 0.15, cell=150)
        sheet.under(
            rgb(0.86, 0.81, 0.70) if state == "after" else rgb(0.80, 0.75, 0.64),
            margin=4 if state == "after" else -9,
        )
    sheet.build(3, glows=lit)
    stage(sheet, after=state == "after", light="table" if lit else "top", room=0.92)


def mirrored(_sheet: Field, mask: Array) -> Array:
    """As seen through from the back."""
    return mask[:, ::-1]


def engraving(sheet: Field) -> Array:
    """Coast, soundings, rhumb lines, frame and title, as one mask of ink."""
    coast = (
        sheet.y - 175 - 70 * np.sin(sheet.x / 150) - 46 * sheet.noise(260, 8, 6) + 0.10 * sheet.x
    )
    bank = np.hypot((sheet.x + 120) / 2.2, sheet.y + 90) - 58 + 14 * sheet.noise(70, 9)
    spit = np.hypot((sheet.x - 250) / 1.5, sheet.y + 10) - 36 + 12 * sheet.noise(50, 10)
    ink = _line(np.abs(coast), 1.1, 3)
    for band in (4, 8.5, 14, 21):
        ink = np.maximum(ink, _line(np.abs(coast + band), 0.4, 3) * 0.6)
    hatch = step(np.sin(2 * np.pi * (sheet.x + sheet.y) / 3.2), 0.3, 0.9)
    ink = np.maximum(ink, hatch * step(coast, 0, 1) * step(14 - coast, 0, 6) * 0.6)
    for cx, cy, size in (
        (-330.0, 290.0, 62.0),
        (-60.0, 300.0, 40.0),
        (215.0, 255.0, 52.0),
        (400.0, 205.0, 44.0),
    ):
        ink = np.maximum(ink, _hill(sheet, cx, cy, size) * step(coast, 4, 8))
    for shoal in (bank, spit):
        dots = step(sheet.noise(2.6, 12, 1), 0.35, 0.6)
        ink = np.maximum(
            ink, np.maximum(_line(np.abs(shoal), 0.5, 2), dots * step(-shoal, 0, 3) * 0.7)
        )
    inside = sheet.inside(-WIDE / 2 + 38, WIDE / 2 - 38, -TALL / 2 + 38, TALL / 2 - 38, 0.3)
    return np.maximum.reduce([ink * inside, _frame(sheet), sheet.drawn(_letters)]) * (
        0.85 + 0.25 * sheet.noise(9, 13)
    )


def _hill(sheet: Field, cx: float, cy: float, size: float) -> Array:
    """A hill as the engraver cut it: short strokes running down from its top."""
    far = np.hypot(sheet.x - cx, (sheet.y - cy) * 1.5) / size + 0.16 * sheet.noise(40, 14, 3)
    turn = np.arctan2((sheet.y - cy) * 1.5, sheet.x - cx)
    strokes = step(np.sin(46 * turn + 3 * far), 0.35, 0.8)
    rings = step(np.sin(9 * far + 0.8 * np.sin(6 * turn)), -0.2, 0.4)
    return strokes * rings * step(far, 0.22, 0.34) * step(1.0 - far, 0, 0.3) * 0.75


def _line(distance: Array, half: float, soft: float) -> Array:
    return step(half - distance, -0.25 * soft * half, 0.25 * soft * half)


def _frame(sheet: Field) -> Array:
    depth = sheet.depth(-WIDE / 2 + 26, WIDE / 2 - 26, -TALL / 2 + 26, TALL / 2 - 26)
    rules = np.maximum(_line(np.abs(depth), 1.0, 2), _line(np.abs(depth - 11), 0.5, 2))
    blocks = (np.floor(sheet.x / 40) + np.floor(sheet.y / 40)) % 2 == 0
    return np.maximum(rules, _line(np.abs(depth - 7.5), 1.4, 1) * blocks)


def _letters(pen: ImageDraw.ImageDraw, on: Field) -> None:
    """Soundings over the sea, rhumb lines from a rose, title and names."""
    random = np.random.default_rng(4)
    figures = ImageFont.truetype(SERIF, 7.4 * on.px)
    for x in np.arange(-460, 470, 33):
        for y in np.arange(-310, 120, 27):
            px, py = x + random.normal(0, 7), y + random.normal(0, 6)
            shown, depth = random.random() < 0.86, str(random.integers(2, 22))
            afloat = py < 95 - 0.1 * px + 55 * np.sin(px / 150)
            clear = px < 165 or px > 440 or not -300 < py < -170
            if shown and afloat and clear and not _shoal(px, py):
                pen.text(on.at(px, py), depth, fill=215, font=figures, anchor="mm")
    rose = (-300.0, -190.0)
    for k in range(16):
        far = np.array([np.cos(k * np.pi / 8), np.sin(k * np.pi / 8)]) * 900
        pen.line([on.at(*rose), on.at(rose[0] + far[0], rose[1] + far[1])], fill=150, width=1)
    for out in (22, 25, 9):
        (x0, y0), (x1, y1) = (
            on.at(rose[0] - out, rose[1] + out),
            on.at(rose[0] + out, rose[1] - out),
        )
        pen.ellipse([x0, y0, x1, y1], outline=220, width=2)
    for words, tx, ty, size in (
        ("A CHART of", 300, -190, 16), ("QUERNMOUTH ROADS", 300, -216, 25), ("with the Soundings in Fathoms", 300, -244, 12),
        ("by Lieut. R. OVERY", 300, -264, 12), ("J. TAMSIN sculp.", 300, -284, 10), ("Publish'd as the Act directs, 1st May 1798, for the Author", 0, -357, 8), ("QUERNMOUTH", -20, 262, 15),
        ("Gull Point", -352, 232, 10), ("The Sow", -120, -92, 10), ("The Pigs", 250, -10, 9),
    ):  # fmt: skip
        pen.text(
            on.at(tx, ty),
            words,
            fill=235,
            font=ImageFont.truetype(SERIF, size * on.px),
            anchor="mm",
        )


def _shoal(x: float, y: float) -> bool:
    """Whether a place is on one of the two banks."""
    sow, pigs = np.hypot((x + 120) / 2.2, y + 90), np.hypot((x - 250) / 1.5, y + 10)
    return bool(sow < 66 or pigs < 44)


def _panels(sheet: Sheet, flip: int, strength: float) -> None:
    """Two outer panels darker than the rest, as the chart lay folded."""
    outer = sheet.inside(ACROSS[4], WIDE / 2, -TALL / 2, 0, 6)
    outer = np.maximum(outer, sheet.inside(ACROSS[3], ACROSS[4], -TALL / 2, 0, 6) * 0.6)
    sheet.tint(outer[:, ::flip] * strength, rgb(0.55, 0.42, 0.26))


def _stains(sheet: Sheet, flip: int, strength: float) -> None:
    away = np.hypot((flip * sheet.x - WIDE / 2 - 20) / 1.35, sheet.y + TALL / 2 + 15) - 205
    surfaces.tideline(sheet, away + 34 * sheet.noise(90, 19), rgb(0.45, 0.29, 0.13), strength)
    spots = step(sheet.noise(5, 23, 3), 0.52, 0.62) * step(
        sheet.noise(240, 24, 2) + sheet.y / 900, 0.0, 0.5
    )
    sheet.tint(spots * 0.4 * min(1.0, strength + 0.35), rgb(0.55, 0.36, 0.17))
    rust = np.hypot(sheet.x * flip + 40, sheet.y - TALL / 2 + 14)
    sheet.tint(step(4.5 - rust, 0, 4) * 0.75, rgb(0.42, 0.22, 0.09))
    sheet.lose(0.7 - rust)


def _folds(sheet: Sheet, flip: int, before: bool) -> None:
    wander = 0.5 * sheet.noise(14, 28, 4)
    lines = [(sheet.y + wander, sheet.x * flip)] + [
        (flip * sheet.x - x + wander, sheet.y) for x in ACROSS
    ]
    for number, (distance, along) in enumerate(lines):
        sheet.fold(distance, sharp=2.6 if before else 0.1, dirt=0.5 if before else 0.22)
        split = step(
            sheet.noise(120, 40 + number, 2)[0:1, :]
            if number == 0
            else sheet.noise(120, 40 + number, 2)[:, 0:1],
            0.0,
            0.25,
        )
        split = np.broadcast_to(split, sheet.shape)
        gap = (2.2 if before else 0.25) * split * (np.abs(along) < 1e4)
        sheet.lose(gap * 0.5 - np.abs(distance) - 0.02)
        if before:
            sheet.lift = sheet.lift + 2.4 * split * np.exp(-np.abs(distance) / 9) * (distance > 0)
    for number, x in enumerate(ACROSS):
        hole = np.hypot((flip * sheet.x - x) / (5.5 + number % 3), sheet.y / (3.4 + number % 2)) - 1
        sheet.lose(-(hole + 0.35 * sheet.noise(6, 60 + number)) * 4)


def _red_line(sheet: Sheet) -> None:
    way = (
        sheet.y
        + 40
        - 90 * np.sin((sheet.x + 120) / 190) * np.exp(-(((sheet.x - 40) / 420) ** 2))
        - 0.16 * sheet.x
    )
    drawn = _line(np.abs(way), 0.75, 3) * sheet.inside(-430, 330, -200, 110, 2)
    sheet.tint(drawn * (0.75 + 0.2 * sheet.noise(6, 71)), rgb(0.62, 0.12, 0.10))


def _verso(sheet: Sheet, state: str) -> None:
    name = sheet.text("Mr Goss his chart", 300, -300, 15, face="LiberationSerif-Italic.ttf")
    sheet.tint(sheet.soft(name, 0.3) * 0.8, rgb(0.30, 0.19, 0.10))
    if state == "before":
        for number, box in enumerate(STRIPS):
            mask = sheet.inside(*box, 0.3)
            paint = (
                rgb(0.50, 0.36, 0.22)
                * (1 + 0.06 * sheet.noise(40, 80 + number) + 0.04 * sheet.noise(3, 81))[..., None]
            )
            sheet.add(mask, paint, 0.25, rough=0.6, relief=0.06 * sheet.noise(1.6, 82))
            sheet.lost = sheet.lost & ~(mask > 0.5)
            sheet.lift = sheet.lift + 1.2 * step(sheet.soft(mask, 4), 0.2, 0.9)
        return
    for box in STRIPS:
        sheet.tint(sheet.inside(*box, 1.0) * 0.16, rgb(0.52, 0.38, 0.22))
    if state == "mended":
        pale = rgb(0.88, 0.85, 0.76)
        for depth in [4 - np.abs(sheet.y)] + [4 - np.abs(-sheet.x - x) for x in ACROSS]:
            sheet.lost = sheet.lost & ~((depth > 0) & (sheet.edge > 3))
            sheet.patch(depth, pale, cover=0.5)
        for x in ACROSS:
            square = 13 - np.maximum(np.abs(-sheet.x - x), np.abs(sheet.y))
            sheet.patch(square, pale, cover=0.5, seed=33)
        return
    veil = rgb(0.875, 0.845, 0.765) * (1 + 0.02 * sheet.noise(30, 90))[..., None]
    sheet.tint(np.full(sheet.shape, 0.62, np.float32), veil)
    for depth in [4 - np.abs(sheet.y)] + [4 - np.abs(-sheet.x - x) for x in ACROSS]:
        sheet.tint(step(depth, -0.3, 0.5) * 0.25, rgb(0.91, 0.88, 0.80))
    seam = np.abs(sheet.y - 41)
    sheet.tint(step(5 - seam, 0, 0.8) * 0.14, rgb(0.92, 0.89, 0.81))
    sheet.lost = sheet.edge < 0
