"""A site is a value: every link in it leads somewhere, and half a record still makes one."""

from __future__ import annotations

import re
from html import unescape
from posixpath import dirname, join, normpath

from hypothesis import HealthCheck, given, settings

from casebook.model.archive import Case
from casebook.model.base import Audience
from tests.builders import RICH, archive, record, site, written
from tests.strategies import half_written

WHOLE = record(Case, RICH)


@settings(max_examples=12, suppress_health_check=list(HealthCheck))
@given(half_written(WHOLE))
def test_half_a_record_still_makes_a_site(case: Case) -> None:
    assert written(site(archive(case), Audience.PUBLIC))["index.html"]
    assert written(site(archive(case), Audience.LAB))["index.html"]


def test_the_same_archive_gives_the_same_site() -> None:
    first = written(site(archive(WHOLE), Audience.PUBLIC))
    assert first == written(site(archive(WHOLE), Audience.PUBLIC))


def test_an_archive_without_cases_has_its_fixed_pages() -> None:
    found = written(site(archive(), Audience.PUBLIC))
    assert {"index.html", "cases/index.html", "search/index.html", "404.html"} <= set(found)


def test_an_earlier_id_leads_to_the_case() -> None:
    page = written(site(archive(WHOLE), Audience.PUBLIC))["cases/2025-030/index.html"]
    assert "../2025-031/index.html" in page


def test_every_link_leads_to_something_on_the_site() -> None:
    found = written(site(archive(WHOLE), Audience.PUBLIC))
    for address, text in found.items():
        for link in (
            re.findall(r'(?:href|src)="([^"#?]+)', text) if address.endswith("html") else ()
        ):
            if ":" not in link:
                assert normpath(join(dirname(address), unescape(link))) in found, (address, link)
