"""A small archive for the stories: two cases, one small photo, made anew for each test."""

from __future__ import annotations

import subprocess
import sys
from datetime import date
from pathlib import Path

from PIL import Image

from casebook.authoring.init import init_archive
from casebook.authoring.new import new_case

TODAY = date(2025, 4, 3)
PHOTO = "photos: [{file: spine.jpg, stage: before, view: spine, caption: The spine}]\n"


def small_archive(folder: Path) -> Path:
    """An archive with two public cases, of which one has a photo."""
    init_archive(folder)
    settings = folder / "lab.yml"
    clients = "clients: {quay: {name: The Quay Trust}}\n"
    settings.write_text(settings.read_text("utf-8") + clients, "utf-8")
    first = new_case(folder, "2025-001", TODAY)
    Image.new("RGB", (24, 16), "sienna").save(first / "photos" / "spine.jpg")
    edit(first, "# photos:\n", PHOTO + "# photos:\n")
    new_case(folder, "2025-002", TODAY)
    for one in (folder / "cases").iterdir():
        edit(one, "audience: lab", "audience: public")
    return folder


def edit(case: Path, old: str, new: str) -> None:
    """Replace a piece of a case's record."""
    record = case / "case.md"
    text = record.read_text("utf-8")
    assert old in text
    record.write_text(text.replace(old, new), "utf-8")


def break_case(archive: Path, case: str) -> None:
    """Give a case an error."""
    edit(archive / "cases" / case, "status: undecided", "status: [undecided")


def command(*arguments: str, cwd: Path, first: str = "") -> subprocess.Popen[str]:
    """A command of ours in a process of its own, after some code that comes `first`."""
    code = f"{first}\nif __name__ == '__main__':\n from casebook.cli import main; main()"
    return subprocess.Popen(
        [sys.executable, "-c", code, *arguments],
        cwd=cwd,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )


def tree(folder: Path) -> dict[str, bytes]:
    """Every file under a folder with its bytes."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }
