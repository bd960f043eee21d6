"""Prose becomes HTML that cannot run."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casebook.output.prose import paragraphs, plain, prose

ATTACKS = (
    "<script>alert(1)</script>",
    "<img src=x onerror=alert(1)>",
    "<p onclick='alert(1)'>x</p>",
    "[x](javascript:alert(1))",
    "[x](JaVaScRiPt:alert(1))",
    "<a href='java&#9;script:alert(1)'>x</a>",
    "<svg onload=alert(1)>",
    "<iframe src=//example.org></iframe>",
    "[x](data:text/html;base64,PHNjcmlwdD4=)",
    "<style>p{}</style>",
)
FORBIDDEN = ("<script", "<img", "<svg", "<iframe", "<style", "onclick=", 'href="java', 'href="data')


@pytest.mark.parametrize("attack", ATTACKS)
def test_what_could_run_is_gone(attack: str) -> None:
    html = prose(f"before {attack} after\n\n{attack}").lower()
    assert not [one for one in FORBIDDEN if one in html]
    assert "before" in html


@given(st.text(alphabet="<>/ =\"'()[]abjs:\n", max_size=60))
def test_no_text_gives_a_tag_that_is_not_allowed(text: str) -> None:
    assert "<script" not in prose(text)


def test_headings_stand_below_those_of_the_page() -> None:
    assert prose("# One").startswith("<h3>")


def test_empty_prose_is_empty() -> None:
    assert prose(" \n") == ""
    assert plain(" ") == ""


def test_plain_prose_has_no_tags_and_no_entities() -> None:
    assert plain("*Calf* & paper, 2 < 3") == "Calf & paper, 2 < 3"


def test_paragraphs_items_and_rows_are_texts_of_their_own() -> None:
    text = "One *and* on.\n\n- two\n- three\n\n## Four\n\n| a | b |\n|---|---|\n| 5 & | six |"
    assert paragraphs(text) == ("One and on.", "two", "three", "Four", "a b", "5 & six")
    assert paragraphs(" ") == ()
