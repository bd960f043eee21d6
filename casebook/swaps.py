"""Folders exchanged whole: the old or the new one stands in place, and no foreign file goes."""

from __future__ import annotations

import json
import os
import secrets
import shutil
from pathlib import Path
from typing import TypedDict

from casebook.files import digest_file, files_in, sync_file, sync_folder, write_whole
from casebook.locks import Busy, lock

# What file managers drop into any folder they show: nobody's work, so no reason to stop.
_LITTER = frozenset({".DS_Store", "Thumbs.db", "desktop.ini"})

# Of each file of a folder, by its path with forward slashes: digest, bytes, time changed (ns).
Listing = dict[str, tuple[str, int, int]]


class _Exchange(TypedDict):
    """The note of a swap: paths relative to the notes' folder, so that an archive can move."""

    new: str
    place: str
    old: str
    files: Listing  # of the new folder: they are ours as soon as they are in place


def swap(new: Path, place: Path, notes: Path) -> None:
    """Exchange the finished folder `new` into `place`, beside it, and remove what was there.

    A note in the folder `notes` lets `finish_swaps` complete it, wherever it was cut off: call that
    before building anew. Raises `NotOurs`, having changed nothing, when `place` holds files that
    are not ours, and `Busy` when another swap of the same place is on its way.
    """
    if not new.is_dir():
        raise FileNotFoundError(new)
    with lock(_swap_lock(place.name, notes), "putting a finished folder in place"):
        _refuse_foreign(place, notes)
        _sync_tree(new)
        old = place.with_name(f".{place.name}.{secrets.token_hex(4)}.old")
        files = _listing(new, _known(place, notes))
        near = [_relative(path, notes) for path in (new, place, old)]
        note = notes / f"swap-{place.name}.json"
        _write_json(note, _Exchange(new=near[0], place=near[1], old=near[2], files=files))
        _exchange(note, notes)


def finish_swaps(notes: Path) -> None:
    """Complete every swap that was cut off; leave alone one whose owner is still at it.

    Raises `NotOurs` when somebody put files into the place meanwhile.
    """
    for note in sorted(notes.glob("swap-*.json")):
        try:
            with lock(_swap_lock(note.stem.removeprefix("swap-"), notes), "finishing a swap"):
                if note.exists():
                    _exchange(note, notes)
        except Busy:
            continue  # its owner is alive and finishes it


def _exchange(note: Path, notes: Path) -> None:
    """Do what a note says, from wherever it was left: each step sees whether it is done already."""
    told: _Exchange = json.loads(note.read_bytes())
    new, place, old = (notes / told["new"], notes / told["place"], notes / told["old"])
    if new.exists():
        _make_way(place, old, notes)
        os.rename(new, place)
    elif old.exists() and not place.exists():
        os.rename(old, place)  # somebody removed the new one: the old one comes back
        note.unlink()
        return
    sync_folder(place.parent)
    _write_json(_manifest(place, notes), told["files"])
    if old.exists():
        shutil.rmtree(old)
    note.unlink()


def _make_way(place: Path, old: Path, notes: Path) -> None:
    """Rename what is in place to `old`; raise `NotOurs` rather than move what is not ours."""
    _refuse_foreign(place, notes)
    if place.exists() and old.exists():
        shutil.rmtree(place)  # nothing of anyone's is in it: the old site has moved already
    elif place.exists():
        os.rename(place, old)


def _refuse_foreign(place: Path, notes: Path) -> None:
    foreign = foreign_files(place, notes)
    if foreign:
        raise NotOurs(place, foreign)


def _sync_tree(folder: Path) -> None:
    """Force a folder with all it holds to disk."""
    folders = {folder}
    for _, path in files_in(folder):
        sync_file(path)
        folders.add(path.parent)
    for each in sorted(folders):
        sync_folder(each)


def _relative(path: Path, notes: Path) -> str:
    """A path as seen from the notes; whole when it is on another drive."""
    try:
        return os.path.relpath(path, notes)
    except ValueError:
        return str(path.absolute())


def _swap_lock(name: str, notes: Path) -> Path:
    return notes / f"swap-{name}.lock"


class NotOurs(Exception):
    """The folder `place` holds files that are not ours: `paths`, relative to it.

    "." stands for the place itself, when it is a file or a link.
    """

    def __init__(self, place: Path, paths: list[str]) -> None:
        super().__init__(place, paths)
        self.place = place
        self.paths = paths


def remember(place: Path, notes: Path) -> None:
    """Write into the folder `notes` that all files now in the folder `place` are ours."""
    _write_json(_manifest(place, notes), _listing(place, _known(place, notes)))


def foreign_files(place: Path, notes: Path) -> list[str]:
    """The files in `place` that we did not write, or that somebody changed since, sorted."""
    if place.is_symlink() or place.is_file():
        return ["."]
    known = _known(place, notes)
    return [
        name
        for name, path in files_in(place)
        if path.name not in _LITTER and not _as_known(path, known.get(name))
    ]


def _as_known(path: Path, known: tuple[str, int, int] | None) -> bool:
    """Whether a file is the one that is known; only one that was touched is read for it."""
    if known is None or path.is_symlink():
        return False
    stat = path.stat()
    if stat.st_size != known[1]:
        return False
    return stat.st_mtime_ns == known[2] or digest_file(path) == known[0]


def _listing(folder: Path, known: Listing) -> Listing:
    """What is in a folder; a file that is as `known` is not read again."""
    listing: Listing = {}
    for name, path in files_in(folder):
        stat = path.stat()
        old = known.get(name, ("", -1, -1))
        same = old[1:] == (stat.st_size, stat.st_mtime_ns)
        text = old[0] if same else digest_file(path)
        listing[name] = (text, stat.st_size, stat.st_mtime_ns)
    return listing


def _manifest(place: Path, notes: Path) -> Path:
    return notes / f"made-{place.name}.json"


def _known(place: Path, notes: Path) -> Listing:
    """What we wrote into `place`; a list that is lost or damaged vouches for no file."""
    try:
        read = json.loads(_manifest(place, notes).read_bytes())
        return {str(name): (str(a), int(b), int(c)) for name, (a, b, c) in read.items()}
    except (FileNotFoundError, ValueError, TypeError, AttributeError):
        return {}


def _write_json(path: Path, value: Listing | _Exchange) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    write_whole(path, json.dumps(value, indent=0))
