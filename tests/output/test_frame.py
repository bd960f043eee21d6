"""The frame of every page finds its way back to the top."""

from __future__ import annotations

import pytest

from casebook.model.archive import Case, Shown
from casebook.model.base import Audience
from casebook.output.assets import fixed_assets
from casebook.output.frame import Surround, root_of
from tests.builders import RICH, archive, record, site


@pytest.mark.parametrize(
    ("address", "root"),
    [("index.html", ""), ("cases/index.html", "../"), ("cases/a/index.html", "../../")],
)
def test_the_way_back_to_the_top(address: str, root: str) -> None:
    assert root_of(address) == root


def test_the_lab_s_own_copy_says_so_on_every_page_and_the_public_one_does_not() -> None:
    shown = archive(record(Case, RICH))
    sentence = "not for publication"
    assert all(sentence in page.frame().header for page in site(shown, Audience.LAB).pages)
    assert not any(sentence in page.frame().header for page in site(shown, Audience.PUBLIC).pages)


@pytest.mark.parametrize(
    ("url", "top"),
    [
        ("https://archive.example/", "/"),
        ("https://example.org/archive/", "/archive/"),
        ("https://example.org", "/"),
        ("", ""),
    ],
)
def test_the_page_for_the_lost_finds_the_top_from_any_depth(url: str, top: str) -> None:
    shown = Shown(Audience.PUBLIC, archive())
    surround = Surround(shown, url, (), fixed_assets(), ())
    assert surround.root("404.html") == top
    assert f'href="{top}index.html"' in surround.frame("404.html", "Not here").header
    assert surround.root("cases/a/index.html") == "../../"
