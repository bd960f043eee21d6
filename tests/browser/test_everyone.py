"""Reading and working the site by keyboard, by touch, with wide spacing, and with dialogs open."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Literal

import pytest
from axe_playwright_python.sync_playwright import Axe

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

CASE = "cases/2025-031/index.html"
PLACES = ("index.html", CASE, "search/index.html", "glossary/index.html")
OPTIONS = {"runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]}

# Text spacing of WCAG 2.2, success criterion 1.4.12: nothing may be lost when a reader sets it.
SPACING = (
    "* { line-height: 1.5 !important; letter-spacing: 0.12em !important;"
    " word-spacing: 0.16em !important; } p { margin-bottom: 2em !important; }"
)
SEEN = """() => {
  const one = document.activeElement;
  const box = one.getBoundingClientRect();
  const style = getComputedStyle(one);
  return {
    what: one.outerHTML.slice(0, 120),
    body: one === document.body,
    shown: box.width > 0 && box.height > 0 && style.visibility === "visible",
    marked: style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2,
  };
}"""

Open = Callable[..., "Page"]


@pytest.mark.parametrize("width", [390, 1280])
@pytest.mark.parametrize("address", PLACES)
def test_every_stop_of_the_tab_key_is_seen_and_marked(
    site: Path, open_page: Open, address: str, width: int
) -> None:
    page = open_page(site / address, width=width)
    stops = []
    for _ in range(60):
        page.keyboard.press("Tab")
        stop = page.evaluate(SEEN)
        if stop["body"]:
            break
        stops.append(stop)
    assert len(stops) > 3
    assert [stop["what"] for stop in stops if not (stop["shown"] and stop["marked"])] == []


def test_the_first_stop_leads_past_the_head_to_the_content(site: Path, open_page: Open) -> None:
    page = open_page(site / CASE)
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    assert page.evaluate("document.activeElement.id") == "main"


@pytest.mark.parametrize("width", [320, 1280])
@pytest.mark.parametrize("address", PLACES)
def test_wide_text_spacing_makes_no_page_scroll_sideways(
    site: Path, browser: Browser, address: str, width: int
) -> None:
    context = browser.new_context(viewport={"width": width, "height": 800}, bypass_csp=True)
    page = context.new_page()
    page.goto((site / address).as_uri())
    page.add_style_tag(content=SPACING)
    wide = page.evaluate("document.documentElement.scrollWidth")
    context.close()
    assert wide <= width


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [390, 1280])
def test_axe_finds_nothing_with_a_photo_open(
    site: Path, browser: Browser, width: int, scheme: Literal["light", "dark"]
) -> None:
    context = browser.new_context(
        viewport={"width": width, "height": 800}, color_scheme=scheme, bypass_csp=True
    )
    page = context.new_page()
    page.goto((site / CASE).as_uri())
    page.locator("#photographs figure > a").first.click()
    found = Axe().run(page, options=OPTIONS).response["violations"]
    context.close()
    assert [(one["id"], one["nodes"][0]["html"]) for one in found] == []


def test_the_tab_key_stays_in_an_open_photo_and_escape_leads_back(
    site: Path, open_page: Open
) -> None:
    page = open_page(site / CASE)
    page.locator("#photographs figure > a").first.click()
    inside = (
        "document.activeElement === document.body || !!document.activeElement.closest('dialog')"
    )
    for _ in range(10):
        page.keyboard.press("Tab")
        assert page.evaluate(inside)
    page.keyboard.press("Escape")
    assert page.evaluate("!!document.activeElement.closest('#photographs')")


def test_a_finger_leads_to_the_next_photo(site: Path, browser: Browser) -> None:
    context = browser.new_context(viewport={"width": 390, "height": 800}, has_touch=True)
    page = context.new_page()
    page.goto((site / CASE).as_uri())
    page.locator("#photographs figure > a").first.tap()
    page.evaluate("""() => {
      const stage = document.querySelector(".viewer-stage");
      stage.setPointerCapture = () => {};
      const send = (type, x) => stage.dispatchEvent(new PointerEvent(type,
        { pointerId: 7, pointerType: "touch", clientX: x, clientY: 300, bubbles: true }));
      send("pointerdown", 300); send("pointermove", 150); send("pointerup", 100);
    }""")
    assert page.locator(".viewer-words").inner_text().startswith("Photograph 2 of ")
    context.close()


def test_moving_less_is_honoured(site: Path, browser: Browser) -> None:
    context = browser.new_context(reduced_motion="reduce")
    page = context.new_page()
    page.goto((site / CASE).as_uri())
    moving = page.evaluate("""() => [...document.querySelectorAll("*")].filter((one) => {
      const style = getComputedStyle(one);
      return parseFloat(style.transitionDuration) > 0.01 || parseFloat(style.animationDuration) > 0.01;
    }).map((one) => one.outerHTML.slice(0, 80))""")
    context.close()
    assert moving == []
