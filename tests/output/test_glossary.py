"""The glossary, and each trade word explained once on a page."""

from __future__ import annotations

from dataclasses import dataclass

from casebook.model.archive import Case
from casebook.model.base import Audience
from casebook.output.contexts import Line, Run
from casebook.output.glossary import ADDRESS, glossary_page, told_once
from casebook.vocabulary import builtin
from tests.builders import RICH, archive, record, site, written


def test_a_word_is_explained_where_it_first_stands() -> None:
    @dataclass(frozen=True)
    class Page:
        title: str
        first: Line
        rest: tuple[Line, ...]

    spine = Run("the spine", "", "The back.")
    linked = Run("linen", "materials/linen/index.html", "Cloth.")
    page = Page("A book", (spine, linked), ((spine, Run("a hinge", "", "It moves.")), (linked,)))
    told = told_once(page)
    assert told.first == (spine, linked)
    assert told.rest == ((Run("the spine"), Run("a hinge", "", "It moves.")), (linked,))


def test_a_page_without_repeats_is_left_as_it_is() -> None:
    line = (Run("the spine", "", "The back."),)
    assert told_once(line) is line


def test_the_page_lists_the_words_by_their_labels_each_with_its_page_if_it_has_one() -> None:
    terms = {"materials": {one: builtin()["materials"][one] for one in ("linen", "calf")}}
    page = glossary_page(terms, "../", frozenset({"materials/linen/index.html"}))
    assert [one.letter for one in page.letters] == ["C", "L"]
    entries = [one for letter in page.letters for one in letter.entries]
    assert [one.label for one in entries] == ["calf", "linen"]
    assert [one.href for one in entries] == ["", "../materials/linen/index.html"]


def test_the_glossary_holds_only_words_that_this_site_uses() -> None:
    made = written(site(archive(record(Case, RICH)), Audience.PUBLIC))
    assert "linen" in made[ADDRESS]
    assert "photograph album" not in made[ADDRESS]
