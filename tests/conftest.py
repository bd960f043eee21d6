"""What all tests share: profiles, golden files, and a browser where there is one."""

from __future__ import annotations

import os
import shutil
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Literal

import pytest
from hypothesis import settings

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

HERE = Path(__file__).parent
BROWSER_TESTS = HERE / "browser"
PROGRAMS = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome")
OFFLINE = (
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-quic",
    "--disable-sync",
    "--no-first-run",
)
NO_BROWSER = "no Chromium found: install it (Debian: apt install chromium), or set CASEBOOK_BROWSER"

settings.register_profile("ci", derandomize=True, deadline=None, print_blob=True)
settings.register_profile("here", deadline=None)
settings.load_profile("ci" if os.environ.get("CI") else "here")


def browser_program() -> str | None:
    """The path of Chromium: CASEBOOK_BROWSER where it is set, else the first on PATH."""
    named = os.environ.get("CASEBOOK_BROWSER")
    candidates = (named,) if named else PROGRAMS
    return next((found for one in candidates if (found := shutil.which(one))), None)


def pytest_addoption(parser: pytest.Parser) -> None:
    """Add `--update`."""
    parser.addoption("--update", action="store_true", help="write golden files anew")


def pytest_configure(config: pytest.Config) -> None:
    """Stop before any test where a check that must be whole would leave out the browser."""
    wanted = BROWSER_TESTS.is_dir() and bool(os.environ.get("CI"))
    if wanted and not browser_program():
        raise pytest.UsageError(f"CI is set and browser tests may not be left out; {NO_BROWSER}")


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Leave out browser tests where there is no browser."""
    if not browser_program():
        for item in items:
            if item.path.is_relative_to(BROWSER_TESTS):
                item.add_marker(pytest.mark.skip(reason=NO_BROWSER))


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """Say how many browser tests were left out, and why."""
    skipped = terminalreporter.stats.get("skipped", [])
    if count := sum(NO_BROWSER in str(report.longrepr) for report in skipped):
        terminalreporter.write_line(f"{count} browser tests left out: {NO_BROWSER}")


@pytest.fixture
def golden(request: pytest.FixtureRequest) -> Callable[[str, str], None]:
    """`golden(name, text)` holds a text against tests/golden/NAME; `--update` writes it anew."""

    def compare(name: str, text: str) -> None:
        path = HERE / "golden" / name
        if request.config.getoption("--update"):
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(text.encode())
        assert path.is_file(), f"{path} is missing: run pytest with --update, then read it"
        assert text == path.read_bytes().decode()

    return compare


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """Chromium, which reaches no network by itself; one for all tests of a worker."""
    from playwright.sync_api import sync_playwright

    as_root = ("--no-sandbox",) if hasattr(os, "geteuid") and os.geteuid() == 0 else ()
    with sync_playwright() as playwright:
        chromium = playwright.chromium.launch(
            executable_path=browser_program(), args=[*OFFLINE, *as_root]
        )
        yield chromium
        chromium.close()


@pytest.fixture
def open_page(browser: Browser) -> Iterator[Callable[..., Page]]:
    """`open_page(address, width=…, height=…, scheme=…, scripts=…)`: a page in a context of its own.

    The address is a path or a URL, width and height are CSS pixels. When the test ends it fails
    if any of its pages asked anybody but this machine for something.
    """
    contexts, foreign = [], []

    def note(address: str) -> None:
        if not address.startswith(("file:", "data:", "blob:", "about:", "http://127.0.0.1:")):
            foreign.append(address)

    def open_one(
        address: str | Path,
        *,
        width: int = 1280,
        height: int = 800,
        scheme: Literal["light", "dark"] = "light",
        scripts: bool = True,
    ) -> Page:
        context = browser.new_context(
            viewport={"width": width, "height": height},
            color_scheme=scheme,
            java_script_enabled=scripts,
            reduced_motion="reduce",
        )
        contexts.append(context)
        context.on("request", lambda request: note(request.url))
        page = context.new_page()
        page.goto(address.resolve().as_uri() if isinstance(address, Path) else address)
        return page

    yield open_one
    for context in contexts:
        context.close()
    assert foreign == []
