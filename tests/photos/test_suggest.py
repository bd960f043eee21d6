"""Photo files suggest what the record lacks, and never more than suggest."""

from __future__ import annotations

from dataclasses import replace

import pytest

from casebook.diagnostics import Severity
from casebook.model.archive import Case
from casebook.photos.inspect import Inspected
from casebook.photos.suggest import Album, suggestions
from tests.compute.written import case

LOOKS = f"{(1 << 128) - 1:064x}"


def written(*photos: str) -> Case:
    return case(f"id: one\nphotos: [{', '.join(photos)}]\n")


def seen(digest: str, taken: str = "", looks: str = "") -> Inspected:
    return Inspected(digest, 40, 30, "JPEG", taken, "Invented 1", looks)


def told(*albums: Album) -> list[str]:
    found = list(suggestions(albums))
    assert all(one.severity is Severity.SUGGESTION for one in found)
    return [one.rule for one in found]


def of(record: Case, **files: Inspected) -> list[str]:
    return told(Album("one", record, {f"{name}.jpg": one for name, one in files.items()}))


@pytest.mark.parametrize(
    ("date", "said"),
    [
        ("", ["photo-date-in-tags"]),
        ("date: not recorded", ["photo-date-in-tags"]),
        ("date: 2025-01-28", []),
        ("date: 2025-01", []),
        ("date: 2025-01-29", []),
        ("date: 2025-02", ["photo-date-differs"]),
        ("date: 2024", ["photo-date-differs"]),
        ("medium: slide, date: 1984", []),
    ],
)
def test_the_tags_date_is_offered_or_held_against_the_record_s(date: str, said: list[str]) -> None:
    record = written(f"{{file: a.jpg{', ' if date else ''}{date}}}")
    assert of(record, a=seen("d", "2025-01-28T23:59:00")) == said


def test_a_hint_says_what_to_write() -> None:
    album = Album("one", written("{file: a.jpg}"), {"a.jpg": seen("d", "2025-01-28T10:00:00")})
    (found,) = suggestions([album])
    assert (
        found.message == "a.jpg was taken on 2025-01-28 by its tags (Invented 1), and has no date"
    )
    assert found.hint == "add `date: 2025-01-28`"
    assert found.case == "one"


def test_without_a_date_in_the_tags_nothing_is_said() -> None:
    assert of(written("{file: a.jpg}"), a=seen("d")) == []


def test_one_file_under_two_names_is_told() -> None:
    assert of(written("a.jpg", "b.jpg"), a=seen("d"), b=seen("d")) == ["photo-twice"]


def near(bits: int) -> str:
    """A fingerprint that differs from the first in so many bits."""
    return f"{int(LOOKS, 16) ^ ((1 << bits) - 1):064x}"


@pytest.mark.parametrize(("bits", "said"), [(0, True), (8, True), (9, False), (60, False)])
def test_photos_of_one_stage_that_look_alike_are_told(bits: int, said: bool) -> None:
    found = of(written("a.jpg", "b.jpg"), a=seen("d", "", LOOKS), b=seen("e", "", near(bits)))
    assert found == (["photo-near-twin"] if said else [])


def test_before_and_after_look_alike_on_purpose() -> None:
    record = written("{file: a.jpg, stage: before}", "{file: b.jpg, stage: after}")
    assert of(record, a=seen("d", "", LOOKS), b=seen("e", "", LOOKS)) == []


def test_two_lights_of_one_view_are_two_photos() -> None:
    record = written("{file: a.jpg, light: normal}", "{file: b.jpg, light: UV}")
    assert of(record, a=seen("d", "", LOOKS), b=seen("e", "", LOOKS)) == []


@pytest.mark.parametrize("looks", ["", f"{0:064x}", f"{(1 << 20) - 1:064x}"])
def test_pictures_too_plain_to_compare_are_not_compared(looks: str) -> None:
    assert of(written("a.jpg", "b.jpg"), a=seen("d", "", looks), b=seen("e", "", looks)) == []


def test_the_same_photo_in_two_cases_is_told_at_the_second() -> None:
    record = written("a.jpg")
    one, two = (Album(name, record, {"a.jpg": seen("d")}) for name in ("one", "two"))
    found = list(suggestions([one, two, replace(two, inspected={"a.jpg": seen("e")})]))
    assert [(each.rule, each.case) for each in found] == [("photo-in-two-cases", "two")]
    assert "a.jpg of cases/one" in found[0].message
