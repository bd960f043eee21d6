"""The page for the box: how to take the work apart again."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path
from xml.etree.ElementTree import Element

import html5lib
import pytest

from casebook.compute.way_back.instructions import Answer, Opening, Question
from casebook.compute.way_back.numbering import act, numbered
from casebook.compute.way_back.sentences import instruction
from casebook.files import Cache
from casebook.loading import Loaded, load_archive
from casebook.model.archive import Case
from casebook.model.base import Audience
from casebook.model.settings import Settings
from casebook.output.apart import apart_page
from casebook.output.contexts import Pair
from casebook.output.render import render
from casebook.output.structure_view import asked, structure_view, work_out
from casebook.output.way_back_view import anchor_of
from casebook.vocabulary import Lexicon
from tests.builders import WORDING, archive, record, site, written
from tests.output.test_structure_view import LINED, view

ROOT = Path(__file__).parents[2]
LAB = Settings(name="Invented bindery", contact="lab@bindery.example")


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Loaded:
    """The demo archive as it lies in the folder."""
    return load_archive(ROOT, Cache(tmp_path_factory.mktemp("cache"), "test"))


def words(one: Element) -> str:
    return " ".join("".join(one.itertext()).split())


def numbers(text: str) -> list[int]:
    """The numbers that a text names: "1 to 3, 5 and 7" are five."""
    rows = re.findall(r"(\d+)(?: to (\d+))?", text)
    return [n for first, last in rows for n in range(int(first), int(last or first) + 1)]


def steps(one: Element) -> Iterator[int]:
    """The numbers of an answer's openings in their order, told there or named."""
    for part in one.iter():
        if part.get("class") == "again":
            yield from numbers(words(part).rpartition("pening")[2])
        elif (part.get("id") or "").startswith("opening-"):
            yield int((part.get("id") or "").removeprefix("opening-"))


def read(case: Case, lexicon: Lexicon) -> tuple[Element, tuple[Answer, ...]]:
    """The page of a case as a reader gets it, and the questions that it has to answer."""
    told = work_out(case, lexicon)
    page = apart_page(case, LAB, structure_view(case, lexicon, told), WORDING, Pair())
    body = render("pages/apart.html", page=page)
    tree = html5lib.parseFragment(str(body), namespaceHTMLElements=False)
    return tree, tuple(asked(told.way))


def check(tree: Element, answers: tuple[Answer, ...]) -> None:
    """Every question is answered in its own openings, in words or by their numbers."""
    places = [one for one in tree.iter() if (one.get("id") or "").startswith("opening-")]
    told = {(one.get("id") or "").removeprefix("opening-"): words(one) for one in places}
    assert len(told) == len(places)
    by_id = {one.get("id"): one for one in tree.iter() if one.get("id")}
    rows = iter(tree.findall(".//table[@class='which']/tbody/tr"))
    first: dict[int, Opening] = {}
    for answer, own in zip(numbered(answers), answers, strict=True):
        if answer.question is Question.TAKE_OFF:
            place = next(rows)
            line = place.find("td/p")
            found = numbers(words(line)) if answer.openings and line is not None else []
        else:
            place = by_id[anchor_of(answer)]
            found = list(steps(place))
        assert found == [one.number for one in answer.openings]
        for number, one, before in zip(found, answer.openings, own.openings, strict=True):
            assert act(first.setdefault(number, one)) == act(before)
            said = instruction(one)
            assert all(text in told[str(number)] for text in (*said.do, *said.off, *said.stays))
            assert all(text in told[str(number)] for text in (*said.mind, *said.cannot))
            assert all(text in words(place) for text in said.why)
        assert all(one.why in words(place) for one in answer.stops)
        assert words(place).count("stays: it has soaked in") >= len(answer.stays)
    for opening in first.values():
        assert all(source in words(by_id["sources"]) for source in opening.sources)


def test_every_question_about_every_demo_case_is_answered_on_its_page(demo: Loaded) -> None:
    lexicon = Lexicon(demo.archive.terms)
    pages = [read(case, lexicon) for case in demo.archive.cases]
    assert any(len(answers) > 20 for _, answers in pages)
    for tree, answers in pages:
        check(tree, answers)


def test_what_is_told_once_makes_the_page_of_a_rich_case_shorter(demo: Loaded) -> None:
    case = next(one for one in demo.archive.cases if one.id == "2025-031")
    tree, answers = read(case, Lexicon(demo.archive.terms))
    told = [one for one in tree.iter() if (one.get("id") or "").startswith("opening-")]
    assert len(told) < 0.7 * sum(len(one.openings) for one in answers)


def test_the_page_names_the_object_and_who_to_ask() -> None:
    page = apart_page(record(Case, LINED), LAB, view(LINED), WORDING, Pair())
    assert (page.title, page.number) == ("A lined ledger", "a")
    assert page.lab == ("Invented bindery", "lab@bindery.example")
    assert page.picture is None


def test_it_says_what_lies_there_and_how_each_layer_comes_off() -> None:
    pages = written(site(archive(record(Case, LINED)), Audience.PUBLIC))
    page = pages["cases/a/apart/index.html"]
    for words in ("What lies there now", "To bare the spine", "one layer only", "Cloth<", "<svg"):
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
