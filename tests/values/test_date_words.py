"""Dates in words: what joins and bounds them."""

from __future__ import annotations

import pytest
from hypothesis import given

from casebook.values import edtf
from casebook.values.date_words import Reading, read
from casebook.values.fault import NotUnderstood
from tests.values.word_texts import WORD_TEXTS


@pytest.mark.parametrize(
    ("text", "meant", "nuance"),
    [
        ("1780–1795", "1780/1795", ""),
        ("1780-90", "1780/1790", ""),
        ("between 1780 and 1790", "[1780..1790]", ""),
        ("1890 or 1891", "[1890,1891]", ""),
        ("1890 and 1895", "{1890,1895}", ""),
        ("c. 1780-90", "1780~/1790~", ""),
        ("1780-90?", "1780?/1790?", ""),
        ("before 1850", "[..1849]", "before 1850"),
        ("after 1850", "[1851..]", "after 1850"),
        ("by 1850", "[..1850]", "by 1850"),
        ("not before 1850", "[1850..]", ""),
        ("before March 1850", "[..1850-02]", "before March 1850"),
        ("before 1 March 1900", "[..1900-02-28]", "before 1 March 1900"),
        ("before the 19th century", "[..1799]", "before the 19th century"),
        ("since 1850", "1850/..", ""),
        ("1850 or later", "[1850..]", ""),
        ("probably 1850", "1850?", "probably 1850"),
        ("perhaps mid-19th century", "[1834?..1866?]", "perhaps mid-19th century"),
        ("late 18th to early 19th century", "1767/1833", "late 18th century to early 19th century"),
        ("14-15 March 2025", "2025-03-14/2025-03-15", ""),
        ("before 2025-03-14", "[..2025-03-13]", "before 14 March 2025"),
    ],
)
def test_words_are_read_to_edtf_and_kept_where_they_hold_more(
    text: str, meant: str, nuance: str
) -> None:
    assert read(text) == Reading(meant, nuance)


@given(WORD_TEXTS)
def test_the_words_kept_are_read_as_the_same_date(text: str) -> None:
    reading = _read_or_none(text)
    if reading is not None:
        assert edtf.parse(reading.edtf)
        assert not reading.nuance or read(reading.nuance) == reading


def _read_or_none(text: str) -> Reading | None:
    """The reading of a text, or None where it is refused: only reversed stretches may be."""
    try:
        return read(text)
    except NotUnderstood as fault:
        assert fault.message == "the end comes before the start"
        return None


@pytest.mark.parametrize(
    ("text", "wrong"),
    [
        ("c. 1805-06", "1805-06"),
        ("1795-1780", "1795-1780"),
        ("between 1780", "between 1780"),
        ("1850 to Mrch 1860", "Mrch"),
        ("before 1850 or later", "or later"),
        ("1850 to 1860 or 1870", "1850 to 1860 or 1870"),
    ],
)
def test_a_fault_points_at_the_words_that_are_wrong(text: str, wrong: str) -> None:
    with pytest.raises(NotUnderstood) as caught:
        read(text)
    assert text[caught.value.start : caught.value.end] == wrong
    assert caught.value.hint
