"""The painted scroll, part unrolled between two rolls: creased on thin rods, quiet on a thick one.

Offered under the GPL, version 3 or later, as well as under the project's LICENSE.
"""

from __future__ import annotations

import numpy as np

from tests.renders import bench, blender, surfaces
from tests.renders.paint import SERIF, Array, Field, mix, rgb, step

TALL, SHOWN = 168.0, 460.0
CREASES = (-205, -168, -121, -84, -31, 12, 70, 118, 149, 191)
CRACKED = (-168, -31, 118)


def build(state: str, view: str) -> None:
    """`before` and `after` from the front, `during` from the back."""
    after, back = state == "after", view == "verso"
    sheet = Field(SHOWN, TALL, 5)
    sheet.colour, sheet.relief = surfaces.old_paper(sheet, 1110, rgb(0.83, 0.77, 0.63))
    sheet.tint(
        step(9 - sheet.tall / 2 + sheet.y + 6 * sheet.noise(30, 1111), 0, 12) * 0.5,
        rgb(0.35, 0.32, 0.28),
    )
    if back:
        _verso(sheet)
    else:
        _harbour(sheet)
    lift = _creases(sheet, after, back)
    lost = _tears(sheet, after or back)
    sheet.there = ~lost
    cut = (slice(None, None, 2),) * 2
    points = np.stack([sheet.x, sheet.y, 0.6 + lift], -1)[cut]
    blender.mesh(
        "sheet",
        points,
        blender.painted("sheet", sheet, relief_mm=0.12, gloss=0.2),
        there=sheet.there[cut],
    )
    radius = 40.0 if after else 16.0
    _roll(SHOWN / 2, radius, 1, rod=11 if not after else 0)
    _roll(-SHOWN / 2, 13.0 if not after else 11.5, -1, rod=11)
    bench.ground(2200)
    bench.from_above(330, SHOWN + 130, 0.05, after=after, light="raking", left=-SHOWN / 2 - 32)


def _harbour(sheet: Field) -> None:
    """Sky, hills, houses, quay, water and shipping, as a sign-painter would do them."""
    wide, small = sheet.noise(70, 1120), sheet.noise(9, 1121, 4)
    sky = (
        rgb(0.66, 0.72, 0.72)
        + (rgb(0.86, 0.80, 0.68) - rgb(0.66, 0.72, 0.72))
        * np.clip(0.75 - sheet.y / 90 + 0.3 * wide, 0, 1)[..., None]
    )
    sheet.tint(np.full(sheet.shape, 0.8, np.float32) * (sheet.y > -20), sky)
    hills = step(22 + 12 * sheet.noise(120, 1122, 3) - sheet.y, 0, 1.2)
    sheet.tint(hills * 0.85, rgb(0.44, 0.50, 0.38) * (1 + 0.2 * small)[..., None])
    _houses(sheet)
    quay = step(-14 - sheet.y, 0, 0.5)
    sheet.tint(quay, rgb(0.50, 0.44, 0.36) * (1 + 0.12 * small)[..., None])
    sea = step(-24 - sheet.y, 0, 0.6)
    waves = 0.5 + 0.5 * np.sin(sheet.y * 2.1 + 3 * sheet.noise(26, 1123, 3))
    sheet.tint(sea * 0.95, (rgb(0.34, 0.43, 0.42) * (0.85 + 0.25 * waves + 0.1 * small)[..., None]))
    foam = sea * step(sheet.noise(11, 1124, 3), 0.42, 0.6) * step(waves, 0.6, 0.9)
    sheet.tint(foam * 0.8, rgb(0.90, 0.90, 0.86))
    for number, at in enumerate((-190, -112, -40, 36, 128, 196)):
        _ship(sheet, float(at), -34.0 - 9 * (number % 3), 0.8 + 0.22 * ((number * 5) % 3), number)
    sheet.tint(np.full(sheet.shape, 0.2, np.float32), rgb(0.70, 0.60, 0.44))
    for x in np.arange(-214, 220, 48):
        cue = np.hypot(sheet.x - x, (sheet.y + 79) * 0.6)
        sheet.tint(step(1.8 - cue, 0, 0.5) * 0.8, rgb(0.66, 0.16, 0.12))


def _houses(sheet: Field) -> None:
    random = np.random.default_rng(1130)
    x = -SHOWN / 2
    while x < SHOWN / 2:
        wide, tall = 9 + 14 * random.random(), 12 + 17 * random.random()
        wall = sheet.inside(x, x + wide, -14, -14 + tall, 0.2)
        tone = rgb(0.78, 0.70, 0.56) * (0.78 + 0.35 * random.random())
        tone = tone * rgb(1.0, 0.93 + 0.1 * random.random(), 0.85 + 0.2 * random.random())
        sheet.tint(wall, tone * (1 + 0.06 * sheet.noise(4, 1131))[..., None])
        ridge = step(
            wide / 2 - np.abs(sheet.x - x - wide / 2) * 1.0 - (sheet.y + 14 - tall) * 1.3, 0, 0.4
        ) * (sheet.y > -14 + tall)
        sheet.tint(ridge * 0.95, rgb(0.46, 0.27, 0.21) * (0.8 + 0.4 * random.random()))
        for row in np.arange(-9, -14 + tall - 3, 6.5):
            for column in np.arange(x + 2.5, x + wide - 2.5, 5):
                sheet.tint(
                    sheet.inside(column, column + 2, row, row + 3, 0.2) * 0.8, rgb(0.2, 0.22, 0.24)
                )
        x += wide + (0.6 if random.random() < 0.8 else 7)
    sign = sheet.text("ANCHOR INN", -60, 3, 4.2, face=SERIF)
    sheet.tint(sign, rgb(0.12, 0.1, 0.1))


def _ship(sheet: Field, x: float, y: float, size: float, number: int) -> None:
    """A brig or a sloop: hull, masts, pale sails that flake at the creases."""
    u, v = (sheet.x - x) / size, (sheet.y - y) / size
    for mast in (-9, 7) if number % 2 else (0,):
        for low, high, half in ((7, 20, 8.5), (21, 31, 6.5), (32, 38, 4.5)):
            full = 1.2 * np.sin(np.pi * np.clip((v - low) / (high - low), 0, 1))
            sail = (
                step(half - np.abs(u - mast - full), 0, 0.4)
                * step(v - low, 0, 0.4)
                * step(high - v, 0, 0.4)
            )
            shade = (
                rgb(0.91, 0.88, 0.79) * (0.92 + 0.1 * np.clip((u - mast) / half, -1, 1))[..., None]
            )
            sheet.tint(sail, shade)
        pole = step(0.55 - np.abs(u - mast), 0, 0.2) * step(v, 0, 0.4) * step(42 - v, 0, 0.4)
        sheet.tint(pole * 0.9, rgb(0.22, 0.15, 0.10))
    hull = step(
        np.minimum(19 - np.abs(u - 0.15 * v), np.minimum(4.5 + 0.012 * u * u - v, v + 3.5)), 0, 0.4
    )
    sheet.tint(hull, rgb(0.15, 0.13, 0.12))
    sheet.tint(hull * step(0.7 - np.abs(v - 1.2), 0, 0.3), rgb(0.74, 0.62, 0.36))


def _creases(sheet: Field, after: bool, back: bool) -> Array:
    """How far the sheet stands off the bench, with paint lost along its creases."""
    lift = sheet.flat() + 0.6 * np.clip(sheet.noise(110, 1140, 2), 0, 1)
    wander = 0.8 * sheet.noise(40, 1141, 3)
    strength = 0.12 if after else 0.45 if back else 1.0
    for at in CREASES:
        far = sheet.x * (-1 if back else 1) - at + wander
        lift = lift + strength * 4.4 * np.exp(-np.abs(far) / 8)
        sheet.tint(
            np.exp(-((far / 0.5) ** 2)) * (0.22 if after else 0.55),
            rgb(0.86, 0.82, 0.72) if not back else rgb(0.5, 0.42, 0.3),
        )
        flakes = np.exp(-((far / 1.8) ** 2)) * step(sheet.noise(2.4, 1142 + at % 7, 3), 0.1, 0.3)
        if not back:
            sheet.tint(flakes * (0.25 if after else 0.8), rgb(0.87, 0.82, 0.70))
    return lift + (0 if after else 5.0 * np.clip(np.abs(sheet.x) / (SHOWN / 2) - 0.75, 0, 1))


def _tears(sheet: Field, mended: bool) -> Array:
    """Tears from the lower edge and cracks along creases, as what is missing."""
    lost, random = np.zeros(sheet.shape, bool), np.random.default_rng(1150)
    if mended:
        return lost
    for x in np.linspace(-210, 210, 12):
        deep = 6 + 46 * random.random() ** 2
        far = sheet.x - x - 8 * random.normal() + 1.5 * sheet.noise(16, 1151, 3)
        along = np.clip((-TALL / 2 + deep - sheet.y) / deep, 0, 1)
        lost |= np.abs(far) < 0.9 * along
    for at in CRACKED:
        far = sheet.x - at + 0.8 * sheet.noise(40, 1141, 3)
        lost |= (np.abs(far) < 0.35) & (np.abs(sheet.y - 20) < 52)
    return lost


def _verso(sheet: Field) -> None:
    """The back: bare paper, strips behind the cracks, a patch of a bill of fare."""
    name = sheet.text("This way up, Joshua", 118, 40, 9, face="LiberationSerif-Italic.ttf", turn=-2)
    sheet.tint(name * 0.5, rgb(0.42, 0.42, 0.43))
    pale = rgb(0.91, 0.885, 0.81)
    for at in CRACKED:
        far = (
            2
            - np.abs(-sheet.x - at + 0.8 * sheet.noise(40, 1141, 3))
            + 0.2 * sheet.noise(1.5, 1161)
        )
        sheet.tint(step(far, -0.3, 0.4) * 0.72, pale)
    random = np.random.default_rng(1150)
    for x in np.linspace(-210, 210, 12):
        deep = 6 + 46 * random.random() ** 2
        far = -sheet.x - x - 8 * random.normal() + 1.5 * sheet.noise(16, 1151, 3)
        strip = np.minimum(2.5 - np.abs(far), -TALL / 2 + deep + 3 - sheet.y) + 0.2 * sheet.noise(
            1.5, 1162
        )
        sheet.tint(step(strip, -0.3, 0.4) * 0.72, pale)
    for x, y, wide, tall in ((-70, -58, 58, 40), (150, 62, 44, 34)):
        depth = sheet.depth(
            x - wide / 2, x + wide / 2, y - tall / 2, y + tall / 2
        ) + 1.4 * sheet.noise(9, 1163, 4)
        paper = rgb(0.77, 0.69, 0.53) * (1 + 0.05 * sheet.noise(9, 1164))[..., None]
        type_ = surfaces.printed(
            sheet,
            1165,
            "SOLES fried HAM Boiled MUTTON Capers PORTER Stout BEEF cold CHEESE Tart 2s 6d 9d",
            size=4.2,
        )
        sheet.tint(step(depth, 0, 0.3), mix(paper, paper * 0.22, type_ * 0.8))


def _roll(x: float, radius: float, side: int, *, rod: float) -> None:
    """A roll at one end, its edge spiralling, with its rod standing out at head and foot."""
    angle = np.linspace(0, 2 * np.pi * 2.6, 260)
    out = radius * (1 - 0.05 * angle / angle[-1])
    px = x + side * (radius * 0.02 + out * np.sin(angle))
    pz = radius + 0.6 - out * np.cos(angle)
    y = np.linspace(-TALL / 2, TALL / 2, 40)
    roll = Field(120, TALL, 3)
    roll.colour, roll.relief = surfaces.old_paper(roll, 1170 + side, rgb(0.81, 0.74, 0.60))
    roll.tint(step(7 - roll.tall / 2 + np.abs(roll.y), 0, 8) * 0.4, rgb(0.45, 0.38, 0.28))
    points = np.stack(np.broadcast_arrays(px[None, :], y[:, None], pz[None, :]), -1)
    blender.mesh("roll", points, blender.painted("roll", roll, gloss=0.2))
    if not rod:
        _tube(
            x + side * radius * 0.02,
            radius * 0.92,
            radius + 0.6,
            TALL / 2 + 14,
            rgb(0.88, 0.86, 0.80),
        )
        return
    _tube(x, rod * 0.8, radius + 0.6, TALL / 2 + 26, rgb(0.62, 0.47, 0.30))


def _tube(x: float, radius: float, z: float, half: float, colour: Array) -> None:
    a, y = np.meshgrid(np.linspace(0, 2 * np.pi, 60), np.linspace(-half, half, 30))
    skin = Field(60, 60, 4)
    skin.colour = colour * (1 + 0.08 * skin.noise(20, 1180) + 0.05 * skin.noise(1, 1181))[..., None]
    points = np.stack([x + radius * np.sin(a), y, z - radius * np.cos(a)], -1)
    blender.mesh("tube", points, blender.painted("tube", skin))
    for end in (-half, half):
        r, b = np.meshgrid(np.linspace(0, radius, 8), np.linspace(0, 2 * np.pi, 60))
        cap = np.stack([x + r * np.sin(b), np.full_like(r, end), z - r * np.cos(b)], -1)
        blender.mesh("cap", cap, blender.plain("end", tuple(float(v) * 0.85 for v in colour)))
