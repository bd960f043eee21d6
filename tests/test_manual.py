"""The software's own manual builds without a warning, and every page of it is in its contents."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

import yaml

ROOT = Path(__file__).parents[1]
MANUAL = ROOT / "manual.yml"


def test_the_manual_builds_without_a_warning(tmp_path: Path) -> None:
    built = subprocess.run(
        [
            sys.executable,
            "-m",
            "mkdocs",
            "build",
            "--strict",
            "-q",
            "-f",
            MANUAL,
            "-d",
            tmp_path / "m",
        ],
        capture_output=True,
        text=True,
        check=False,
        env={"NO_MKDOCS_2_WARNING": "1", "PATH": "", "SYSTEMROOT": ""},
    )
    assert built.returncode == 0, built.stderr
    assert (tmp_path / "m" / "writing-a-case.html").is_file()


def test_every_page_for_readers_stands_in_its_contents() -> None:
    settings = yaml.safe_load(MANUAL.read_text(encoding="utf-8"))
    left_out = settings["exclude_docs"].split()
    pages = {path.relative_to(ROOT / "docs").as_posix() for path in (ROOT / "docs").rglob("*.md")}
    readers = {one for one in pages if not any(one.startswith(out) for out in left_out)}
    assert readers <= set(_named(settings["nav"]))


def test_every_picture_of_it_is_there_and_shown() -> None:
    texts = [ROOT / "README.md", *(ROOT / "docs").rglob("*.md")]
    shown = {
        (path.parent / name).resolve()
        for path in texts
        for name in re.findall(r"!\[[^\]]+\]\(([^)]+)\)", path.read_text(encoding="utf-8"))
    }
    assert shown == {path.resolve() for path in (ROOT / "docs" / "images").iterdir()}


def _named(nav: list) -> list[str]:
    entries = [value for one in nav for value in one.values()]
    return [name for one in entries for name in (_named(one) if isinstance(one, list) else [one])]
