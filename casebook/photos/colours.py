"""From a picture's own colours to sRGB: by its profile, or by what stands in place of one."""

from __future__ import annotations

import functools
import struct
from dataclasses import dataclass
from io import BytesIO
from typing import Any

from PIL import ExifTags, Image, ImageCms

from casebook.photos.decode import GREYS

_SRGB = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB"))
_LAB = ImageCms.ImageCmsProfile(ImageCms.createProfile("LAB"))

_ADOBE = ((0.60977, 0.31112, 0.01947), (0.20530, 0.62565, 0.06088), (0.14922, 0.06322, 0.74475))
_P3 = ((0.51515, 0.24120, -0.00105), (0.29201, 0.69222, 0.04188), (0.15714, 0.06658, 0.78428))
"""Red, green and blue of Adobe RGB (1998) and of Display P3, as XYZ for D50 (from memory)."""
_ADOBE_GAMMA = 563 / 256

_UNKNOWN = b"colours that no profile here describes"


@dataclass(frozen=True, slots=True)
class ToSrgb:
    """How a picture's own colours become sRGB: its pixels as `mode`, through `transform`."""

    mode: str
    transform: ImageCms.ImageCmsTransform


def to_srgb(image: Image.Image) -> ToSrgb | None:
    """The way from the picture's own colours to sRGB, each colour as its profile measures it.

    None when it has no profile, or one that is damaged or made for another kind of pixels. Its
    paper becomes white; black stays as light as it is, so that what is measured is not changed.
    """
    profile = profile_of(image)
    if not profile:
        return None
    try:
        source = ImageCms.ImageCmsProfile(BytesIO(profile))
        mode = _mode_for(source.profile.xcolor_space.strip(), image.mode)
        intent = ImageCms.Intent.RELATIVE_COLORIMETRIC
        flags = ImageCms.Flags.NOCACHE | ImageCms.Flags.HIGHRESPRECALC
        transform = ImageCms.buildTransform(source, _SRGB, mode, "RGB", intent, flags)
    except (ImageCms.PyCMSError, OSError, ValueError):
        return None
    return ToSrgb(mode, transform)


def profile_of(image: Image.Image) -> bytes:
    """The picture's colour profile, or that of the colours which its tags name; empty for sRGB."""
    embedded = image.info.get("icc_profile")
    if embedded:
        return bytes(embedded)
    if "nclx_profile" in image.info:
        return _by_code(image.info["nclx_profile"])
    if image.mode == "LAB":
        return _LAB.tobytes()
    return _matrix_profile(_ADOBE, _ADOBE_GAMMA) if _is_option_file(image) else b""


def _mode_for(space: str, mode: str) -> str:
    """The kind of pixels to hand to a profile of a colour space; ValueError if it does not fit."""
    if space == "RGB" and mode not in {"CMYK", "LAB"}:
        return "RGB"
    if (space, mode) in {("CMYK", "CMYK"), ("Lab", "LAB")}:
        return mode
    if space == "GRAY" and mode in GREYS:
        return "L"
    raise ValueError(f"a profile for {space} on pixels of {mode}")


def _is_option_file(image: Image.Image) -> bool:
    """Whether a camera's JPEG says by its tags that it is in Adobe RGB (DCF 2.0, from memory)."""
    if image.format not in {"JPEG", "MPO"}:
        return False
    try:
        told = image.getexif().get_ifd(ExifTags.IFD.Interop).get(ExifTags.Interop.InteropIndex)
    except Exception:  # noqa: BLE001 - Pillow raises any type on damaged tags, which are told
        return False
    return str(told).startswith("R03")


def _by_code(code: dict[str, Any]) -> bytes:
    """The profile of a HEIC that names its colours by numbers (ITU-T H.273, from memory)."""
    primaries, curve = code["color_primaries"], code["transfer_characteristics"]
    if curve in {16, 18} or primaries not in {1, 2, 5, 6, 12}:
        return _UNKNOWN
    return _matrix_profile(_P3, None) if primaries == 12 else b""


@functools.cache
def _matrix_profile(colorants: tuple[tuple[float, ...], ...], gamma: float | None) -> bytes:
    """The profile of sRGB with other primaries, and where `gamma` is given another curve."""
    data = bytearray(_SRGB.tobytes())
    xyz = dict(zip((b"rXYZ", b"gXYZ", b"bXYZ"), colorants, strict=True))
    count = struct.unpack(">I", data[128:132])[0]
    for at in range(132, 132 + 12 * count, 12):
        name, start = struct.unpack(">4sI", data[at : at + 8])
        if name in xyz:
            data[start + 8 : start + 20] = _fixed(*xyz[name])
        elif name in {b"rTRC", b"gTRC", b"bTRC"} and gamma:
            data[start + 12 : start + 32] = _fixed(gamma, 1, 0, 0, 0)
    return bytes(data)


def _fixed(*numbers: float) -> bytes:
    """Numbers as a profile holds them: 16 bits before the point and 16 after it."""
    return struct.pack(f">{len(numbers)}i", *(round(one * 65536) for one in numbers))
