"""The cache of pictures outlives whatever becomes of it: killed work, two at once, another place."""

from __future__ import annotations

import subprocess
import sys
import time
from pathlib import Path

import pytest
from PIL import Image

from casebook.files import Cache, digest
from casebook.photos import derive as room
from casebook.photos.derive import derive_all

WORK = """
import sys
from pathlib import Path
from casebook.files import Cache, digest
from casebook.photos.derive import derive_all
photos, cache = Path(sys.argv[1]), Cache(Path(sys.argv[2]), "salt")
jobs = [(digest(path.read_bytes()), path) for path in sorted(photos.iterdir())]
derive_all(jobs, cache, None, lambda done, total: print(done, flush=True))
"""
MANY = 5


@pytest.fixture
def photos(tmp_path: Path) -> Path:
    folder = tmp_path / "photos"
    folder.mkdir()
    for n in range(MANY):
        image = Image.effect_mandelbrot((600, 400), (-2, -1, 1, 1 + n / 50), 40).convert("RGB")
        image.save(folder / f"{n}.jpg", quality=85)
    return folder


def start(photos: Path, cache: Path) -> subprocess.Popen[str]:
    return subprocess.Popen(
        [sys.executable, "-c", WORK, str(photos), str(cache)], stdout=subprocess.PIPE, text=True
    )


def finish(photos: Path, cache: Path) -> tuple[dict[str, list[bytes]], int]:
    """The bytes of every picture, by the name of its photo, and how many had to be made."""
    held, told = Cache(cache, "salt"), []
    paths = {digest(path.read_bytes()): path for path in sorted(photos.iterdir())}
    pictures = derive_all(paths.items(), held, None, lambda done, total: told.append(total))
    found = {}
    for original, picture in pictures.items():
        data = [held.get("picture", each.name) for each in picture.widths]
        found[paths[original].name] = [one for one in data if one is not None]
        assert len(found[paths[original].name]) == len(picture.widths)
    return found, told[0] if told else 0


def test_killed_at_any_moment_it_is_carried_on_and_no_half_file_is_used(
    tmp_path: Path, photos: Path
) -> None:
    whole, _ = finish(photos, tmp_path / "undisturbed")
    cache = tmp_path / "cache"
    for wait in (0.0, 0.01, 0.02):  # after its first picture, so that it is in the midst of them
        with start(photos, cache) as work:
            assert work.stdout
            work.stdout.readline()
            time.sleep(wait)
            work.kill()
    found, made = finish(photos, cache)
    assert made <= MANY - 3  # each of the killed had made one
    assert found == whole


def test_a_file_of_which_half_was_written_is_not_used(tmp_path: Path, photos: Path) -> None:
    whole, _ = finish(photos, tmp_path / "cache")
    entries = sorted((tmp_path / "cache" / "picture").rglob("*"))
    files = [path for path in entries if path.is_file() and path.suffix != ".check"]
    files[0].write_bytes(files[0].read_bytes()[:1000])
    files[3].with_name(files[3].name + ".check").unlink()
    files[5].with_name(f".{files[5].name}.0a1b2c3d.part").write_bytes(b"half")
    found, made = finish(photos, tmp_path / "cache")
    assert found == whole
    assert made in {1, 2}


def test_two_at_once_on_one_cache_make_the_same(tmp_path: Path, photos: Path) -> None:
    cache = tmp_path / "cache"
    with start(photos, cache) as one, start(photos, cache) as other:
        assert [work.wait(120) for work in (one, other)] == [0, 0]
    found, made = finish(photos, cache)
    assert made == 0
    assert found == finish(photos, tmp_path / "alone")[0]


def test_a_cache_and_photos_in_another_place_are_as_good(
    tmp_path: Path, photos: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    whole, made = finish(photos, tmp_path / "cache")
    assert made == MANY
    (tmp_path / "away").mkdir()
    moved = [
        folder.rename(tmp_path / "away" / folder.name) for folder in (photos, tmp_path / "cache")
    ]
    monkeypatch.setattr(room, "opened", None)  # nothing is decoded again
    assert finish(*moved) == (whole, 0)
