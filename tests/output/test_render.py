"""Templates are filled with escaping on."""

from __future__ import annotations

from typing import Any

import pytest
from jinja2 import UndefinedError

from casebook.output.contexts import Link, LostPage
from casebook.output.render import page, render
from casebook.values.language import ENGLISH


def test_text_is_escaped() -> None:
    html = render("pages/lost.html", page=LostPage("<b>", Link("home", "index.html")))
    assert "<b>" not in html
    assert "&lt;b&gt;" in html


def test_an_undefined_name_is_an_error() -> None:
    with pytest.raises(UndefinedError):
        render("pages/lost.html")


def test_the_texts_of_a_page_are_typeset_and_its_addresses_are_not() -> None:
    lost = LostPage('The keeper\'s "log"', Link("home", "a'b.html"))
    html = page("pages/lost.html", ENGLISH, page=lost)
    assert "The keeper’s “log”" in html
    assert 'href="a&#39;b.html"' in html


def test_what_the_lab_wrote_is_marked_where_its_language_is_not_the_page_s() -> None:
    care: dict[str, Any] = {"page": {"care": "Trocken lagern."}}
    assert '<div class="prose" lang="de">' in page("parts/case/care.html", ENGLISH, "de", **care)
    assert '<div class="prose">' in page("parts/case/care.html", ENGLISH, **care)
    assert '<div class="prose">' in render("parts/case/care.html", **care)
