"""The files that every site needs: one style sheet, the scripts, the icon, named by content."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from casebook.files import digest, templates_folder
from casebook.output.site import Asset

ICON = "assets/icon.svg"


@dataclass(frozen=True, slots=True)
class Fixed:
    """The address of the style sheet, those of the scripts by name, and all files with them."""

    style: str
    scripts: Mapping[str, str]
    assets: tuple[Asset, ...]


def fixed_assets() -> Fixed:
    """The style sheets joined into one, each script by itself, the icon as it is."""
    folder = templates_folder() / "assets"
    style = _named("casebook.css", b"".join(one.read_bytes() for one in _in(folder / "css")))
    scripts = {one.stem: _named(one.name, one.read_bytes()) for one in _in(folder / "js")}
    icon = Asset(ICON, (folder / "icon.svg").read_bytes())
    addresses = {name: asset.address for name, asset in scripts.items()}
    return Fixed(style.address, addresses, (style, *scripts.values(), icon))


def _in(folder: Path) -> list[Path]:
    return sorted(path for path in folder.iterdir() if path.is_file())


def _named(name: str, data: bytes) -> Asset:
    """A file whose name changes with its content, so that a browser may keep it for ever."""
    stem, _, suffix = name.rpartition(".")
    return Asset(f"assets/{stem}-{digest(data)[:12]}.{suffix}", data)
