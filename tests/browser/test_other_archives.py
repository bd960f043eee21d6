"""An archive unlike the demo: long words, odd shapes, an own page of everything, a path on the web."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from PIL import Image

if TYPE_CHECKING:
    from playwright.sync_api import Page

WORD = "MS.Add.1234567890/ABCDEFGHIJKLMNOPQRSTUVWXYZ/1234567890-abcdefghijklmnopqrstuvwxyz.f.123v"
HEBREW = "ספר ישן עם כריכת עור."
LAB = f"""
format: 1
name: "{WORD[:60]}"
about: "{WORD}"
footer: ["{WORD}"]
logo: logo.png
tag: lab.example,2026
"""
SETTINGS = """
site_name: Other
site_url: https://lab.example/archive/
docs_dir: pages
theme: {name: material, font: false}
plugins: [casebook]
markdown_extensions: [admonition, tables, pymdownx.superfences]
"""
TABLE = (
    f"|{'|'.join('ABCDEFGH')}|\n|{'---|' * 7}---:|\n|{'|'.join(['a-long-word-of-a-cell'] * 8)}|\n"
)
OWN_PAGE = (
    f"# {WORD}\n\n{WORD}\n\n{TABLE}\n!!! note\n    Said.\n\n```python\ndef x(): return 1\n```\n"
)
CASE = f"""---
id: {{name}}
was: [old-{{name}}]
title: "{WORD}"
audience: public
object: {{{{kind: ledger, housing: "{WORD}"}}}}
findings:
  - {{{{part: spine, seen: "{WORD}", marks: {{{{photo: before, box: 10 10 20 20}}}}}}}}
photos:
  - {{{{id: before, file: before.png, stage: before, view: front, caption: "{WORD}"}}}}
  - {{{{id: after, file: after.png, stage: after, view: front}}}}
---
{HEBREW}

{WORD}

| a | b |
|---|---|
| {WORD} | {WORD} |
"""
SHAPES = {"strip-1": (60, 900), "upright-1": (600, 900)}

Open = Callable[..., "Page"]


@pytest.fixture(scope="session")
def other(tmp_path_factory: pytest.TempPathFactory, build: Callable[..., None]) -> Path:
    """The folder of the other archive's site."""
    archive = tmp_path_factory.mktemp("other")
    (archive / "lab.yml").write_text(LAB, "utf-8")
    (archive / "mkdocs.yml").write_text(SETTINGS, "utf-8")
    Image.new("RGB", (60, 900), "teal").save(archive / "logo.png")
    (archive / "pages").mkdir()
    (archive / "pages" / "own.md").write_text(OWN_PAGE, "utf-8")
    for name, size in SHAPES.items():
        folder = archive / "cases" / name
        folder.mkdir(parents=True)
        (folder / "case.md").write_text(CASE.format(name=name), "utf-8")
        for stage, colour in (("before", "tan"), ("after", "olive")):
            Image.new("RGB", size, colour).save(folder / f"{stage}.png")
    build(archive)
    return archive / "site"


@pytest.mark.parametrize("width", [320, 700, 1280])
@pytest.mark.parametrize("address", ["index.html", "cases/strip-1/index.html", "own.html"])
def test_words_without_spaces_make_no_page_scroll_sideways(
    other: Path, open_page: Open, address: str, width: int
) -> None:
    page = open_page(other / address, width=width)
    page.evaluate("document.querySelectorAll('details').forEach((one) => { one.open = true; })")
    assert page.evaluate("document.documentElement.scrollWidth") <= width


def test_a_logo_of_any_shape_keeps_to_its_line(other: Path, open_page: Open) -> None:
    logo = open_page(other / "index.html").locator(".logo").bounding_box()
    assert logo is not None
    assert logo["height"] <= 40


def test_strips_stand_side_by_side_until_they_are_asked_for(other: Path, open_page: Open) -> None:
    page = open_page(other / "cases" / "strip-1" / "index.html")
    edge = page.get_by_role("slider")
    assert not edge.is_visible()
    boxes = [one.bounding_box() for one in page.locator(".pair img, .marked img").all()]
    assert [box for box in boxes if box is None or box["height"] > 900] == []
    page.get_by_role("button", name="Compare").click()
    assert edge.is_visible()


def test_upright_pictures_that_are_compared_fit_the_screen(other: Path, open_page: Open) -> None:
    page = open_page(other / "cases" / "upright-1" / "index.html", height=900)
    box = page.locator(".pair.compared img").first.bounding_box()
    assert box is not None
    assert 400 < box["height"] < 800


def test_a_key_opens_a_compared_picture_where_it_counts_as_a_click(
    other: Path, open_page: Open
) -> None:
    page = open_page(other / "cases" / "upright-1" / "index.html")
    link = page.locator(".pair figure > a").first
    link.click()
    assert not page.locator("dialog.viewer").is_visible()
    link.focus()
    page.keyboard.press("Shift")
    link.evaluate(
        "one => one.dispatchEvent(new MouseEvent('click', {detail: 1, bubbles: true, cancelable: true}))"
    )
    assert page.locator("dialog.viewer").is_visible()


def test_the_buttons_of_a_large_photo_stand_in_one_row_on_a_phone(
    other: Path, open_page: Open
) -> None:
    page = open_page(other / "cases" / "upright-1" / "index.html", width=375)
    page.locator(".marked figure > a").click()
    buttons = [one.bounding_box() for one in page.locator(".viewer-bar button").all()]
    assert len(buttons) == 7
    assert len({box and box["y"] for box in buttons}) == 1


def test_a_fitted_picture_is_turned_only_where_it_lies_over_the_other(
    site: Path, open_page: Open
) -> None:
    page = open_page(site / "cases" / "2025-031" / "index.html")
    turned = "getComputedStyle(document.querySelector('img.fitted')).transform"
    assert page.evaluate(turned) != "none"
    page.get_by_role("button", name="Side by side").click()
    assert page.evaluate(turned) == "none"


def test_an_own_page_keeps_the_policy_and_its_tables_are_reached_by_key(
    other: Path, open_page: Open
) -> None:
    page = open_page(other / "own.html", width=390)
    said: list[str] = []
    page.on("console", lambda one: said.append(one.text))
    page.reload()
    assert said == []
    last = page.locator(".across td").last
    assert last.evaluate("one => getComputedStyle(one).textAlign") == "right"
    page.locator(".across").focus()
    assert page.evaluate("document.activeElement.className") == "across"


def test_the_sign_of_a_note_stands_beside_its_title(other: Path, open_page: Open) -> None:
    page = open_page(other / "own.html")
    room = "parseFloat(getComputedStyle(document.querySelector('.admonition-title')).paddingLeft)"
    assert page.evaluate(room) > 20


def test_code_on_an_own_page_has_the_colour_of_ink(other: Path, open_page: Open) -> None:
    page = open_page(other / "own.html")
    colours = page.evaluate(
        """() => [...new Set([...document.querySelectorAll("pre, pre *")].map(
          (one) => getComputedStyle(one).color))]"""
    )
    assert len(colours) == 1


def test_a_paragraph_from_right_to_left_begins_at_the_right(other: Path, open_page: Open) -> None:
    page = open_page(other / "cases" / "strip-1" / "index.html")
    left = page.evaluate("""() => {
      const one = document.querySelector(".story p");
      const range = document.createRange();
      range.selectNodeContents(one);
      return range.getBoundingClientRect().left - one.getBoundingClientRect().left;
    }""")
    assert left > 100


def test_the_lost_and_the_moved_are_no_addresses_for_search_engines(other: Path) -> None:
    told = {
        address: 'rel="canonical"' in (other / address).read_text("utf-8")
        for address in ("404.html", "cases/old-strip-1/index.html", "cases/strip-1/index.html")
    }
    assert list(told.values()) == [False, False, True]


def test_a_search_from_disk_is_allowed_by_every_browser(other: Path) -> None:
    """Some hold that no file is of the same origin as another: `'self'` alone stops the form."""
    assert "form-action 'self' file:" in (other / "index.html").read_text("utf-8")
