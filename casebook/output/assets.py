"""The files that every site needs: one style sheet, the scripts, the icon, named by content."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from casebook.files import digest, templates_folder
from casebook.output.site import Asset
from casebook.values.contrast import Rgb, readable

ICON = "assets/icon.svg"

ON_PAPER: tuple[Rgb, ...] = ((252, 252, 250), (241, 240, 236))
BY_NIGHT: tuple[Rgb, ...] = ((22, 22, 20), (33, 32, 29))
"""The grounds that text stands on, `--paper` and `--mount` of the style sheet, by day and night."""


@dataclass(frozen=True, slots=True)
class Fixed:
    """The address of the style sheet, those of the scripts by name, and all files with them."""

    style: str
    scripts: Mapping[str, str]
    assets: tuple[Asset, ...]


def fixed_assets(accent: Rgb | None = None) -> Fixed:
    """The style sheets joined into one, each script by itself, the icon as it is.

    `accent` is the lab's own colour of links, in a shade that can be read.
    """
    folder = templates_folder() / "assets"
    sheets = [_lean(one.read_bytes()) for one in _in(folder / "css")]
    style = _named("casebook.css", b"".join((*sheets, _accented(accent) if accent else b"")))
    scripts = {one.stem: _named(one.name, one.read_bytes()) for one in _in(folder / "js")}
    icon = Asset(ICON, (folder / "icon.svg").read_bytes())
    addresses = {name: asset.address for name, asset in scripts.items()}
    return Fixed(style.address, addresses, (style, *scripts.values(), icon))


def _accented(accent: Rgb) -> bytes:
    light, dark = (_hex(readable(accent, grounds)) for grounds in (ON_PAPER, BY_NIGHT))
    by_night = f"@media (prefers-color-scheme: dark) {{ :root {{ --accent: {dark}; }} }}"
    return f":root {{ --accent: {light}; }}\n{by_night}\n".encode()


def _hex(colour: Rgb) -> str:
    return "#{:02x}{:02x}{:02x}".format(*colour)


def _lean(sheet: bytes) -> bytes:
    """A style sheet without comments and indents, which only its writers need."""
    return re.sub(rb"\s*\n\s*", b"\n", re.sub(rb"/\*.*?\*/", b"", sheet, flags=re.S))


def _in(folder: Path) -> list[Path]:
    return sorted(path for path in folder.iterdir() if path.is_file())


def _named(name: str, data: bytes) -> Asset:
    """A file whose name changes with its content, so that a browser may keep it for ever."""
    stem, _, suffix = name.rpartition(".")
    return Asset(f"assets/{stem}-{digest(data)[:12]}.{suffix}", data)
