"""The frame of every page finds its way back to the top."""

from __future__ import annotations

import re

import pytest

from casebook.model.archive import Case, Shown
from casebook.model.base import Audience
from casebook.model.settings import Settings
from casebook.output.assets import fixed_assets
from casebook.output.contexts import Link
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


@pytest.mark.parametrize(
    ("address", "marked"),
    [
        ("index.html", []),
        ("cases/index.html", [("Cases", "page")]),
        ("cases/page/2/index.html", [("Cases", "true")]),
        ("cases/2025-031/index.html", [("Cases", "true")]),
        ("ways/damage/index.html", [("Ways in", "true")]),
        ("materials/linen/index.html", [("Ways in", "true")]),
        ("about.html", [("About", "page")]),
        ("404.html", []),
    ],
)
def test_the_header_marks_where_a_page_stands(address: str, marked: list[tuple[str, str]]) -> None:
    nav = (
        Link("Cases", "cases/index.html"),
        Link("Ways in", "ways/index.html"),
        Link("About", "about.html"),
    )
    surround = Surround(Shown(Audience.PUBLIC, archive()), "", nav, fixed_assets(), ())
    header = surround.frame(address, "A page").header
    assert re.findall(r'aria-current="(\w+)">([\w ]+)<', header) == [
        (how, text) for text, how in marked
    ]


def test_a_page_is_english_and_what_a_german_lab_wrote_is_marked_as_german() -> None:
    german = Settings(name="Werkstatt", about="Bücher.", language="de")
    made = site(archive(record(Case, RICH), settings=german), Audience.LAB)
    pages = {page.address: page for page in made.pages}
    frame = pages["index.html"].frame()
    assert (frame.language, frame.own) == ("en", ' lang="de"')
    assert '<p class="lead" lang="de">Bücher.</p>' in pages["index.html"].body()
    body = pages["cases/2025-031/index.html"].body()
    assert '<h1 lang="de">' in body
    assert "1870er Jahre" in body
    assert made.frame_for("about.html", "Über uns").own == frame.own


def test_a_british_lab_has_british_pages() -> None:
    made = site(archive(settings=Settings(language="en-GB")), Audience.PUBLIC)
    frame = made.pages[0].frame()
    assert (frame.language, frame.own) == ("en-GB", "")
