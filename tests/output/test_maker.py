"""Every page of a site is there, at the address it promises."""

from __future__ import annotations

from casebook.model.archive import Case
from casebook.model.base import Audience
from tests.builders import RICH, archive, record, site


def test_a_site_has_its_home_its_lists_its_cases_and_a_page_for_the_lost() -> None:
    pages = {page.address for page in site(archive(record(Case, RICH)), Audience.PUBLIC).pages}
    assert {
        "index.html",
        "cases/index.html",
        "cases/2025-031/index.html",
        "ways/index.html",
        "ways/structure/tight-back/index.html",
        "materials/linen/index.html",
        "glossary/index.html",
        "search/index.html",
        "404.html",
    } <= pages


def test_an_earlier_id_leads_to_the_case() -> None:
    pages = {page.address: page for page in site(archive(record(Case, RICH)), Audience.LAB).pages}
    assert "../2025-031/index.html" in pages["cases/2025-030/index.html"].frame().head


def test_a_case_says_what_it_is_to_programs() -> None:
    pages = {page.address: page for page in site(archive(record(Case, RICH)), Audience.LAB).pages}
    assert "application/ld+json" in pages["cases/2025-031/index.html"].frame().head
    assert "application/ld+json" not in pages["index.html"].frame().head


def test_a_home_page_without_pictures_features_no_case_but_names_it() -> None:
    pages = {page.address: page for page in site(archive(record(Case, RICH)), Audience.LAB).pages}
    home = pages["index.html"].body()
    assert 'class="feature' not in home
    assert home.count("cases/2025-031/index.html") == 1
