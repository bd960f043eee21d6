"""The pixels of an open picture as they are meant to be seen: upright, in sRGB, in any size."""

from __future__ import annotations

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
    return sheet.transpose(_TURNS[orientation]) if orientation in _TURNS else sheet


def _plain(image: Image.Image) -> Image.Image:
    """The pixels in a mode that can be made smaller without harm."""
    if image.mode in DEEP:
        return image.convert("I").point(lambda level: level * (1 / 257)).convert("L")
    if image.has_transparency_data:
        return image.convert("RGBA")
    if image.mode in {"L", "CMYK", "LAB"}:
        return image
    return image.convert("L" if image.mode == "1" else "RGB")


def resized(image: Image.Image, size: tuple[int, int]) -> Image.Image:
    """The picture at another size; as it is where that is its own."""
    if image.size == size:
        return image
    return image.resize(size, Image.Resampling.LANCZOS, reducing_gap=3.0)
