"""Archives as their user builds them; the demo's once for each process that tests."""

from __future__ import annotations

import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]


Build = Callable[..., None]


@pytest.fixture(scope="session")
def build() -> Build:
    """`build(archive, …)`: what `casebook build` does there, with these arguments; it must pass."""

    def run(archive: Path, *arguments: str) -> None:
        command = [sys.executable, "-m", "casebook", "build", *arguments]
        built = subprocess.run(command, cwd=archive, capture_output=True, text=True, check=False)
        assert built.returncode == 0, built.stderr

    return run


@pytest.fixture(scope="session")
def site(tmp_path_factory: pytest.TempPathFactory, build: Build) -> Path:
    """The folder of the demo archive's public site, built from a copy."""
    archive = tmp_path_factory.mktemp("archive")
    for name in ("cases", "vocabulary", "pages"):
        shutil.copytree(ROOT / name, archive / name)
    for name in ("lab.yml", "mkdocs.yml"):
        shutil.copy(ROOT / name, archive / name)
    build(archive)
    return archive / "site"
