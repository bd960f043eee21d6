"""Holds a generated page against the one that is committed; `--update` writes it anew."""

from __future__ import annotations

from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]


def holds(request: pytest.FixtureRequest, page: Path, text: str) -> None:
    """The committed page is what the code makes now."""
    path = ROOT / page
    if request.config.getoption("--update"):
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(text.encode())
    assert path.read_bytes().decode() == text, f"{page}: run pytest with --update, then read it"
