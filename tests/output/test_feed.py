"""The feed: the newest cases first, under ids that outlive the site's address."""

from __future__ import annotations

import xml.etree.ElementTree as ET

from casebook.audiences import redact
from casebook.model.archive import Case
from casebook.model.base import Audience
from casebook.model.settings import Settings
from casebook.output.feed import Feed, feed_of
from casebook.output.render import render
from casebook.output.whole import Whole, Wishes
from tests.builders import PICTURES, RICH, archive, record

ATOM = "{http://www.w3.org/2005/Atom}"
URL = "https://archive.example/"
LAB = Settings(name="Invented & sons", tag="lab.example,2025")


def feed(
    *texts: str, audience: Audience = Audience.PUBLIC, settings: Settings = LAB, url: str = URL
) -> Feed | None:
    shown = archive(*(record(Case, text) for text in texts), settings=settings)
    return feed_of(Whole(redact(shown, audience, "kestrel-trust"), PICTURES, Wishes(site_url=url)))


def test_an_entry_has_an_id_that_outlives_the_address_and_a_date_of_the_record() -> None:
    found = feed(RICH)
    assert found is not None
    (entry,) = found.entries
    assert entry.id == "tag:lab.example,2025:cases/2025-031"
    assert entry.href == "https://archive.example/cases/2025-031/index.html"
    assert entry.updated == "2026-02-01T00:00:00Z"  # the follow-up, the last day on record
    assert found.updated == entry.updated


def test_the_newest_case_stands_first() -> None:
    older = "{id: a, title: One, audience: public, written: {date: 1999-05-01}}"
    found = feed(older, RICH)
    assert found is not None
    assert [one.title for one in found.entries] == ["Tide-gauge keeper's day book", "One"]


def test_the_feed_is_well_formed_whatever_the_words() -> None:
    hostile = '{id: a, title: "<b> & ]]>", audience: public, story: "x"}'
    found = feed(hostile)
    tree = ET.fromstring(render("parts/feed.xml", feed=found))
    assert tree.findtext(f"{ATOM}entry/{ATOM}title") == "<b> & ]]>"
    assert tree.findtext(f"{ATOM}title") == "Invented & sons"
    for one in (tree, tree.find(f"{ATOM}entry")):
        assert one is not None
        assert all(one.findtext(f"{ATOM}{name}") for name in ("id", "title", "updated"))


def test_without_an_address_or_a_tag_and_for_one_client_there_is_none() -> None:
    assert feed(RICH, url="") is None
    assert feed(RICH, settings=Settings(name="Invented bindery")) is None
    assert feed(RICH, audience=Audience.CLIENT) is None
    assert feed(RICH, audience=Audience.LAB) is None
