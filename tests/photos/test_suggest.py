"""Photo files suggest what the record lacks, and never more than suggest."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from PIL import Image

from casebook.diagnostics import Severity
from casebook.files import Cache
from casebook.loading import load_archive
from casebook.model.archive import Case
from casebook.photos.inspect import Inspected, inspect
from casebook.photos.suggest import Album, suggestions
from tests.compute.written import case

ROOT = Path(__file__).parents[2]
LOOKS = f"{0xF0F0F0F0F0F0F0F0:016x}{(1 << 128) - 1:064x}"


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


def near(fine: int, coarse: int = 0) -> str:
    """A fingerprint that differs from the first in so many of its bits."""
    return f"{int(LOOKS, 16) ^ ((1 << fine) - 1) ^ (((1 << coarse) - 1) << 256):080x}"


@pytest.mark.parametrize(
    ("fine", "coarse", "said"),
    [(0, 0, True), (12, 5, True), (13, 0, False), (0, 6, False), (60, 0, False)],
)
def test_photos_of_one_stage_that_look_alike_are_told(fine: int, coarse: int, said: bool) -> None:
    looks = near(fine, coarse)
    found = of(written("a.jpg", "b.jpg"), a=seen("d", "", LOOKS), b=seen("e", "", looks))
    assert found == (["photo-near-twin"] if said else [])


def test_before_and_after_look_alike_on_purpose() -> None:
    record = written("{file: a.jpg, stage: before}", "{file: b.jpg, stage: after}")
    assert of(record, a=seen("d", "", LOOKS), b=seen("e", "", LOOKS)) == []


def test_two_lights_of_one_view_are_two_photos() -> None:
    record = written("{file: a.jpg, light: normal}", "{file: b.jpg, light: UV}")
    assert of(record, a=seen("d", "", LOOKS), b=seen("e", "", LOOKS)) == []


@pytest.mark.parametrize("looks", ["", f"{0:080x}", f"{(1 << 20) - 1:080x}"])
def test_pictures_too_plain_to_compare_are_not_compared(looks: str) -> None:
    assert of(written("a.jpg", "b.jpg"), a=seen("d", "", looks), b=seen("e", "", looks)) == []


def elsewhere(other: Inspected, *, first: Inspected | None = None) -> list[str]:
    """What is said of the only photo of a second case beside that of a first."""
    record = written("a.jpg")
    one = Album("one", record, {"a.jpg": first or seen("d", "", LOOKS)})
    every = suggestions([one, Album("two", record, {"a.jpg": other})])
    found = [each for each in every if each.rule == "photo-in-two-cases"]
    assert all(each.case == "two" for each in found)
    return [each.message for each in found]


def test_the_same_file_in_two_cases_is_told_at_the_second() -> None:
    (said,) = elsewhere(seen("d"))
    assert said == "a.jpg is the same picture as a.jpg of cases/one"


@pytest.mark.parametrize(
    ("fine", "coarse", "said"), [(0, 0, 1), (32, 5, 1), (33, 0, 0), (0, 6, 0), (46, 8, 0)]
)
def test_the_same_picture_saved_again_for_another_case_is_told(
    fine: int, coarse: int, said: int
) -> None:
    assert len(elsewhere(seen("e", "", near(fine, coarse)))) == said


def test_two_exposures_are_not_one_picture_and_two_shapes_neither() -> None:
    first = seen("d", "2025-01-28T10:00:00", LOOKS)
    assert elsewhere(seen("e", "2025-01-28T10:00:00", LOOKS), first=first)
    assert elsewhere(seen("e", "", LOOKS), first=first)
    assert not elsewhere(seen("e", "2025-01-28T10:00:07", LOOKS), first=first)
    assert not elsewhere(replace(seen("e", "", LOOKS), width=30), first=first)


def test_a_file_that_is_in_another_case_and_twice_in_this_is_told_for_each() -> None:
    one = Album("one", written("a.jpg"), {"a.jpg": seen("d")})
    two = Album("two", written("a.jpg", "b.jpg"), {"a.jpg": seen("d"), "b.jpg": seen("d")})
    assert told(one, two) == ["photo-in-two-cases", "photo-twice"]


def test_of_many_dates_that_differ_one_message_is_made() -> None:
    names = [f"{{file: {name}.jpg, date: 2024}}" for name in "abc"]
    files = {f"{name}.jpg": seen(name, "2025-01-28T10:00:00") for name in "abc"}
    (found,) = suggestions([Album("one", written(*names), files)])
    assert found.message == (
        "a.jpg was taken on 2025-01-28 by its tags (Invented 1), not on 2024; "
        "so it is with 2 more photos of this case"
    )


def test_of_the_demo_archive_s_photos_nothing_is_suggested(tmp_path: Path) -> None:
    loaded = load_archive(ROOT, Cache(tmp_path, "test"))
    assert len(loaded.originals) > 40
    assert [one for one in loaded.diagnostics if one.rule.startswith("photo-")] == []


def test_a_demo_photo_saved_again_is_known_again(tmp_path: Path) -> None:
    whole = ROOT / "cases/2025-031-tide-gauge-day-book/photos/spine-before.jpg"
    again = tmp_path / "copy.webp"
    with Image.open(whole) as image:
        image.resize((700, round(700 * image.height / image.width))).save(again, quality=60)
    first, second = (inspect(path, None, "").photo for path in (whole, again))
    assert first
    assert second
    assert len(elsewhere(second, first=first)) == 1
