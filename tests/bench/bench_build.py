"""How much CPU a build takes, as a ratio to MkDocs with Material over the same visible words.

Run `python tests/bench/bench_build.py [CASES ...]` (100, 300 and 1000 unless said). For each number
it makes that many cases without photos from the demo archive, builds them with `casebook build`,
writes the words of our built pages as plain Markdown pages, and builds these with stock MkDocs and
Material (search on, pages out of the nav) in alternating pairs.
"""

from __future__ import annotations

import re
import resource
import shutil
import subprocess
import sys
import tempfile
from html.parser import HTMLParser
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
PAIRS = 3
STOCK = """site_name: the same words
use_directory_urls: false
theme: {name: material, font: false}
plugins: [search]
not_in_nav: "/cases/"
nav: [index.md]
"""
_BLOCKS = {"p", "li", "h1", "h2", "h3", "h4", "tr", "dt", "dd", "figcaption", "caption"}
_HEADS = {"h1": "# ", "h2": "## ", "h3": "### ", "h4": "#### "}


class _Words(HTMLParser):
    """The visible words inside `main` as Markdown headings, paragraphs and tables."""

    def __init__(self) -> None:
        super().__init__()
        self.inside = False
        self.start = ""
        self.cells: list[str] = []
        self.text: list[str] = []
        self.lines: list[str] = []
        self.head_row = False

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag == "main":
            self.inside = True
        if tag in _BLOCKS:
            self._end()
            self.start = _HEADS.get(tag, "")

    def handle_endtag(self, tag: str) -> None:
        if tag in ("td", "th"):
            self.cells.append(" ".join(" ".join(self.text).split()))
            self.text = []
        elif tag == "tr":
            self._row()
        elif tag == "table":
            self.lines.append("")
            self.head_row = False
        elif tag in _BLOCKS:
            self._end()
        elif tag == "main":
            self._end()
            self.inside = False

    def handle_data(self, data: str) -> None:
        if self.inside:
            self.text.append(data)

    def _row(self) -> None:
        self.lines.append("| " + " | ".join(self.cells) + " |")
        if not self.head_row:
            self.lines.append("|" + " --- |" * len(self.cells))
            self.head_row = True
        self.cells = []

    def _end(self) -> None:
        words = " ".join(" ".join(self.text).split())
        if words:
            self.lines.extend((self.start + words, ""))
        self.text = []
        self.start = ""


def archive(folder: Path, count: int) -> None:
    """An archive of that many cases without photos, made from the demo's."""
    for name in ("lab.yml", "mkdocs.yml"):
        shutil.copy(ROOT / name, folder / name)
    shutil.copytree(ROOT / "vocabulary", folder / "vocabulary")
    shutil.copytree(ROOT / "pages", folder / "pages")
    models = sorted((ROOT / "cases").glob("*/case.md"))
    for n in range(count):
        _copy(models[n % len(models)].parent, folder / "cases" / f"{n:05}", f"b-{n:05}")


def _copy(model: Path, place: Path, name: str) -> None:
    ignore = shutil.ignore_patterns("photos")
    shutil.copytree(model, place, ignore=ignore)
    for path in place.rglob("*.md"):
        path.write_text(_without_photos(path.read_text("utf-8"), name), "utf-8")


def _without_photos(text: str, name: str) -> str:
    text = re.sub(r"^id: .*$", f"id: {name}", text, count=1, flags=re.M)
    text = re.sub(r"^photos:.*\n(?:[ -].*\n)*", "", text, flags=re.M)
    text = re.sub(r"^ +photo: .*\n", "", text, flags=re.M)
    text = re.sub(r", photo: (?:\[[^\]]*\]|[^,}]*)", "", text)
    text = re.sub(r"^photo: .*\n", "", text, flags=re.M)
    text = re.sub(r"^record: .*$", "record: from-notes", text, flags=re.M)
    return re.sub(r"^audience: .*$", "audience: public", text, flags=re.M)


def plain(built: Path, folder: Path) -> None:
    """The words of the built pages as a stock MkDocs project."""
    (folder / "mkdocs.yml").write_text(STOCK, "utf-8")
    for page in sorted(built.rglob("*.html")):
        words = _Words()
        words.feed(page.read_text("utf-8"))
        address = page.relative_to(built).with_suffix(".md")
        under = Path() if address.as_posix() == "index.md" else Path("cases")
        target = folder / "docs" / under / address
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text("\n".join(words.lines), "utf-8")


def cpu(command: list[str], folder: Path) -> float:
    """The CPU seconds, user and system, of a command and what it started."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run(command, cwd=folder, check=True, capture_output=True)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def measure(count: int) -> None:
    """Print the CPU of both builds and their ratio."""
    with tempfile.TemporaryDirectory() as name:
        ours, stock = Path(name, "ours"), Path(name, "stock")
        ours.mkdir()
        stock.mkdir()
        archive(ours, count)
        build = [sys.executable, "-m", "casebook", "build"]
        subprocess.run(build, cwd=ours, check=True, capture_output=True)
        plain(ours / "site", stock)
        reference = [sys.executable, "-m", "mkdocs", "build", "-q"]
        pairs = [(cpu(build, ours), cpu(reference, stock)) for _ in range(PAIRS)]
    ratios = sorted(mine / theirs for mine, theirs in pairs)
    mine, theirs = (sorted(one)[PAIRS // 2] for one in zip(*pairs, strict=True))
    middle = ratios[PAIRS // 2]
    print(f"{count:5} cases: casebook {mine:6.2f} s, stock {theirs:6.2f} s, ratio {middle:.2f}")


if __name__ == "__main__":
    for wanted in [int(one) for one in sys.argv[1:]] or [100, 300, 1000]:
        measure(wanted)
