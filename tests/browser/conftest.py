"""The demo archive as its user builds it: once for each process that tests."""

from __future__ import annotations

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="session")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder of the demo archive's public site, built from a copy."""
    archive = tmp_path_factory.mktemp("archive")
    for name in ("cases", "vocabulary", "pages"):
        shutil.copytree(ROOT / name, archive / name)
    for name in ("lab.yml", "mkdocs.yml"):
        shutil.copy(ROOT / name, archive / name)
    built = subprocess.run(
        [sys.executable, "-m", "casebook", "build"],
        cwd=archive,
        capture_output=True,
        text=True,
        check=False,
    )
    assert built.returncode == 0, built.stderr
    return archive / "site"
