"""What is made of each case: page, data and files say the same, and nothing is made twice."""

from __future__ import annotations

import json

import pytest

from casebook.audiences import redact
from casebook.model.archive import Case
from casebook.model.base import Audience
from casebook.output import case_maker
from casebook.output.case_contexts import CasePage
from casebook.output.case_maker import UP, CaseMaker
from casebook.output.lists import Lists
from casebook.output.whole import Whole, Wishes
from tests.builders import PICTURES, RICH, archive, record, site, written

OTHER = RICH.replace("id: 2025-031", "id: 2025-044").replace("was: [2025-030]", "")


def maker(site_url: str = "") -> tuple[CaseMaker, Case]:
    shown = redact(archive(record(Case, RICH), record(Case, OTHER)), Audience.PUBLIC)
    whole = Whole(shown, PICTURES, Wishes(site_url=site_url))
    return CaseMaker(whole, Lists(whole)), whole.by_id["2025-031"]


def files(made: CaseMaker) -> dict[str, str]:
    contents = {one.address: one.made() for one in made.files()}
    return {name: one.decode() for name, one in contents.items() if isinstance(one, bytes)}


def test_page_and_files_name_one_address_where_the_site_has_one() -> None:
    made, case = maker("https://a.example/")
    address = "https://a.example/cases/2025-031/index.html"
    assert made.page(case, UP).cite.endswith(address)
    told = files(made)
    assert json.loads(told["cases/2025-031/citation.json"])[0]["URL"] == address
    assert json.loads(told["cases/2025-031/case.jsonld"])["url"] == address
    assert address in " ".join(told["cases/2025-031/case.txt"].split())


def test_the_data_file_is_what_the_page_says_to_programs() -> None:
    made = written(site(archive(record(Case, RICH)), Audience.PUBLIC))
    data = made["cases/2025-031/case.jsonld"]
    assert (
        f'<script type="application/ld+json">{data}</script>' in made["cases/2025-031/index.html"]
    )


def test_a_text_is_made_with_its_page_and_not_again(monkeypatch: pytest.MonkeyPatch) -> None:
    counted: list[str] = []

    def count(page: CasePage) -> str:
        counted.append(page.number)
        return ""

    monkeypatch.setattr(case_maker, "case_text", count)
    made, case = maker()
    made.page(case, UP)
    assert counted == ["2025-031"]
    files(made)
    assert sorted(counted) == ["2025-031", "2025-044"]


def test_a_like_case_is_shown_by_its_card() -> None:
    made, case = maker()
    (like,) = made.page(case, UP).like
    assert like.href == "../../cases/2025-044/index.html"
    assert like.shared.startswith("Both ledger and tight back")
