"""The pixels of an open picture as they are meant to be seen: upright, in sRGB, in any size."""

from __future__ import annotations

from itertools import pairwise

from PIL import ExifTags, Image, ImageOps

from casebook.photos.colours import to_srgb
from casebook.photos.decode import DEEP

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


_COARSE, _FINE = 8, 16
COARSE_BITS, FINE_BITS = _COARSE**2, _FINE**2


def fingerprint(image: Image.Image, orientation: int) -> str:
    """What a decoded picture looks like: 64 coarse bits and 256 fine ones, as hexadecimal.

    Each bit tells whether one of 8 × 9 fields, upright, is lighter than the field to its right; of
    16 × 17 for the fine ones: a difference hash ("dHash", from memory). A picture that is resized
    and saved again keeps almost all of the coarse bits, another has others.
    """
    grey = turned(_plain(image).convert("L"), orientation)
    return f"{_lighter(grey, _COARSE):016x}{_lighter(grey, _FINE):064x}"


def _lighter(grey: Image.Image, rows: int) -> int:
    wide = rows + 1
    levels = grey.resize((wide, rows), Image.Resampling.BOX).tobytes()
    fields = (levels[at : at + wide] for at in range(0, len(levels), wide))
    bits = [one > other for row in fields for one, other in pairwise(row)]
    return sum(bit << place for place, bit in enumerate(bits))


def _plain(image: Image.Image) -> Image.Image:
    """The pixels in a mode that can be made smaller without harm."""
    if image.mode in DEEP:
        return _shallow(image)
    if image.has_transparency_data:
        return image.convert("RGBA")
    if image.mode in {"L", "RGB", "CMYK", "LAB"}:
        return image
    return image.convert("L" if image.mode == "1" else "RGB")


def _shallow(image: Image.Image) -> Image.Image:
    """Grey of 12 or 16 bits in 8; a TIFF may also count from white (TIFF 6.0, tag 262)."""
    tags = getattr(image, "tag_v2", {})
    top = (1 << tags.get(ExifTags.Base.BitsPerSample, (16,))[0]) - 1
    grey = image.convert("I").point(lambda level: level * (255 / top) + 0.5).convert("L")
    white_is_zero = tags.get(ExifTags.Base.PhotometricInterpretation) == 0
    return ImageOps.invert(grey) if white_is_zero else grey


def resized(image: Image.Image, size: tuple[int, int]) -> Image.Image:
    """The picture at another size; as it is where that is its own."""
    if image.size == size:
        return image
    return image.resize(size, Image.Resampling.LANCZOS, reducing_gap=3.0)
