"""Colours are shown as their profile measures them, held against a second colour library."""

from __future__ import annotations

import struct
from io import BytesIO
from itertools import product

import pytest
from coloraide import Color
from PIL import ExifTags, Image

from casebook.photos.colours import profile_of, to_srgb
from casebook.photos.decode import opened
from casebook.photos.pixels import upright
from tests.photos.profiles import Rgb, built_in, inks_profile, overprinted, rgb_profile

SIZE = (48, 32)
OVERPRINTS = tuple(product((0, 1), repeat=4))
MIDDLING: tuple[Rgb, ...] = ((200, 120, 60), (90, 140, 110), (128, 128, 128), (230, 220, 200))


def saved(image: Image.Image, kind: str, **how: object) -> bytes:
    out = BytesIO()
    image.save(out, kind, **how)
    return out.getvalue()


def shown(data: bytes) -> tuple[int, ...]:
    """The colour of a plain picture on a page."""
    with opened(data) as image:
        seen = upright(image, 1, SIZE).getpixel((5, 5))
    assert isinstance(seen, tuple)
    return tuple(int(one) for one in seen)


def levels(colour: Color) -> list[float]:
    return [255 * min(max(part, 0), 1) for part in colour.convert("srgb").coords()]


@pytest.mark.parametrize(
    ("mode", "space", "fits"),
    [("RGB", "sRGB", True), ("L", "sRGB", True), ("CMYK", "sRGB", False), ("RGB", "LAB", False)],
)
def test_a_profile_is_used_on_the_pixels_it_is_made_for(mode: str, space: str, fits: bool) -> None:
    data = saved(Image.new(mode, SIZE), "TIFF", icc_profile=built_in(space))
    with opened(data) as image:
        assert (to_srgb(image) is not None) is fits


def test_without_a_profile_there_is_no_way_to_go() -> None:
    with opened(saved(Image.new("RGB", SIZE), "JPEG")) as image:
        assert to_srgb(image) is None


# --- inks ------------------------------------------------------------------------------------


@pytest.mark.parametrize(("kind", "near"), [("TIFF", 1), ("JPEG", 2)])
@pytest.mark.parametrize("inks", OVERPRINTS)
def test_inks_with_a_profile_have_the_colour_that_it_measured(
    inks: tuple[int, ...], kind: str, near: int
) -> None:
    image = Image.new("CMYK", SIZE, tuple(255 * one for one in inks))
    data = saved(image, kind, icc_profile=inks_profile(), quality=100)
    assert shown(data) == pytest.approx(levels(Color("lab", overprinted(inks))), abs=near)


@pytest.mark.parametrize("ink", range(4))
def test_half_an_ink_lies_half_way_on_the_profile_s_own_scale(ink: int) -> None:
    inks = [int(one == ink) for one in range(4)]
    paper, full = overprinted([0, 0, 0, 0]), overprinted(inks)
    meant = [one + (other - one) * 128 / 255 for one, other in zip(paper, full, strict=True)]
    image = Image.new("CMYK", SIZE, tuple(128 * one for one in inks))
    data = saved(image, "TIFF", icc_profile=inks_profile())
    assert shown(data) == pytest.approx(levels(Color("lab", meant)), abs=1)


INKS: tuple[tuple[int, ...], ...] = (
    (0, 0, 0, 0),
    (255, 0, 0, 0),
    (0, 200, 255, 0),
    (40, 90, 20, 60),
)


@pytest.mark.parametrize("inks", INKS)
def test_inks_without_a_profile_are_taken_as_filters(inks: tuple[int, ...]) -> None:
    meant = [(255 - one) * (255 - inks[3]) / 255 for one in inks[:3]]
    for kind in ("TIFF", "JPEG"):
        data = saved(Image.new("CMYK", SIZE, inks), kind, quality=100)
        assert shown(data) == pytest.approx(meant, abs=2)


def ycck(inks: tuple[int, ...]) -> bytes:
    """A JPEG as a picture program writes inks: inverted, and as luminance and two differences."""
    red, green, blue = inks[:3]  # the inverse of what stands for C, M, Y once they are inverted
    light, yellow, pink = (
        0.299 * red + 0.587 * green + 0.114 * blue,
        128 - 0.168736 * red - 0.331264 * green + 0.5 * blue,
        128 + 0.5 * red - 0.418688 * green - 0.081312 * blue,
    )
    stored = tuple(255 - round(one) for one in (light, yellow, pink))
    image = Image.new("CMYK", SIZE, (*stored, inks[3]))
    data = bytearray(saved(image, "JPEG", quality=100, icc_profile=inks_profile()))
    mark = data.index(b"Adobe")
    data[mark + 11] = 2
    return bytes(data)


@pytest.mark.parametrize("inks", OVERPRINTS)
def test_inverted_inks_of_a_picture_program_are_shown_right(inks: tuple[int, ...]) -> None:
    data = ycck(tuple(255 * one for one in inks))
    assert shown(data) == pytest.approx(levels(Color("lab", overprinted(inks))), abs=4)


# --- wide gamut ------------------------------------------------------------------------------


@pytest.mark.parametrize("kind", ["PNG", "JPEG", "TIFF", "WEBP"])
@pytest.mark.parametrize("colour", MIDDLING)
def test_adobe_rgb_is_shown_by_numbers(colour: Rgb, kind: str) -> None:
    profile = rgb_profile("a98-rgb", 563 / 256)
    data = saved(Image.new("RGB", SIZE, colour), kind, icc_profile=profile, quality=100)
    assert shown(data) == pytest.approx(of("a98-rgb", colour), abs=2.5)


def of(space: str, colour: Rgb) -> list[float]:
    return levels(Color(space, [one / 255 for one in colour]))


@pytest.mark.parametrize("colour", MIDDLING)
def test_a_camera_s_adobe_rgb_is_known_by_its_tag_alone(colour: Rgb) -> None:
    tags = Image.Exif()
    tags.get_ifd(ExifTags.IFD.Exif)[ExifTags.Base.ColorSpace] = 65535
    tags.get_ifd(ExifTags.IFD.Exif)[0xA005] = {1: "R03"}
    data = saved(Image.new("RGB", SIZE, colour), "JPEG", exif=tags.tobytes(), quality=100)
    assert shown(data) == pytest.approx(of("a98-rgb", colour), abs=2)
    tags.get_ifd(ExifTags.IFD.Exif)[0xA005] = {1: "R98"}
    data = saved(Image.new("RGB", SIZE, colour), "JPEG", exif=tags.tobytes(), quality=100)
    assert shown(data) == pytest.approx(colour, abs=2)


def coded(primaries: int, curve: int, colour: Rgb) -> bytes:
    from pillow_heif import register_heif_opener

    register_heif_opener(thumbnails=False)
    image = Image.new("RGB", SIZE, colour)
    told = {"color_primaries": primaries, "transfer_characteristics": curve}
    return saved(image, "HEIF", quality=-1, matrix_coefficients=6, full_range_flag=1, **told)


@pytest.mark.parametrize("colour", MIDDLING)
def test_a_heic_that_names_its_colours_by_number_is_shown_by_them(colour: Rgb) -> None:
    assert shown(coded(12, 13, colour)) == pytest.approx(of("display-p3", colour), abs=3)
    assert shown(coded(1, 13, colour)) == pytest.approx(colour, abs=3)


@pytest.mark.parametrize(("primaries", "curve"), [(9, 16), (9, 18), (12, 16), (9, 1)])
def test_numbers_that_no_profile_here_stands_for_are_no_way(primaries: int, curve: int) -> None:
    with opened(coded(primaries, curve, (128, 128, 128))) as image:
        assert profile_of(image)
        assert to_srgb(image) is None


# --- other kinds of pixels -------------------------------------------------------------------


@pytest.mark.parametrize(
    "lab", [(60, 20, 30), (40, -10, -10), (90, 0, 0), (100, 0, 0), (20, 5, -8)]
)
def test_lab_pixels_are_shown_by_numbers(lab: tuple[int, int, int]) -> None:
    light, a, b = lab
    stored = (round(light * 2.55), a + 128, b + 128)
    meant = levels(Color("lab", [stored[0] / 2.55, a, b]))
    for how in ({"icc_profile": built_in("LAB")}, {}):  # Lab needs no profile to be understood
        data = saved(Image.new("LAB", SIZE, stored), "TIFF", **how)
        assert shown(data) == pytest.approx(meant, abs=1)


def grey_tiff(bits: int, white_is_zero: bool, level: int) -> bytes:
    """A TIFF of one deep grey, in one strip, not packed (TIFF 6.0)."""
    row = "".join(f"{level:0{bits}b}" for _ in range(SIZE[0]))
    pixels = int(row, 2).to_bytes(len(row) // 8, "big") * SIZE[1]
    photometric = 0 if white_is_zero else 1
    tags = [
        *((256, 3, 1, SIZE[0]), (257, 3, 1, SIZE[1]), (258, 3, 1, bits), (259, 3, 1, 1)),
        *((262, 3, 1, photometric), (273, 4, 1, 8), (277, 3, 1, 1), (278, 3, 1, SIZE[1])),
        (279, 4, 1, len(pixels)),
    ]
    listed = struct.pack("<H", len(tags)) + b"".join(struct.pack("<HHII", *tag) for tag in tags)
    return b"II*\0" + struct.pack("<I", 8 + len(pixels)) + pixels + listed + bytes(4)


@pytest.mark.parametrize(
    ("bits", "white_is_zero", "level", "meant"),
    [
        (16, False, 0xC8C8, 200),
        (16, True, 0xC8C8, 55),
        (16, True, 0, 255),
        (12, False, 0xC8C, 200),
        (12, False, 0xFFF, 255),
    ],
)
def test_deep_grey_is_shown_in_its_own_measure(
    bits: int, white_is_zero: bool, level: int, meant: int
) -> None:
    assert shown(grey_tiff(bits, white_is_zero, level)) == pytest.approx([meant] * 3, abs=1)
