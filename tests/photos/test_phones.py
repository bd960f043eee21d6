"""What phones write is shown right, or told in one message; of what is not the picture nothing stays."""

from __future__ import annotations

import struct
from io import BytesIO
from pathlib import Path

import pytest
from PIL import Image

from casebook.files import Cache
from casebook.photos.inspect import inspect
from tests.photos import phones
from tests.photos.phones import CORNERS, FILES, SECRET, box, heic_turned, quarters
from tests.photos.test_derive import assert_only_pixels, data_of, near, picture_of, pixels_of


@pytest.fixture
def cache(tmp_path: Path) -> Cache:
    return Cache(tmp_path / "cache", "salt")


def assert_upright(path: Path, cache: Cache) -> None:
    """Every derivative shows the four quarters where they belong."""
    for image in pixels_of(path, cache):
        assert image.width > image.height
        for at, colour in enumerate(CORNERS):
            place = (image.width * (1 + 2 * (at % 2)) // 4, image.height * (1 + 2 * (at // 2)) // 4)
            assert near(image.getpixel(place), colour, 14)


@pytest.mark.parametrize("name", FILES)
def test_it_is_shown_or_told_and_nothing_else_of_it_is_published(
    tmp_path: Path, cache: Cache, name: str
) -> None:
    make, told = FILES[name]
    (tmp_path / name).write_bytes(make())
    assert name == "burst.heic" or SECRET in make()
    found = inspect(tmp_path / name, None, "")
    assert {one.rule for one in found.diagnostics} == told
    assert found.photo
    assert (found.photo.width, found.photo.height) == (512, 384)
    assert_upright(tmp_path / name, cache)
    for each in picture_of(tmp_path / name, cache).widths:
        data = data_of(each, cache)
        assert SECRET not in data
        assert_only_pixels(data)


@pytest.mark.parametrize("name", ["motion.jpg", "portrait.jpg", "gain-map.jpg", "all.heic"])
def test_the_moment_is_told_with_its_offset_and_without_parts_of_a_second(
    tmp_path: Path, name: str
) -> None:
    (tmp_path / name).write_bytes(FILES[name][0]())
    photo = inspect(tmp_path / name, None, "").photo
    assert photo
    assert (photo.taken, photo.device) == ("2025-01-28T14:03:00-05:00", "Invented Phone 1")


TURNS = {
    6: (box(b"irot", b"\x03"), Image.Transpose.ROTATE_90),
    8: (box(b"irot", b"\x01"), Image.Transpose.ROTATE_270),
    3: (box(b"irot", b"\x02"), Image.Transpose.ROTATE_180),
    2: (box(b"imir", b"\x01"), Image.Transpose.FLIP_LEFT_RIGHT),
    4: (box(b"imir", b"\x00"), Image.Transpose.FLIP_TOP_BOTTOM),
}
"""By its tag: the turn as HEIC writes it, counterclockwise in quarters, and how it is stored."""


@pytest.mark.parametrize("value", TURNS)
def test_a_heic_that_says_its_turn_twice_is_turned_once(
    tmp_path: Path, cache: Cache, value: int
) -> None:
    turn, stored = TURNS[value]
    path = tmp_path / "a.heic"
    path.write_bytes(heic_turned(turn, quarters().transpose(stored), value))
    photo = inspect(path, None, "").photo
    assert photo
    assert (photo.width, photo.height) == (512, 384)
    assert_upright(path, cache)


def test_a_film_or_a_moving_picture_under_a_photo_s_name_is_refused(tmp_path: Path) -> None:
    film = box(b"ftyp", b"mp42" + bytes(4) + b"mp42") + box(b"mdat", SECRET)
    for data in (film, b"GIF89a" + struct.pack("<HH", 9, 9) + bytes(9)):
        (tmp_path / "a.jpg").write_bytes(data)
        found = inspect(tmp_path / "a.jpg", None, "")
        assert found.photo is None
        assert [one.rule for one in found.diagnostics] == ["photo-format"]


def test_a_film_behind_the_still_may_be_cut_short(tmp_path: Path, cache: Cache) -> None:
    whole = phones.motion_photo()
    (tmp_path / "a.jpg").write_bytes(whole[:-200])
    assert inspect(tmp_path / "a.jpg", None, "").diagnostics == ()
    assert_upright(tmp_path / "a.jpg", cache)


FRAMES = {
    "portrait.jpg": 2,
    "broken-list.jpg": 2,
    "burst.heic": 2,
    "moving.webp": 2,
    "pages.tif": 2,
}


@pytest.mark.parametrize("name", FILES)
def test_the_files_of_these_tests_are_what_they_are_called(name: str) -> None:
    with Image.open(BytesIO(FILES[name][0]())) as image:
        assert getattr(image, "n_frames", 1) == FRAMES.get(name, 1)
        assert image.info.get("progressive", 0) == (name == "said-everywhere.jpg")
        aux = {kind.split(":")[1] for kind in image.info.get("aux", {})}
        depths = len(image.info.get("depth_images", ()))
    assert (depths, aux) == ((1, {"invented"}) if name == "all.heic" else (0, set()))
