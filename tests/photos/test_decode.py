"""A picture is opened in the formats allowed, once it is known to be small enough, and no other."""

from __future__ import annotations

import warnings
from io import BytesIO

import pytest
from PIL import ExifTags, Image, UnidentifiedImageError

from casebook.photos import decode
from casebook.photos.decode import Tags, opened, read_tags


def saved(kind: str, mode: str = "RGB", **how: object) -> bytes:
    out = BytesIO()
    Image.new(mode, (6, 4)).save(out, kind, **how)
    return out.getvalue()


def tags_of(data: bytes) -> Tags:
    with opened(data) as image:
        return read_tags(image)


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "TIFF", "WEBP"])
def test_four_formats_are_opened(kind: str) -> None:
    with opened(saved(kind)) as image:
        assert (image.format, image.size) == (kind, (6, 4))


@pytest.mark.parametrize("kind", ["GIF", "BMP", "PPM"])
def test_no_other_format_is_opened(kind: str) -> None:
    with pytest.raises(UnidentifiedImageError), opened(saved(kind)):
        raise AssertionError


@pytest.mark.parametrize("limit", [23, 13, 10])
def test_more_pixels_than_allowed_are_an_error_never_a_warning(
    monkeypatch: pytest.MonkeyPatch, limit: int
) -> None:
    monkeypatch.setattr(Image, "MAX_IMAGE_PIXELS", limit)
    refusals = (Image.DecompressionBombError, Image.DecompressionBombWarning)
    with pytest.raises(refusals), opened(saved("PNG")):
        raise AssertionError


def test_as_many_pixels_as_allowed_are_opened(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(decode, "MAX_PIXELS", 24)
    with opened(saved("PNG")) as image:
        assert image.width == 6
    assert Image.MAX_IMAGE_PIXELS == 120_000_000


def test_the_callers_own_warnings_come_back() -> None:
    before = list(warnings.filters)
    with opened(saved("PNG")):
        assert warnings.filters != before
    assert warnings.filters == before


def test_a_picture_without_tags_has_none() -> None:
    assert tags_of(saved("JPEG")) == Tags("", "", 1, odd=False, damaged=False)


@pytest.mark.parametrize(("kind", "left"), [("JPEG", 6), ("PNG", 6), ("WEBP", 6), ("TIFF", 1)])
def test_a_turn_is_left_to_do_save_where_the_decoder_does_it(kind: str, left: int) -> None:
    tags = Image.Exif()
    tags[ExifTags.Base.Orientation] = 6
    assert tags_of(saved(kind, exif=tags)).orientation == left
