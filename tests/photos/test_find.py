"""The images a record names are found, and a name that is not quite the file's is told."""

from __future__ import annotations

import unicodedata
from pathlib import Path

from PIL import Image

from casebook.files import Cache
from casebook.model.archive import LOGO, Case
from casebook.model.photos import Photo
from casebook.model.settings import Settings
from casebook.photos.find import find_logo, find_photos


def picture(path: Path) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    Image.new("RGB", (40, 30), "#886644").save(path, "JPEG")


def found(folder: Path, *names: str):
    case = Case(photos=tuple(Photo(file=name) for name in names))
    return find_photos(case, folder, Cache(folder / "cache", "test"))


def test_photos_lie_in_the_case_s_folder_or_in_its_photos(tmp_path: Path) -> None:
    picture(tmp_path / "a.jpg")
    picture(tmp_path / "photos" / "b.jpg")
    seen = found(tmp_path, "a.jpg", "b.jpg", "photos/b.jpg")
    assert seen.diagnostics == ()
    assert set(seen.images) == {"a.jpg", "b.jpg", "photos/b.jpg"}
    assert (seen.images["a.jpg"].width, seen.images["a.jpg"].height) == (40, 30)


def test_a_name_that_differs_only_in_capitals_is_told(tmp_path: Path) -> None:
    picture(tmp_path / "Spine.JPG")
    (fault,) = found(tmp_path, "spine.jpg").diagnostics
    assert fault.rule == "photo-missing"
    assert "called `Spine.JPG` on the disk: only the capitals differ" in fault.message


def test_a_name_whose_accents_are_stored_otherwise_is_told(tmp_path: Path) -> None:
    picture(tmp_path / unicodedata.normalize("NFD", "dos-avant-é.jpg"))
    (fault,) = found(tmp_path, unicodedata.normalize("NFC", "dos-avant-é.jpg")).diagnostics
    assert "the accents are stored in another form" in fault.message


def test_nothing_outside_the_case_s_folder_is_taken(tmp_path: Path) -> None:
    picture(tmp_path / "other.jpg")
    (tmp_path / "case").mkdir()
    seen = found(tmp_path / "case", "../other.jpg")
    assert not seen.images
    assert [one.rule for one in seen.diagnostics] == ["photo-missing"]


def test_the_logo_lies_beside_the_lab_s_settings(tmp_path: Path) -> None:
    picture(tmp_path / "mark.jpg")
    cache = Cache(tmp_path / "cache", "test")
    assert set(find_logo(Settings(logo="mark.jpg"), tmp_path, cache).images) == {LOGO}
    (fault,) = find_logo(Settings(logo="gone.png"), tmp_path, cache).diagnostics
    assert "not beside `lab.yml`" in fault.message
    assert not find_logo(Settings(), tmp_path, cache).images
