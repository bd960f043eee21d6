"""A case's page and its card."""

from __future__ import annotations

from dataclasses import replace

from casebook.compute.summary import summarise
from casebook.model.archive import Case, Standing, Status
from casebook.output.case_page import Told, card, case_page, describe, status_of, title_of
from tests.builders import PICTURES, RICH, WORDING, archive, record

CASE = record(Case, RICH)


def page(withheld: bool = False):
    told = Told(summarise(CASE, lambda word: word), withheld=withheld)
    return case_page(CASE, archive(CASE), PICTURES, WORDING, told)


def test_a_page_tells_the_whole_case() -> None:
    made = page()
    assert made.title == "Tide-gauge keeper's day book"
    assert len(made.episodes) == 1
    assert made.materials and made.linings
    assert made.cite.startswith("A. Marsh, Tide-gauge keeper's day book, treatment case 2025-031")


def test_a_withheld_structure_leaves_no_tables() -> None:
    assert page(withheld=True).linings is None
    assert page(withheld=True).materials is None


def test_a_card_leads_to_the_case() -> None:
    made = card(CASE, archive(CASE), PICTURES, WORDING)
    assert made.href == "cases/2025-031/index.html"
    assert made.work


def test_a_case_without_title_is_called_by_its_id() -> None:
    assert title_of(Case(id="c-1")) == "c-1"


def test_a_stopped_case_says_why() -> None:
    status = Status(is_=Standing.STOPPED, because="Owner died.")
    assert status_of(replace(CASE, status=status)) == "The treatment was stopped: Owner died."


def test_a_long_story_is_described_in_its_first_words() -> None:
    assert describe(Case(story="word " * 90)).endswith("word…")
