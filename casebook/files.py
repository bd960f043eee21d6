"""Files on disk: digested, written whole or not at all, linked, and cached by content."""

from __future__ import annotations

import hashlib
import os
import secrets
import shutil
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path


def digest(data: bytes | str) -> str:
    """SHA-256 of `data` (text as UTF-8), in 64 hexadecimal digits."""
    return hashlib.sha256(data.encode() if isinstance(data, str) else data).hexdigest()


def digest_file(path: Path) -> str:
    """SHA-256 of a file's bytes; the file may be larger than memory."""
    with path.open("rb") as file:
        return hashlib.file_digest(file, "sha256").hexdigest()


@cache
def package_digest(room: str = "") -> str:
    """Digest of the package's own files: what was computed by other code is computed again.

    The whole package with its templates, or one room of it ("photos") alone.
    """
    package = Path(__file__).parent
    found = {
        f"{room}/{name}": path
        for name, path in files_in(package / room)
        if path.suffix in {".py", ".yml"} and not name.startswith("_templates/")
    }
    if not room:
        found |= {f"templates:{name}": path for name, path in files_in(templates_folder())}
    return digest("".join(f"{digest_file(found[name])} {name}\n" for name in sorted(found)))


def templates_folder() -> Path:
    """Where the templates are: inside an installed package, or beside it in a checkout."""
    package = Path(__file__).parent
    for folder in (package / "_templates", package.parent / "site_templates"):
        if folder.is_dir():
            return folder
    raise FileNotFoundError("the installation is not whole: its templates are missing")


def files_in(folder: Path) -> Iterator[tuple[str, Path]]:
    """Every file under a folder with its name relative to it, sorted; a link is a file."""
    for entry in sorted(folder.iterdir(), key=lambda each: each.name) if folder.is_dir() else ():
        if entry.is_dir() and not entry.is_symlink():
            if entry.name != "__pycache__":
                yield from ((f"{entry.name}/{name}", path) for name, path in files_in(entry))
        else:
            yield entry.name, entry


def write_whole(path: Path, data: bytes | str) -> None:
    """Write a file aside, force it to disk, and put it in place: whole, or as it was before.

    Text is written as UTF-8, line ends as they are. The file keeps its mode; a link stays a link.
    """
    target = Path(os.path.realpath(path))
    _write_aside(target, data.encode() if isinstance(data, str) else data, forced=True)
    sync_folder(target.parent)


def _write_aside(target: Path, data: bytes, forced: bool) -> None:
    """Write `data` beside `target` and rename it in; `forced` brings it to disk before that."""
    aside = target.with_name(f".{target.name}.{secrets.token_hex(4)}.part")
    try:
        with aside.open("xb") as file:
            file.write(data)
            file.flush()
            if forced:
                os.fsync(file.fileno())
        if target.exists():
            shutil.copymode(target, aside)
        os.replace(aside, target)
    finally:
        aside.unlink(missing_ok=True)


def link_or_copy(source: Path, target: Path) -> None:
    """Give `target` the bytes of `source`, by a hard link where the disk has them."""
    target.unlink(missing_ok=True)  # a copy written into an old link would change its twin too
    try:
        os.link(source, target)
    except OSError:  # another disk, or one without links; a missing source raises again below
        shutil.copy2(source, target)


def sync_file(path: Path) -> None:
    """Force a file's bytes to disk."""
    handle = os.open(path, os.O_RDWR if os.name == "nt" else os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def sync_folder(folder: Path) -> None:
    """Force a folder's list of names to disk; Windows keeps it by itself and opens no folder."""
    if os.name != "nt":
        sync_file(folder)


@dataclass(frozen=True, slots=True)
class Cache:
    """What is dear to make, kept by content: `folder/KIND/ab/DIGEST`, beside it its check.

    An entry is found by the digest of its key and of `salt`, which names what made it. It holds
    no path. Any entry may be deleted or damaged at any time: it is a miss then. Two writers of one
    entry do not disturb each other.
    """

    folder: Path
    salt: str

    def path(self, kind: str, key: str) -> Path:
        """Where an entry is or would be; its bytes are the data and nothing else."""
        name = digest(f"{self.salt}\n{key}")
        return self.folder / kind / name[:2] / name

    def get(self, kind: str, key: str) -> bytes | None:
        """The data, or None when it is not there or not what was put."""
        path = self.path(kind, key)
        try:
            data, check = path.read_bytes(), _check_of(path).read_text("ascii", "replace")
        except FileNotFoundError:
            return None
        return data if check == digest(data) else None

    def put(self, kind: str, key: str, data: bytes) -> None:
        """Keep data; it is not forced to disk, since a damaged entry is only made again."""
        path = self.path(kind, key)
        path.parent.mkdir(parents=True, exist_ok=True)
        try:
            _write_aside(path, data, forced=False)
            _write_aside(_check_of(path), digest(data).encode(), forced=False)
        except PermissionError:  # Windows: another process is just reading the same entry
            if self.get(kind, key) != data:
                raise


def _check_of(path: Path) -> Path:
    return path.with_name(path.name + ".check")
