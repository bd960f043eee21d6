"""A file is named by its first bytes, whatever they are."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casebook.photos.kinds import KINDS, SUFFIXES, begins_as, seems


@pytest.mark.parametrize(
    ("data", "kind"),
    [
        (b"\xff\xd8\xff\xe0", "JPEG"),
        (b"\x89PNG\r\n\x1a\n", "PNG"),
        (b"II*\0rest", "TIFF"),
        (b"MM\0*rest", "TIFF"),
        (b"RIFF\0\0\0\0WEBP", "WebP"),
        (b"RIFF\0\0\0\0WAVE", ""),
        (b"", ""),
    ],
)
def test_a_format_is_known_by_its_first_bytes(data: bytes, kind: str) -> None:
    assert begins_as(data) == kind


@pytest.mark.parametrize(
    ("data", "words"),
    [
        (b"\0\0\0\x1cftypavif", "an AVIF picture"),
        (b"\0\0\0\x1cftypisom", "a film"),
        (b"\0\0\0\x0cjP  \r\n", "JPEG 2000"),
        (b"\0\0\0\x0cJXL \r\n", "JPEG XL"),
        (b"%PDF-1.7", "PDF"),
        (b"anything", "is not a picture"),
    ],
)
def test_what_is_no_photo_is_named(data: bytes, words: str) -> None:
    assert words in seems(data)


@given(st.binary(max_size=40))
def test_any_bytes_are_told_in_one_line(data: bytes) -> None:
    assert seems(data).startswith("is ")
    assert begins_as(data) in {"", *SUFFIXES}


def test_every_format_has_its_endings() -> None:
    assert set(KINDS.values()) == set(SUFFIXES)
