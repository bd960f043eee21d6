"""The playbill for The Wreckers' Bride: tape and its stain, then washed and mended.

Offered under the GPL, version 3 or later, as well as under the project's LICENSE.
"""

from __future__ import annotations

import numpy as np
from PIL import ImageDraw, ImageFont

from tests.renders import surfaces
from tests.renders.paint import BOLD, ITALIC, SERIF, Array, Field, rgb, step
from tests.renders.sheet import Sheet, stage

WIDE, TALL = 246.0, 384.0
TAPES = (
    (-123.0, 70.0, -9.5, 9.5), (33.0, 123.0, 92.0, 111.0), (-60.0, -41.0, -192.0, -90.0),
    (28.0, 47.0, -192.0, -92.0), (-10.0, 123.0, -6.0, 13.0),
)  # fmt: skip
"""Five strips, 618 mm in all, as they lie on the back."""
LINES = (
    ("THEATRE, FISH STREET.", 158, 14, BOLD), ("On FRIDAY Evening, October 14th, 1831,", 139, 7.5, SERIF),
    ("will be presented, for the First Time here, the Nautical Melo-Drama of THE", 126, 4.6, SERIF),
    ("WRECKERS'", 98, 30, BOLD), ("BRIDE;", 66, 32, BOLD), ("OR, THE LIGHT ON THE SOW.", 42, 9.5, BOLD),
    ("Capt. Hawser, Mr. DELL. Black Will, Mr. STOKES. Peter Pilchard, Mr. FAY.", 28, 4.9, SERIF),
    ("Dame Margery, Mrs. DELL. And Ellen, the Wreckers' Bride, Miss LARK.", 20, 4.9, SERIF),
    ("A COMIC SONG, by Mr. FAY.", 2, 8.5, BOLD), ("A HORNPIPE,", -18, 15, BOLD),
    ("in Character, by Miss LARK and the Crew.", -31, 6, SERIF),
    ("The whole to conclude with the laughable Farce of", -48, 5.4, SERIF), ("MY UNCLE'S", -66, 17, BOLD),
    ("LANTERN.", -90, 20, BOLD), ("Pit, 2s. Gallery, 1s. Doors open at Six, to begin at Half-past.", -112, 5.4, SERIF),
    ("VIVAT REX.   No money returned.", -126, 6, SERIF), ("J. QUILL, PRINTER, FISH STREET, QUERNMOUTH.", -160, 4.2, SERIF),
)  # fmt: skip


def build(state: str, view: str) -> None:
    """The playbill, before, mended (verso) or after; recto, verso or the recto in ultraviolet."""
    before, back, dark = state == "before", view == "verso", view == "ultraviolet"
    flip = -1 if back else 1
    sheet = Sheet(WIDE, TALL, 7, rough_edge=0.3)
    colour = rgb(0.74, 0.635, 0.45) if before else rgb(0.855, 0.80, 0.675)
    if dark:
        colour = rgb(0.42, 0.46, 0.58) if before else rgb(0.55, 0.60, 0.73)
    sheet.colour, sheet.relief = surfaces.old_paper(sheet, 5, colour)
    edge = rgb(0.20, 0.19, 0.25) if dark else rgb(0.52, 0.40, 0.25)
    sheet.ageing(edge, 16, 0.45 if before else 0.18)
    ink = sheet.drawn(_print) * (0.86 + 0.2 * sheet.noise(2, 13))
    sheet.tint((ink[:, ::-1] if back else ink) * (0.10 if back else 0.86), rgb(0.13, 0.12, 0.115))
    if not back:
        price = sheet.text("3/-, Hobbs", -84, -176, 7, face=ITALIC)
        sheet.tint(price * 0.55, rgb(0.4, 0.4, 0.41))
    _stains(sheet, flip, before, dark)
    _damage(sheet, flip, state, dark)
    if back and before:
        _tape(sheet)
    sheet.cockle(2.2 if before else 0.35, cell=80)
    if before:
        for depth in _tape_depths(sheet, flip):
            sheet.lift = sheet.lift + 0.8 * step(sheet.soft(step(depth, 0, 1), 5), 0.2, 0.9)
    sheet.build(2, fray=rgb(0.62, 0.66, 0.76) if dark else None, glows=dark)
    after = not before and not back
    stage(sheet, after=after, light="ultraviolet" if dark else "top")


def _print(pen: ImageDraw.ImageDraw, on: Field) -> None:
    for words, y, size, face in LINES:
        font = ImageFont.truetype(face, size * on.px)
        wide = pen.textlength(words, font=font)
        font = ImageFont.truetype(face, size * on.px * min(1.0, 214 * on.px / wide))
        pen.text(on.at(0, y), words, fill=240, font=font, anchor="mm")
    for y, half in ((147, 90), (35, 60), (11, 40), (-6, 30), (-39, 50), (-104, 90), (-152, 100)):
        pen.line([on.at(-half, y), on.at(half, y)], fill=220, width=max(1, int(0.4 * on.px)))


def _tape_depths(sheet: Sheet, flip: int) -> list[Array]:
    """How deep each point lies in each length of tape, which is on the back."""
    boxes = [(min(-flip * a, -flip * b), max(-flip * a, -flip * b), c, d) for a, b, c, d in TAPES]
    return [sheet.depth(*box) for box in boxes]


def _stains(sheet: Sheet, flip: int, before: bool, dark: bool) -> None:
    """Where the adhesive went through: brown and translucent, darkest at its edges.

    In ultraviolet it does not glow; and what washing left of it shows a little more than by day.
    """
    left = 1.0 if before else 0.30 if dark else 0.17
    brown = rgb(0.13, 0.10, 0.09) if dark else rgb(0.56, 0.37, 0.16)
    for number, depth in enumerate(_tape_depths(sheet, flip)):
        wander = depth + 1.5 * sheet.noise(7, 30 + number, 4)
        body = step(wander, -2.6, 1.4) * (0.62 + 0.2 * sheet.noise(12, 40 + number))
        rim = np.exp(-(((wander - 0.6) / 1.1) ** 2)) * 0.25
        if dark:
            body, rim = body * 1.3, rim * 0.5
        sheet.tint(np.clip(body + rim, 0, 0.85) * left, brown)
        sheet.rough = sheet.rough - 0.2 * body * (1 if before else 0)


def _damage(sheet: Sheet, flip: int, state: str, dark: bool) -> None:
    """The fold, three tears and the lost corner; or what mends them."""
    before, fx = state == "before", flip * sheet.x
    wander = 0.7 * sheet.noise(15, 51, 4)
    fold = sheet.y - 2 + wander * 0.4
    sheet.fold(fold, sharp=1.6 if before else 0.1, dirt=0.5 if before else 0.2)
    open_ = step(fx + 53, 0, 8)
    tears = (
        (fold, open_), (sheet.y - 101 + 2 * wander, step(-59 - fx, 0, 50)),
        (fx - 50 + 2 * wander, step(-151 - sheet.y, 0, 30)), (fx + 38 + 2 * wander, step(-154 - sheet.y, 0, 30)),
    )  # fmt: skip
    corner = (
        1.15
        - np.hypot((WIDE / 2 - fx) / 18, (sheet.y + TALL / 2) / 24)
        + 0.14 * sheet.noise(6, 52, 4)
    )
    for number, (distance, along) in enumerate(tears):
        sheet.tint(np.exp(-((distance / 0.3) ** 2)) * (along > 0.02) * 0.5, rgb(0.36, 0.27, 0.17))
        if before:
            sheet.tear(distance, along, gap=1.6 if number else 1.0, rise=1.8)
        elif flip < 0:
            reach = np.minimum(4 - np.abs(distance), (along - 0.02) * 40)
            sheet.patch(reach, rgb(0.91, 0.885, 0.81), cover=0.45, seed=60 + number)
    if before:
        sheet.lose(corner)
    else:
        new = rgb(0.40, 0.44, 0.60) if dark else rgb(0.83, 0.77, 0.64)
        paint, _ = surfaces.old_paper(sheet, 55, new)
        sheet.tint(step(corner, -0.01, 0.03), paint)
        sheet.tint(np.exp(-((corner / 0.02) ** 2)) * 0.25, rgb(0.5, 0.42, 0.3))
    for px, py in ((-114, 183), (113, 184), (-115, -184)):
        pin = np.hypot(fx - px, sheet.y - py)
        sheet.tint(step(2.2 - pin, 0, 1.8) * 0.5, rgb(0.45, 0.27, 0.13))
        sheet.lose(0.5 - pin)


def _tape(sheet: Sheet) -> None:
    """The film of the tape, shiny and wrinkled, loose at its ends."""
    for number, depth in enumerate(_tape_depths(sheet, -1)):
        mask = step(depth, 0, 0.15)
        sheet.lost = sheet.lost & ~(depth > 0)
        bubbles = step(sheet.noise(6, 71 + number, 3), 0.1, 0.4)
        sheet.tint(mask * (0.35 + 0.3 * bubbles), rgb(0.71, 0.53, 0.28))
        sheet.rough = sheet.rough * (1 - mask) + mask * (0.16 + 0.1 * bubbles)
        sheet.height = sheet.height + mask * (0.12 + 0.25 * bubbles)
        sheet.tint(np.exp(-((depth / 0.35) ** 2)) * 0.4, rgb(0.46, 0.30, 0.13))
