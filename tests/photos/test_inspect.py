"""A photo file is told for what it is, whatever its name says, and no file makes the tool fall."""

from __future__ import annotations

import csv
import os
import struct
import sys
import zlib
from io import BytesIO
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from PIL import ExifTags, Image, ImageCms

from casebook.diagnostics import Severity, Span
from casebook.files import Cache, digest
from casebook.photos import decode
from casebook.photos import inspect as room
from casebook.photos.inspect import Inspection, inspect

REFERENCE = Path(__file__).parents[1] / "reference" / "exif_orientation.csv"
ORIENTATIONS = [
    (int(row["value"]), row["stored_size_of_3x2"])
    for row in csv.DictReader(REFERENCE.read_text().splitlines())
    if row["value"] != "other"
]
SPAN = Span("cases/a/case.md", 4, 3, 4, 9)
ENDINGS = {"JPEG": "jpg", "PNG": "png", "TIFF": "tif", "WEBP": "webp"}


def exif(**tags: object) -> Image.Exif:
    """Tags by Pillow's names; those of the exposure go where cameras put them."""
    made = Image.Exif()
    for name, value in tags.items():
        tag = ExifTags.Base[name]
        inside = name.startswith(("DateTime", "OffsetTime"))
        (made.get_ifd(ExifTags.IFD.Exif) if inside else made)[tag] = value
    return made


def save_with(tags: Image.Exif, path: Path, kind: str) -> Path:
    """A photo with tags; as bytes, since Pillow writes nested tags into a TIFF from bytes only."""
    return save(path, kind, exif=tags.tobytes())


def save(path: Path, kind: str = "JPEG", size: tuple[int, int] = (60, 40), **how: object) -> Path:
    Image.effect_mandelbrot(size, (-2, -1, 1, 1), 20).convert("RGB").save(path, kind, **how)
    return path


def look(path: Path, cache: Cache | None = None) -> Inspection:
    return inspect(path, SPAN, "2025-031", cache)


def only(found: Inspection, rule: str, severity: Severity) -> str:
    """The message of the one diagnostic, which is as told and names its place."""
    (fault,) = found.diagnostics
    assert (fault.rule, fault.severity, fault.span) == (rule, severity, SPAN)
    assert (fault.case, bool(fault.hint)) == ("2025-031", True)
    assert (found.photo is None) == (severity is Severity.ERROR)
    return fault.message


@pytest.mark.parametrize("kind", ENDINGS)
def test_a_good_photo_is_told_in_full_and_left_as_it_is(tmp_path: Path, kind: str) -> None:
    tags = exif(Make="Acme", Model="Acme One", DateTimeOriginal="2025:01:28 14:03:00")
    path = save_with(tags, tmp_path / f"a.{ENDINGS[kind]}", kind)
    before = path.read_bytes(), path.stat().st_mtime_ns
    found = look(path)
    assert found.diagnostics == ()
    assert found.photo is not None
    assert found.photo.digest == digest(before[0])
    assert (found.photo.width, found.photo.height) == (60, 40)
    assert found.photo.format == {"WEBP": "WebP"}.get(kind, kind)
    assert (found.photo.taken, found.photo.device) == ("2025-01-28T14:03:00", "Acme One")
    assert (path.read_bytes(), path.stat().st_mtime_ns) == before


@pytest.mark.parametrize("kind", ENDINGS)
@pytest.mark.parametrize(("value", "stored"), ORIENTATIONS)
def test_width_and_height_are_those_seen_upright(
    tmp_path: Path, kind: str, value: int, stored: str
) -> None:
    width, height = (20 * int(side) for side in stored.split("x"))
    path = save(
        tmp_path / f"a.{ENDINGS[kind]}", kind, (width, height), exif=exif(Orientation=value)
    )
    photo = look(path).photo
    assert photo is not None
    assert (photo.width, photo.height) == (60, 40)


@pytest.mark.parametrize("kind", ENDINGS)
@pytest.mark.parametrize("value", [0, 9, 700])
def test_a_reserved_orientation_is_taken_as_upright_and_said(
    tmp_path: Path, kind: str, value: int
) -> None:
    path = save(tmp_path / f"a.{ENDINGS[kind]}", kind, exif=exif(Orientation=value))
    found = look(path)
    assert "which way up" in only(found, "photo-orientation", Severity.WARNING)
    assert found.photo is not None
    assert found.photo.width == 60


@pytest.mark.parametrize(
    ("tags", "taken"),
    [
        ({"DateTimeOriginal": "2025:01:28 14:03:00", "OffsetTimeOriginal": "+01:00"}, "+01:00"),
        ({"DateTimeOriginal": "2025:01:28 14:03:00", "OffsetTimeOriginal": "home"}, ""),
        ({"DateTimeDigitized": "2025:01:28 14:03:00"}, ""),
        ({"DateTimeOriginal": "0000:00:00 00:00:00"}, None),
        ({"DateTimeOriginal": "    :  :     :  :  "}, None),
        ({"DateTimeOriginal": "2025:02:30 14:03:00"}, None),
        ({"DateTimeOriginal": "yesterday"}, None),
        ({"DateTime": "2025:01:28 14:03:00"}, None),  # when the file was changed, not taken
    ],
)
def test_the_date_taken_is_iso_or_nothing(
    tmp_path: Path, tags: dict[str, str], taken: str | None
) -> None:
    photo = look(save(tmp_path / "a.jpg", exif=exif(**tags))).photo
    assert photo is not None
    assert photo.taken == ("" if taken is None else f"2025-01-28T14:03:00{taken}")


@pytest.mark.parametrize(
    ("make", "model", "device"),
    [
        ("ACME Corp.", "One", "ACME Corp. One"),
        ("Acme", "ACME One", "ACME One"),
        ("", "One", "One"),
        ("Acme  \x00\x00", "\x1b[31mOne\n", "Acme [31mOne"),
        ("", "x" * 300, "x" * 80),
    ],
)
def test_the_device_is_told_in_one_line(tmp_path: Path, make: str, model: str, device: str) -> None:
    photo = look(save(tmp_path / "a.jpg", exif=exif(Make=make, Model=model))).photo
    assert photo is not None
    assert photo.device == device


# --- names and formats -----------------------------------------------------------------------


@pytest.mark.parametrize("name", ["a.JPG", "a.jpeg", "a.Jpe", "a.jfif"])
def test_every_usual_ending_is_right(tmp_path: Path, name: str) -> None:
    assert look(save(tmp_path / name)).diagnostics == ()


@pytest.mark.parametrize("name", ["a.png", "a", "a.txt", "a.b.tiff"])
def test_a_mislabelled_photo_is_used_and_told(tmp_path: Path, name: str) -> None:
    found = look(save(tmp_path / name))
    assert "JPEG" in only(found, "photo-mislabelled", Severity.WARNING)
    assert Path(name).stem in found.diagnostics[0].hint
    assert ".jpg" in found.diagnostics[0].hint


@pytest.mark.parametrize(
    ("data", "words"),
    [
        (b"\x00\x00\x00\x1cftypavif\x00\x00\x00\x00", "AVIF"),
        (b"%PDF-1.7\n", "PDF"),
        (b"<svg xmlns='http://www.w3.org/2000/svg'/>", "XML"),
        (b"8BPS\x00\x01", "Photoshop"),
        (b"just text", "not a picture"),
        (b"\x00", "not a picture"),
    ],
)
def test_what_is_not_read_here_is_named(tmp_path: Path, data: bytes, words: str) -> None:
    (tmp_path / "a.jpg").write_bytes(data)
    assert words in only(look(tmp_path / "a.jpg"), "photo-format", Severity.ERROR)


@pytest.mark.parametrize("kind", ["GIF", "BMP", "PPM", "ICO", "TGA", "PCX"])
def test_formats_off_the_list_are_refused_though_pillow_reads_them(
    tmp_path: Path, kind: str
) -> None:
    only(look(save(tmp_path / "a.jpg", kind)), "photo-format", Severity.ERROR)


def test_a_raw_file_is_not_taken_for_the_tiff_that_it_looks_like(tmp_path: Path) -> None:
    found = look(save(tmp_path / "a.NEF", "TIFF"))
    assert "raw" in only(found, "photo-format", Severity.ERROR)


def test_pixels_of_floating_numbers_are_refused(tmp_path: Path) -> None:
    Image.new("F", (5, 5)).save(tmp_path / "a.tif")
    only(look(tmp_path / "a.tif"), "photo-format", Severity.ERROR)


@pytest.mark.parametrize("kind", ["TIFF", "WEBP", "PNG"])
def test_further_pictures_in_a_file_are_told(tmp_path: Path, kind: str) -> None:
    path = tmp_path / f"a.{ENDINGS[kind]}"
    pages = [Image.new("RGB", (60, 40), colour) for colour in ("red", "blue")]
    pages[0].save(path, kind, save_all=True, append_images=pages[1:])
    assert "several" in only(look(path), "photo-pages", Severity.WARNING)


def test_a_camera_preview_behind_a_jpeg_is_no_second_picture(tmp_path: Path) -> None:
    pages = [Image.new("RGB", (60, 40), colour) for colour in ("red", "blue")]
    pages[0].save(tmp_path / "a.jpg", "MPO", save_all=True, append_images=pages[1:])
    found = look(tmp_path / "a.jpg")
    assert found.diagnostics == ()
    assert found.photo is not None
    assert found.photo.format == "JPEG"


def test_damaged_tags_are_told_and_the_pixels_are_used(tmp_path: Path) -> None:
    path = save(tmp_path / "a.jpg", exif=b"Exif\x00\x00no tags at all")
    found = look(path)
    only(found, "photo-tags", Severity.WARNING)
    assert found.photo is not None
    assert found.photo.width == 60


def test_a_damaged_colour_profile_is_told(tmp_path: Path) -> None:
    only(
        look(save(tmp_path / "a.jpg", icc_profile=b"no profile")), "photo-profile", Severity.WARNING
    )


def test_a_profile_for_other_pixels_is_told(tmp_path: Path) -> None:
    srgb = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    Image.new("CMYK", (5, 5)).save(tmp_path / "a.jpg", icc_profile=srgb)
    only(look(tmp_path / "a.jpg"), "photo-profile", Severity.WARNING)


# --- what cannot be used ---------------------------------------------------------------------


def test_a_missing_photo_a_folder_and_an_impossible_name_are_told(tmp_path: Path) -> None:
    for path in (tmp_path / "none.jpg", tmp_path, tmp_path / "a\x00.jpg"):
        only(look(path), "photo-missing", Severity.ERROR)
    save(tmp_path / "a.jpg")
    only(look(tmp_path / "a.jpg" / "b.jpg"), "photo-missing", Severity.ERROR)


def test_a_file_that_may_not_be_read_is_told(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def denied(*_: object, **__: object) -> None:
        raise PermissionError(13, "Permission denied")

    path = save(tmp_path / "a.jpg")
    monkeypatch.setattr(Path, "open", denied)
    message = only(look(path), "photo-missing", Severity.ERROR)
    assert "Permission denied" in message
    assert str(tmp_path) not in message


def test_an_empty_file_is_told(tmp_path: Path) -> None:
    (tmp_path / "a.jpg").touch()
    assert "empty" in only(look(tmp_path / "a.jpg"), "photo-damaged", Severity.ERROR)


def test_a_file_of_too_many_bytes_is_not_even_read(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with (tmp_path / "a.jpg").open("wb") as file:
        file.truncate(room.MAX_BYTES + 1)
    monkeypatch.setattr(Path, "open", None)
    message = only(look(tmp_path / "a.jpg"), "photo-too-large", Severity.ERROR)
    assert "60 MB" in message


def bomb(width: int, height: int) -> bytes:
    """A PNG of a few bytes that says it is huge."""

    def chunk(name: bytes, body: bytes) -> bytes:
        whole = name + body
        return struct.pack(">I", len(body)) + whole + struct.pack(">I", zlib.crc32(whole))

    head = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    return (
        b"\x89PNG\r\n\x1a\n"
        + chunk(b"IHDR", head)
        + chunk(b"IDAT", zlib.compress(b"\x00" * 100))
        + chunk(b"IEND", b"")
    )


@pytest.mark.parametrize("side", [11_000, 15_000, 30_000, 2_000_000_000])
def test_a_bomb_is_refused_before_it_is_decoded(tmp_path: Path, side: int) -> None:
    (tmp_path / "a.png").write_bytes(bomb(side, side))
    assert "million pixels" in only(look(tmp_path / "a.png"), "photo-too-large", Severity.ERROR)


def test_the_limit_of_pixels_holds_without_pillows_own(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(Image, "MAX_IMAGE_PIXELS", None)
    monkeypatch.setattr(decode, "MAX_PIXELS", 60 * 40 - 1)
    only(look(save(tmp_path / "a.png", "PNG")), "photo-too-large", Severity.ERROR)


@pytest.mark.parametrize("kind", ENDINGS)
@pytest.mark.parametrize("share", [0.3, 0.6, 0.95])
def test_a_photo_cut_short_is_told(tmp_path: Path, kind: str, share: float) -> None:
    path = save(tmp_path / f"a.{ENDINGS[kind]}", kind, (300, 200))
    data = path.read_bytes()
    path.write_bytes(data[: int(len(data) * share)])
    found = look(path)
    assert found.photo is None
    assert found.diagnostics[0].rule in {"photo-damaged", "photo-format"}
    assert str(tmp_path) not in found.diagnostics[0].message


@pytest.mark.parametrize("kind", ENDINGS)
def test_a_photo_of_which_only_the_start_is_there_is_called_damaged(
    tmp_path: Path, kind: str
) -> None:
    path = save(tmp_path / f"a.{ENDINGS[kind]}", kind, (300, 200))
    path.write_bytes(path.read_bytes()[:18])
    only(look(path), "photo-damaged", Severity.ERROR)


SEEDS = {}
for _kind in ENDINGS:
    _out = BytesIO()
    Image.linear_gradient("L").resize((40, 30)).convert("RGB").save(_out, _kind)
    SEEDS[_kind] = _out.getvalue()


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=200)
@given(st.sampled_from(sorted(ENDINGS)), st.integers(0, 400), st.binary(min_size=1, max_size=12))
def test_no_damage_makes_it_raise(tmp_path: Path, kind: str, place: int, noise: bytes) -> None:
    data = SEEDS[kind]
    path = tmp_path / f"a.{ENDINGS[kind]}"
    path.write_bytes(data[:place] + noise + data[place + len(noise) :])
    found = look(path)
    assert found.photo is not None or found.diagnostics[0].severity is Severity.ERROR


# --- the cache -------------------------------------------------------------------------------


@pytest.fixture
def opens(monkeypatch: pytest.MonkeyPatch) -> list[int]:
    """One entry for each time that Pillow opens a picture."""
    times: list[int] = []
    plain = Image.open

    def counted(*args: object, **how: object) -> Image.Image:
        times.append(1)
        return plain(*args, **how)  # type: ignore[arg-type]

    monkeypatch.setattr(Image, "open", counted)
    return times


def test_an_unchanged_photo_is_not_decoded_again_whatever_it_is_called(
    tmp_path: Path, opens: list[int]
) -> None:
    cache = Cache(tmp_path / "cache", "salt")
    path = save(tmp_path / "a.jpg", exif=exif(Orientation=9, Model="One"))
    first = look(path, cache)
    os.utime(path, (1, 1))
    assert look(path, cache) == first
    (tmp_path / "b.png").write_bytes(path.read_bytes())
    renamed = look(tmp_path / "b.png", cache)
    assert renamed.photo == first.photo
    assert [each.rule for each in renamed.diagnostics] == ["photo-mislabelled", "photo-orientation"]
    assert len(opens) == 1


def test_a_changed_photo_or_a_damaged_entry_is_looked_at_again(
    tmp_path: Path, opens: list[int]
) -> None:
    cache = Cache(tmp_path / "cache", "salt")
    path = save(tmp_path / "a.jpg")
    first = look(path, cache)
    assert first.photo is not None
    cache.path("inspection", first.photo.digest).write_bytes(b"{")
    assert look(path, cache) == first
    save(path, size=(30, 20))
    changed = look(path, cache).photo
    assert changed is not None
    assert changed.width == 30
    assert len(opens) == 3


# --- HEIC ------------------------------------------------------------------------------------


def heic(path: Path) -> Path:
    from pillow_heif import register_heif_opener

    register_heif_opener(thumbnails=False)
    tags = Image.Exif()
    tags.get_ifd(ExifTags.IFD.Exif)[ExifTags.Base.DateTimeOriginal] = "2025:01:28 10:11:12"
    Image.new("RGB", (60, 40), "sienna").save(path, "HEIF", exif=tags)
    return path


def test_heic_is_looked_at_where_its_extra_is_installed(tmp_path: Path) -> None:
    found = look(heic(tmp_path / "a.heic"))
    assert found.diagnostics == ()
    assert found.photo is not None
    assert (found.photo.format, found.photo.width, found.photo.height) == ("HEIC", 60, 40)
    assert found.photo.taken == "2025-01-28T10:11:12"


def test_heic_called_jpg_is_told(tmp_path: Path) -> None:
    assert "is a HEIC file" in only(
        look(heic(tmp_path / "a.jpg")), "photo-mislabelled", Severity.WARNING
    )


def test_a_heic_cut_short_is_told(tmp_path: Path) -> None:
    whole = heic(tmp_path / "a.heic").read_bytes()
    for share in (0.1, 0.5, 0.9):
        (tmp_path / "a.heic").write_bytes(whole[: int(len(whole) * share)])
        assert look(tmp_path / "a.heic").photo is None


def test_without_its_extra_a_heic_is_named_with_the_command_that_adds_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = heic(tmp_path / "a.heic")
    monkeypatch.setitem(sys.modules, "pillow_heif", None)
    decode.reads_heic.cache_clear()
    found = look(path)
    decode.reads_heic.cache_clear()
    assert only(found, "photo-format", Severity.ERROR) == "a.heic is a HEIC picture"
    assert 'python -m pip install "casebook[heic]"' in found.diagnostics[0].hint
