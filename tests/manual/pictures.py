"""Takes the pictures of `docs/the-lab.md`: `python -m tests.manual.pictures [NAME ...]`.

Each shows what one setting does: the demo archive is copied, built with the setting, opened in a
browser (`CASEBOOK_BROWSER`, else Chromium on the path), and photographed where it shows.
"""

from __future__ import annotations

import io
import os
import re
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path
from typing import Literal, NamedTuple

from PIL import Image, ImageDraw
from playwright.sync_api import Browser, FloatRect, sync_playwright

ROOT = Path(__file__).parents[2]
IMAGES = ROOT / "docs" / "images"
CASE = "cases/2025-031/index.html"
PAPER = (252, 252, 250)
GAP, ROOM = 16, 4
COLOURS = 96
"""Enough for type and flat colour; a picture of a photograph keeps all of its own."""


class View(NamedTuple):
    """One look at a page: the box around all that `parts` selects, under one setting."""

    page: str
    parts: str
    setting: str = ""
    """A line of `lab.yml`, in place of the demo's line of the same key."""
    dark: bool = False
    above: int = 0
    """So many pixels from the top of that box; 0 for all of it."""


def _row(name: str) -> str:
    return f"#object dl > div:has(dt:text-is('{name}'))"


DATES = ", ".join(_row(name) for name in ("Received", "Examined", "Returned"))
ACCENT = 'accent: "#c0602b"'

PICTURES: dict[str, tuple[View, ...]] = {
    "name": (View("index.html", ".opening"),),
    "foot": (View("index.html", ".site-foot", 'footer: ["Open Tuesday to Friday.", "Ring first."]'),),
    "licence": (View(CASE, "#citing"),),
    "language": tuple(View(CASE, DATES, f"language: {one}") for one in ("en-GB", "en-US", "de")),
    "units": tuple(View(CASE, _row("Size"), f"units: {one}") for one in ("metric", "imperial", "both")),
    "logo": (View("index.html", ".site-bar", "logo: mark.png"),),
    "accent": tuple(View("ways/index.html", "main", ACCENT, one, above=400) for one in (False, True)),
    "own-page": (View("about.html", "body", above=620),),
    "invented": (View(CASE, ".site-head"),),
}  # fmt: skip


def archive(folder: Path) -> None:
    """A copy of the demo archive, with a mark of the lab's own."""
    for name in ("cases", "vocabulary", "pages"):
        shutil.copytree(ROOT / name, folder / name)
    for name in ("lab.yml", "mkdocs.yml"):
        shutil.copy(ROOT / name, folder / name)
    mark = Image.new("RGB", (240, 240), PAPER)
    pen = ImageDraw.Draw(mark)
    for ring in range(3):
        pen.ellipse((20 + 34 * ring, 20, 150 + 34 * ring, 220), outline=(24, 71, 74), width=14)
    mark.save(folder / "mark.png")


def build(folder: Path, setting: str) -> Path:
    """The site under one setting."""
    text = (ROOT / "lab.yml").read_text("utf-8")
    key = setting.partition(":")[0]
    kept = re.sub(rf"^{key}:.*\n", "", text, flags=re.M) if key else text
    (folder / "lab.yml").write_text(f"{kept.rstrip()}\n{setting}\n", "utf-8")
    subprocess.run([sys.executable, "-m", "casebook", "build"], cwd=folder, check=True)
    return folder / "site"


def take(browser: Browser, site: Path, view: View) -> Image.Image:
    """One view of a built site."""
    scheme: Literal["dark", "light"] = "dark" if view.dark else "light"
    page = browser.new_page(viewport={"width": 900, "height": 900}, color_scheme=scheme)
    page.goto((site / view.page).as_uri())
    boxes = [box for one in page.locator(view.parts).all() if (box := one.bounding_box())]
    left = max(0.0, min(box["x"] for box in boxes) - ROOM)
    top = max(0.0, min(box["y"] for box in boxes) - ROOM)
    right = min(900.0, max(box["x"] + box["width"] for box in boxes) + ROOM)
    high = max(box["y"] + box["height"] for box in boxes) + ROOM - top
    clip: FloatRect = {
        "x": left,
        "y": top,
        "width": right - left,
        "height": min(high, view.above or high),
    }
    data = page.screenshot(full_page=True, clip=clip)
    page.close()
    return Image.open(io.BytesIO(data)).convert("RGB")


def joined(views: list[Image.Image]) -> Image.Image:
    """The views one below the other."""
    wide = max(one.width for one in views)
    high = sum(one.height + GAP for one in views) - GAP
    whole = Image.new("RGB", (wide, high), (255, 255, 255))
    top = 0
    for one in views:
        whole.paste(one, (0, top))
        top += one.height + GAP
    return whole


def main() -> None:
    """Take the pictures that are named, or all."""
    wanted = {name: PICTURES[name] for name in sys.argv[1:] or PICTURES}
    path = os.environ.get("CASEBOOK_BROWSER") or shutil.which("chromium")
    with tempfile.TemporaryDirectory() as name, sync_playwright() as driver:
        folder = Path(name)
        archive(folder)
        browser = driver.chromium.launch(executable_path=path, args=["--no-sandbox"])
        for title, views in wanted.items():
            shots = [take(browser, build(folder, view.setting), view) for view in views]
            picture = joined(shots).quantize(COLOURS)
            picture.save(IMAGES / f"lab-{title}.png", optimize=True)
            print(f"{(IMAGES / f'lab-{title}.png').stat().st_size / 1000:6.1f} kB  {title}")
        browser.close()


if __name__ == "__main__":
    main()
