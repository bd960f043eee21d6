"""The mean colour of areas of a photo: the only figures of its pixels that leave this floor."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from math import floor
from pathlib import Path

from PIL import Image

from casebook.files import Cache
from casebook.photos.decode import opened, read_tags
from casebook.photos.pixels import upright
from casebook.values.points import Box

Linear = tuple[float, float, float]
"""Red, green and blue of sRGB in linear light, 0 to 1."""


def linear(level: int) -> float:
    """A level of sRGB, 0 to 255, in linear light. Source: IEC 61966-2-1 as quoted by the W3C."""
    encoded = level / 255
    if encoded <= 0.04045:
        return encoded / 12.92
    return float(((encoded + 0.055) / 1.055) ** 2.4)


_LINEAR = tuple(linear(level) for level in range(256))


def areas_of(
    path: Path, original: str, boxes: Iterable[Box], cache: Cache | None
) -> Mapping[str, Linear]:
    """The mean of each area of a photo that was inspected, by its box as `canonical` writes it.

    The mean is taken in linear light, where light adds up. An area that is not wholly in the
    picture, or holds no whole pixel, is left out. `original` is the digest of the file's bytes.
    """
    wanted = {box.canonical(): box for box in boxes}
    if not wanted:
        return {}
    key = f"{original} {sorted(wanted)}"
    told = cache.get("areas", key) if cache else None
    if told is None:
        found = _means(path.read_bytes(), wanted)
        if cache:
            cache.put("areas", key, json.dumps(found, sort_keys=True).encode())
        return found
    return {name: (one[0], one[1], one[2]) for name, one in json.loads(told).items()}


def _means(data: bytes, wanted: Mapping[str, Box]) -> dict[str, Linear]:
    with opened(data) as image:
        orientation = read_tags(image).orientation
        size = image.size if orientation < 5 else image.size[::-1]
        whole = upright(image, orientation, size)
    found = {name: _mean(whole, box) for name, box in wanted.items()}
    return {name: mean for name, mean in found.items() if mean is not None}


def _mean(image: Image.Image, box: Box) -> Linear | None:
    """The mean over the pixels whose middle lies in the box."""
    if not box.inside(*image.size):
        return None
    (left, top), _, (right, bottom), _ = box.corners(*image.size)
    edges = tuple(floor(edge + (1 if edge % 1 > 0.5 else 0)) for edge in (left, top, right, bottom))
    if edges[0] >= edges[2] or edges[1] >= edges[3]:
        return None
    counts = image.crop((edges[0], edges[1], edges[2], edges[3])).histogram()
    red, green, blue = (_of(counts[at : at + 256]) for at in (0, 256, 512))
    return red, green, blue


def _of(counts: list[int]) -> float:
    """The mean in linear light of one channel, from how often each level occurs."""
    return sum(n * _LINEAR[level] for level, n in enumerate(counts)) / sum(counts)
