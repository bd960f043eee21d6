"""Turns a rendered picture into a camera's JPEG: fall-off, grain, and tags that agree with a record.

Offered under the GPL, version 3 or later, as well as under the project's LICENSE.
"""

from __future__ import annotations

from pathlib import Path

import numpy as np
from PIL import Image

from tests.renders.paint import blurred

MAKER, MODEL = "Oakum Row", "Copy stand 1 (invented)"
QUALITY = 88


def develop(
    png: Path, jpeg: Path, *, seed: int, taken: str, place: tuple | None, comment: str
) -> None:
    """Write the JPEG; `taken` is YYYY-MM-DD, `place` degrees north and east, or None."""
    light = np.asarray(Image.open(png).convert("RGB"), np.float32) / 255
    image = Image.fromarray((_grained(light, seed) * 255 + 0.5).astype(np.uint8))
    tags = _tags(taken, seed, place)
    image.save(
        jpeg,
        quality=QUALITY,
        subsampling=1,
        optimize=True,
        exif=tags,
        comment=comment.encode() or None,
    )


def _grained(light: np.ndarray, seed: int) -> np.ndarray:
    """Darker towards the corners, with the grain of a sensor: the denoiser alone is too smooth."""
    h, w = light.shape[:2]
    y, x = np.mgrid[0:h, 0:w]
    out = ((x / w - 0.5) ** 2 + ((y / h - 0.5) * h / w) ** 2) / 0.36
    light = light * (1 - 0.07 * out)[..., None]
    random = np.random.default_rng(seed)
    fine = blurred(random.normal(0, 1, (h, w)), 0.65)
    colour = np.stack([blurred(random.normal(0, 1, (h, w)), 0.9) for _ in range(3)], -1)
    grain = 0.0062 * fine[..., None] / fine.std() + 0.0035 * colour / colour.std()
    mean = np.clip(light.mean(-1, keepdims=True), 0, 1)
    return np.clip(light + grain * (0.55 + 0.9 * np.sqrt(mean) * (1.2 - mean)), 0, 1)


def _tags(taken: str, seed: int, place: tuple[float, float] | None) -> Image.Exif:
    """When, with what, how exposed; and where, for the few pictures that are to give that away."""
    minute = int(np.random.default_rng(seed).integers(9 * 60, 17 * 60))
    when = f"{taken.replace('-', ':')} {minute // 60:02}:{minute % 60:02}:00"
    tags = Image.Exif()
    tags[0x010F], tags[0x0110], tags[0x0132], tags[0x0112] = MAKER, MODEL, when, 1
    tags[0x0131] = "rendered picture of an invented object"
    details = tags.get_ifd(0x8769)
    details[0x9003], details[0x829D], details[0x920A] = when, 11.0, 100.0
    details[0x829A], details[0x8827] = 0.125, 100
    if place is not None:
        where = tags.get_ifd(0x8825)
        north, east = place
        where[1], where[2] = "N" if north >= 0 else "S", _degrees(north)
        where[3], where[4] = "E" if east >= 0 else "W", _degrees(east)
    return tags


def _degrees(value: float) -> tuple[float, float, float]:
    whole = abs(value)
    minutes = (whole - int(whole)) * 60
    return float(int(whole)), float(int(minutes)), round((minutes - int(minutes)) * 60, 2)
