"""The head of a printed report: whose it is, for whom, from when till when."""

from __future__ import annotations

from casebook.model.archive import Case
from casebook.model.base import Audience
from casebook.model.settings import Client, Settings
from casebook.output.cover_view import cover_facts
from casebook.output.wording import text_of
from tests.builders import RICH, WORDING, archive, record, site, written

LAB = Settings(
    name="Invented bindery",
    address="3 Invented Row",
    contact="lab@bindery.example",
    footer=("By appointment",),
    clients={"kestrel-trust": Client(name="Kestrel Trust")},
)


def cover(text: str, status: str = "") -> dict[str, list[str]]:
    case = record(Case, text)
    facts = cover_facts(case, archive(case, settings=LAB), WORDING, status)
    return {one.label: [text_of(line) for line in one.lines] for one in facts}


def test_a_sheet_says_by_itself_whose_it_is() -> None:
    assert cover(RICH) == {
        "Treatment report": ["Case 2025-031"],
        "By": ["Invented bindery", "3 Invented Row", "lab@bindery.example", "By appointment"],
        "For": ["Kestrel Trust"],
        "Dates": ["received 20 January 2025", "returned 2 April 2025"],
        "Status": ["Complete"],
        "Written": ["A. Marsh, 3 April 2025"],
    }


def test_what_is_not_on_record_takes_no_line() -> None:
    found = cover("{id: a, title: A letter, status: proposed}", "A treatment is proposed")
    assert list(found) == ["Treatment report", "By", "Status"]
    assert found["Status"] == ["A treatment is proposed"]


def test_the_client_is_named_to_the_lab_alone() -> None:
    case = record(Case, RICH)
    every = archive(case, settings=LAB)
    for audience in (Audience.PUBLIC, Audience.CLIENT):
        pages = written(site(every, audience, "kestrel-trust"))
        assert "Kestrel Trust" not in pages["cases/2025-031/index.html"]
    assert "Kestrel Trust" in written(site(every, Audience.LAB))["cases/2025-031/index.html"]
