"""Pictures for the pages: a few widths of each photo, upright, in sRGB, and pixels only."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Iterator, Mapping
from concurrent.futures import Executor, as_completed
from dataclasses import asdict, dataclass
from importlib import metadata
from io import BytesIO
from pathlib import Path

import PIL
from PIL import Image, features

from casebook.files import Cache, digest
from casebook.photos.decode import opened, read_tags
from casebook.photos.pixels import resized, upright

WIDTHS = (400, 800, 1600, 2400)
IN_PAGE = 1600
"""Wider pictures are for looking closely: one click away, and in one format that all can show."""

_QUALITY = {"JPEG": 82, "WebP": 80}
_SUFFIXES = {"JPEG": ".jpg", "WebP": ".webp"}
_TALLEST = {"JPEG": 65_500, "WebP": 16_383}  # limits of libjpeg and of the WebP container


def _heic_version() -> str:
    try:
        return metadata.version("pillow-heif")
    except metadata.PackageNotFoundError:
        return ""


# Whatever can change a byte of a picture, besides the original: same recipe, same bytes.
_CODECS = tuple(features.version(codec) for codec in ("jpg", "libjpeg_turbo", "webp", "littlecms2"))
_RECIPE = f"2 {WIDTHS} {IN_PAGE} {_QUALITY} {PIL.__version__} {_CODECS} {_heic_version()}"


@dataclass(frozen=True, slots=True)
class Derivative:
    """One published file: its name (digest of its own bytes, suffix), pixels, format, bytes."""

    name: str
    width: int
    height: int
    format: str
    size: int


@dataclass(frozen=True, slots=True)
class Picture:
    """All derivatives of one photo, from narrow to wide, of each width JPEG before WebP.

    The widest, beyond `IN_PAGE`, is JPEG alone.
    """

    widths: tuple[Derivative, ...]


class Unusable(Exception):
    """A photo, called `name`, that changed or went bad since it was inspected: `reason`."""

    def __init__(self, name: str, reason: str) -> None:
        super().__init__(name, reason)
        self.name = name
        self.reason = reason


def derive_all(
    jobs: Iterable[tuple[str, Path]],
    cache: Cache,
    executor: Executor | None,
    report: Callable[[int, int], None],
) -> Mapping[str, Picture]:
    """The picture of each job's original, given by digest and path; only what lacks is made.

    The bytes of a derivative are in the cache as `picture`, under its name. `report` is told how
    many of how many are made, after each one, and nothing when none had to be. Raises `Unusable`.
    """
    paths = dict(jobs)
    known = {original: _known(original, cache) for original in paths}
    lacking = [(original, paths[original]) for original, picture in known.items() if not picture]
    made: dict[str, Picture] = {}
    for original, picture in _made(lacking, cache, executor):
        made[original] = picture
        report(len(made), len(lacking))
    return {original: picture or made[original] for original, picture in known.items()}


def derive(original: str, path: Path, cache: Cache) -> Picture:
    """Make the picture of one photo, whose bytes have the digest `original`, into the cache."""
    data = path.read_bytes()
    if digest(data) != original:
        raise Unusable(path.name, "it changed while it was worked on")
    try:
        with opened(data) as image:
            cascade = _cascade(image)
    except Exception as fault:  # what a decoder raises on hostile bytes is of any type
        raise Unusable(path.name, str(fault) or type(fault).__name__) from fault
    widths = tuple(each for pixels in cascade for each in _encoded(pixels, cache))
    told = {"widths": [asdict(each) for each in widths]}
    cache.put("recipe", _key(original), json.dumps(told, sort_keys=True).encode())
    return Picture(widths)


def _made(
    lacking: list[tuple[str, Path]], cache: Cache, executor: Executor | None
) -> Iterator[tuple[str, Picture]]:
    """Each lacking picture as it is done; when one fails, those not begun are left."""
    if executor is None:
        yield from ((original, derive(original, path, cache)) for original, path in lacking)
        return
    tasks = {executor.submit(derive, original, path, cache): original for original, path in lacking}
    try:
        yield from ((tasks[task], task.result()) for task in as_completed(tasks))
    finally:
        for task in tasks:
            task.cancel()


def _known(original: str, cache: Cache) -> Picture | None:
    """The picture made earlier, if every byte of it is still there."""
    told = cache.get("recipe", _key(original))
    if told is None:
        return None
    widths = tuple(Derivative(**each) for each in json.loads(told)["widths"])
    whole = all(cache.get("picture", each.name) is not None for each in widths)
    return Picture(widths) if whole else None


def _key(original: str) -> str:
    return f"{original} {_RECIPE}"


# --- pixels ----------------------------------------------------------------------------------


def _cascade(image: Image.Image) -> list[Image.Image]:
    """The pixels of every width, from narrow to wide, each made from the next wider one."""
    orientation = read_tags(image).orientation
    width, height = image.size if orientation < 5 else image.size[::-1]
    sizes = [
        (across, max(1, round(height * across / width)))
        for across in sorted({min(each, width) for each in WIDTHS})
    ]
    cascade = [upright(image, orientation, sizes.pop())]
    while sizes:
        cascade.append(resized(cascade[-1], sizes.pop()))
    return cascade[::-1]


def _encoded(pixels: Image.Image, cache: Cache) -> Iterator[Derivative]:
    """The pixels in each format that can hold them, put into the cache under their names."""
    for kind, quality in _QUALITY.items():
        if pixels.height > _TALLEST[kind] or (kind != "JPEG" and pixels.width > IN_PAGE):
            continue
        out = BytesIO()
        if kind == "JPEG":
            pixels.save(out, "JPEG", quality=quality, optimize=True, progressive=True)
        else:
            pixels.save(out, "WEBP", quality=quality, method=4)
        data = out.getvalue()
        name = digest(data)[:20] + _SUFFIXES[kind]
        cache.put("picture", name, data)
        yield Derivative(name, pixels.width, pixels.height, kind, len(data))
