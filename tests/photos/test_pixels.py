"""Pixels are shown as they were meant: wide gamut and 16 bits by numbers, twins by fingerprints."""

from __future__ import annotations

import struct
import zlib
from io import BytesIO
from pathlib import Path

import pytest
from coloraide import Color
from PIL import ExifTags, Image, ImageCms

from casebook.photos.decode import opened, read_tags
from casebook.photos.pixels import fingerprint, resized, turned, upright

SIZE = (64, 48)
D50 = (0.9642, 1.0, 0.8249)
P3 = ((0.680, 0.320), (0.265, 0.690), (0.150, 0.060))
"""The primaries of Display P3 in x and y (SMPTE EG 432-1, from memory; those of coloraide too)."""


def shown(data: bytes, size: tuple[int, int] = SIZE) -> Image.Image:
    with opened(data) as image:
        return upright(image, read_tags(image).orientation, size)


# --- wide gamut ------------------------------------------------------------------------------


def p3_profile() -> bytes:
    """An sRGB profile whose primaries are those of Display P3; the two share curve and white."""
    data = bytearray(ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes())
    parts = dict(zip((b"rXYZ", b"gXYZ", b"bXYZ"), p3_colorants(), strict=True))
    count = struct.unpack(">I", data[128:132])[0]
    for at in range(132, 132 + 12 * count, 12):
        name, start = struct.unpack(">4sI", data[at : at + 8])
        if name in parts:
            fixed = (round(part * 65536) for part in parts[name])
            data[start + 8 : start + 20] = struct.pack(">3i", *fixed)
    return bytes(data)


def p3_colorants() -> list[list[float]]:
    """The XYZ of the primaries for D50, as a profile holds them."""
    units = ([1, 0, 0], [0, 1, 0], [0, 0, 1])
    return [Color("display-p3", unit).convert("xyz-d50").coords() for unit in units]


def test_the_primaries_are_those_of_display_p3() -> None:
    for unit, meant in zip(([1, 0, 0], [0, 1, 0], [0, 0, 1]), P3, strict=True):
        assert Color("display-p3", unit).xy() == pytest.approx(meant, abs=1e-4)
    total = [sum(parts) for parts in zip(*p3_colorants(), strict=True)]
    assert total == pytest.approx(D50, abs=5e-4)


@pytest.mark.parametrize("kind", ["PNG", "JPEG", "TIFF", "WEBP"])
@pytest.mark.parametrize(
    "colour", [(200, 120, 60), (90, 140, 110), (128, 128, 128), (230, 220, 200)]
)
def test_a_wide_gamut_becomes_srgb_by_numbers(colour: tuple[int, int, int], kind: str) -> None:
    out = BytesIO()
    Image.new("RGB", SIZE, colour).save(out, kind, icc_profile=p3_profile(), quality=100)
    meant = [
        part * 255
        for part in Color("display-p3", [one / 255 for one in colour]).convert("srgb").coords()
    ]
    assert shown(out.getvalue()).getpixel((5, 5)) == pytest.approx(meant, abs=2.5)


def test_what_srgb_cannot_show_is_brought_to_its_edge() -> None:
    out = BytesIO()
    Image.new("RGB", SIZE, (255, 0, 0)).save(out, "PNG", icc_profile=p3_profile())
    assert shown(out.getvalue()).getpixel((5, 5)) == pytest.approx((255, 0, 0), abs=2)


# --- 16 bits ---------------------------------------------------------------------------------

DEEP = (0xC8C8, 0x7878, 0x3C3C)
"""Three levels of 16 bits: 200, 120 and 60 of 8."""


def deep_png(kind: int = 2, levels: tuple[int, ...] = DEEP) -> bytes:
    """A PNG of 16 bits a channel, which Pillow does not write (PNG specification, W3C)."""

    def chunk(name: bytes, data: bytes) -> bytes:
        check = zlib.crc32(name + data)
        return struct.pack(">I", len(data)) + name + data + struct.pack(">I", check)

    head = struct.pack(">IIBBBBB", *SIZE, 16, kind, 0, 0, 0)
    row = b"\0" + struct.pack(f">{len(levels)}H", *levels) * SIZE[0]
    body = zlib.compress(row * SIZE[1])
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", body) + chunk(b"IEND", b"")


def deep_tiff() -> bytes:
    """A TIFF of 16 bits a channel, one strip, not packed (TIFF 6.0)."""
    pixels = struct.pack("<3H", *DEEP) * (SIZE[0] * SIZE[1])
    bits_at = 8 + len(pixels)
    tags = [
        *((256, 3, 1, SIZE[0]), (257, 3, 1, SIZE[1]), (258, 3, 3, bits_at), (259, 3, 1, 1)),
        *((262, 3, 1, 2), (273, 4, 1, 8), (277, 3, 1, 3), (278, 3, 1, SIZE[1])),
        (279, 4, 1, len(pixels)),
    ]
    bits = struct.pack("<3H", 16, 16, 16)
    listed = struct.pack("<H", len(tags)) + b"".join(struct.pack("<HHII", *tag) for tag in tags)
    head = b"II*\0" + struct.pack("<I", bits_at + len(bits))
    return head + pixels + bits + listed + b"\0" * 4


@pytest.mark.parametrize("make", [deep_png, deep_tiff])
def test_sixteen_bits_of_colour_are_shown_as_eight(make) -> None:
    assert shown(make()).getpixel((5, 5)) == pytest.approx((200, 120, 60), abs=1)


@pytest.mark.parametrize(
    ("kind", "levels", "meant"),
    [
        (0, (0x8080,), (128, 128, 128)),
        (4, (0x8080, 0xFFFF), (128, 128, 128)),
        (4, (0, 0x8080), (127, 127, 127)),
        (4, (0, 0), (255, 255, 255)),
        (6, (*DEEP, 0xFFFF), (200, 120, 60)),
        (6, (*DEEP, 0), (255, 255, 255)),
    ],
)
def test_sixteen_bits_of_grey_and_of_what_shines_through_lie_on_white(kind, levels, meant) -> None:
    assert shown(deep_png(kind, levels)).getpixel((5, 5)) == pytest.approx(meant, abs=1)


# --- fingerprints ----------------------------------------------------------------------------


def drawing(size: tuple[int, int] = (640, 480)) -> Image.Image:
    return Image.effect_mandelbrot(size, (-2, -1, 1, 1), 60).convert("RGB")


def apart(one: str, other: str) -> int:
    return (int(one, 16) ^ int(other, 16)).bit_count()


@pytest.mark.parametrize("width", [160, 320, 1000])
def test_a_picture_keeps_its_fingerprint_when_it_is_resized_and_saved(width: int) -> None:
    out = BytesIO()
    resized(drawing(), (width, width * 3 // 4)).save(out, "JPEG", quality=80)
    with Image.open(out) as again:
        first, second = fingerprint(drawing(), 1), fingerprint(again, 1)
    assert apart(first[:16], second[:16]) <= 2
    assert apart(first[16:], second[16:]) <= 8


@pytest.mark.parametrize("value", range(1, 9))
def test_the_turn_in_its_tags_makes_no_difference(value: int) -> None:
    back = {1: 1, 2: 2, 3: 3, 4: 4, 5: 5, 6: 8, 7: 7, 8: 6}[value]
    stored = turned(drawing(), back)
    assert apart(fingerprint(stored, value), fingerprint(drawing(), 1)) <= 2


def test_another_picture_has_another_fingerprint() -> None:
    mirrored = drawing().transpose(Image.Transpose.FLIP_LEFT_RIGHT)
    first, second = fingerprint(drawing(), 1), fingerprint(mirrored, 1)
    assert apart(first[:16], second[:16]) > 8
    assert apart(first[16:], second[16:]) > 40
    assert len(first) == 80


# --- HEIC ------------------------------------------------------------------------------------


def heic(**how: object) -> bytes:
    from pillow_heif import register_heif_opener

    register_heif_opener(thumbnails=False)
    out = BytesIO()
    Image.new("RGB", SIZE, (200, 120, 60)).save(out, "HEIF", quality=95, **how)
    return out.getvalue()


def test_heic_is_shown_upright_and_in_srgb(tmp_path: Path) -> None:
    tags = Image.Exif()
    tags[ExifTags.Base.Orientation] = 6
    seen = shown(heic(exif=tags), SIZE[::-1])
    assert seen.size == SIZE[::-1]
    assert seen.getpixel((5, 5)) == pytest.approx((200, 120, 60), abs=4)
    wide = shown(heic(icc_profile=p3_profile())).getpixel((5, 5))
    meant = [
        one * 255
        for one in Color("display-p3", [200 / 255, 120 / 255, 60 / 255]).convert("srgb").coords()
    ]
    assert wide == pytest.approx(meant, abs=4)
