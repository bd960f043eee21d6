"""The built demo site on paper: nothing cut, nothing to click, ink on white, all that is folded open."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Literal

import pytest

if TYPE_CHECKING:
    from playwright.sync_api import Page

CASE = "cases/2025-031/index.html"
APART = "cases/2025-031/apart/index.html"
KINDS = (CASE, APART, "cases/1991-006/index.html", "cases/2025-052/index.html", "index.html",
         "materials/wheat-starch-paste/index.html", "cases/index.html", "ways/index.html",
         "glossary/index.html", "about.html")  # fmt: skip
MM = 96 / 25.4
A4, LETTER = 170, 175.9
"""How wide the text stands between the margins of a sheet. Unit: mm."""

Open = Callable[..., "Page"]

STICKING_OUT = """(width) => [...document.querySelectorAll('body *')].filter((one) => {
  const box = one.getBoundingClientRect();
  const seen = box.width > 1 && box.height > 1 && !one.closest('svg, .unseen');
  return seen && (box.right > width + 1 || box.left < -1);
}).map((one) => one.outerHTML.slice(0, 80))"""
SHOWN = """(what) => [...document.querySelectorAll(what)]
  .filter((one) => one.getBoundingClientRect().height > 0).map((one) => one.outerHTML.slice(0, 80))"""
SHUT = """() => [...document.querySelectorAll('main details:not([open])')]
  .filter((one) => one.getBoundingClientRect().height > 0)
  .filter((one) => one.lastElementChild.getBoundingClientRect().height === 0)
  .map((one) => one.outerHTML.slice(0, 80))"""


def on_paper(
    open_page: Open, address: Path, width: float = A4, scheme: Literal["light", "dark"] = "light"
) -> Page:
    page = open_page(address, width=int(width * MM), height=980, scheme=scheme)
    page.emulate_media(media="print", color_scheme=scheme)
    return page


def style(page: Page, what: str, name: str) -> str:
    script = "([what, name]) => getComputedStyle(document.querySelector(what))[name]"
    return str(page.evaluate(script, [what, name]))


@pytest.mark.parametrize("width", [A4, LETTER])
@pytest.mark.parametrize("address", KINDS)
def test_nothing_is_cut_at_the_side_of_the_sheet(
    site: Path, open_page: Open, address: str, width: float
) -> None:
    page = on_paper(open_page, site / address, width)
    assert page.evaluate(STICKING_OUT, int(width * MM)) == []


@pytest.mark.parametrize("address", KINDS)
def test_nothing_that_only_a_screen_can_use_is_printed(
    site: Path, open_page: Open, address: str
) -> None:
    page = on_paper(open_page, site / address)
    assert page.evaluate(SHOWN, "button, input, select, nav, form, dialog, .skip") == []


@pytest.mark.parametrize("address", [CASE, APART, "index.html", "about.html"])
def test_from_a_dark_screen_it_is_dark_ink_on_white(
    site: Path, open_page: Open, address: str
) -> None:
    page = on_paper(open_page, site / address, scheme="dark")
    assert style(page, "body", "backgroundColor") == "rgb(255, 255, 255)"
    for what in ("body", "main", "h1", "p"):
        assert style(page, what, "color") in ("rgb(0, 0, 0)", "rgb(51, 51, 51)")


def test_drawings_keep_their_light_tone_from_a_dark_screen(site: Path, open_page: Open) -> None:
    page = on_paper(open_page, site / CASE, scheme="dark")
    assert style(page, ".drawing .d-tone", "fill") == "rgb(208, 208, 208)"
    assert style(page, ".drawing .d-ink", "fill") == "rgb(0, 0, 0)"


@pytest.mark.parametrize("address", [CASE, "cases/1991-006/index.html"])
def test_what_is_folded_stands_open(site: Path, open_page: Open, address: str) -> None:
    page = on_paper(open_page, site / address)
    assert page.locator("main details:not([open])").count() > 0
    assert page.evaluate(SHUT) == []


def test_every_sheet_says_at_its_foot_what_it_belongs_to(site: Path, open_page: Open) -> None:
    for address, words in ((CASE, "Case 2025-031 · Tide-gauge"), (APART, "Case 2025-031 · How to")):
        page = on_paper(open_page, site / address)
        foot = page.evaluate(
            "getComputedStyle(document.documentElement).getPropertyValue('--foot')"
        )
        assert words in foot
        assert page.get_attribute("html", "data-foot") in foot


def test_the_report_begins_with_what_it_is_and_whose(site: Path, open_page: Open) -> None:
    screen = open_page(site / CASE)
    assert not screen.locator(".cover").is_visible()
    words = on_paper(open_page, site / CASE).locator(".cover").inner_text()
    for one in ("Case 2025-031", "Oakum Row Studio", "received", "returned", "Complete"):
        assert one in words


def test_before_and_after_share_the_width_and_sittings_have_photos_of_80_mm(
    site: Path, open_page: Open
) -> None:
    page = on_paper(open_page, site / CASE)
    boxes = "(what) => [...document.querySelectorAll(what)].map((one) => one.clientWidth)"
    pair = page.evaluate(boxes, ".pair figure")
    assert len(pair) == 2
    assert sum(pair) > 0.95 * A4 * MM
    sittings = page.evaluate(boxes, ".episode .pictures figure")
    assert sittings
    assert min(sittings) >= int(80 * MM)


def test_a_photo_laid_over_another_stands_straight_on_paper(site: Path, open_page: Open) -> None:
    page = on_paper(open_page, site / CASE)
    assert style(page, ".pair figure:nth-of-type(2) img", "transform") == "none"
    assert style(page, ".pair figure:nth-of-type(2) > a", "clipPath") == "none"


@pytest.mark.parametrize("what", ["h2", "h3", "summary", "caption", "thead", ".episode-head"])
def test_no_heading_ends_a_page(site: Path, open_page: Open, what: str) -> None:
    page = on_paper(open_page, site / CASE)
    assert style(page, f"main {what}", "breakAfter") == "avoid"


def test_an_opening_of_the_way_back_is_not_torn_between_pages(site: Path, open_page: Open) -> None:
    page = on_paper(open_page, site / APART)
    assert style(page, ".openings > li", "breakInside") == "avoid"
    assert style(page, ".drawn", "breakInside") == "avoid"
