"""The files beside a case's page: stable names, one saved name for each, made when asked for."""

from __future__ import annotations

from casebook.model.archive import Case
from casebook.output.citing import citation
from casebook.output.downloads import downloads, files_of
from tests.builders import RICH, archive, record

CASE = record(Case, RICH)


def test_a_saved_file_says_which_case_it_is_of() -> None:
    names = {one.name: one.saved for one in files_of(CASE)}
    assert names == {
        "citation.bib": "2025-031.bib",
        "citation.json": "2025-031.json",
        "case.jsonld": "2025-031.jsonld",
        "case.txt": "2025-031.txt",
    }


def test_each_file_stands_beside_the_page_and_is_made_when_it_is_asked_for() -> None:
    asked: list[str] = []

    def made(name: str) -> str:
        asked.append(name)
        return f"{name} é"

    cited = citation(CASE, archive(CASE))
    assets = list(downloads(CASE, cited, lambda: made("data"), lambda: made("text")))
    assert asked == []
    assert [one.address for one in assets] == [
        f"cases/2025-031/{one.name}" for one in files_of(CASE)
    ]
    assert [one.made() for one in assets][2:] == ["data é".encode(), "text é".encode()]
    assert asked == ["data", "text"]
