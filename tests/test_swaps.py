"""Wherever an exchange is cut off, the old or the new folder stands whole; no other file goes."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path

import pytest

from casebook.locks import Busy, lock
from casebook.swaps import NotOurs, finish_swaps, foreign_files, remember, swap

OLD = {"index.html": "old home", "cases/a/index.html": "old case", "same.css": "same"}
NEW = {"index.html": "new home", "cases/b/index.html": "new case", "same.css": "same"}
STEPS = ("os.rename", "os.remove", "os.rmdir", "os.mkdir", "open")


def grow(folder: Path, tree: dict[str, str]) -> Path:
    for name, text in tree.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text)
    return folder


def tree(folder: Path) -> dict[str, str]:
    return {
        path.relative_to(folder).as_posix(): path.read_text()
        for path in folder.rglob("*")
        if path.is_file()
    }


@pytest.fixture
def notes(tmp_path: Path) -> Path:
    return tmp_path / ".casebook"


@pytest.fixture
def place(tmp_path: Path, notes: Path) -> Path:
    """A site of ours."""
    swap(grow(tmp_path / ".new", OLD), tmp_path / "site", notes)
    return tmp_path / "site"


def test_the_first_swap_makes_the_place_and_the_next_exchanges_it(
    tmp_path: Path, place: Path, notes: Path
) -> None:
    assert tree(place) == OLD
    swap(grow(tmp_path / ".new", NEW), place, notes)
    assert tree(place) == NEW
    assert sorted(path.name for path in tmp_path.iterdir()) == [".casebook", "site"]
    assert not list(notes.glob("swap-*.json"))
    assert foreign_files(place, notes) == []


def test_an_empty_folder_is_nobodys(tmp_path: Path, notes: Path) -> None:
    (tmp_path / "site" / "empty").mkdir(parents=True)
    swap(grow(tmp_path / ".new", NEW), tmp_path / "site", notes)
    assert tree(tmp_path / "site") == NEW


def test_what_is_to_come_in_must_be_there(tmp_path: Path, place: Path, notes: Path) -> None:
    with pytest.raises(FileNotFoundError):
        swap(tmp_path / "none", place, notes)
    assert tree(place) == OLD


# --- whose files -----------------------------------------------------------------------------


def test_a_folder_that_we_did_not_make_is_not_swapped(tmp_path: Path, notes: Path) -> None:
    site = grow(tmp_path / "site", {"thesis.txt": "mine", "b/c.txt": "mine too"})
    with pytest.raises(NotOurs) as caught:
        swap(grow(tmp_path / ".new", NEW), site, notes)
    assert (caught.value.place, caught.value.paths) == (site, ["b/c.txt", "thesis.txt"])
    assert tree(site) == {"thesis.txt": "mine", "b/c.txt": "mine too"}
    assert tree(tmp_path / ".new") == NEW


@pytest.mark.parametrize("name", ["index.html", "mine.txt", "cases/a/mine.txt"])
def test_a_file_added_or_changed_by_somebody_stops_the_swap(
    tmp_path: Path, place: Path, notes: Path, name: str
) -> None:
    (place / name).write_text("MY words")  # as long as the old home page
    assert foreign_files(place, notes) == [name]
    with pytest.raises(NotOurs):
        swap(grow(tmp_path / ".new", NEW), place, notes)
    assert (place / name).read_text() == "MY words"


def test_a_file_only_touched_or_missing_is_no_reason_to_stop(
    tmp_path: Path, place: Path, notes: Path
) -> None:
    os.utime(place / "index.html", (1, 1))
    (place / "same.css").unlink()
    (place / ".DS_Store").write_text("of a file manager")
    swap(grow(tmp_path / ".new", NEW), place, notes)
    assert tree(place) == NEW


def test_a_file_or_a_link_in_the_place_is_not_ours(
    tmp_path: Path, place: Path, notes: Path
) -> None:
    place.rename(tmp_path / "elsewhere")
    place.symlink_to(tmp_path / "elsewhere", target_is_directory=True)
    assert foreign_files(place, notes) == ["."]
    place.unlink()
    place.write_text("a file")
    with pytest.raises(NotOurs):
        swap(grow(tmp_path / ".new", NEW), place, notes)
    assert place.read_text() == "a file"


def test_a_link_to_a_folder_inside_the_place_is_told_and_not_followed(
    tmp_path: Path, place: Path, notes: Path
) -> None:
    grow(tmp_path / "photos", {"a.jpg": "a"})
    (place / "photos").symlink_to(tmp_path / "photos", target_is_directory=True)
    assert foreign_files(place, notes) == ["photos"]


@pytest.mark.parametrize("damage", ["", "[]", '{"index.html": 1}', "{"])
def test_a_lost_or_damaged_list_vouches_for_nothing(place: Path, notes: Path, damage: str) -> None:
    (notes / "made-site.json").write_text(damage)
    assert foreign_files(place, notes) == sorted(OLD)
    remember(place, notes)
    assert foreign_files(place, notes) == []


def test_each_place_has_its_own_list(tmp_path: Path, place: Path, notes: Path) -> None:
    swap(grow(tmp_path / ".new", NEW), tmp_path / "site-lab", notes)
    assert foreign_files(place, notes) == foreign_files(tmp_path / "site-lab", notes) == []
    assert (tree(place), tree(tmp_path / "site-lab")) == (OLD, NEW)


# --- cut off ---------------------------------------------------------------------------------


class Cut(OSError):
    """The disk fails here."""


class Saboteur:
    """Fails the disk at a chosen step: each opening, renaming, making and removing is one."""

    def __init__(self) -> None:
        self.left = -1

    def __call__(self, event: str, _: object) -> None:
        if self.left < 0 or event not in STEPS:
            return
        self.left -= 1
        if self.left < 0:
            raise Cut(28, f"no space left at {event}")


SABOTEUR = Saboteur()
sys.addaudithook(SABOTEUR)


@pytest.fixture
def saboteur() -> Iterator[Saboteur]:
    yield SABOTEUR
    SABOTEUR.left = -1


def cut_swap(saboteur: Saboteur, step: int, root: Path) -> bool:
    """A swap in a fresh folder whose disk fails at `step`; False when it has fewer steps."""
    notes, place = root / ".casebook", root / "site"
    swap(grow(root / ".new", OLD), place, notes)
    new = grow(root / ".new", NEW)
    saboteur.left = step
    with suppress(Cut):
        swap(new, place, notes)
    struck = saboteur.left < 0
    saboteur.left = -1
    return struck


def assert_whole(root: Path) -> None:
    """After finishing the old or the new site stands alone and is known; a swap works again."""
    notes, place = root / ".casebook", root / "site"
    finish_swaps(notes)
    assert tree(place) in (OLD, NEW)
    assert {path.name for path in root.iterdir()} <= {".casebook", "site", ".new"}
    assert foreign_files(place, notes) == []
    assert not list(notes.glob("swap-*.json"))
    shutil.rmtree(root / ".new", ignore_errors=True)
    swap(grow(root / ".new", NEW), place, notes)
    assert tree(place) == NEW


def test_a_swap_cut_off_at_any_step_is_finished_or_undone(
    tmp_path: Path, saboteur: Saboteur
) -> None:
    step = 0
    while cut_swap(saboteur, step, tmp_path / str(step)):
        assert_whole(tmp_path / str(step))
        step += 1
    assert step > 15
    assert tree(tmp_path / str(step) / "site") == NEW


def test_finishing_can_itself_be_cut_off_at_any_step(tmp_path: Path, saboteur: Saboteur) -> None:
    cuts = 0
    for first in range(7, 20, 2):
        for second in range(12):
            root = tmp_path / f"{first}-{second}"
            cut_swap(saboteur, first, root)
            saboteur.left = second
            try:
                finish_swaps(root / ".casebook")
            except Cut:
                cuts += 1
            saboteur.left = -1
            assert_whole(root)
    assert cuts > 20


KILLED = """
import sys
from pathlib import Path
from casebook.swaps import swap
root, left = Path(sys.argv[1]), int(sys.argv[2])
def wait(event, _):
    global left
    if event in ("os.rename", "os.remove", "os.rmdir"):
        left -= 1
        if left == -1:
            print("waiting", flush=True)
            sys.stdin.read()
sys.addaudithook(wait)
swap(root / ".new", root / "site", root / ".casebook")
print("done", flush=True)
"""


def killed_swap(root: Path, step: int) -> bool:
    """A swap in a process that is killed before its `step`-th change; False if it had fewer."""
    swap(grow(root / ".new", OLD), root / "site", root / ".casebook")
    grow(root / ".new", NEW)
    with subprocess.Popen(
        [sys.executable, "-c", KILLED, str(root), str(step)],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
    ) as process:
        assert process.stdout is not None
        told = process.stdout.readline()
        process.kill()
    return told == "waiting\n"


def test_a_killed_swap_is_finished_by_the_next_command(tmp_path: Path) -> None:
    step = 0
    while killed_swap(tmp_path / str(step), step):
        assert_whole(tmp_path / str(step))
        step += 1
    assert step > 8


def left_between(root: Path, saboteur: Saboteur) -> Path:
    """A swap cut off when the old site has moved away and the new one is not in yet."""
    for step in range(40):
        folder = root / str(step)
        cut_swap(saboteur, step, folder)
        if not (folder / "site").exists():
            return folder
    raise AssertionError("no step leaves the place empty")


def test_an_archive_moved_after_the_cut_is_finished_where_it_is_now(
    tmp_path: Path, saboteur: Saboteur
) -> None:
    left_between(tmp_path, saboteur).rename(tmp_path / "moved")
    finish_swaps(tmp_path / "moved" / ".casebook")
    assert tree(tmp_path / "moved" / "site") == NEW


def test_files_put_into_the_gap_are_not_touched(tmp_path: Path, saboteur: Saboteur) -> None:
    root = left_between(tmp_path, saboteur)
    grow(root / "site", {"mine.txt": "mine"})
    with pytest.raises(NotOurs):
        finish_swaps(root / ".casebook")
    assert tree(root / "site") == {"mine.txt": "mine"}
    shutil.rmtree(root / "site")
    assert_whole(root)


def test_an_empty_folder_in_the_gap_makes_way(tmp_path: Path, saboteur: Saboteur) -> None:
    root = left_between(tmp_path, saboteur)
    (root / "site").mkdir()
    assert_whole(root)


def test_the_old_site_comes_back_when_the_new_one_was_removed(
    tmp_path: Path, saboteur: Saboteur
) -> None:
    root = left_between(tmp_path, saboteur)
    shutil.rmtree(root / ".new")
    finish_swaps(root / ".casebook")
    assert tree(root / "site") == OLD
    assert foreign_files(root / "site", root / ".casebook") == []


def test_a_swap_whose_owner_is_at_it_is_left_alone(tmp_path: Path, saboteur: Saboteur) -> None:
    root = left_between(tmp_path, saboteur)
    with lock(root / ".casebook" / "swap-site.lock", "its owner"):
        finish_swaps(root / ".casebook")
        assert not (root / "site").exists()
        with pytest.raises(Busy):
            swap(root / ".new", root / "site", root / ".casebook")
    assert_whole(root)


def test_nothing_to_finish_is_no_fault(tmp_path: Path) -> None:
    finish_swaps(tmp_path / "none")
    assert not (tmp_path / "none").exists()
