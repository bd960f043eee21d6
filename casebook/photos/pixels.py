"""The pixels of an open picture as they are meant to be seen: upright, in sRGB, in any size."""

from __future__ import annotations

from itertools import pairwise

from PIL import Image

from casebook.photos.decode import DEEP, to_srgb

# The turn that shows a stored picture upright, by Exif tag 274 (JEITA CP-3451, p. 18).
_TURNS = {
    2: Image.Transpose.FLIP_LEFT_RIGHT,
    3: Image.Transpose.ROTATE_180,
    4: Image.Transpose.FLIP_TOP_BOTTOM,
    5: Image.Transpose.TRANSPOSE,
    6: Image.Transpose.ROTATE_270,
    7: Image.Transpose.TRANSVERSE,
    8: Image.Transpose.ROTATE_90,
}


def upright(image: Image.Image, orientation: int, size: tuple[int, int]) -> Image.Image:
    """The picture at `size` as it is meant to be seen: a new image of sRGB pixels, no more.

    `orientation` is the turn still to be done, `size` that of the upright picture, in pixels.
    """
    stored = size if orientation < 5 else size[::-1]
    image.draft(image.mode, stored)
    image.load()
    small = resized(_plain(image), stored)
    way = to_srgb(image)
    opaque = small.convert("RGB") if small.mode == "RGBA" else small
    if way is not None:
        opaque = way.transform.apply(opaque.convert(way.mode))
    sheet = Image.new("RGB", stored, "white")
    sheet.paste(opaque.convert("RGB"), mask=small.getchannel("A") if small.mode == "RGBA" else None)
    return turned(sheet, orientation)


def turned(image: Image.Image, orientation: int) -> Image.Image:
    """The picture with the turn done that is still to be done."""
    return image.transpose(_TURNS[orientation]) if orientation in _TURNS else image


_GRID = 16


def fingerprint(image: Image.Image, orientation: int) -> str:
    """What a decoded picture looks like, in 256 bits as hexadecimal: the same after resizing.

    Each bit tells whether one of 16 × 17 fields, upright, is lighter than the field to its right:
    a difference hash ("dHash", from memory). Near pictures differ in few bits.
    """
    grey = turned(_plain(image).convert("L"), orientation)
    levels = list(grey.resize((_GRID + 1, _GRID), Image.Resampling.BOX).tobytes())
    rows = (levels[at : at + _GRID + 1] for at in range(0, len(levels), _GRID + 1))
    bits = [one > other for row in rows for one, other in pairwise(row)]
    return f"{sum(bit << place for place, bit in enumerate(bits)):064x}"


def _plain(image: Image.Image) -> Image.Image:
    """The pixels in a mode that can be made smaller without harm."""
    if image.mode in DEEP:
        return image.convert("I").point(lambda level: level * (1 / 257)).convert("L")
    if image.has_transparency_data:
        return image.convert("RGBA")
    if image.mode in {"L", "RGB", "CMYK", "LAB"}:
        return image
    return image.convert("L" if image.mode == "1" else "RGB")


def resized(image: Image.Image, size: tuple[int, int]) -> Image.Image:
    """The picture at another size; as it is where that is its own."""
    if image.size == size:
        return image
    return image.resize(size, Image.Resampling.LANCZOS, reducing_gap=3.0)
