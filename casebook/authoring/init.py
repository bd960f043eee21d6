"""A new archive: its settings, its folders, a page about the lab, and what git passes by."""

from __future__ import annotations

from pathlib import Path

from casebook.files import files_in, write_whole

_PATTERN = Path(__file__).parent / "archive"
_FOLDERS = ("cases",)


class InTheWay(Exception):
    """Something stands where a new file would go: `paths`. Nothing was written."""

    def __init__(self, paths: list[Path]) -> None:
        super().__init__(paths)
        self.paths = paths


def init_archive(folder: Path) -> list[Path]:
    """Make an archive in a folder, new or without such files; the paths written, in order.

    Raises `InTheWay` where one of them is there already, and `OSError`.
    """
    files = {_name(name): path.read_bytes() for name, path in files_in(_PATTERN)}
    paths = [folder / name for name in (*files, *_FOLDERS)]
    if taken := [path for path in paths if path.exists()]:
        raise InTheWay(taken)
    for name in _FOLDERS:
        (folder / name).mkdir(parents=True)
    for name, data in files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        write_whole(path, data)
    return paths


def _name(name: str) -> str:
    """The name in the archive: the pattern keeps its ignore file where git does not obey it."""
    return ".gitignore" if name == "gitignore" else name
