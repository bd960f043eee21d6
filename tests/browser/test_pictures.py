"""No picture is said to be wider than it stands, and a phone's first view stays small."""

from __future__ import annotations

import re
import threading
from collections.abc import Callable, Iterator
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page, Response

Open = Callable[..., "Page"]

FIRST_VIEW = 300_000
"""Bytes that a phone may be sent before a case can be read, not compressed."""

SLOTS = """() => {
  for (const one of document.querySelectorAll("details")) one.open = true;
  return [...document.querySelectorAll("picture")].map((picture) => {
    const told = picture.querySelector("source").getAttribute("sizes");
    const parts = told.split(/,(?![^(]*[)])/).map((one) => one.trim());
    const condition = (one) => (one.match(/^[(].*[)](?= )/) || [""])[0];
    const said = parts.find((one) => !condition(one) || matchMedia(condition(one)).matches);
    const probe = document.createElement("div");
    probe.style.cssText = `position: absolute; width: ${said.slice(condition(said).length)}`;
    document.body.append(probe);
    const width = probe.getBoundingClientRect().width;
    probe.remove();
    return [said, width, picture.querySelector("img").getBoundingClientRect().width];
  });
}"""
"""How wide each picture is said to be, and how wide it stands when all that is folded is open."""


KINDS = ("pair", "marked", "gallery", "like-picture", "thumbs", "pictures", "run", "apart", "card")
"""What holds a picture, or changes how wide it stands: each is looked at on two pages."""


@pytest.fixture(scope="module")
def pages(site: Path) -> list[Path]:
    """A few pages on which every kind of picture stands."""
    texts = {one: one.read_text("utf-8") for one in sorted(site.glob("**/index.html"))}
    chosen = {site / "index.html"}
    for kind in KINDS:
        having = [
            one
            for one, text in texts.items()
            if "<picture>" in text and re.search(rf'class="(?:[a-z-]+ )*{kind}[ "]', text)
        ]
        assert having, kind
        chosen |= {having[0], having[-1]}
    return sorted(chosen)


@pytest.mark.parametrize(
    ("width", "density"),
    [(320, 1), (390, 1), (768, 1), (1024, 1), (1280, 1), (1920, 1), (390, 2), (320, 3), (390, 3)],
)
def test_every_picture_is_said_to_be_as_wide_as_it_stands(
    pages: list[Path], browser: Browser, width: int, density: int
) -> None:
    context = browser.new_context(
        viewport={"width": width, "height": 900}, device_scale_factor=density
    )
    page, wrong, seen = context.new_page(), [], 0
    told = {1, 2 / 3} if density == 3 else {1}
    for one in pages:
        page.goto(one.as_uri())
        for said, slot, wide in page.evaluate(SLOTS):
            seen += 1
            if wide and not any(0.9 <= slot / wide / part <= 1.1 for part in told):
                wrong.append((one.parent.name, said, round(slot), round(wide)))
    context.close()
    assert seen > 50
    assert wrong == []


class Quiet(SimpleHTTPRequestHandler):
    """Serves files without a word."""

    def log_message(self, *_: object) -> None:
        return


@pytest.fixture(scope="module")
def address(site: Path) -> Iterator[str]:
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(Quiet, directory=str(site)))
    thread = threading.Thread(target=server.serve_forever)
    thread.start()
    yield f"http://127.0.0.1:{server.server_port}"
    server.shutdown()
    thread.join()
    server.server_close()


def heard(page: Page) -> list[Response]:
    """All that a page will be sent."""
    got: list[Response] = []

    def note(one: Response) -> None:
        got.append(one)

    page.on("response", note)
    return got


def test_the_first_view_of_every_case_is_small_on_a_phone(
    site: Path, address: str, browser: Browser
) -> None:
    sent = {}
    for case in sorted((site / "cases").glob("*/index.html")):
        context = browser.new_context(viewport={"width": 390, "height": 844}, device_scale_factor=3)
        page = context.new_page()
        got = heard(page)
        page.goto(f"{address}/cases/{case.parent.name}/index.html", wait_until="networkidle")
        sent[case.parent.name] = sum(int(one.headers["content-length"]) for one in got)
        context.close()
    assert len(sent) > 10
    assert {name: size for name, size in sent.items() if size > FIRST_VIEW} == {}


def test_the_large_picture_takes_the_place_of_the_one_on_the_page(
    site: Path, open_page: Open
) -> None:
    page = open_page(site / "cases" / "2025-044" / "index.html")
    link = page.locator("#photographs figure > a").first
    link.click()
    large = page.locator(".viewer-stage img")
    page.wait_for_function("image => image.src.endsWith('.jpg')", arg=large.element_handle())
    assert large.evaluate("image => image.src") == link.evaluate("link => link.href")
