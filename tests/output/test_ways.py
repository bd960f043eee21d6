"""Ways in lead to the cases that use a term."""

from __future__ import annotations

from casebook.model.archive import Case
from casebook.output.ways import groups, ways_of
from tests.builders import RICH, WORDING, record

WAYS = ways_of([record(Case, RICH)], WORDING.lexicon)


def test_each_way_leads_to_a_case() -> None:
    assert all(way.cases == ("2025-031",) for way in WAYS)
    addresses = {way.address for way in WAYS}
    assert "ways/structure/tight-back/index.html" in addresses
    assert "ways/decade/1870s/index.html" in addresses


def test_a_group_shows_its_most_used_and_counts_all() -> None:
    (group,) = [one for one in groups(WAYS, "", 1) if one.title == "Material"]
    assert len(group.links) == 1
    assert group.total > 1


def test_no_cases_have_no_ways() -> None:
    assert ways_of([], WORDING.lexicon) == ()
