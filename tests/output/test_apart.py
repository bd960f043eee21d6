"""The page for the box: how to take the work apart again."""

from __future__ import annotations

from casebook.model.archive import Case
from casebook.model.base import Audience
from casebook.model.settings import Settings
from casebook.output.apart import apart_page
from tests.builders import WORDING, archive, record, site, written
from tests.output.test_structure_view import LINED, view

LAB = Settings(name="Invented bindery", contact="lab@bindery.example")


def test_the_page_names_the_object_and_who_to_ask() -> None:
    page = apart_page(record(Case, LINED), LAB, view(LINED), WORDING, (None, None))
    assert (page.title, page.number) == ("A lined ledger", "a")
    assert page.lab == ("Invented bindery", "lab@bindery.example")
    assert page.picture is None


def test_it_says_what_lies_there_and_how_each_layer_comes_off() -> None:
    pages = written(site(archive(record(Case, LINED)), Audience.PUBLIC))
    page = pages["cases/a/apart/index.html"]
    for words in ("What lies there now", "To bare the spine", "To take off the cloth", "<svg"):
        assert words in page
    assert "Safety data sheets, local codes and licensed practice" in page
    assert "apart/index.html" in pages["cases/a/index.html"]


def test_a_structure_for_the_lab_alone_has_no_such_page() -> None:
    case = record(Case, f"{LINED}structure: lab\n")
    public = written(site(archive(case), Audience.PUBLIC))
    assert "cases/a/apart/index.html" not in public
    assert "<svg" not in public["cases/a/index.html"]
    assert "cases/a/apart/index.html" in written(site(archive(case), Audience.LAB))


def test_hostile_names_are_escaped_wherever_they_are_drawn_or_told() -> None:
    hostile = LINED.replace("adds: cloth,", "adds: '<script>alert(1)</script>',")
    pages = written(site(archive(record(Case, hostile)), Audience.PUBLIC))
    for address in ("cases/a/index.html", "cases/a/apart/index.html"):
        assert "<script>alert" not in pages[address]
