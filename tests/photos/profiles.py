"""Colour profiles made by hand, byte for byte (ICC.1:2001-04, from memory), for known colours."""

from __future__ import annotations

import struct
from collections.abc import Sequence
from itertools import product

from coloraide import Color
from PIL import ImageCms

Rgb = tuple[int, int, int]

INKS: tuple[Rgb, ...] = ((40, 150, 200), (200, 60, 130), (245, 220, 60), (35, 33, 30))
"""What full cyan, magenta, yellow and black look like on paper, in sRGB."""


def overprinted(inks: Sequence[int]) -> list[float]:
    """The Lab (D50) of inks that lie full (1) or not at all (0), each a filter over the others."""
    light = [255.0, 255.0, 255.0]
    for full, ink in zip(inks, INKS, strict=True):
        if full:
            light = [one * part / 255 for one, part in zip(light, ink, strict=True)]
    return list(Color("srgb", [one / 255 for one in light]).convert("lab").coords())


def inks_profile() -> bytes:
    """A profile of CMYK that measures the sixteen overprints and goes straight between them."""
    corners = (overprinted(inks) for inks in product((0, 1), repeat=4))
    grid = b"".join(struct.pack(">3H", *_lab16(lab)) for lab in corners)
    straight = struct.pack(">2H", 0, 65535)
    unit = struct.pack(">9i", *(65536 * one for one in (1, 0, 0, 0, 1, 0, 0, 0, 1)))
    head = b"mft2" + bytes(4) + bytes([4, 3, 2, 0]) + unit + struct.pack(">2H", 2, 2)
    return _profile(b"prtr", b"CMYK", b"Lab ", {b"A2B0": head + straight * 4 + grid + straight * 3})


def _lab16(lab: Sequence[float]) -> tuple[int, int, int]:
    """Lab in the 16 bits of version 2: 0xFF00 is L* 100, 0x8000 is a* or b* 0."""
    lightness, a, b = lab
    return round(lightness * 652.8), round((a + 128) * 256), round((b + 128) * 256)


def _profile(kind: bytes, space: bytes, meets: bytes, tags: dict[bytes, bytes]) -> bytes:
    """The whole of a profile: its head, the list of its tags, the tags."""
    white = b"XYZ " + bytes(4) + struct.pack(">3i", 63190, 65536, 54061)
    text = b"text" + bytes(4) + b"made for a test\0"
    every = {b"wtpt": white, b"cprt": text, b"desc": _described(b"test"), **tags}
    at, listed, body = 132 + 12 * len(every), b"", b""
    for name, data in every.items():
        padded = data + bytes(-len(data) % 4)
        listed += struct.pack(">4sII", name, at + len(body), len(data))
        body += padded
    size = at + len(body)
    head = struct.pack(
        ">I4sI4s4s4s12s4s", size, bytes(4), 0x02400000, kind, space, meets, bytes(12), b"acsp"
    )
    illuminant = struct.pack(">3i", 63190, 65536, 54061)
    head = head.ljust(68, b"\0") + illuminant
    return head.ljust(128, b"\0") + struct.pack(">I", len(every)) + listed + body


def _described(name: bytes) -> bytes:
    head = b"desc" + bytes(4) + struct.pack(">I", len(name) + 1) + name + b"\0"
    return head + bytes(4 + 4 + 2 + 1 + 67)


def rgb_profile(space: str, gamma: float) -> bytes:
    """A profile of three primaries that a colour library knows by name, with one power for each."""
    units = ([1, 0, 0], [0, 1, 0], [0, 0, 1])
    points = [Color(space, unit).convert("xyz-d50").coords() for unit in units]
    curve = b"curv" + bytes(4) + struct.pack(">IH", 1, round(gamma * 256))
    tags = dict.fromkeys((b"rTRC", b"gTRC", b"bTRC"), curve)
    for name, point in zip((b"rXYZ", b"gXYZ", b"bXYZ"), points, strict=True):
        tags[name] = b"XYZ " + bytes(4) + struct.pack(">3i", *(round(one * 65536) for one in point))
    return _profile(b"mntr", b"RGB ", b"XYZ ", tags)


def built_in(space: str) -> bytes:
    """The bytes of a profile that the imaging library makes."""
    return ImageCms.ImageCmsProfile(ImageCms.createProfile(space)).tobytes()  # type: ignore[arg-type]
