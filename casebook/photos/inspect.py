"""One photo file looked at without trust: what it truly is, and what is wrong with it."""

from __future__ import annotations

import json
import stat
from dataclasses import asdict, dataclass
from pathlib import Path

from PIL import Image, UnidentifiedImageError

from casebook.diagnostics import Diagnostic, Severity, Span
from casebook.files import Cache, digest
from casebook.photos.decode import (
    MAX_PIXELS,
    MODES,
    is_heic,
    opened,
    read_tags,
    reads_heic,
    to_srgb,
)
from casebook.photos.pixels import fingerprint

MAX_BYTES = 60_000_000
_SUFFIXES = {
    "JPEG": (".jpg", ".jpeg", ".jpe", ".jfif"),
    "PNG": (".png",),
    "TIFF": (".tif", ".tiff"),
    "WebP": (".webp",),
    "HEIC": (".heic", ".heif", ".hif"),
}

_RAW = frozenset({".nef", ".cr2", ".cr3", ".dng", ".arw", ".orf", ".pef", ".rw2", ".raf"})
_KINDS = {
    "JPEG": "JPEG",
    "MPO": "JPEG",
    "PNG": "PNG",
    "TIFF": "TIFF",
    "WEBP": "WebP",
    "HEIF": "HEIC",
}
_BEGINNINGS = (  # first bytes of what is often taken for a photo, after an offset
    (8, (b"avif", b"avis"), "an AVIF picture"),
    (0, (b"GIF87a", b"GIF89a"), "a GIF picture"),
    (0, (b"BM",), "a BMP picture"),
    (0, (b"8BPS",), "a Photoshop document"),
    (0, (b"%PDF",), "a PDF document"),
    (0, (b"<svg", b"<?xml"), "a drawing or text in XML"),
)
_SAVE_COPY = "save a copy as JPEG, PNG, TIFF or WebP and name that one in the record"
_ADD_HEIC = (
    'add what reads it: `python -m pip install "casebook[heic]"` (its library is under the GPL), '
    "or save a copy as JPEG"
)
_COPY_AGAIN = "copy it again from the camera or a backup"


@dataclass(frozen=True, slots=True)
class Inspected:
    """A photo that can be used: width and height in pixels as it is seen upright.

    `digest` is that of the file's bytes, `format` one of JPEG, PNG, TIFF, WebP, HEIC; `taken` is
    the camera's own date and time in ISO 8601, `device` its maker and model, each empty when not
    told. `looks` is the fingerprint of what it shows, in hexadecimal.
    """

    digest: str
    width: int
    height: int
    format: str
    taken: str
    device: str
    looks: str = ""


@dataclass(frozen=True, slots=True)
class Inspection:
    """What is known of a photo file, None when it cannot be used, and what is wrong with it."""

    photo: Inspected | None
    diagnostics: tuple[Diagnostic, ...] = ()


class _Refused(Exception):
    """A file that cannot be used: rule, message and hint."""

    def __init__(self, rule: str, message: str, hint: str = _SAVE_COPY) -> None:
        super().__init__(rule, message, hint)
        self.rule, self.message, self.hint = rule, message, hint


def inspect(path: Path, span: Span | None, case: str, cache: Cache | None = None) -> Inspection:
    """Look at a photo file without changing it; whatever is wrong with it is a diagnostic.

    `span` and `case` say where the record names it. With a cache a photo whose bytes were seen
    before is read but not decoded.
    """
    try:
        data = _read(path)
        seen = _seen(data, path, cache)
    except _Refused as no:
        message = f"{path.name} {no.message}"
        return Inspection(
            None, (Diagnostic(no.rule, Severity.ERROR, message, span, no.hint, case),)
        )
    remarks = [*_mislabelled(path, seen.photo), *(_REMARKS[each] for each in seen.remarks)]
    return Inspection(
        seen.photo,
        tuple(
            Diagnostic(rule, Severity.WARNING, f"{path.name} {message}", span, hint, case)
            for rule, message, hint in remarks
        ),
    )


@dataclass(frozen=True, slots=True)
class _Seen:
    """What the bytes tell, whatever the file is called."""

    photo: Inspected
    remarks: tuple[str, ...]


_REMARKS = {
    "pages": (
        "photo-pages",
        "holds several pictures: only the first is shown",
        "save the others as files of their own",
    ),
    "orientation": (
        "photo-orientation",
        "says which way up it is with a value that no standard knows: shown as stored",
        "turn it upright in a picture program and save it",
    ),
    "tags": (
        "photo-tags",
        "has damaged tags: its date and camera may be missing",
        "write the date into the record",
    ),
    "profile": (
        "photo-profile",
        "has a colour profile that is damaged or does not fit: its colours are taken as sRGB",
        "save it again with a colour profile",
    ),
}


def _read(path: Path) -> bytes:
    """The bytes of a file, if it is one, and not too long."""
    try:
        found = path.stat()
        if not stat.S_ISREG(found.st_mode):
            raise _Refused("photo-missing", "is not a file", "name a photo file")
        _limit_bytes(found.st_size)
        with path.open("rb") as file:
            data = file.read(MAX_BYTES + 1)
    except (FileNotFoundError, NotADirectoryError):
        raise _Refused("photo-missing", "is not there", "check its name and folder") from None
    except (OSError, ValueError) as fault:
        reason = getattr(fault, "strerror", None) or str(fault)
        raise _Refused("photo-missing", f"cannot be read: {reason}", _COPY_AGAIN) from fault
    _limit_bytes(len(data))
    return data


def _limit_bytes(size: int) -> None:
    if size > MAX_BYTES:
        told = f"has {size / 1e6:.0f} MB, more than {MAX_BYTES / 1e6:.0f} MB"
        raise _Refused("photo-too-large", told, "save a smaller copy and name that one")
    if not size:
        raise _Refused("photo-damaged", "is empty", _COPY_AGAIN)


def _seen(data: bytes, path: Path, cache: Cache | None) -> _Seen:
    """What the bytes tell, from the cache if they were seen before."""
    if path.suffix.lower() in _RAW:
        raise _Refused("photo-format", "is a camera's raw file, which is not read here")
    name = digest(data)
    if cache is None:
        return _looked_at(data, name)
    known = cache.get("inspection", name)
    if known is not None:
        told = json.loads(known)
        return _Seen(Inspected(**told["photo"]), tuple(told["remarks"]))
    seen = _looked_at(data, name)
    cache.put("inspection", name, json.dumps(asdict(seen), sort_keys=True).encode())
    return seen


def _looked_at(data: bytes, name: str) -> _Seen:
    """Decode the bytes once, all of them, or say why they cannot be used."""
    try:
        with opened(data) as image:
            return _facts(image, name)
    except (Image.DecompressionBombError, Image.DecompressionBombWarning):
        told = f"has more than {MAX_PIXELS // 1_000_000} million pixels"
        raise _Refused("photo-too-large", told, "save a smaller copy and name that one") from None
    except UnidentifiedImageError:
        if is_heic(data) and not reads_heic():
            raise _Refused("photo-format", "is a HEIC picture", _ADD_HEIC) from None
        if is_heic(data):
            told = "is a HEIC picture that is damaged or cut short"
            raise _Refused("photo-damaged", told, _COPY_AGAIN) from None
        raise _Refused("photo-format", _not_a_photo(data)) from None
    except _Refused:
        raise
    except Exception as fault:  # what a decoder raises on hostile bytes is of any type
        told = f"is damaged or cut short ({str(fault) or type(fault).__name__})"
        raise _Refused("photo-damaged", told, _COPY_AGAIN) from fault


def _facts(image: Image.Image, name: str) -> _Seen:
    """What an open picture tells; it is decoded to the last byte to see that it is whole."""
    if image.mode not in MODES:
        raise _Refused("photo-format", f"has pixels of a kind not read here ({image.mode})")
    width, height = image.size
    tags = read_tags(image)
    remarks = {
        "pages": _several(image),
        "profile": bool(image.info.get("icc_profile")) and to_srgb(image) is None,
        "orientation": tags.odd,
        "tags": tags.damaged,
    }
    image.draft(image.mode, (max(1, width // 8), max(1, height // 8)))  # quicker, a JPEG as whole
    image.load()
    if tags.orientation >= 5:
        width, height = height, width
    kind = _KINDS[image.format or ""]
    looks = fingerprint(image, tags.orientation)
    photo = Inspected(name, width, height, kind, tags.taken, tags.device, looks)
    return _Seen(photo, tuple(sorted(each for each, holds in remarks.items() if holds)))


def _several(image: Image.Image) -> bool:
    """Whether a file holds more pictures than one; a camera's preview in a JPEG is none."""
    if image.format != "TIFF":
        return image.format != "MPO" and getattr(image, "n_frames", 1) > 1
    try:
        image.seek(1)  # to count them all would read a list that may be made to be endless
    except EOFError:
        return False
    finally:
        image.seek(0)
    return True


def _mislabelled(path: Path, photo: Inspected) -> list[tuple[str, str, str]]:
    """What to say of a name that ends for another format than the bytes have."""
    if path.suffix.lower() in _SUFFIXES[photo.format]:
        return []
    better = path.with_suffix(_SUFFIXES[photo.format][0]).name
    hint = f"rename it {better}, here and in the record"
    return [("photo-mislabelled", f"is a {photo.format} file by its content", hint)]


def _not_a_photo(data: bytes) -> str:
    """What a file that is no photo seems to be."""
    for offset, beginnings, words in _BEGINNINGS:
        if data[offset : offset + 8].startswith(beginnings):
            return f"is {words}, which is not read here"
    return "is not a picture in a format read here"
