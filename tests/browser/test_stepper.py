"""A drawing state by state: by button, key and finger; without scripts its last state."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from playwright.sync_api import Page

CASE = "cases/2025-031/index.html"
FIRST = "document.querySelector('[data-stepper]')"
SEEN = f"""() => [...{FIRST}.querySelectorAll('[data-layer]')]
  .filter((one) => one.getClientRects().length).map((one) => one.dataset.layer).sort()"""
SWIPE = f"""(by) => {{
  const figure = {FIRST}.querySelector('.drawn');
  const at = (type, x) => figure.dispatchEvent(
    new PointerEvent(type, {{bubbles: true, pointerType: 'touch', clientX: x, clientY: 200}}));
  at('pointerdown', 200);
  at('pointerup', 200 + by);
}}"""

Open = Callable[..., "Page"]


def _said(page: Page) -> str:
    return page.locator("[data-stepper] output").first.inner_text()


def test_it_begins_with_the_last_state_and_steps_back_by_button(
    site: Path, open_page: Open
) -> None:
    page = open_page(site / CASE)
    last = page.evaluate(SEEN)
    count = page.locator("[data-stepper]").first.locator(".states > li").count()
    assert _said(page).startswith(f"State {count} of {count}. ")
    page.get_by_role("button", name="Previous state").first.click()
    assert _said(page).startswith(f"State {count - 1} of {count}. ")
    assert page.evaluate(SEEN) != last


def test_keys_reach_the_first_and_the_last_state_and_stop_there(
    site: Path, open_page: Open
) -> None:
    page = open_page(site / CASE)
    last = page.evaluate(SEEN)
    page.get_by_role("button", name="Previous state").first.focus()
    page.keyboard.press("Home")
    page.keyboard.press("ArrowLeft")
    assert "As found" in _said(page)
    assert {"old-glue", "reback-leather", "spine"} <= set(page.evaluate(SEEN))
    assert "release-lining" not in page.evaluate(SEEN)
    page.keyboard.press("End")
    page.keyboard.press("ArrowRight")
    assert page.evaluate(SEEN) == last


def test_a_finger_swipes_from_state_to_state(site: Path, open_page: Open) -> None:
    page = open_page(site / CASE, width=390)
    before = _said(page)
    page.evaluate(SWIPE, 120)
    assert _said(page) != before
    page.evaluate(SWIPE, -120)
    assert _said(page) == before
    page.evaluate(SWIPE, 15)
    assert _said(page) == before


def test_without_scripts_the_last_state_is_drawn_and_all_are_there_in_words(
    site: Path, open_page: Open
) -> None:
    with_scripts = open_page(site / CASE).evaluate(SEEN)
    page = open_page(site / CASE, scripts=False)
    shown = [
        one.get_attribute("data-layer") or ""
        for one in page.locator("[data-stepper]").first.locator("[data-layer]:not([display])").all()
    ]
    assert sorted(shown) == with_scripts
    assert page.locator("[data-stepper] button").count() == 0
    assert page.locator("[data-stepper] .states > li").count() > 9


@pytest.mark.parametrize("width", [320, 1280])
def test_numbers_and_labels_can_be_read_and_nothing_sticks_out(
    site: Path, open_page: Open, width: int
) -> None:
    page = open_page(site / CASE, width=width)
    sizes = page.evaluate(
        """() => [...document.querySelectorAll('.drawing text')]
          .filter((one) => one.getClientRects().length)
          .map((one) => parseFloat(getComputedStyle(one).fontSize)
            * one.ownerSVGElement.getScreenCTM().a)"""
    )
    assert min(sizes) >= 9.9
    assert page.evaluate("document.documentElement.scrollWidth") <= width
