"""What the pages of a site share is computed once, for what the audience may see."""

from __future__ import annotations

from casebook.audiences import redact
from casebook.model.archive import Case
from casebook.model.base import Audience
from casebook.output.whole import Whole, Wishes
from tests.builders import PICTURES, RICH, archive, record

OLD = "{id: old, title: Old, audience: public, dates: {received: 1984}}"
UNDATED = "{id: undated, title: Undated, audience: public}"
HIDDEN = "{id: hidden, title: Hidden, audience: lab, dates: {received: 2025-06-01}}"


def whole(*texts: str) -> Whole:
    shown = archive(*(record(Case, text) for text in texts))
    return Whole(redact(shown, Audience.PUBLIC), PICTURES, Wishes())


def test_cases_stand_newest_first_and_those_without_a_day_last() -> None:
    assert [one.id for one in whole(UNDATED, OLD, HIDDEN, RICH).cases] == [
        "2025-031",
        "old",
        "undated",
    ]


def test_a_case_knows_the_ways_that_lead_to_it() -> None:
    found = whole(RICH, OLD)
    titles = [way.title for way in found.leading_to["2025-031"]]
    assert "tight back" in titles
    assert found.leading_to["old"] == []


def test_every_case_has_its_summary() -> None:
    found = whole(RICH, OLD)
    assert set(found.summaries) == {"2025-031", "old"}
