"""Each message about photo files is one that real files give, word for word."""

from __future__ import annotations

from collections.abc import Callable
from io import BytesIO
from pathlib import Path

import pytest
from PIL import Image

from casebook.files import Cache
from casebook.loading import load_archive
from casebook.photos.told import TELLINGS, Telling
from tests.photos.test_inspect import bomb, exif

Make = Callable[[], bytes]


def drawn(kind: str = "JPEG", mode: str = "RGB", quality: int = 90, **how: object) -> bytes:
    out = BytesIO()
    picture = Image.effect_mandelbrot((320, 240), (-2, -1, 1, 1), 60).convert(mode)
    picture.save(out, kind, quality=quality, **how)
    return out.getvalue()


def pages() -> bytes:
    return drawn("TIFF", save_all=True, append_images=[Image.new("RGB", (9, 9))])


def dated() -> bytes:
    return drawn(exif=exif(DateTimeOriginal="2025:01:28 14:03:00", Model="Invented 1"))


WRITTEN: dict[str, tuple[str, dict[str, Make]]] = {
    "photo-missing": ("spine.jpg", {"one/Spine.JPG": drawn}),
    "photo-too-large": ("map.png", {"one/map.png": lambda: bomb(20_000, 20_000)}),
    "photo-damaged": ("spine.jpg", {"one/spine.jpg": bytes}),
    "photo-format": ("spine.jpg", {"one/spine.jpg": lambda: drawn("GIF")}),
    "photo-mislabelled": ("spine.png", {"one/spine.png": drawn}),
    "photo-pages": ("pages.tif", {"one/pages.tif": pages}),
    "photo-orientation": (
        "spine.jpg",
        {"one/spine.jpg": lambda: drawn(exif=exif(Orientation=9))},
    ),
    "photo-tags": ("spine.jpg", {"one/spine.jpg": lambda: drawn(exif=b"Exif\0\0no tags")}),
    "photo-profile": ("spine.jpg", {"one/spine.jpg": lambda: drawn(icc_profile=b"none")}),
    "photo-inks": ("plate.tif", {"one/plate.tif": lambda: drawn("TIFF", "CMYK")}),
    "photo-date-in-tags": ("spine.jpg", {"one/spine.jpg": dated}),
    "photo-date-differs": ("{file: spine.jpg, date: 2024}", {"one/spine.jpg": dated}),
    "photo-twice": ("spine.jpg, copy.jpg", {"one/spine.jpg": drawn, "one/copy.jpg": drawn}),
    "photo-near-twin": (
        "spine.jpg, spine-2.jpg",
        {"one/spine.jpg": drawn, "one/spine-2.jpg": lambda: drawn(quality=60)},
    ),
    "photo-in-two-cases": (
        "front.jpg, spine.jpg",
        {"2025-009/front.jpg": drawn, "one/spine.jpg": lambda: drawn(quality=60)},
    ),
    "no-logo": ("", {}),
}
"""The photos that two cases have, and the files that are there."""


@pytest.mark.parametrize("one", TELLINGS, ids=lambda one: one.name)
def test_the_example_is_what_such_files_are_told(tmp_path: Path, one: Telling) -> None:
    photos, files = WRITTEN[one.name]
    (tmp_path / "lab.yml").write_text("format: 1\nlogo: mark.png\n", "utf-8")
    for case in ("2025-009", "one"):
        folder = tmp_path / "cases" / case
        folder.mkdir(parents=True)
        (folder / "case.md").write_text(f"---\nid: c-{case}\nphotos: [{photos}]\n---\n", "utf-8")
    for name, make in files.items():
        (tmp_path / "cases" / name).write_bytes(make())
    found = load_archive(tmp_path, Cache(tmp_path / "cache", "test")).diagnostics
    assert (one.example, one.severity) in {
        (each.message, each.severity) for each in found if each.rule == one.name
    }


def test_every_message_has_a_name_of_its_own() -> None:
    assert len({one.name for one in TELLINGS}) == len(TELLINGS) == len(WRITTEN)
