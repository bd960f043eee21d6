"""Opening pictures that nobody vouches for: allowed formats and sizes, and their tags."""

from __future__ import annotations

import functools
import re
import warnings
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import datetime
from io import BytesIO

from PIL import ExifTags, Image

MAX_PIXELS = 120_000_000
FORMATS = ("JPEG", "PNG", "TIFF", "WEBP")
_HEIC = (b"heic", b"heix", b"hevc", b"heim", b"heis", b"mif1", b"msf1")
# Grey of 16 bits a pixel; colour of 16 bits arrives from Pillow cut to 8.
DEEP = frozenset({"I;16", "I;16L", "I;16B", "I;16N"})
GREYS = DEEP | {"1", "L", "LA", "La"}
MODES = GREYS | {"P", "PA", "RGB", "RGBA", "RGBa", "RGBX", "CMYK", "YCbCr", "LAB"}

# Pillow's own limit is lower than ours; above ours its warning is made an error in `opened`.
Image.MAX_IMAGE_PIXELS = MAX_PIXELS


@contextmanager
def opened(data: bytes) -> Iterator[Image.Image]:
    """The picture in `data`, of an allowed format and size, not decoded yet.

    Raises Pillow's own errors, of many types, on what is no such picture, here and when decoding.
    """
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # what else Pillow warns of, the inspection tells
        warnings.simplefilter("error", Image.DecompressionBombWarning)
        formats = ("HEIF",) if is_heic(data) and reads_heic() else FORMATS
        with Image.open(BytesIO(data), formats=formats) as image:
            if image.width * image.height > MAX_PIXELS:
                raise Image.DecompressionBombError
            yield image


def is_heic(data: bytes) -> bool:
    """Whether a file begins as HEIC does: a box `ftyp` with one of its brands (from memory)."""
    return data[4:8] == b"ftyp" and data[8:12] in _HEIC


@functools.cache
def reads_heic() -> bool:
    """Whether HEIC is read here: by the extra `heic`, which brings pillow-heif."""
    try:
        import pillow_heif  # noqa: PLC0415 - an extra, loaded for the first such file
    except ImportError:
        return False
    pillow_heif.register_heif_opener(thumbnails=False)
    return True


# --- tags ------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class Tags:
    """What a camera wrote beside the pixels.

    `taken` is ISO 8601, `device` maker and model, each empty when not told. `orientation` is the
    turn still to be done, 1 to 8 as in Exif tag 274 (JEITA CP-3451, p. 18); `odd` tells that the
    tag holds another value, `damaged` that the tags cannot be read.
    """

    taken: str = ""
    device: str = ""
    orientation: int = 1
    odd: bool = False
    damaged: bool = False


def read_tags(image: Image.Image) -> Tags:
    """The tags of an open picture; call it before decoding, where a TIFF turns itself upright."""
    try:
        exif = image.getexif()
        stored = exif.get(ExifTags.Base.Orientation, 1)
        odd = stored not in range(1, 9)
        turned_by_pillow = image.format == "TIFF"
        return Tags(
            taken=_taken(exif.get_ifd(ExifTags.IFD.Exif)),
            device=_device(exif),
            orientation=1 if odd or turned_by_pillow else int(stored),
            odd=odd,
            damaged=_damaged(image.info.get("exif", b"")),
        )
    except Exception:  # noqa: BLE001 - Pillow raises any type here; the pixels may be whole
        return Tags(damaged=True)


def _damaged(block: bytes) -> bool:
    """Whether a block of tags reads with a complaint; Pillow keeps those to itself on opening."""
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("error")
            Image.Exif().load(block)
    except Exception:  # noqa: BLE001 - as above
        return True
    return False


def _taken(exif: dict[int, object]) -> str:
    """The moment of the exposure, else of its digitizing, with its offset from UTC if told."""
    for moment, offset in (
        (ExifTags.Base.DateTimeOriginal, ExifTags.Base.OffsetTimeOriginal),
        (ExifTags.Base.DateTimeDigitized, ExifTags.Base.OffsetTimeDigitized),
    ):
        told = _iso(_text(exif.get(moment)), _text(exif.get(offset)))
        if told:
            return told
    return ""


def _iso(moment: str, offset: str) -> str:
    """ "2024:05:01 12:30:00" as ISO 8601; empty for a placeholder or a day that never was."""
    digits = re.fullmatch(r"(\d{4}):(\d\d):(\d\d) (\d\d:\d\d:\d\d)", moment)
    if not digits:
        return ""
    told = "{}-{}-{}T{}".format(*digits.groups())
    zone = offset if re.fullmatch(r"[+-]\d\d:[0-5]\d", offset) else ""
    try:
        return datetime.fromisoformat(told + zone).isoformat()
    except ValueError:
        return ""


def _device(exif: Image.Exif) -> str:
    """Maker and model in one line; the maker once, where the model repeats it."""
    make, model = _text(exif.get(ExifTags.Base.Make)), _text(exif.get(ExifTags.Base.Model))
    repeated = model.casefold().startswith(make.casefold())
    return (model if repeated else f"{make} {model}").strip()[:80]


def _text(value: object) -> str:
    """A tag's text without padding and control characters; empty for anything else."""
    if not isinstance(value, str):
        return ""
    return " ".join("".join(c if c.isprintable() else " " for c in value).split())
