"""A site names each address once, and none leaves its folder."""

from __future__ import annotations

from casebook.model.archive import Case
from casebook.model.base import Audience
from tests.builders import RICH, archive, record, site


def test_every_address_is_used_once_and_stays_inside() -> None:
    made = site(archive(record(Case, RICH)), Audience.PUBLIC)
    addresses = [*(one.address for one in made.pages), *(one.address for one in made.assets)]
    assert len(addresses) == len(set(addresses))
    assert not [one for one in addresses if one.startswith("/") or ".." in one or "\\" in one]


def test_a_hand_written_page_gets_a_frame() -> None:
    frame = site(archive(), Audience.PUBLIC).frame_for("about/index.html", "About")
    assert "About" in frame.head
    assert "../index.html" in frame.header
