"""Kinds of files: how the names of photos end, and what a file seems to be by its first bytes."""

from __future__ import annotations

SUFFIXES = {
    "JPEG": (".jpg", ".jpeg", ".jpe", ".jfif"),
    "PNG": (".png",),
    "TIFF": (".tif", ".tiff"),
    "WebP": (".webp",),
    "HEIC": (".heic", ".heif", ".hif"),
}
"""How the name of a photo may end, by its format; the first is the usual one."""

KINDS = {
    "JPEG": "JPEG",
    "MPO": "JPEG",
    "PNG": "PNG",
    "TIFF": "TIFF",
    "WEBP": "WebP",
    "HEIF": "HEIC",
}
"""A format's name here, by the imaging library's."""

RAW = frozenset({".nef", ".cr2", ".cr3", ".dng", ".arw", ".orf", ".pef", ".rw2", ".raf"})
"""Endings of cameras' raw files, of which many begin as a TIFF does."""

_READ = (
    (0, (b"\xff\xd8\xff",), "JPEG"),
    (0, (b"\x89PNG\r\n\x1a\n",), "PNG"),
    (0, (b"II*\0", b"MM\0*"), "TIFF"),
    (8, (b"WEBP",), "WebP"),
)
_NOT_READ = (  # what is often taken for a photo
    (4, (b"ftypavif", b"ftypavis"), "an AVIF picture"),
    (4, (b"ftyp",), "a film, or a picture in a container of films"),
    (0, (b"GIF87a", b"GIF89a"), "a GIF picture"),
    (0, (b"\0\0\0\x0cjP  ",), "a JPEG 2000 picture"),
    (0, (b"\0\0\0\x0cJXL ", b"\xff\x0a"), "a JPEG XL picture"),
    (0, (b"BM",), "a BMP picture"),
    (0, (b"8BPS",), "a Photoshop document"),
    (0, (b"%PDF",), "a PDF document"),
    (0, (b"<svg", b"<?xml"), "a drawing or text in XML"),
)


def begins_as(data: bytes) -> str:
    """The format read here as which a file begins; empty for none."""
    return _first(data, _READ)


def seems(data: bytes) -> str:
    """What a file that is no photo seems to be."""
    kind = _first(data, _NOT_READ)
    return (
        f"is {kind}, which is not read here" if kind else "is not a picture in a format read here"
    )


def _first(data: bytes, kinds: tuple[tuple[int, tuple[bytes, ...], str], ...]) -> str:
    return next(
        (kind for offset, begins, kind in kinds if data[offset : offset + 8].startswith(begins)), ""
    )
