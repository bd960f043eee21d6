"""The built demo site in a real browser, from disk: axe, no sideways scroll, valid HTML."""

from __future__ import annotations

import os
import subprocess
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

import html5lib
import pytest
from axe_playwright_python.sync_playwright import Axe

if TYPE_CHECKING:
    from playwright.sync_api import Page

CASE = "cases/2025-031/index.html"
UNFITTED = "cases/2025-044/index.html"
"""A case whose photos before and after are not laid over one another by points."""
KINDS = ("index.html", CASE, "cases/index.html", "ways/index.html", "search/index.html",
         "materials/wheat-starch-paste/index.html", "materials/index.html", "404.html", "about.html",
         "cases/2025-031/apart/index.html", "cases/2025-063/index.html",
         "glossary/index.html")  # fmt: skip
OPTIONS = {"runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]}

Open = Callable[..., "Page"]


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [390, 1280])
@pytest.mark.parametrize("address", KINDS)
def test_axe_finds_nothing(
    site: Path, browser: object, address: str, width: int, scheme: str
) -> None:
    context = browser.new_context(  # type: ignore[attr-defined]
        viewport={"width": width, "height": 800}, color_scheme=scheme, bypass_csp=True
    )
    page = context.new_page()
    page.goto((site / address).as_uri())
    found = Axe().run(page, options=OPTIONS).response["violations"]
    context.close()
    assert [(one["id"], one["nodes"][0]["html"]) for one in found] == []


@pytest.mark.parametrize("width", [320, 768, 1920])
@pytest.mark.parametrize("address", KINDS)
def test_no_page_scrolls_sideways(site: Path, open_page: Open, address: str, width: int) -> None:
    page = open_page(site / address, width=width)
    assert page.evaluate("document.documentElement.scrollWidth") <= width


def test_a_case_page_loads_no_byte_of_the_theme(site: Path, open_page: Open) -> None:
    page = open_page(site / CASE)
    query = "[...document.querySelectorAll('link[rel=stylesheet], script')].map(x => x.outerHTML)"
    loaded = page.evaluate(query)
    assert loaded
    assert not [one for one in loaded if "stylesheets/main" in one or "bundle" in one]


def test_all_content_of_a_case_reads_without_scripts(site: Path, open_page: Open) -> None:
    with_scripts = open_page(site / CASE).inner_text("main")
    without = open_page(site / CASE, scripts=False).inner_text("main")
    lines = with_scripts.splitlines()
    assert [line for line in without.splitlines() if line not in lines] == []


def test_the_edge_between_before_and_after_moves_by_keys_and_by_a_click(
    site: Path, open_page: Open
) -> None:
    page = open_page(site / UNFITTED)
    edge = page.get_by_role("slider", name="Edge between before and after")
    edge.focus()
    page.keyboard.press("Home")
    assert edge.get_attribute("aria-valuetext") == "only after treatment"
    box = page.locator(".pair figure img").first.bounding_box()
    assert box is not None
    page.mouse.click(box["x"] + box["width"] * 0.25, box["y"] + box["height"] / 2)
    assert page.locator(".pair figure img").nth(1).bounding_box() == box
    told = "25 per cent before, 75 per cent after treatment"
    assert edge.get_attribute("aria-valuetext") == told
    assert page.url.endswith("index.html")
    page.get_by_role("button", name="Side by side").click()
    assert not edge.is_visible()


def test_before_and_after_stand_side_by_side_without_scripts(site: Path, open_page: Open) -> None:
    page = open_page(site / CASE, scripts=False)
    first, second = (page.locator(".pair figure img").nth(n).bounding_box() for n in (0, 1))
    assert first is not None
    assert second is not None
    assert second["x"] >= first["x"] + first["width"]


def test_a_photo_opens_large_and_leads_to_the_next_by_keys(site: Path, open_page: Open) -> None:
    page = open_page(site / CASE)
    link = page.locator("#photographs figure > a").first
    link.focus()
    page.keyboard.press("Enter")
    words = page.locator(".viewer-words")
    first = words.inner_text()
    assert first.startswith("Photograph 1 of ")
    page.keyboard.press("ArrowRight")
    assert words.inner_text().startswith("Photograph 2 of ")
    page.keyboard.press("+")
    assert "scale(1.5)" in (page.locator(".viewer-stage img").get_attribute("style") or "")
    page.keyboard.press("Escape")
    assert not page.locator("dialog.viewer").is_visible()
    assert page.evaluate("document.activeElement.closest('#photographs') !== null")


def test_nothing_on_a_case_page_breaks_its_own_security_policy(site: Path, open_page: Open) -> None:
    page = open_page(site / CASE)
    broken: list[str] = []
    page.on("console", lambda said: broken.append(said.text))
    page.on("pageerror", lambda fault: broken.append(str(fault)))
    page.reload()
    page.locator("#photographs figure > a").first.click()
    page.keyboard.press("Escape")
    assert broken == []


def test_every_page_parses_strictly_and_every_link_leads_somewhere(site: Path) -> None:
    for page in sorted(site.rglob("*.html")):
        tree = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(
            page.read_bytes(), transport_encoding="utf-8"
        )
        for link in (one for one in tree.iter() if one.tag in {"a", "img", "script", "link"}):
            target = (link.get("href") or link.get("src") or "").partition("#")[0]
            target = target.partition("?")[0]
            if target and "://" not in target and not target.startswith(("mailto:", "data:")):
                assert (page.parent / target).resolve().is_file(), f"{page}: {target}"


@pytest.mark.skipif(
    not {"CASEBOOK_VNU", "CI"} & os.environ.keys(), reason="CASEBOOK_VNU names no Nu checker"
)
def test_the_nu_checker_finds_no_error(site: Path) -> None:
    pages = [str(site / address) for address in KINDS]
    checked = subprocess.run(
        ["java", "-jar", os.environ["CASEBOOK_VNU"], "--errors-only", *pages],
        capture_output=True,
        text=True,
        check=False,
    )
    assert checked.stderr == ""


def test_the_home_page_features_its_newest_pictured_case_and_does_not_repeat_it(site: Path) -> None:
    home = (site / "index.html").read_text(encoding="utf-8")
    _, feature, rest = home.partition('class="feature card"')
    assert feature
    address = rest.partition('href="')[2].partition('"')[0]
    assert address.startswith("cases/")
    assert home.count(f'href="{address}"') == 1
