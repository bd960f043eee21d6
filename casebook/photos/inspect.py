"""One photo file looked at without trust: what it truly is, and what is wrong with it."""

from __future__ import annotations

import json
import stat
from dataclasses import asdict, dataclass
from pathlib import Path

from PIL import Image, UnidentifiedImageError

from casebook.diagnostics import Diagnostic, Span
from casebook.files import Cache, digest
from casebook.photos.colours import profile_of, to_srgb
from casebook.photos.decode import (
    MAX_PIXELS,
    MODES,
    is_heic,
    opened,
    read_tags,
    reads_heic,
)
from casebook.photos.kinds import KINDS, RAW, SUFFIXES, begins_as, seems
from casebook.photos.pixels import fingerprint
from casebook.photos.told import (
    DAMAGED,
    FORMAT,
    INKS,
    MISLABELLED,
    MISSING,
    ORIENTATION,
    PAGES,
    PROFILE,
    TAGS,
    TOO_LARGE,
    Telling,
)

MAX_BYTES = 60_000_000
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
    """A file that cannot be used: for what it is told, message and hint."""

    def __init__(self, telling: Telling, message: str, hint: str = _SAVE_COPY) -> None:
        super().__init__(telling.name, message, hint)
        self.telling, self.message, self.hint = telling, message, hint


def inspect(path: Path, span: Span | None, case: str, cache: Cache | None = None) -> Inspection:
    """Look at a photo file without changing it; whatever is wrong with it is a diagnostic.

    `span` and `case` say where the record names it. With a cache a photo whose bytes were seen
    before is read but not decoded.
    """
    try:
        data = _read(path)
        seen = _seen(data, path, cache)
    except _Refused as no:
        told = no.telling.of(f"{path.name} {no.message}", span, no.hint, case)
        return Inspection(None, (told,))
    remarks = [*_mislabelled(path, seen.photo), *(_REMARKS[each] for each in seen.remarks)]
    told_each = (
        telling.of(f"{path.name} {message}", span, hint, case) for telling, message, hint in remarks
    )
    return Inspection(seen.photo, tuple(told_each))


@dataclass(frozen=True, slots=True)
class _Seen:
    """What the bytes tell, whatever the file is called."""

    photo: Inspected
    remarks: tuple[str, ...]


_REMARKS = {
    "pages": (
        PAGES,
        "holds several pictures: only the first is shown",
        "save the others as files of their own",
    ),
    "orientation": (
        ORIENTATION,
        "says which way up it is with a value that no standard knows: shown as stored",
        "turn it upright in a picture program and save it",
    ),
    "tags": (
        TAGS,
        "has damaged tags: its date and camera may be missing",
        "write the date into the record",
    ),
    "profile": (
        PROFILE,
        "has a colour profile that is damaged or does not fit: it is left out",
        "save it again with a colour profile",
    ),
    "inks": (
        INKS,
        "is in printing inks without a colour profile: its colours are a guess",
        "save it as RGB in the program that made it, or with its profile",
    ),
}


def _read(path: Path) -> bytes:
    """The bytes of a file, if it is one, and not too long."""
    try:
        found = path.stat()
        if not stat.S_ISREG(found.st_mode):
            raise _Refused(MISSING, "is not a file", "name a photo file")
        _limit_bytes(found.st_size)
        with path.open("rb") as file:
            data = file.read(MAX_BYTES + 1)
    except (FileNotFoundError, NotADirectoryError):
        raise _Refused(MISSING, "is not there", "check its name and folder") from None
    except (OSError, ValueError) as fault:
        reason = getattr(fault, "strerror", None) or str(fault)
        raise _Refused(MISSING, f"cannot be read: {reason}", _COPY_AGAIN) from fault
    _limit_bytes(len(data))
    return data


def _limit_bytes(size: int) -> None:
    if size > MAX_BYTES:
        told = f"has {size / 1e6:.0f} MB, more than {MAX_BYTES / 1e6:.0f} MB"
        raise _Refused(TOO_LARGE, told, "save a smaller copy and name that one")
    if not size:
        raise _Refused(DAMAGED, "is empty", _COPY_AGAIN)


def _seen(data: bytes, path: Path, cache: Cache | None) -> _Seen:
    """What the bytes tell, from the cache if they were seen before."""
    if path.suffix.lower() in RAW:
        raise _Refused(FORMAT, "is a camera's raw file, which is not read here")
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
        raise _Refused(TOO_LARGE, told, "save a smaller copy and name that one") from None
    except UnidentifiedImageError:
        raise _unread(data) from None
    except _Refused:
        raise
    except Exception as fault:  # what a decoder raises on hostile bytes is of any type
        told = f"is damaged or cut short ({str(fault) or type(fault).__name__})"
        raise _Refused(DAMAGED, told, _COPY_AGAIN) from fault


def _facts(image: Image.Image, name: str) -> _Seen:
    """What an open picture tells; it is decoded to the last byte to see that it is whole."""
    if image.mode not in MODES:
        raise _Refused(FORMAT, f"has pixels of a kind not read here ({image.mode})")
    width, height = image.size
    tags, profile = read_tags(image), profile_of(image)
    remarks = {
        "pages": _several(image),
        "profile": bool(profile) and to_srgb(image) is None,
        "inks": image.mode == "CMYK" and not profile,
        "orientation": tags.odd,
        "tags": tags.damaged,
    }
    image.draft(image.mode, (max(1, width // 8), max(1, height // 8)))  # quicker, a JPEG as whole
    image.load()
    if tags.orientation >= 5:
        width, height = height, width
    kind = KINDS[image.format or ""]
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


def _mislabelled(path: Path, photo: Inspected) -> list[tuple[Telling, str, str]]:
    """What to say of a name that ends for another format than the bytes have."""
    if path.suffix.lower() in SUFFIXES[photo.format]:
        return []
    better = path.with_suffix(SUFFIXES[photo.format][0]).name
    hint = f"rename it {better}, here and in the record"
    return [(MISLABELLED, f"is a {photo.format} file by its content", hint)]


def _unread(data: bytes) -> _Refused:
    """Why no decoder takes the bytes."""
    if is_heic(data) and not reads_heic():
        return _Refused(FORMAT, "is a HEIC picture", _ADD_HEIC)
    kind = "HEIC" if is_heic(data) else begins_as(data)
    if kind:
        told = f"begins as a {kind} does, but is damaged, cut short or of a rare kind"
        return _Refused(DAMAGED, told, f"{_COPY_AGAIN}, or {_SAVE_COPY}")
    return _Refused(FORMAT, seems(data))
