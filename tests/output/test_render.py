"""Templates are filled with escaping on."""

from __future__ import annotations

import pytest
from jinja2 import UndefinedError

from casebook.output.contexts import Link, LostPage
from casebook.output.render import render


def test_text_is_escaped() -> None:
    html = render("pages/lost.html", page=LostPage("<b>", Link("home", "index.html")))
    assert "<b>" not in html
    assert "&lt;b&gt;" in html


def test_an_undefined_name_is_an_error() -> None:
    with pytest.raises(UndefinedError):
        render("pages/lost.html")
