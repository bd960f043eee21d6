"""Pictures for the pages: right to look at, the same each time, and pixels only."""

from __future__ import annotations

import csv
import multiprocessing
import os
import struct
from collections.abc import Iterator
from concurrent.futures import Future, ProcessPoolExecutor, ThreadPoolExecutor
from io import BytesIO
from pathlib import Path

import pytest
from PIL import ExifTags, Image, ImageCms, PngImagePlugin

from casebook.files import Cache, digest
from casebook.photos import decode
from casebook.photos import derive as room
from casebook.photos.derive import Derivative, Picture, Unusable, derive, derive_all

REFERENCE = Path(__file__).parents[1] / "reference" / "exif_orientation.csv"
ORIENTATIONS = [
    row for row in csv.DictReader(REFERENCE.read_text().splitlines()) if row["value"] != "other"
]
ENDINGS = {"JPEG": "jpg", "PNG": "png", "TIFF": "tif", "WEBP": "webp"}
RED, GREEN, BLUE, WHITE = (220, 30, 30), (30, 180, 30), (30, 30, 220), (255, 255, 255)
Rgb = tuple[int, int, int]


@pytest.fixture
def cache(tmp_path: Path) -> Cache:
    return Cache(tmp_path / "cache", "salt")


def drawing(width: int, height: int) -> Image.Image:
    return Image.effect_mandelbrot((width, height), (-2, -1, 1, 1), 30).convert("RGB")


def silent(done: int, total: int) -> None:
    assert 0 < done <= total


def picture_of(path: Path, cache: Cache) -> Picture:
    return derive(digest(path.read_bytes()), path, cache)


def data_of(derivative: Derivative, cache: Cache) -> bytes:
    data = cache.get("picture", derivative.name)
    assert data is not None
    return data


def pixels_of(path: Path, cache: Cache) -> Iterator[Image.Image]:
    """Every derivative of a photo, decoded."""
    for each in picture_of(path, cache).widths:
        with Image.open(BytesIO(data_of(each, cache))) as image:
            assert image.mode == "RGB"
            assert image.size == (each.width, each.height)
            yield image.copy()


def near(seen: object, meant: Rgb, tolerance: int = 12) -> bool:
    assert isinstance(seen, tuple)
    return all(abs(one - two) <= tolerance for one, two in zip(seen, meant, strict=True))


# --- sizes and names -------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("size", "expected"),
    [
        ((3600, 1200), [(400, 133), (800, 267), (1600, 533), (2400, 800)]),
        ((2000, 1000), [(400, 200), (800, 400), (1600, 800), (2000, 1000)]),
        ((1600, 801), [(400, 200), (800, 400), (1600, 801)]),
        ((900, 300), [(400, 133), (800, 267), (900, 300)]),
        ((300, 200), [(300, 200)]),
        ((3000, 2), [(400, 1), (800, 1), (1600, 1), (2400, 2)]),
        ((1, 1), [(1, 1)]),
    ],
)
def test_widths_are_for_phone_to_desktop_and_never_more_than_the_original(
    tmp_path: Path, cache: Cache, size: tuple[int, int], expected: list[tuple[int, int]]
) -> None:
    Image.new("RGB", size, RED).save(tmp_path / "a.jpg")
    widths = picture_of(tmp_path / "a.jpg", cache).widths
    plain, modern = (
        [(each.width, each.height) for each in widths if each.format == kind]
        for kind in ("JPEG", "WebP")
    )
    assert plain == expected
    assert modern == [each for each in expected if each[0] <= 1600]


def test_a_scroll_too_tall_for_webp_still_has_a_jpeg(tmp_path: Path, cache: Cache) -> None:
    Image.new("RGB", (20, 16_400), RED).save(tmp_path / "a.jpg")
    (only,) = picture_of(tmp_path / "a.jpg", cache).widths
    assert (only.format, only.width, only.height) == ("JPEG", 20, 16_400)


def test_a_name_tells_nothing_but_the_published_bytes(tmp_path: Path, cache: Cache) -> None:
    drawing(900, 600).save(tmp_path / "secret owner.jpg")
    original = digest((tmp_path / "secret owner.jpg").read_bytes())
    for each in picture_of(tmp_path / "secret owner.jpg", cache).widths:
        data = data_of(each, cache)
        assert each.size == len(data)
        suffix = {"JPEG": ".jpg", "WebP": ".webp"}[each.format]
        assert each.name == digest(data)[:20] + suffix
        assert original[:20] not in each.name
        assert cache.path("picture", each.name).read_bytes() == data


def test_the_same_pixels_under_other_tags_are_published_as_the_same_bytes(
    tmp_path: Path, cache: Cache
) -> None:
    drawing(900, 600).save(tmp_path / "a.jpg")
    drawing(900, 600).save(tmp_path / "b.jpg", comment=b"private")
    one, two = (picture_of(tmp_path / name, cache) for name in ("a.jpg", "b.jpg"))
    assert one == two
    assert one == picture_of(tmp_path / "a.jpg", Cache(tmp_path / "other", "other salt"))


# --- nothing private survives ----------------------------------------------------------------

SECRETS = {
    "gps": b"GPS-PLACE",
    "artist": b"ARTIST-NAME",
    "serial": b"SERIAL-77",
    "thumbnail": b"THUMBNAIL-BYTES",
    "comment": b"JPEG-COMMENT",
    "xmp": b"XMP-OWNER",
    "iptc": b"IPTC-CAPTION",
    "profile": b"PROFILE-OF-JANE",
    "trailing": b"TRAILING-NOTE",
    "text": b"PNG-TEXT",
}


def private_exif() -> bytes:
    """A block of tags with a place, names, a serial number and an embedded preview."""
    tags = Image.Exif()
    tags[ExifTags.Base.Artist] = SECRETS["artist"].decode()
    tags.get_ifd(ExifTags.IFD.Exif)[ExifTags.Base.BodySerialNumber] = SECRETS["serial"].decode()
    place = tags.get_ifd(ExifTags.IFD.GPSInfo)
    place[ExifTags.GPS.GPSAreaInformation] = SECRETS["gps"]
    place[ExifTags.GPS.GPSLatitude] = (52.0, 30.0, 11.0)
    preview = BytesIO()
    Image.new("RGB", (16, 16), RED).save(preview, "JPEG", comment=SECRETS["thumbnail"])
    return tags.tobytes() + preview.getvalue()


def private_profile() -> bytes:
    """An sRGB profile that bears a person's name as its description."""
    data = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    count = struct.unpack(">I", data[128:132])[0]
    for at in range(132, 132 + 12 * count, 12):
        name, start, size = struct.unpack(">4sII", data[at : at + 12])
        if name == b"cprt":
            text = b"text\x00\x00\x00\x00" + SECRETS["profile"] + b"\x00"
            assert len(text) <= size
            return data[:start] + text.ljust(size, b"\x00") + data[start + size :]
    raise AssertionError("the profile has no text to replace")


def app13() -> bytes:
    """An IPTC caption (record 2, dataset 120) in a Photoshop resource block, as a JPEG segment."""
    caption = b"\x1c\x02\x78" + struct.pack(">H", len(SECRETS["iptc"])) + SECRETS["iptc"]
    block = b"8BIM\x04\x04\x00\x00" + struct.pack(">I", len(caption)) + caption
    body = b"Photoshop 3.0\x00" + block + b"\x00" * (len(caption) % 2)
    return b"\xff\xed" + struct.pack(">H", len(body) + 2) + body


def private_jpeg() -> bytes:
    out = BytesIO()
    drawing(1000, 700).save(
        out,
        "JPEG",
        exif=private_exif(),
        comment=SECRETS["comment"],
        icc_profile=private_profile(),
        xmp=b"<x:xmpmeta>" + SECRETS["xmp"] + b"</x:xmpmeta>",
    )
    data = out.getvalue()
    return data[:2] + app13() + data[2:] + SECRETS["trailing"]


def private_png() -> bytes:
    out, text = BytesIO(), PngImagePlugin.PngInfo()
    text.add_text("Comment", SECRETS["text"].decode())
    text.add_itxt("XML:com.adobe.xmp", SECRETS["xmp"].decode())
    drawing(1000, 700).save(out, "PNG", exif=private_exif(), pnginfo=text)
    return out.getvalue() + SECRETS["trailing"]


def private_tiff() -> bytes:
    out = BytesIO()
    icc = private_profile()
    drawing(1000, 700).save(
        out, "TIFF", exif=private_exif(), icc_profile=icc, description=SECRETS["text"].decode()
    )
    return out.getvalue() + SECRETS["trailing"]


def private_webp() -> bytes:
    out = BytesIO()
    icc = private_profile()
    drawing(1000, 700).save(out, "WEBP", exif=private_exif(), icc_profile=icc, xmp=SECRETS["xmp"])
    return out.getvalue() + SECRETS["trailing"]


def private_heic() -> bytes:
    from pillow_heif import register_heif_opener

    register_heif_opener(thumbnails=False)
    out = BytesIO()
    icc = private_profile()
    drawing(1000, 700).save(out, "HEIF", exif=private_exif(), icc_profile=icc, xmp=SECRETS["xmp"])
    return out.getvalue() + SECRETS["trailing"]


PLANTED = {
    "a.heic": (
        private_heic,
        {"gps", "artist", "serial", "thumbnail", "xmp", "profile", "trailing"},
    ),
    "a.jpg": (private_jpeg, set(SECRETS) - {"text"}),
    "a.png": (private_png, {"gps", "artist", "serial", "thumbnail", "xmp", "trailing", "text"}),
    "a.tif": (private_tiff, {"artist", "gps", "serial", "profile", "text", "trailing"}),
    "a.webp": (
        private_webp,
        {"gps", "artist", "serial", "thumbnail", "xmp", "profile", "trailing"},
    ),
}


@pytest.mark.parametrize("name", PLANTED)
def test_no_tag_comment_profile_preview_or_trailing_byte_survives(
    tmp_path: Path, cache: Cache, name: str
) -> None:
    make, planted = PLANTED[name]
    original = make()
    assert {each for each, secret in SECRETS.items() if secret in original} == planted
    (tmp_path / name).write_bytes(original)
    for each in picture_of(tmp_path / name, cache).widths:
        data = data_of(each, cache)
        assert [word for word in SECRETS.values() if word in data] == []
        assert_only_pixels(data)
    assert (tmp_path / name).read_bytes() == original
    for path in cache.folder.rglob("*"):
        assert path.is_dir() or str(tmp_path).encode() not in path.read_bytes()


def assert_only_pixels(data: bytes) -> None:
    """The file is made of what decoding needs: no segment or chunk for anything else, no tail."""
    if data[:4] == b"RIFF":
        assert struct.unpack("<I", data[4:8])[0] + 8 == len(data)
        assert data[8:16] == b"WEBPVP8 "
        return
    assert data[-2:] == b"\xff\xd9"
    kinds, at = set(), 2
    while data[at + 1] != 0xDA:  # until the scans begin
        kinds.add(data[at + 1])
        at += 2 + struct.unpack(">H", data[at + 2 : at + 4])[0]
    assert kinds <= {0xE0, 0xDB, 0xC2, 0xC4}  # JFIF head, tables, frame


# --- right to look at ------------------------------------------------------------------------


def stored_as(value: int, upright: Image.Image) -> Image.Image:
    """A picture as a camera stores it whose tag says `value`: by where row 0 and column 0 are."""
    row = next(each for each in ORIENTATIONS if each["value"] == str(value))
    first_row, first_column = row["row0_is"], row["column0_is"]
    turned = first_row in {"left", "right"}
    stored = upright.transpose(Image.Transpose.TRANSPOSE) if turned else upright
    if first_row in {"bottom", "right"}:
        stored = stored.transpose(Image.Transpose.FLIP_TOP_BOTTOM)
    if first_column in {"bottom", "right"}:
        stored = stored.transpose(Image.Transpose.FLIP_LEFT_RIGHT)
    return stored


def quarters(width: int, height: int) -> Image.Image:
    """Red, green; blue, white: no turn or mirroring gives the same."""
    image = Image.new("RGB", (width, height))
    for x, y, colour in ((0, 0, RED), (1, 0, GREEN), (0, 1, BLUE), (1, 1, WHITE)):
        half = (width // 2, height // 2)
        image.paste(colour, (x * half[0], y * half[1], (x + 1) * half[0], (y + 1) * half[1]))
    return image


@pytest.mark.parametrize("kind", ENDINGS)
@pytest.mark.parametrize("value", range(1, 9))
def test_every_orientation_is_shown_upright(
    tmp_path: Path, cache: Cache, kind: str, value: int
) -> None:
    stored = stored_as(value, quarters(480, 320))
    expected = next(row["stored_size_of_3x2"] for row in ORIENTATIONS if row["value"] == str(value))
    assert "x".join(str(side // 160) for side in stored.size) == expected
    tags = Image.Exif()
    tags[ExifTags.Base.Orientation] = value
    path = tmp_path / f"a.{ENDINGS[kind]}"
    stored.save(path, kind, exif=tags)
    for image in pixels_of(path, cache):
        assert image.width > image.height
        for x, y, colour in ((1, 1, RED), (3, 1, GREEN), (1, 3, BLUE), (3, 3, WHITE)):
            assert near(image.getpixel((image.width * x // 4, image.height * y // 4)), colour)


@pytest.mark.parametrize(
    ("mode", "colour", "meant"),
    [
        ("1", 1, WHITE),
        ("L", 128, (128, 128, 128)),
        ("LA", (0, 0), WHITE),
        ("RGBA", (255, 0, 0, 255), (255, 0, 0)),
        ("RGBA", (255, 0, 0, 0), WHITE),
        ("RGBA", (255, 0, 0, 128), (255, 127, 127)),
        ("I;16", 0x8080, (128, 128, 128)),
        ("I;16", 0xFFFF, WHITE),
    ],
)
def test_every_kind_of_pixels_is_shown_as_meant(
    tmp_path: Path, cache: Cache, mode: str, colour: int | tuple[int, ...], meant: Rgb
) -> None:
    Image.new(mode, (600, 30), colour).save(tmp_path / "a.png")
    for image in pixels_of(tmp_path / "a.png", cache):
        assert near(image.getpixel((5, 5)), meant, 3)


def test_a_palette_with_a_hole_is_shown_on_white(tmp_path: Path, cache: Cache) -> None:
    image = Image.new("P", (600, 30), 0)
    image.putpalette([*RED, *BLUE])
    image.paste(1, (300, 0, 600, 30))
    image.save(tmp_path / "a.png", transparency=0)
    for seen in pixels_of(tmp_path / "a.png", cache):
        assert near(seen.getpixel((20, 5)), WHITE, 4)
        assert near(seen.getpixel((seen.width - 20, 5)), BLUE, 12)


@pytest.mark.parametrize("kind", ["JPEG", "TIFF"])
def test_inks_are_shown_as_colours(tmp_path: Path, cache: Cache, kind: str) -> None:
    path = tmp_path / f"a.{ENDINGS[kind]}"
    Image.new("CMYK", (600, 30), (0, 255, 255, 0)).save(path, kind)
    for image in pixels_of(path, cache):
        assert near(image.getpixel((5, 5)), (255, 0, 0))


def test_lab_pixels_are_shown_as_colours(tmp_path: Path, cache: Cache) -> None:
    lab = ImageCms.createProfile("LAB")
    srgb = ImageCms.createProfile("sRGB")
    image = Image.new("RGB", (600, 30), RED)
    way = ImageCms.buildTransform(srgb, lab, "RGB", "LAB")
    way.apply(image).save(tmp_path / "a.tif")
    for seen in pixels_of(tmp_path / "a.tif", cache):
        assert near(seen.getpixel((5, 5)), RED)


def swapped_profile() -> bytes:
    """An sRGB profile whose red and green are exchanged: what it changes is plain to see."""
    data = bytearray(ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes())
    count = struct.unpack(">I", data[128:132])[0]
    for at in range(132, 132 + 12 * count, 12):
        name = bytes(data[at : at + 4])
        if name in {b"rXYZ", b"gXYZ"}:
            data[at : at + 4] = b"gXYZ" if name == b"rXYZ" else b"rXYZ"
    return bytes(data)


@pytest.mark.parametrize("mode", ["RGB", "RGBA"])
def test_the_colours_go_through_the_photos_own_profile(
    tmp_path: Path, cache: Cache, mode: str
) -> None:
    image = Image.new("RGB", (600, 30), (255, 0, 0)).convert(mode)
    image.save(tmp_path / "a.png", icc_profile=swapped_profile())
    for seen in pixels_of(tmp_path / "a.png", cache):
        assert near(seen.getpixel((5, 5)), (0, 255, 0), 6)


@pytest.mark.parametrize("profile", [b"no profile", swapped_profile()[:200]])
def test_a_damaged_profile_is_as_none(tmp_path: Path, cache: Cache, profile: bytes) -> None:
    Image.new("RGB", (600, 30), RED).save(tmp_path / "a.png", icc_profile=profile)
    for seen in pixels_of(tmp_path / "a.png", cache):
        assert near(seen.getpixel((5, 5)), RED)


def test_a_profile_for_other_pixels_is_left_out(tmp_path: Path, cache: Cache) -> None:
    image = Image.new("CMYK", (600, 30), (0, 255, 255, 0))
    image.save(tmp_path / "a.jpg", icc_profile=swapped_profile())
    for seen in pixels_of(tmp_path / "a.jpg", cache):
        assert near(seen.getpixel((5, 5)), (255, 0, 0))


# --- made once -------------------------------------------------------------------------------


@pytest.fixture
def opens(monkeypatch: pytest.MonkeyPatch) -> list[bytes]:
    """One entry for each time that a picture is opened."""
    times: list[bytes] = []
    plain = decode.opened

    def counted(data: bytes) -> object:
        times.append(data)
        return plain(data)

    monkeypatch.setattr(room, "opened", counted)
    return times


@pytest.fixture
def jobs(tmp_path: Path) -> list[tuple[str, Path]]:
    made = []
    for name, size in (("a.jpg", (500, 300)), ("b.jpg", (450, 300)), ("c.jpg", (410, 300))):
        drawing(*size).save(tmp_path / name)
        made.append((digest((tmp_path / name).read_bytes()), tmp_path / name))
    return made


def test_each_job_has_its_picture_and_progress_is_told(
    jobs: list[tuple[str, Path]], cache: Cache
) -> None:
    told: list[tuple[int, int]] = []
    pictures = derive_all(jobs, cache, None, lambda done, total: told.append((done, total)))
    assert [pictures[original].widths[-1].width for original, _ in jobs] == [500, 450, 410]
    assert told == [(1, 3), (2, 3), (3, 3)]


def test_a_second_run_decodes_nothing_and_reports_nothing(
    jobs: list[tuple[str, Path]], cache: Cache, opens: list[bytes]
) -> None:
    first = derive_all(jobs, cache, None, silent)
    for _, path in jobs:
        os.utime(path, (1, 1))
    told: list[int] = []
    assert derive_all(jobs, cache, None, lambda done, _: told.append(done)) == first
    assert (len(opens), told) == (3, [])


def test_one_photo_in_two_cases_is_made_once(
    jobs: list[tuple[str, Path]], cache: Cache, opens: list[bytes], tmp_path: Path
) -> None:
    original, path = jobs[0]
    (tmp_path / "copy.jpg").write_bytes(path.read_bytes())
    derive_all([(original, path), (original, tmp_path / "copy.jpg")], cache, None, silent)
    assert len(opens) == 1


@pytest.mark.parametrize("kind", ["picture", "recipe"])
@pytest.mark.parametrize("harm", ["damaged", "deleted"])
def test_a_damaged_or_deleted_entry_is_made_again_with_the_same_bytes(
    jobs: list[tuple[str, Path]], cache: Cache, opens: list[bytes], kind: str, harm: str
) -> None:
    first = derive_all(jobs, cache, None, silent)
    victim = next(each for each in sorted((cache.folder / kind).rglob("*")) if len(each.name) == 64)
    whole = victim.read_bytes()
    if harm == "damaged":
        victim.write_bytes(whole[:-1])
    else:
        victim.unlink()
    assert derive_all(jobs, cache, None, silent) == first
    assert victim.read_bytes() == whole
    assert len(opens) == 4


def test_what_was_made_before_an_interruption_is_not_made_again(
    jobs: list[tuple[str, Path]], cache: Cache, opens: list[bytes]
) -> None:
    def interrupt(done: int, _: int) -> None:
        if done == 2:
            raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        derive_all(jobs, cache, None, interrupt)
    assert len(derive_all(jobs, cache, None, silent)) == 3
    assert len(opens) == 3


def test_a_full_disk_is_not_taken_for_a_bad_photo(
    jobs: list[tuple[str, Path]], cache: Cache, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    with monkeypatch.context() as patch:
        patch.setattr(os, "replace", full)
        with pytest.raises(OSError, match="No space"):
            derive_all(jobs, cache, None, silent)
    assert len(derive_all(jobs, cache, None, silent)) == 3


# --- in parallel -----------------------------------------------------------------------------


def test_processes_make_the_same_bytes_as_one(
    jobs: list[tuple[str, Path]], cache: Cache, tmp_path: Path
) -> None:
    alone = derive_all(jobs, Cache(tmp_path / "alone", "salt"), None, silent)
    told: list[tuple[int, int]] = []
    spawn = multiprocessing.get_context("spawn")
    with ProcessPoolExecutor(1, mp_context=spawn) as pool:
        together = derive_all(jobs, cache, pool, lambda *progress: told.append(progress))
    assert together == alone
    assert told == [(1, 3), (2, 3), (3, 3)]


def test_a_photo_that_changed_is_told_by_name_alone(
    jobs: list[tuple[str, Path]], cache: Cache
) -> None:
    drawing(40, 30).save(jobs[1][1])
    spawn = multiprocessing.get_context("spawn")
    with ProcessPoolExecutor(1, mp_context=spawn) as pool, pytest.raises(Unusable) as caught:
        derive_all(jobs, cache, pool, silent)
    assert caught.value.name == "b.jpg"
    assert "changed" in caught.value.reason


def test_when_one_fails_those_not_begun_are_left(
    jobs: list[tuple[str, Path]], cache: Cache
) -> None:
    class Slow(ThreadPoolExecutor):
        """Keeps all it is given, so that a test can see what became of it."""

        given: list[Future[object]]

        def submit(self, *work: object, **how: object) -> Future[object]:  # type: ignore[override]
            future: Future[object] = Future()
            if not self.given:
                future.set_exception(Unusable("a.jpg", "it changed"))
            self.given.append(future)
            return future

    with Slow() as pool:
        pool.given = []
        with pytest.raises(Unusable):
            derive_all(jobs, cache, pool, silent)
        assert [each.cancelled() for each in pool.given] == [False, True, True]


def test_a_photo_that_cannot_be_decoded_is_told(tmp_path: Path, cache: Cache) -> None:
    drawing(400, 300).save(tmp_path / "a.png")
    (tmp_path / "a.png").write_bytes((tmp_path / "a.png").read_bytes()[:2000])
    with pytest.raises(Unusable):
        picture_of(tmp_path / "a.png", cache)


@pytest.mark.parametrize("limit", [500 * 300 - 1, 500 * 300 // 3])
def test_a_bomb_is_an_error_here_too(
    jobs: list[tuple[str, Path]], cache: Cache, monkeypatch: pytest.MonkeyPatch, limit: int
) -> None:
    monkeypatch.setattr(Image, "MAX_IMAGE_PIXELS", limit)
    with pytest.raises(Unusable, match="decompression bomb"):
        derive(*jobs[0], cache)
